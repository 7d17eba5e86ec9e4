// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <map>
#include <set>
#include <thread>

#include "core/planning/boost_programme.h"
#include "tests/core/planning/problem_maker.h"

namespace outyard::planning {
namespace {

using testing::randomProblem;
using testing::yardProblem;

base::Progress g_quiet;

/// The rule of thumb: the best remaining option first, as long as everything still holds. Starts
/// from leaving all.
double greedy(const BoostProblem& problem) {
  BoostProblem sorted = problem;
  sorted.request.pins.clear();
  sorted.request.forbids.clear();
  const Programme programme = programmeOf(sorted);
  std::vector<char> chosen(sorted.options.size(), 0);
  std::map<std::string, std::size_t> leave;
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < sorted.options.size(); ++i) {
    const auto& o = sorted.options[i];
    if (isVisit(o)) continue;
    if (o.method == apiary::Method::Leave) {
      leave[o.colony.str()] = i;
      chosen[i] = 1;
    } else {
      order.push_back(i);
    }
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return sorted.options[a].net > sorted.options[b].net;
  });
  for (const std::size_t i : order) {
    const std::size_t stay = leave.at(sorted.options[i].colony.str());
    if (sorted.options[i].net <= 0 || !chosen[stay]) continue;
    chosen[stay] = 0;
    chosen[i] = 1;
    if (!holds(programme, chosen)) {
      chosen[stay] = 1;
      chosen[i] = 0;
    }
  }
  return static_cast<double>(worth(programme, chosen)) / kUnits;
}

/// Limits kept and every colony with one option, told from the plan's own fields.
void expectConserved(const BoostPlan& plan) {
  const BoostProblem& p = plan.problem;
  std::map<std::string, double> bees, combs;
  std::map<std::string, int> stacks, gear, options;
  double hours = 0, sum = 0;
  for (const auto& id : plan.chosen) {
    const BoostOption* o = plan.option(id);
    ASSERT_NE(o, nullptr) << id;
    sum += o->net;
    hours += o->hours;
    for (const auto& [item, n] : o->gear) gear[item] += n;
    if (!isVisit(*o)) ++options[o->colony.str()];
    if (!o->donorColony) continue;
    bees[o->donorColony->str()] += o->takes.bees;
    combs[o->donorColony->str()] += o->takes.broodFrames;
    stacks[o->donorColony->str()] += o->takes.stack;
  }
  EXPECT_NEAR(sum, plan.objective, 1e-9);
  for (const auto& o : p.options) {
    if (isVisit(o)) continue;
    EXPECT_EQ(options[o.colony.str()], 1) << o.colony.str();
  }
  for (const auto& [colony, cap] : p.donors) {
    EXPECT_LE(bees[colony], cap.bees);
    EXPECT_LE(combs[colony], cap.broodFrames);
    EXPECT_LE(stacks[colony], cap.stack);
  }
  for (const auto& [item, most] : p.gear) EXPECT_LE(gear[item], most) << item;
  EXPECT_LE(hours, p.hours.value_or(1e9) + 1e-9);
}

TEST(SolveBoost, EqualsTryingAllCombinationsOnSmallProblems) {
  const int count = testing::howMany(2000);
  for (int i = 0; i < count; ++i) {
    const auto seed = static_cast<std::uint64_t>(1000 + i);
    SCOPED_TRACE("seed " + std::to_string(seed));
    const BoostProblem problem = randomProblem(seed, {});
    const auto solved = solveBoost(problem, g_quiet);
    ASSERT_TRUE(solved.ok());
    const BoostPlan tried = solveBoostByTrying(problem);
    ASSERT_TRUE(tried.optimal);
    EXPECT_NEAR(solved->objective, tried.objective, 1e-9);
    EXPECT_TRUE(solved->optimal);
    EXPECT_NEAR(solved->bound, solved->objective, 1e-9);
    EXPECT_EQ(solved->gap, 0);
    EXPECT_GE(solved->objective + 1e-9, greedy(problem));
    expectConserved(*solved);
  }
}

TEST(SolveBoost, EqualsTryingOnLargerProblems) {
  const int count = testing::howMany(300);
  for (int i = 0; i < count; ++i) {
    const auto seed = static_cast<std::uint64_t>(90000 + i);
    SCOPED_TRACE("seed " + std::to_string(seed));
    const BoostProblem problem = randomProblem(seed, {9, 3, 5, true});
    const auto solved = solveBoost(problem, g_quiet);
    ASSERT_TRUE(solved.ok());
    EXPECT_NEAR(solved->objective, solveBoostByTrying(problem).objective, 1e-9);
    expectConserved(*solved);
  }
}

