// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/apiary/state.h"

namespace outyard::strength {

/// A number with its error: log-normal, median and central 80 % band.
struct Estimate {
  double median = 0, low = 0, high = 0;
  double sigmaLog = 0;  ///< standard deviation of the logarithm; 0 for an exact zero
  static Estimate fromMedian(double median, double sigmaLog);
};
/// Independent looks at one quantity combined by precision on the log scale.
Estimate combined(const std::vector<Estimate>& looks);

/// What an estimate was made from.
enum class Basis { CombSides, FullFrames, FramesWithBees, Seams, SeamsByBox, Weight, Summary };
}  // namespace outyard::strength

namespace outyard::apiary {
template <>
struct Codes<outyard::strength::Basis> {
  static constexpr std::array<std::string_view, 7> kText{
      "comb_sides",   "full_frames", "frames_with_bees", "seams",
      "seams_by_box", "weight",      "summary"};
};
}  // namespace outyard::apiary

namespace outyard::strength {

/// One way of seeing the bees with what it says on its own (for "seams say 9,000, frames say
/// 14,000").
struct Look {
  Basis basis = Basis::Seams;
  Estimate bees;
};

/// Strength of a colony as seen at one inspection. Quantities that nothing was recorded about are
/// empty. Bees are adults on the combs that a careful full count would read; cells are worker
/// cells.
struct StrengthEstimate {
  base::ColonyId colony;
  base::HiveId hive;
  base::Date seenOn;
  std::optional<Estimate> bees;
  std::vector<Look> looks;
  std::optional<Estimate> sealedCells, openCells, eggCells, broodCells;  ///< open = eggs + larvae
  std::optional<double> broodFrames;   ///< full frames, all stages
  std::optional<int> framesWithBrood;  ///< combs with any brood
  std::optional<Estimate> honeyKg;
  std::optional<double> seams;  ///< as counted, or worked out from the bees
  std::vector<Basis> basis;
};

/// From one inspection and its comb sides and seam counts.
StrengthEstimate estimateInspection(const apiary::Season& season,
                                    const apiary::Inspection& inspection);
/// From the last inspection of the colony up to the day; nullopt when it was never looked at.
std::optional<StrengthEstimate> estimateColony(const apiary::Season& season,
                                               const base::ColonyId& colony, base::Date day);

}  // namespace outyard::strength
