// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/session/frames_fixture.h"

namespace outyard::session {
namespace {

using apiary::BoxRole;
using apiary::EventKind;
using apiary::Goods;
using testing::Contains;
using testing::ElementsAre;
using Marks = std::vector<int>;

TEST_F(FramesTest, ACombMovedWithinItsBoxKeepsWhatItHolds) {
  look("TR-01", 1, 1);
  mustDo(moveCombs(combs({spot("TR-01", 1, 2)}, spot("TR-01", 1, 6))));
  EXPECT_THAT(marks("TR-01", 1), ElementsAre(1, 3, 4, 5, 2, 6, 7, 8, 9, 10));
  // The day before they stood as they were seen.
  EXPECT_THAT(marks("TR-01", 1, tests::day("2026-04-24")),
              ElementsAre(1, 2, 3, 4, 5, 6, 7, 8, 9, 10));
  EXPECT_TRUE(season().journal<apiary::Event>(HiveId{"TR-01"}).empty());
  // Two at once, in the order asked for, behind the last.
  mustDo(moveCombs(combs({spot("TR-01", 1, 3), spot("TR-01", 1, 1)}, spot("TR-01", 1, 11))));
  EXPECT_THAT(marks("TR-01", 1), ElementsAre(3, 5, 2, 6, 7, 8, 9, 10, 4, 1));
  EXPECT_THAT(refused(moveCombs(combs({spot("TR-01", 1, 4)}, spot("TR-01", 1, 4)))),
              ElementsAre("session.stands_there"));
}

TEST_F(FramesTest, ACombGoesToAnotherHiveWithItsBees) {
  look("TR-01", 1, 1, "2026-04-20", {4, 5});
  look("TR-02", 1, 51);
  EXPECT_THAT(refused(moveCombs(combs({spot("TR-01", 1, 4)}, spot("TR-02", 1, 2)))),
              ElementsAre("session.no_free_slot"));
  auto off = combs({spot("TR-02", 1, 10)}, std::nullopt);
  off.withBees = false;
  mustDo(moveCombs(off));
  const auto before = stockOn(season(), d);
  mustDo(moveCombs(combs({spot("TR-01", 1, 4)}, spot("TR-02", 1, 2))));
  EXPECT_THAT(marks("TR-01", 1), ElementsAre(1, 2, 3, 5, 6, 7, 8, 9, 10));
  EXPECT_THAT(marks("TR-02", 1), ElementsAre(51, 4, 52, 53, 54, 55, 56, 57, 58, 59));
  expectSame(stockOn(season(), d), before);
  // The boxes' recorded numbers of combs follow.
  EXPECT_EQ(at("TR-01", d).boxes[0].frames, 9);
  EXPECT_EQ(at("TR-02", d).boxes[0].frames, 10);
  const auto events = season().journal<apiary::Event>(HiveId{"TR-02"});
  ASSERT_FALSE(events.empty());
  const auto* e = events.back();
  EXPECT_EQ(e->kind, EventKind::FramesMoved);
  EXPECT_EQ(e->otherHive, HiveId{"TR-01"});
  EXPECT_EQ(e->what, Goods::SealedBrood);
  EXPECT_EQ(e->withBees, true);
  EXPECT_EQ(e->amount, 1.0);
  const auto now = apiary::combsOfHive(season(), HiveId{"TR-02"}, d);
  EXPECT_EQ(now.frame(1, 2)->sides[0]->holds.beesPct, 25);
}

TEST_F(FramesTest, ShakenBeesStayInTheHiveThatGives) {
  look("TR-01", 1, 1);
  auto move = combs({spot("TR-01", 1, 1)}, std::nullopt);
  EXPECT_THAT(refused(moveCombs(move)), ElementsAre("session.bees_on_the_heap"));
  move.withBees = false;
  const auto before = stockOn(season(), d);
  mustDo(moveCombs(move));
  expectSame(stockOn(season(), d), before);
  const auto state = apiary::combsOn(season(), d);
  ASSERT_EQ(state.heap.size(), 1u);
  EXPECT_EQ(state.heap[0].box.frames[0].sum(&apiary::CombSide::beesPct), 0);
  ASSERT_EQ(state.hive(HiveId{"TR-01"})->shaken.size(), 1u);
  EXPECT_EQ(state.hive(HiveId{"TR-01"})->shaken[0].sidesPct, 75);
  // Back from the heap into another box of the same frames.
  CombMove back;
  back.heap = {state.heap[0].key};
  back.to = spot("TR-01", 1, 10);
  back.date = d;
  mustDo(moveCombs(back));
  EXPECT_THAT(marks("TR-01", 1), ElementsAre(2, 3, 4, 5, 6, 7, 8, 9, 10, 1));
  EXPECT_TRUE(apiary::gearHeapOn(season(), d).empty());
  EXPECT_THAT(refused(moveCombs(back)), Contains("session.not_on_the_heap"));
  expectSame(stockOn(season(), d), before);
}

TEST_F(FramesTest, CombForCombWorksInFullBoxes) {
  look("TR-01", 1, 1);
  look("TR-02", 1, 51);
  auto move = combs({spot("TR-01", 1, 3)}, spot("TR-02", 1, 8));
  move.exchange = true;
  mustDo(moveCombs(move));
  EXPECT_THAT(marks("TR-01", 1), ElementsAre(1, 2, 58, 4, 5, 6, 7, 8, 9, 10));
  EXPECT_THAT(marks("TR-02", 1), ElementsAre(51, 52, 53, 54, 55, 56, 57, 3, 59, 60));
  auto within = combs({spot("TR-01", 1, 1)}, spot("TR-01", 1, 10));
  within.exchange = true;
  mustDo(moveCombs(within));
  EXPECT_THAT(marks("TR-01", 1), ElementsAre(10, 2, 58, 4, 5, 6, 7, 8, 9, 1));
  within.to = spot("TR-01", 1, 11);
  EXPECT_THAT(refused(moveCombs(within)), ElementsAre("session.exchange_one_comb"));
}

TEST_F(FramesTest, WhatCannotBeIsRefused) {
  EXPECT_THAT(refused(moveCombs(combs({}, spot("TR-01", 1, 1)))),
              ElementsAre("session.nothing_moves"));
  EXPECT_THAT(refused(moveCombs(combs({spot("TR-01", 2, 1)}, spot("TR-01", 1, 1)))),
              ElementsAre("session.no_such_box"));
  EXPECT_THAT(refused(moveCombs(combs({spot("TR-01", 1, 11)}, spot("TR-01", 1, 1)))),
              ElementsAre("session.no_such_comb"));
  // No bees without a colony, not with the date before the hive stood there, not later than today.
  auto move = combs({spot("TR-01", 1, 1)}, spot("TR-07", 1, 1));
  EXPECT_THAT(refused(moveCombs(move)), Contains("session.bees_need_colony"));
  move.date = tests::day("2024-04-01");
  EXPECT_THAT(refused(moveCombs(move)), Contains("session.before_first_place"));
  move.date = tests::day("2027-04-01");
  EXPECT_THAT(refused(moveCombs(move)), ElementsAre("session.in_the_future"));
  // Frames of another size do not fit.
  auto boxes = at("TR-01", d).boxes;
  auto super = box(2, BoxRole::Super);
  super.frameType = "langstroth_medium";
  super.frames = 8;
  boxes.push_back(super);
  mustDo(changeStack(HiveId{"TR-01"}, d, boxes, EventKind::Supered));
  EXPECT_THAT(refused(moveCombs(combs({spot("TR-01", 1, 1)}, spot("TR-01", 2, 1)))),
              ElementsAre("session.other_frame_type"));
  // A day before the stack was changed is not free to be filled in any more.
  auto early = combs({spot("TR-01", 1, 1)}, spot("TR-01", 1, 5));
  early.date = d.plusDays(-3);
  EXPECT_THAT(refused(moveCombs(early)), Contains("session.later_stack"));
}

TEST_F(FramesTest, FoulBroodStopsEverythingThatLeavesAHiveButNotTheOrderWithin) {
  apiary::Inspection sick;
  sick.hive = HiveId{"TR-03"};
  sick.date = d.plusDays(-1);
  sick.disease = apiary::Disease::SuspectAfb;
  mustDo(recordInspection(sick, {}, {}));
  auto over = combs({spot("TR-01", 1, 1)}, spot("TR-02", 1, 1));
  over.exchange = true;
  EXPECT_THAT(refused(moveCombs(over)), Contains("session.foul_brood"));
  auto off = combs({spot("TR-01", 1, 1)}, std::nullopt);
  off.withBees = false;
  EXPECT_THAT(refused(moveCombs(off)), Contains("session.foul_brood"));
  EXPECT_THAT(refused(moveBox({HiveId{"TR-05"}, 2, std::nullopt, 1, d, false})),
              Contains("session.foul_brood"));
  EXPECT_THAT(refused(setInCombs(spot("TR-01", 1, 1), 1, Goods::Drawn, d)),
              Contains("session.foul_brood"));
  mustDo(moveCombs(combs({spot("TR-01", 1, 1)}, spot("TR-01", 1, 5))));
  mustDo(moveBox({HiveId{"TR-05"}, 1, HiveId{"TR-05"}, 2, d, true}));
}

TEST_F(FramesTest, AReversalTakesTheCombsAlong) {
  look("TR-05", 1, 1);
  look("TR-05", 2, 51);
  mustDo(moveBox({HiveId{"TR-05"}, 1, HiveId{"TR-05"}, 2, d, true}));
  EXPECT_EQ(marks("TR-05", 1).front(), 51);
  EXPECT_EQ(marks("TR-05", 2).front(), 1);
  EXPECT_EQ(season().journal<apiary::Event>(HiveId{"TR-05"}).back()->kind, EventKind::Reversed);
  // A comb moved after it on the same day goes from where the box stands now.
  mustDo(moveCombs(combs({spot("TR-05", 2, 1)}, spot("TR-05", 2, 11))));
  EXPECT_EQ(marks("TR-05", 2).back(), 1);
  // And back, on the same day.
  mustDo(moveBox({HiveId{"TR-05"}, 2, HiveId{"TR-05"}, 1, d, true}));
  EXPECT_THAT(marks("TR-05", 1), ElementsAre(2, 3, 4, 5, 6, 7, 8, 9, 10, 1));
  EXPECT_EQ(marks("TR-05", 2).front(), 51);
  EXPECT_THAT(refused(moveBox({HiveId{"TR-05"}, 1, HiveId{"TR-05"}, 3, d, true})),
              ElementsAre("session.no_such_place"));
}

TEST_F(FramesTest, AReversalSaidWithoutTheBoxesTurnsTheChambers) {
  look("TR-05", 1, 1);
  look("TR-05", 2, 51);
  mustDo(changeStack(HiveId{"TR-05"}, d, at("TR-05", d).boxes, EventKind::Reversed));
  EXPECT_EQ(marks("TR-05", 1).front(), 51);
  EXPECT_EQ(marks("TR-05", 2).front(), 1);
}

TEST_F(FramesTest, ABoxGoesToTheHeapAndOnAnotherHive) {
  look("TR-05", 2, 51);
  const auto before = stockOn(season(), d);
  EXPECT_THAT(refused(moveBox({HiveId{"TR-01"}, 1, std::nullopt, 1, d, false})),
              Contains("session.stack_without_box"));
  EXPECT_THAT(refused(moveBox({HiveId{"TR-05"}, 2, std::nullopt, 1, d, true})),
              ElementsAre("session.bees_on_the_heap"));
  mustDo(moveBox({HiveId{"TR-05"}, 2, std::nullopt, 1, d, false}));
  expectSame(stockOn(season(), d), before);
  const auto heap = apiary::gearHeapOn(season(), d);
  ASSERT_EQ(heap.size(), 1u);
  EXPECT_TRUE(heap[0].wholeBox);
  EXPECT_EQ(heap[0].fromHive, HiveId{"TR-05"});
  mustDo(boxFromHeap(heap[0].key, HiveId{"MB-01"}, 1, d.plusDays(2)));
  EXPECT_EQ(marks("MB-01", 1, d.plusDays(2)).front(), 51);
  EXPECT_EQ(marks("MB-01", 2, d.plusDays(2)), Marks(10, 0));
  EXPECT_TRUE(apiary::gearHeapOn(season(), d.plusDays(2)).empty());
  EXPECT_EQ(apiary::gearHeapOn(season(), d.plusDays(1)).size(), 1u);
  // Straight from hive to hive, with bees.
  mustDo(moveBox({HiveId{"MB-01"}, 1, HiveId{"MB-02"}, 2, d.plusDays(3), true}));
  EXPECT_EQ(marks("MB-02", 2, d.plusDays(3)).front(), 51);
  expectSame(stockOn(season(), d.plusDays(3)), before);
}

TEST_F(FramesTest, ASuperComesOverTheExcluderAndAChamberBeneathIt) {
  auto boxes = at("TR-01", d).boxes;
  boxes.push_back(box(2, BoxRole::Super, Beneath::Excluder));
  mustDo(changeStack(HiveId{"TR-01"}, d, boxes, EventKind::Supered));
  mustDo(setOnBox(HiveId{"TR-01"}, box(2, BoxRole::Super), Goods::Drawn, d));
  auto now = at("TR-01", d).boxes;
  ASSERT_EQ(now.size(), 3u);
  EXPECT_EQ(now[1].beneath, Beneath::Excluder);
  EXPECT_EQ(now[2].beneath, Beneath::None);
  mustDo(setOnBox(HiveId{"TR-01"}, box(2, BoxRole::Chamber), Goods::Foundation, d));
  now = at("TR-01", d).boxes;
  EXPECT_EQ(now[1].role, BoxRole::Chamber);
  EXPECT_EQ(now[1].beneath, Beneath::None);
  EXPECT_EQ(now[2].beneath, Beneath::Excluder);
  const auto stands = apiary::combsOfHive(season(), HiveId{"TR-01"}, d);
  EXPECT_EQ(stands.frame(2, 1)->sides[0]->holds.undrawnPct, 100);
  EXPECT_EQ(stands.frame(3, 1)->sides[1]->holds.emptyPct, 100);
  EXPECT_FALSE(stands.frame(4, 1)->known());
  // The super over the excluder is taken: the excluder serves the one above.
  mustDo(moveBox({HiveId{"TR-01"}, 3, std::nullopt, 1, d, false}));
  EXPECT_EQ(at("TR-01", d).boxes[2].beneath, Beneath::Excluder);
}

TEST_F(FramesTest, BroodComesToTheMiddleAsOneStep) {
  look("TR-01", 1, 1, "2026-04-20", {1, 3, 4});
  mustDo(broodToMiddle(HiveId{"TR-01"}, std::nullopt, d));
  EXPECT_THAT(marks("TR-01", 1), ElementsAre(2, 5, 6, 1, 3, 4, 7, 8, 9, 10));
  EXPECT_THAT(refused(broodToMiddle(HiveId{"TR-01"}, 1, d)),
              ElementsAre("session.brood_in_the_middle"));
  ASSERT_TRUE(session->undo().ok());
  EXPECT_THAT(marks("TR-01", 1), ElementsAre(1, 2, 3, 4, 5, 6, 7, 8, 9, 10));
}

TEST_F(FramesTest, CombsSeenJoinTheLookOfTheDayUntilCombsAreMoved) {
  apiary::Inspection i;
  i.hive = HiveId{"TR-01"};
  i.date = d;
  i.seams = 6;
  mustDo(recordInspection(i, {}, {}));
  mustDo(recordCombs(HiveId{"TR-01"}, std::nullopt, d,
                     filledBox(season(), HiveId{"TR-01"}, 1, Goods::Stores, d)));
  auto looks = season().journal<apiary::Inspection>(HiveId{"TR-01"});
  ASSERT_EQ(looks.size(), 1u);
  EXPECT_EQ(looks[0]->seams, 6);
  EXPECT_EQ(season().combSides(looks[0]->record).size(), 20u);
  // One side again: it replaces its own, the others stay.
  mustDo(recordCombs(HiveId{"TR-01"}, std::nullopt, d,
                     {sideOf(1, 1, apiary::FrameSide::A, 0, 0, 7, 0)}));
  EXPECT_EQ(marks("TR-01", 1).front(), 7);
  mustDo(moveCombs(combs({spot("TR-01", 1, 1)}, spot("TR-01", 1, 11))));
  EXPECT_EQ(marks("TR-01", 1).back(), 7);
  mustDo(recordCombs(HiveId{"TR-01"}, std::nullopt, d,
                     {sideOf(1, 1, apiary::FrameSide::A, 0, 0, 9, 0)}));
  looks = season().journal<apiary::Inspection>(HiveId{"TR-01"});
  EXPECT_EQ(looks.size(), 2u);
  EXPECT_EQ(marks("TR-01", 1).front(), 9);
  EXPECT_EQ(marks("TR-01", 1).back(), 7);
  EXPECT_THAT(refused(recordCombs(HiveId{"TR-07"}, std::nullopt, d,
                                  filledBox(season(), HiveId{"TR-07"}, 1, Goods::Drawn, d))),
              Contains("session.hive_empty"));
}

TEST_F(FramesTest, CombsGoAlongWhenAColonyIsSetOverAndTakenOff) {
  look("TR-01", 1, 1);
  look("TR-05", 1, 51);
  mustDo(stackOver(stacking("TR-01", "TR-05")));
  EXPECT_EQ(marks("TR-05", 3).front(), 1);
  EXPECT_TRUE(apiary::combsOfHive(season(), HiveId{"TR-01"}, d).boxes.empty());
  EXPECT_THAT(refused(moveBox({HiveId{"TR-05"}, 3, HiveId{"TR-05"}, 1, d, true})),
              ElementsAre("session.across_colonies"));
  const Date later = d.plusDays(21);
  mustDo(takeOff({HiveId{"TR-05"}, ColonyId{"TR-01"}, HiveId{"TR-01"}, later}));
  EXPECT_EQ(marks("TR-01", 1, later).front(), 1);
  EXPECT_EQ(marks("TR-05", 1, later).front(), 51);
  mustDo(unite({HiveId{"TR-05"}, HiveId{"TR-01"}, later.plusDays(1), std::nullopt, false}));
  EXPECT_EQ(marks("TR-05", 3, later.plusDays(1)).front(), 1);
}

TEST_F(FramesTest, AMoveIsWithdrawnWithItsRowsUnlessOthersBuildOnIt) {
  look("TR-01", 1, 1);
  look("TR-02", 1, 51);
  auto move = combs({spot("TR-01", 1, 3)}, spot("TR-02", 1, 8));
  move.exchange = true;
  mustDo(moveCombs(move));
  const auto first = lastEvent("TR-02");
  mustDo(moveCombs(combs({spot("TR-02", 1, 1)}, spot("TR-02", 1, 3))));
  EXPECT_THAT(refused(withdrawRecord(apiary::TableId::Events, first)),
              Contains("session.built_upon"));
  const auto rows = season().journal<apiary::FrameMove>(HiveId{"TR-02"});
  mustDo(withdrawRecord(apiary::TableId::FrameMoves, rows.back()->record));
  EXPECT_EQ(marks("TR-02", 1).front(), 51);
  EXPECT_THAT(refused(withdrawRecord(apiary::TableId::FrameMoves, rows.front()->record)),
              Contains("session.withdraw_the_event"));
  mustDo(withdrawRecord(apiary::TableId::Events, first));
  EXPECT_THAT(marks("TR-01", 1), ElementsAre(1, 2, 3, 4, 5, 6, 7, 8, 9, 10));
  EXPECT_THAT(marks("TR-02", 1), ElementsAre(51, 52, 53, 54, 55, 56, 57, 58, 59, 60));
}

TEST_F(FramesTest, FreshCombsComeInKnown) {
  EXPECT_THAT(refused(setInCombs(spot("TR-01", 1, 1), 1, Goods::Drawn, d)),
              ElementsAre("session.no_free_slot"));
  auto off = combs({spot("TR-01", 1, 1), spot("TR-01", 1, 2)}, std::nullopt);
  off.withBees = false;
  mustDo(moveCombs(off));
  mustDo(setInCombs(spot("TR-01", 1, 5), 2, Goods::Drawn, d));
  const auto stands = apiary::combsOfHive(season(), HiveId{"TR-01"}, d);
  ASSERT_EQ(stands.box(1)->frames.size(), 10u);
  EXPECT_EQ(stands.frame(1, 5)->sides[0]->holds.emptyPct, 100);
  EXPECT_EQ(stands.frame(1, 6)->sides[1]->holds.emptyPct, 100);
  EXPECT_FALSE(stands.frame(1, 7)->known());
}

}  // namespace
}  // namespace outyard::session
