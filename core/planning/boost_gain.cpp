// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_gain.h"

#include <algorithm>
#include <cmath>

namespace outyard::planning {
namespace {

using strength::StrengthEstimate;

constexpr double kZ80 = 1.2815515655446004;  // half width of the central 80 % of a normal
// Spread of the move itself, over that of the looks (standard deviation of the logarithm). Stack
// 3,000-6,000 bees, a comb of sealed brood 1.5-3 frames of bees: common practice.
constexpr double kStackSpread = 0.27, kSealedSpread = 0.27, kNurseSpread = 0.35;
constexpr double kSwapSpread = 0.35, kUniteSpread = 0.15, kRoomSpread = 0.5, kFeedSpread = 0.5;

Gain band(double median, double a, double b, double c = 0) {
  if (median <= 0) return {median, median, median};
  const double width = std::exp(kZ80 * std::sqrt(a * a + b * b + c * c));
  return {median, median / width, median * width};
}

/// What the donor misses of bees taken: little for those that its brood does not need.
double loss(const StrengthEstimate& donor, double taken, const BoostFigures& f) {
  const double spare = std::min(taken, spareBees(donor, f));
  return f.spareWeight * spare + (taken - spare);
}

}  // namespace

double spareBees(const StrengthEstimate& donor, const BoostFigures& f) {
  const double need = donor.broodCells ? donor.broodCells->median / f.cellsPerBee : f.donorKeepBees;
  return std::max(0.0, donor.bees->median - need);
}

std::optional<Move> stackMove(const StrengthEstimate& weak, const StrengthEstimate& donor,
                              const BoostFigures& f) {
  const double have = weak.bees->median, gives = donor.bees->median;
  const double up = std::floor(
      std::min({f.stackShare * (gives - have), f.stackMaxBees, gives - f.donorKeepBees}));
  if (up < f.stackMinBees) return std::nullopt;
  // The upper colony's own field bees fly back to the old stand.
  const double stays = (1 - f.upperQueenLost) * up - have * f.fieldShare * f.fieldLost;
  Move m;
  m.bees = up;
  m.gain = band(stays, weak.bees->sigmaLog, donor.bees->sigmaLog, kStackSpread);
  m.donorLoss = loss(donor, up, f) + f.donorQueenLost * gives;
  return m;
}

std::optional<Move> sealedMove(const StrengthEstimate& weak, const StrengthEstimate& donor,
                               int combs, double cellsPerSide, const BoostFigures& f) {
  if (!donor.sealedCells || !donor.framesWithBrood || *donor.framesWithBrood < 1) {
    return std::nullopt;
  }
  const double perComb = std::min(f.bestComb * donor.sealedCells->median / *donor.framesWithBrood,
                                  f.fullComb * 2 * cellsPerSide);
  const double given = perComb * combs;
  const double nurses = f.beesOnComb * combs;
  const double canCover = (weak.bees->median + nurses) * f.cellsPerBee;
  // Brood that was not recorded: a small sound colony covers about half of what it could.
  const double own =
      weak.broodCells ? weak.broodCells->median : 0.5 * weak.bees->median * f.cellsPerBee;
  const double kept = std::clamp(canCover - own, 0.0, given);
  Move m;
  m.bees = std::floor(nurses);
  m.combs = combs;
  m.given = given;
  m.uncovered = given - kept;
  m.gain = band(kept * f.emergence + nurses, weak.bees->sigmaLog, donor.sealedCells->sigmaLog,
                kSealedSpread);
  m.donorLoss = loss(donor, nurses, f) + f.broodWeight * given * f.emergence;
  return m;
}

std::optional<Move> nurseMove(const StrengthEstimate& donor, int combs, const BoostFigures& f) {
  if (!donor.framesWithBrood || *donor.framesWithBrood < combs) return std::nullopt;
  Move m;
  m.bees = std::floor(f.beesShaken * combs * f.shakenStay);
  m.gain = band(m.bees, donor.bees->sigmaLog, kNurseSpread);
  m.donorLoss = loss(donor, m.bees, f);
  return m;
}

std::optional<Move> swapMove(const StrengthEstimate& weak, const StrengthEstimate& donor,
                             const BoostFigures& f) {
  const double change = std::floor(f.fieldShare * (donor.bees->median - weak.bees->median));
  if (change < f.stackMinBees) return std::nullopt;
  Move m;
  m.bees = change;
  m.gain =
      band((1 - f.upperQueenLost) * change, weak.bees->sigmaLog, donor.bees->sigmaLog, kSwapSpread);
  m.donorLoss = loss(donor, change, f);
  return m;
}

std::optional<Move> uniteMove(const StrengthEstimate& queenless, const StrengthEstimate& other,
                              const BoostFigures& f) {
  Move m;
  m.bees = std::floor(queenless.bees->median);
  m.gain = band(f.uniteKept * m.bees, queenless.bees->sigmaLog, kUniteSpread);
  m.donorLoss = f.donorQueenLost * other.bees->median;
  return m;
}

std::optional<Move> roomMove(const StrengthEstimate& weak, const BoostFigures& f) {
  if (!weak.broodCells) return std::nullopt;
  const double idle = std::min(spareBees(weak, f), f.roomCombBees);
  if (idle <= 0) return std::nullopt;
  Move m;
  m.combs = 1;
  m.gain = band(idle, weak.bees->sigmaLog, weak.broodCells->sigmaLog, kRoomSpread);
  return m;
}

std::optional<Move> feedMove(const StrengthEstimate& weak, const BoostFigures& f) {
  if (!weak.honeyKg || weak.honeyKg->median >= f.feedBelowKg) return std::nullopt;
  const bool emergency = weak.honeyKg->median < f.feedEmergencyKg;
  Move m;
  m.gain = band((emergency ? f.feedKeepsEmergency : f.feedKeeps) * weak.bees->median,
                weak.bees->sigmaLog, kFeedSpread);
  return m;
}

}  // namespace outyard::planning
