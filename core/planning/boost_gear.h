// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/apiary/season.h"

namespace outyard::planning {

/// Pieces at hand on the day: the last counts of the yards, the truck and the shed, minus what
/// later records put on hives, plus what came off. nullopt when the item was never counted there.
/// Records count from the oldest of those last counts on and from all yards, since truck and shed
/// serve all: rather a piece too few than one that is not there.
std::optional<int> gearAtHand(const apiary::Season& season, const std::string& item,
                              const std::vector<base::YardId>& yards, base::Date day);

}  // namespace outyard::planning
