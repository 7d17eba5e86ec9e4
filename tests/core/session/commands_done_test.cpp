// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using apiary::BoxRole;
using apiary::ColonyPlace;
using apiary::EventKind;
using apiary::HiveStatus;
using apiary::TableId;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using tests::day;

// --- what was done -----------------------------------------------------------------------------

TEST_F(CommandsTest, EventsTickTheirTaskAndNameTheRightVerb) {
  apiary::Task t;
  t.task = base::TaskId{"T1"};
  t.kind = "fed";
  t.hive = HiveId{"TR-01"};
  mustDo(addTask(t));
  apiary::Event e;
  e.kind = EventKind::Fed;
  e.hive = HiveId{"TR-01"};
  e.date = d;
  e.task = t.task;
  EXPECT_THAT(refused(recordEvent(e)), ElementsAre("session.feed_missing"));
  e.what = apiary::Goods::Syrup11;
  mustDo(recordEvent(e));
  EXPECT_EQ(season().find<apiary::Task>("T1")->state, apiary::TaskState::Done);
  EXPECT_EQ(season().find<apiary::Task>("T1")->doneRecord, lastEvent("TR-01"));
  EXPECT_THAT(refused(recordEvent(e)), ElementsAre("session.task_closed"));
  EXPECT_THAT(refused(setTaskState(t.task, apiary::TaskState::Dropped, std::nullopt)),
              ElementsAre("session.task_has_record"));
  mustDo(withdrawRecord(TableId::Events, lastEvent("TR-01")));
  EXPECT_EQ(season().find<apiary::Task>("T1")->state, apiary::TaskState::Planned);

  e.task.reset();
  e.hive = HiveId{"TR-07"};
  EXPECT_THAT(refused(recordEvent(e)), ElementsAre("session.hive_empty"));
  const std::pair<EventKind, const char*> others[] = {
      {EventKind::Stacked, "session.use_stack_over"},
      {EventKind::Unstacked, "session.use_take_off"},
      {EventKind::United, "session.use_unite"},
      {EventKind::Moved, "session.use_move"},
      {EventKind::Died, "session.use_death"},
      {EventKind::Supered, "session.use_change_stack"},
      {EventKind::Installed, "session.use_install"},
      {EventKind::PlacesChanged, "session.use_swap"},
      {EventKind::Verdict, "session.use_verdict"},
      {EventKind::QueenIntroduced, "session.use_queen"},
      {EventKind::QueenLost, "session.use_queen"},
      {EventKind::QueenRemoved, "session.use_queen"},
      {EventKind::Sold, "session.use_colony"},
      {EventKind::Bought, "session.use_colony"},
      {EventKind::Lost, "session.use_colony"},
      {EventKind::Swarmed, "session.use_colony"}};
  for (const auto& [kind, key] : others) {
    e.kind = kind;
    EXPECT_THAT(refused(recordEvent(e)), ElementsAre(key));
  }
}

TEST_F(CommandsTest, ChangeStackReplacesTheWholeStack) {
  const HiveId hive{"TR-05"};
  mustDo(changeStack(hive, d, {box(1), box(2), box(3, BoxRole::Super, Beneath::Excluder)},
                     EventKind::Supered));
  EXPECT_EQ(at("TR-05", d.plusDays(-1)).boxes.size(), 2u);
  EXPECT_EQ(at("TR-05", d).boxes.size(), 3u);
  // The same day again: rows of that day are superseded, the surplus one is void.
  mustDo(changeStack(hive, d, {box(1), box(2)}, EventKind::BoxRemoved));
  EXPECT_EQ(at("TR-05", d).boxes.size(), 2u);
  EXPECT_EQ(at("TR-05", d).boxesSince, d);
  EXPECT_THAT(refused(changeStack(hive, d, {box(1)}, EventKind::BoxAdded)),
              ElementsAre("session.stack_not_as_said"));
  EXPECT_THAT(refused(changeStack(hive, d, {}, EventKind::BoxRemoved)),
              ElementsAre("session.stack_without_box"));
  EXPECT_THAT(refused(changeStack(hive, d, {box(1, BoxRole::Super)}, EventKind::BoxRemoved)),
              ElementsAre("session.no_chamber"));
  EXPECT_THAT(refused(changeStack(hive, d.plusDays(-2), {box(1)}, EventKind::BoxRemoved)),
              ElementsAre("session.later_stack"));
  EXPECT_THAT(refused(changeStack(hive, d, {box(1)}, EventKind::Fed)),
              ElementsAre("session.not_a_stack_kind"));
}

