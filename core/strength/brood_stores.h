// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/strength/comb_sums.h"
#include "core/strength/estimate.h"

/// The brood and the stores of one inspection; parts of estimateInspection.
namespace outyard::strength {

void addBrood(const apiary::Inspection& inspection, const CombSums& sums, const MeantFrames& frames,
              StrengthEstimate& out);

/// Bees and brood must have been added before: they are part of the tare of a weighed hive.
void addStores(const apiary::Season& season, const apiary::Inspection& inspection,
               const CombSums& sums, const std::vector<apiary::BoxState>& boxes,
               StrengthEstimate& out);

/// Stores judged as low, medium or heavy: 3, 9 or 18 kg with bands of about 1.5 to 6, 5 to 15 and
/// 11 to 30 kg. Low is under what a colony may not fall below in spring (about 5 kg), heavy is near
/// a winter's store (15 to 25 kg): common practice, no source; the widths are our assumption.
Estimate storesOfLevel(apiary::StoresLevel level);

/// Weight of a hive without its stores, and how well that is known.
struct Tare {
  double kg = 0, sd = 0;
};
/// Boxes with drawn comb from the frame table, floor, cover and entrance block (6 kg), bees
/// (0.11 g each), brood (0.13 g a cell) and 1 kg of pollen; figures other than the boxes are our
/// assumption. nullopt when the boxes or their types are not recorded.
std::optional<Tare> tareOf(const apiary::Season& season, const std::vector<apiary::BoxState>& boxes,
                           const std::optional<Estimate>& bees,
                           const std::optional<Estimate>& broodCells);

}  // namespace outyard::strength
