// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/usable_bar.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QTest>

#include "core/planning/boost_figures.h"
#include "tests/ui/support/desk.h"

namespace outyard::pairs {
namespace {

using tests::Desk;
using tests::field;

struct UsableBarTest : ::testing::Test {
  Desk desk{tests::smallSeason()};
  UsableBar bar{desk.hub};
  QComboBox* purpose = field<QComboBox>(bar, "usablePurpose");
  QDoubleSpinBox* seams = field<QDoubleSpinBox>(bar, "usableSeams");
  QDoubleSpinBox* combs = field<QDoubleSpinBox>(bar, "usableCombs");

  UsableBarTest() {
    bar.show();
    QTest::qWait(10);
  }
  planning::BoostFigures figures() const {
    std::vector<base::Message> notes;
    return planning::boostFigures(desk.hub.season(), notes);
  }
};

TEST_F(UsableBarTest, BeginsWithWhatIsShipped) {
  EXPECT_EQ(purpose->currentIndex(), 0);
  EXPECT_EQ(seams->value(), planning::BoostFigures{}.usableSeams);
  EXPECT_EQ(combs->value(), planning::BoostFigures{}.usableBroodCombs);
  EXPECT_FALSE(seams->toolTip().isEmpty());
}

TEST_F(UsableBarTest, APurposeIsOneUndoStep) {
  purpose->setFocus();
  QTest::keyClick(purpose, Qt::Key_Down);
  QTest::keyClick(purpose, Qt::Key_Down);  // dividing
  EXPECT_EQ(figures().usableSeams, 8);
  EXPECT_EQ(figures().usableBroodCombs, 6);
  EXPECT_EQ(seams->value(), 8);
  desk.hub.undo();
  EXPECT_EQ(figures().usableSeams, 7);
  EXPECT_EQ(figures().usableBroodCombs, 5);
  desk.hub.undo();
  EXPECT_EQ(figures().usableSeams, planning::BoostFigures{}.usableSeams);
  EXPECT_EQ(purpose->currentIndex(), 0);
}

TEST_F(UsableBarTest, ANumberOfItsOwnIsTheOutfitsMeasure) {
  seams->setFocus();
  seams->selectAll();
  QTest::keyClicks(seams, QStringLiteral("5"));
  EXPECT_EQ(figures().usableSeams, planning::BoostFigures{}.usableSeams);  // not at each digit
  QTest::keyClick(seams, Qt::Key_Return);
  EXPECT_EQ(figures().usableSeams, 5);
  EXPECT_EQ(figures().usableBroodCombs, planning::BoostFigures{}.usableBroodCombs);
  EXPECT_EQ(purpose->currentIndex(), purpose->count() - 1);
}

TEST_F(UsableBarTest, WithoutASeasonNothingCanBeSet) {
  desk.hub.close();
  EXPECT_FALSE(bar.isEnabled());
}

}  // namespace
}  // namespace outyard::pairs
