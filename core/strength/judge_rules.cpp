// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/judge_rules.h"

#include "core/strength/rule_table.h"

namespace outyard::strength {

apiary::VerdictCode verdictOf(const Evidence& evidence, const VerdictRules& rules) {
  return RuleTable::shipped().verdictOf(evidence, rules);
}

}  // namespace outyard::strength
