// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/planning/boost.h"
#include "core/planning/boost_figures.h"

/// Bees covering brood after a move, from the estimates of the last looks alone ("strength_now").
/// The forecast of both colonies to the target date is to take this place; until then these are
/// balances of bees, not of growth. All formulas are our assumption over the figures in
/// boost_figures.cpp.
namespace outyard::planning {

/// What one move does: to the receiver, and to the donor in bees that its brood needs.
struct Move {
  double bees = 0;  ///< that leave the donor for good
  double combs = 0;
  Gain gain;  ///< expected, risks counted in
  double donorLoss = 0;
  double given = 0;  ///< sealed cells on the combs
  /// Sealed cells given that the receiver cannot keep warm.
  double uncovered = 0;
};

/// Bees beyond those that the donor's own brood needs.
double spareBees(const strength::StrengthEstimate& donor, const BoostFigures& figures);

/// nullopt: too few bees would come up.
std::optional<Move> stackMove(const strength::StrengthEstimate& weak,
                              const strength::StrengthEstimate& donor, const BoostFigures& figures);
/// cellsPerSide of the donor's comb; nullopt where its sealed brood was not recorded.
std::optional<Move> sealedMove(const strength::StrengthEstimate& weak,
                               const strength::StrengthEstimate& donor, int combs,
                               double cellsPerSide, const BoostFigures& figures);
std::optional<Move> nurseMove(const strength::StrengthEstimate& donor, int combs,
                              const BoostFigures& figures);
std::optional<Move> swapMove(const strength::StrengthEstimate& weak,
                             const strength::StrengthEstimate& donor, const BoostFigures& figures);
/// The queenless colony's bees join the other one.
std::optional<Move> uniteMove(const strength::StrengthEstimate& queenless,
                              const strength::StrengthEstimate& other, const BoostFigures& figures);
/// Bees that have no brood to cover because the queen has no comb to lay in.
std::optional<Move> roomMove(const strength::StrengthEstimate& weak, const BoostFigures& figures);
/// nullopt when it has food enough, or its stores were not recorded.
std::optional<Move> feedMove(const strength::StrengthEstimate& weak, const BoostFigures& figures);

}  // namespace outyard::planning
