// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/verdict_rules.h"

#include <string>

#include "core/base/text.h"

namespace outyard::strength {
namespace {
constexpr std::string_view kPractice = "common practice, no source";
constexpr std::string_view kMites = "extension tables, from memory";
constexpr std::string_view kAssumed = "our assumption";

constexpr RuleSpec kSpecs[] = {
    {"fresh_days", &VerdictRules::freshDays, 1, 60, "d", kPractice},
    {"forgotten_days", &VerdictRules::forgottenDays, 5, 200, "d", kPractice},
    {"too_small_seams", &VerdictRules::tooSmallSeams, 0, 5, "seams", kPractice},
    {"small_seams", &VerdictRules::smallSeams, 1, 15, "seams", kPractice},
    {"strong_seams", &VerdictRules::strongSeams, 2, 30, "seams", kPractice},
    {"scattered_pattern", &VerdictRules::scatteredPattern, 1, 5, "1-5", kPractice},
    {"compact_pattern", &VerdictRules::compactPattern, 1, 5, "1-5", kPractice},
    {"brood_fills", &VerdictRules::broodFills, 0.05, 2, "share", kAssumed},
    {"brood_little", &VerdictRules::broodLittle, 0, 2, "share", kAssumed},
    {"little_brood_seams", &VerdictRules::littleBroodSeams, 0, 30, "seams", kAssumed},
    {"main_season_days", &VerdictRules::mainSeasonDays, 0, 120, "d", kAssumed},
    {"drone_share", &VerdictRules::droneShare, 0.1, 1, "share", kAssumed},
    {"queenless_long_days", &VerdictRules::queenlessLongDays, 10, 90, "d", kPractice},
    {"disease_days", &VerdictRules::diseaseDays, 7, 365, "d", kAssumed},
    {"wash_days", &VerdictRules::washDays, 7, 120, "d", kAssumed},
    {"mites_spring", &VerdictRules::mitesSpring, 0.1, 20, "per 100 bees", kMites},
    {"mites_summer", &VerdictRules::mitesSummer, 0.1, 20, "per 100 bees", kMites},
    {"mites_autumn", &VerdictRules::mitesAutumn, 0.1, 20, "per 100 bees", kMites},
    {"split_days", &VerdictRules::splitDays, 10, 60, "d", kPractice},
    {"cell_days", &VerdictRules::cellDays, 7, 60, "d", kPractice},
    {"introduced_days", &VerdictRules::introducedDays, 3, 60, "d", kPractice},
    {"swarm_days", &VerdictRules::swarmDays, 3, 60, "d", kPractice},
    {"swarmed_days", &VerdictRules::swarmedDays, 10, 60, "d", kPractice},
};
}  // namespace

std::span<const RuleSpec> ruleSpecs() {
  return kSpecs;
}

VerdictRules rulesFor(const apiary::Season& season) {
  VerdictRules rules;
  for (const RuleSpec& spec : kSpecs) {
    const auto text = season.setting("verdict." + std::string(spec.name));
    if (!text) continue;
    const auto value = base::parseNumber(*text);
    if (value && *value >= spec.low && *value <= spec.high) rules.*spec.member = *value;
  }
  return rules;
}

}  // namespace outyard::strength
