// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/apiary/state.h"
#include "core/strength/estimate.h"
#include "core/strength/frame_table.h"

/// From expected bees and brood to what is looked at in the yard: seams from above and combs with
/// brood. The inverse of what an estimate does with a look.
namespace outyard::strength {

/// Whole seams or combs, as a person reads them.
struct WholeRange {
  int low = 0, high = 0;
  bool operator==(const WholeRange&) const = default;
};

/// A figure with its central 80 % band.
struct Spread {
  double median = 0, low = 0, high = 0;
  [[nodiscard]] WholeRange whole() const;
};

struct ExpectedLook {
  Spread seams;
  Spread combs;      ///< with any brood
  double width = 0;  ///< of the band of seams, as a share of its median: how sure it is
};

/// Combs with any brood that hold so many cells, each about half covered (kCombWithBroodCover) and
/// four fifths of that really brood (kFrameOfBroodFill); any brood at all is on one comb.
double combsWithBrood(double cells, const FrameFigures& figures);
/// Cells on so many combs with brood.
double cellsOfCombs(double combs, const FrameFigures& figures);

/// What a look at a colony with these bees (as a careful full count reads them) and brood cells
/// would find. frames: those of its boxes, which it cannot fill more than; 0 = not recorded.
ExpectedLook expectedLook(const Spread& bees, const Spread& broodCells, const FrameFigures& figures,
                          int frames);
/// Frames in all boxes of the colony; 0 when they are not recorded.
int framesOf(const apiary::HiveState& hive, const base::ColonyId& colony);

}  // namespace outyard::strength
