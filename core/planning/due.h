// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/message.h"
#include "core/base/progress.h"
#include "core/forecast/colony_forecast.h"

/// What falls due: forecasts and records turned into tasks with a window, a chance and a reason.
/// The rules stand as a table in due_rules.cpp, their figures in due_figures.cpp; this header is
/// what the command `season`, the desk and the rounds use.
namespace outyard::planning {

/// One piece of work that falls due.
struct DueTask {
  std::string rule;  ///< code of the rule ("room", "feed", ...); "planned" for a task of the season
  std::string kind;  ///< what it becomes as a task: an EventKind code, or "open", "look"
  base::YardId yard;
  std::optional<base::HiveId> hive;  ///< none: the whole yard
  std::optional<base::ColonyId> colony;
  std::optional<base::HiveId> otherHive;
  base::Date date;              ///< the day proposed: the first of the window that is warm enough
  base::Date earliest, latest;  ///< the window; latest < the asked first day = overdue
  double chance = 1;            ///< that it is needed by `latest`, 0 to 1
  base::Message why;
  std::vector<base::Message> cautions;
  std::optional<double> amount;
  std::optional<apiary::Unit> unit;
  std::optional<apiary::Goods> what;
  std::string gear;                    ///< gear item it takes one of, or empty
  double minutes = 10;                 ///< of work at the hive for one person
  std::optional<base::TaskId> task;    ///< the planned task that it stands for
  std::optional<base::VisitId> visit;  ///< the visit that the planned task belongs to
  std::string plannedWhy;              ///< the reason kept with a planned task, as it was worded

  [[nodiscard]] bool overdue(base::Date today) const { return latest < today; }
};

struct DueAsk {
  base::Date from, to;              ///< both days included
  std::vector<base::YardId> yards;  ///< empty = every yard
  std::uint64_t seed = 1;
  int members = forecast::kMembers;  ///< of each forecast
  bool planned = true;               ///< tasks already planned are listed too
};

/// How warm a yard is on a day, for the strip of days on the desk.
struct YardDay {
  base::Date date;
  std::optional<double> tmaxC, rainMm;  ///< nullopt = nothing known of the day
  bool lidWarm = false;                 ///< warm and dry enough for a look under the lid
  bool combWarm = false;                ///< warm and dry enough to take combs out
};
struct YardDays {
  base::YardId yard;
  std::vector<YardDay> days;              ///< ask.from to ask.to
  std::optional<base::HiveId> foulBrood;  ///< suspected there: nothing in or out
};

struct DueList {
  DueAsk ask;
  std::vector<DueTask> tasks;        ///< by date, yard, hive, rule
  std::vector<YardDays> yards;       ///< one for each yard asked for
  std::vector<base::Message> notes;  ///< figures out of range, yards without weather
  /// The forecasts that it stands on, with rows some days apart and nobody feeding or treating, for
  /// who shows them beside it.
  std::vector<forecast::ColonyForecast> forecasts;
};

/// Everything that falls due in the yards between two days, from the records up to ask.from.
/// The same for a season and an ask, whatever the number of threads. Cancelled: an empty list.
DueList whatFallsDue(const apiary::Season& season, const DueAsk& ask, int threads,
                     base::Progress& progress);

/// The task to be planned for it (addTask of the session); `word` makes the sentence that is kept.
apiary::Task taskOf(const DueTask& due, base::TaskId id,
                    const std::function<std::string(const base::Message&)>& word);

/// Hives at risk, for the top of the desk: stores out, no room, queen, mites, foul brood. A subset
/// of list.tasks by index, the most pressing first.
std::vector<std::size_t> atRisk(const DueList& list);

/// The rule in words, for the help and the settings: what it asks for, when, why, with what care.
struct DueRuleText {
  std::string_view code;    ///< the column `task` of the command season
  base::Message name;       ///< "Give room"
  base::Message needs;      ///< what must be so
  base::Message window;     ///< when
  base::Message caution;    ///< the usual caution; an empty key where there is none
  std::string_view source;  ///< of its figures: "common practice, no source", "our assumption", ...
};
std::vector<DueRuleText> dueRuleTexts();
/// Name of a rule or of a task's kind ("planned" tasks) for people.
base::Message dueName(const DueTask& due);

}  // namespace outyard::planning
