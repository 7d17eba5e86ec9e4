// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/stack_board.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTableView>
#include <QTest>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/hive/comb_face_edit.h"
#include "ui/hive/hive_place.h"
#include "ui/hive/verb_dialog.h"
#include "ui/widgets/theme.h"

namespace outyard::hive {
namespace {

using tests::day;
using tests::Desk;
using tests::field;
using widgets::StackPick;
using widgets::StackView;

/// Combs of TR-05 carry their number in the pollen share of side a: box 1 has 1 to 10, box 2 51 on.
apiary::Season seasonWithCombs() {
  apiary::Season season = tests::smallSeason();
  base::SeededIds ids(4711);
  const base::FixedClock clock(day("2026-04-25"), "2026-04-20T07:00:00Z");
  for (const char* hive : {"TR-05", "TR-06"}) {
    std::vector<apiary::CombSide> sides;
    for (int box = 1; box <= 2; ++box) {
      for (int slot = 1; slot <= 10; ++slot) {
        for (const auto side : {apiary::FrameSide::A, apiary::FrameSide::B}) {
          apiary::CombSide s;
          s.box = box;
          s.slot = slot;
          s.side = side;
          const bool nest = box == 1 && slot >= 2 && slot <= 4;
          s.beesPct = nest ? 75 : 25;
          s.sealedPct = nest ? 30 : 0;
          s.openPct = nest ? 10 : 0;
          s.eggsPct = nest ? 5 : 0;
          s.dronePct = nest && slot == 4 ? 5 : 0;
          s.pollenPct = (box == 2 ? 50 : 0) + slot * (side == apiary::FrameSide::A ? 1 : 0);
          s.nectarPct = 0;
          s.honeyPct = slot == 1 || slot == 10 ? 30 : 5;
          s.undrawnPct = 0;
          s.emptyPct = 100 - *s.sealedPct - *s.openPct - *s.eggsPct - *s.dronePct - *s.pollenPct -
                       *s.honeyPct;
          sides.push_back(s);
        }
      }
    }
    apiary::Inspection look;
    look.hive = base::HiveId{hive};
    look.date = day("2026-04-20");
    look.seams = 7;
    const auto command = session::recordInspection(look, sides, {});
    EXPECT_TRUE(command->check(season));
    season.apply(command->changes(season, {ids, clock}));
  }
  return season;
}

class StackBoardTest : public testing::Test {
 protected:
  StackBoardTest() : m_desk(seasonWithCombs()), m_place(m_desk.hub) {
    m_desk.hub.selectHive(base::HiveId{"TR-05"});
    m_place.resize(1500, 900);
    m_place.show();
    QCoreApplication::processEvents();
    m_start = tests::allRows(season());
    m_desk.dialogs.onRun = [](QDialog&) { return true; };
  }
  [[nodiscard]] const apiary::Season& season() const { return m_desk.hub.season(); }
  StackBoard& board() { return *m_place.findChild<StackBoard*>(); }
  StackView& stack() { return *board().stack(); }
  QString status() { return field<QLabel>(m_place, "stackStatus")->text(); }
  QAction* action(const char* name) {
    for (auto* each : m_place.menuActions()) {
      if (each->objectName() == QLatin1String(name)) return each;
    }
    ADD_FAILURE() << name;
    return nullptr;
  }
  std::vector<int> marks(const char* hive, int box) const {
    std::vector<int> out;
    const auto combs = apiary::combsOfHive(season(), base::HiveId{hive}, day("2026-04-25"));
    if (!combs.box(box)) return out;
    for (const auto& f : combs.box(box)->frames) {
      out.push_back(f.sides[0] ? static_cast<int>(f.sides[0]->holds.pollenPct.value_or(0)) : 0);
    }
    return out;
  }
  void press(QWidget& on, QPoint at) { QTest::mousePress(&on, Qt::LeftButton, {}, at); }
  /// Moves as a hand does: a little first, then there.
  void dragTo(QWidget& from, QPoint start, QWidget& to, QPoint end, bool letGo = true) {
    press(from, start);
    const QPoint target = from.mapFromGlobal(to.mapToGlobal(end));
    QTest::mouseMove(&from, start + (target - start) / 2);
    QTest::mouseMove(&from, target);
    if (letGo) QTest::mouseRelease(&from, Qt::LeftButton, {}, target);
  }
  QPoint comb(StackView& view, int box, int slot) { return view.middleOf({box, slot}).toPoint(); }
  void undone() {
    while (m_desk.hub.session()->canUndo()) ASSERT_TRUE(m_desk.hub.undo());
    EXPECT_TRUE(tests::allRows(season()) == m_start);
  }

