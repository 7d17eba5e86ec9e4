// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/rounds_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "ui/adapt/words.h"

namespace outyard::rounds {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Rounds)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

bool miles(const adapt::Units& units) {
  return units.shown(base::Length{1}) > 1.5;  // feet go with miles
}

}  // namespace

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
    case Warmth::Shut: {
      constexpr double kWetMm = 1;
      return day->rainMm.value_or(0) >= kWetMm ? Words::tr("wet") : Words::tr("too cold");
    }
    case Warmth::Unknown:
      break;
  }
  return Words::tr("weather?");
}

QString warmthSentence(base::Date date, const planning::YardDay* day, const adapt::Units& units) {
  if (warmthOf(day) != Warmth::Unknown) return widgets::dayWords(*day, units);
  return Words::tr("%1: no weather known; enter it under Yards or import it").arg(weekDay(date));
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
      Words::tr("%1, %2, %3").arg(yardName(season, stop.yard), weekDay(day.date()), what);
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
  if (day.stops.empty()) return Words::tr("%1: no visit").arg(weekDay(day.date()));
  QStringList yards;
  for (const auto& s : day.stops) yards << yardName(season, s.yard);
  QString out =
      Words::tr("%1: %2. %3 of %4, %5 to drive.")
          .arg(weekDay(day.date()), yards.join(QStringLiteral(" → ")), hoursText(day.day.hours),
               hoursText(board.figures.dayHours), driveText(day.day.driveKm, units));
  if (day.day.hours > board.figures.dayHours) {
    out += u' ' + Words::tr("Longer than a day: part the work or take more hands.");
  }
  return out;
}

}  // namespace outyard::rounds
