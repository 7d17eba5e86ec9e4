// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/planning/boost.h"

namespace outyard::pairs {

/// What pairing one after the other reaches: always the best single pair that is still possible,
/// until none gains anything. Obeys the same limits, rules, pins and forbids as the exact choice,
/// so that the two numbers compare.
struct GreedyChoice {
  std::vector<std::string> chosen;  ///< option ids, sorted
  double objective = 0;             ///< thousands of bees
};
/// nullopt when the pins cannot be kept together even to begin with.
std::optional<GreedyChoice> greedyChoice(const planning::BoostProblem& problem);
/// The rule of thumb: the weakest colony is paired with the strongest donor, by the way that moves
/// most bees within the limits; the next weakest with the next strongest of the same yard, and so
/// on in turn. The others are left as they are. Obeys the same limits, rules, pins and forbids.
std::optional<GreedyChoice> weakestWithStrongest(const planning::BoostProblem& problem);

}  // namespace outyard::pairs
