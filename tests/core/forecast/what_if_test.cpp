// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/what_if.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

#include "core/forecast/assimilation_parts.h"
#include "core/forecast/pair_moves.h"
#include "tests/support/season_builder.h"

namespace outyard::forecast {
namespace {

using base::ColonyId;
using base::Date;
using tests::day;

const ColonyId kSmall{"S"}, kStrong{"D"};
constexpr const char* kToday = "2026-04-25";

/// 44 degrees north, a cool April: a sound colony with a fist-sized nest beside one of two
/// chambers.
apiary::Season spring() {
  tests::SeasonBuilder b;
  b.yard("Y").livingHive("S", "Y", 2, 2, 1).livingHive("D", "Y", 4, 2, 2);
  b.inspection("S", kToday, [](apiary::Inspection& i) {
    i.seams = 1.5;
    i.beeFrames = 0.6;  // 2,000 living bees, a third of them out or not counted
    i.sealedBroodFrames = 720.0 / 6688;
    i.openBroodFrames = 580.0 / 6688;
    i.framesWithBrood = 2;
    i.eggsSeen = true;
    i.honeyKg = 8;
  });
  b.inspection("D", kToday, [](apiary::Inspection& i) {
    i.seams = 9;
    i.beeFrames = 6;
    i.sealedBroodFrames = 2.2;
    i.openBroodFrames = 1.4;
    i.framesWithBrood = 7;
    i.eggsSeen = true;
    i.honeyKg = 15;
  });
  return b.take();
}

Starts prepared(const apiary::Season& season, int days = 120, int threads = 1,
                std::uint64_t seed = 1) {
  ForecastAsk ask;
  ask.from = day(kToday);
  ask.to = ask.from.plusDays(days);
  ask.seed = seed;
  base::Progress quiet;
  return Starts::prepare(season, {kSmall, kStrong}, ask, threads, quiet);
}

std::vector<Date> daysAfter(std::initializer_list<int> days) {
  std::vector<Date> out;
  for (const int d : days) out.push_back(day(kToday).plusDays(d));
  return out;
}

Joint stackUntil(int days) {
  Joint joint;
  joint.date = day(kToday);
  joint.until = joint.date.plusDays(days);
  return joint;
}

bool same(const MemberDay& a, const MemberDay& b) {
  return a.date == b.date && a.bees == b.bees && a.seen == b.seen && a.sealed == b.sealed &&
         a.brood == b.brood && a.honeyKg == b.honeyKg && a.mites == b.mites;
}

TEST(WhatIf, AgreesWithTheForecastWhenNothingIsDone) {
  const auto season = spring();
  const Starts starts = prepared(season);
  ASSERT_TRUE(starts.has(kSmall) && starts.has(kStrong));
  ForecastAsk ask;
  ask.from = day(kToday);
  ask.to = ask.from.plusDays(120);
  ask.stepDays = 30;
  const auto days = daysAfter({0, 30, 60, 90, 120});
  const auto forecast = forecastColony(season, kSmall, ask);
  const auto bands = starts.alone(kSmall, {}, days).bands();
  ASSERT_EQ(bands.size(), forecast->days.size());
  for (std::size_t i = 0; i < bands.size(); ++i) {
    EXPECT_EQ(bands[i].bees.median, forecast->days[i].bees.median);
    EXPECT_EQ(bands[i].seen.high, forecast->days[i].seen.high);
    EXPECT_EQ(bands[i].brood.low, forecast->days[i].brood.low);
  }
}

TEST(WhatIf, IsTheSameOnAnyNumberOfThreadsAndOrder) {
  const auto season = spring();
  const auto days = daysAfter({10, 40});
  const Starts one = prepared(season), two = prepared(season, 120, 2);
  const auto a = one.together(kSmall, kStrong, stackUntil(24), days);
  (void)two.alone(kStrong, {}, days);
  const auto b = two.together(kSmall, kStrong, stackUntil(24), days);
  for (std::size_t i = 0; i < days.size(); ++i) {
    EXPECT_TRUE(same(a.receiver.days[i], b.receiver.days[i]));
    EXPECT_TRUE(same(a.donor.days[i], b.donor.days[i]));
  }
}

TEST(WhatIf, DaysAskedOnTheWayChangeNothing) {
  const Starts starts = prepared(spring());
  const auto few = starts.together(kSmall, kStrong, stackUntil(24), daysAfter({60}));
  const auto many =
      starts.together(kSmall, kStrong, stackUntil(24), daysAfter({0, 3, 11, 24, 25, 44, 60}));
  // But for the rounding of cohorts that are settled at each stop.
  for (const auto& [a, b] : {std::pair{&few.receiver, &many.receiver}, {&few.donor, &many.donor}}) {
    const ForecastDay x = bandsOf(a->days.back()), y = bandsOf(b->days.back());
    EXPECT_NEAR(x.bees.median, y.bees.median, 1e-3 * x.bees.median);
    EXPECT_NEAR(x.brood.high, y.brood.high, 1e-3 * x.brood.high);
  }
}

TEST(WhatIf, BothArmsHaveTheSameDraws) {
  const Starts starts = prepared(spring());
  const auto days = daysAfter({45});
  // A joint that begins on the last day has had no time to do anything to the brood.
  Joint nothing;
  nothing.kind = Joint::Kind::NurseBees;
  nothing.date = day(kToday).plusDays(45);
  nothing.bees = 0;
  const auto joint = starts.together(kSmall, kStrong, nothing, days);
  EXPECT_TRUE(same(joint.receiver.days[0], starts.alone(kSmall, {}, days).days[0]));
  // The difference of paired arms is far sharper than that of arms with draws of their own.
  const Action feed{day(kToday), Action::Kind::Feed, 3, 0};
  const auto with = starts.alone(kSmall, {&feed, 1}, days),
             without = starts.alone(kSmall, {}, days);
  const auto other = prepared(spring(), 120, 1, 2).alone(kSmall, {}, days);
  const auto spread = [](const MemberDay& a, const MemberDay& b) {
    double sum = 0, square = 0;
    for (std::size_t m = 0; m < a.bees.size(); ++m) {
      const double d = static_cast<double>(a.bees[m] - b.bees[m]);
      sum += d;
      square += d * d;
    }
    const auto n = static_cast<double>(a.bees.size());
    return std::sqrt(square / n - sum * sum / n / n);
  };
  EXPECT_LT(spread(with.days[0], without.days[0]), 0.5 * spread(with.days[0], other.days[0]));
}

TEST(WhatIf, RefusesWhatWasNotPrepared) {
  const Starts starts = prepared(spring(), 30);
  const auto late = daysAfter({31});
  EXPECT_THROW((void)starts.alone(kSmall, {}, late), std::out_of_range);
  EXPECT_THROW((void)starts.alone(ColonyId{"none"}, {}, daysAfter({1})), std::out_of_range);
  const Action early{day("2026-04-24"), Action::Kind::Feed, 1, 0};
  EXPECT_THROW((void)starts.alone(kSmall, {&early, 1}, daysAfter({1})), std::out_of_range);
  struct Stopped : base::Progress {
    [[nodiscard]] bool cancelled() const override { return true; }
  } stopped;
  ForecastAsk ask;
  ask.from = ask.to = day(kToday);
  EXPECT_TRUE(Starts::prepare(spring(), {kSmall}, ask, 1, stopped).empty());
}

// --- what passes from one colony to the other ----------------------------------------------------

ColonyEnsemble filled(double scale, std::uint64_t seed) {
  ColonyEnsemble ce(kBlock);
  base::Random random(seed);
  for (int v = 0; v < state::kQueenless; ++v) {
    for (int m = 0; m < kBlock; ++m) {
      ce.e.value(v)[m] = static_cast<float>(scale * (0.2 + random.uniform()));
    }
  }
  for (int p = 0; p < kParams; ++p) {
    for (int m = 0; m < kBlock; ++m) ce.e.params[static_cast<std::size_t>(p * kBlock + m)] = 1;
  }
  for (int m = 0; m < kBlock; ++m) ce.e.param(Param::NestCells)[m] = 69000;
  return ce;
}

struct Sums {
  double bees = 0, brood = 0, honey = 0, pollen = 0, mites = 0;
};
Sums sumsOf(const ColonyEnsemble& a, const ColonyEnsemble& b, int m) {
  using namespace state;
  Sums s;
  for (const auto* c : {&a, &b}) {
    s.bees += adults(c->e, m);
    s.brood += total(c->e, kEgg, kYoung - kEgg, m);
    s.honey += static_cast<double>(c->e.value(kHoney)[m]);
    s.pollen += static_cast<double>(c->e.value(kPollen)[m]);
    s.mites += static_cast<double>(c->e.value(kMites)[m]) + total(c->e, kMiteCells, kSealedDays, m);
  }
  return s;
}
void expectSame(const Sums& a, const Sums& b) {
  EXPECT_NEAR(a.bees, b.bees, 1e-5 * a.bees);
  EXPECT_NEAR(a.brood, b.brood, 1e-5 * a.brood);
  EXPECT_NEAR(a.honey, b.honey, 1e-5 * a.honey);
  EXPECT_NEAR(a.pollen, b.pollen, 1e-5 * a.pollen);
  EXPECT_NEAR(a.mites, b.mites, 1e-5 * a.mites);
}

TEST(PairMoves, NothingIsLostBetweenTwoColonies) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    ColonyEnsemble a = filled(50, seed), b = filled(900, seed + 100);
    const StackDraws draws(kBlock, seed);
    std::vector<Sums> before;
    for (int m = 0; m < kBlock; ++m) before.push_back(sumsOf(a, b, m));
    moveSealed(b, a, 3000, seed);
    moveNurses(b, a, 2000, seed);
    changeFieldBees(a, b);
    for (int d = 0; d < 20; ++d) shareStackDay(a, b, draws, d);
    takenOff(a, b, draws);
    joinAll(a, b, 0, seed);
    for (int m = 0; m < kBlock; ++m) {
      SCOPED_TRACE("seed " + std::to_string(seed));
      expectSame(before[static_cast<std::size_t>(m)], sumsOf(a, b, m));
      EXPECT_EQ(adults(a.e, m), 0);
    }
  }
}

