// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/sheet_entry.h"

#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

constexpr char kExpected[] = "Expected: 4\u20138 seams, brood on 2\u20133 combs";

std::string plainWord(const base::Message& m) {
  std::string out = m.key;
  for (const auto& arg : m.args) {
    if (const auto* text = std::get_if<std::string>(&arg)) out += "|" + *text;
  }
  return out;
}

class SheetEntryTest : public CommandsTest {
 protected:
  void SetUp() override {
    apiary::Season season = tests::smallSeason();
    const auto put = [&](const auto& row) {
      const apiary::Row after = apiary::toRow(row);
      season.apply({{after.table, apiary::rowKey(after), std::nullopt, after}});
    };
    apiary::SheetRow sheet;
    sheet.sheet = base::SheetId{"26-0148"};
    sheet.yard = base::YardId{"TR"};
    sheet.date = d;
    sheet.madeAt = "2026-04-24T19:00:00Z";
    sheet.paper = "a4";
    put(sheet);
    for (int i = 1; i <= 7; ++i) {
      apiary::SheetLine line;
      line.sheet = sheet.sheet;
      line.line = i;
      line.hive = HiveId{"TR-0" + std::to_string(i)};
      if (i < 7) line.colony = ColonyId{"TR-0" + std::to_string(i)};
      if (i < 6) line.expected = kExpected;
      put(line);
    }
    task(put, "t-feed", "fed", "TR-02", [](apiary::Task& t) {
      t.what = apiary::Goods::Syrup11;
      t.amount = 2;
      t.unit = apiary::Unit::L;
    });
    task(put, "t-box", "supered", "TR-03", [](apiary::Task&) {});
    task(put, "t-look", "look", "TR-03", [](apiary::Task&) {});
    task(put, "t-give", "frames_moved", "TR-04", [](apiary::Task& t) {
      t.what = apiary::Goods::SealedBrood;
      t.amount = 1;
      t.unit = apiary::Unit::Frames;
      t.otherHive = HiveId{"TR-05"};
    });
    task(put, "t-treat", "treated", "TR-05", [](apiary::Task&) {});
    task(put, "t-later", "look", "TR-01", [&](apiary::Task& t) { t.plannedOn = d.plusDays(9); });
    open(std::move(season));
    m_sheet = blankEntry(this->season(), base::SheetId{"26-0148"}).value();
    m_sheet.head.reader = "Ida";
    m_sheet.head.from = readTime("9:30");
    m_sheet.head.airC = 14.5;
  }
  template <class Put, class Fill>
  void task(const Put& put, const char* id, const char* kind, const char* hive, Fill fill) {
    apiary::Task t;
    t.task = base::TaskId{id};
    t.kind = kind;
    t.hive = HiveId{hive};
    t.plannedOn = d;
    fill(t);
    put(t);
  }
  std::string& cell(int line, EntryColumn column) {
    return m_sheet.lines.at(static_cast<std::size_t>(line - 1)).at(column);
  }
  EntryReading read() const { return readSheet(season(), m_sheet, plainWord); }
  const apiary::Inspection& look(const char* hive) const {
    return *season().journal<apiary::Inspection>(HiveId{hive}).back();
  }

  EntrySheet m_sheet;
};

TEST_F(SheetEntryTest, LinesStandAsPrintedWithTheTasksOfTheDay) {
  ASSERT_EQ(m_sheet.lines.size(), 7u + kBlankLines);
  EXPECT_EQ(m_sheet.lines[0].line, 1);
  EXPECT_THAT(m_sheet.lines[0].tasks, IsEmpty());  // planned for another day
  EXPECT_THAT(m_sheet.lines[2].tasks, ElementsAre(base::TaskId{"t-box"}, base::TaskId{"t-look"}));
  EXPECT_EQ(m_sheet.lines[5].kind, LineKind::Colony);
  EXPECT_EQ(m_sheet.lines[6].kind, LineKind::Empty);
  EXPECT_EQ(m_sheet.lines[7].kind, LineKind::Blank);
  EXPECT_EQ(m_sheet.lines.back().line, 10);
  EXPECT_FALSE(blankEntry(season(), base::SheetId{"26-9999"}));
}

