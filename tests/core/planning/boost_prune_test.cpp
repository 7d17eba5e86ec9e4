// SPDX-License-Identifier: GPL-3.0-or-later
// What the solver is not shown could not be in a best plan: tried, not argued.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <optional>

#include "core/planning/boost_programme.h"
#include "tests/core/planning/problem_maker.h"

namespace outyard::planning {
namespace {

using testing::howMany;
using testing::randomProblem;
using testing::yardProblem;

BoostProblem sorted(BoostProblem p) {
  std::sort(p.options.begin(), p.options.end(),
            [](const auto& a, const auto& b) { return a.id < b.id; });
  return p;
}

/// Two ways for one colony beside leaving it; an excluder is short when `excluders` is given.
BoostProblem twoWays(double first, double second, std::optional<int> excluders = {}) {
  BoostProblem p;
  for (int k = 0; k < 3; ++k) {
    BoostOption o;
    o.colony = base::ColonyId("W0");
    o.hive = base::HiveId("W0");
    o.method = k == 0 ? apiary::Method::Leave : apiary::Method::Stack;
    o.id = k == 0 ? "leave:W0::0" : "stack:W0:D0:" + std::to_string(k);
    if (k == 1) o.gear["excluder"] = 2;
    if (k == 2) o.gear["excluder"] = 1;
    setNet(o, k == 0 ? 0 : (k == 1 ? first : second), 0, 0);
    p.options.push_back(o);
  }
  if (excluders) p.gear["excluder"] = *excluders;
  return p;
}

TEST(Beaten, WorthLessAndTakesNoLess) {
  const std::vector<char> none{0, 0, 0};
  // Columns: leave, two excluders, one excluder.
  EXPECT_EQ(beaten(programmeOf(twoWays(0.2, 0.3))), (std::vector<char>{1, 1, 0}));
  EXPECT_EQ(beaten(programmeOf(twoWays(0.3, 0.2))), (std::vector<char>{1, 0, 1}));
  EXPECT_EQ(beaten(programmeOf(twoWays(-0.1, -0.2))), (std::vector<char>{0, 1, 1}));
  // Where excluders are short the dearer way stays only while it is the better one.
  EXPECT_EQ(beaten(programmeOf(twoWays(0.3, 0.2, 1))), none);
  EXPECT_EQ(beaten(programmeOf(twoWays(0.2, 0.3, 1))), (std::vector<char>{0, 1, 0}));
  // Equal in worth: either may be in a best plan.
  EXPECT_EQ(beaten(programmeOf(twoWays(0.2, 0.2))), (std::vector<char>{1, 0, 0}));
}

TEST(Beaten, APinKeepsAllAndWhatIsForbiddenBeatsNothing) {
  BoostProblem p = twoWays(0.2, 0.3);
  p.request.pins = {"stack:W0:D0:1"};
  EXPECT_EQ(beaten(programmeOf(p)), (std::vector<char>{0, 0, 0}));
  p.request.pins.clear();
  p.request.forbids = {"stack:W0:D0:2"};
  EXPECT_EQ(beaten(programmeOf(p)), (std::vector<char>{1, 0, 0}));
}

TEST(Beaten, IsInNoBestPlanOfSmallYards) {
  const int count = howMany(2000);
  base::Progress quiet;
  int tried = 0;
  for (int i = 0; i < count; ++i) {
    const auto seed = static_cast<std::uint64_t>(70000 + i);
    SCOPED_TRACE("seed " + std::to_string(seed));
    const BoostProblem problem = sorted(randomProblem(seed, {}));
    const std::vector<char> gone = beaten(programmeOf(problem));
    const double best = solveBoostByTrying(problem).objective;
    for (std::size_t k = 0; k < gone.size(); ++k) {
      if (!gone[k]) continue;
      BoostProblem forced = problem;
      forced.request.pins = {problem.options[k].id};
      const BoostPlan with = solveBoostByTrying(forced);
      if (!with.optimal) continue;  // no plan holds it at all
      ++tried;
      EXPECT_LT(with.objective, best - 0.5 / kUnits) << problem.options[k].id;
    }
  }
  EXPECT_GT(tried, count / 2);
}

TEST(Beaten, IsMostOfAYardAndPinningAnyOfItCosts) {
  base::Progress quiet;
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    const BoostProblem problem = sorted(yardProblem(seed, 12, 16));
    const std::vector<char> gone = beaten(programmeOf(problem));
    const auto n = std::count(gone.begin(), gone.end(), 1);
    std::printf("%td of %zu options cannot be in the plan\n", n, gone.size());
    EXPECT_GT(n, 0);
    const double best = solveBoost(problem, quiet)->objective;
    base::Random random(seed);
    for (std::size_t k = 0; k < gone.size(); ++k) {
      if (!gone[k] || random.below(10) != 0) continue;
      const auto forced = solveBoost(repinned(problem, {problem.options[k].id}, {}), quiet);
      if (!forced) continue;
      EXPECT_LT(forced->objective, best) << problem.options[k].id;
    }
  }
}

TEST(Without, KeepsTheNumbersAndLeavesRowsThatHaveNothingLeft) {
  Programme p;
  p.net = {0, 5, 7, -2};
  p.fixed.assign(4, Fixed::Free);
  p.group = {0, 0, 0, -1};
  p.rows = {
      {{{0, 1}, {1, 1}, {2, 1}}, 1, true}, {{{1, 3}}, 2, false}, {{{2, 1}, {3, -1}}, 0, false}};
  std::vector<int> kept;
  const Programme left = without(p, {0, 1, 0, 0}, kept);
  EXPECT_EQ(kept, (std::vector<int>{0, 2, 3}));
  EXPECT_EQ(left.net, (std::vector<std::int64_t>{0, 7, -2}));
  ASSERT_EQ(left.rows.size(), 2U);
  EXPECT_TRUE(left.rows[0].exactly);
  EXPECT_EQ(left.rows[1].terms, (std::vector<std::pair<int, std::int64_t>>{{1, 1}, {2, -1}}));
}

}  // namespace
}  // namespace outyard::planning
