// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_worth.h"

#include <algorithm>

namespace outyard::planning {

std::vector<GearWorth> worthOfOneMore(const BoostPlan& plan, base::Progress& progress) {
  constexpr double kLeast = 1e-6;  // the step in which benefits are counted
  std::vector<GearWorth> out;
  for (const auto& [item, count] : plan.problem.gear) {
    if (progress.cancelled()) break;
    BoostProblem more = plan.problem;
    more.gear[item] = count + 1;
    const auto better = solveBoost(std::move(more), progress);
    if (!better) continue;
    const double worth = better->objective - plan.objective;
    if (worth > kLeast) out.push_back({item, worth});
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const GearWorth& a, const GearWorth& b) { return a.worth > b.worth; });
  return out;
}

}  // namespace outyard::planning
