// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string_view>

#include "core/apiary/season.h"

/// The thresholds of the judgement in one place. An outfit replaces any of them by a setting
/// "verdict.<name>"; a value that is no number, or out of the range, is passed over.
namespace outyard::strength {

struct VerdictRules {
  // Common practice, no source, where nothing else stands.
  double freshDays = 10;          ///< older evidence is not seen for brood, eggs and queen
  double forgottenDays = 35;      ///< older evidence says nothing about the strength either
  double tooSmallSeams = 1;       ///< under it the colony cannot be saved by itself or by help
  double smallSeams = 5;          ///< under it a sound colony is small
  double strongSeams = 7;         ///< from it on a donor
  double scatteredPattern = 2;    ///< at most
  double compactPattern = 3;      ///< at least
  double broodFills = 0.50;       ///< of the cells that the bees keep warm: fills the cover
  double broodLittle = 0.25;      ///< under it there is little brood for the bees
  double littleBroodSeams = 3;    ///< fewer bees are not judged by it
  double mainSeasonDays = 21;     ///< after first pollen, before it is judged by it
  double droneShare = 0.50;       ///< drone cells of all sealed brood on the sides: drone layer
  double queenlessLongDays = 21;  ///< no queen for so long: workers may lay
  double diseaseDays = 60;        ///< an illness that nobody looked at again
  double washDays = 42;           ///< an older wash says nothing
  // Mites per 100 bees from which a colony is treated before anything else. From memory, after
  // the thresholds of extension tables (1 to 3 in spring, 3 in summer, 2 to 3 in autumn).
  double mitesSpring = 2;  ///< season days 1 to 120 (north of the equator: to the end of April)
  double mitesSummer = 3;  ///< 121 to 243
  double mitesAutumn = 3;  ///< 244 on
  // Days after which a new queen should have laid. Walk-away split to first eggs 20 to 35 days:
  // common practice; ripe cell to eggs 14 to 18 days and some weather: Cushman's rearing table.
  double splitDays = 35, cellDays = 28, introducedDays = 21, swarmDays = 10, swarmedDays = 35;

  [[nodiscard]] double mitesFor(int seasonDay) const {
    return seasonDay <= 120 ? mitesSpring : seasonDay <= 243 ? mitesSummer : mitesAutumn;
  }
};

struct RuleSpec {
  std::string_view name;  ///< without "verdict."
  double VerdictRules::*member;
  double low, high;
  std::string_view unit, source;
};
std::span<const RuleSpec> ruleSpecs();
/// The shipped thresholds with the season's own settings over them.
VerdictRules rulesFor(const apiary::Season& season);

}  // namespace outyard::strength
