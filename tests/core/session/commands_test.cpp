// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using apiary::BoxRole;
using apiary::EventKind;
using apiary::HiveStatus;
using apiary::TableId;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;
using tests::day;

// --- yards and places --------------------------------------------------------------------------

TEST_F(CommandsTest, YardsStandsAndFeatures) {
  apiary::Yard y;
  y.yard = YardId{"HILL"};
  mustDo(addYard(y));
  EXPECT_THAT(refused(addYard(y)), ElementsAre("session.yard_exists"));
  y.latitude = 91;
  EXPECT_THAT(refused(editYard(y)), ElementsAre("session.bad_value"));
  y.latitude = 45;
  mustDo(editYard(y));
  y.yard = YardId{"NONE"};
  EXPECT_THAT(refused(editYard(y)), ElementsAre("session.unknown_yard"));
  y.yard = YardId{" X"};
  EXPECT_THAT(refused(addYard(y)), ElementsAre("session.name_untidy"));
  y.yard = YardId{""};
  EXPECT_THAT(refused(addYard(y)), Contains("session.name_blank"));

  apiary::Stand s;
  s.stand = "P1";
  s.yard = YardId{"TR"};
  mustDo(addStand(s));
  EXPECT_THAT(refused(addStand(s)), ElementsAre("session.stand_exists"));
  s.xM = 3;
  mustDo(editStand(s));
  mustDo(arrange({{HiveId{"TR-01"}, 3, 3, std::nullopt, "P1"}}));
  EXPECT_THAT(refused(removeStand(YardId{"TR"}, "P1")), ElementsAre("session.stand_in_use"));
  mustDo(arrange({{HiveId{"TR-01"}, 3, 3, std::nullopt, ""}}));
  mustDo(removeStand(YardId{"TR"}, "P1"));
  EXPECT_THAT(refused(editStand(s)), ElementsAre("session.unknown_stand"));

  apiary::Feature f;
  f.feature = "gate";
  f.yard = YardId{"TR"};
  mustDo(addFeature(f));
  EXPECT_THAT(refused(addFeature(f)), ElementsAre("session.feature_exists"));
  f.xM = 5;
  mustDo(editFeature(f));
  mustDo(removeFeature("gate"));
  EXPECT_THAT(refused(removeFeature("gate")), ElementsAre("session.unknown_feature"));
}

TEST_F(CommandsTest, AddHiveHasItsPlaceAndStackFromItsDay) {
  apiary::Hive h;
  h.hive = HiveId{"TR-20"};
  h.yard = YardId{"TR"};
  h.xM = 9;
  h.yM = 9;
  h.status = HiveStatus::Dead;
  mustDo(addHive(h, d, {box(1), box(2, BoxRole::Super, Beneath::Excluder)}));
  EXPECT_FALSE(at("TR-20", d.plusDays(-1)).present);
  const auto state = at("TR-20", d);
  EXPECT_TRUE(state.present);
  EXPECT_EQ(state.status, HiveStatus::Empty);
  ASSERT_EQ(state.boxes.size(), 2u);
  EXPECT_EQ(state.boxes[1].beneath, Beneath::Excluder);
  EXPECT_FALSE(season().hive(h.hive)->status) << "derived, never stored";
  EXPECT_THAT(refused(addHive(h, d, {})), ElementsAre("session.hive_exists"));
  h.hive = HiveId{"TR-21"};
  EXPECT_THAT(refused(addHive(h, d, {box(1), box(3)})), ElementsAre("session.stack_positions"));
  BoxState odd = box(1);
  odd.frameType = "shoe_box";
  EXPECT_THAT(refused(addHive(h, d, {odd})), ElementsAre("session.unknown_frame_type"));
  h.yard = YardId{"??"};
  EXPECT_THAT(refused(addHive(h, d, {})), ElementsAre("session.unknown_yard"));
}

