// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/plan_review.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/planning/printed_plan.h"
#include "core/session/commands.h"
#include "core/session/printed_boosts.h"
#include "tests/core/planning/spring_yard.h"

namespace outyard::planning {
namespace {

using base::ColonyId;
using base::Date;
using base::HiveId;
using session::Session;
using testing::kSpringDay;
using testing::SpringYard;
using tests::day;

/// Goes on as the season does.
class SettableClock : public base::Clock {
 public:
  std::string now = "2026-04-24T19:00:00Z";
  [[nodiscard]] Date today() const override { return Date::parse(now.substr(0, 10)).value(); }
  [[nodiscard]] std::string nowUtc() const override { return now; }
};

/// A yard in which boosts were planned the evening before, made, and looked at later.
struct PlanReviewTest : ::testing::Test {
  base::SeededIds ids{7};
  SettableClock clock;
  std::unique_ptr<Session> session;
  const Date made = day(kSpringDay);
  Date target;
  BoostPlan plan;
  std::vector<apiary::Task> tasks;

  void SetUp() override {
    SpringYard y;
    y.small("TR-01", 2.5).strong("TR-02", 9).warm(kSpringDay, 80);
    session = std::move(
        Session::open(std::make_unique<tests::MemoryStore>(y.take()), ids, clock).value());
    base::Progress quiet;
    plan = solveBoost(
               makeForecastProblem(session->season(), testing::springRequest(), 1, quiet).value(),
               quiet)
               .value();
    target = plan.problem.target;
    auto kept = accept(plan, ids, clock.now, [](const base::Message& m) { return m.key; });
    ASSERT_EQ(kept.rows.size(), 1U);
    ASSERT_EQ(kept.rows[0].method, apiary::Method::Stack);
    tasks = kept.tasks;
    must(session::acceptPlan(kept.plan, kept.rows, kept.tasks));
  }
  void must(session::CommandPtr command) {
    const auto done = session->execute(*command);
    ASSERT_TRUE(done.ok()) << done.failure().messages.front().key;
  }
  void make() {
    clock.now = "2026-04-25T18:00:00Z";
    must(session::stackOver({HiveId{"TR-01"}, HiveId{"TR-02"}, made, apiary::Beneath::Excluder,
                             true, tasks.front().task}));
  }
  void seen(const char* hive, Date on, double seams, std::optional<int> combs = std::nullopt) {
    clock.now = on.plusDays(1).iso() + "T18:00:00Z";
    apiary::Inspection i;
    i.hive = HiveId{hive};
    i.colony = ColonyId{"TR-01"};
    i.date = on;
    i.seams = seams;
    i.eggsSeen = true;
    i.framesWithBrood = combs;
    must(session::recordInspection(i, {}, {}));
  }
  PlanReview review(Date today) const {
    base::Progress quiet;
    return reviewPlans(session->season(), today, quiet);
  }
  ReviewedRow row(Date today) const {
    const auto r = review(today);
    EXPECT_EQ(r.rows.size(), 1U);
    return r.rows.at(0);
  }
};

TEST_F(PlanReviewTest, ThePromiseIsThatOfThePlanWhateverWasRecordedSince) {
  make();
  const auto at = [&] { return row(target.plusDays(1)); };
  seen("TR-02", target, 7);
  // A look of the day before the plan, entered weeks later: the plan did not know of it.
  seen("TR-02", target.plusDays(-1), 4);
  clock.now = "2026-06-20T18:00:00Z";
  apiary::Inspection late;
  late.hive = HiveId{"TR-01"};
  late.date = made.plusDays(-1);
  late.seams = 7;
  must(session::recordInspection(late, {}, {}));
  const ReviewedRow r = at();
  ASSERT_TRUE(r.with && r.without && r.chance);
  EXPECT_EQ(r.day, target);
  const BoostOption* o = plan.chosenFor(ColonyId{"TR-01"});
  ASSERT_TRUE(o && o->chance);
  EXPECT_DOUBLE_EQ(r.chance->receiverWith, o->chance->receiverWith);
  EXPECT_DOUBLE_EQ(r.chance->receiverWithout, o->chance->receiverWithout);
  EXPECT_DOUBLE_EQ(r.chance->donorBees, o->chance->donorBees);
  EXPECT_GT(r.with->seams.median, r.without->seams.median);
}

TEST_F(PlanReviewTest, ALookInThePromiseCountsAndOneBelowDoesNot) {
  make();
  const Promised p = row(made.plusDays(1)).with.value();
  seen("TR-02", target, std::round(p.seams.median));
  PlanReview r = review(target);
  EXPECT_EQ(r.rows[0].fate, PlanFate::Seen);
  EXPECT_EQ(r.rows[0].madeOn, made);
  EXPECT_TRUE(r.rows[0].within);
  EXPECT_TRUE(r.rows[0].nearerWith);
  EXPECT_EQ(r.promises, 1);
  EXPECT_EQ(r.within, 1);
  EXPECT_EQ(reviewText(r.rows[0]).key, "planning.review.seen");
  EXPECT_EQ(reviewSum(r).key, "planning.review.sum");
  ASSERT_TRUE(session->undo().ok());
  seen("TR-02", target, 1);
  r = review(target);
  EXPECT_EQ(r.rows[0].fate, PlanFate::Seen);
  EXPECT_FALSE(r.rows[0].within);
  EXPECT_FALSE(r.rows[0].nearerWith);
  EXPECT_EQ(r.promises, 1);
  EXPECT_EQ(r.within, 0);
}

TEST_F(PlanReviewTest, TheFirstLookAfterTheTargetDayCountsAndThePromiseIsForItsDay) {
  make();
  seen("TR-02", target.plusDays(-8), 5);
  EXPECT_EQ(row(target).day, target.plusDays(-8));
  seen("TR-02", target.plusDays(6), 8);
  seen("TR-02", target.plusDays(12), 9);
  const ReviewedRow r = row(target.plusDays(20));
  EXPECT_EQ(r.day, target.plusDays(6));
  EXPECT_EQ(r.seen->seams, 8);
  EXPECT_EQ(r.fate, PlanFate::Seen);
}

TEST_F(PlanReviewTest, WaitsIsNotLookedAtOrWasNotMade) {
  EXPECT_EQ(row(made).fate, PlanFate::Waiting);
  EXPECT_EQ(row(made.plusDays(30)).fate, PlanFate::NotMade);
  make();
  EXPECT_EQ(row(made.plusDays(30)).fate, PlanFate::Waiting);
  EXPECT_TRUE(row(made.plusDays(30)).with);
  EXPECT_EQ(row(target.plusDays(40)).fate, PlanFate::NotLooked);
  // Seen soon after: said, not counted.
  seen("TR-02", made.plusDays(9), 5);
  const PlanReview r = review(made.plusDays(12));
  EXPECT_EQ(r.rows[0].fate, PlanFate::Waiting);
  EXPECT_EQ(reviewText(r.rows[0]).key, "planning.review.so_far");
  EXPECT_EQ(r.promises, 0);
  EXPECT_EQ(reviewSum(r).key, "planning.review.sum_none");
}

TEST_F(PlanReviewTest, APlanThatWasOnlyPrintedPromisedNothing) {
  apiary::SheetRow sheet;
  sheet.sheet = base::SheetId{"26-0001"};
  sheet.yard = base::YardId{"TR"};
  sheet.date = made;
  must(session::keepSheet(sheet, {}));
  const auto printed = printedPlan(plan, "26-0001", [](const base::Message& m) { return m.key; });
  ASSERT_EQ(printed.rows.size(), 1U);
  EXPECT_TRUE(printed.tasks.empty());
  must(session::keepPrintedPlan(printed));
  EXPECT_EQ(review(target.plusDays(1)).rows.size(), 1U);  // that which was accepted
  EXPECT_EQ(printedRows(session->season(), sheet.sheet), printed.rows);
}

TEST_F(PlanReviewTest, AColonyThatDiedKeptNoPromise) {
  make();
  seen("TR-02", made.plusDays(9), 3);
  clock.now = "2026-05-20T18:00:00Z";
  must(session::takeOff(
      {HiveId{"TR-02"}, ColonyId{"TR-01"}, HiveId{"TR-01"}, made.plusDays(21), std::nullopt}));
  must(session::recordDeath(HiveId{"TR-01"}, ColonyId{"TR-01"}, made.plusDays(25), "robbed"));
  const PlanReview r = review(target);
  EXPECT_EQ(r.rows[0].fate, PlanFate::Died);
  EXPECT_EQ(r.promises, 1);
  EXPECT_EQ(r.within, 0);
}

TEST_F(PlanReviewTest, WhatNoPlanKnowsOfIsNamed) {
  make();
  clock.now = "2026-05-20T18:00:00Z";
  apiary::Event e;
  e.kind = apiary::EventKind::Robbed;
  e.hive = HiveId{"TR-02"};
  e.colony = ColonyId{"TR-01"};
  e.date = made.plusDays(15);
  must(session::recordEvent(e));
  seen("TR-02", target, 6);
  EXPECT_EQ(row(target).meanwhile, std::vector{apiary::EventKind::Robbed});
}

TEST_F(PlanReviewTest, WhatWasKnownGoesByTheTimeOfEntryElseByTheDate) {
  const auto before = session->season();
  make();
  seen("TR-02", target, 6);
  const auto known = seasonKnown(session->season(), "2026-04-24T19:00:00Z", made);
  EXPECT_EQ(tests::allRows(known).size(), tests::allRows(before).size())
      << "records of later go, plans and tasks stay";
  EXPECT_EQ(apiary::hiveOfColony(known, ColonyId{"TR-01"}, target), HiveId{"TR-01"});
  // Without times of entry the day decides.
  const auto dated = seasonKnown(session->season(), "", made);
  EXPECT_EQ(apiary::hiveOfColony(dated, ColonyId{"TR-01"}, target), HiveId{"TR-01"});
}

TEST_F(PlanReviewTest, AStoppedReviewIsEmpty) {
  class Stopped : public base::Progress {
   public:
    void report(double) override {}
    [[nodiscard]] bool cancelled() const override { return true; }
  } stopped;
  EXPECT_TRUE(reviewPlans(session->season(), target, stopped).rows.empty());
}

}  // namespace
}  // namespace outyard::planning
