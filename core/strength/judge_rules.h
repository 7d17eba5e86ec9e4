// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/strength/evidence.h"
#include "core/strength/verdict.h"

/// The rules of the judgement, the evidence in words and the bars; parts of judge().
namespace outyard::strength {

/// First rule of the table that holds.
apiary::VerdictCode verdictOf(const Evidence& evidence, const VerdictRules& rules);
std::vector<base::Message> evidenceWords(const Evidence& evidence, const VerdictRules& rules);
/// What another look would have to show for another judgement.
std::vector<base::Message> wouldChangeWords(apiary::VerdictCode verdict, const Evidence& evidence,
                                            const VerdictRules& rules);
/// Own foul brood, foul brood in the yard, other sickness, heavy mites, in this order.
std::optional<base::Message> healthBarOf(const Evidence& evidence,
                                         const std::optional<base::HiveId>& foulIn);

}  // namespace outyard::strength