  Desk m_desk;
  HivePlace m_place;
  std::vector<apiary::Row> m_start;
};

TEST_F(StackBoardTest, ACombIsDraggedWithinItsBoxAndUndone) {
  dragTo(stack(), comb(stack(), 1, 2), stack(), comb(stack(), 1, 5) + QPoint(3, 0));
  EXPECT_EQ(marks("TR-05", 1), (std::vector<int>{1, 3, 4, 5, 2, 6, 7, 8, 9, 10}));
  EXPECT_EQ(m_desk.dialogs.titles.size(), 1);
  undone();
  EXPECT_EQ(marks("TR-05", 1), (std::vector<int>{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}));
}

TEST_F(StackBoardTest, EscapeDuringADragPutsEverythingBack) {
  dragTo(stack(), comb(stack(), 1, 2), stack(), comb(stack(), 2, 5), false);
  EXPECT_FALSE(status().isEmpty());
  QTest::keyClick(&stack(), Qt::Key_Escape);
  QTest::mouseRelease(&stack(), Qt::LeftButton, {}, comb(stack(), 2, 5));
  EXPECT_TRUE(m_desk.dialogs.titles.isEmpty());
  EXPECT_TRUE(tests::allRows(season()) == m_start);
  EXPECT_TRUE(status().contains(QStringLiteral("stays where it was"))) << status().toStdString();
}

TEST_F(StackBoardTest, KeysLiftMoveAndSetDown) {
  stack().setFocus();
  stack().setPicked({StackPick{1, 2}});
  QTest::keyClick(&stack(), Qt::Key_Right, Qt::ControlModifier);
  QTest::keyClick(&stack(), Qt::Key_Right, Qt::ControlModifier);
  EXPECT_TRUE(tests::allRows(season()) == m_start);  // nothing before it is set down
  QTest::keyClick(&stack(), Qt::Key_Return);
  EXPECT_EQ(marks("TR-05", 1), (std::vector<int>{1, 3, 4, 2, 5, 6, 7, 8, 9, 10}));
  // Upwards into a full box: comb for comb.
  stack().setPicked({StackPick{1, 1}});
  QTest::keyClick(&stack(), Qt::Key_Up, Qt::ControlModifier);
  QTest::keyClick(&stack(), Qt::Key_Return);
  EXPECT_EQ(marks("TR-05", 1).front(), 51);
  EXPECT_EQ(marks("TR-05", 2).front(), 1);
  // Escape puts it back.
  stack().setPicked({StackPick{1, 4}});
  QTest::keyClick(&stack(), Qt::Key_Left, Qt::ControlModifier);
  QTest::keyClick(&stack(), Qt::Key_Escape);
  QTest::keyClick(&stack(), Qt::Key_Escape);
  EXPECT_EQ(m_desk.dialogs.titles.size(), 2);
  undone();
}

TEST_F(StackBoardTest, ArrowsChooseAndTellWhatACombHolds) {
  stack().setPicked({});
  stack().setFocus(Qt::TabFocusReason);
  QTest::keyClick(&stack(), Qt::Key_Home);
  EXPECT_EQ(stack().picked(), (std::vector<StackPick>{{2, 0}}));
  QTest::keyClick(&stack(), Qt::Key_Down);
  QTest::keyClick(&stack(), Qt::Key_Right);
  QTest::keyClick(&stack(), Qt::Key_Right);
  ASSERT_EQ(stack().picked(), (std::vector<StackPick>{{1, 2}}));
  EXPECT_TRUE(stack().accessibleDescription().contains(QStringLiteral("30 % sealed brood")))
      << stack().accessibleDescription().toStdString();
  QTest::keyClick(&stack(), Qt::Key_Right, Qt::ShiftModifier);
  EXPECT_EQ(stack().picked().size(), 2u);
  EXPECT_FALSE(stack().accessibleName().isEmpty());
}

TEST_F(StackBoardTest, BoxesAreDraggedToReverse) {
  dragTo(stack(), comb(stack(), 1, 0), stack(), comb(stack(), 2, 3) - QPoint(0, 20));
  EXPECT_EQ(marks("TR-05", 1).front(), 51);
  EXPECT_EQ(marks("TR-05", 2).front(), 1);
  const auto events = season().journal<apiary::Event>(base::HiveId{"TR-05"});
  ASSERT_EQ(events.size(), 1u);
  EXPECT_EQ(events[0]->kind, apiary::EventKind::Reversed);
  // The same by keys, back again.
  stack().setFocus();
  stack().setPicked({StackPick{2, 0}});
  QTest::keyClick(&stack(), Qt::Key_Down, Qt::ControlModifier);
  QTest::keyClick(&stack(), Qt::Key_Return);
  EXPECT_EQ(marks("TR-05", 1).front(), 1);
  undone();
}

TEST_F(StackBoardTest, ABoxGoesToTheHeapAndFromThereOnAnotherHive) {
  auto* heap = field<QListWidget>(m_place, "gearHeap");
  const int fresh = heap->count();
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(field<QLabel>(d, "caution")->text().contains(QStringLiteral("40 kg")));
    EXPECT_FALSE(field<QComboBox>(d, "bees")->currentData().toBool());  // shaken
    return true;
  };
  dragTo(stack(), comb(stack(), 2, 0), *heap->viewport(), QPoint(20, 10));
  ASSERT_EQ(heap->count(), fresh + 1);
  EXPECT_TRUE(marks("TR-05", 2).empty());
  m_desk.hub.selectHive(base::HiveId{"TR-01"});
  QCoreApplication::processEvents();
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  const QPoint item = heap->visualItemRect(heap->item(4)).center();
  dragTo(*heap->viewport(), item, stack(), comb(stack(), 1, 5) - QPoint(0, 20));
  EXPECT_EQ(marks("TR-01", 2).front(), 51);
  EXPECT_EQ(heap->count(), fresh);
  undone();
}

TEST_F(StackBoardTest, CombsGoToAHiveOfTheYardByNameOrIntoItsStackBeside) {
  auto* hives = field<QListWidget>(m_place, "neighbours");
  QListWidgetItem* six = nullptr;
  for (int i = 0; i < hives->count(); ++i) {
    if (hives->item(i)->text().startsWith(QStringLiteral("TR-06"))) six = hives->item(i);
  }
  ASSERT_TRUE(six);
  // Full boxes there: refused with the reason, nothing asked.
  hives->scrollToItem(six);
  dragTo(stack(), comb(stack(), 1, 3), *hives->viewport(), hives->visualItemRect(six).center());
  EXPECT_TRUE(status().contains(QStringLiteral("full"))) << status().toStdString();
  EXPECT_TRUE(m_desk.dialogs.titles.isEmpty());
  // Beside it, comb for comb, shaken.
  board().showBeside(base::HiveId{"TR-06"});
  QCoreApplication::processEvents();
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(field<QComboBox>(d, "how")->currentData().toBool());
    field<QComboBox>(d, "bees")->setCurrentIndex(1);
    return true;
  };
  dragTo(stack(), comb(stack(), 1, 3), *board().beside(), comb(*board().beside(), 2, 7));
  EXPECT_EQ(marks("TR-06", 2)[6], 3);
  EXPECT_EQ(marks("TR-05", 1)[2], 57);
  const auto* e = season().journal<apiary::Event>(base::HiveId{"TR-06"}).back();
  EXPECT_EQ(e->kind, apiary::EventKind::FramesMoved);
  EXPECT_EQ(e->otherHive, base::HiveId{"TR-05"});
  EXPECT_EQ(e->withBees, false);
  undone();
}

