// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>
#include <map>

#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/widgets/hive_facts.h"

namespace outyard::desk {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Desk)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

/// Words as ui/adapt has them, or nothing where a code is unknown.
QString known(std::string key, const std::string& last) {
  base::Message message;
  message.key = std::move(key);
  message.key += last;
  return adapt::hasWords(message.key) ? adapt::words(message) : QString();
}

}  // namespace

QString yardName(const apiary::Season& season, const base::YardId& yard) {
  const auto* row = season.yard(yard);
  return row && !row->name.empty() ? qs(row->name) : qs(yard.str());
}

QString dayText(base::Date day) {
  //: Day and month without the year: see QLocale::toString.
  return QLocale().toString(adapt::toQDate(day), Words::tr("d MMM"));
}

QString windowText(const planning::DueTask& task, base::Date today) {
  if (task.overdue(today)) return Words::tr("overdue since %1").arg(dayText(task.latest));
  if (task.latest == today) return Words::tr("today");
  if (task.earliest <= today) return Words::tr("by %1").arg(dayText(task.latest));
  if (task.earliest == task.latest) return Words::tr("on %1").arg(dayText(task.latest));
  return Words::tr("%1 – %2").arg(dayText(task.earliest), dayText(task.latest));
}

QString chanceText(const planning::DueTask& task) {
  if (task.rule == "planned" || task.chance >= 0.995) return {};
  const QString percent = QLocale().toString(std::lround(task.chance * 100));
  if (task.chance >= 0.9) return Words::tr("almost sure, %1 %").arg(percent);
  if (task.chance >= 0.65) return Words::tr("likely, %1 %").arg(percent);
  if (task.chance >= 0.4) return Words::tr("about even, %1 %").arg(percent);
  return Words::tr("possible, %1 %").arg(percent);
}

QString workName(const planning::DueTask& task) {
  // What was planned is named as on the sheet that goes along.
  QString name = task.rule == "planned" ? known("sheet.task.", task.kind) : QString();
  if (name.isEmpty()) name = adapt::words(planning::dueName(task));
  if (!name.isEmpty()) name[0] = name.at(0).toUpper();
  return name;
}

QString workText(const planning::DueTask& task, const adapt::Units& units) {
  QString name = workName(task);
  const bool feed = task.amount && (task.unit == apiary::Unit::L || task.unit == apiary::Unit::Kg);
  if (feed) {
    name = Words::tr("%1, %2").arg(name, countText(*task.amount, task.unit, units));
    if (task.what) {
      name += u' ' + widgets::codeText("goods", std::string(apiary::code(*task.what)));
    }
  }
  if (task.otherHive && task.otherHive != task.hive) {
    name = Words::tr("%1 with %2").arg(name, qs(task.otherHive->str()));
  }
  return name;
}

QString reasonText(const planning::DueTask& task) {
  return task.rule == "planned" && !task.plannedWhy.empty() ? qs(task.plannedWhy)
                                                            : adapt::words(task.why);
}

QStringList cautionTexts(const planning::DueTask& task) {
  QStringList out;
  for (const auto& caution : task.cautions) out << adapt::words(caution);
  return out;
}

QString sentence(const planning::DueTask& task, const apiary::Season& season, base::Date today,
                 const adapt::Units& units) {
  QStringList parts;
  parts << (task.hive ? qs(task.hive->str()) : Words::tr("whole yard"));
  parts << yardName(season, task.yard) << workText(task, units) << windowText(task, today);
  if (task.rule == "planned") parts << Words::tr("planned");
  const QString chance = chanceText(task);
  if (!chance.isEmpty()) parts << chance;
  return parts.join(QStringLiteral(", ")) + QStringLiteral(". ") + reasonText(task);
}

QChar riskLetter(const planning::DueTask& task) {
  static const std::map<std::string, char16_t> kLetters{
      {"inspector", u'S'}, {"queen_check", u'Q'}, {"stores_out", u'F'}, {"treat", u'M'},
      {"swarm", u'C'},     {"no_room", u'R'},     {"add_box", u'R'},    {"treat_off", u'T'}};
  const auto it = kLetters.find(task.rule);
  return it == kLetters.end() ? QChar() : QChar(it->second);
}

