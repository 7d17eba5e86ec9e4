// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/apiary/state.h"
#include "core/strength/frame_table.h"

/// What the comb sides of one inspection add up to.
namespace outyard::strength {

/// A sum over the sides that were given. Complete when every side that must be known is known:
/// only then does it count as the quantity; else it is what there is at least.
struct SideSum {
  double sum = 0;
  int given = 0;  ///< sides on which the quantity was read
  bool complete = false;
};

struct CombSums {
  SideSum bees;                         ///< adults
  SideSum eggs, larvae, sealed, drone;  ///< cells
  SideSum storesKg;                     ///< honey and nectar
  double broodSides = 0;                ///< sides' worth of eggs, larvae and sealed brood
  int combsWithBrood = 0;
  int sides = 0;  ///< rows at all
};

/// Bees and stores must be known on every side of the colony's chambers and supers, brood on
/// every side of its chambers. A blank content of a side whose other contents already make up 99
/// per cent is nought; any other blank is unknown. Boxes as they stand at the inspection.
CombSums sumCombSides(const apiary::Season& season,
                      const std::vector<const apiary::CombSide*>& sides,
                      const std::vector<apiary::BoxState>& boxes, const FrameFigures& fallback);

}  // namespace outyard::strength