TEST_F(SheetEntryTest, TasksStandOnTheSheetOfTheDayForWhichTheyWerePrinted) {
  struct Case {
    std::optional<int> planned, earliest, latest, due;  // days after that of the sheet
    bool printed;
  };
  const Case kCases[] = {{0, {}, {}, {}, true},   {1, {}, {}, {}, false}, {{}, -5, {}, {}, true},
                         {{}, 0, 9, {}, true},    {{}, 1, 9, {}, false},  {{}, {}, -2, 30, true},
                         {{}, {}, {}, 3, true},   {{}, {}, {}, 4, false}, {{}, {}, {}, {}, false},
                         {-1, -5, {}, {}, false}, {{}, 1, {}, -9, false}};
  for (const Case& c : kCases) {
    apiary::Season other = season();
    apiary::Task t;
    t.task = base::TaskId{"t-case"};
    t.kind = "look";
    t.hive = HiveId{"TR-06"};
    const auto on = [&](std::optional<int> days) {
      return days ? std::optional(d.plusDays(*days)) : std::nullopt;
    };
    t.plannedOn = on(c.planned);
    t.earliest = on(c.earliest);
    t.latest = on(c.latest);
    t.dueOn = on(c.due);
    const apiary::Row after = apiary::toRow(t);
    other.apply({{after.table, apiary::rowKey(after), std::nullopt, after}});
    const auto sheet = blankEntry(other, base::SheetId{"26-0148"});
    EXPECT_EQ(!sheet->lines[5].tasks.empty(), c.printed) << (&c - kCases);
  }
}

TEST_F(SheetEntryTest, EveryCellIsCheckedWithItsOwnSentence) {
  struct Case {
    EntryColumn column;
    const char* text;
    const char* key;  // empty = taken
  };
  const Case kCases[] = {{EntryColumn::Seams, "0", ""},
                         {EntryColumn::Seams, "10+", ""},
                         {EntryColumn::Seams, "6,5", ""},
                         {EntryColumn::Seams, ".", ""},
                         {EntryColumn::Seams, "=", ""},
                         {EntryColumn::Seams, "41", "session.entry.bad_seams"},
                         {EntryColumn::Seams, "-1", "session.entry.bad_seams"},
                         {EntryColumn::Seams, "+", "session.entry.bad_seams"},
                         {EntryColumn::Seams, "x", ""},
                         {EntryColumn::Seams, "z", "session.entry.bad_seams"},
                         {EntryColumn::Brood, "8+", ""},
                         {EntryColumn::Brood, "2.5", "session.entry.bad_brood"},
                         {EntryColumn::Brood, "61", "session.entry.bad_brood"},
                         {EntryColumn::Eggs, "Y", ""},
                         {EntryColumn::Eggs, "j", "session.entry.bad_eggs"},
                         {EntryColumn::Queen, "M", ""},
                         {EntryColumn::Queen, "-", ""},
                         {EntryColumn::Queen, "\u2013", ""},
                         {EntryColumn::Queen, "x", "session.entry.bad_queen"},
                         {EntryColumn::Cells, "0", ""},
                         {EntryColumn::Cells, "1", "session.entry.bad_cells"},
                         {EntryColumn::Stores, "h", ""},
                         {EntryColumn::Stores, "5", "session.entry.bad_stores"},
                         {EntryColumn::Weight, "41.5", ""},
                         {EntryColumn::Weight, "301", "session.entry.bad_weight"},
                         {EntryColumn::Weight, "40+", "session.entry.bad_weight"},
                         {EntryColumn::Sick, "y", ""},
                         {EntryColumn::Sick, "afb", "session.entry.bad_sick"},
                         {EntryColumn::Temper, "5", ""},
                         {EntryColumn::Temper, "6", "session.entry.bad_temper"},
                         {EntryColumn::Temper, "0", "session.entry.bad_temper"},
                         {EntryColumn::Drones, "y", ""},
                         {EntryColumn::Drones, "3", "session.entry.bad_drones"},
                         {EntryColumn::Note, "wet floor", ""}};
  for (const Case& c : kCases) {
    EntryLine line = m_sheet.lines.front();
    line.at(c.column) = c.text;
    const auto keys = tests::keysOf(checkCell(line, c.column, m_sheet.head));
    const std::string first = keys.empty() ? "" : keys.front();
    EXPECT_EQ(first, c.key) << entryColumnCode(c.column) << " \"" << c.text << "\"";
  }
}

