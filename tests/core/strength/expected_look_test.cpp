// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/expected_look.h"

#include <gtest/gtest.h>

#include "core/strength/brood_stores.h"
#include "tests/support/season_builder.h"

namespace outyard::strength {
namespace {

const FrameFigures& deep() {
  return *shippedFigures("langstroth_deep");
}

TEST(ExpectedLook, SeamsAndBeesAreEachOthersInverse) {
  for (const FrameFigures& figures : allShippedFigures()) {
    for (double seams = 0.5; seams <= 20; seams += 0.5) {
      EXPECT_NEAR(seamsFromBees(beesFromSeams(seams, figures), figures), seams, 1e-6)
          << figures.frameType;
    }
  }
}

TEST(ExpectedLook, BroodCombsAndCellsAreEachOthersInverse) {
  for (double combs = 1; combs <= 12; combs += 0.25) {
    EXPECT_NEAR(combsWithBrood(cellsOfCombs(combs, deep()), deep()), combs, 1e-9);
  }
}

// A practitioner's figures, no source: brood on 3 to 4 combs, each about half covered, is 6,000 to
// 11,000 cells.
TEST(ExpectedLook, AgreesWithTheTradeOnBroodCombs) {
  EXPECT_NEAR(combsWithBrood(8500, deep()), 3, 0.2);
  EXPECT_NEAR(combsWithBrood(11000, deep()), 4, 0.2);
  EXPECT_NEAR(cellsOfCombs(3.5, deep()), 8500, 1500);
}

// Otherwise a colony that looks just as expected would lose brood by being looked at.
TEST(ExpectedLook, IsWhatTheEstimateOfThatLookReads) {
  for (int combs = 1; combs <= 10; ++combs) {
    apiary::Inspection i;
    i.framesWithBrood = combs;
    StrengthEstimate read;
    addBrood(i, {}, {deep(), false}, read);
    ASSERT_TRUE(read.broodCells);
    EXPECT_NEAR(combsWithBrood(read.broodCells->median, deep()), combs, 1e-9);
  }
}

TEST(ExpectedLook, SpeaksInWholeSeamsAndCombs) {
  const Spread bees{beesFromSeams(8.4, deep()), beesFromSeams(7.6, deep()),
                    beesFromSeams(9.2, deep())};
  const Spread brood{cellsOfCombs(5.4, deep()), cellsOfCombs(4.7, deep()),
                     cellsOfCombs(6.1, deep())};
  const auto look = expectedLook(bees, brood, deep(), 20);
  EXPECT_EQ(look.seams.whole(), (WholeRange{8, 9}));
  EXPECT_EQ(look.combs.whole(), (WholeRange{5, 6}));
  EXPECT_NEAR(look.width, 1.6 / 8.4, 1e-6);
}

TEST(ExpectedLook, ABoxHoldsNoMoreThanItsFrames) {
  const Spread bees{40000, 30000, 60000};
  const Spread brood{60000, 40000, 90000};
  const auto look = expectedLook(bees, brood, deep(), 10);
  EXPECT_LE(look.seams.high, 10);
  EXPECT_LE(look.combs.high, 10);
  EXPECT_GT(look.width, 0);
  EXPECT_GT(expectedLook(bees, brood, deep(), 0).seams.high, 10);  // boxes not recorded
}

TEST(ExpectedLook, NoBroodIsOnNoComb) {
  const auto look = expectedLook({3000, 2500, 3500}, {0, 0, 20}, deep(), 10);
  EXPECT_EQ(look.combs.whole(), (WholeRange{0, 0}));
  EXPECT_DOUBLE_EQ(combsWithBrood(0, deep()), 0);
  EXPECT_DOUBLE_EQ(combsWithBrood(300, deep()), 1);  // a patch is on one comb
}

TEST(ExpectedLook, FramesAreThoseOfTheColonysBoxes) {
  tests::SeasonBuilder b;
  b.yard("TR").livingHive("TR-01", "TR", 1, 1, 2);
  const auto season = b.take();
  const auto hive = apiary::hiveOn(season, base::HiveId("TR-01"), tests::day("2026-05-01"));
  EXPECT_EQ(framesOf(hive, base::ColonyId("TR-01")), 20);
}

}  // namespace
}  // namespace outyard::strength