TEST_F(CommandsTest, StackOverMovesColonyAndBoxesInOneStep) {
  apiary::Task t;
  t.task = base::TaskId{"T1"};
  t.kind = "stacked";
  mustDo(addTask(t));
  Stacking s = stacking("TR-01", "TR-05");
  s.task = t.task;
  mustDo(stackOver(s));
  const auto donor = at("TR-05", d);
  ASSERT_EQ(donor.colonies.size(), 2u);
  EXPECT_EQ(donor.colonies[0].colony, ColonyId{"TR-05"});
  EXPECT_EQ(donor.colonies[1].colony, ColonyId{"TR-01"});
  EXPECT_EQ(donor.colonies[1].place, ColonyPlace::OverExcluder);
  EXPECT_EQ(donor.colonies[1].queen, base::QueenId{"Q1"}) << "both queens are kept";
  ASSERT_EQ(donor.boxes.size(), 3u);
  EXPECT_EQ(donor.boxes[2].beneath, Beneath::Excluder);
  EXPECT_EQ(donor.chambersOf(ColonyId{"TR-01"}), 1);
  EXPECT_EQ(donor.chambersOf(ColonyId{"TR-05"}), 2);
  EXPECT_THAT(at("TR-01", d).colonies, IsEmpty());
  EXPECT_EQ(at("TR-01", d.plusDays(-1)).colonies.size(), 1u);
  EXPECT_EQ(season().find<apiary::Task>("T1")->state, apiary::TaskState::Done);
  const auto* event = season().journal<apiary::Event>(HiveId{"TR-01"}).back();
  EXPECT_EQ(event->otherHive, HiveId{"TR-05"});
  EXPECT_EQ(event->detail, "paper");
  // Records of a shared hive must name their colony.
  apiary::Inspection i;
  i.hive = HiveId{"TR-05"};
  i.date = d.plusDays(8);
  EXPECT_THAT(refused(recordInspection(i, {}, {})), ElementsAre("session.name_the_colony"));
  i.colony = ColonyId{"TR-01"};
  mustDo(recordInspection(i, {}, {}));
  // A look has been built upon it.
  EXPECT_THAT(refused(withdrawRecord(TableId::Events, event->record)),
              Contains("session.built_upon"));
}

TEST_F(CommandsTest, StackOverIsRefusedWhereItMustBe) {
  Stacking s = stacking("TR-01", "TR-05");
  s.between = Beneath::Paper;
  EXPECT_THAT(refused(stackOver(s)), ElementsAre("session.set_over_without_excluder"));
  EXPECT_THAT(refused(stackOver(stacking("TR-01", "TR-01"))), ElementsAre("session.same_hive"));
  EXPECT_THAT(refused(stackOver(stacking("TR-07", "TR-05"))), ElementsAre("session.hive_empty"));
  mustDo(stackOver(stacking("TR-01", "TR-05")));
  EXPECT_THAT(refused(stackOver(stacking("TR-02", "TR-05"))),
              ElementsAre("session.already_stacked"));
  mustDo(changeStack(HiveId{"TR-03"}, d, {box(1), box(2, BoxRole::Super)}, EventKind::Supered));
  EXPECT_THAT(refused(stackOver(stacking("TR-03", "TR-06"))),
              ElementsAre("session.super_goes_first"));
  mustDo(recordDeath(HiveId{"TR-04"}, ColonyId{"TR-04"}, d, "starved"));
  EXPECT_THAT(refused(stackOver(stacking("TR-04", "TR-06"))), ElementsAre("session.hive_dead"));
}

