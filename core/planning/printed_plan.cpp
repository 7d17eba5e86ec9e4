// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/printed_plan.h"

#include <algorithm>

#include "core/apiary/state.h"
#include "core/planning/method_table.h"

namespace outyard::planning {

using apiary::Method;
using apiary::PlanRow;
using apiary::Task;
using base::Date;

namespace {

using Hives = std::pair<std::optional<base::HiveId>, std::optional<base::HiveId>>;

/// The two hives of a pair, whichever stands first: a union names the one that stays.
bool samePair(const Hives& a, const Hives& b) {
  return a == b || a == Hives{b.second, b.first};
}

}  // namespace

AcceptedPlan printedPlan(const BoostPlan& plan, const std::string& sheetNumber,
                         const std::function<std::string(const base::Message&)>& word) {
  base::SeededIds ids(1);  // of tasks that are let go again
  AcceptedPlan out = accept(plan, ids, {}, word);
  out.plan.plan = base::PlanId(sheetNumber);
  out.tasks.clear();
  std::erase_if(out.rows, [](const PlanRow& row) {
    return methodFigures(row.method.value_or(Method::Leave)).taskKind.empty();
  });
  for (PlanRow& row : out.rows) row.plan = out.plan.plan;
  return out;
}

bool printedOnly(const apiary::Season& season, const apiary::Plan& plan) {
  return plan.acceptedAt.empty() && season.find<apiary::SheetRow>(plan.plan.str()) != nullptr;
}

std::vector<PlanRow> printedRows(const apiary::Season& season, const base::SheetId& sheet) {
  std::vector<PlanRow> out;
  const auto* plan = season.find<apiary::Plan>(sheet.str());
  if (!plan || !printedOnly(season, *plan)) return out;
  for (const auto& [key, row] : season.table<PlanRow>()) {
    if (row.plan == plan->plan) out.push_back(row);
  }
  return out;
}

bool isWorkOf(const Task& task, const PlanRow& row) {
  return row.method && task.method == row.method &&
         task.kind == methodFigures(*row.method).taskKind &&
         samePair({task.hive, task.otherHive}, {row.hive, row.donorHive});
}

bool isDone(const apiary::Season& season, const PlanRow& row, Date since) {
  if (!row.method) return false;
  const auto kind = apiary::parseCode<apiary::EventKind>(methodFigures(*row.method).taskKind);
  const auto events = season.eventsTouching(row.hive);
  return std::any_of(events.begin(), events.end(), [&](const apiary::Event* e) {
    return e->kind == kind && e->date >= since &&
           samePair({e->hive, e->otherHive}, {row.hive, row.donorHive});
  });
}

AcceptedPlan acceptPrinted(const apiary::Season& season, const apiary::Plan& printed,
                           const std::vector<PlanRow>& rows, Date day, base::IdSource& ids,
                           const std::string& nowUtc,
                           const std::function<std::string(const base::Message&)>& word) {
  BoostPlan plan;
  BoostProblem& problem = plan.problem;
  problem.request.yards = {printed.yard};
  problem.request.date = day;
  problem.target = printed.target.value_or(day.plusDays(45));
  problem.basis = printed.basis;
  const auto see = [&](const base::ColonyId& colony, const base::HiveId& hive) {
    problem.yardOf[colony.str()] = apiary::hiveOn(season, hive, day).yard;
  };
  for (const PlanRow& row : rows) {
    problem.options.push_back(optionOf(row));
    plan.chosen.push_back(row.option);
    see(row.colony, row.hive);
    if (row.donorColony && row.donorHive) see(*row.donorColony, *row.donorHive);
  }
  AcceptedPlan out = accept(plan, ids, nowUtc, word);
  // What was printed is what was decided by: its reasons stand, not those of today.
  const base::PlanId id = out.plan.plan;
  out.plan.objective.reset();
  out.rows = rows;
  for (PlanRow& row : out.rows) row.plan = id;
  for (Task& task : out.tasks) {
    for (const PlanRow& row : rows) {
      if (isWorkOf(task, row)) task.why = row.why;
    }
  }
  std::erase_if(out.tasks, [&](const Task& t) { return t.latest && *t.latest < day; });
  return out;
}

}  // namespace outyard::planning
