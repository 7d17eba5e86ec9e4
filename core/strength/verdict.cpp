// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/verdict.h"

#include <algorithm>

#include "core/strength/judge_rules.h"

namespace outyard::strength {
namespace {

using apiary::Event;
using apiary::EventKind;
using apiary::VerdictCode;
using base::ColonyId;
using base::Date;

/// The latest word of a person on the colony, on or after the day of the evidence.
struct Overruling {
  VerdictCode verdict;
  std::string why;
};

std::optional<Overruling> overrulingOf(const apiary::Season& season, const ColonyId& colony,
                                       const std::optional<Date>& evidenceOn, Date day) {
  std::optional<Overruling> out;
  std::optional<Date> last;
  std::vector<base::HiveId> done;
  for (const apiary::ColonyStay* stay : season.stays(colony)) {
    if (std::find(done.begin(), done.end(), stay->hive) != done.end()) continue;
    done.push_back(stay->hive);
    for (const Event* e : season.journal<Event>(stay->hive)) {
      if (e->date > day) break;
      if (e->kind != EventKind::Verdict || (evidenceOn && e->date < *evidenceOn)) continue;
      const auto code = apiary::parseCode<VerdictCode>(e->method);
      if (!code || (last && e->date < *last)) continue;
      const auto meant =
          apiary::colonyMeant(apiary::hiveOn(season, stay->hive, e->date), e->colony);
      if (meant != colony) continue;
      out = Overruling{*code, e->detail};
      last = e->date;
    }
  }
  return out;
}

Judgement judgeWith(const apiary::Season& season, const ColonyId& colony, Date day,
                    const VerdictRules& rules,
                    const std::optional<std::optional<base::HiveId>>& foulKnown) {
  Judgement out;
  out.colony = colony;
  const Evidence evidence = gatherEvidence(season, colony, day, rules);
  if (!evidence.hive) {
    // Gone by that day (united, died, sold) or never there: nothing to judge.
    out.evidence.push_back(base::message("evidence.no_colony", colony.str(), day.iso()));
    return out;
  }
  out.hive = *evidence.hive;
  out.verdict = verdictOf(evidence, rules);
  out.evidence = evidenceWords(evidence, rules);
  out.wouldChange = wouldChangeWords(out.verdict, evidence, rules);
  out.healthBar = healthBarOf(
      evidence, foulKnown ? *foulKnown : apiary::foulBroodIn(season, evidence.yard, day));
  out.givesNoCombs = evidence.disease == apiary::Disease::Chalkbrood ||
                     evidence.disease == apiary::Disease::Sacbrood;
  out.strength = evidence.strength;
  if (evidence.lastSeen) out.daysSinceSeen = evidence.daysSince;

  if (const auto person = overrulingOf(season, colony, evidence.lastSeen, day)) {
    out.ruleVerdict = out.verdict;
    out.verdict = person->verdict;
    out.overruledWhy = person->why;
  }
  return out;
}

}  // namespace

Judgement judge(const apiary::Season& season, const ColonyId& colony, Date day) {
  return judgeWith(season, colony, day, rulesFor(season), std::nullopt);
}

std::vector<Judgement> judgeYard(const apiary::Season& season, const base::YardId& yard, Date day) {
  const VerdictRules rules = rulesFor(season);
  const std::optional<base::HiveId> foulIn = apiary::foulBroodIn(season, yard, day);
  std::vector<Judgement> out;
  for (const apiary::HiveState& hive : apiary::yardOn(season, yard, day)) {
    for (const apiary::ColonyState& c : hive.colonies) {
      out.push_back(judgeWith(season, c.colony, day, rules, std::make_optional(foulIn)));
    }
  }
  return out;
}

}  // namespace outyard::strength