TEST_F(CommandsTest, ArrangeCorrectsTheDrawingOnly) {
  mustDo(arrange({{HiveId{"TR-01"}, 7, 8, 90.0, ""}}));
  const auto places = season().journal<apiary::Place>(HiveId{"TR-01"});
  ASSERT_EQ(places.size(), 1u) << "superseded, no second place";
  EXPECT_EQ(places[0]->how, apiary::PlaceHow::Drawn);
  EXPECT_EQ(places[0]->fromDate, day("2025-04-01"));
  EXPECT_EQ(season().hive(HiveId{"TR-01"})->xM, 7);
  EXPECT_EQ(season().hive(HiveId{"TR-01"})->entranceDeg, 90);
  EXPECT_THAT(season().journal<apiary::Event>(HiveId{"TR-01"}), IsEmpty());
  EXPECT_THAT(refused(arrange({{HiveId{"TR-01"}, 1, 1, std::nullopt, ""},
                               {HiveId{"TR-01"}, 2, 2, std::nullopt, ""}})),
              ElementsAre("session.hive_twice"));
  EXPECT_THAT(refused(arrange({{HiveId{"TR-01"}, 1e9, 1, std::nullopt, ""}})),
              ElementsAre("session.bad_value"));
}

TEST_F(CommandsTest, MoveIsARecordOfItsDay) {
  mustDo(moveHives({{HiveId{"TR-01"}, 1, 1, std::nullopt, ""}}, YardId{"MB"}, d));
  EXPECT_EQ(at("TR-01", d.plusDays(-1)).yard, YardId{"TR"});
  EXPECT_EQ(at("TR-01", d).yard, YardId{"MB"});
  EXPECT_EQ(at("TR-01", d).entranceDeg, 180) << "as it was";
  EXPECT_EQ(season().hive(HiveId{"TR-01"})->yard, YardId{"MB"});
  EXPECT_EQ(season().journal<apiary::Event>(HiveId{"TR-01"}).back()->kind, EventKind::Moved);
  const auto back = [&](Date on) {
    return moveHives({{HiveId{"TR-01"}, 5, 5, std::nullopt, ""}}, YardId{"TR"}, on);
  };
  EXPECT_THAT(refused(back(d.plusDays(-3))), ElementsAre("session.later_place"));
  EXPECT_THAT(refused(back(day("2025-03-31"))), ElementsAre("session.before_first_place"));
  // Twice on one day: one place holds.
  mustDo(back(d));
  EXPECT_EQ(season().journal<apiary::Place>(HiveId{"TR-01"}).size(), 2u);
  EXPECT_EQ(at("TR-01", d).yard, YardId{"TR"});
  EXPECT_EQ(at("TR-01", d).xM, 5);
}

TEST_F(CommandsTest, SwappedStandsSwapPlaces) {
  mustDo(swapStands(HiveId{"TR-01"}, HiveId{"TR-05"}, d));
  EXPECT_EQ(at("TR-01", d).xM, 10);
  EXPECT_EQ(at("TR-05", d).xM, 2);
  EXPECT_EQ(at("TR-05", d.plusDays(-1)).xM, 10);
  EXPECT_EQ(season().hive(HiveId{"TR-05"})->xM, 2);
  EXPECT_THAT(refused(swapStands(HiveId{"TR-01"}, HiveId{"TR-01"}, d)),
              ElementsAre("session.same_hive"));
  mustDo(withdrawRecord(TableId::Events, lastEvent("TR-01")));
  EXPECT_EQ(at("TR-01", d).xM, 2);
  EXPECT_EQ(season().hive(HiveId{"TR-05"})->xM, 10);
}

// --- what was seen -----------------------------------------------------------------------------

TEST_F(CommandsTest, InspectionWithSidesAndSeams) {
  apiary::Inspection i;
  i.hive = HiveId{"TR-02"};
  i.date = d;
  i.seams = 3.25;
  apiary::CombSide side;
  side.slot = 4;
  side.sealedPct = 60;
  apiary::SeamCount seams;
  seams.fromAbove = 3;
  mustDo(recordInspection(i, {side}, {seams}));
  const auto* seen = at("TR-02", d).colonies[0].lastInspection;
  ASSERT_NE(seen, nullptr);
  EXPECT_EQ(seen->seams, 3.25);
  EXPECT_EQ(seen->enteredAt, "2026-09-30T18:00:00Z");
  ASSERT_EQ(season().combSides(seen->record).size(), 1u);
  EXPECT_EQ(season().combSides(seen->record)[0]->date, d);
  EXPECT_EQ(season().seamCounts(seen->record).size(), 1u);

  EXPECT_THAT(refused(recordInspection(i, {side, side}, {})), ElementsAre("session.side_twice"));
  side.box = 2;
  EXPECT_THAT(refused(recordInspection(i, {side}, {})), ElementsAre("session.no_such_box"));
  i.seams = 41;
  EXPECT_THAT(refused(recordInspection(i, {}, {})), ElementsAre("session.bad_value"));
  i.seams = 3;
  i.hive = HiveId{"NO"};
  EXPECT_THAT(refused(recordInspection(i, {}, {})), ElementsAre("session.unknown_hive"));
  i.hive = HiveId{"TR-01"};
  i.colony = ColonyId{"TR-02"};
  EXPECT_THAT(refused(recordInspection(i, {}, {})), ElementsAre("session.colony_not_there"));
  i.date = day("2025-03-01");
  EXPECT_THAT(refused(recordInspection(i, {}, {})), ElementsAre("session.before_first_place"));
}

