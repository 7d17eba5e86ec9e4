// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/estimate.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/base/random.h"
#include "core/strength/bee_looks.h"
#include "core/strength/brood_stores.h"
#include "tests/core/strength/strength_season.h"

namespace outyard::strength {
namespace {

using apiary::CombSide;
using apiary::FrameSide;
using apiary::Inspection;
using test::day;
using test::TestSeason;

constexpr double kDeepFull = 2 * 880 * 1.30;   // bees of a full Langstroth deep frame
constexpr double kDeepCells = 2 * 880 * 4.00;  // cells of one

bool ordered(const Estimate& e) {
  return e.low < e.median && e.median < e.high && e.sigmaLog > 0;
}

TEST(Estimate, BandIsLogNormal) {
  const Estimate e = Estimate::fromMedian(10000, 0.20);
  EXPECT_TRUE(ordered(e));
  EXPECT_NEAR(e.low * e.high, 1e8, 1);
  EXPECT_NEAR(std::log(e.high / e.median), 1.2816 * 0.20, 1e-4);
  const Estimate zero = Estimate::fromMedian(0, 0.3);
  EXPECT_EQ(zero.high, 0);
  EXPECT_EQ(zero.sigmaLog, 0);
}

TEST(Estimate, CombinedByPrecision) {
  const Estimate a = Estimate::fromMedian(9000, 0.2);
  const Estimate b = Estimate::fromMedian(9000, 0.2);
  const Estimate both = combined({a, b});
  EXPECT_NEAR(both.median, 9000, 1e-6);
  EXPECT_NEAR(both.sigmaLog, 0.2 / std::sqrt(2), 1e-12);
  const Estimate uneven =
      combined({Estimate::fromMedian(9000, 0.3), Estimate::fromMedian(14000, 0.1)});
  EXPECT_NEAR(std::log(uneven.median), (std::log(9000) / 9 + std::log(14000)) / (1 / 9.0 + 1),
              1e-9);
  EXPECT_EQ(combined({}).median, 0);
}

TEST(Estimate, OneReaderIsNeverSurerThanEightPerCent) {
  const Estimate e =
      combinedSameReader({Estimate::fromMedian(9000, 0.1), Estimate::fromMedian(9000, 0.1),
                          Estimate::fromMedian(9000, 0.1)},
                         kDeepFull);
  EXPECT_NEAR(e.sigmaLog, kSameReaderSigma, 1e-12);
  const Estimate torn = combinedSameReader(
      {Estimate::fromMedian(4000, 0.1), Estimate::fromMedian(16000, 0.1)}, kDeepFull);
  EXPECT_GT(torn.sigmaLog, 0.5);  // disagreement widens
}

TEST(EstimateInspection, NothingRecordedStaysNothing) {
  TestSeason s;
  const auto e = estimateInspection(s.season, s.add(TestSeason::look("2026-04-25")));
  EXPECT_FALSE(e.bees || e.sealedCells || e.openCells || e.eggCells || e.broodCells);
  EXPECT_FALSE(e.broodFrames || e.framesWithBrood || e.honeyKg || e.seams);
  EXPECT_FALSE(e.beesAtLeast || e.broodCellsAtLeast || e.droneShare);
  EXPECT_TRUE(e.looks.empty());
  EXPECT_TRUE(e.basis.empty());
}

TEST(EstimateInspection, NoughtIsNoughtAndNotNothing) {
  TestSeason s;
  auto i = TestSeason::look("2026-04-25");
  i.beeFrames = 0;
  i.sealedBroodFrames = 0;
  i.openBroodFrames = 0;
  i.honeyKg = 0;
  const auto e = estimateInspection(s.season, s.add(i));
  EXPECT_EQ(e.bees.value().median, 0);
  EXPECT_EQ(e.broodCells.value().median, 0);
  EXPECT_EQ(e.honeyKg.value().median, 0);
  EXPECT_EQ(e.seams.value(), 0);
}

// Full frames at the density of the frame table: between a grader's 2,000 and the 2,430 that a
// comb can hold.
TEST(EstimateInspection, FullFramesOfBees) {
  TestSeason s;
  auto i = TestSeason::look("2026-04-25");
  i.beeFrames = 8;
  const auto e = estimateInspection(s.season, s.add(i));
  EXPECT_NEAR(e.bees->median, 8 * kDeepFull, 1e-6);
  EXPECT_LT(e.bees->low, 8 * 2000);
  EXPECT_GT(e.bees->high, 8 * 2430);
  ASSERT_EQ(e.basis.size(), 1U);
  EXPECT_EQ(e.basis[0], Basis::FullFrames);
}

TEST(EstimateInspection, FramesAreOfTheLowestChamber) {
  TestSeason deep("langstroth_deep"), british("national_brood");
  auto i = TestSeason::look("2026-04-25");
  i.beeFrames = 5;
  const auto a = estimateInspection(deep.season, deep.add(i));
  const auto b = estimateInspection(british.season, british.add(i));
  EXPECT_NEAR(b.bees->median / a.bees->median, 650.0 / 880, 1e-9);
}

TEST(EstimateInspection, UnknownFrameTypeIsWider) {
  TestSeason known, strange("home_made");
  auto i = TestSeason::look("2026-04-25");
  i.beeFrames = 5;
  const auto a = estimateInspection(known.season, known.add(i));
  const auto b = estimateInspection(strange.season, strange.add(i));
  EXPECT_GT(b.bees->sigmaLog, a.bees->sigmaLog);
}

TEST(EstimateInspection, SeamsStandAsCounted) {
  TestSeason s;
  auto i = TestSeason::look("2026-04-25");
  i.seams = 7;
  i.airC = 8;
  const auto e = estimateInspection(s.season, s.add(i));
  EXPECT_EQ(e.seams.value(), 7);
  EXPECT_TRUE(ordered(*e.bees));
  EXPECT_GT(e.bees->median, 8000);
  EXPECT_LT(e.bees->median, 14000);
}

TEST(EstimateInspection, SeamsByBoxCountBeforeTheirSum) {
  TestSeason s("langstroth_deep", 44, 2);
  auto i = TestSeason::look("2026-04-25");
  i.seams = 9;
  i = s.add(i);
  for (int box = 1; box <= 2; ++box) {
    apiary::SeamCount c;
    c.inspection = i.record;
    c.hive = i.hive;
    c.date = i.date;
    c.box = box;
    c.fromAbove = 6;
    c.fromBelow = 4;
    s.add(c);
  }
  const auto e = estimateInspection(s.season, i);
  EXPECT_EQ(e.seams.value(), 10);
  ASSERT_EQ(e.looks.size(), 1U);
  EXPECT_EQ(e.looks[0].basis, Basis::SeamsByBox);
  EXPECT_EQ(e.bees->sigmaLog, seamSigma(10, std::nullopt, apiary::SeamsView::Both, false));
  EXPECT_LT(e.bees->sigmaLog, seamSigma(10, std::nullopt, apiary::SeamsView::Above, false));
}

TEST(EstimateInspection, QuickCountGoesBySeasonAndHemisphere) {
  TestSeason north("langstroth_deep", 44), south("langstroth_deep", -44);
  auto june = TestSeason::look("2026-06-10");
  june.framesWithBees = 10;
  const auto n = estimateInspection(north.season, north.add(june));
  const auto w = estimateInspection(south.season, south.add(june));
  EXPECT_NEAR(n.bees->median, fullFramesByLine(10, kQuickEarlySummer) * kDeepFull, 1e-6);
  EXPECT_NEAR(w.bees->median, fullFramesByLine(10, kQuickFebruary) * kDeepFull, 1e-6);
  EXPECT_GT(w.bees->sigmaLog, n.bees->sigmaLog);
}

TEST(EstimateInspection, LooksOfOneDayComeTogether) {
  TestSeason s;
  auto i = TestSeason::look("2026-04-25");
  i.seams = 6;
  i.airC = 9;
  i.beeFrames = 5;
  const auto e = estimateInspection(s.season, s.add(i));
  ASSERT_EQ(e.looks.size(), 2U);
  const double a = e.looks[0].bees.median, b = e.looks[1].bees.median;
  EXPECT_GT(e.bees->median, std::min(a, b));
  EXPECT_LT(e.bees->median, std::max(a, b));
  EXPECT_GE(e.bees->sigmaLog, kSameReaderSigma);
}

/// All twenty sides of a ten-frame box; the same contents on each.
Inspection withSides(TestSeason& s, Inspection i, const CombSide& like, int frames = 10) {
  i = s.add(i);
  for (int slot = 1; slot <= frames; ++slot) {
    for (const FrameSide face : {FrameSide::A, FrameSide::B}) {
      CombSide side = like;
      const CombSide key = TestSeason::side(i, 1, slot, face);
      side.inspection = key.inspection;
      side.hive = key.hive;
      side.date = key.date;
      side.box = key.box;
      side.slot = slot;
      side.side = face;
      s.add(side);
    }
  }
  return i;
}

// Liebefeld figures through the whole way: 2/8 bees, 1/8 sealed, 4/8 food on each Zander side give
// 250 bees, 400 cells, 500 g a side ("Das Schaetzraehmchen", bees-online.at, 2020).
TEST(EstimateInspection, AllSidesGivenCountBeforeTheSummary) {
  TestSeason s("liebefeld");
  auto i = TestSeason::look("2026-04-25");
  i.beeFrames = 9;
  i.sealedBroodFrames = 9;
  i.honeyKg = 40;
  CombSide like;
  like.beesPct = 25;
  like.sealedPct = 12.5;
  like.honeyPct = 50;
  like.emptyPct = 37.5;
  const auto e = estimateInspection(s.season, withSides(s, i, like));
  EXPECT_NEAR(e.bees->median, 20 * 250, 1e-9);
  EXPECT_NEAR(e.sealedCells->median, 20 * 400, 1e-9);
  EXPECT_NEAR(e.honeyKg->median, 20 * 0.5, 1e-9);
  EXPECT_EQ(e.basis.front(), Basis::CombSides);
  EXPECT_EQ(e.looks.size(), 2U);  // the summary stays as a second reading
  // Nothing is left on the sides for eggs and larvae: they are nought, not unknown.
  EXPECT_EQ(e.eggCells->median, 0);
  EXPECT_EQ(e.openCells->median, 0);
  EXPECT_EQ(e.framesWithBrood, 10);
  EXPECT_FALSE(e.sidesPartial);
}

TEST(EstimateInspection, SomeSidesShowPositionOnly) {
  TestSeason s("liebefeld");
  auto i = TestSeason::look("2026-04-25");
  i.beeFrames = 3;
  CombSide like;
  like.beesPct = 25;
  like.sealedPct = 12.5;
  const auto e = estimateInspection(s.season, withSides(s, i, like, 4));
  EXPECT_TRUE(e.sidesPartial);
  EXPECT_NEAR(e.bees->median, 3 * 2000, 1e-9);
  EXPECT_NEAR(e.beesAtLeast.value(), 8 * 250, 1e-9);
  EXPECT_FALSE(e.sealedCells);  // no summary, not all sides: no total
  EXPECT_NEAR(e.broodCellsAtLeast.value(), 8 * 400, 1e-9);
}

TEST(EstimateInspection, BlankContentOfASideIsUnknown) {
  TestSeason s("liebefeld");
  CombSide like;
  like.beesPct = 50;
  like.sealedPct = 25;  // the rest of the face was not noted
  const auto e = estimateInspection(s.season, withSides(s, TestSeason::look("2026-04-25"), like));
  EXPECT_TRUE(e.bees);
  EXPECT_TRUE(e.sealedCells);
  EXPECT_FALSE(e.eggCells);
  EXPECT_FALSE(e.openCells);
  EXPECT_FALSE(e.honeyKg);
}

TEST(EstimateInspection, BroodStagesFromFullFrames) {
  TestSeason s;
  auto i = TestSeason::look("2026-05-10");
  i.sealedBroodFrames = 3;
  i.openBroodFrames = 2;
  const auto e = estimateInspection(s.season, s.add(i));
  EXPECT_NEAR(e.sealedCells->median, 3 * kDeepCells * kFrameOfBroodFill, 1e-6);
  EXPECT_NEAR(e.broodCells->median, 5 * kDeepCells * kFrameOfBroodFill, 1e-6);
  EXPECT_EQ(e.broodFrames, 5);
  EXPECT_FALSE(e.eggCells);
}

TEST(EstimateInspection, BroodFramesOfAllStagesTellNoStage) {
  TestSeason s;
  auto i = TestSeason::look("2026-05-10");
  i.broodFrames = 4;
  const auto e = estimateInspection(s.season, s.add(i));
  EXPECT_TRUE(e.broodCells);
  EXPECT_FALSE(e.sealedCells);
  EXPECT_FALSE(e.openCells);
}

// Common practice, no source: brood on 3 to 4 combs, each about half covered, is 6,000 to 11,000
// cells.
TEST(EstimateInspection, CombsWithBroodAreHalfCovered) {
  TestSeason s;
  for (const int combs : {3, 4}) {
    auto i = TestSeason::look(combs == 3 ? "2026-05-05" : "2026-05-06");
    i.framesWithBrood = combs;
    const auto e = estimateInspection(s.season, s.add(i));
    EXPECT_GT(e.broodCells->median, 6000);
    EXPECT_LT(e.broodCells->median, 11300);
    EXPECT_EQ(e.framesWithBrood, combs);
    EXPECT_GE(e.broodCells->sigmaLog, 0.35);
  }
}

TEST(EstimateInspection, SealedAloneStandsForMoreUnlessThereAreNoEggs) {
  TestSeason s;
  auto i = TestSeason::look("2026-05-10");
  i.sealedBroodFrames = 2;
  const auto laying = estimateInspection(s.season, s.add(i));
  i.eggsSeen = false;
  i.date = day("2026-05-11");
  const auto stopped = estimateInspection(s.season, s.add(i));
  EXPECT_NEAR(laying.broodCells->median / stopped.broodCells->median, 1.75, 1e-9);
}

TEST(EstimateInspection, StoresFromTheScale) {
  TestSeason s;
  auto i = TestSeason::look("2026-03-20");
  i.seams = 6;
  i.weightKg = 38;
  const auto e = estimateInspection(s.season, s.add(i));
  // One deep with combs 10, floor and cover 6, pollen 1, bees and brood about 2.
  EXPECT_NEAR(e.honeyKg->median, 19, 1.5);
  EXPECT_TRUE(ordered(*e.honeyKg));
  i.date = day("2026-03-21");
  i.weightKg = 15;  // lighter than the tare: little, and not sure
  const auto light = estimateInspection(s.season, s.add(i));
  EXPECT_GT(light.honeyKg->median, 0);
  EXPECT_LT(light.honeyKg->median, 1);
  EXPECT_GT(light.honeyKg->sigmaLog, 0.8);
}

TEST(EstimateInspection, WeightWithoutBoxesSaysNothing) {
  TestSeason s("langstroth_deep", 44, 0);
  auto i = TestSeason::look("2026-03-20");
  i.weightKg = 38;
  EXPECT_FALSE(estimateInspection(s.season, s.add(i)).honeyKg);
}

TEST(EstimateColony, LastLookUpToTheDay) {
  TestSeason s;
  auto i = TestSeason::look("2026-04-10");
  i.seams = 3;
  s.add(i);
  i.date = day("2026-04-25");
  i.seams = 5;
  i.record = {};
  s.add(i);
  const base::ColonyId h("H");
  EXPECT_FALSE(estimateColony(s.season, h, day("2026-04-09")));
  EXPECT_EQ(estimateColony(s.season, h, day("2026-04-24"))->seams, 3);
  EXPECT_EQ(estimateColony(s.season, h, day("2026-06-01"))->seams, 5);
  EXPECT_FALSE(estimateColony(s.season, base::ColonyId("nobody"), day("2026-06-01")));
}

/// Any one figure raised, the others as they are: the estimate is not smaller, but for a few per
/// cent (more seams are read more surely, so they draw a higher frame count down a little more);
/// bands are never empty.
TEST(EstimateProperty, MoreBeesRecordedNeverGiveFewer) {
  constexpr std::uint64_t kSeed = 20260425;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  base::Random rng(kSeed);
  const auto maybe = [&](double most) -> std::optional<double> {
    if (rng.uniform() < 0.4) return std::nullopt;
    return rng.uniform() < 0.1 ? 0.0 : std::round(rng.uniform() * most * 4) / 4;
  };
  TestSeason s;
  for (int round = 0; round < 400; ++round) {
    auto i = TestSeason::look("2026-01-01");
    i.date = i.date.plusDays(static_cast<int>(rng.uniform() * 365));
    i.seams = maybe(12);
    i.beeFrames = maybe(12);
    i.framesWithBees = maybe(20);
    if (rng.uniform() < 0.5) i.airC = rng.uniform() * 30 - 5;
    i.record = base::RecordId("x");  // not in the season: the estimate takes it as it is
    const auto before = estimateInspection(s.season, i);
    auto more = i;
    const int which = static_cast<int>(rng.uniform() * 3);
    auto& field = which == 0 ? more.seams : which == 1 ? more.beeFrames : more.framesWithBees;
    if (!field) {
      EXPECT_EQ(before.bees.has_value(), i.seams || i.beeFrames || i.framesWithBees);
      continue;
    }
    *field += 0.25 + rng.uniform() * 3;
    const auto after = estimateInspection(s.season, more);
    EXPECT_GE(after.bees->median, before.bees->median * 0.95) << "round " << round;
    EXPECT_TRUE(ordered(*after.bees)) << "round " << round;
  }
}

}  // namespace
}  // namespace outyard::strength
