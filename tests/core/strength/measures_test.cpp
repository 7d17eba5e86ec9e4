// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/measures.h"

#include <gtest/gtest.h>

#include <numbers>
#include <set>

#include "tests/core/strength/strength_season.h"

namespace outyard::strength {
namespace {

const FrameFigures& liebefeld() {
  return *shippedFigures("liebefeld");
}

// Justrich's table in Betts 1938, The Bee World, Sept., pp. 106-107: both sides of 1 dm2.
TEST(Measures, CellsOfBothSidesAsInJustrichsTable) {
  EXPECT_NEAR(cellsPerDm2BothSides(12.8), 378, 1);
  EXPECT_NEAR(cellsPerDm2BothSides(20), 923, 1);
  EXPECT_NEAR(cellsPerDm2BothSides(12.8), 378.4, 0.1);
  EXPECT_NEAR(cellsPerDm2BothSides(20), 923.8, 0.1);
}

// Geometry; "up to 400" a dm2 in the Liebefeld method.
TEST(Measures, CellsOfCommonFoundation) {
  EXPECT_NEAR(cellsPerCm2OfWidth(5.4), 3.960, 0.005);
  EXPECT_NEAR(100 * cellsPerCm2OfWidth(5.4), 396.0, 0.05);
  EXPECT_NEAR(kCm2PerIn2 * cellsPerCm2OfWidth(5.4), 25.5, 0.05);
  EXPECT_NEAR(cellsPerCm2OfWidth(4.9), 4.81, 0.005);
  EXPECT_NEAR(cellsPerCm2OfWidth(6.9), 2.43, 0.006);
  // Ten centimetres over the width of a cell is the other way to count.
  EXPECT_NEAR(cellsPerDm2(100 / 5.4), 100 * cellsPerCm2OfWidth(5.4), 1e-9);
}

// "Das Schaetzraehmchen", bees-online.at, 20 August 2020.
TEST(Measures, ZanderSideOfTheCountingFrame) {
  EXPECT_DOUBLE_EQ(beesOnSide(liebefeld(), shareOfEighths(8)), 1000);
  EXPECT_DOUBLE_EQ(cellsOnSide(liebefeld(), shareOfEighths(8)), 3200);
  EXPECT_DOUBLE_EQ(droneCellsOnSide(liebefeld(), shareOfEighths(8)), 1840);
  EXPECT_DOUBLE_EQ(storesOnSideKg(liebefeld(), shareOfEighths(8)), 1.0);
}
// The worked photograph of the same page: 4/8 food, 1/8 sealed brood, 2/8 bees.
TEST(Measures, ZanderSideWorkedExample) {
  EXPECT_DOUBLE_EQ(storesOnSideKg(liebefeld(), shareOfEighths(4)), 0.5);
  EXPECT_DOUBLE_EQ(cellsOnSide(liebefeld(), shareOfEighths(1)), 400);
  EXPECT_DOUBLE_EQ(beesOnSide(liebefeld(), shareOfEighths(2)), 250);
}

// Swiss association wiki on the Liebefeld method (Agroscope, "Volksentwicklung", table 5).
TEST(Measures, FiveThousandBeesInEighths) {
  EXPECT_DOUBLE_EQ(eighthsFor(5000, 5000 / 3.5), 28);
  EXPECT_NEAR(5000 / 3.5, 1428.6, 0.05);
  EXPECT_DOUBLE_EQ(eighthsFor(5000, 1250), 32);
}

// Simpson 1969, J. Apic. Res. 8(1):3-8: 1,100 and 1,400 bees a comb in use; 3.5 boxes of 11
// British combs and 3 boxes of 10 Langstroth combs for the adults of a full colony.
TEST(Measures, SimpsonsHives) {
  const FrameFigures& deep = *shippedFigures("langstroth_deep");
  const FrameFigures& british = *shippedFigures("national_brood");
  EXPECT_DOUBLE_EQ(3.5 * british.framesPerBox * kBeesPerBritishInUse, 42350);
  EXPECT_DOUBLE_EQ(3.0 * deep.framesPerBox * kBeesPerLangstrothInUse, 42000);
  // By our table both hives are then covered to much the same share.
  const double deepShare = kBeesPerLangstrothInUse / (2 * deep.beesPerSide());
  const double britishShare = kBeesPerBritishInUse / (2 * british.beesPerSide());
  EXPECT_NEAR(deepShare, 0.61, 0.02);
  EXPECT_NEAR(britishShare, 0.65, 0.02);
}

// Almond grading, E. Mussen (University of California): 8 frames of 2,000 bees. The grader's frame
// must lie between the frame in use (Simpson) and the most a comb can hold (Burgett & Burikam 1985,
// from memory).
TEST(Measures, GradersFrame) {
  EXPECT_DOUBLE_EQ(8 * kBeesPerGradersFrame, 16000);
  const double full = 2 * shippedFigures("langstroth_deep")->beesPerSide();
  EXPECT_GT(full, kBeesPerGradersFrame);
  EXPECT_LT(full, 2430);
}

// Dorchester and Weymouth association, hive sizes (its 13,000 cm2 is a slip for 18,000).
TEST(Measures, CombForABusyQueen) {
  EXPECT_DOUBLE_EQ(cellsForLaying(2000), 42000);
  EXPECT_DOUBLE_EQ(cellsForLaying(2000) + 30000, 72000);
  EXPECT_DOUBLE_EQ((cellsForLaying(2000) + 30000) / 4.0, 18000);
}

// US grade standards as restated by htfbw.com: 600 and 1,000 square inches of brood.
TEST(Measures, GradeStandardsInSquareInches) {
  EXPECT_NEAR(600 * kCm2PerIn2, 3871, 1);
  EXPECT_NEAR(600 * kCellsPerIn2Rule, 14160, 1);
  EXPECT_NEAR(1000 * kCm2PerIn2, 6452, 1);
  EXPECT_NEAR(1000 * kCellsPerIn2Rule, 23600, 1);
}

// Development 3 + 6 + 12 days (beehivetutorials.com): steady laying.
TEST(Measures, SteadyBroodFromSealed) {
  const SteadyBrood b = steadyBroodFromSealed(12000);
  EXPECT_DOUBLE_EQ(b.eggs, 3000);
  EXPECT_DOUBLE_EQ(b.larvae, 6000);
  EXPECT_DOUBLE_EQ(b.total, 21000);
  EXPECT_DOUBLE_EQ(layingRateFromSealed(12000), 1000);
  EXPECT_DOUBLE_EQ(layingRateFromEggs(b.eggs), 1000);
  EXPECT_DOUBLE_EQ(layingRateFromTotal(b.total), 1000);
}
TEST(Measures, ExpansionIndexIsOneWhenSteadyWithLosses) {
  EXPECT_DOUBLE_EQ(expansionIndex(1000, 3520), 1);
  EXPECT_GT(expansionIndex(1500, 3520), 1);
  EXPECT_LT(expansionIndex(500, 3520), 1);
}

// 3,500 a pound (thebeekeepersdigest.com; whatbugisthat.com).
TEST(Measures, ThreePoundPackage) {
  EXPECT_DOUBLE_EQ(packageBees(3), 10500);
  EXPECT_NEAR(milligramsPerBee(3500), 129.6, 0.05);
  EXPECT_NEAR(packageBeesKg(1), 7716, 1);
}

// Arithmetic of Wilson's interval.
TEST(Measures, WilsonOfWashes) {
  const Interval a = wilson(9, 300);
  EXPECT_NEAR(100 * a.low, 1.59, 0.01);
  EXPECT_NEAR(100 * a.high, 5.60, 0.01);
  const Interval b = wilson(12, 400);
  EXPECT_NEAR(100 * b.low, 1.72, 0.01);
  EXPECT_NEAR(100 * b.high, 5.17, 0.01);
}
TEST(Measures, WilsonAtTheEdges) {
  EXPECT_EQ(wilson(0, 300).low, 0);
  EXPECT_GT(wilson(0, 300).high, 0);
  EXPECT_EQ(wilson(300, 300).high, 1);
  EXPECT_EQ(wilson(0, 0).high, 1);  // nothing washed: nothing known
}

// Standard geometry.
TEST(Measures, EllipseIsSmallerThanItsRectangle) {
  EXPECT_NEAR(ellipseArea(20, 10), std::numbers::pi / 4 * 200, 1e-12);
  EXPECT_NEAR(20 * 10 / ellipseArea(20, 10), 1.273, 0.001);  // the rectangle rule reads 27 % over
}

// Computed in the table of cluster sizes: 20 cm across at 1.3 bees a cm2 and 38 mm spacing.
TEST(Measures, BeesOfARoundCluster) {
  EXPECT_NEAR(clusterBees(20, 1.3), 2870, 10);
  EXPECT_NEAR(clusterBees(30, 1.3), 9670, 10);
}

// Common practice, no source: 2,000 bees in a cool April keep a nest of about 1,300 cells, it fills
// what they cover. McLellan 1978: 37,000 adults with 24,000 brood in June are not short of cover.
TEST(Measures, WarmCellsOfSmallAndLargeColonies) {
  const FrameFigures& deep = *shippedFigures("langstroth_deep");
  EXPECT_GT(1300 / warmCells(2000, 8, deep), 0.5);
  EXPECT_LT(1300 / warmCells(2000, 8, deep), 1.2);
  EXPECT_LT(24000 / warmCells(37000, 18, deep), 0.7);
  double last = 0;
  for (double bees = 0; bees < 60000; bees += 500) {
    const double now = warmCells(bees, 8, deep);
    EXPECT_GE(now, last);
    last = now;
  }
  EXPECT_LT(warmCells(3000, 0, deep), warmCells(3000, 15, deep));
}

TEST(FrameTable, EveryShippedTypeHasAllFiguresInRange) {
  const std::set<std::string> wanted{
      "langstroth_deep", "langstroth_medium", "langstroth_shallow", "dadant_brood",
      "dadant_super",    "national_brood",    "national_super",     "zander",
      "german_normal",   "liebefeld"};
  std::set<std::string> have;
  for (const FrameFigures& f : allShippedFigures()) {
    have.insert(f.frameType);
    EXPECT_FALSE(f.source.empty()) << f.frameType;
    EXPECT_GT(f.framesPerBox, 0) << f.frameType;
    const auto notes = figureNotes(f.frameType);
    EXPECT_EQ(notes.size(), 5U) << f.frameType;
    for (const FigureNote& n : notes) {
      EXPECT_FALSE(n.source.empty()) << f.frameType << ' ' << n.column;
      EXPECT_LE(n.low, n.value) << f.frameType << ' ' << n.column;
      EXPECT_GE(n.high, n.value) << f.frameType << ' ' << n.column;
    }
  }
  EXPECT_EQ(have, wanted);
  EXPECT_EQ(shippedFigures("no_such_frame"), nullptr);
  EXPECT_TRUE(figureNotes("no_such_frame").empty());
}

// 135 square inches a side (2,700 in a ten-frame box): US grade standards as restated.
TEST(FrameTable, LangstrothDeepAgainstSquareInches) {
  EXPECT_NEAR(shippedFigures("langstroth_deep")->combCm2, 135 * kCm2PerIn2, 10);
}

TEST(FrameTable, OwnRowReplacesOnlyWhatItGives) {
  test::TestSeason s;
  apiary::FrameType own;
  own.frameType = "langstroth_deep";
  own.beesPerCm2 = 1.2;
  s.add(own);
  const auto f = figuresFor(s.season, "langstroth_deep").value();
  EXPECT_DOUBLE_EQ(f.beesPerCm2, 1.2);
  EXPECT_DOUBLE_EQ(f.combCm2, 880);
  EXPECT_DOUBLE_EQ(f.honeySideKg, 1.45);
}

TEST(FrameTable, OwnTypeNeedsItsCombArea) {
  test::TestSeason s;
  apiary::FrameType own;
  own.frameType = "long_comb";
  s.add(own);
  EXPECT_FALSE(figuresFor(s.season, "long_comb"));
  own.frameType = "wide_comb";
  own.combCm2 = 1000;
  own.framesPerBox = 20;
  s.add(own);
  const auto f = figuresFor(s.season, "wide_comb").value();
  EXPECT_DOUBLE_EQ(f.combCm2, 1000);
  EXPECT_EQ(f.framesPerBox, 20);
  EXPECT_GT(f.honeySideKg, 1.2);
  EXPECT_GT(f.boxKg, 5);
  EXPECT_FALSE(figuresFor(s.season, "never_heard_of"));
}

}  // namespace
}  // namespace outyard::strength
