// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/arrange.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QMouseEvent>
#include <QTest>

#include "tests/ui/support/desk.h"
#include "ui/yards/yard_map.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {
namespace {

using base::HiveId;
using tests::Desk;
using tests::field;

session::Spot spotAt(const char* hive, double x, double y) {
  session::Spot spot;
  spot.hive = HiveId{hive};
  spot.xM = x;
  spot.yM = y;
  return spot;
}

TEST(ArrangeTest, ARowRunsThroughTheMiddleOfItsHives) {
  const auto row = inRow({spotAt("a", 0, 1), spotAt("b", 3, 2), spotAt("c", 9, 6)}, RowAlong::X);
  for (const auto& spot : row) EXPECT_NEAR(spot.yM, 3, 1e-9);
  EXPECT_NEAR(row[2].xM, 9, 1e-9);
  const auto column = inRow({spotAt("a", 0, 1), spotAt("b", 3, 2)}, RowAlong::Y);
  EXPECT_NEAR(column[0].xM, 1.5, 1e-9);
  EXPECT_NEAR(column[1].yM, 2, 1e-9);
}

TEST(ArrangeTest, SpreadingKeepsTheOutermostAndEvensTheGaps) {
  const auto spread =
      spreadEvenly({spotAt("c", 9, 1), spotAt("a", 0, 0), spotAt("d", 1, 1), spotAt("b", 0.5, 0)});
  ASSERT_EQ(spread.size(), 4U);
  EXPECT_EQ(spread[0].hive, HiveId{"a"});
  EXPECT_NEAR(spread[1].xM, 3, 1e-9);
  EXPECT_EQ(spread[1].hive, HiveId{"b"});
  EXPECT_NEAR(spread[2].xM, 6, 1e-9);
  EXPECT_NEAR(spread[3].xM, 9, 1e-9);
  EXPECT_NEAR(spread[2].yM, 1, 1e-9) << "the other side stays";
}

TEST(ArrangeTest, TurningPassesNorthAndLeavesOutWhatIsNotRecorded) {
  auto first = spotAt("a", 0, 0), second = spotAt("b", 0, 0);
  first.entranceDeg = 5;
  const auto turned = turnedBy({first, second}, -15);
  ASSERT_EQ(turned.size(), 1U);
  EXPECT_NEAR(*turned[0].entranceDeg, 350, 1e-9);
  EXPECT_NEAR(*facing({second}, 360)[0].entranceDeg, 0, 1e-9);
}

class ArrangeSeveralTest : public testing::Test {
 protected:
  ArrangeSeveralTest() : m_desk(tests::smallSeason()), m_place(m_desk.hub) {
    m_place.resize(1200, 740);
    m_place.show();
    m_desk.hub.selectYard(base::YardId{"TR"});
    QCoreApplication::processEvents();
  }
  [[nodiscard]] YardMap& map() { return m_place.map(); }
  void arrange() {
    for (auto* each : m_place.menuActions()) {
      if (each->text() == QStringLiteral("&Arrange")) each->trigger();
    }
    ASSERT_TRUE(map().mayArrange());
  }
  QAction* twin(const char* name) { return field<QAction>(m_place, name); }
  void drag(QPoint from, QPoint to) {
    QTest::mousePress(map().viewport(), Qt::LeftButton, Qt::NoModifier, from);
    for (const QPoint& point : {from + (to - from) / 2, to}) {
      QMouseEvent move(QEvent::MouseMove, point, map().viewport()->mapToGlobal(point), Qt::NoButton,
                       Qt::LeftButton, Qt::NoModifier);
      QCoreApplication::sendEvent(map().viewport(), &move);
    }
    QTest::mouseRelease(map().viewport(), Qt::LeftButton, Qt::NoModifier, to);
  }
  [[nodiscard]] const apiary::HiveState& hive(const char* id) {
    return *m_desk.hub.hive(HiveId{id});
  }

