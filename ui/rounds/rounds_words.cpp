// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/rounds_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/widgets/hive_facts.h"

namespace outyard::rounds {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Rounds)
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

bool miles(const adapt::Units& units) {
  return units.shown(base::Length{1}) > 1.5;  // feet go with miles
}

QString number(double value) {
  return QLocale().toString(value, 'f', std::abs(value - std::round(value)) < 0.05 ? 0 : 1);
}

}  // namespace

QString yardName(const apiary::Season& season, const base::YardId& yard) {
  const auto* row = season.yard(yard);
  return row && !row->name.empty() ? qs(row->name) : qs(yard.str());
}

QString dayText(base::Date day) {
  //: Weekday, day and month without the year: see QLocale::toString.
  return QLocale().toString(adapt::toQDate(day), Words::tr("ddd d MMM"));
}

QString shortDay(base::Date day) {
  //: Day and month without the year: see QLocale::toString.
  return QLocale().toString(adapt::toQDate(day), Words::tr("d MMM"));
}

QString windowText(const planning::DueTask& task, base::Date today) {
  if (task.overdue(today)) return Words::tr("overdue since %1").arg(shortDay(task.latest));
  if (task.earliest <= today) return Words::tr("by %1").arg(shortDay(task.latest));
  if (task.earliest == task.latest) return Words::tr("on %1").arg(shortDay(task.latest));
  return Words::tr("%1 – %2").arg(shortDay(task.earliest), shortDay(task.latest));
}

QString chanceText(const planning::DueTask& task) {
  if (task.rule == "planned" || task.chance >= 0.995) return {};
  return Words::tr("%1 %").arg(QLocale().toString(std::lround(task.chance * 100)));
}

