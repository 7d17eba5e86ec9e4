// SPDX-License-Identifier: GPL-3.0-or-later
// Yards held together by gear and hours alone, solved by prices: never past the bound, and against
// the same problem solved whole.
#include "core/planning/boost_many.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/planning/problem_maker.h"

namespace outyard::planning {
namespace {

using testing::outfitProblem;

Programme outfit(std::uint64_t seed, int yards, int weak, int donors) {
  return programmeOf(outfitProblem(seed, yards, weak, donors));
}

TEST(YardsOf, AreWhatGearAndHoursAloneHoldTogether) {
  const Programme p = outfit(1, 6, 3, 4);
  EXPECT_EQ(components(p).size(), 1U);
  const auto yards = yardsOf(p);
  EXPECT_EQ(yards.size(), 6U);
  std::size_t columns = 0;
  for (const auto& y : yards) columns += y.size();
  EXPECT_EQ(columns, p.net.size());
}

TEST(SolveByPrices, LiesBetweenTheBestPlanAndItsBound) {
  base::Progress quiet;
  double lost = 0;
  constexpr int kCount = 12;
  for (std::uint64_t seed = 1; seed <= kCount; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Programme p = outfit(seed, 5, 4, 5);
    readySolver();
    const PartAnswer whole = solvePart(p, quiet);
    ASSERT_EQ(whole.end, PartAnswer::End::Optimal);
    const auto priced = solveByPrices(p, quiet);
    ASSERT_TRUE(priced);
    EXPECT_TRUE(holds(p, priced->chosen));
    const std::int64_t mine = worth(p, priced->chosen), best = worth(p, whole.chosen);
    EXPECT_LE(mine, best);
    EXPECT_GE(priced->bound, best);
    lost += static_cast<double>(best - mine) / static_cast<double>(best) / kCount;
  }
  EXPECT_LT(lost, 0.01);  // five yards mix less well than forty
}

TEST(SolveByPrices, KeepsPinsAndForbids) {
  BoostProblem problem = outfitProblem(3, 5, 4, 5);
  problem.request.pins = {"stack:Y1-W0:Y1-D0:0", "visit:Y4"};
  problem.request.forbids = {"stack:Y2-W0:Y2-D0:0"};
  for (auto& [donor, cap] : problem.donors) cap = {1e6, 9, 1};
  const Programme p = programmeOf(problem);
  base::Progress quiet;
  readySolver();
  const auto priced = solveByPrices(p, quiet);
  ASSERT_TRUE(priced);
  EXPECT_TRUE(holds(p, priced->chosen));  // fixed columns included
}

TEST(SolveByPrices, IsOfNoUseInOneYard) {
  base::Progress quiet;
  readySolver();
  EXPECT_FALSE(solveByPrices(programmeOf(testing::yardProblem(1, 4, 4)), quiet));
}

TEST(SolveByPrices, GivesTheSamePlanTwice) {
  const Programme p = outfit(8, 6, 4, 5);
  base::Progress quiet;
  readySolver();
  const auto a = solveByPrices(p, quiet), b = solveByPrices(p, quiet);
  ASSERT_TRUE(a && b);
  EXPECT_EQ(a->chosen, b->chosen);
  EXPECT_EQ(a->bound, b->bound);
}

TEST(SolveByPrices, StopsWhenAskedTo) {
  struct Stopped : base::Progress {
    [[nodiscard]] bool cancelled() const override { return true; }
  } stopped;
  readySolver();
  const auto got = solveByPrices(outfit(8, 6, 4, 5), stopped);
  ASSERT_TRUE(got);
  EXPECT_EQ(got->end, PartAnswer::End::Cancelled);
}

}  // namespace
}  // namespace outyard::planning