TEST_F(CommandsTest, TakingOffGivesTheColonyItsOwnHive) {
  mustDo(stackOver(stacking("TR-01", "TR-05")));
  const Date later = d.plusDays(25);
  const auto off = [&](const char* colony, const char* to) {
    return takeOff({HiveId{"TR-05"}, ColonyId{colony}, HiveId{to}, later});
  };
  EXPECT_THAT(refused(off("TR-01", "TR-02")), ElementsAre("session.target_not_empty"));
  EXPECT_THAT(refused(off("TR-05", "TR-07")), ElementsAre("session.lower_stays"));
  EXPECT_THAT(refused(takeOff({HiveId{"TR-06"}, ColonyId{"TR-06"}, HiveId{"TR-07"}, later})),
              ElementsAre("session.not_stacked"));
  mustDo(off("TR-01", "TR-07"));
  EXPECT_EQ(at("TR-07", later).colonies.at(0).colony, ColonyId{"TR-01"});
  EXPECT_EQ(at("TR-07", later).colonies.at(0).place, ColonyPlace::Main);
  EXPECT_EQ(at("TR-07", later).boxes.size(), 1u);
  EXPECT_EQ(at("TR-07", later).boxes[0].beneath, Beneath::None);
  const auto below = at("TR-05", later);
  EXPECT_EQ(below.colonies.size(), 1u);
  ASSERT_EQ(below.boxes.size(), 2u);
  EXPECT_FALSE(below.boxes[0].colony) << "named only where two share the hive";
  // Taken back, they stand together again.
  mustDo(withdrawRecord(TableId::Events, lastEvent("TR-07")));
  EXPECT_EQ(at("TR-05", later).colonies.size(), 2u);
  EXPECT_EQ(at("TR-05", later).boxes.size(), 3u);
  EXPECT_THAT(at("TR-07", later).colonies, IsEmpty());
}

TEST_F(CommandsTest, WithdrawnStackingLeavesBothAsTheyWere) {
  mustDo(stackOver(stacking("TR-01", "TR-05")));
  mustDo(withdrawRecord(TableId::Events, lastEvent("TR-01")));
  EXPECT_EQ(at("TR-01", d).colonies.at(0).colony, ColonyId{"TR-01"});
  EXPECT_EQ(at("TR-01", d).boxes.size(), 1u);
  EXPECT_EQ(at("TR-05", d).colonies.size(), 1u);
  EXPECT_EQ(at("TR-05", d).boxes.size(), 2u);
  // And may be done again.
  mustDo(stackOver(stacking("TR-01", "TR-05")));
  EXPECT_EQ(at("TR-05", d).colonies.size(), 2u);
}

TEST_F(CommandsTest, UniteEndsOneColony) {
  Uniting u{HiveId{"TR-05"}, HiveId{"TR-02"}, d, base::QueenId{"Q2"}, true};
  EXPECT_THAT(refused(unite(u)), ElementsAre("session.queen_stays_and_goes"));
  u.queenRemoved.reset();
  mustDo(unite(u));
  const auto state = at("TR-05", d);
  ASSERT_EQ(state.colonies.size(), 1u);
  EXPECT_EQ(state.colonies[0].colony, ColonyId{"TR-05"});
  EXPECT_EQ(state.colonies[0].queen, base::QueenId{"Q2"});
  EXPECT_EQ(state.boxes.size(), 3u);
  EXPECT_FALSE(apiary::hiveOfColony(season(), ColonyId{"TR-02"}, d));
  EXPECT_THAT(refused(unite({HiveId{"TR-05"}, HiveId{"TR-07"}, d, std::nullopt, false})),
              Contains("session.hive_empty"));
}

TEST_F(CommandsTest, GiftsNeedLivingHives) {
  FrameGift g;
  g.toHive = HiveId{"TR-01"};
  g.fromHive = HiveId{"TR-05"};
  g.date = d;
  mustDo(giveFrames(g));
  const auto* e = season().journal<apiary::Event>(HiveId{"TR-01"}).back();
  EXPECT_EQ(e->kind, EventKind::FramesMoved);
  EXPECT_EQ(e->unit, apiary::Unit::Frames);
  g.amount = 0;
  EXPECT_THAT(refused(giveFrames(g)), ElementsAre("session.gift_amount"));
  g.amount = 1;
  g.fromHive = HiveId{"TR-07"};
  EXPECT_THAT(refused(giveFrames(g)), ElementsAre("session.hive_empty"));
  g.what = apiary::Goods::Drawn;
  mustDo(giveFrames(g));  // drawn comb may come from an empty hive
  mustDo(recordDeath(HiveId{"TR-04"}, ColonyId{"TR-04"}, d.plusDays(-1), "unknown"));
  g.fromHive = HiveId{"TR-04"};
  EXPECT_THAT(refused(giveFrames(g)), ElementsAre("session.from_dead_hive"));
  g.what = apiary::Goods::Fondant;
  g.fromHive = HiveId{"TR-05"};
  EXPECT_THAT(refused(giveFrames(g)), ElementsAre("session.not_a_gift"));
}