TEST_F(CommandsTest, FirstLookMakesAColonyOfTheHivesName) {
  apiary::Inspection later, earlier;
  later.hive = earlier.hive = HiveId{"MB-03"};
  later.date = d.plusDays(7);
  earlier.date = d;
  mustDo(recordInspections({{later, {}, {}}, {earlier, {}, {}}}));
  const auto state = at("MB-03", d);
  ASSERT_EQ(state.colonies.size(), 1u);
  EXPECT_EQ(state.colonies[0].colony, ColonyId{"MB-03"});
  EXPECT_EQ(state.colonies[0].since, d) << "from the earlier of the two looks";
  EXPECT_EQ(season().journal<apiary::ColonyStay>(HiveId{"MB-03"}).size(), 1u);
  ASSERT_TRUE(session->undo().ok());
  EXPECT_THAT(at("MB-03", d).colonies, IsEmpty()) << "many lines, one step";
}

TEST_F(CommandsTest, CorrectionSupersedesTheOneThatCounts) {
  apiary::Inspection i;
  i.hive = HiveId{"TR-02"};
  i.date = d;
  i.seams = 3;
  mustDo(recordInspection(i, {}, {}));
  const auto first = season().journal<apiary::Inspection>(HiveId{"TR-02"}).back()->record;
  i.seams = 4;
  mustDo(correctInspection(first, {i, {}, {}}));
  i.seams = 5;
  mustDo(correctInspection(first, {i, {}, {}}));  // named by the old one: the chain goes on
  const auto counting = season().journal<apiary::Inspection>(HiveId{"TR-02"});
  ASSERT_EQ(counting.size(), 1u);
  EXPECT_EQ(counting[0]->seams, 5);
  EXPECT_EQ(season().allOf<apiary::Inspection>(HiveId{"TR-02"}).size(), 3u) << "none was edited";
  mustDo(withdrawRecord(TableId::Inspections, counting[0]->record));
  EXPECT_THAT(season().journal<apiary::Inspection>(HiveId{"TR-02"}), IsEmpty());
  EXPECT_THAT(refused(correctInspection(first, {i, {}, {}})),
              ElementsAre("session.record_withdrawn"));
  EXPECT_THAT(refused(correctInspection(base::RecordId{"x"}, {i, {}, {}})),
              ElementsAre("session.unknown_record"));
}

TEST_F(CommandsTest, WashAndVerdict) {
  apiary::Wash w;
  w.hive = HiveId{"TR-05"};
  w.date = d;
  w.bees = 300;
  w.mites = 4;
  mustDo(recordWash(w));
  w.mites = 301;
  EXPECT_THAT(refused(recordWash(w)), ElementsAre("session.bad_value"));
  w.mites = 1;
  w.hive = HiveId{"TR-07"};
  EXPECT_THAT(refused(recordWash(w)), ElementsAre("session.hive_empty"));
  const auto verdict = [&](const char* reason) {
    return overruleVerdict(HiveId{"TR-05"}, ColonyId{"TR-05"}, d, apiary::VerdictCode::QueenSuspect,
                           reason);
  };
  EXPECT_THAT(refused(verdict("")), ElementsAre("session.reason_missing"));
  mustDo(verdict("old queen, seen limping"));
  EXPECT_EQ(season().journal<apiary::Event>(HiveId{"TR-05"}).back()->method, "queen_suspect");
}

// --- plans, tasks, settings --------------------------------------------------------------------

