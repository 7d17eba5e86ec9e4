// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/reader_bias.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/base/random.h"
#include "core/strength/estimate.h"
#include "core/strength/laying.h"
#include "tests/core/strength/strength_season.h"

namespace outyard::strength {
namespace {

using test::TestSeason;

TEST(ReaderBias, NeedsThreePairsAboveNought) {
  EXPECT_FALSE(fitReader({}));
  EXPECT_FALSE(fitReader({{10, 9}, {12, 11}}));
  EXPECT_FALSE(fitReader({{10, 9}, {12, 11}, {0, 5}, {5, 0}}));
  EXPECT_TRUE(fitReader({{10, 9}, {12, 11}, {7, 8}}));
}

TEST(ReaderBias, IsTheGeometricMeanAndAnyUnitWillDo) {
  const auto f = fitReader({{12, 10}, {24, 20}, {6, 5}, {18, 15}});
  ASSERT_TRUE(f);
  EXPECT_NEAR(f->bias, 1.2, 1e-12);
  EXPECT_EQ(f->pairs, 4);
  const auto bees = fitReader({{12000, 10000}, {24000, 20000}, {6000, 5000}, {18000, 15000}});
  EXPECT_NEAR(bees->bias, f->bias, 1e-12);
  EXPECT_NEAR(bees->spread, f->spread, 1e-12);
  // Four pairs without scatter are held towards the 10 % of single readers.
  EXPECT_NEAR(f->spread, std::sqrt(4 * 0.01 / 7), 1e-12);
}

/// Invented readers: the bias comes back within its own error, more pairs know it better.
TEST(ReaderBias, ComesBackFromInventedPairs) {
  base::Random rng(7);
  int within = 0;
  for (int round = 0; round < 200; ++round) {
    std::vector<ReaderPair> pairs;
    for (int k = 0; k < 12; ++k) {
      const double known = 4000 + 20000 * rng.uniform();
      pairs.push_back({known * 1.15 * std::exp(0.12 * rng.normal()), known});
    }
    const auto f = fitReader(pairs);
    ASSERT_TRUE(f);
    within += std::fabs(std::log(f->bias / 1.15)) <= 1.2816 * f->biasSigma() ? 1 : 0;
    EXPECT_LT(f->biasSigma(), f->spread);
    EXPECT_GT(f->countSigma(), f->spread);
  }
  EXPECT_NEAR(within / 200.0, 0.80, 0.10);
}

TEST(ReaderBias, IsTakenOutOfFramesAndNotOutOfSeams) {
  TestSeason s;
  auto i = TestSeason::look("2026-05-05");
  i.beeFrames = 6;
  i.seams = 8;
  i.reader = "Ann";
  const auto before = estimateInspection(s.season, i);
  for (const auto& row : readerSettings("Ann", ReaderFigures{9, 1.2, 0.1}, "nine weighed hives")) {
    s.add(row);
  }
  const auto after = estimateInspection(s.season, i);
  ASSERT_EQ(after.looks.size(), before.looks.size());
  ASSERT_TRUE(after.readerBias);
  EXPECT_NEAR(*after.readerBias, 1.2, 1e-12);
  for (std::size_t k = 0; k < before.looks.size(); ++k) {
    const bool frames = before.looks[k].basis == Basis::FullFrames;
    EXPECT_NEAR(after.looks[k].bees.median, before.looks[k].bees.median / (frames ? 1.2 : 1), 1e-9);
  }
  i.reader = "Ben";
  EXPECT_EQ(estimateInspection(s.season, i).bees->median, before.bees->median);
  EXPECT_FALSE(estimateInspection(s.season, i).readerBias);
}

TEST(ReaderBias, SettingsThatCannotBeReadCountForNothing) {
  TestSeason s;
  apiary::Setting row;
  row.name = readerSetting("Ann", "bias");
  row.value = "lots";
  s.add(row);
  EXPECT_FALSE(readerFigures(s.season, "Ann"));
  EXPECT_FALSE(readerFigures(s.season, ""));
  for (const auto& r : readerSettings("Ann", std::nullopt, "")) EXPECT_TRUE(r.value.empty());
}

// Eggs 3 days, larvae 6, sealed 12: a queen that lays 1,000 a day without losses has 3,000 eggs,
// 9,000 open and 12,000 sealed cells; with the usual losses 1 : 1.83 : 3.52 (Imdorf et al., as
// given in science.md's figures).
TEST(Laying, EachStageTellsTheRateOfItsDays) {
  StrengthEstimate e;
  e.eggCells = Estimate::fromMedian(3000, 0.25);
  e.openCells = Estimate::fromMedian(9000, 0.16);
  e.sealedCells = Estimate::fromMedian(12000, 0.16);
  const LayingRates r = layingRates(e);
  EXPECT_NEAR(r.fromEggs->median, 1000, 1e-9);
  EXPECT_NEAR(r.fromOpen->median, 1000, 1e-9);
  EXPECT_NEAR(r.fromSealed->median, 1000, 1e-9);
  e.eggCells = Estimate::fromMedian(1000, 0.25);
  e.sealedCells = Estimate::fromMedian(3520, 0.16);
  EXPECT_NEAR(layingRates(e).expansion->median, 1, 0.01);
  EXPECT_EQ(nestTrend(layingRates(e).expansion->median), NestTrend::Steady);
  e.sealedCells = Estimate::fromMedian(1760, 0.16);
  EXPECT_EQ(nestTrend(layingRates(e).expansion->median), NestTrend::Growing);
  e.sealedCells = Estimate::fromMedian(7040, 0.16);
  EXPECT_EQ(nestTrend(layingRates(e).expansion->median), NestTrend::Shrinking);
}

TEST(Laying, NothingSeenTellsNothing) {
  const LayingRates r = layingRates({});
  EXPECT_FALSE(r.fromEggs || r.fromOpen || r.fromSealed || r.expansion);
  StrengthEstimate e;
  e.sealedCells = Estimate{};
  EXPECT_FALSE(layingRates(e).expansion);
}

TEST(StoresLevel, AWideBandWhereNothingElseWasNoted) {
  TestSeason s;
  auto i = TestSeason::look("2026-04-05");
  double last = 0;
  for (const auto level :
       {apiary::StoresLevel::Low, apiary::StoresLevel::Medium, apiary::StoresLevel::Heavy}) {
    i.storesLevel = level;
    const auto e = estimateInspection(s.season, i);
    ASSERT_TRUE(e.honeyKg);
    EXPECT_GT(e.honeyKg->median, last);
    EXPECT_GE(e.honeyKg->sigmaLog, 0.4);
    last = e.honeyKg->median;
  }
  i.honeyKg = 5;
  EXPECT_NEAR(estimateInspection(s.season, i).honeyKg->median, 5, 1e-9);
}

}  // namespace
}  // namespace outyard::strength