TEST_F(CommandsTest, InstallAndDeath) {
  const auto install = [&](const char* hive, const char* colony) {
    return installColony(HiveId{hive}, ColonyId{colony}, d, apiary::ColonyOrigin::Package,
                         std::nullopt);
  };
  EXPECT_THAT(refused(install("TR-01", "NEW")), ElementsAre("session.target_not_empty"));
  EXPECT_THAT(refused(install("TR-07", "TR-01")), ElementsAre("session.colony_elsewhere"));
  mustDo(install("TR-07", "NEW"));
  EXPECT_EQ(at("TR-07", d).status, HiveStatus::Live);
  EXPECT_THAT(refused(recordDeath(HiveId{"TR-07"}, ColonyId{"NEW"}, d.plusDays(1), "")),
              ElementsAre("session.cause_missing"));
  mustDo(recordDeath(HiveId{"TR-07"}, ColonyId{"NEW"}, d.plusDays(1), "starved; combs burnt"));
  EXPECT_EQ(at("TR-07", d.plusDays(1)).status, HiveStatus::Dead);
  apiary::Event e;
  e.kind = EventKind::Treated;
  e.method = "strips";
  e.hive = HiveId{"TR-07"};
  e.date = d.plusDays(2);
  EXPECT_THAT(refused(recordEvent(e)), ElementsAre("session.hive_dead"));
  mustDo(withdrawRecord(TableId::Events, lastEvent("TR-07")));
  EXPECT_EQ(at("TR-07", d.plusDays(1)).status, HiveStatus::Live);
}

// Nothing in or out of a yard where foul brood is suspected: common practice, no source.
TEST_F(CommandsTest, FoulBroodBarsEveryMove) {
  apiary::Inspection i;
  i.hive = HiveId{"TR-06"};
  i.date = d.plusDays(-1);
  i.disease = apiary::Disease::SuspectAfb;
  mustDo(recordInspection(i, {}, {}));
  const auto bars = ElementsAre("session.foul_brood");
  EXPECT_THAT(refused(stackOver(stacking("TR-01", "TR-05"))), bars);
  EXPECT_THAT(refused(unite({HiveId{"TR-01"}, HiveId{"TR-02"}, d, std::nullopt, false})), bars);
  EXPECT_THAT(refused(swapStands(HiveId{"TR-01"}, HiveId{"MB-01"}, d)), bars);
  EXPECT_THAT(refused(moveHives({{HiveId{"TR-01"}, 1, 1, std::nullopt, ""}}, YardId{"MB"}, d)),
              bars);
  EXPECT_THAT(refused(moveHives({{HiveId{"MB-01"}, 1, 1, std::nullopt, ""}}, YardId{"TR"}, d)),
              bars);
  FrameGift g;
  g.toHive = HiveId{"MB-01"};
  g.fromHive = HiveId{"TR-01"};
  g.date = d;
  EXPECT_THAT(refused(giveFrames(g)), bars);
  EXPECT_THAT(refused(installColony(HiveId{"TR-07"}, ColonyId{"NEW"}, d,
                                    apiary::ColonyOrigin::Swarm, std::nullopt)),
              bars);
  EXPECT_THAT(refused(changeStack(HiveId{"TR-01"}, d, {box(1), box(2)}, EventKind::BoxAdded)),
              bars);
  apiary::Event e;
  e.kind = EventKind::Harvested;
  e.hive = HiveId{"TR-01"};
  e.date = d;
  EXPECT_THAT(refused(recordEvent(e)), bars);
  apiary::Hive h;
  h.hive = HiveId{"TR-30"};
  h.yard = YardId{"TR"};
  EXPECT_THAT(refused(addHive(h, d, {box(1)})), bars);
  // Looking and writing down go on, and the day before was free.
  e.kind = EventKind::Note;
  mustDo(recordEvent(e));
  mustDo(swapStands(HiveId{"TR-01"}, HiveId{"TR-02"}, d.plusDays(-2)));
}

}  // namespace
}  // namespace outyard::session