TEST_F(SheetEntryTest, WeightsInPoundsAreCheckedInPounds) {
  m_sheet.head.kgPerUnit = 0.45359237;  // the pound: exact, 1959 agreement
  cell(1, EntryColumn::Weight) = "600";
  EXPECT_THAT(read().faults, IsEmpty());
  cell(1, EntryColumn::Weight) = "700";
  EXPECT_EQ(read().faults.size(), 1u);
}

TEST_F(SheetEntryTest, ReadsWhatWasPrinted) {
  struct Case {
    const char* text;
    std::optional<ExpectedRange> seams, combs;
  };
  const Case kCases[] = {
      {kExpected, ExpectedRange{4, 8}, ExpectedRange{2, 3}},
      {"Expected: 1 seam, brood on 1 comb", ExpectedRange{1, 1}, ExpectedRange{1, 1}},
      {"Expected: 9\u201311 seams, no brood", ExpectedRange{9, 11}, std::nullopt},
      {"As 6 day(s) ago: 3\u20135 seams", ExpectedRange{3, 5}, std::nullopt},
      {"As 6 day(s) ago: 3-5 seams, brood on 1-3 combs", ExpectedRange{3, 5}, ExpectedRange{1, 3}},
      {"", std::nullopt, std::nullopt},
      {"Expected:", std::nullopt, std::nullopt}};
  for (const Case& c : kCases) {
    const auto got = readExpected(c.text);
    EXPECT_EQ(got.seams, c.seams) << c.text;
    EXPECT_EQ(got.combs, c.combs) << c.text;
  }
}

TEST_F(SheetEntryTest, ReadsTimesAsTheyAreWritten) {
  EXPECT_EQ(readTime("9:30")->text(), "09:30");
  EXPECT_EQ(readTime("09.30")->text(), "09:30");
  EXPECT_EQ(readTime("930")->text(), "09:30");
  EXPECT_EQ(readTime("1405")->text(), "14:05");
  EXPECT_EQ(readTime("9")->text(), "09:00");
  for (const char* wrong : {"", "24:00", "9:3", "x", "12345", "9:60"}) {
    EXPECT_FALSE(readTime(wrong)) << wrong;
  }
}

TEST_F(SheetEntryTest, SurprisesAreWhatLiesOutsideWhatWasPrinted) {
  const auto seams = [&](const char* text) {
    EntryLine line = m_sheet.lines.front();
    line.at(EntryColumn::Seams) = text;
    return surprises(line, EntryColumn::Seams);
  };
  EXPECT_FALSE(seams("4"));
  EXPECT_FALSE(seams("8"));
  EXPECT_TRUE(seams("3"));
  EXPECT_TRUE(seams("9"));
  EXPECT_TRUE(seams("10+"));
  EXPECT_FALSE(seams("."));
  EXPECT_FALSE(seams("="));
  EntryLine unprinted = m_sheet.lines[5];
  unprinted.at(EntryColumn::Seams) = "1";
  EXPECT_FALSE(surprises(unprinted, EntryColumn::Seams));
}