  Desk m_desk;
  YardsPlace m_place;
};

TEST_F(ArrangeSeveralTest, AFrameChoosesWhatLiesInIt) {
  arrange();
  const QPoint a = map().markCentre(HiveId{"TR-01"}), b = map().markCentre(HiveId{"TR-02"});
  const QRect both = QRect(a, b).normalized().adjusted(-30, -40, 30, 40);
  ASSERT_FALSE(both.contains(map().markCentre(HiveId{"TR-03"})));
  drag(both.topLeft(), both.bottomRight());
  EXPECT_EQ(map().marked(), (std::set{HiveId{"TR-01"}, HiveId{"TR-02"}}));
  QTest::keyClick(&map(), Qt::Key_Escape);
  EXPECT_TRUE(map().marked().empty());
}

TEST_F(ArrangeSeveralTest, ShiftAndClickAddsAndTakesAway) {
  arrange();
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::NoModifier,
                    map().markCentre(HiveId{"TR-01"}));
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::ShiftModifier,
                    map().markCentre(HiveId{"TR-03"}));
  EXPECT_EQ(map().marked(), (std::set{HiveId{"TR-01"}, HiveId{"TR-03"}}));
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::ShiftModifier,
                    map().markCentre(HiveId{"TR-03"}));
  EXPECT_EQ(map().marked(), (std::set{HiveId{"TR-01"}}));
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::NoModifier,
                    map().markCentre(HiveId{"TR-02"}));
  EXPECT_TRUE(map().marked().empty()) << "a plain click means one hive";
}

TEST_F(ArrangeSeveralTest, KeysTurnAllInOneStep) {
  const auto before = tests::allRows(m_desk.hub.season());
  arrange();
  QTest::keyClick(&map(), Qt::Key_A, Qt::ControlModifier);
  ASSERT_EQ(map().marked().size(), map().order().size());
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    field<QDoubleSpinBox>(dialog, "facingDegrees")->setValue(350);
    return true;
  };
  twin("turnTo")->trigger();
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_NEAR(hive("TR-01").entranceDeg.value(), 350, 1e-9);
  EXPECT_NEAR(hive("TR-03").entranceDeg.value(), 350, 1e-9);
  QTest::keyClick(&map(), Qt::Key_BracketRight);
  EXPECT_NEAR(hive("TR-02").entranceDeg.value(), 5, 1e-9);
  QTest::keyClick(&map(), Qt::Key_BracketLeft);
  EXPECT_NEAR(hive("TR-02").entranceDeg.value(), 350, 1e-9);
  for (int step = 0; step < 3; ++step) ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
}

TEST_F(ArrangeSeveralTest, ARowAndEvenGapsAreOneStepEach) {
  arrange();
  map().markAll();
  const auto before = tests::allRows(m_desk.hub.season());
  twin("rowY")->trigger();
  const double x = hive("TR-01").xM.value();
  for (const auto& id : map().order()) EXPECT_NEAR(*m_desk.hub.hive(id)->xM, x, 1e-9);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
  twin("rowX")->trigger();
  twin("spread")->trigger();
  std::vector<double> xs;
  for (const auto& id : map().order()) xs.push_back(m_desk.hub.hive(id)->xM.value());
  std::sort(xs.begin(), xs.end());
  ASSERT_GE(xs.size(), 3U);
  for (std::size_t i = 2; i < xs.size(); ++i) {
    EXPECT_NEAR(xs[i] - xs[i - 1], xs[1] - xs[0], 0.011) << "whole centimetres";
  }
}

TEST_F(ArrangeSeveralTest, DraggingOneCarriesAll) {
  arrange();
  map().setMarked({HiveId{"TR-01"}, HiveId{"TR-02"}});
  const double x1 = *hive("TR-01").xM, y1 = *hive("TR-01").yM, x2 = *hive("TR-02").xM,
               y2 = *hive("TR-02").yM;
  const QPoint from = map().markCentre(HiveId{"TR-01"});
  drag(from, from + QPoint(0, 70));
  EXPECT_LT(*hive("TR-01").yM, y1 - 0.1);
  EXPECT_NEAR(*hive("TR-02").yM - y2, *hive("TR-01").yM - y1, 0.011);
  EXPECT_NEAR(*hive("TR-02").xM - x2, *hive("TR-01").xM - x1, 0.011);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_NEAR(*hive("TR-02").yM, y2, 1e-9) << "one step";
  EXPECT_NEAR(*hive("TR-01").yM, y1, 1e-9);
}

TEST_F(ArrangeSeveralTest, WhatCannotBeDoneSaysWhy) {
  EXPECT_FALSE(twin("rowX")->isEnabled());
  EXPECT_TRUE(twin("rowX")->toolTip().contains(QStringLiteral("Arrange")));
  QTest::keyClick(&map(), Qt::Key_BracketRight);
  arrange();
  m_desk.hub.selectHive(HiveId{"TR-01"});
  EXPECT_TRUE(twin("turnLeft")->isEnabled());
  EXPECT_FALSE(twin("rowX")->isEnabled());
  EXPECT_TRUE(twin("rowX")->toolTip().contains(QStringLiteral("2 hives")));
}

}  // namespace
}  // namespace outyard::yards
