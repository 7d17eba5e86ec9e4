// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/verdict_rules.h"

#include <string>

#include "core/base/text.h"
#include "core/strength/rule_table.h"

namespace outyard::strength {

std::span<const RuleSpec> ruleSpecs() {
  return RuleTable::shipped().specs();
}

VerdictRules rulesFor(const apiary::Season& season) {
  VerdictRules rules = RuleTable::shipped().figures();
  for (const RuleSpec& spec : ruleSpecs()) {
    const auto text = season.setting("verdict." + std::string(spec.name));
    if (!text) continue;
    const auto value = base::parseNumber(*text);
    if (value && *value >= spec.low && *value <= spec.high) rules.*spec.member = *value;
  }
  return rules;
}

}  // namespace outyard::strength
