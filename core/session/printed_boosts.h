// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "core/planning/boost.h"
#include "core/session/commands.h"

/// Boosts that a sheet printed and nobody had accepted: kept with the sheet, and later done as they
/// were printed.
namespace outyard::session {

/// Keeps plan and rows of planning::printedPlan. No row: nothing is written.
CommandPtr keepPrintedPlan(planning::AcceptedPlan printed);

struct PrintedDone {
  apiary::Plan printed;
  std::vector<apiary::PlanRow> rows;
  Date date;
  std::string printedAt;  ///< UTC; what was promised was promised then; empty = now
  std::function<std::string(const base::Message&)> word;
};
/// Accepts the rows as a plan of their own with its tasks and records the work as done on the day:
/// combs given, stacked over excluder and paper, places changed, united. Feed is only set done: how
/// much it was is not on the sheet. One undo step.
CommandPtr doneAsPrinted(PrintedDone done);

/// The work of a boost's task written down as its card tells it: the records that it leads to, and
/// the task ticked off. `on` is the day; nullptr when the sheet does not say enough.
CommandPtr boostWork(const apiary::Task& task, Date on);

}  // namespace outyard::session
