// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "core/planning/boost.h"

/// The boosts that a yard sheet printed without their having been accepted. They are kept as a
/// plan under the number of the sheet that was never accepted, so that a row of it can be ticked
/// as done when the sheet is typed back in.
namespace outyard::planning {

/// Plan and rows as printed; no tasks, and without the colonies that are left as they are.
AcceptedPlan printedPlan(const BoostPlan& plan, const std::string& sheetNumber,
                         const std::function<std::string(const base::Message&)>& word);
/// The plan was only printed on a sheet: nobody accepted it.
bool printedOnly(const apiary::Season& season, const apiary::Plan& plan);
/// The rows that the sheet printed, by option; empty when it printed none.
std::vector<apiary::PlanRow> printedRows(const apiary::Season& season, const base::SheetId& sheet);

/// The task is the work of the row itself (not one of its return visits).
bool isWorkOf(const apiary::Task& task, const apiary::PlanRow& row);
/// The work of the row stands in the journal on the day or later.
bool isDone(const apiary::Season& season, const apiary::PlanRow& row, base::Date since);

/// These rows as a plan of their own that was taken up on the day, with the work and the return
/// visits as planned tasks (ids from the source). What should have come before the work is left
/// out.
AcceptedPlan acceptPrinted(const apiary::Season& season, const apiary::Plan& printed,
                           const std::vector<apiary::PlanRow>& rows, base::Date day,
                           base::IdSource& ids, const std::string& nowUtc,
                           const std::function<std::string(const base::Message&)>& word);

}  // namespace outyard::planning
