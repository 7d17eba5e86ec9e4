// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/message.h"
#include "core/strength/estimate.h"

namespace outyard::strength {

/// The judgement on a colony with its evidence: never a verdict without what it stands on and what
/// would change it.
struct Judgement {
  base::ColonyId colony;
  base::HiveId hive;
  apiary::VerdictCode verdict = apiary::VerdictCode::NotEnoughSeen;
  std::vector<base::Message> evidence;
  std::vector<base::Message> wouldChange;
  /// Given when a person overruled the rules: what the rules say, and the person's reason.
  std::optional<apiary::VerdictCode> ruleVerdict;
  std::string overruledWhy;
  /// Nothing moves from or to this colony (sickness of its own or foul brood in the yard, heavy
  /// mites), with the reason; empty = no bar.
  std::optional<base::Message> healthBar;
  /// Chalkbrood or sacbrood: gives no combs, may still give bees by stacking beneath.
  bool givesNoCombs = false;
  std::optional<StrengthEstimate> strength;
  std::optional<int> daysSinceSeen;
};

/// Judges by the evidence of the inspections up to the day. Rules and thresholds: verdict.cpp,
/// each tested case by case; overruled by the latest event of kind verdict after the evidence.
Judgement judge(const apiary::Season& season, const base::ColonyId& colony, base::Date day);
/// All colonies that live in the yard on the day.
std::vector<Judgement> judgeYard(const apiary::Season& season, const base::YardId& yard,
                                 base::Date day);

}  // namespace outyard::strength