TEST(SolveBoost, EqualsTryingWithPinsAndForbids) {
  const int count = testing::howMany(1000);
  int impossible = 0;
  for (int i = 0; i < count; ++i) {
    const auto seed = static_cast<std::uint64_t>(500000 + i);
    SCOPED_TRACE("seed " + std::to_string(seed));
    BoostProblem problem = randomProblem(seed, {});
    base::Random random(seed + 1);
    const auto& any = problem.options[random.below(problem.options.size())];
    const auto& other = problem.options[random.below(problem.options.size())];
    problem.request.pins = {any.id};
    if (other.id != any.id) {
      (random.below(2) == 0 ? problem.request.pins : problem.request.forbids).push_back(other.id);
    }
    const auto solved = solveBoost(problem, g_quiet);
    const BoostPlan tried = solveBoostByTrying(problem);
    ASSERT_EQ(solved.ok(), tried.optimal);
    if (!solved) {
      ++impossible;
      EXPECT_FALSE(solved.failure().messages.empty());
      continue;
    }
    EXPECT_NEAR(solved->objective, tried.objective, 1e-9);
    for (const auto& pin : problem.request.pins) {
      EXPECT_TRUE(std::count(solved->chosen.begin(), solved->chosen.end(), pin)) << pin;
    }
    for (const auto& f : problem.request.forbids) {
      EXPECT_FALSE(std::count(solved->chosen.begin(), solved->chosen.end(), f)) << f;
    }
  }
  EXPECT_GT(impossible, 0);
  EXPECT_LT(impossible, count);
}

TEST(SolveBoost, TheOrderOfTheOptionsDoesNotMatter) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    BoostProblem problem = randomProblem(seed, {});
    const auto first = solveBoost(problem, g_quiet);
    std::reverse(problem.options.begin(), problem.options.end());
    const auto second = solveBoost(problem, g_quiet);
    ASSERT_TRUE(first.ok() && second.ok());
    EXPECT_EQ(first->chosen, second->chosen) << "seed " << seed;
    EXPECT_EQ(first->objective, second->objective);
  }
}

TEST(SolveBoost, AYardOfSixtyHivesIsProvenWithinSeconds) {
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    const BoostProblem problem = yardProblem(seed, 25, 35);
    const auto start = std::chrono::steady_clock::now();
    const auto plan = solveBoost(problem, g_quiet);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    ASSERT_TRUE(plan.ok());
    EXPECT_TRUE(plan->optimal) << "gap " << plan->gap << " seed " << seed;
    EXPECT_LT(took.count(), 3.0) << "seed " << seed;
    EXPECT_GE(plan->objective, greedy(plan->problem));
    expectConserved(*plan);
    RecordProperty("seconds_" + std::to_string(seed), std::to_string(took.count()));
  }
}

TEST(SolveBoost, ManyColoniesAtOnceStayWithinTheStatedGap) {
  const BoostProblem problem = yardProblem(3, 70, 60);
  const auto plan = solveBoost(problem, g_quiet);
  ASSERT_TRUE(plan.ok());
  ASSERT_GT(plan->problem.options.size(), 10000U);
  EXPECT_LE(plan->gap, 0.01);
  EXPECT_GE(plan->bound, plan->objective);
  EXPECT_GE(plan->objective, greedy(plan->problem));
  EXPECT_NEAR(plan->gap, (plan->bound - plan->objective) / plan->bound, 1e-9);
  expectConserved(*plan);
}

TEST(Rounded, HoldsAndIsNeverBetterThanTheOptimum) {
  int found = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    BoostProblem problem = randomProblem(seed, {});
    std::sort(problem.options.begin(), problem.options.end(),
              [](const auto& a, const auto& b) { return a.id < b.id; });
    base::Random random(seed);
    std::vector<double> shares;
    for (std::size_t i = 0; i < problem.options.size(); ++i) shares.push_back(random.uniform());
    const Programme programme = programmeOf(problem);
    const auto plan = rounded(programme, shares);
    ASSERT_TRUE(plan) << "seed " << seed;
    EXPECT_TRUE(holds(programme, *plan)) << "seed " << seed;
    const double value = static_cast<double>(worth(programme, *plan)) / kUnits;
    EXPECT_LE(value, solveBoostByTrying(problem).objective + 1e-9) << "seed " << seed;
    found += value > 0 ? 1 : 0;
  }
  EXPECT_GT(found, 100);
}

TEST(SolveBoost, NamesThePinsThatClash) {
  BoostProblem problem = yardProblem(4, 3, 2);
  problem.donors["D0"] = {1e6, 9, 1};
  problem.hours.reset();
  // One hive carries one stack; the comb is innocent.
  problem.request.pins = {"sealed_frames:W2:D0:1", "stack:W0:D0:0", "stack:W1:D0:0"};
  const auto plan = solveBoost(problem, g_quiet);
  ASSERT_FALSE(plan.ok());
  ASSERT_EQ(plan.failure().messages.size(), 1U);
  EXPECT_EQ(plan.failure().messages[0],
            base::message("planning.pins_clash", "stack:W0:D0:0, stack:W1:D0:0"));
}