TEST(PairMoves, OnlyFieldBeesAreLostAtSettingOver) {
  ColonyEnsemble a = filled(50, 3), b = filled(900, 4);
  const StackDraws draws(kBlock, 5);
  for (int m = 0; m < kBlock; ++m) {
    const double field = static_cast<double>(a.e.value(state::kForagers)[m]);
    const double before = sumsOf(a, b, m).bees;
    ColonyEnsemble x = a, y = b;
    setOver(x, y, draws);
    const double lost = before - sumsOf(x, y, m).bees;
    EXPECT_GE(lost, 0.1 * field - 0.5);
    EXPECT_LE(lost, 0.4 * field + 0.5);
    EXPECT_EQ(x.e.value(state::kForagers)[m], 0);
  }
}

TEST(PairMoves, LosesQueensAsOftenAsTheTradeDoes) {
  constexpr int kMany = 20000;
  const StackDraws draws(kMany, 11);
  int upper = 0, lower = 0;
  for (std::size_t i = 0; i < kMany; ++i) {
    upper += draws.upperQueen[i] < draws.upperRisk[i] ? 1 : 0;
    lower += draws.lowerQueen[i] < 0.02F ? 1 : 0;
  }
  // Upper queen lost 10 % (5 to 25), donor's 2 %: common practice, no source.
  EXPECT_NEAR(upper / double{kMany}, 0.10, 0.012);
  EXPECT_NEAR(lower / double{kMany}, 0.02, 0.005);
}

