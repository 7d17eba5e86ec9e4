// SPDX-License-Identifier: GPL-3.0-or-later
// The optimum against a second solver (HiGHS in scipy.optimize.milp, Huangfu and Hall 2018, Math.
// Prog. Comp. 10:119), from the printed JSON alone; and what the plan gains over the rule of thumb.
#include <gtest/gtest.h>

#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "core/planning/boost_json.h"
#include "tests/core/planning/problem_maker.h"

namespace outyard::planning {
namespace {

using testing::howMany;
using testing::yardProblem;

/// Twenty to sixty hives, some two in five of them weak.
BoostProblem realisticYard(std::uint64_t seed) {
  base::Random random(seed * 7919);
  const int hives = 20 + static_cast<int>(random.below(41));
  const int weak = std::max(3, static_cast<int>(hives * (0.25 + 0.3 * random.uniform())));
  const int donors = std::max(3, static_cast<int>((hives - weak) * (0.4 + 0.5 * random.uniform())));
  return yardProblem(seed, weak, donors);
}

/// A Python with scipy: the one on the path or the system's; empty when there is none.
std::string python() {
  for (const char* name : {"python3", "/usr/bin/python3"}) {
    const std::string command = std::string(name) + " -c 'import scipy.optimize' >/dev/null 2>&1";
    if (std::system(command.c_str()) == 0) return name;
  }
  return {};
}

std::string outputOf(const std::string& command) {
  std::string out;
  FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) return out;
  char buffer[4096];
  for (std::size_t n = 0; (n = fread(buffer, 1, sizeof buffer, pipe)) > 0;) out.append(buffer, n);
  pclose(pipe);
  return out;
}

struct Compared {
  std::string name;
  double ours = 0, theirs = 0;
};

/// What the second solver makes of the plans, printed as JSON; `slack` is its own relative gap.
std::vector<Compared> compared(const std::vector<BoostPlan>& plans, double slack) {
  namespace fs = std::filesystem;
  const fs::path folder =
      fs::temp_directory_path() / ("outyard-solver-" + std::to_string(getpid()));
  fs::create_directories(folder);
  for (std::size_t i = 0; i < plans.size(); ++i) {
    std::ofstream(folder / ("plan" + std::to_string(1000 + i) + ".json"))
        << boostJson(plans[i], [](const base::Message& m) { return m.key; });
  }
  const std::string script =
      std::string(OUTYARD_SOURCE_DIR "/tests/core/planning/second_solver.py");
  const std::string out = outputOf(python() + " '" + script + "' '" + folder.string() + "' " +
                                   std::to_string(slack) + " 2>&1");
  fs::remove_all(folder);
  std::istringstream lines(out);
  std::vector<Compared> all;
  for (Compared c; lines >> c.name >> c.ours >> c.theirs;) all.push_back(c);
  EXPECT_EQ(all.size(), plans.size()) << out;
  return all;
}

TEST(SecondSolver, FindsTheSameOptimumOnRealisticYards) {
  if (python().empty()) GTEST_SKIP() << "python3-scipy is not installed: no second solver here";
  const int count = howMany(200);
  base::Progress quiet;
  std::vector<BoostPlan> plans;
  for (int i = 1; i <= count; ++i) {
    auto plan = solveBoost(realisticYard(static_cast<std::uint64_t>(i)), quiet);
    ASSERT_TRUE(plan.ok());
    ASSERT_TRUE(plan->optimal) << i;
    plans.push_back(std::move(plan).value());
  }
  for (const Compared& c : compared(plans, 0)) EXPECT_NEAR(c.ours, c.theirs, 1e-6) << c.name;
}

// An outfit on one day: gear and hours shared, each yard a drive. The gap that is shown is at most
// 1 %, and no plan of the other solver lies above the bound that was shown with it.
TEST(SecondSolver, NeverPassesTheBoundOfAnOutfitOfFortyYards) {
  if (python().empty()) GTEST_SKIP() << "python3-scipy is not installed: no second solver here";
  const int count = howMany(10);
  constexpr double kSlack = 1e-3;
  base::Progress quiet;
  std::vector<BoostPlan> plans;
  for (int i = 1; i <= count; ++i) {
    auto plan = solveBoost(testing::outfitProblem(static_cast<std::uint64_t>(i), 40, 7, 9), quiet);
    ASSERT_TRUE(plan.ok());
    EXPECT_GT(plan->problem.options.size(), 12000U);
    EXPECT_LE(plan->gap, 0.01) << i;
    EXPECT_GE(plan->bound, plan->objective);
    plans.push_back(std::move(plan).value());
  }
  const auto found = compared(plans, kSlack);
  for (std::size_t i = 0; i < found.size(); ++i) {
    EXPECT_LE(found[i].theirs, plans[i].bound + 1e-6) << found[i].name;
    EXPECT_GE(found[i].ours, found[i].theirs * (1 - plans[i].gap - kSlack) - 1e-6) << i;
    std::printf("forty yards: %.4f, bound %.4f, the other solver %.4f\n", plans[i].objective,
                plans[i].bound, found[i].theirs);
  }
}

/// The rule of thumb: the weakest colony gets the strongest donor, by the way that moves most bees
/// within the limits; the next weakest the next strongest, and so on in turn.
double weakestWithStrongest(const BoostProblem& p) {
  std::vector<std::pair<double, std::string>> donors;
  for (const auto& [name, cap] : p.donors) donors.emplace_back(-cap.bees, name);
  std::sort(donors.begin(), donors.end());
  std::vector<std::pair<double, std::string>> weak;  // the weaker, the more a stack would move
  for (const auto& o : p.options) {
    if (o.method == apiary::Method::Stack && o.donorColony->str() == donors.front().second) {
      weak.emplace_back(-o.takes.bees, o.colony.str());
    }
  }
  std::sort(weak.begin(), weak.end());
  std::vector<std::string> pins;
  base::Progress quiet;
  double worth = 0;
  std::size_t next = 0;
  for (const auto& [bees, colony] : weak) {
    const std::string& donor = donors[next++ % donors.size()].second;
    std::vector<const BoostOption*> ways;
    for (const auto& o : p.options) {
      if (o.colony.str() == colony && o.donorColony && o.donorColony->str() == donor) {
        ways.push_back(&o);
      }
    }
    std::sort(ways.begin(), ways.end(), [](const BoostOption* a, const BoostOption* b) {
      return a->takes.bees > b->takes.bees;
    });
    for (const BoostOption* o : ways) {
      BoostProblem tried = p;
      tried.request.pins = pins;
      tried.request.pins.push_back(o->id);
      // All others are left as they are, so that the pins alone count.
      for (const auto& other : p.options) {
        const auto& list = tried.request.pins;
        if (other.method != apiary::Method::Leave &&
            std::find(list.begin(), list.end(), other.id) == list.end()) {
          tried.request.forbids.push_back(other.id);
        }
      }
      const auto plan = solveBoost(std::move(tried), quiet);
      if (!plan.ok()) continue;
      pins.push_back(o->id);
      worth = plan->objective;
      break;
    }
  }
  return worth;
}

TEST(RuleOfThumb, NeverBeatsThePlanAndLosesSomeOfIt) {
  const int count = howMany(200);
  base::Progress quiet;
  double lost = 0, most = 0;
  for (int i = 1; i <= count; ++i) {
    const BoostProblem problem = realisticYard(static_cast<std::uint64_t>(i));
    const auto plan = solveBoost(problem, quiet);
    ASSERT_TRUE(plan.ok());
    const double thumb = weakestWithStrongest(problem);
    EXPECT_LE(thumb, plan->objective + 1e-9) << i;
    const double share = 1 - thumb / plan->objective;
    lost += share;
    most = std::max(most, share);
  }
  std::printf(
      "the weakest with the strongest loses %.0f %% of the plan's worth on %d yards, at most "
      "%.0f %%\n",
      100 * lost / count, count, 100 * most);
  EXPECT_GT(lost / count, 0.02);
}

}  // namespace
}  // namespace outyard::planning