TEST_F(CommandsTest, AcceptedPlanLeavesTheJournalAlone) {
  apiary::Plan p;
  p.yard = YardId{"TR"};
  p.date = d;
  apiary::PlanRow r;
  r.option = "stack:TR-01:TR-05:1";
  r.colony = ColonyId{"TR-01"};
  r.hive = HiveId{"TR-01"};
  apiary::Task t;
  t.kind = "stacked";
  t.hive = HiveId{"TR-01"};
  EXPECT_THAT(refused(acceptPlan(p, {r, r}, {})), ElementsAre("session.option_twice"));
  mustDo(acceptPlan(p, {r}, {t}));
  ASSERT_EQ(season().table<apiary::Plan>().size(), 1u);
  const auto& plan = season().table<apiary::Plan>().begin()->second;
  EXPECT_EQ(plan.acceptedAt, "2026-09-30T18:00:00Z");
  EXPECT_EQ(season().table<apiary::PlanRow>().begin()->second.plan, plan.plan);
  EXPECT_EQ(season().table<apiary::Task>().begin()->second.plan, plan.plan);
  EXPECT_TRUE(season().table<apiary::Event>().empty());
  const auto task = season().table<apiary::Task>().begin()->second.task;
  EXPECT_THAT(refused(setTaskState(task, apiary::TaskState::Done, std::nullopt)),
              ElementsAre("session.done_when"));
  mustDo(setTaskState(task, apiary::TaskState::Done, d));
  mustDo(setTaskState(task, apiary::TaskState::Planned, std::nullopt));
  EXPECT_FALSE(season().find<apiary::Task>(task.str())->doneOn);
}

TEST_F(CommandsTest, SheetsSettingsAndGear) {
  apiary::SheetRow s;
  s.sheet = base::SheetId{"S1"};
  s.yard = YardId{"TR"};
  s.date = d;
  s.paper = "a4";
  apiary::SheetLine l;
  l.hive = HiveId{"TR-01"};
  EXPECT_THAT(refused(keepSheet(s, {l, l})), ElementsAre("session.line_twice"));
  mustDo(keepSheet(s, {l}));
  EXPECT_THAT(refused(keepSheet(s, {l})), ElementsAre("session.sheet_exists"));
  EXPECT_THAT(refused(changeSetting("working_date", "soon", "")),
              ElementsAre("session.working_date"));
  mustDo(changeSetting("stack_min_c", "11", "own"));
  EXPECT_EQ(season().setting("stack_min_c"), "11");
  mustDo(changeSetting("stack_min_c", "", ""));
  EXPECT_FALSE(season().setting("stack_min_c"));
  mustDo(countGear({"excluder", "truck", d, 6}));
  mustDo(countGear({"excluder", "truck", d, 7}));
  EXPECT_EQ(season().table<apiary::GearCount>().size(), 1u);
  EXPECT_THAT(refused(countGear({"excluder", "moon", d, 7})), ElementsAre("session.gear_place"));
}

TEST_F(CommandsTest, StateRowsAreWithdrawnWithCare) {
  const auto first = season().journal<apiary::Place>(HiveId{"TR-01"}).front()->record;
  EXPECT_THAT(refused(withdrawRecord(TableId::Places, first)),
              ElementsAre("session.first_place_stays"));
  EXPECT_THAT(refused(withdrawRecord(TableId::Yards, first)), ElementsAre("session.not_a_record"));
  mustDo(moveHives({{HiveId{"TR-01"}, 9, 9, std::nullopt, ""}}, YardId{"TR"}, d));
  const auto moved = season().journal<apiary::Place>(HiveId{"TR-01"}).back()->record;
  EXPECT_THAT(refused(withdrawRecord(TableId::Places, moved)),
              ElementsAre("session.withdraw_the_event"));
  mustDo(moveHives({{HiveId{"TR-01"}, 1, 1, std::nullopt, ""}}, YardId{"TR"}, d.plusDays(5)));
  const auto events = season().journal<apiary::Event>(HiveId{"TR-01"});
  EXPECT_THAT(refused(withdrawRecord(TableId::Events, events[0]->record)),
              ElementsAre("session.built_upon"));
  mustDo(withdrawRecord(TableId::Events, events[1]->record));
  EXPECT_EQ(season().hive(HiveId{"TR-01"})->xM, 9);
  EXPECT_THAT(refused(withdrawRecord(TableId::Events, events[1]->record)),
              ElementsAre("session.record_withdrawn"));
}

}  // namespace
}  // namespace outyard::session