TEST_F(StackBoardTest, TheMenuMovesCombsToo) {
  EXPECT_FALSE(action("moveComb")->isEnabled());
  EXPECT_TRUE(action("moveComb")->toolTip().contains(QStringLiteral("Choose a comb")));
  stack().setPicked({StackPick{2, 10}});
  ASSERT_TRUE(action("moveComb")->isEnabled());
  m_desk.dialogs.onRun = [](QDialog& d) {
    auto* to = field<QComboBox>(d, "toHive");
    to->setCurrentIndex(to->findText(QStringLiteral("the gear heap")));
    EXPECT_FALSE(field<QComboBox>(d, "toBox")->isEnabled());
    return true;
  };
  action("moveComb")->trigger();
  EXPECT_EQ(marks("TR-05", 2).size(), 9u);
  // A free slot now: a fresh comb from the heap by keyboard.
  auto* heap = field<QListWidget>(m_place, "gearHeap");
  heap->setCurrentRow(2);
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  action("fromHeap")->trigger();
  ASSERT_EQ(marks("TR-05", 2).size(), 10u);
  const auto combs = apiary::combsOfHive(season(), base::HiveId{"TR-05"}, day("2026-04-25"));
  EXPECT_EQ(combs.frame(2, 10)->sides[0]->holds.emptyPct, 100);
  stack().setPicked({StackPick{2, 3}});
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QComboBox>(d, "toBox")->setCurrentIndex(0);
    return true;
  };
  action("moveBox")->trigger();
  EXPECT_EQ(marks("TR-05", 1).front(), 51);
  undone();
}