TEST(SolveBoost, NamesThePinThatIsNoOption) {
  BoostProblem problem = yardProblem(4, 3, 2);
  problem.request.pins = {"stack:W0:D9:1"};
  const auto plan = solveBoost(problem, g_quiet);
  ASSERT_FALSE(plan.ok());
  EXPECT_EQ(plan.failure().messages.at(0), base::message("planning.pin_unknown", "stack:W0:D9:1"));
}

TEST(SolveBoost, NamesThePinThatIsForbidden) {
  BoostProblem problem = yardProblem(4, 3, 2);
  problem.request.pins = problem.request.forbids = {"stack:W0:D0:0"};
  const auto plan = solveBoost(problem, g_quiet);
  ASSERT_FALSE(plan.ok());
  EXPECT_EQ(plan.failure().messages.at(0),
            base::message("planning.pin_forbidden", "stack:W0:D0:0"));
}

TEST(SolveBoost, NamesTheColonyWhoseOptionsAreAllForbidden) {
  BoostProblem problem = yardProblem(4, 2, 1);
  for (const auto& o : problem.options) {
    if (o.colony.str() == "W1") problem.request.forbids.push_back(o.id);
  }
  const auto plan = solveBoost(problem, g_quiet);
  ASSERT_FALSE(plan.ok());
  EXPECT_EQ(plan.failure().messages.at(0), base::message("planning.all_forbidden", "W1"));
}

TEST(SolveBoost, NothingToDecideIsAnEmptyPlan) {
  const auto plan = solveBoost(BoostProblem{}, g_quiet);
  ASSERT_TRUE(plan.ok());
  EXPECT_TRUE(plan->chosen.empty());
  EXPECT_TRUE(plan->optimal);
  EXPECT_EQ(plan->objective, 0);
}

class Stopper : public base::Progress {
 public:
  [[nodiscard]] bool cancelled() const override { return true; }
};

TEST(SolveBoost, StopsWhenAskedTo) {
  Stopper stop;
  const auto plan = solveBoost(yardProblem(5, 10, 10), stop);
  ASSERT_FALSE(plan.ok());
  EXPECT_EQ(plan.failure().messages.at(0).key, "planning.cancelled");
}

class Listener : public base::Progress {
 public:
  void report(double fraction) override { seen.push_back(fraction); }
  std::vector<double> seen;
};

TEST(SolveBoost, ReportsProgressThatNeverFalls) {
  Listener listener;
  const auto plan = solveBoost(randomProblem(77, {6, 3, 3, false}), listener);
  ASSERT_TRUE(plan.ok());
  ASSERT_FALSE(listener.seen.empty());
  EXPECT_TRUE(std::is_sorted(listener.seen.begin(), listener.seen.end()));
  EXPECT_EQ(listener.seen.back(), 1.0);
}

TEST(SolveBoost, TwoOptionsOfOneIdAreABug) {
  BoostProblem problem = yardProblem(4, 2, 1);
  problem.options.push_back(problem.options.front());
  EXPECT_THROW((void)solveBoost(problem, g_quiet), std::logic_error);
}

TEST(SolveBoost, TwoThreadsAtOnceGiveTheSamePlans) {
  std::vector<std::vector<std::string>> plans(4);
  std::vector<std::thread> threads;
  for (std::size_t t = 0; t < plans.size(); ++t) {
    threads.emplace_back([&plans, t] {
      base::Progress quiet;
      for (std::uint64_t seed = 40; seed < 60; ++seed) {
        const auto plan = solveBoost(randomProblem(seed, {}), quiet);
        plans[t].insert(plans[t].end(), plan->chosen.begin(), plan->chosen.end());
      }
    });
  }
  for (auto& t : threads) t.join();
  EXPECT_FALSE(plans[0].empty());
  for (const auto& p : plans) EXPECT_EQ(p, plans[0]);
}

TEST(SolveBoostByTrying, RefusesTooMany) {
  EXPECT_THROW((void)solveBoostByTrying(yardProblem(4, 25, 35)), std::length_error);
}

TEST(Components, ColoniesThatShareNothingAreDecidedApart) {
  BoostProblem problem = yardProblem(4, 6, 3);
  problem.gear.clear();
  problem.hours.reset();
  problem.rules.clear();
  for (auto& [colony, cap] : problem.donors) cap = {1e9, 99, 99};
  EXPECT_EQ(components(programmeOf(problem)).size(), 6U);
}

}  // namespace
}  // namespace outyard::planning
