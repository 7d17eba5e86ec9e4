// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/base/result.h"
#include "core/planning/due.h"
#include "core/planning/rounds.h"

/// The season at one look: what was done, is planned and is expected in every yard, week by week,
/// and the hours that it takes.
namespace outyard::planning {

struct CalendarAsk {
  base::Date first, last;           ///< widened to whole weeks, Monday to Sunday; at most two years
  std::vector<base::YardId> yards;  ///< empty = every yard
  std::uint64_t seed = 1;
  int members = 96;  ///< of each forecast; weeks need no finer ones
};

/// One yard in one week. Counts of records are of what was done, counts of tasks of what is planned
/// or falls due; a week that holds today has both.
struct CalendarCell {
  double nectar = 0;  ///< of the strongest flow in the week, 0 to 3
  /// Colonies expected to be ready to divide at the week's end, as the sum of their chances;
  /// nullopt before today and where nothing is known.
  std::optional<double> splitReady;
  int splitsDone = 0;
  int boostsPlanned = 0, boostsDone = 0;
  int treatmentsPlanned = 0, treatmentsDone = 0;
  bool underTreatment = false;  ///< something stays in a hive
  bool waiting = false;         ///< a waiting period runs: no honey off
  bool waitingEnds = false;     ///< the last one of the yard ends in this week
  double harvestKg = 0;         ///< honey taken, as recorded in kg
  int harvests = 0;             ///< records of honey taken
  int harvestsDue = 0;
  int looksDue = 0, feedsDue = 0, washesDue = 0, otherDue = 0;
  int looksDone = 0, feedsDone = 0, washesDone = 0;
  int visitsPlanned = 0;
  std::vector<std::size_t> tasks;  ///< into SeasonCalendar::due.tasks, dated in the week
  double workHours = 0;            ///< there, with the hands that share it

  [[nodiscard]] int dueCount() const { return static_cast<int>(tasks.size()); }
};

struct CalendarWeek {
  base::Date monday;
  double workHours = 0, driveHours = 0;
  double handHours = 0;  ///< what the hands have; 0 before today
  [[nodiscard]] double hours() const { return workHours + driveHours; }
  [[nodiscard]] bool overFull() const { return handHours > 0 && hours() > handHours; }
};

struct SeasonCalendar {
  CalendarAsk ask;
  base::Date today;
  double people = 0, dayHours = 0, daysAWeek = 0;
  int sureWeeks = 5;  ///< weeks after today's from which on it is expected only
  std::vector<base::YardId> yards;
  std::vector<CalendarWeek> weeks;
  std::vector<CalendarCell> cells;  ///< yards × weeks, row by row
  DueList due;                      ///< without its forecasts

  [[nodiscard]] const CalendarCell& cell(std::size_t yard, std::size_t week) const {
    return cells.at(yard * weeks.size() + week);
  }
  [[nodiscard]] std::optional<std::size_t> weekOf(base::Date day) const;
  /// Beyond the weeks that can be counted on.
  [[nodiscard]] bool expectedOnly(std::size_t week) const;
};

/// The Monday of the day's week.
base::Date mondayOf(base::Date day);

/// What falls due is worked out once over the whole span, so of work that comes again (a look, a
/// wash) the next one stands there. Hours are those of planned work and of what is more likely than
/// not; a yard with any costs one drive in the week. Cancelled: no weeks.
SeasonCalendar seasonCalendar(const apiary::Season& season, base::Date today,
                              const CalendarAsk& ask, int threads, base::Progress& progress);

// --- what if the dates were others -------------------------------------------------------------

/// The planned tasks and visits of a yard from `from` on, some days later (or earlier), with their
/// windows. Refused when a date would fall before `from` or there is nothing to shift. What was
/// done stays.
base::Result<apiary::ChangeList> shiftedTasks(const apiary::Season& season,
                                              const base::YardId& yard, base::Date from, int days);
/// A flow of a yard's calendar, as long as it is, some days later or earlier.
base::Result<apiary::ChangeList> shiftedFlow(const apiary::Season& season, const apiary::Flow& flow,
                                             int days);

/// Hours and readiness of a yard as they stand and with the dates shifted.
struct CalendarChange {
  double hoursMostBefore = 0, hoursMostAfter = 0;  ///< of the fullest week, all yards
  int overFullBefore = 0, overFullAfter = 0;       ///< weeks
  std::optional<base::Date> readyBefore,
      readyAfter;                                  ///< first week with a colony ready in the yard
  double readyMostBefore = 0, readyMostAfter = 0;  ///< colonies, in the best week
};
CalendarChange compared(const SeasonCalendar& before, const SeasonCalendar& after,
                        const base::YardId& yard);

}  // namespace outyard::planning