TEST_F(StackBoardTest, WholeBoxBroodToTheMiddleAndOneCombAsSeen) {
  action("broodMiddle")->trigger();
  EXPECT_EQ(marks("TR-05", 1), (std::vector<int>{1, 5, 6, 2, 3, 4, 7, 8, 9, 10}));
  EXPECT_FALSE(action("broodMiddle")->isEnabled());
  m_desk.dialogs.onRun = [](QDialog& d) {
    auto* box = field<QComboBox>(d, "box");
    box->setCurrentIndex(box->findData(2));
    return true;
  };
  action("fillBox")->trigger();
  auto combs = apiary::combsOfHive(season(), base::HiveId{"TR-05"}, day("2026-04-25"));
  EXPECT_EQ(combs.frame(2, 4)->sides[1]->holds.honeyPct, 100);
  stack().setPicked({StackPick{1, 1}});
  m_desk.dialogs.onRun = [](QDialog& d) {
    auto* face = field<CombFaceEdit>(d, "faceA");
    QTest::keyClick(face, Qt::Key_D, Qt::ShiftModifier);
    QTest::mouseClick(field<QPushButton>(d, "copySide"), Qt::LeftButton);
    field<QCheckBox>(d, "mouldB")->setChecked(true);
    return true;
  };
  action("combSeen")->trigger();
  combs = apiary::combsOfHive(season(), base::HiveId{"TR-05"}, day("2026-04-25"));
  EXPECT_EQ(combs.frame(1, 1)->sides[0]->holds.dronePct, 100);
  EXPECT_EQ(combs.frame(1, 1)->sides[1]->holds.dronePct, 100);
  EXPECT_EQ(combs.frame(1, 1)->sides[1]->holds.mould, true);
  undone();
}

TEST_F(StackBoardTest, TheTableTellsTheSameAndChooses) {
  action("stackAsTable")->trigger();
  auto* table = field<QTableView>(m_place, "stackTable");
  ASSERT_TRUE(table->isVisible());
  ASSERT_EQ(table->model()->rowCount(), 20);
  EXPECT_TRUE(
      table->model()->index(1, 2).data().toString().contains(QStringLiteral("30 % sealed brood")));
  table->selectRow(12);
  EXPECT_EQ(stack().picked(), (std::vector<StackPick>{{2, 3}}));
  EXPECT_TRUE(action("moveComb")->isEnabled());
}

TEST_F(StackBoardTest, AnotherDayOnlyShows) {
  m_desk.hub.setShownDate(day("2026-04-22"));
  QCoreApplication::processEvents();
  stack().setPicked({StackPick{1, 2}});
  EXPECT_FALSE(action("moveComb")->isEnabled());
  dragTo(stack(), comb(stack(), 1, 2), stack(), comb(stack(), 1, 5) + QPoint(3, 0));
  EXPECT_TRUE(m_desk.dialogs.titles.isEmpty());
  EXPECT_TRUE(tests::allRows(season()) == m_start);
}

TEST_F(StackBoardTest, LooksRightInLightAndDark) {
  for (const bool dark : {false, true}) {
    const QPalette palette = dark ? widgets::darkPalette() : widgets::lightPalette();
    QApplication::setPalette(palette);
    m_place.setPalette(palette);
    stack().setPicked({StackPick{1, 3}});
    const QString name = dark ? QStringLiteral("dark") : QStringLiteral("light");
    board().showBeside(std::nullopt);
    tests::picture(m_place, QStringLiteral("stack_one_") + name, {1400, 900});
    tests::expectNothingCut(board());
    board().showBeside(base::HiveId{"TR-06"});
    dragTo(stack(), comb(stack(), 1, 3), *board().beside(), comb(*board().beside(), 2, 7), false);
    const QImage image = tests::picture(m_place, QStringLiteral("stack_two_") + name, {1400, 900});
    EXPECT_FALSE(image.isNull());
    QTest::keyClick(&stack(), Qt::Key_Escape);
    m_desk.dialogs.onRun = [&](QDialog& d) {
      tests::picture(d, d.objectName() + d.windowTitle().left(8) + name, d.size());
      tests::expectNothingCut(d);
      return false;
    };
    stack().setPicked({StackPick{1, 3}});
    action("moveComb")->trigger();
    action("combSeen")->trigger();
    stack().setPicked({StackPick{1, 0}});
    action("moveBox")->trigger();
  }
  QApplication::setPalette(widgets::lightPalette());
}

}  // namespace
}  // namespace outyard::hive
