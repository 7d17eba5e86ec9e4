// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/calendar/calendar_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>
#include <map>

#include "ui/adapt/words.h"

namespace outyard::calendar {

namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Words)
};

QString hours(double value) {
  return QLocale().toString(value, 'f', value < 10 ? 1 : 0);
}

QString flowName(double nectar) {
  if (nectar >= 2.5) return Words::tr("strong flow");
  if (nectar >= 1.5) return Words::tr("good flow");
  return nectar >= 0.75 ? Words::tr("light flow") : Words::tr("a little nectar");
}

/// "about 3" of chances that add up to it.
QString about(double colonies) {
  if (colonies < 0.5) return Words::tr("hardly any");
  return Words::tr("about %1").arg(std::lround(colonies));
}

}  // namespace

QString yardName(const apiary::Season& season, const base::YardId& yard) {
  const QString id = QString::fromStdString(yard.str());
  const auto* row = season.yard(yard);
  if (!row || row->name.empty()) return id;
  return Words::tr("%1 %2", "yard id and name").arg(id, QString::fromStdString(row->name));
}

QString weekText(base::Date monday) {
  return Words::tr("%1 to %2").arg(adapt::dateText(monday), adapt::dateText(monday.plusDays(6)));
}

QStringList cellLines(const planning::SeasonCalendar& calendar, std::size_t yard,
                      std::size_t week) {
  const auto& cell = calendar.cell(yard, week);
  QStringList out;
  if (cell.nectar > 0) {
    out << Words::tr("Flow: %1 (%2 of 3)")
               .arg(flowName(cell.nectar), QLocale().toString(cell.nectar, 'g', 2));
  }
  if (cell.splitsDone > 0) out << Words::tr("Divided: %1").arg(cell.splitsDone);
  if (cell.splitReady && *cell.splitReady >= 0.05) {
    out << Words::tr("Ready to divide at the week's end: %1").arg(about(*cell.splitReady));
  }
  if (cell.boostsDone > 0) out << Words::tr("Boosts made: %1").arg(cell.boostsDone);
  if (cell.boostsPlanned > 0) out << Words::tr("Boosts planned or due: %1").arg(cell.boostsPlanned);
  if (cell.treatmentsDone > 0) out << Words::tr("Treated: %1").arg(cell.treatmentsDone);
  if (cell.treatmentsPlanned > 0) {
    out << Words::tr("Treatments planned or due: %1").arg(cell.treatmentsPlanned);
  }
  if (cell.underTreatment) out << Words::tr("A treatment is in the hives");
  if (cell.waitingEnds) {
    out << Words::tr("The last waiting period ends: no honey off before its end");
  } else if (cell.waiting) {
    out << Words::tr("A waiting period runs: no honey off");
  }
  if (cell.harvestKg > 0) {
    out << Words::tr("Honey taken: %1 kg").arg(adapt::roundNumber(cell.harvestKg));
  } else if (cell.harvests > 0) {
    out << Words::tr("Honey taken: %1 times, not weighed").arg(cell.harvests);
  }
  if (cell.harvestsDue > 0) out << Words::tr("Hives with honey to take: %1").arg(cell.harvestsDue);
  if (cell.looksDone + cell.feedsDone + cell.washesDone > 0) {
    out << Words::tr("Done: looks %1, feeds %2, washes %3")
               .arg(cell.looksDone)
               .arg(cell.feedsDone)
               .arg(cell.washesDone);
  }
  if (cell.looksDue + cell.feedsDue + cell.washesDue + cell.otherDue > 0) {
    out << Words::tr("Due: looks %1, feeds %2, washes %3, other work %4")
               .arg(cell.looksDue)
               .arg(cell.feedsDue)
               .arg(cell.washesDue)
               .arg(cell.otherDue);
  }
  if (cell.visitsPlanned > 0) out << Words::tr("Visits planned: %1").arg(cell.visitsPlanned);
  if (cell.workHours > 0) out << Words::tr("Hours there: %1").arg(hours(cell.workHours));
  if (out.isEmpty()) out << Words::tr("Nothing on record, planned or expected");
  return out;
}

QStringList workLines(const planning::SeasonCalendar& calendar, std::size_t yard,
                      std::size_t week) {
  std::map<QString, QStringList> byName;
  for (const std::size_t i : calendar.cell(yard, week).tasks) {
    const auto& task = calendar.due.tasks.at(i);
    QString where = task.hive ? QString::fromStdString(task.hive->str()) : Words::tr("whole yard");
    if (!task.task && task.chance < 0.995) {
      where += Words::tr(" (%1 %)").arg(std::lround(task.chance * 100));
    }
    QString name = adapt::words(planning::dueName(task));
    if (!name.isEmpty()) name[0] = name[0].toUpper();
    byName[name] << where;
  }
  std::vector<std::pair<QString, QStringList>> lines(byName.begin(), byName.end());
  std::stable_sort(lines.begin(), lines.end(),
                   [](const auto& a, const auto& b) { return a.second.size() > b.second.size(); });
  QStringList out;
  for (const auto& [name, hives] : lines) {
    out << Words::tr("%1: %2").arg(name, hives.join(QStringLiteral(", ")));
  }
  return out;
}

QString hoursText(const planning::SeasonCalendar& calendar, std::size_t week) {
  const auto& w = calendar.weeks.at(week);
  if (w.handHours <= 0) return Words::tr("This week is over.");
  QString out =
      Words::tr("%1 h (%2 h in the yards, %3 h of driving); the hands have %4 h")
          .arg(hours(w.hours()), hours(w.workHours), hours(w.driveHours), hours(w.handHours));
  if (w.overFull()) out += Words::tr(". Over full by %1 h").arg(hours(w.hours() - w.handHours));
  return out;
}

QStringList changeLines(const planning::CalendarChange& c) {
  const auto date = [](const std::optional<base::Date>& day) {
    return day ? Words::tr("the week of %1").arg(adapt::dateText(*day)) : Words::tr("not by then");
  };
  return {Words::tr("Fullest week: %1 h, was %2 h")
              .arg(hours(c.hoursMostAfter), hours(c.hoursMostBefore)),
          Words::tr("Weeks over full: %1, was %2").arg(c.overFullAfter).arg(c.overFullBefore),
          Words::tr("First colony ready to divide: %1, was %2")
              .arg(date(c.readyAfter), date(c.readyBefore)),
          Words::tr("Ready in the best week: %1, was %2")
              .arg(about(c.readyMostAfter), about(c.readyMostBefore))};
}

}  // namespace outyard::calendar
