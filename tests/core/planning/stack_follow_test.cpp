// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/stack_follow.h"

#include <gtest/gtest.h>

#include "core/planning/due.h"
#include "core/planning/due_figures.h"
#include "core/session/commands.h"
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
using Kind = StackStepKind;

/// A small colony set over a strong one on 25 April, and what is done afterwards.
struct StackFollow : ::testing::Test {
  base::SeededIds ids{7};
  base::FixedClock clock{day("2026-07-30"), "2026-07-30T18:00:00Z"};
  std::unique_ptr<Session> session;
  const Date made = day(kSpringDay);

  void SetUp() override {
    SpringYard y;
    y.small("TR-01", 2.5).strong("TR-02", 9).strong("TR-03", 9).warm(kSpringDay, 100);
    session = std::move(
        Session::open(std::make_unique<tests::MemoryStore>(y.take()), ids, clock).value());
    must(session::stackOver(
        {HiveId{"TR-01"}, HiveId{"TR-02"}, made, apiary::Beneath::Excluder, true, std::nullopt}));
  }
  void must(session::CommandPtr command) {
    const auto done = session->execute(*command);
    ASSERT_TRUE(done.ok()) << done.failure().messages.front().key;
  }
  void look(Date on, std::optional<bool> eggs, std::optional<double> seams = std::nullopt) {
    session::StackLook l;
    l.hive = HiveId{"TR-02"};
    l.upper = ColonyId{"TR-01"};
    l.date = on;
    l.eggs = eggs;
    l.seams = seams;
    l.paperOpen = true;
    must(session::recordStackLook(l));
  }
  MadeStack stack(int daysAfter) const {
    StackFollowAsk ask;
    ask.today = made.plusDays(daysAfter);
    ask.members = 64;
    base::Progress quiet;
    auto all = stacksMade(session->season(), ask, 1, quiet);
    EXPECT_EQ(all.size(), 1U);
    return all.empty() ? MadeStack{} : all.front();
  }
  static Kind next(const MadeStack& s) { return s.next ? s.steps[*s.next].kind : Kind::Set; }
  static const StackStep& step(const MadeStack& s, Kind kind) {
    for (const auto& x : s.steps) {
      if (x.kind == kind) return x;
    }
    throw std::logic_error("the stack has no such step");
  }
};

TEST_F(StackFollow, StepsFollowEachOtherInTheirWindows) {
  MadeStack s = stack(1);
  EXPECT_EQ(s.hive.str(), "TR-02");
  EXPECT_EQ(s.oldStand.str(), "TR-01");
  EXPECT_EQ(s.upper.str(), "TR-01");
  EXPECT_EQ(s.lower.str(), "TR-02");
  EXPECT_EQ(s.steps.front().state, StepState::Done);
  EXPECT_EQ(next(s), Kind::Paper);
  EXPECT_EQ(step(s, Kind::Paper).state, StepState::Waiting);
  // Paper open in 2 to 4 days; the look at 7 to 9 days (common practice, no source).
  EXPECT_EQ(step(s, Kind::Paper).proposed, made.plusDays(2));
  EXPECT_EQ(step(s, Kind::UpperQueen).earliest, made.plusDays(7));
  EXPECT_EQ(step(s, Kind::UpperQueen).latest, made.plusDays(9));
  EXPECT_EQ(step(stack(3), Kind::Paper).state, StepState::Due);

  // Nobody lifted the lid: the week's look asks for the paper too.
  s = stack(8);
  EXPECT_EQ(step(s, Kind::Paper).state, StepState::Passed);
  EXPECT_EQ(next(s), Kind::UpperQueen);
  EXPECT_EQ(step(s, Kind::UpperQueen).state, StepState::Due);
  EXPECT_EQ(step(stack(12), Kind::UpperQueen).state, StepState::Overdue);

  look(made.plusDays(8), true, 6);
  s = stack(8);
  EXPECT_EQ(step(s, Kind::UpperQueen).doneOn, made.plusDays(8));
  EXPECT_FALSE(s.noEggs);
  EXPECT_EQ(next(s), Kind::Separate);
}

