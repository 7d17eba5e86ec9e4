// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/planning/boost.h"

namespace outyard::planning {

/// What one more piece of gear would be worth to the plan, in its unit.
struct GearWorth {
  std::string item;
  double worth = 0;
};

/// Solves the plan's problem again with one more of each counted gear item, in turn: exact where
/// the plan is. Only items that would bring something, the most first. Stops when cancelled.
std::vector<GearWorth> worthOfOneMore(const BoostPlan& plan, base::Progress& progress);

}  // namespace outyard::planning