TEST_F(SheetEntryTest, AWholeLineBecomesALookWithTheHeadOfTheSheet) {
  cell(1, EntryColumn::Seams) = "6";
  cell(1, EntryColumn::Brood) = "8+";
  cell(1, EntryColumn::Eggs) = "y";
  cell(1, EntryColumn::Queen) = "m";
  cell(1, EntryColumn::Cells) = "0";
  cell(1, EntryColumn::Stores) = "l";
  cell(1, EntryColumn::Weight) = "31,5";
  cell(1, EntryColumn::Temper) = "2";
  cell(1, EntryColumn::Drones) = "y";
  cell(1, EntryColumn::Note) = "new floor";
  cell(2, EntryColumn::Queen) = "-";
  cell(2, EntryColumn::Cells) = "c";
  mustDo(enterSheet(read()));
  const auto& i = look("TR-01");
  EXPECT_EQ(i.seams, 6);
  EXPECT_EQ(i.seamsView, apiary::SeamsView::Above);
  EXPECT_EQ(i.framesWithBrood, 8);
  EXPECT_EQ(i.eggsSeen, true);
  EXPECT_EQ(i.queenSeen, true);
  EXPECT_EQ(i.queenCells, 0);
  EXPECT_EQ(i.cellKind, std::nullopt);
  EXPECT_EQ(i.storesLevel, apiary::StoresLevel::Low);
  EXPECT_EQ(i.weightKg, 31.5);
  EXPECT_EQ(i.temper, 2);
  EXPECT_EQ(i.dronesSeen, true);
  EXPECT_EQ(i.disease, std::nullopt);
  EXPECT_EQ(i.glance, std::nullopt);
  EXPECT_EQ(i.reader, "Ida");
  EXPECT_EQ(i.time->text(), "09:30");
  EXPECT_EQ(i.airC, 14.5);
  EXPECT_EQ(i.sheet, base::SheetId{"26-0148"});
  EXPECT_EQ(i.line, 1);
  EXPECT_EQ(i.date, d);
  EXPECT_EQ(i.notes, "session.entry.brood_at_least; session.entry.queen_marked; new floor");
  EXPECT_EQ(look("TR-02").queenSeen, false);
  EXPECT_EQ(look("TR-02").cellKind, apiary::CellKind::Charged);
  EXPECT_EQ(look("TR-02").queenCells, std::nullopt);
  EXPECT_EQ(look("TR-02").seams, std::nullopt);
  EXPECT_TRUE(sheetEntered(season(), base::SheetId{"26-0148"}));
  EXPECT_TRUE(blankEntry(season(), base::SheetId{"26-0148"})->lines[0].entered);
}

TEST_F(SheetEntryTest, TenOrMoreIsALowerBoundOfTheTopChamber) {
  cell(5, EntryColumn::Seams) = "10+";  // TR-05 has two chambers
  mustDo(enterSheet(read()));
  const auto seams = season().seamCounts(look("TR-05").record);
  ASSERT_EQ(seams.size(), 1u);
  EXPECT_EQ(seams[0]->box, 2);
  EXPECT_EQ(seams[0]->fromAbove, 10);
  EXPECT_EQ(seams[0]->atLeast, true);
}

TEST_F(SheetEntryTest, AGlanceTakesTheMiddleOfWhatWasPrinted) {
  cell(1, EntryColumn::Seams) = "=";
  mustDo(enterSheet(read()));
  EXPECT_EQ(look("TR-01").seams, 6);
  EXPECT_EQ(look("TR-01").glance, apiary::Glance::AboutRight);
  EXPECT_EQ(look("TR-01").framesWithBrood, std::nullopt);  // nobody looked
  cell(1, EntryColumn::Seams).clear();
  cell(6, EntryColumn::Seams) = "=";  // nothing printed there
  EXPECT_THAT(refused(enterSheet(read())), ElementsAre("session.entry.nothing_printed"));
}

TEST_F(SheetEntryTest, NotOpenedMakesNoInspectionAndTheReasonANote) {
  for (int i = 1; i <= 6; ++i) cell(i, EntryColumn::Seams) = ".";
  cell(7, EntryColumn::BeesIn) = ".";
  cell(3, EntryColumn::NotDone) = "rain";
  cell(7, EntryColumn::Note) = "wasps inside";
  const auto reading = read();
  EXPECT_THAT(reading.faults, IsEmpty());
  EXPECT_EQ(reading.report.notOpened, 7);
  EXPECT_EQ(reading.report.looks, 0);
  mustDo(enterSheet(reading));
  EXPECT_TRUE(season().journal<apiary::Inspection>(HiveId{"TR-03"}).empty());
  const auto* note = season().journal<apiary::Event>(HiveId{"TR-03"}).back();
  EXPECT_EQ(note->kind, apiary::EventKind::Note);
  EXPECT_EQ(note->detail, "session.entry.not_done|rain");
  EXPECT_EQ(note->sheet, base::SheetId{"26-0148"});
  EXPECT_EQ(season().journal<apiary::Event>(HiveId{"TR-07"}).back()->detail, "wasps inside");
}

TEST_F(SheetEntryTest, NotOpenedAndYetSeenIsAFault) {
  cell(1, EntryColumn::Seams) = ".";
  cell(1, EntryColumn::Eggs) = "y";
  const auto reading = read();
  ASSERT_EQ(reading.faults.size(), 1u);
  EXPECT_EQ(reading.faults[0].line, 1);
  EXPECT_EQ(reading.faults[0].column, EntryColumn::Seams);
  EXPECT_THAT(refused(enterSheet(reading)), ElementsAre("session.entry.not_opened_yet_seen"));
}

