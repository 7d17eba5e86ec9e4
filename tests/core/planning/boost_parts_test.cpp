// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/planning/boost_figures.h"
#include "core/planning/boost_gain.h"
#include "core/planning/boost_gear.h"
#include "core/planning/boost_parties.h"
#include "core/planning/boost_weather.h"
#include "core/planning/boost_words.h"
#include "core/planning/method_table.h"
#include "tests/core/planning/spring_yard.h"

namespace outyard::planning {
namespace {

using apiary::EventKind;
using apiary::Method;
using apiary::WeatherKind;
using testing::SpringYard;
using tests::day;

strength::StrengthEstimate colony(double bees, double brood, double sealed, int combs) {
  strength::StrengthEstimate e;
  e.bees = strength::Estimate::fromMedian(bees, 0.2);
  e.broodCells = strength::Estimate::fromMedian(brood, 0.2);
  e.sealedCells = strength::Estimate::fromMedian(sealed, 0.2);
  e.framesWithBrood = combs;
  e.seams = bees / 1400;
  return e;
}

TEST(BoostGain, AStackMovesThreeToSixThousandBeesUp) {
  // Common practice, no source: 3,000 to 6,000 in a week from a strong donor.
  const BoostFigures f;
  for (const double donor : {12000.0, 16000.0, 20000.0, 30000.0}) {
    const auto move = stackMove(colony(2500, 3000, 1500, 2), colony(donor, 20000, 10000, 7), f);
    ASSERT_TRUE(move);
    EXPECT_GE(move->bees, 3000);
    EXPECT_LE(move->bees, 6000);
    EXPECT_LE(move->bees, donor - f.donorKeepBees);
  }
}

TEST(BoostGain, AWeakDonorGivesNoStack) {
  EXPECT_FALSE(stackMove(colony(2500, 3000, 1500, 2), colony(6500, 9000, 5000, 5), {}));
}

TEST(BoostGain, ACombOfSealedBroodMakesItsFramesOfBees) {
  // 1.5 to 3 frames of bees from one comb, at about 1,400 a frame in use: common practice.
  const auto move =
      sealedMove(colony(5500, 5000, 2500, 3), colony(14000, 24000, 14000, 7), 1, 3520, {});
  ASSERT_TRUE(move);
  EXPECT_GE(move->gain.median, 1.5 * 1400);
  EXPECT_LE(move->gain.median, 3 * 1400);
  EXPECT_EQ(move->uncovered, 0);
}

TEST(BoostGain, UncoveredBroodIsNotCounted) {
  const auto move =
      sealedMove(colony(2000, 4500, 2500, 3), colony(14000, 24000, 14000, 7), 2, 3520, {});
  ASSERT_TRUE(move);
  EXPECT_GT(move->uncovered, 0);
  const auto roomy =
      sealedMove(colony(9000, 4500, 2500, 3), colony(14000, 24000, 14000, 7), 2, 3520, {});
  EXPECT_LT(move->gain.median, roomy->gain.median);
}

TEST(BoostGain, BeesThatTheBroodNeedsCostMore) {
  const BoostFigures f;
  const auto idle = nurseMove(colony(14000, 12000, 6000, 6), 3, f);
  const auto busy = nurseMove(colony(14000, 36000, 18000, 9), 3, f);
  ASSERT_TRUE(idle && busy);
  EXPECT_NEAR(idle->donorLoss, f.spareWeight * idle->bees, 1e-9);
  EXPECT_NEAR(busy->donorLoss, busy->bees, 1e-9);
}

TEST(BoostGain, HalfOfTheShakenBeesStay) {
  EXPECT_EQ(nurseMove(colony(14000, 12000, 6000, 6), 2, {})->gain.median, 1200);
}

TEST(BoostGain, TheBandIsTheCentralEightyPerCent) {
  strength::StrengthEstimate sure = colony(4000, 4000, 2000, 3);
  sure.bees = strength::Estimate::fromMedian(4000, 0);
  const auto move = uniteMove(sure, colony(14000, 12000, 6000, 6), {});
  ASSERT_TRUE(move);
  // exp(1.2816 * 0.15): the 90th percentile of a log-normal with 0.15.
  EXPECT_NEAR(move->gain.high / move->gain.median, 1.2120, 1e-3);
  EXPECT_NEAR(move->gain.median / move->gain.low, 1.2120, 1e-3);
}

TEST(BoostGain, NotRecordedIsNotZero) {
  strength::StrengthEstimate weak = colony(3000, 4000, 2000, 2);
  EXPECT_FALSE(feedMove(weak, {}));
  weak.honeyKg = strength::Estimate::fromMedian(1, 0.1);
  EXPECT_TRUE(feedMove(weak, {}));
  weak.broodCells.reset();
  EXPECT_FALSE(roomMove(weak, {}));
  auto donor = colony(14000, 12000, 6000, 6);
  donor.sealedCells.reset();
  EXPECT_FALSE(sealedMove(weak, donor, 1, 3520, {}));
}

TEST(BoostWeather, ObservedBeforeForecastBeforeNormal) {
  SpringYard yard;
  yard.weather("2020-04-25", 2, 10, WeatherKind::Normal);
  EXPECT_EQ(YardWeather(yard.season(), base::YardId("TR")).on(day("2026-04-25"))->tmaxC, 10);
  yard.weather("2026-04-25", 2, 13, WeatherKind::Forecast);
  EXPECT_EQ(YardWeather(yard.season(), base::YardId("TR")).on(day("2026-04-25"))->tmaxC, 13);
  yard.weather("2026-04-25", 2, 16, WeatherKind::Observed);
  EXPECT_EQ(YardWeather(yard.season(), base::YardId("TR")).on(day("2026-04-25"))->tmaxC, 16);
  EXPECT_FALSE(YardWeather(yard.season(), base::YardId("TR")).on(day("2026-04-26")));
}

TEST(BoostWeather, TheForecastIssuedLastCounts) {
  SpringYard yard;
  for (const auto& [issued, tmax] : {std::pair{"2026-04-24", 17.0}, {"2026-04-20", 11.0}}) {
    apiary::WeatherDay w;
    w.yard = base::YardId("TR");
    w.date = day("2026-04-25");
    w.tmaxC = tmax;
    w.kind = WeatherKind::Forecast;
    w.issued = day(issued);
    yard.put(w);
  }
  EXPECT_EQ(YardWeather(yard.season(), base::YardId("TR")).on(day("2026-04-25"))->tmaxC, 17);
}

TEST(BoostWeather, TheNearestYardWithinThirtyKilometres) {
  SpringYard yard;
  const auto at = [&](const char* name, double latitude) {
    apiary::Yard y;
    y.yard = base::YardId(name);
    y.latitude = latitude;
    y.longitude = -72.5;
    yard.put(y);
    return y;
  };
  const auto near = at("NEAR", 44.2), far = at("FAR", 44.4);
  // A degree of latitude is 111.2 km on a sphere of 6,371 km.
  EXPECT_NEAR(*distanceKm(near, far), 22.24, 0.01);
  for (const auto& [name, tmax] : {std::pair{"NEAR", 14.0}, {"FAR", 20.0}}) {
    apiary::WeatherDay w;
    w.yard = base::YardId(name);
    w.date = day("2026-04-25");
    w.tmaxC = tmax;
    yard.put(w);
  }
  EXPECT_EQ(YardWeather(yard.season(), base::YardId("TR")).on(day("2026-04-25"))->tmaxC, 14);
}

struct WeatherCase {
  const char* what;
  Method method;
  double tmax, rain, wind, nextNight;
  const char* key;  ///< of the reason; empty = it can be done
};

TEST(BoostWeather, RulesOfTheTrade) {
  const WeatherCase cases[] = {
      {"stack at 12", Method::Stack, 12, 0, 9, 0, ""},
      {"stack at 11.9", Method::Stack, 11.9, 0, 0, 0, "planning.weather.too_cold"},
      {"stack in rain", Method::Stack, 15, 4, 0, 0, "planning.weather.wet"},
      {"stack before a hard night", Method::Stack, 15, 0, 0, -3.5, "planning.weather.cold_night"},
      {"stack before -3", Method::Stack, 15, 0, 0, -3, ""},
      {"brood at 15", Method::SealedFrames, 15, 0, 4, 0, ""},
      {"brood at 14", Method::SealedFrames, 14, 0, 0, 0, "planning.weather.too_cold"},
      {"brood in wind", Method::SealedFrames, 18, 0, 5, 0, "planning.weather.windy"},
      {"unite before a hard night", Method::Unite, 11, 0, 0, -6, ""},
      {"feed at 8", Method::Feed, 8, 9, 9, -6, ""},
  };
  for (const auto& c : cases) {
    SpringYard yard;
    for (int n = 0; n < 10; ++n) {
      apiary::WeatherDay w;
      w.yard = base::YardId("TR");
      w.date = day("2026-04-25").plusDays(n);
      w.tmaxC = n == 0 ? c.tmax : 14;
      w.tminC = n == 1 ? c.nextNight : 3;
      w.rainMm = n == 0 ? c.rain : 0;
      w.windMs = n == 0 ? c.wind : 0;
      yard.put(w);
    }
    const YardWeather weather(yard.season(), base::YardId("TR"));
    const auto bar = weatherBar(weather, c.method, day("2026-04-25"), {});
    if (std::string(c.key).empty()) {
      EXPECT_FALSE(bar) << c.what;
    } else {
      ASSERT_TRUE(bar) << c.what;
      EXPECT_EQ(std::get<base::Message>(bar->args.at(1)).key, c.key) << c.what;
    }
  }
}

TEST(BoostWeather, SaysWhenNoDayWillDo) {
  SpringYard yard;
  for (int n = 0; n < 30; ++n) yard.weather(day("2026-04-25").plusDays(n).iso().c_str(), 0, 6);
  const auto bar = weatherBar(YardWeather(yard.season(), base::YardId("TR")), Method::Stack,
                              day("2026-04-25"), {});
  ASSERT_TRUE(bar);
  EXPECT_EQ(bar->key, "planning.weather.no_day");
}

TEST(BoostGear, LastCountsMinusWhatWentOnPlusWhatCameOff) {
  SpringYard yard;
  yard.strong("TR-02").small("TR-01");
  const std::vector<base::YardId> here{base::YardId("TR")};
  const auto on = [&](const char* iso) {
    return gearAtHand(yard.season(), "excluder", here, day(iso));
  };
  EXPECT_FALSE(on("2026-04-25"));
  yard.gear("excluder", "truck", "2026-04-01", 9).gear("excluder", "truck", "2026-04-10", 4);
  yard.gear("excluder", "TR", "2026-04-12", 2).gear("excluder", "MB", "2026-04-12", 50);
  EXPECT_EQ(on("2026-04-25"), 6);
  EXPECT_EQ(on("2026-04-05"), 9);
  yard.event(EventKind::Stacked, "TR-01", "2026-04-15");
  yard.event(EventKind::ExcluderOn, "TR-02", "2026-04-16");
  EXPECT_EQ(on("2026-04-25"), 4);
  yard.event(EventKind::ExcluderOff, "TR-02", "2026-04-20");
  EXPECT_EQ(on("2026-04-25"), 5);
  // Of the day of the count: already in it.
  yard.event(EventKind::ExcluderOn, "TR-02", "2026-04-10");
  EXPECT_EQ(on("2026-04-25"), 5);
}

TEST(BoostGear, ChambersAreCountedByTheBoxesOnHives) {
  SpringYard yard;
  yard.small("TR-01").gear("chamber:langstroth_deep", "shed", "2026-04-10", 3);
  const std::vector<base::YardId> here{base::YardId("TR")};
  const std::string item = "chamber:langstroth_deep";
  EXPECT_EQ(gearAtHand(yard.season(), item, here, day("2026-04-25")), 3);
  yard.box("TR-01", "2026-04-20", 1).box("TR-01", "2026-04-20", 2);
  EXPECT_EQ(gearAtHand(yard.season(), item, here, day("2026-04-25")), 2);
  EXPECT_EQ(gearAtHand(yard.season(), item, here, day("2026-04-15")), 3);
}

TEST(BoostFigures, EverySettingReachesItsFigure) {
  for (const BoostFigure& row : boostFigureTable()) {
    SpringYard yard;
    const BoostFigures shipped;
    EXPECT_GE(shipped.*row.member, row.min) << row.name;
    EXPECT_LE(shipped.*row.member, row.max) << row.name;
    EXPECT_FALSE(row.unit.empty() || row.source.empty()) << row.name;
    const double other = shipped.*row.member == row.min ? row.max : row.min;
    yard.set(std::string(row.name), std::to_string(other));
    std::vector<base::Message> notes;
    EXPECT_NEAR(boostFigures(yard.season(), notes).*row.member, other, 1e-6) << row.name;
    EXPECT_TRUE(notes.empty()) << row.name;
  }
}

TEST(BoostFigures, OutOfRangeIsSaidAndLeftOut) {
  SpringYard yard;
  yard.set("boost.stack_min_c", "99");
  std::vector<base::Message> notes;
  EXPECT_EQ(boostFigures(yard.season(), notes).stackMinC, 12);
  ASSERT_EQ(notes.size(), 1U);
  EXPECT_EQ(notes[0].key, "planning.setting_bad");
}

TEST(MethodTable, EveryMethodHasStepsAndUsualCautions) {
  for (const auto text : apiary::allCodes<Method>()) {
    const Method m = *apiary::parseCode<Method>(text);
    const MethodFigures& figures = methodFigures(m);
    EXPECT_EQ(figures.method, m);
    EXPECT_EQ(figures.minutes % 3, 0) << text;
    const MethodGuide guide = methodGuide(m);
    EXPECT_FALSE(guide.steps.empty()) << text;
    if (m == Method::Leave) continue;
    EXPECT_FALSE(guide.needs.empty()) << text;
    EXPECT_FALSE(guide.returns.empty()) << text;
    EXPECT_TRUE(testing::hasKey(guide.cautions, "planning.caution.stings")) << text;
    if (figures.lifts > 0) {
      EXPECT_GE(figures.people, 2) << text;
      EXPECT_TRUE(testing::hasKey(guide.cautions, "planning.caution.lift")) << text;
    }
  }
}

TEST(BoxesFit, ByMakerOfTheBox) {
  EXPECT_TRUE(boxesFit("langstroth_deep", "langstroth_medium"));
  EXPECT_FALSE(boxesFit("langstroth_deep", "dadant_brood"));
  EXPECT_TRUE(boxesFit("", "zander"));
  EXPECT_FALSE(boxesFit("my_box", "my_other"));
}

TEST(TwoFigures, Rounds) {
  EXPECT_EQ(twoFigures(3456), 3500);
  EXPECT_EQ(twoFigures(14321), 14000);
  EXPECT_EQ(twoFigures(-3456), -3500);
  EXPECT_EQ(twoFigures(0.4), 0);
}

}  // namespace
}  // namespace outyard::planning
