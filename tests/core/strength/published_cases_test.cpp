// SPDX-License-Identifier: GPL-3.0-or-later
// Further cases from handbooks, associations and papers, each with its source; the check values of
// comb geometry, counting frames and grade standards stand in measures_test.cpp.
#include <gtest/gtest.h>

#include <cmath>

#include "core/strength/bee_looks.h"
#include "core/strength/brood_stores.h"
#include "core/strength/estimate.h"
#include "core/strength/frame_table.h"
#include "core/strength/measures.h"
#include "core/strength/verdict.h"
#include "tests/core/strength/strength_season.h"

namespace outyard::strength {
namespace {

using test::day;
using test::TestSeason;

constexpr double kKgPerLb = 0.45359237;

/// A box with every comb full of capped stores.
double fullBoxLb(const char* type) {
  const FrameFigures& f = *shippedFigures(type);
  return (f.boxKg + 2 * f.framesPerBox * f.honeySideKg) / kKgPerLb;
}

// honeyrunapiaries.com, "Why switch (or start with) medium frames?": a deep box full of honey
// weighs 90 to 100 pounds or more. What is lifted is what the cautions go by.
TEST(PublishedCases, DeepBoxFullOfHoney) {
  EXPECT_GE(fullBoxLb("langstroth_deep"), 80);
  EXPECT_LE(fullBoxLb("langstroth_deep"), 105);
}

// homesweetbees.com, "How to weigh hives": a ten-frame medium box full of honey weighs 50 to 60 lb.
TEST(PublishedCases, MediumBoxFullOfHoney) {
  EXPECT_GE(fullBoxLb("langstroth_medium"), 50);
  EXPECT_LE(fullBoxLb("langstroth_medium"), 60);
}

// Equipment handout of a supplier of Madison, Wisconsin: a shallow super holds about 30 lb of honey
// when all its combs are drawn and filled.
TEST(PublishedCases, ShallowSuperHoldsThirtyPounds) {
  const FrameFigures& f = *shippedFigures("langstroth_shallow");
  EXPECT_NEAR(2 * f.framesPerBox * f.honeySideKg / kKgPerLb, 30, 5);
}

// Conwy association, "Measuring beehive stores in winter", January 2014: a wooden National without
// stores weighs about 17 kg with one brood box, about 22 kg with a super on it. Our boxes are set
// by these two; what is checked is the sum of the tare.
TEST(PublishedCases, WinterTareOfAWoodenNational) {
  TestSeason single("national_brood", 53);
  const auto boxes = [&](std::initializer_list<const char*> types) {
    std::vector<apiary::BoxState> out;
    for (const char* t : types) {
      apiary::BoxState b;
      b.frameType = t;
      out.push_back(b);
    }
    return out;
  };
  const Estimate bees = Estimate::fromMedian(10000, 0.3), brood{};
  const auto one = tareOf(single.season, boxes({"national_brood"}), bees, brood);
  const auto half = tareOf(single.season, boxes({"national_brood", "national_super"}), bees, brood);
  ASSERT_TRUE(one && half);
  EXPECT_NEAR(one->kg, 17, 1.5);
  EXPECT_NEAR(half->kg, 22, 2);
  EXPECT_GT(one->sd, 1.5);
}

// "Hive net weight", a web page with the weighed parts of a sample hive; a deep body with frames
// and no comb 13.7 lb, a medium with frames and comb 10.25 lb. Light boxes, so they mark the lower
// end of our ranges.
TEST(PublishedCases, WeighedBoxesLieAboutTheLowerEndOfTheRange) {
  const auto boxNote = [](const char* type) {
    for (const FigureNote& n : figureNotes(type)) {
      if (n.column == "box_kg") return n;
    }
    return FigureNote{};
  };
  // Ten drawn combs add 0.15 to 0.2 kg each to bare frames (from memory).
  EXPECT_LE(boxNote("langstroth_deep").low, 13.6875 * kKgPerLb + 2.0);
  EXPECT_GE(boxNote("langstroth_deep").high, 13.6875 * kKgPerLb + 1.5);
  EXPECT_LE(boxNote("langstroth_medium").low, 10.25 * kKgPerLb);
  EXPECT_GE(boxNote("langstroth_medium").high, 10.25 * kKgPerLb);
}

// South-western association, "Hefting a hive" (swhbk.org.uk): a full-size colony should have 18 to
// 20 kg of food at the beginning of October. That is what "heavy" must hold, "low" must not.
TEST(PublishedCases, AutumnTargetIsHeavy) {
  const Estimate heavy = storesOfLevel(apiary::StoresLevel::Heavy);
  EXPECT_LE(heavy.low, 18);
  EXPECT_GE(heavy.high, 20);
  EXPECT_LT(storesOfLevel(apiary::StoresLevel::Low).high, 18);
  EXPECT_LT(storesOfLevel(apiary::StoresLevel::Medium).high, 18);
}

// Kiwifruit standard of New Zealand as told by D. Black (nzbees.net, "September"): four frames all
// brood, or seven of which 60 % is brood, are worth the same.
TEST(PublishedCases, SixtyPerCentOfSevenFramesIsFourFrames) {
  const auto cells = [](int combs, double percent) {
    TestSeason s;
    auto i = s.add(TestSeason::look("2026-09-20"));
    for (int slot = 1; slot <= 10; ++slot) {
      for (const auto side : {apiary::FrameSide::A, apiary::FrameSide::B}) {
        apiary::CombSide c;
        c.inspection = i.record;
        c.hive = i.hive;
        c.date = i.date;
        c.box = 1;
        c.slot = slot;
        c.side = side;
        c.sealedPct = slot <= combs ? percent : 0;
        c.emptyPct = 100 - *c.sealedPct;
        s.add(c);
      }
    }
    return estimateInspection(s.season, i);
  };
  const auto four = cells(4, 100), seven = cells(7, 60);
  ASSERT_TRUE(four.sealedCells && seven.sealedCells);
  EXPECT_NEAR(seven.sealedCells->median / four.sealedCells->median, 1, 0.06);
  EXPECT_NEAR(four.sealedCells->median, 4 * 7040, 1);
}

// K. Hamdan, "Equalization of bee colonies strength": in early spring 5 to 7 covered frames with 4
// or more of brood are strong, 3 to 4 covered frames weak.
TEST(PublishedCases, StrongAndWeakInEarlySpring) {
  const auto verdict = [](double covered, double brood) {
    TestSeason s;
    s.pollen();
    auto i = TestSeason::look("2026-04-10");
    i.seams = covered;
    i.framesWithBrood = brood;
    i.eggsSeen = true;
    i.pattern = 4;
    s.add(i);
    return judge(s.season, base::ColonyId("H"), day("2026-04-10")).verdict;
  };
  using V = apiary::VerdictCode;
  EXPECT_EQ(verdict(7, 5), V::Strong);
  EXPECT_EQ(verdict(5, 4), V::Fair);
  EXPECT_EQ(verdict(6, 4), V::Fair);
  EXPECT_EQ(verdict(4, 3), V::SmallSound);
  EXPECT_EQ(verdict(3, 2), V::SmallSound);
}

// A rule of thumb repeated on beekeepingforum.co.uk (thread 36887): the bees of one frame
// of brood take up three frames' worth of space. All cells of a full frame emerge into 2.5 frames
// of ours at the share of a full frame that is brood, 3.1 at every cell.
TEST(PublishedCases, AFrameOfBroodCoversNearlyThree) {
  const FrameFigures& f = *shippedFigures("langstroth_deep");
  const double most = f.cellsPerSide() / f.beesPerSide();
  EXPECT_NEAR(most, 3, 0.15);
  EXPECT_GT(most * kFrameOfBroodFill, 2.1);
  EXPECT_LT(most * kFrameOfBroodFill, 3);
}

// J. Quinlan, "August in the apiary", BBKA blog: a full National brood frame holds about 2 kg, a
// super frame about 1 kg.
TEST(PublishedCases, NationalFramesOfStores) {
  EXPECT_NEAR(2 * shippedFigures("national_brood")->honeySideKg, 2, 0.1);
  EXPECT_NEAR(2 * shippedFigures("national_super")->honeySideKg, 1, 0.1);
}

// Burgett & Burikam 1985, J. Econ. Entomol. 78:1154 (from memory): 1,215 bees on a fully covered
// side of a Langstroth deep comb, 2,430 on both.
TEST(PublishedCases, FullFramesOfBurgettAndBurikam) {
  TestSeason s;
  auto i = TestSeason::look("2026-05-20");
  i.beeFrames = 10;
  const auto e = estimateInspection(s.season, i);
  EXPECT_LE(e.bees->low, 24300);
  EXPECT_GE(e.bees->high, 24300);
  EXPECT_NEAR(e.bees->median / 24300, 1, 0.08);
}

// "How to measure" page on grade standards (htfbw.com): length times height times 23.6 cells a
// square inch. Brood is round: the rectangle holds 4/pi as many cells as the oval within it
// (geometry), so 12 by 6 inches are 1,335 cells and not 1,699.
TEST(PublishedCases, OvalPatchAgainstItsRectangle) {
  const double inch = 2.54;
  const double oval = ellipseArea(12 * inch, 6 * inch) / kCm2PerIn2 * kCellsPerIn2Rule;
  EXPECT_NEAR(oval, 1334.6, 0.5);
  EXPECT_NEAR(12 * 6 * kCellsPerIn2Rule / oval, 4 / std::acos(-1.0), 1e-9);
}

}  // namespace
}  // namespace outyard::strength