QString workText(const planning::DueTask& task, const adapt::Units& units) {
  // What was planned is named as on the sheet that goes along.
  QString name = task.rule == "planned" ? known("sheet.task.", task.kind) : QString();
  if (name.isEmpty()) name = adapt::words(planning::dueName(task));
  if (!name.isEmpty()) name[0] = name.at(0).toUpper();
  if (task.amount && (task.unit == apiary::Unit::L || task.unit == apiary::Unit::Kg)) {
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

QString itemText(const std::string& item) {
  const auto colon = item.find(':');
  const std::string kind = item.substr(0, colon);
  if (colon != std::string::npos) {
    const QString type = widgets::codeText("frame_type", item.substr(colon + 1));
    if (kind == "chamber") return Words::tr("chamber, %1").arg(type);
    if (kind == "super") return Words::tr("super, %1").arg(type);
    if (kind == "drawn_comb") return Words::tr("drawn comb, %1").arg(type);
    if (kind == "foundation") return Words::tr("foundation, %1").arg(type);
    return QStringLiteral("%1, %2").arg(qs(kind).replace(u'_', u' '), type);
  }
  if (kind == "treatment") return Words::tr("mite treatment, doses");
  if (kind == "queen") return Words::tr("queens or queen cells");
  QString name = known("sheet.gear.", kind);
  if (name.isEmpty()) name = known("code.goods.", kind);
  return name.isEmpty() ? qs(kind).replace(u'_', u' ') : name;
}

QString countText(double count, const std::optional<apiary::Unit>& unit,
                  const adapt::Units& units) {
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

QString hoursText(double hours) {
  return Words::tr("%1\u00A0h").arg(QLocale().toString(hours, 'f', 1));
}

QString driveText(double km, const adapt::Units& units) {
  constexpr double kKmPerMile = 1.609344;
  return miles(units)
             ? Words::tr("%1\u00A0mi").arg(QLocale().toString(std::lround(km / kKmPerMile)))
             : Words::tr("%1\u00A0km").arg(QLocale().toString(std::lround(km)));
}

QString legText(const planning::RoundStop& stop, const adapt::Units& units) {
  return Words::tr("%1, %2\u00A0min")
      .arg(driveText(stop.driveKm, units), QLocale().toString(std::lround(stop.driveHours * 60)));
}

QString wayText(const planning::RoundStop& stop, const adapt::Units& units) {
  return stop.driveKm > 0 ? Words::tr("%1 to drive").arg(legText(stop, units))
                          : Words::tr("first stop");
}

QString warmthText(const planning::YardDay* day) {
  switch (warmthOf(day)) {
    case Warmth::Combs:
      return Words::tr("combs");
    case Warmth::Lid:
      return Words::tr("lid only");
    case Warmth::Cold: {
      constexpr double kWetMm = 1;
      return day->rainMm.value_or(0) >= kWetMm ? Words::tr("wet") : Words::tr("too cold");
    }
    case Warmth::Unknown:
      break;
  }
  return Words::tr("weather?");
}

QString warmthSentence(base::Date date, const planning::YardDay* day, const adapt::Units& units) {
  QString does;
  switch (warmthOf(day)) {
    case Warmth::Combs:
      does = Words::tr("warm enough to take combs out");
      break;
    case Warmth::Lid:
      does = Words::tr("warm enough for a look under the lid, too cold to take combs out");
      break;
    case Warmth::Cold:
      does = Words::tr("too cold or wet to open hives");
      break;
    case Warmth::Unknown:
      return Words::tr("%1: no weather known; enter it under Yards or import it")
          .arg(dayText(date));
  }
  QString out = Words::tr("%1: %2, up to %3")
                    .arg(dayText(date), does, units.text(base::Temperature{*day->tmaxC}));
  if (day->rainMm && *day->rainMm >= 0.5) {
    out += Words::tr(", %1 mm of rain").arg(QLocale().toString(*day->rainMm, 'f', 0));
  }
  return out;
}

QString countOfWork(std::size_t count) {
  if (count == 0) return Words::tr("no work yet");
  if (count == 1) return Words::tr("1 piece of work");
  return Words::tr("%1 pieces of work").arg(count);
}

QString stopSentence(const RoundBoard& board, const BoardDay& day, const BoardStop& stop,
                     const apiary::Season& season, const adapt::Units& units) {
  QStringList lines;
  const QString what = stop.visit ? Words::tr("visit planned") : Words::tr("visit proposed");
  QString head =
      Words::tr("%1, %2, %3").arg(yardName(season, stop.yard), dayText(day.date()), what);
  if (stop.time) head += Words::tr(" at %1").arg(qs(stop.time->text()));
  lines << head + u'.';
  QString work = Words::tr("%1, %2 there, %3.")
                     .arg(countOfWork(stop.stop.tasks.size()), hoursText(stop.stop.workHours),
                          wayText(stop.stop, units));
  if (stop.visit && !stop.fresh.empty()) {
    work += u' ' + Words::tr("%1 of them proposed.").arg(stop.fresh.size());
  }
  if (!stop.done.empty()) work += u' ' + Words::tr("%1 done.").arg(stop.done.size());
  lines << work;
  lines << warmthSentence(day.date(), dayOf(board.due, stop.yard, day.date()), units) + u'.';
  for (const auto& why : stop.stop.why) lines << adapt::words(why);
  if (!stop.notes.empty()) lines << qs(stop.notes);
  return lines.join(u'\n');
}

QString daySentence(const RoundBoard& board, const BoardDay& day, const apiary::Season& season,
                    const adapt::Units& units) {
  if (day.stops.empty()) return Words::tr("%1: no visit").arg(dayText(day.date()));
  QStringList yards;
  for (const auto& s : day.stops) yards << yardName(season, s.yard);
  QString out =
      Words::tr("%1: %2. %3 of %4, %5 to drive.")
          .arg(dayText(day.date()), yards.join(QStringLiteral(" → ")), hoursText(day.day.hours),
               hoursText(board.figures.dayHours), driveText(day.day.driveKm, units));
  if (day.day.hours > board.figures.dayHours) {
    out += u' ' + Words::tr("Longer than a day: part the work or take more hands.");
  }
  return out;
}

}  // namespace outyard::rounds
