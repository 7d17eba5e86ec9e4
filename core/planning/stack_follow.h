// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/message.h"
#include "core/base/progress.h"
#include "core/forecast/colony_forecast.h"

/// What is to be done after a small colony was set over a strong one: the steps, which of them the
/// records show as done, and when the next one falls due. The windows are those of the rules of
/// what falls due (due_figures.h); the day for separating comes from the forecast of both.
namespace outyard::planning {

enum class StackStepKind {
  Set,         ///< set over the other, paper and excluder between
  Paper,       ///< is the paper open?
  UpperQueen,  ///< eggs above; else plan B
  Separate,    ///< excluder off, the upper colony on its stand
  OwnStand     ///< a look a week after
};
enum class StepState {
  Done,
  Passed,   ///< not recorded, and not asked for any more
  Waiting,  ///< its window is not open yet
  Due,
  Overdue
};

struct StackStep {
  StackStepKind kind = StackStepKind::Set;
  StepState state = StepState::Waiting;
  std::optional<base::Date> doneOn;
  base::Date earliest, latest;         ///< the window
  std::optional<base::Date> proposed;  ///< a day in it (or after it) that will do
  base::Message why;                   ///< of the proposal, or what was seen
  std::vector<base::Message> cautions;
  std::optional<base::TaskId> task;  ///< the planned task that recording it ticks off
};

struct MadeStack {
  /// What became of it.
  enum class End { Standing, TakenOff, Joined, Gone };
  base::YardId yard;
  base::HiveId hive;      ///< in which both live
  base::HiveId oldStand;  ///< where the upper colony came from
  base::ColonyId upper, lower;
  base::Date stackedOn;
  End end = End::Standing;
  std::optional<base::Date> endedOn;
  std::optional<base::HiveId> newHive;  ///< of the upper colony when it was taken off
  std::vector<StackStep> steps;         ///< in their order
  std::optional<std::size_t> next;      ///< the step to do next
  /// Looked for and not found: no eggs above after a week.
  bool noEggs = false;
  /// Bees of the upper colony on the day before it was taken off and on the day after, by forecast:
  /// what is missing flew home to the old stand.
  std::optional<double> beesBefore, beesAfter;
};

struct StackFollowAsk {
  base::Date today;
  std::vector<base::YardId> yards;  ///< empty = every yard
  int sinceDays = 150;              ///< stacks made in these days
  int members = forecast::kMembers;
  std::uint64_t seed = 1;
};

/// Those that need something next by date, then those that are finished, the newest first. Records
/// after today are not used. Cancelled: an empty list.
std::vector<MadeStack> stacksMade(const apiary::Season& season, const StackFollowAsk& ask,
                                  int threads, base::Progress& progress);

/// "Look at the paper": for people.
base::Message stepName(StackStepKind kind);
/// What to do at the step, and what when it fails.
std::vector<base::Message> stepAdvice(StackStepKind kind);

}  // namespace outyard::planning
