// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/judge_rules.h"

namespace outyard::strength {
namespace {

using apiary::Disease;
using apiary::VerdictCode;

bool foul(const Evidence& e) {
  return e.disease == Disease::SuspectAfb || e.disease == Disease::SuspectEfb;
}
bool sick(const Evidence& e, const VerdictRules&) {
  return foul(e) || e.disease == Disease::Nosema || e.disease == Disease::Other;
}
bool notSeen(const Evidence& e, const VerdictRules&) {
  return !e.lastSeen || e.forgotten;
}
bool tooSmall(const Evidence& e, const VerdictRules& r) {
  return e.fresh && e.seams && *e.seams < r.tooSmallSeams;
}

bool scattered(const Evidence& e, const VerdictRules& r) {
  return e.pattern && *e.pattern <= r.scatteredPattern;
}
/// Drone brood is usual in a strong colony; what tells is drone brood without worker brood for the
/// bees that are there, or drone brood all over a scattered pattern.
bool droneHeavy(const Evidence& e, const VerdictRules& r) {
  if (e.droneShare && *e.droneShare >= r.droneShare) return true;
  const int drones = e.droneBrood.value_or(0);
  if (drones >= 2 && scattered(e, r)) return true;
  if (drones >= 2 && e.cover && *e.cover < r.broodLittle) return true;
  return drones == 3 && !e.cover && e.pattern.value_or(0) < r.compactPattern && e.queenSeen != true;
}
bool queenLongGone(const Evidence& e, const VerdictRules& r) {
  if (e.queenSeen == true) return false;
  const bool known = e.queenKnown && *e.lastSeen - *e.queenKnown < r.queenlessLongDays;
  return !known && (e.knownQueenless || e.queenSeen == false);
}
bool layingWorkers(const Evidence& e, const VerdictRules& r) {
  return droneHeavy(e, r) && queenLongGone(e, r) &&
         (e.knownQueenless || (e.eggs == true && scattered(e, r)));
}

bool noBrood(const Evidence& e) {
  return e.anyBrood == false;
}
/// Nothing shows a laying queen and something shows that there may be none.
bool layingMissing(const Evidence& e) {
  return e.eggs != true && (e.eggs == false || noBrood(e) || e.queenLost);
}
bool tooEarly(const Evidence& e, const VerdictRules&) {
  if (!layingMissing(e)) return false;
  if (e.queenDue) return true;
  return !e.queenLost && !e.calendar.broodSeason();
}
bool queenless(const Evidence& e, const VerdictRules&) {
  if (e.queenSeen == true || e.eggs == true) return false;
  if (e.queenLost) return true;
  return e.eggs == false && noBrood(e);
}
bool littleBrood(const Evidence& e, const VerdictRules& r) {
  return e.cover && *e.cover < r.broodLittle && e.seams.value_or(0) >= r.littleBroodSeams &&
         !e.queenDue && e.calendar.broodSeason() &&
         e.calendar.today >= e.calendar.firstPollen + r.mainSeasonDays;
}
bool queenSuspect(const Evidence& e, const VerdictRules& r) {
  return layingMissing(e) || scattered(e, r) || littleBrood(e, r);
}

bool strong(const Evidence& e, const VerdictRules& r) {
  return e.seams.value_or(e.seamsAtLeast.value_or(0)) >= r.strongSeams;
}
bool fair(const Evidence& e, const VerdictRules& r) {
  return e.seams && *e.seams >= r.smallSeams;
}
bool smallSound(const Evidence& e, const VerdictRules& r) {
  if (!e.fresh || !e.seams || e.eggs != true) return false;
  if (e.pattern) return *e.pattern >= r.compactPattern;
  return e.cover && *e.cover >= r.broodFills;
}
bool always(const Evidence&, const VerdictRules&) {
  return true;
}

struct Rule {
  VerdictCode verdict;
  bool (*holds)(const Evidence&, const VerdictRules&);
};
// Read from the top; the first that holds is the judgement. Sickness bars everything; what cannot
// be saved needs no queen's judgement; the queen comes before the number of bees.
constexpr Rule kRules[] = {
    {VerdictCode::Sick, sick},
    {VerdictCode::NotEnoughSeen, notSeen},
    {VerdictCode::TooSmall, tooSmall},
    {VerdictCode::LayingWorkers, layingWorkers},
    {VerdictCode::DroneLayer, droneHeavy},
    {VerdictCode::TooEarly, tooEarly},
    {VerdictCode::Queenless, queenless},
    {VerdictCode::QueenSuspect, queenSuspect},
    {VerdictCode::Strong, strong},
    {VerdictCode::Fair, fair},
    {VerdictCode::SmallSound, smallSound},
    {VerdictCode::NotEnoughSeen, always},
};

}  // namespace

VerdictCode verdictOf(const Evidence& evidence, const VerdictRules& rules) {
  for (const Rule& rule : kRules) {
    if (rule.holds(evidence, rules)) return rule.verdict;
  }
  return VerdictCode::NotEnoughSeen;
}

}  // namespace outyard::strength
