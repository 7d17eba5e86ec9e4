// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/apiary/comb_state.h"

namespace outyard::hive {

/// "40 % sealed brood, 60 % honey; bees on 50 %", or that it was not seen.
QString sideWords(const std::optional<apiary::SideSeen>& side);
/// Both sides of the comb with their day.
QString combWords(const apiary::HiveCombs& combs, int box, int slot);
/// "Box 2, super, langstroth deep, 9 combs".
QString boxWords(const apiary::Season& season, const apiary::HiveCombs& combs, int box);
/// One line of the gear heap.
QString heapWords(const apiary::Season& season, const apiary::HeapItem& item);
/// What most of the box's combs hold, as far as seen: "honey", "brood", "drawn comb".
QString mostlyWords(const apiary::CombBox& box);

}  // namespace outyard::hive
