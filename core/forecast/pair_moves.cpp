// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/pair_moves.h"

#include <algorithm>

#include "core/forecast/assimilation_parts.h"
#include "core/forecast/exact_math.h"

namespace outyard::forecast {

using namespace state;

namespace {

/// What a chamber's room counts beside brood when bees spread over a stack: a cell of comb draws
/// as many bees as this share of a cell of brood. Our assumption, set so that 3,000 to 6,000 bees
/// come up within a week (common practice, no source).
constexpr double kRoomWeight = 0.22;
constexpr double kChamberCells = 69000;  ///< a chamber of ten Langstroth combs
constexpr double kFoodShare = 0.25;      ///< of the way to equal food a bee, a day: our assumption

float& at(ColonyEnsemble& c, int v, int m) {
  return c.e.value(v)[m];
}

/// Moves a share of one variable.
void pass(ColonyEnsemble& from, ColonyEnsemble& to, int v, int m, float share) {
  const float moved = at(from, v, m) * share;
  at(from, v, m) -= moved;
  at(to, v, m) += moved;
}

/// Bees of the nest: all but the field bees.
double houseBees(const ColonyEnsemble& c, int m) {
  return adults(c.e, m) - static_cast<double>(c.e.value(kForagers)[m]);
}

void passHouse(ColonyEnsemble& from, ColonyEnsemble& to, int m, double share) {
  const double before = adults(from.e, m);
  const double moved = houseBees(from, m) * share;
  const auto f = static_cast<float>(share);
  for (int k = 0; k < kYoungDays; ++k) pass(from, to, kYoung + k, m, f);
  pass(from, to, kOlder, m, f);
  pass(from, to, kWinter, m, f);
  // Mites ride on the bees that go.
  if (before > 1) pass(from, to, kMites, m, static_cast<float>(moved / before));
}

double brood(const ColonyEnsemble& c, int m) {
  return total(c.e, kEgg, kYoung - kEgg, m);
}

void loseQueen(ColonyEnsemble& c, int m, float requeen) {
  // Cells from young brood: 12 days and some ten to the first eggs (as in act).
  at(c, kQueenless, m) = requeen < 0.78F ? 23.0F : -1.0F;
}

float triangular(base::Random& random, double lo, double mode, double hi) {
  const double u = random.uniform(), c = (mode - lo) / (hi - lo);
  return static_cast<float>(u < c ? lo + std::sqrt(u * (hi - lo) * (mode - lo))
                                  : hi - std::sqrt((1 - u) * (hi - lo) * (hi - mode)));
}

}  // namespace

StackDraws::StackDraws(int members, std::uint64_t stream) {
  base::Random random(stream);
  for (int m = 0; m < members; ++m) {
    openAfter.push_back(triangular(random, 1.5, 2.5, 5));
    fieldLost.push_back(triangular(random, 0.1, 0.25, 0.4));
    drift.push_back(triangular(random, 0.2, 0.4, 0.6));
    upperRisk.push_back(triangular(random, 0.05, 0.06, 0.2));  // mean 0.10
    upperQueen.push_back(static_cast<float>(random.uniform()));
    lowerQueen.push_back(static_cast<float>(random.uniform()));
    requeen.push_back(static_cast<float>(random.uniform()));
    pause.push_back(triangular(random, 1, 2, 4));
  }
}

void setOver(ColonyEnsemble& upper, ColonyEnsemble& lower, const StackDraws& draws) {
  for (int m = 0; m < upper.e.members; ++m) {
    const auto i = static_cast<std::size_t>(m);
    at(upper, kForagers, m) *= 1 - draws.fieldLost[i];
    pass(upper, lower, kForagers, m, 1);
    upper.e.param(Param::CoverShell)[m] *= kStackWarmth;
    if (draws.upperQueen[i] < draws.upperRisk[i]) loseQueen(upper, m, draws.requeen[i]);
    if (draws.lowerQueen[i] < 0.02F) loseQueen(lower, m, draws.requeen[i]);
  }
}

void shareStackDay(ColonyEnsemble& upper, ColonyEnsemble& lower, const StackDraws& draws, int day) {
  for (int m = 0; m < upper.e.members; ++m) {
    const auto i = static_cast<std::size_t>(m);
    if (static_cast<float>(day) < draws.openAfter[i]) continue;
    const auto weight = [&](const ColonyEnsemble& c) {
      const double room =
          std::min(kChamberCells, static_cast<double>(c.e.param(Param::NestCells)[m]));
      return brood(c, m) + kRoomWeight * room;
    };
    const double up = weight(upper), down = weight(lower);
    const double above = houseBees(upper, m), below = houseBees(lower, m);
    const double balance = (above + below) * up / (up + down);
    const double go = (balance - above) * static_cast<double>(draws.drift[i]);
    if (go > 0 && below > 1) passHouse(lower, upper, m, std::min(0.5, go / below));
    if (go < 0 && above > 1) passHouse(upper, lower, m, std::min(0.5, -go / above));
    // Food passes from mouth to mouth: towards equal stores a bee.
    for (const int food : {kHoney, kPollen}) {
      const double a = static_cast<double>(at(upper, food, m)),
                   b = static_cast<double>(at(lower, food, m));
      const double na = adults(upper.e, m), nb = adults(lower.e, m);
      const double even = (a + b) * na / (na + nb + 1e-9);
      const auto moved = static_cast<float>(std::clamp((even - a) * kFoodShare, -a, b));
      at(upper, food, m) += moved;
      at(lower, food, m) -= moved;
    }
  }
}

void takenOff(ColonyEnsemble& upper, ColonyEnsemble& lower, const StackDraws& draws) {
  for (int m = 0; m < upper.e.members; ++m) {
    const auto i = static_cast<std::size_t>(m);
    pass(upper, lower, kForagers, m, 0.9F);
    pass(upper, lower, kOlder, m, 0.25F);
    upper.e.param(Param::CoverShell)[m] /= kStackWarmth;
    float& queenless = at(upper, kQueenless, m);
    if (queenless >= 0 && queenless < draws.pause[i]) queenless = draws.pause[i];
  }
}

void moveSealed(ColonyEnsemble& from, ColonyEnsemble& to, double cells, std::uint64_t stream) {
  base::Random random(stream);
  for (int m = 0; m < from.e.members; ++m) {
    const double vary = exactExp(0.15 * normalDraw(random));
    const double now = total(from.e, kSealed, kSealedDays, m);
    if (now < 1) continue;
    const auto share = static_cast<float>(std::min(0.9, cells * vary / now));
    for (int k = 0; k < kSealedDays; ++k) {
      pass(from, to, kSealed + k, m, share);
      pass(from, to, kMiteCells + k, m, share);
    }
  }
}

void moveNurses(ColonyEnsemble& from, ColonyEnsemble& to, double bees, std::uint64_t stream) {
  base::Random random(stream);
  for (int m = 0; m < from.e.members; ++m) {
    const double vary = exactExp(0.15 * normalDraw(random));
    const double now = houseBees(from, m);
    if (now > 1) passHouse(from, to, m, std::min(0.7, bees * vary / now));
  }
}

void changeFieldBees(ColonyEnsemble& a, ColonyEnsemble& b) {
  for (int m = 0; m < a.e.members; ++m) std::swap(at(a, kForagers, m), at(b, kForagers, m));
}

void joinAll(ColonyEnsemble& from, ColonyEnsemble& to, double lost, std::uint64_t stream) {
  base::Random random(stream);
  for (int m = 0; m < from.e.members; ++m) {
    for (int v = kYoung; v <= kWinter; ++v) at(from, v, m) *= static_cast<float>(1 - lost);
    for (int v = 0; v < kQueenless; ++v) pass(from, to, v, m, 1);
    at(from, kQueenless, m) = -1;
    const auto risk = static_cast<float>(random.uniform());
    if (risk < 0.02F) loseQueen(to, m, static_cast<float>(random.uniform()));
  }
}

}  // namespace outyard::forecast
