// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/plan_room.h"

#include <gtest/gtest.h>

#include "tests/ui/pairs/grown_yard.h"
#include "ui/pairs/pairs_notes.h"
#include "ui/pairs/pairs_words.h"
#include "ui/pairs/plan_runner.h"

namespace outyard::pairs {
namespace {

using tests::GrownYard;
using tests::YardWish;

PlanOutcome planFor(const apiary::Season& season) {
  planning::BoostRequest request;
  request.yards = {base::YardId("TR")};
  request.date = tests::day(tests::kYardDay);
  base::Progress quiet;
  return workOutPlan(season, request, quiet);
}

/// True when the plan with one colony's choice replaced obeys every limit and rule.
bool possible(const planning::BoostPlan& plan, const planning::BoostOption& other) {
  std::vector<std::string> pins{other.id};
  for (const auto& id : plan.chosen) {
    const auto* o = plan.option(id);
    if (!planning::isVisit(*o) && o->colony != other.colony) pins.push_back(id);
  }
  base::Progress quiet;
  return planning::solveBoost(planning::repinned(plan.problem, pins, {}), quiet).ok();
}

// The solver is the judge: what stands against an option is said exactly when the plan with it
// breaks a limit or a rule.
TEST(PlanRoom, SaysWhatStandsAgainstAnOptionExactlyWhenTheSolverRefusesIt) {
  const auto outcome = planFor(GrownYard({.hives = 30, .excluders = 2}).take());
  ASSERT_TRUE(outcome.plan);
  const PlanRoom room(*outcome.plan);
  int fits = 0, refused = 0;
  for (const auto& o : outcome.plan->problem.options) {
    if (planning::isVisit(o) || outcome.plan->chosenFor(o.colony)->id == o.id) continue;
    if ((fits + refused) % 7 != 0 && fits > 20 && refused > 20) continue;  // a sample of them
    const bool can = possible(*outcome.plan, o);
    EXPECT_EQ(room.against(o).isEmpty(), can)
        << o.id << ": " << room.against(o).join(u';').toStdString();
    ++(can ? fits : refused);
  }
  EXPECT_GT(fits, 5);
  EXPECT_GT(refused, 5);
}

TEST(PlanRoom, PlanBFitsBesideTheRestAndDoesWithoutTheDonor) {
  const auto outcome = planFor(GrownYard({.hives = 30, .excluders = 2}).take());
  ASSERT_TRUE(outcome.plan);
  const PlanRoom room(*outcome.plan);
  int found = 0;
  for (const auto& id : outcome.plan->chosen) {
    const auto* o = outcome.plan->option(id);
    if (planning::isVisit(*o) || !o->donorColony) continue;
    const auto* b = room.planB(*o);
    if (!b) continue;
    ++found;
    EXPECT_EQ(b->colony, o->colony);
    EXPECT_NE(b->donorColony, o->donorColony);
    EXPECT_GT(b->net, 0);
    EXPECT_TRUE(possible(*outcome.plan, *b)) << b->id;
  }
  EXPECT_GT(found, 0);
}

TEST(PlanRoom, WithoutAnExcluderAtHandItIsNamed) {
  const auto outcome = planFor(GrownYard({.excluders = 0}).take());
  ASSERT_TRUE(outcome.plan);
  const PlanRoom room(*outcome.plan);
  int stacks = 0;
  for (const auto& o : outcome.plan->problem.options) {
    if (o.method != apiary::Method::Stack) continue;
    ++stacks;
    EXPECT_TRUE(room.against(o).contains(QStringLiteral("none at hand: excluder"))) << o.id;
  }
  EXPECT_GT(stacks, 0);
  // And what the first one would bring stands with the gear.
  base::Progress quiet;
  const auto prices = planning::worthOfOneMore(*outcome.plan, quiet);
  ASSERT_FALSE(prices.empty());
  EXPECT_EQ(prices.front().item, "excluder");
}

TEST(PairsNotes, DaysInRowsAreReadAsSpans) {
  const auto days = [](std::initializer_list<const char*> list) {
    std::vector<base::Date> out;
    for (const char* iso : list) out.push_back(tests::day(iso));
    return daysText(out);
  };
  EXPECT_EQ(days({}), QString());
  EXPECT_EQ(days({"2026-05-02", "2026-05-03", "2026-05-04"}), QStringLiteral("2–4 May 2026"));
  EXPECT_EQ(days({"2026-04-29", "2026-04-30", "2026-05-01", "2026-05-03"}),
            QStringLiteral("29 Apr–1 May 2026, 3 May 2026"));
}

TEST(PairsNotes, ADifferenceHasItsSign) {
  EXPECT_EQ(signedText(0.19), QStringLiteral("+0.19"));
  EXPECT_EQ(signedText(-0.082), QStringLiteral("−0.08"));
  EXPECT_EQ(signedText(-0.001), QStringLiteral("±0"));
}

}  // namespace
}  // namespace outyard::pairs
