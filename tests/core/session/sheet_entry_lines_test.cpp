// SPDX-License-Identifier: GPL-3.0-or-later
// Lines of dead and empty hives, and hives that were not on the list.
#include "tests/core/session/sheet_lines_fixture.h"

namespace outyard::session {
namespace {

using apiary::EventKind;
using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

// --- dead and empty hives ----------------------------------------------------------------------

TEST_F(SheetLinesTest, EachKindOfLineHasTheCellsThatThePaperPrints) {
  EXPECT_EQ(line(1).form(), LineKind::Colony);
  EXPECT_EQ(line(7).form(), LineKind::Empty);
  EXPECT_EQ(line(8).form(), LineKind::Dead);
  EXPECT_EQ(line(9).form(), LineKind::Blank);
  EXPECT_THAT(columnsOf(LineKind::Dead), ElementsAre(EntryColumn::Cause, EntryColumn::Combs,
                                                     EntryColumn::Closed, EntryColumn::Note));
  EXPECT_THAT(columnsOf(LineKind::Empty), ElementsAre(EntryColumn::BeesIn, EntryColumn::Note));
  EXPECT_EQ(columnsOf(LineKind::Blank).size(), kColonyColumns + 2);
  for (const EntryColumn column : kAllEntryColumns) {
    for (const int number : {1, 7, 8}) {
      EntryLine trial = line(number);
      trial.at(column) = column == EntryColumn::Note ? "words" : "n";
      const auto& own = columnsOf(trial.kind);
      const bool has = std::find(own.begin(), own.end(), column) != own.end();
      const auto keys = tests::keysOf(checkCell(trial, column, m_sheet.head));
      const std::string key = keys.empty() ? "" : keys.front();
      const bool shut = key == "session.entry.no_bees" || key == "session.entry.not_on_line";
      EXPECT_EQ(shut, !has) << number << ' ' << entryColumnCode(column) << ' ' << key;
    }
  }
}

TEST_F(SheetLinesTest, TheAnswersOfADeadHiveAreChecked) {
  struct Case {
    EntryColumn column;
    const char* text;
    const char* key;
  };
  const Case kCases[] = {
      {EntryColumn::Cause, "S", ""},  {EntryColumn::Cause, "q", ""},
      {EntryColumn::Cause, ".", ""},  {EntryColumn::Cause, "x", "session.entry.bad_cause"},
      {EntryColumn::Combs, "l", ""},  {EntryColumn::Combs, "y", "session.entry.bad_combs"},
      {EntryColumn::Closed, "y", ""}, {EntryColumn::Closed, "0", "session.entry.bad_closed"}};
  for (const Case& c : kCases) {
    EntryLine dead = line(8);
    dead.at(c.column) = c.text;
    const auto keys = tests::keysOf(checkCell(dead, c.column, m_sheet.head));
    EXPECT_EQ(keys.empty() ? "" : keys.front(), c.key) << c.text;
  }
  EntryLine empty = line(7);
  empty.at(EntryColumn::BeesIn) = "2";
  EXPECT_THAT(tests::keysOf(checkCell(empty, EntryColumn::BeesIn, m_sheet.head)),
              ElementsAre("session.entry.bad_bees_in"));
  cell(8, EntryColumn::Cause) = ".";
  cell(8, EntryColumn::Closed) = "y";
  EXPECT_EQ(faultOf(), "session.entry.passed_by_yet_said");
}

TEST_F(SheetLinesTest, ADeadHiveGetsItsCauseAndIsCleared) {
  cell(8, EntryColumn::Cause) = "m";
  cell(8, EntryColumn::Combs) = "s";
  cell(8, EntryColumn::Closed) = "y";
  cell(8, EntryColumn::Note) = "mouse guard off";
  const auto reading = read();
  EXPECT_THAT(reading.report.deathSaid, ElementsAre(HiveId{"TR-08"}));
  EXPECT_THAT(reading.report.cleared, ElementsAre(HiveId{"TR-08"}));
  EXPECT_THAT(reading.report.keepApart, IsEmpty());
  enter();
  const auto deaths = events("TR-08", EventKind::Died);
  ASSERT_EQ(deaths.size(), 1u);  // the earlier one is superseded
  EXPECT_EQ(deaths[0]->date, tests::day("2026-03-10"));
  EXPECT_TRUE(deaths[0]->supersedes);
  EXPECT_EQ(deaths[0]->method, "cause_mites");
  EXPECT_EQ(deaths[0]->detail, "cause_mites; combs_stored|2026-04-25; said_before|cause not known");
  EXPECT_EQ(deaths[0]->sheet, base::SheetId{"26-0148"});
  const auto taken = events("TR-08", EventKind::FramesTaken);
  ASSERT_EQ(taken.size(), 1u);
  EXPECT_EQ(taken[0]->amount, 10);  // one chamber of ten
  EXPECT_EQ(taken[0]->unit, apiary::Unit::Frames);
  EXPECT_EQ(taken[0]->what, apiary::Goods::Drawn);
  EXPECT_EQ(taken[0]->method, "stored");
  const auto notes = events("TR-08", EventKind::Note);
  ASSERT_EQ(notes.size(), 1u);
  EXPECT_EQ(notes[0]->detail, "closed; mouse guard off");
  // Its boxes stand there without combs: empty, not dead any more.
  EXPECT_EQ(at("TR-08", d).status, apiary::HiveStatus::Empty);
  EXPECT_EQ(at("TR-08", d).boxes.size(), 1u);
  EXPECT_EQ(at("TR-08", d.plusDays(-1)).status, apiary::HiveStatus::Dead);
  again();
  EXPECT_TRUE(line(8).entered);
}

TEST_F(SheetLinesTest, CombsOfAnUnknownCauseAreKeptApartAndCountForNothing) {
  cell(8, EntryColumn::Cause) = "u";
  cell(8, EntryColumn::Combs) = "s";
  EXPECT_THAT(read().report.keepApart, ElementsAre(HiveId{"TR-08"}));
  enter();
  EXPECT_THAT(events("TR-08", EventKind::FramesTaken), IsEmpty());
  EXPECT_EQ(events("TR-08", EventKind::Note).at(0)->method, "stored");
  EXPECT_EQ(at("TR-08", d).status, apiary::HiveStatus::Empty);
}

TEST_F(SheetLinesTest, CombsLeftInTheHiveAreOnlySaid) {
  cell(8, EntryColumn::Combs) = "l";
  enter();
  EXPECT_THAT(events("TR-08", EventKind::FramesTaken), IsEmpty());
  EXPECT_EQ(events("TR-08", EventKind::Died).at(0)->detail,
            "cause not known; combs_left|2026-04-25");
  EXPECT_EQ(at("TR-08", d).status, apiary::HiveStatus::Dead);
}

TEST_F(SheetLinesTest, WhereFoulBroodIsSuspectedCombsAreOnlyBurnt) {
  apiary::Inspection sick;
  sick.hive = HiveId{"TR-01"};
  sick.date = d;
  sick.disease = apiary::Disease::SuspectAfb;
  mustDo(recordInspection(sick, {}, {}));
  for (const char* fate : {"s", "m"}) {
    cell(8, EntryColumn::Combs) = fate;
    EXPECT_THAT(refused(enterSheet(read())), Contains("session.foul_brood")) << fate;
  }
  cell(8, EntryColumn::Combs) = "b";
  enter();
  EXPECT_EQ(events("TR-08", EventKind::Note).at(0)->method, "burnt");
}

TEST_F(SheetLinesTest, ADeathThatWasSaidAnewCanBeWithdrawnWhole) {
  mustDo(recordDeath(HiveId{"TR-01"}, ColonyId{"TR-01"}, d, "unknown"));
  DeathSaid said;
  said.hive = HiveId{"TR-01"};
  said.date = d;
  said.cause = "mites";
  said.detail = "mites";
  mustDo(correctDeath(said));
  const auto* death = deathOf(season(), HiveId{"TR-01"}, d);
  ASSERT_NE(death, nullptr);
  EXPECT_EQ(death->detail, "mites");
  mustDo(withdrawRecord(apiary::TableId::Events, death->record));
  // The colony lives on: the withdrawal took back what the first record of the death wrote.
  EXPECT_EQ(at("TR-01", d).status, apiary::HiveStatus::Live);
  said.hive = HiveId{"TR-02"};
  EXPECT_THAT(refused(correctDeath(said)), ElementsAre("session.not_dead"));
}

TEST_F(SheetLinesTest, AColonyFoundDeadIsRecordedWithCauseAndCombs) {
  cell(3, EntryColumn::Seams) = "x";
  EXPECT_EQ(line(3).form(), LineKind::Dead);
  cell(3, EntryColumn::Cause) = "s";
  cell(3, EntryColumn::Combs) = "m";
  cell(3, EntryColumn::Note) = "heads in the cells";
  EXPECT_THAT(read().report.deaths, ElementsAre(HiveId{"TR-03"}));
  enter();
  const auto deaths = events("TR-03", EventKind::Died);
  ASSERT_EQ(deaths.size(), 1u);
  EXPECT_EQ(deaths[0]->date, d);
  EXPECT_EQ(deaths[0]->colony, ColonyId{"TR-03"});
  EXPECT_EQ(deaths[0]->method, "cause_starved");
  EXPECT_EQ(deaths[0]->detail, "cause_starved; combs_melted|2026-04-25");
  EXPECT_TRUE(at("TR-03", d).colonies.empty());
  EXPECT_EQ(events("TR-03", EventKind::Note).at(1)->method, "melted");
  EXPECT_EQ(events("TR-03", EventKind::Note).at(0)->detail, "heads in the cells");
  EXPECT_TRUE(season().journal<apiary::Inspection>(HiveId{"TR-03"}).empty());
  again();
  EXPECT_TRUE(line(3).entered);
}

TEST_F(SheetLinesTest, FoundDeadAndYetSeenIsAFault) {
  cell(3, EntryColumn::Seams) = "x";
  cell(3, EntryColumn::Eggs) = "y";
  EXPECT_EQ(faultOf(), "session.entry.dead_yet_seen");
}

TEST_F(SheetLinesTest, BeesInAnEmptyHiveAreAColonyFromThatDay) {
  cell(7, EntryColumn::BeesIn) = "y";
  EXPECT_THAT(read().report.beesIn, ElementsAre(HiveId{"TR-07"}));
  enter();
  const auto state = at("TR-07", d);
  ASSERT_EQ(state.colonies.size(), 1u);
  EXPECT_EQ(state.colonies[0].colony, ColonyId{"TR-07"});
  EXPECT_EQ(events("TR-07", EventKind::Installed).at(0)->method, "swarm");
  again();
  EXPECT_EQ(line(7).kind, LineKind::Colony);  // now a look can be entered there
}

TEST_F(SheetLinesTest, AnEmptyHiveWithoutBeesIsNoted) {
  cell(7, EntryColumn::BeesIn) = "N";
  enter();
  EXPECT_EQ(events("TR-07", EventKind::Note).at(0)->detail, "no_bees_in");
  EXPECT_EQ(at("TR-07", d).status, apiary::HiveStatus::Empty);
}

// --- hives that were not on the list -----------------------------------------------------------

TEST_F(SheetLinesTest, ASwarmInANewHiveBecomesHiveColonyAndLook) {
  cell(9, EntryColumn::Hive) = "SW-1";
  cell(9, EntryColumn::Origin) = "s";
  cell(9, EntryColumn::Seams) = "4";
  cell(9, EntryColumn::Queen) = "v";
  m_sheet.head.reader = "Ida";
  EXPECT_THAT(read().report.newHives, ElementsAre(HiveId{"SW-1"}));
  enter();
  const auto state = at("SW-1", d);
  EXPECT_EQ(state.yard, YardId{"TR"});
  ASSERT_EQ(state.colonies.size(), 1u);
  EXPECT_EQ(state.colonies[0].colony, ColonyId{"SW-1"});
  const auto* stay = season().stays(ColonyId{"SW-1"}).at(0);
  EXPECT_EQ(stay->origin, apiary::ColonyOrigin::Swarm);
  EXPECT_EQ(stay->fromDate, d);
  ASSERT_EQ(state.boxes.size(), 1u);
  EXPECT_EQ(state.boxes[0].frameType, "langstroth_deep");
  EXPECT_EQ(state.boxes[0].frames, 10);
  EXPECT_EQ(state.xM, 19);  // beside the last hive of the row
  EXPECT_EQ(state.yM, 3);
  const auto* look = season().journal<apiary::Inspection>(HiveId{"SW-1"}).at(0);
  EXPECT_EQ(look->seams, 4);
  EXPECT_EQ(look->line, 9);
  EXPECT_EQ(look->reader, "Ida");
  again();
  EXPECT_TRUE(line(9).entered);
  EXPECT_EQ(line(9).name(), "SW-1");
  EXPECT_FALSE(line(10).entered);
}

TEST_F(SheetLinesTest, BoughtAndSplitHaveTheirOwnRecordsAndTheirOwnPlaces) {
  cell(9, EntryColumn::Hive) = "N-1";
  cell(9, EntryColumn::Origin) = "b";
  cell(10, EntryColumn::Hive) = "N-2";
  cell(10, EntryColumn::Origin) = "P";
  enter();
  EXPECT_EQ(events("N-1", EventKind::Bought).size(), 1u);
  EXPECT_EQ(season().stays(ColonyId{"N-1"}).at(0)->origin, apiary::ColonyOrigin::Bought);
  EXPECT_EQ(season().stays(ColonyId{"N-2"}).at(0)->origin, apiary::ColonyOrigin::Split);
  EXPECT_EQ(events("N-2", EventKind::Installed).at(0)->method, "split");
  EXPECT_NE(at("N-1", d).xM, at("N-2", d).xM);
}

TEST_F(SheetLinesTest, AHiveOfAnotherYardIsMovedOnlyWhenItIsSaid) {
  cell(9, EntryColumn::Hive) = "mb-01";  // as a hand writes it
  cell(9, EntryColumn::Seams) = "6";
  EXPECT_EQ(faultOf(), "session.entry.stands_elsewhere");
  cell(9, EntryColumn::Origin) = "s";
  EXPECT_EQ(faultOf(), "session.entry.stands_elsewhere");
  cell(9, EntryColumn::Origin) = "m";
  EXPECT_THAT(read().report.movedIn, ElementsAre(HiveId{"MB-01"}));
  enter();
  EXPECT_EQ(at("MB-01", d).yard, YardId{"TR"});
  EXPECT_EQ(at("MB-01", d.plusDays(-1)).yard, YardId{"MB"});
  EXPECT_EQ(events("MB-01", EventKind::Moved).size(), 1u);
  const auto* look = season().journal<apiary::Inspection>(HiveId{"MB-01"}).at(0);
  EXPECT_EQ(look->seams, 6);
  EXPECT_EQ(look->colony, ColonyId{"MB-01"});
}

TEST_F(SheetLinesTest, AnEmptyHiveOfTheYardCanTakeASwarmOnABlankLine) {
  cell(9, EntryColumn::Hive) = "TR-08";  // dead on line 8
  EXPECT_EQ(faultOf(), "session.entry.number_on_sheet");
  cell(9, EntryColumn::Origin) = "s";
  cell(9, EntryColumn::Seams) = "3";
  enter();
  // The name of the colony that died there is taken.
  EXPECT_EQ(at("TR-08", d).colonies.at(0).colony, ColonyId{"TR-08-2"});
}

TEST_F(SheetLinesTest, ADeadHiveIsClearedBeforeTheSwarmIsPutIntoIt) {
  cell(8, EntryColumn::Cause) = "s";
  cell(8, EntryColumn::Combs) = "m";
  cell(8, EntryColumn::Note) = "cleaned with the torch";
  cell(9, EntryColumn::Hive) = "TR-08";
  cell(9, EntryColumn::Origin) = "s";
  cell(9, EntryColumn::Seams) = "5";
  enter();
  EXPECT_EQ(at("TR-08", d).status, apiary::HiveStatus::Live);
  EXPECT_EQ(events("TR-08", EventKind::Note).at(0)->method, "melted");
  EXPECT_EQ(events("TR-08", EventKind::Note).at(0)->amount, 10);
  EXPECT_EQ(events("TR-08", EventKind::Died).at(0)->method, "cause_starved");
  EXPECT_EQ(season().journal<apiary::Inspection>(HiveId{"TR-08"}).back()->seams, 5);
  // An empty hive that is said to have bees already takes no second colony.
  again();
  cell(7, EntryColumn::BeesIn) = "y";
  cell(10, EntryColumn::Hive) = "TR-07";
  cell(10, EntryColumn::Origin) = "s";
  EXPECT_EQ(faultOf(), "session.entry.number_on_sheet");
}

TEST_F(SheetLinesTest, NumbersAndOriginsThatCannotBeAreToldWithTheCure) {
  struct Case {
    const char *number, *origin, *seams, *key;
    EntryColumn column;
  };
  const Case kCases[] = {{"", "s", "4", "session.entry.number_missing", EntryColumn::Hive},
                         {"", "", "4", "session.entry.number_missing", EntryColumn::Hive},
                         {"TR-02", "", "4", "session.entry.number_on_sheet", EntryColumn::Hive},
                         {"tr-02", "s", "4", "session.entry.number_on_sheet", EntryColumn::Hive},
                         {"NEW", "", "4", "session.entry.new_whence", EntryColumn::Origin},
                         {"NEW", "m", "4", "session.entry.moved_unknown", EntryColumn::Origin},
                         {"NEW", "x", "4", "session.entry.bad_origin", EntryColumn::Origin},
                         {"MB-01", "b", "4", "session.entry.stands_elsewhere", EntryColumn::Origin},
                         {"MB-03", "m", "4", "session.entry.moved_empty", EntryColumn::Origin}};
  for (const Case& c : kCases) {
    again();
    cell(9, EntryColumn::Hive) = c.number;
    cell(9, EntryColumn::Origin) = c.origin;
    cell(9, EntryColumn::Seams) = c.seams;
    const auto faults = read().faults;
    ASSERT_EQ(faults.size(), 1u) << c.number << c.origin;
    EXPECT_EQ(faults[0].what.key, c.key) << c.number << c.origin;
    EXPECT_EQ(faults[0].column, c.column) << c.key;
    EXPECT_EQ(faults[0].line, 9);
  }
  again();
  cell(9, EntryColumn::Hive) = std::string(65, 'x');
  EXPECT_EQ(faultOf(), "session.entry.bad_number");
  again();
  cell(9, EntryColumn::Hive) = cell(10, EntryColumn::Hive) = "NEW";
  cell(9, EntryColumn::Origin) = cell(10, EntryColumn::Origin) = "s";
  EXPECT_EQ(faultOf(), "session.entry.number_on_sheet");
}

TEST_F(SheetLinesTest, WhileTypingOnlyWhatStandsThereIsAFault) {
  const auto key = [&](EntryColumn column) {
    const auto keys = tests::keysOf(checkCell(season(), m_sheet, line(9), column));
    return keys.empty() ? std::string() : keys.front();
  };
  cell(9, EntryColumn::Hive) = "NEW";
  EXPECT_EQ(key(EntryColumn::Hive), "");  // the origin is typed next
  EXPECT_EQ(key(EntryColumn::Origin), "");
  cell(9, EntryColumn::Origin) = "m";
  EXPECT_EQ(key(EntryColumn::Origin), "session.entry.moved_unknown");
  cell(9, EntryColumn::Hive) = "TR-02";
  EXPECT_EQ(key(EntryColumn::Hive), "session.entry.number_on_sheet");
}

TEST_F(SheetLinesTest, AKnownHiveOfTheYardThatWasNotPrintedTakesItsLook) {
  apiary::Hive hive;
  hive.hive = HiveId{"TR-09"};
  hive.yard = YardId{"TR"};
  mustDo(addHive(hive, d.plusDays(-5), {box(1)}));
  cell(9, EntryColumn::Hive) = "TR-09";
  EXPECT_EQ(faultOf(), "session.entry.number_alone");
  cell(9, EntryColumn::Origin) = "m";
  EXPECT_EQ(faultOf(), "session.entry.stands_here");
  cell(9, EntryColumn::Origin).clear();
  cell(9, EntryColumn::Seams) = "5";
  enter();
  EXPECT_EQ(at("TR-09", d).colonies.at(0).colony, ColonyId{"TR-09"});  // as at its first look
  again();
  cell(10, EntryColumn::Hive) = "TR-09";
  cell(10, EntryColumn::Seams) = "5";
  EXPECT_EQ(faultOf(), "session.entry.number_on_sheet");
}

TEST_F(SheetLinesTest, AllOfItIsOneUndoStep) {
  cell(1, EntryColumn::Seams) = "5";
  cell(3, EntryColumn::Seams) = "x";
  cell(7, EntryColumn::BeesIn) = "y";
  cell(8, EntryColumn::Cause) = "q";
  cell(8, EntryColumn::Combs) = "b";
  cell(9, EntryColumn::Hive) = "SW-1";
  cell(9, EntryColumn::Origin) = "s";
  cell(9, EntryColumn::Seams) = "4";
  cell(10, EntryColumn::Hive) = "MB-01";
  cell(10, EntryColumn::Origin) = "m";
  enter();
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(tests::allRows(season()), start);
}

}  // namespace
}  // namespace outyard::session
