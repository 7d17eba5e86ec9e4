// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_worth.h"

#include <gtest/gtest.h>

#include "tests/core/planning/problem_maker.h"

namespace outyard::planning {
namespace {

TEST(WorthOfOneMore, IsTheGainOfSolvingWithOneMore) {
  base::Progress quiet;
  int found = 0;
  for (std::uint64_t seed = 1; seed <= 5; ++seed) {
    BoostProblem problem = testing::yardProblem(seed, 8, 6);
    problem.gear["excluder"] = 1;
    const auto plan = solveBoost(problem, quiet);
    ASSERT_TRUE(plan.ok());
    problem.gear["excluder"] = 2;
    const auto more = solveBoost(problem, quiet);
    ASSERT_TRUE(more.ok());
    const auto worth = worthOfOneMore(*plan, quiet);
    const double gain = more->objective - plan->objective;
    if (gain > 1e-6) {
      ++found;
      ASSERT_FALSE(worth.empty());
      EXPECT_EQ(worth.front().item, "excluder");
      EXPECT_NEAR(worth.front().worth, gain, 1e-9);
    } else {
      EXPECT_TRUE(worth.empty());
    }
  }
  EXPECT_GT(found, 0);
}

TEST(WorthOfOneMore, NothingIsScarceNothingIsWorthMore) {
  base::Progress quiet;
  BoostProblem problem = testing::yardProblem(2, 4, 4);
  problem.gear["excluder"] = 50;
  const auto plan = solveBoost(problem, quiet);
  ASSERT_TRUE(plan.ok());
  EXPECT_TRUE(worthOfOneMore(*plan, quiet).empty());
}

}  // namespace
}  // namespace outyard::planning
