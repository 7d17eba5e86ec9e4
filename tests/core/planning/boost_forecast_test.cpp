// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_forecast.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

#include "tests/core/planning/spring_yard.h"

namespace outyard::planning {
namespace {

using apiary::Method;
using testing::hasKey;
using testing::springRequest;
using testing::SpringYard;

/// A cool April yard: two small sound colonies, two strong ones, a queenless one.
apiary::Season springSeason() {
  SpringYard y;
  y.small("TR-01", 2).small("TR-02", 2.5).strong("TR-03", 9).strong("TR-04", 10).queenless("TR-05");
  y.warm(testing::kSpringDay);
  return y.take();
}

BoostProblem worked(const apiary::Season& season, int threads = 1) {
  base::Progress quiet;
  return makeForecastProblem(season, springRequest(), threads, quiet).value();
}

BoostPlan solved(BoostProblem problem) {
  base::Progress quiet;
  return solveBoost(std::move(problem), quiet).value();
}

const BoostOption* optionOf(const BoostProblem& p, const std::string& colony, Method method) {
  for (const auto& o : p.options) {
    if (o.colony.str() == colony && o.method == method) return &o;
  }
  return nullptr;
}

// Common practice, no source: a small sound colony in a cool April with a strong neighbour is set
// over it, is usable in May or June instead of July, and the donor barely loses.
TEST(BoostForecast, ASmallSoundColonyIsSetOverAStrongOne) {
  const BoostPlan plan = solved(worked(springSeason()));
  EXPECT_EQ(plan.problem.basis, "forecast");
  for (const char* colony : {"TR-01", "TR-02"}) {
    const BoostOption* o = plan.chosenFor(base::ColonyId(colony));
    ASSERT_NE(o, nullptr);
    EXPECT_EQ(o->method, Method::Stack) << colony;
    ASSERT_TRUE(o->chance);
    std::printf("%s: %.2f to %.2f, donor %.2f to %.2f, %+.0f bees, donor %+.0f\n", o->id.c_str(),
                o->chance->receiverWithout, o->chance->receiverWith, o->chance->donorWithout,
                o->chance->donorWith, o->gain.median, o->chance->donorBees);
    // Colonies differ much in how long their bees live: some grow by themselves, some not even so.
    EXPECT_LT(o->chance->receiverWithout, 0.6);
    EXPECT_GT(o->chance->receiverWith, o->chance->receiverWithout + 0.2);
    // "Of 10 like this about 8 usable": common practice, no source.
    EXPECT_NEAR(o->chance->receiverWith, 0.8, 0.1);
    EXPECT_GT(o->chance->better, 0.8);
    EXPECT_GE(o->chance->donorWith, o->chance->donorWithout - 0.15);
    EXPECT_TRUE(hasKey(o->why, "planning.why.chance"));
    EXPECT_FALSE(hasKey(o->why, "planning.why.cost"));
  }
}

TEST(BoostForecast, AQueenlessColonyIsNeverSetOver) {
  const BoostProblem p = worked(springSeason());
  EXPECT_EQ(optionOf(p, "TR-05", Method::Stack), nullptr);
}

TEST(BoostForecast, AColonyJudgedQueenlessCountsLittleAsItIs) {
  SpringYard y;
  y.queenless("TR-05", 8).strong("TR-03", 9).strong("TR-04", 10).warm(testing::kSpringDay);
  SpringYard sure = y;
  sure.set("boost.queenless_doubt", "1");
  const BoostProblem judged = worked(y.take()), forecast = worked(sure.take());
  const BoostOption* mine = optionOf(judged, "TR-05", Method::Unite);
  const BoostOption* plain = optionOf(forecast, "TR-05", Method::Unite);
  ASSERT_TRUE(mine && plain);
  ASSERT_GT(plain->chance->receiverWithout, 0.05);
  EXPECT_NEAR(mine->chance->receiverWithout, 0.1 * plain->chance->receiverWithout, 1e-9);
  EXPECT_GT(mine->benefit, plain->benefit);
  EXPECT_EQ(solved(judged).chosenFor(base::ColonyId("TR-05"))->method, Method::Unite);
}

TEST(BoostForecast, BenefitIsTheGainInChanceAndBees) {
  SpringYard y;
  y.small("TR-01", 2).strong("TR-03", 9);
  y.warm(testing::kSpringDay);
  y.set("boost.bees_weight", "0").set("boost.hour_weight", "0").set("boost.gear_weight", "0");
  const BoostProblem p = worked(y.take());
  int seen = 0;
  for (const auto& o : p.options) {
    EXPECT_NEAR(o.net, o.benefit - o.donorCost - o.otherCost, 1e-9) << o.id;
    if (o.method == Method::Leave) {
      EXPECT_EQ(o.net, 0);
      continue;
    }
    if (o.method == Method::Unite) continue;
    ++seen;
    EXPECT_NEAR(o.benefit, o.chance->receiverWith - o.chance->receiverWithout, 1.1e-6) << o.id;
    EXPECT_NEAR(o.donorCost, std::max(0.0, o.chance->donorWithout - o.chance->donorWith), 1.1e-6);
    EXPECT_EQ(o.otherCost, 0);
    EXPECT_LE(o.gain.low, o.gain.median);
    EXPECT_LE(o.gain.median, o.gain.high);
  }
  EXPECT_GE(seen, 1);
}

TEST(BoostForecast, IsTheSameOnAnyNumberOfThreads) {
  const auto season = springSeason();
  const BoostProblem a = worked(season, 1), b = worked(season, 2);
  ASSERT_EQ(a.options.size(), b.options.size());
  for (std::size_t i = 0; i < a.options.size(); ++i) {
    EXPECT_EQ(a.options[i].id, b.options[i].id);
    EXPECT_EQ(a.options[i].net, b.options[i].net);
    EXPECT_EQ(a.options[i].gain.low, b.options[i].gain.low);
  }
}

TEST(BoostForecast, HasEveryOptionAndLimitOfThePlainProblem) {
  const auto season = springSeason();
  const BoostProblem plain = makeBoostProblem(season, springRequest()).value();
  const BoostProblem p = worked(season);
  ASSERT_EQ(p.options.size(), plain.options.size());
  for (std::size_t i = 0; i < p.options.size(); ++i) {
    EXPECT_EQ(p.options[i].id, plain.options[i].id);
    EXPECT_EQ(p.options[i].takes.bees, plain.options[i].takes.bees);
    EXPECT_EQ(p.options[i].gear, plain.options[i].gear);
  }
  EXPECT_EQ(p.rules.size(), plain.rules.size());
}

TEST(BoostForecast, IsSolvedAgainWithOtherPinsWithoutNewRuns) {
  const BoostProblem p = worked(springSeason());
  const BoostPlan first = solved(p);
  const BoostOption* stack = first.chosenFor(base::ColonyId("TR-01"));
  ASSERT_NE(stack, nullptr);
  const std::string leave = "leave:TR-01::0";
  const BoostPlan pinned = solved(repinned(p, {leave, "no:such::0"}, {}));
  EXPECT_EQ(pinned.chosenFor(base::ColonyId("TR-01"))->id, leave);
  EXPECT_LE(pinned.objective, first.objective + 1e-9);
  EXPECT_EQ(pinned.problem.request.pins, std::vector<std::string>{leave});
  const BoostPlan barred = solved(repinned(p, {}, {stack->id}));
  EXPECT_NE(barred.chosenFor(base::ColonyId("TR-01"))->id, stack->id);
}

TEST(BoostForecast, WhatCountsAsUsableIsTheOutfits) {
  BoostFigures f;
  const Usable seven = usableIn({}, "langstroth_deep", f);
  f.usableSeams = 3;
  f.usableBroodCombs = 1;
  const Usable three = usableIn({}, "langstroth_deep", f);
  EXPECT_LT(three.seenBees, seven.seenBees);
  EXPECT_NEAR(seven.broodCells / three.broodCells, 4, 1e-9);
  forecast::MemberDay day;
  day.bees =
      day.seen = {static_cast<float>(seven.seenBees) + 1, static_cast<float>(three.seenBees) + 1,
                  10, static_cast<float>(seven.seenBees) + 1};
  day.brood = {static_cast<float>(seven.broodCells) + 1, static_cast<float>(three.broodCells) + 1,
               0, 0};
  EXPECT_EQ(chanceOf(day, seven), 0.25);
  EXPECT_EQ(chanceOf(day, three), 0.5);
}

TEST(BoostForecast, TheCourseOfAPairEndsWhereThePlanSaysItDoes) {
  const auto season = springSeason();
  const BoostProblem p = worked(season);
  const BoostOption* stack = optionOf(p, "TR-01", Method::Stack);
  ASSERT_NE(stack, nullptr);
  base::Progress quiet;
  std::vector<base::Message> notes;
  const auto course = pairCourse(season, p, *stack, boostFigures(season, notes), quiet);
  ASSERT_TRUE(course);
  EXPECT_EQ(course->days.front(), p.request.date);
  EXPECT_EQ(course->days.back(), p.target);
  ASSERT_EQ(course->receiverWith.size(), course->days.size());
  ASSERT_EQ(course->donorWith.size(), course->days.size());
  EXPECT_GT(course->receiverWith.back().median, course->receiverWithout.back().median);
  // The medians' difference is near the median of the paired differences.
  EXPECT_NEAR(course->receiverWith.back().median - course->receiverWithout.back().median,
              stack->gain.median, 0.25 * stack->gain.median);
  const BoostOption* leave = optionOf(p, "TR-01", Method::Leave);
  const auto same = pairCourse(season, p, *leave, boostFigures(season, notes), quiet);
  EXPECT_TRUE(same->donorWith.empty());
  EXPECT_EQ(same->receiverWith.back().median, same->receiverWithout.back().median);
}

TEST(BoostForecast, StoppedSaysSo) {
  struct Stopped : base::Progress {
    [[nodiscard]] bool cancelled() const override { return true; }
  } stopped;
  const auto got = makeForecastProblem(springSeason(), springRequest(), 1, stopped);
  ASSERT_FALSE(got);
  EXPECT_EQ(got.failure().messages.front().key, "planning.cancelled");
}

}  // namespace
}  // namespace outyard::planning