TEST_F(StackFollow, PartingWaitsForBothColoniesAndForTheWeather) {
  look(made.plusDays(8), true, 7);
  const StackStep s = step(stack(9), Kind::Separate);
  ASSERT_TRUE(s.proposed);
  EXPECT_GE(*s.proposed, made.plusDays(21));
  EXPECT_EQ(s.why.key, "planning.follow.separate_on");
  EXPECT_TRUE(testing::hasKey(s.cautions, "planning.caution.lift"));
  EXPECT_TRUE(testing::hasKey(s.cautions, "planning.caution.stings"));

  // Cold on the day: the next warm one is proposed.
  apiary::Season season = session->season();
  apiary::ChangeList changes;
  for (int n = 0; n < 5; ++n) {
    apiary::WeatherDay w;
    w.yard = base::YardId("TR");
    w.date = s.proposed->plusDays(n);
    w.tminC = 2;
    w.tmaxC = 9;
    w.kind = apiary::WeatherKind::Observed;
    const auto row = apiary::toRow(w);
    const auto key = apiary::rowKey(row);
    changes.push_back({row.table, key, season.row(row.table, key), row});
  }
  season.apply(changes);
  StackFollowAsk ask;
  ask.today = made.plusDays(9);
  ask.members = 64;
  base::Progress quiet;
  const auto later = step(stacksMade(season, ask, 1, quiet).front(), Kind::Separate);
  ASSERT_TRUE(later.proposed);
  EXPECT_GE(*later.proposed, s.proposed->plusDays(5));
}

TEST_F(StackFollow, AWeakUpperColonyStaysWhereItIs) {
  // The outfit takes a stack off at ten seams.
  must(session::changeSetting("boost.take_off_seams", "10", "test"));
  look(made.plusDays(20), true, 1);
  const StackStep s = step(stack(21), Kind::Separate);
  EXPECT_FALSE(s.proposed);
  EXPECT_EQ(s.why.key, "planning.follow.separate_wait");
}

TEST_F(StackFollow, NoEggsAboveAsksForPlanB) {
  look(made.plusDays(8), false);
  MadeStack s = stack(8);
  EXPECT_TRUE(s.noEggs);
  EXPECT_EQ(next(s), Kind::Separate);
  EXPECT_EQ(s.steps[*s.next].why.key, "planning.follow.plan_b");
  EXPECT_EQ(s.steps[*s.next].state, StepState::Due);
  must(session::joinStack({HiveId{"TR-02"}, ColonyId{"TR-01"}, made.plusDays(9), std::nullopt}));
  s = stack(10);
  EXPECT_EQ(s.end, MadeStack::End::Joined);
  EXPECT_FALSE(s.next);
}

TEST_F(StackFollow, OnItsOwnStandItIsLookedAtAndTheFieldBeesAreToldOf) {
  look(made.plusDays(8), true, 6);
  const Date off = made.plusDays(24);
  must(session::takeOff({HiveId{"TR-02"}, ColonyId{"TR-01"}, HiveId{"TR-01"}, off, std::nullopt}));
  MadeStack s = stack(25);
  EXPECT_EQ(s.end, MadeStack::End::TakenOff);
  EXPECT_EQ(s.newHive, HiveId{"TR-01"});
  EXPECT_EQ(next(s), Kind::OwnStand);
  EXPECT_EQ(step(s, Kind::OwnStand).earliest, off.plusDays(7));
  // Within flight range field bees go home (10 to 40 %, common practice, no source): fewer remain.
  ASSERT_TRUE(s.beesBefore && s.beesAfter);
  EXPECT_LT(*s.beesAfter, *s.beesBefore);
  apiary::Inspection i;
  i.hive = HiveId{"TR-01"};
  i.date = off.plusDays(8);
  i.eggsSeen = true;
  must(session::recordInspection(i, {}, {}));
  EXPECT_FALSE(stack(33).next);
}

TEST_F(StackFollow, ThePlannedTaskIsNamedAndWindowsAreThoseOfWhatFallsDue) {
  apiary::Task t;
  t.task = base::TaskId{"look-1"};
  t.kind = "look";
  t.hive = HiveId{"TR-02"};
  t.colony = ColonyId{"TR-01"};
  t.earliest = t.dueOn = made.plusDays(7);
  t.latest = made.plusDays(9);
  must(session::addTask(t));
  EXPECT_EQ(step(stack(7), Kind::UpperQueen).task, t.task);

  DueAsk ask;
  ask.from = made.plusDays(7);
  ask.to = made.plusDays(30);
  ask.planned = false;
  ask.members = 64;
  base::Progress quiet;
  const auto due = whatFallsDue(session->season(), ask, 1, quiet);
  const MadeStack s = stack(7);
  int found = 0;
  for (const auto& d : due.tasks) {
    if (d.rule != "stack_look" && d.rule != "separate") continue;
    ++found;
    const auto& mine = step(s, d.rule == "separate" ? Kind::Separate : Kind::UpperQueen);
    EXPECT_EQ(d.earliest, mine.earliest) << d.rule;
    EXPECT_EQ(d.hive, s.hive);
    EXPECT_EQ(d.colony, s.upper);
  }
  EXPECT_EQ(found, 2);
}

TEST_F(StackFollow, AWithdrawnStackIsNone) {
  ASSERT_TRUE(session->undo().ok());
  StackFollowAsk ask;
  ask.today = made.plusDays(9);
  base::Progress quiet;
  EXPECT_TRUE(stacksMade(session->season(), ask, 1, quiet).empty());
}

}  // namespace
}  // namespace outyard::planning