QString riskMeaning(QChar letter) {
  switch (letter.unicode()) {
    case u'S':
      return Words::tr("sick: nothing in or out");
    case u'Q':
      return Words::tr("queen missing or in doubt");
    case u'F':
      return Words::tr("food runs out");
    case u'M':
      return Words::tr("mites over the threshold");
    case u'C':
      return Words::tr("queen cells, swarm");
    case u'R':
      return Words::tr("no room");
    case u'T':
      return Words::tr("treatment still in");
    default:
      return {};
  }
}

QString kindsText(const planning::DueList& due, const std::vector<std::size_t>& tasks) {
  std::vector<std::pair<QString, int>> counts;
  for (const std::size_t i : tasks) {
    const QString name = workName(due.tasks[i]);
    const auto at =
        std::find_if(counts.begin(), counts.end(), [&](const auto& c) { return c.first == name; });
    if (at == counts.end()) {
      counts.emplace_back(name, 1);
    } else {
      ++at->second;
    }
  }
  std::stable_sort(counts.begin(), counts.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  QStringList parts;
  for (const auto& [name, count] : counts) {
    // Lines break between the kinds only.
    QString part = QStringLiteral("%1 × %2").arg(QLocale().toString(count), name);
    parts << part.replace(u' ', QChar::Nbsp);
  }
  return parts.join(QStringLiteral(", "));
}

QString itemText(const std::string& item) {
  const auto colon = item.find(':');
  const std::string kind = item.substr(0, colon);
  if (colon != std::string::npos) {
    const std::string type = item.substr(colon + 1);
    const QString typeName = widgets::codeText("frame_type", type);
    if (kind == "chamber") return Words::tr("chamber, %1").arg(typeName);
    if (kind == "super") return Words::tr("super, %1").arg(typeName);
    if (kind == "drawn_comb") return Words::tr("drawn comb, %1").arg(typeName);
    if (kind == "foundation") return Words::tr("foundation, %1").arg(typeName);
    return QStringLiteral("%1, %2").arg(qs(kind).replace(u'_', u' '), typeName);
  }
  if (kind == "treatment") return Words::tr("mite treatment, doses");
  if (kind == "queen") return Words::tr("queens or queen cells");
  const QString name = known("sheet.gear.", kind);
  return name.isEmpty() ? qs(kind).replace(u'_', u' ') : name;
}

QString countText(double count, const std::optional<apiary::Unit>& unit,
                  const adapt::Units& units) {
  const QLocale locale;
  const auto number = [&](double v) {
    return locale.toString(v, 'f', std::abs(v - std::round(v)) < 0.05 ? 0 : 1);
  };
  if (unit == apiary::Unit::Kg) {
    return QStringLiteral("%1\u00A0%2")
        .arg(number(units.shown(base::Mass{count})), units.massUnit());
  }
  if (unit == apiary::Unit::L) {
    const bool us = units.shown(base::Mass{1}) > 1.5;  // pounds go with gallons
    return us ? Words::tr("%1\u00A0gal").arg(number(base::inUsGallons({count})))
              : Words::tr("%1\u00A0l").arg(number(count));
  }
  return number(count);
}

QString needText(const planning::RoundItem& item, const adapt::Units& units) {
  const QString needed = countText(item.needed, item.unit, units);
  if (!item.atHand) return Words::tr("%1 needed, never counted").arg(needed);
  return Words::tr("%1 needed, %2 at hand").arg(needed, countText(*item.atHand, item.unit, units));
}

QString trustText(const planning::Trust& trust) {
  if (trust.looks == 0) {
    return Words::tr(
        "No hive was looked at twice yet: from the second look on it shows here how "
        "far the forecasts can be trusted.");
  }
  if (trust.looks == 1) {
    return trust.within ? Words::tr("Of one look so far, it fell within what was expected.")
                        : Words::tr("Of one look so far, it fell outside what was expected.");
  }
  return Words::tr(
             "Of your last %1 looks %2 fell within what was expected; about 8 in 10 are "
             "meant to.")
      .arg(trust.looks)
      .arg(trust.within);
}

}  // namespace outyard::desk
