// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/sheet_entry_dialog.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QTreeWidget>

#include "tests/ui/entry/typist.h"
#include "tests/ui/support/pictures.h"

namespace outyard::entry {
namespace {

using session::EntryColumn;
using tests::Desk;
using tests::field;

TEST(SheetEntryDialog, AWholeSheetByKeysAloneIsOneUndoableStep) {
  Desk desk(tests::sampleSeason());
  printSheet(desk);
  const auto start = tests::allRows(desk.hub.season());
  Typist hand(desk);
  hand.openSheet();
  ASSERT_EQ(hand.dialog.focusWidget(), &hand.table());
  const auto lines = hand.model().sheet().lines;
  ASSERT_GT(lines.size(), 20u);
  ASSERT_TRUE(hand.isAt(0, EntryColumn::Seams));

  // Looked into fully, only lifted, or not opened, in turn.
  std::vector<char> how;
  std::set<base::TaskId> ticked;
  for (std::size_t row = 0; row < lines.size(); ++row) {
    const auto& line = lines[row];
    if (line.kind == session::LineKind::Blank) break;
    ASSERT_TRUE(hand.isAt(static_cast<int>(row), EntryColumn::Seams)) << row;
    const int before = hand.count;
    if (line.kind != session::LineKind::Colony || (row % 3 == 2 && line.tasks.empty())) {
      how.push_back('.');
      hand.type(".");
      EXPECT_EQ(hand.count - before, 1);
      continue;
    }
    if (row % 3 == 1 && line.tasks.empty() && session::readExpected(line.expected).seams) {
      how.push_back('=');
      hand.type("=");
      EXPECT_EQ(hand.count - before, 1);
      continue;
    }
    how.push_back('6');
    hand.type("62ym0h");
    EXPECT_LE(hand.count - before, 6);
    hand.type("31.5");
    hand.key(Qt::Key_Return);  // the weight is a figure: goes on along the line
    hand.type(" 2y");          // not sick, temper, drones
    if (!line.tasks.empty()) {
      hand.table().goTo(static_cast<int>(row), EntryModel::kFirstTask);
      hand.key(Qt::Key_Space);
      ticked.insert(line.tasks.front());
    }
    hand.key(Qt::Key_Return);
  }
  EXPECT_TRUE(hand.isAt(static_cast<int>(how.size()), EntryColumn::Hive));  // the blank lines
  EXPECT_EQ(how.size() + session::kBlankLines, lines.size());
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  ASSERT_EQ(desk.dialogs.failures, QStringList());
  EXPECT_FALSE(hand.dialog.isVisible()) << hand.said().toStdString();

  const auto& season = desk.hub.season();
  int looks = 0;
  for (std::size_t row = 0; row < how.size(); ++row) {
    const apiary::Inspection* made = nullptr;
    for (const auto* i : season.journal<apiary::Inspection>(lines[row].hive)) {
      if (i->sheet == base::SheetId{kNumber} && i->line == lines[row].line) made = i;
    }
    ASSERT_EQ(made != nullptr, how[row] != '.') << row;
    if (!made) continue;
    ++looks;
    EXPECT_EQ(made->reader, "Ida");
    EXPECT_EQ(made->time->text(), "09:30");
    EXPECT_EQ(made->airC, 14.5);
    EXPECT_EQ(made->colony, lines[row].colony);
    if (how[row] == '=') {
      const auto range = *session::readExpected(lines[row].expected).seams;
      EXPECT_EQ(made->seams, (range.low + range.high) / 2.0);
      EXPECT_EQ(made->glance, apiary::Glance::AboutRight);
    } else {
      EXPECT_EQ(made->seams, 6);
      EXPECT_EQ(made->framesWithBrood, 2);
      EXPECT_EQ(made->eggsSeen, true);
      EXPECT_EQ(made->queenSeen, true);
      EXPECT_EQ(made->queenCells, 0);
      EXPECT_EQ(made->storesLevel, apiary::StoresLevel::Heavy);
      EXPECT_EQ(made->weightKg, 31.5);
      EXPECT_EQ(made->temper, 2);
      EXPECT_EQ(made->dronesSeen, true);
      EXPECT_EQ(made->notes, "queen marked");
    }
  }
  EXPECT_FALSE(ticked.empty());
  for (const auto& id : ticked) {
    EXPECT_EQ(season.find<apiary::Task>(id.str())->state, apiary::TaskState::Done) << id.str();
  }
  ASSERT_EQ(desk.dialogs.informed.size(), 1);
  EXPECT_TRUE(desk.dialogs.informed.front().contains(QString::number(looks)))
      << desk.dialogs.informed.front().toStdString();
  ASSERT_TRUE(desk.hub.undo());
  EXPECT_EQ(tests::allRows(desk.hub.season()), start);
}

class EntryKeys : public testing::Test {
 protected:
  EntryKeys() : m_desk(tests::smallSeason()) {
    apiary::Task feed;
    feed.task = base::TaskId{"t-feed"};
    feed.kind = "fed";
    feed.hive = base::HiveId{"TR-02"};
    feed.plannedOn = m_desk.hub.workingDate();
    EXPECT_TRUE(m_desk.hub.execute(session::addTask(feed)));
    apiary::Inspection seen;
    seen.hive = base::HiveId{"TR-01"};
    seen.date = tests::day("2026-04-20");
    seen.seams = 4;
    EXPECT_TRUE(m_desk.hub.execute(session::recordInspection(seen, {}, {})));
    printSheet(m_desk);
  }
  Desk m_desk;
};

TEST_F(EntryKeys, AWrongKeyIsRefusedWithAWordAndTheCursorStays) {
  Typist hand(m_desk);
  hand.openSheet();
  hand.at(0, EntryColumn::Eggs);
  hand.type("x");
  EXPECT_TRUE(hand.isAt(0, EntryColumn::Eggs));
  EXPECT_EQ(hand.cell(0, EntryColumn::Eggs), QString());
  EXPECT_TRUE(hand.said().contains(QStringLiteral("y yes"))) << hand.said().toStdString();
  hand.type("n");
  EXPECT_TRUE(hand.isAt(0, EntryColumn::Queen));
}

TEST_F(EntryKeys, QuoteCopiesFromAboveAndBackspaceTakesBack) {
  Typist hand(m_desk);
  hand.openSheet();
  hand.type("\"");
  EXPECT_FALSE(hand.said().isEmpty());  // nothing stands above the first line
  hand.type("53");
  hand.key(Qt::Key_Return);
  hand.type("\"\"");
  EXPECT_EQ(hand.cell(1, EntryColumn::Seams, Qt::EditRole), QStringLiteral("5"));
  EXPECT_EQ(hand.cell(1, EntryColumn::Brood, Qt::EditRole), QStringLiteral("3"));
  EXPECT_TRUE(hand.isAt(1, EntryColumn::Eggs));
  hand.key(Qt::Key_Backspace);
  EXPECT_TRUE(hand.isAt(1, EntryColumn::Brood));
  hand.type("1");  // overwrites
  EXPECT_EQ(hand.cell(1, EntryColumn::Brood, Qt::EditRole), QStringLiteral("1"));
  hand.at(1, EntryColumn::Seams);
  hand.key(Qt::Key_Backspace);
  EXPECT_EQ(hand.cell(1, EntryColumn::Seams, Qt::EditRole), QString());
  hand.key(Qt::Key_Backspace);
  EXPECT_TRUE(hand.isAt(0, EntryColumn::Brood));
}

TEST_F(EntryKeys, AnyFigureIsTypedWithF2AndCheckedThere) {
  Typist hand(m_desk);
  hand.openSheet();
  hand.key(Qt::Key_F2);
  hand.type("12.5");
  hand.key(Qt::Key_Return);
  EXPECT_EQ(hand.cell(0, EntryColumn::Seams, Qt::EditRole), QStringLiteral("12.5"));
  EXPECT_TRUE(hand.isAt(0, EntryColumn::Brood));
  hand.at(0, EntryColumn::Seams);
  hand.key(Qt::Key_F2);
  hand.type("99");
  hand.key(Qt::Key_Return);
  EXPECT_TRUE(hand.cell(0, EntryColumn::Seams).endsWith(u'?'));
  EXPECT_TRUE(hand.said().contains(QStringLiteral("0 to 40"))) << hand.said().toStdString();
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_TRUE(hand.dialog.isVisible());  // nothing is recorded while a cell is wrong
  EXPECT_TRUE(hand.isAt(0, EntryColumn::Seams));
  EXPECT_FALSE(session::sheetEntered(m_desk.hub.season(), base::SheetId{kNumber}));
}

TEST_F(EntryKeys, ASurpriseIsMarkedAndSaid) {
  Typist hand(m_desk);
  hand.openSheet();
  hand.type("9");  // printed: 3 to 6
  EXPECT_EQ(hand.cell(0, EntryColumn::Seams), QStringLiteral("9 !"));
  EXPECT_TRUE(hand.said().contains(QStringLiteral("3\u20136 seams"))) << hand.said().toStdString();
  hand.at(0, EntryColumn::Seams);
  hand.type("4");
  EXPECT_EQ(hand.cell(0, EntryColumn::Seams), QStringLiteral("4"));
  EXPECT_EQ(hand.said(), QString());
}

TEST_F(EntryKeys, LooksAboutRightNeedsSomethingPrinted) {
  Typist hand(m_desk);
  hand.openSheet();
  hand.at(2, EntryColumn::Seams);  // never looked at
  hand.type("=");
  EXPECT_TRUE(hand.isAt(2, EntryColumn::Seams));
  EXPECT_EQ(hand.cell(2, EntryColumn::Seams), QString());
  EXPECT_TRUE(hand.said().contains(QStringLiteral("Type the seams"))) << hand.said().toStdString();
}

TEST_F(EntryKeys, SickBringsTheCautionAtOnceAndInTheReport) {
  Typist hand(m_desk);
  hand.openSheet();
  hand.at(0, EntryColumn::Sick);
  hand.type("y");
  EXPECT_TRUE(hand.said().contains(QStringLiteral("bee inspector")));
  hand.at(1, EntryColumn::Seams);
  hand.type(".");
  hand.table().goTo(1, EntryModel::kFirstTask);
  hand.key(Qt::Key_Space);
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  ASSERT_EQ(m_desk.dialogs.informed.size(), 1);
  const QString report = m_desk.dialogs.informed.front();
  EXPECT_TRUE(report.contains(QStringLiteral("bee inspector"))) << report.toStdString();
  // The feed was not said with the task: ticked, and still to be said.
  EXPECT_TRUE(report.contains(QStringLiteral("TR-02: Feed"))) << report.toStdString();
  EXPECT_EQ(m_desk.hub.season().find<apiary::Task>("t-feed")->state, apiary::TaskState::Done);
}

TEST_F(EntryKeys, AHalfEnteredSheetIsKeptOfferedAgainAndGoneAfterwards) {
  const QDir drafts(QDir(m_desk.folder.path()).filePath(QStringLiteral("drafts")));
  {
    Typist hand(m_desk);
    hand.openSheet();
    hand.type("42y");
    hand.table().goTo(1, EntryModel::kFirstTask);
    hand.key(Qt::Key_Space);
    hand.key(Qt::Key_Escape);
    EXPECT_FALSE(hand.dialog.isVisible());
  }
  EXPECT_EQ(drafts.entryList(QDir::Files).size(), 1);
  EXPECT_FALSE(session::sheetEntered(m_desk.hub.season(), base::SheetId{kNumber}));
  Typist hand(m_desk);
  auto* list = field<QTreeWidget>(hand.dialog, "entryList");
  ASSERT_EQ(list->topLevelItemCount(), 1);
  EXPECT_EQ(list->topLevelItem(0)->text(4), QStringLiteral("half entered"));
  field<QPushButton>(hand.dialog, "entryOpen")->click();
  EXPECT_EQ(hand.cell(0, EntryColumn::Seams, Qt::EditRole), QStringLiteral("4"));
  EXPECT_EQ(hand.cell(0, EntryColumn::Eggs, Qt::EditRole), QStringLiteral("y"));
  EXPECT_EQ(field<QLineEdit>(hand.dialog, "entryReader")->text(), QStringLiteral("Ida"));
  EXPECT_EQ(field<QLineEdit>(hand.dialog, "entryFrom")->text(), QStringLiteral("09:30"));
  EXPECT_EQ(field<QLineEdit>(hand.dialog, "entryAir")->text(), QStringLiteral("14.5"));
  EXPECT_EQ(hand.model().sheet().lines[1].ticked.size(), 1u);
  EXPECT_TRUE(hand.isAt(2, EntryColumn::Seams));  // where the hand stopped
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_TRUE(drafts.entryList(QDir::Files).isEmpty());
  Typist after(m_desk);
  EXPECT_EQ(field<QTreeWidget>(after.dialog, "entryList")->topLevelItem(0)->text(4),
            QStringLiteral("entered"));
}

TEST_F(EntryKeys, StartOverThrowsTheDraftAway) {
  const QDir drafts(QDir(m_desk.folder.path()).filePath(QStringLiteral("drafts")));
  {
    Typist hand(m_desk);
    hand.openSheet();
    hand.type("4");
    hand.key(Qt::Key_Escape);
  }
  Typist hand(m_desk);
  ASSERT_TRUE(hand.dialog.openSheet(QLatin1String(kNumber)));
  field<QPushButton>(hand.dialog, "entryOver")->click();
  EXPECT_EQ(m_desk.dialogs.asked.size(), 1);
  EXPECT_EQ(hand.cell(0, EntryColumn::Seams), QString());
  EXPECT_TRUE(drafts.entryList(QDir::Files).isEmpty());
}

TEST_F(EntryKeys, AnUnknownNumberAndAWrongHeadSaySo) {
  Typist hand(m_desk);
  hand.type("777");
  hand.key(Qt::Key_Return);
  EXPECT_TRUE(field<QLabel>(hand.dialog, "entryChoiceSay")->text().contains(QStringLiteral("777")));
  ASSERT_TRUE(hand.dialog.openSheet(QStringLiteral("26-0148")));
  field<QLineEdit>(hand.dialog, "entryAir")->setText(QStringLiteral("140"));
  hand.at(0, EntryColumn::Seams);
  hand.table().setFocus();
  hand.type("4");
  EXPECT_FALSE(hand.dialog.commit());
  EXPECT_TRUE(hand.said().startsWith(QStringLiteral("Air"))) << hand.said().toStdString();
}

TEST_F(EntryKeys, FahrenheitAndPoundsAreStoredInSi) {
  m_desk.settings.set(adapt::desk::kMassUnit, adapt::MassUnit::Pound);
  m_desk.settings.set(adapt::desk::kTemperatureUnit, adapt::TemperatureUnit::Fahrenheit);
  Typist hand(m_desk);
  ASSERT_TRUE(hand.dialog.openSheet(QLatin1String(kNumber)));
  field<QLineEdit>(hand.dialog, "entryAir")->setText(QStringLiteral("59"));
  hand.table().setFocus();
  hand.at(0, EntryColumn::Weight);
  hand.type("100");
  hand.key(Qt::Key_Return);
  ASSERT_TRUE(hand.dialog.commit()) << hand.said().toStdString();
  const auto* made = m_desk.hub.season().journal<apiary::Inspection>(base::HiveId{"TR-01"}).back();
  EXPECT_NEAR(*made->weightKg, 45.359237, 1e-9);  // pound: exact, 1959 agreement
  EXPECT_NEAR(*made->airC, 15, 1e-9);
}

TEST(SheetEntryDialogEmpty, ASeasonWithoutSheetsSaysHowToGetOne) {
  Desk desk(tests::smallSeason());
  Typist hand(desk);
  EXPECT_TRUE(field<QLabel>(hand.dialog, "entryEmpty")->isVisible());
  EXPECT_FALSE(field<QPushButton>(hand.dialog, "entryOpen")->isEnabled());
}

TEST(SheetEntryDialogLooks, NothingIsCutInLightAndDark) {
  for (const auto theme : {adapt::Theme::Light, adapt::Theme::Dark}) {
    widgets::applyTheme(theme);
    const QString suffix =
        theme == adapt::Theme::Dark ? QStringLiteral("dark") : QStringLiteral("light");
    Desk desk(tests::sampleSeason());
    printSheet(desk);
    Typist hand(desk);
    tests::picture(hand.dialog, QStringLiteral("entry_choice_") + suffix, {1280, 760});
    tests::expectNothingCut(hand.dialog);
    hand.openSheet();
    hand.type("62ym0l");
    hand.at(1, EntryColumn::Seams);
    hand.type("+");
    hand.at(1, EntryColumn::Cells);
    hand.type("c");
    hand.at(2, EntryColumn::Seams);
    hand.type(".");
    hand.at(3, EntryColumn::Seams);
    hand.key(Qt::Key_F2);
    hand.type("99");
    hand.key(Qt::Key_Return);
    hand.at(4, EntryColumn::Sick);
    hand.type("y");
    hand.at(5, EntryColumn::Seams);
    hand.type("0");
    tests::picture(hand.dialog, QStringLiteral("entry_lines_") + suffix, {1280, 760});
    tests::expectNothingCut(hand.dialog);
    for (int row = 0; row < hand.model().rowCount(); ++row) {
      if (hand.model().line(row).tasks.empty()) continue;
      hand.table().goTo(row, EntryModel::kFirstTask);
      hand.key(Qt::Key_Space);
    }
    tests::picture(hand.dialog, QStringLiteral("entry_tasks_") + suffix, {1280, 760});
  }
  widgets::applyTheme(adapt::Theme::Light);
}

}  // namespace
}  // namespace outyard::entry
