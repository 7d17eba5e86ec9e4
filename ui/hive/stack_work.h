// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/apiary/state.h"

namespace outyard::hive {

/// Where a box goes into the stack.
enum class BoxSpot { Top, OverChambers, Bottom };

/// A box like those that the hive has: same frames where the role is there already.
apiary::BoxState usualBox(const apiary::HiveState& hive, apiary::BoxRole role);
/// The position that a box there gets, 1 = bottom.
int positionFor(const apiary::HiveState& hive, BoxSpot spot);
/// The whole stack with the box in it, bottom first. Where two share the hive the box belongs to
/// the colony of the box that it is set on (or under, at the bottom).
std::vector<apiary::BoxState> withBox(const apiary::HiveState& hive, BoxSpot spot,
                                      apiary::BoxState box);
/// The stack with the colony's chambers in the opposite order; excluders stay where they are.
/// nullopt when it has fewer than two.
std::optional<std::vector<apiary::BoxState>> reversedChambers(
    const apiary::HiveState& hive, const std::optional<base::ColonyId>& colony);

}  // namespace outyard::hive
