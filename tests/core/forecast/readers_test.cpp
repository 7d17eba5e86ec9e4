// SPDX-License-Identifier: GPL-3.0-or-later
// Two readers look at one colony by turns, one of them reads a fifth less: the forecast learns who
// reads how, and their difference no longer passes for growth and loss.
#include <gtest/gtest.h>

#include <cmath>

#include "core/forecast/assimilation.h"
#include "tests/calibration/colony_run.h"

namespace outyard::forecast {
namespace {

using base::Date;
using strength::Estimate;

struct Learnt {
  double ratio = 1;   ///< what reader B is thought to make of bees against A, median
  double wander = 0;  ///< mean step of the estimate of bees at a look, as a logarithm
};

Learnt afterLooks(bool named, std::uint64_t seed) {
  const auto& figures = Figures::shipped();
  const auto season = calibration::yardAt(45);
  ForecastAsk ask;
  ask.from = Date::parse("2026-05-01").value();
  ask.to = ask.from.plusDays(120);
  const Date first = Date::parse("2025-01-01").value();
  const auto weather = yardWeather(season, base::YardId("Y"), first, ask, figures);
  base::Random random(seed);
  Look look;
  look.date = ask.from;
  look.bees = Estimate::fromMedian(9000, 0.1);
  look.sealed = Estimate::fromMedian(9000, 0.15);
  const int start = ask.from - first;
  auto ce = settledEnsemble(figures, kMembers, 45, ask.from.dayOfYear(), std::nullopt, &look,
                            weather.drivers, start, random);
  // The truth: another ensemble's member, seen by A as it is and by B a fifth lower.
  auto truth = ce;
  Outputs none;
  Learnt out;
  const auto middle = [](const ColonyEnsemble& c) {
    std::vector<double> v;
    for (int m = 0; m < c.e.members; ++m) {
      double bees = 0;
      for (int k = state::kYoung; k <= state::kWinter; ++k) {
        bees += static_cast<double>(c.e.value(k)[m]);
      }
      v.push_back(bees);
    }
    return calibration::bandOf(v).median;
  };
  const int member = static_cast<int>(seed % 200);
  truth.e.param(Param::SwarmDraw)[member] = truth.e.param(Param::FailDraw)[member] = 1e9F;
  for (int k = 0; k < 10; ++k) {
    double bees = 0;
    for (int v = state::kYoung; v <= state::kWinter; ++v) {
      bees += static_cast<double>(truth.e.value(v)[member]);
    }
    const double seen =
        seenBees(truth, member, bees, static_cast<double>(truth.e.value(state::kForagers)[member]));
    const bool b = k % 2 == 1;
    Look next;
    next.date = ask.from.plusDays(7 * k);
    next.bees = Estimate::fromMedian(seen * (b ? 0.8 : 1) * std::exp(0.05 * random.normal()), 0.1);
    if (named) next.reader = b ? "B" : "A";
    const double before = middle(ce);
    assimilate(ce, next, random);
    if (k >= 4) out.wander += std::abs(std::log(middle(ce) / before)) / 6;
    runDays(ce.e, weather.drivers, start + 7 * k, start + 7 * (k + 1), {}, none);
    runDays(truth.e, weather.drivers, start + 7 * k, start + 7 * (k + 1), {}, none);
  }
  if (named) {
    std::vector<double> ratio;
    for (int m = 0; m < ce.e.members; ++m) {
      const auto i = static_cast<std::size_t>(m);
      ratio.push_back(static_cast<double>(ce.readers.at(1).bees[i]) /
                      static_cast<double>(ce.readers.at(0).bees[i]));
    }
    out.ratio = calibration::bandOf(ratio).median;
  }
  return out;
}

TEST(Readers, TheirDifferenceIsLearnt) {
  double ratio = 0, with = 0, without = 0;
  constexpr int kColonies = 12;
  for (int k = 0; k < kColonies; ++k) {
    const auto named = afterLooks(true, static_cast<std::uint64_t>(100 + k));
    ratio += named.ratio / kColonies;
    with += named.wander;
    without += afterLooks(false, static_cast<std::uint64_t>(100 + k)).wander;
  }
  // The truth is 0.8; a prior of 10 % for each reader leaves it a little above.
  EXPECT_LT(ratio, 0.9);
  EXPECT_GT(ratio, 0.75);
  EXPECT_LT(with, 0.9 * without);
}

}  // namespace
}  // namespace outyard::forecast