TEST_F(SheetEntryTest, SickIsNotedWithoutADiagnosis) {
  cell(4, EntryColumn::Sick) = "y";
  const auto reading = read();
  ASSERT_EQ(reading.report.sick.size(), 1u);
  EXPECT_EQ(reading.report.sick[0].second, HiveId{"TR-04"});
  mustDo(enterSheet(reading));
  EXPECT_EQ(look("TR-04").disease, apiary::Disease::Other);
}

TEST_F(SheetEntryTest, TickedTasksBecomeRecordsOrAreSetDone) {
  for (auto& line : m_sheet.lines) line.ticked.insert(line.tasks.begin(), line.tasks.end());
  const auto reading = read();
  EXPECT_EQ(reading.report.tasksDone, 5);
  EXPECT_THAT(reading.report.needDialog,
              testing::UnorderedElementsAre(base::TaskId{"t-box"}, base::TaskId{"t-treat"}));
  mustDo(enterSheet(reading));
  for (const char* id : {"t-feed", "t-box", "t-look", "t-give", "t-treat"}) {
    const auto* task = season().find<apiary::Task>(id);
    EXPECT_EQ(task->state, apiary::TaskState::Done) << id;
    EXPECT_EQ(task->doneOn, d) << id;
  }
  const auto* feed = season().journal<apiary::Event>(HiveId{"TR-02"}).back();
  EXPECT_EQ(feed->kind, apiary::EventKind::Fed);
  EXPECT_EQ(feed->amount, 2);
  EXPECT_EQ(season().find<apiary::Task>("t-feed")->doneRecord, feed->record);
  const auto* gift = season().journal<apiary::Event>(HiveId{"TR-04"}).back();
  EXPECT_EQ(gift->kind, apiary::EventKind::FramesMoved);
  EXPECT_EQ(gift->otherHive, HiveId{"TR-05"});
  EXPECT_FALSE(season().find<apiary::Task>("t-box")->doneRecord);
  EXPECT_EQ(season().find<apiary::Task>("t-later")->state, apiary::TaskState::Planned);
}

TEST_F(SheetEntryTest, OneUndoStepTakesTheWholeSheetBack) {
  cell(1, EntryColumn::Seams) = "6";
  cell(2, EntryColumn::Seams) = "=";
  cell(3, EntryColumn::Seams) = ".";
  cell(3, EntryColumn::NotDone) = "bad tempered";
  m_sheet.lines[1].ticked.insert(base::TaskId{"t-feed"});
  mustDo(enterSheet(read()));
  EXPECT_EQ(session->undoTitle()->key, "session.title.enter_sheet");
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(tests::allRows(season()), start);
}

TEST_F(SheetEntryTest, RefusesAnEmptySheetALineTwiceAndAHiveWithoutBees) {
  EXPECT_THAT(refused(enterSheet(read())), ElementsAre("session.entry.nothing_typed"));
  EXPECT_EQ(read().report.blank, 7);
  cell(1, EntryColumn::Seams) = "6";
  mustDo(enterSheet(read()));
  m_sheet = blankEntry(season(), base::SheetId{"26-0148"}).value();
  cell(1, EntryColumn::Seams) = "7";
  EXPECT_THAT(refused(enterSheet(read())), ElementsAre("session.entry.entered_already"));
  m_sheet.lines[0].typed = {};
  m_sheet.lines[1].kind = LineKind::Empty;
  cell(2, EntryColumn::Seams) = "7";
  EXPECT_THAT(refused(enterSheet(read())), ElementsAre("session.entry.no_bees"));
}

TEST_F(SheetEntryTest, WhenOneHiveIsRefusedNothingIsWritten) {
  cell(1, EntryColumn::Seams) = "6";
  cell(2, EntryColumn::Seams) = "6";
  m_sheet.lines[1].colony = ColonyId{"elsewhere"};
  EXPECT_THAT(refused(enterSheet(read())), testing::AllOf(Contains("session.together_refused"),
                                                          Contains("session.colony_not_there")));
}

}  // namespace
}  // namespace outyard::session
