// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string_view>

#include "core/apiary/season.h"

/// The thresholds of the judgement in one place. An outfit replaces any of them by a setting
/// "verdict.<name>"; a value that is no number, or out of the range, is passed over.
namespace outyard::strength {

/// Values, ranges and sources stand in resources/verdict_rules.csv (core/strength/rule_table.h);
/// all are nought until they are read from there.
struct VerdictRules {
  double freshDays = 0;          ///< older evidence is not seen for brood, eggs and queen
  double forgottenDays = 0;      ///< older evidence says nothing about the strength either
  double tooSmallSeams = 0;      ///< under it the colony cannot be saved by itself or by help
  double smallSeams = 0;         ///< under it a sound colony is small
  double strongSeams = 0;        ///< from it on a donor
  double scatteredPattern = 0;   ///< at most
  double compactPattern = 0;     ///< at least
  double broodFills = 0;         ///< of the cells that the bees keep warm: fills the cover
  double broodLittle = 0;        ///< under it there is little brood for the bees
  double littleBroodSeams = 0;   ///< fewer bees are not judged by it
  double mainSeasonDays = 0;     ///< after first pollen, before it is judged by it
  double droneShare = 0;         ///< drone cells of all sealed brood on the sides: drone layer
  double queenlessLongDays = 0;  ///< no queen for so long: workers may lay
  double diseaseDays = 0;        ///< an illness that nobody looked at again
  double washDays = 0;           ///< an older wash says nothing
  /// Mites per 100 bees from which a colony is treated before anything else.
  double mitesSpring = 0;  ///< season days 1 to 120 (north of the equator: to the end of April)
  double mitesSummer = 0;  ///< 121 to 243
  double mitesAutumn = 0;  ///< 244 on
  /// Days after which a new queen should have laid.
  double splitDays = 0, cellDays = 0, introducedDays = 0, swarmDays = 0, swarmedDays = 0;

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