// --- practice ------------------------------------------------------------------------------------

// Common practice, no source: brood on 3 to 4 combs, each about half covered, some ten days after
// stacking: 6,000 to 11,000 cells on day 10 to 12, 8,000 to 14,000 on day 14; 3,000 to 6,000 bees
// up within a week; ready to divide after 2 to 5 weeks; the donor barely loses.
TEST(WhatIf, AStackDoesWhatTheTradeSays) {
  const Starts starts = prepared(spring());
  const auto days = daysAfter({0, 7, 11, 14, 24, 30, 56});
  const auto joint = starts.together(kSmall, kStrong, stackUntil(24), days);
  const auto up = joint.receiver.bands(), down = joint.donor.bands();
  const auto alone = starts.alone(kSmall, {}, days).bands(),
             left = starts.alone(kStrong, {}, days).bands();
  for (std::size_t i = 0; i < days.size(); ++i) {
    std::printf("%s stacked %6.0f bees %6.0f brood, alone %6.0f %6.0f, donor %6.0f of %6.0f\n",
                days[i].iso().c_str(), up[i].bees.median, up[i].brood.median, alone[i].bees.median,
                alone[i].brood.median, down[i].bees.median, left[i].bees.median);
  }
  EXPECT_GE(up[1].bees.median - alone[1].bees.median, 2500);
  EXPECT_LE(up[1].bees.median - alone[1].bees.median, 6500);
  EXPECT_GE(up[2].brood.median, 6000);
  EXPECT_LE(up[2].brood.median, 11000);
  EXPECT_GE(up[3].brood.median, 8000);
  EXPECT_LE(up[3].brood.median, 14000);
  EXPECT_GT(up[5].bees.median, 2 * alone[5].bees.median);
  EXPECT_GE(down[6].bees.median, 0.78 * left[6].bees.median);
}

TEST(WhatIf, SealedCombsHelpOnlyWhatCanKeepThemWarm) {
  const Starts starts = prepared(spring());
  Joint gift;
  gift.kind = Joint::Kind::SealedFrames;
  gift.date = day(kToday);
  gift.combs = 1;
  gift.cells = 3500;
  gift.bees = 800;
  const auto days = daysAfter({14, 40});
  const auto joint = starts.together(kSmall, kStrong, gift, days);
  const auto up = joint.receiver.bands(), alone = starts.alone(kSmall, {}, days).bands();
  EXPECT_GT(up[0].bees.median, alone[0].bees.median + 800);
  EXPECT_LT(up[0].bees.median, alone[0].bees.median + 3500 + 800);
}

TEST(WhatIf, UnitedColoniesAreOne) {
  const Starts starts = prepared(spring());
  Joint unite;
  unite.kind = Joint::Kind::Unite;
  unite.date = day(kToday);
  const auto days = daysAfter({0, 30});
  const auto joint = starts.together(kSmall, kStrong, unite, days);
  for (const float bees : joint.receiver.days[1].bees) EXPECT_EQ(bees, 0);
  EXPECT_GT(joint.donor.bands()[0].bees.median,
            starts.alone(kStrong, {}, days).bands()[0].bees.median);
}

}  // namespace
}  // namespace outyard::forecast
