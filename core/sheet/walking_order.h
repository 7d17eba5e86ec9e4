// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>
#include <vector>

#include "core/apiary/state.h"
#include "core/strength/verdict.h"

namespace outyard::sheet {

/// Before b where numbers inside the names count as numbers: TR-2 before TR-10.
bool naturalLess(std::string_view a, std::string_view b);

/// True for a hive with signs of sickness of its own: it is opened last.
bool isSuspect(const apiary::HiveState& hive, const std::vector<strength::Judgement>& judgements);

/// The order in which the yard is walked: dead hives first (their entrances are closed at once,
/// against robbing), then the rest from the gate by the shortest way, suspects last. Hives without
/// a place on the map follow those with one, by name.
std::vector<const apiary::HiveState*> walkingOrder(
    const apiary::Season& season, const base::YardId& yard,
    const std::vector<apiary::HiveState>& hives,
    const std::vector<strength::Judgement>& judgements);

}  // namespace outyard::sheet
