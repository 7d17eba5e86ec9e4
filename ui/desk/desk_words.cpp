// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <map>

namespace outyard::desk {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Desk)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

QString chanceText(const planning::DueTask& task) {
  const QString percent = widgets::percentText(task);
  if (percent.isEmpty()) return {};
  if (task.chance >= 0.9) return Words::tr("almost sure, %1").arg(percent);
  if (task.chance >= 0.65) return Words::tr("likely, %1").arg(percent);
  if (task.chance >= 0.4) return Words::tr("about even, %1").arg(percent);
  return Words::tr("possible, %1").arg(percent);
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
