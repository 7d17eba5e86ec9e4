// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/forecast/assimilation.h"

/// Bees, brood and food that pass from one colony to another, member by member. What leaves one
/// arrives at the other, but for the losses that are named.
namespace outyard::forecast {

/// Shares of the trade's ranges; all are drawn for each member.
struct StackDraws {
  explicit StackDraws(int members, std::uint64_t stream);
  std::vector<float> openAfter;   ///< days until the paper is open: 2 to 4 (1 to 7 seen)
  std::vector<float> fieldLost;   ///< of the upper colony's field bees at the old stand: 0.1 to 0.4
  std::vector<float> drift;       ///< share of the way to balance a day
  std::vector<float> upperRisk;   ///< chance that the upper queen is lost: 0.05 to 0.25, about 0.1
  std::vector<float> upperQueen;  ///< uniform; below the risk she is lost
  std::vector<float> lowerQueen;  ///< uniform; below 0.02 the donor's is lost
  std::vector<float> requeen;     ///< uniform; below 0.78 a lost queen is replaced
  std::vector<float> pause;       ///< days without laying after the taking off: 1 to 4
};

/// The upper colony is set on: its field bees are lost or join the lower one, and some queens are
/// lost.
void setOver(ColonyEnsemble& upper, ColonyEnsemble& lower, const StackDraws& draws);
/// One day in one stack, `day` days after it was made: house bees drift towards balance by brood
/// and room, food is shared.
void shareStackDay(ColonyEnsemble& upper, ColonyEnsemble& lower, const StackDraws& draws, int day);
/// Taken off to a stand of its own: the old bees of the upper colony fly home below, laying rests.
void takenOff(ColonyEnsemble& upper, ColonyEnsemble& lower, const StackDraws& draws);
/// While over another colony the brood is warmed from below: factor on the cold shell.
inline constexpr float kStackWarmth = 0.6F;

/// `cells` sealed cells (each member's amount varies by about 15 %) with their mites.
void moveSealed(ColonyEnsemble& from, ColonyEnsemble& to, double cells, std::uint64_t stream);
/// `bees` house bees, young ones first in proportion to the nurses that there are.
void moveNurses(ColonyEnsemble& from, ColonyEnsemble& to, double bees, std::uint64_t stream);
/// The field bees of both change over.
void changeFieldBees(ColonyEnsemble& a, ColonyEnsemble& b);
/// Adults that do not arrive when two colonies are united: our assumption.
inline constexpr double kUniteLost = 0.15;
/// All bees, brood and food of one join the other; `lost` of the adults do not arrive.
void joinAll(ColonyEnsemble& from, ColonyEnsemble& to, double lost, std::uint64_t stream);

}  // namespace outyard::forecast
