// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/yard_calendar.h"

#include <gtest/gtest.h>

#include "tests/core/strength/strength_season.h"

namespace outyard::strength {
namespace {

using test::day;
using test::TestSeason;

constexpr const char* kDay = "2026-04-25";

TEST(YardCalendar, FlowsBeforeLatitude) {
  TestSeason s;
  const auto guess = yardCalendar(s.season, base::YardId("Y"), day(kDay));
  EXPECT_FALSE(guess.fromFlows);
  EXPECT_NEAR(guess.firstPollen, 71, 1);
  s.pollen();
  const auto told = yardCalendar(s.season, base::YardId("Y"), day(kDay));
  EXPECT_TRUE(told.fromFlows);
  EXPECT_EQ(told.firstPollen, 85);
  EXPECT_EQ(told.firstPollenDate, day("2026-03-26"));
  EXPECT_TRUE(told.broodSeason());
}

TEST(YardCalendar, FlowOverNewYearMeansPollenAllWinter) {
  TestSeason s("langstroth_deep", 33);
  apiary::Flow f;
  f.yard = base::YardId("Y");
  f.fromDay = 300;
  f.toDay = 60;
  f.pollen = 1;
  s.add(f);
  EXPECT_TRUE(yardCalendar(s.season, base::YardId("Y"), day("2026-01-10")).broodSeason());
}

TEST(YardCalendar, SeasonDayShiftsByHalfAYear) {
  EXPECT_EQ(seasonDay(day("2026-04-25"), 44), 115);
  EXPECT_EQ(seasonDay(day("2026-10-25"), -44), 115);
  EXPECT_EQ(seasonDay(day("2026-04-25"), std::nullopt), 115);
}

TEST(YardCalendar, ObservedWeatherBeforeForecastAndNormal) {
  TestSeason s;
  EXPECT_FALSE(meanTemperature(s.season, base::YardId("Y"), day(kDay)));
  apiary::WeatherDay w;
  w.yard = base::YardId("Y");
  w.date = day(kDay);
  w.tminC = 20;
  w.tmaxC = 30;
  w.kind = apiary::WeatherKind::Normal;
  s.add(w);
  w.tminC = 0;
  w.tmaxC = 10;
  w.kind = apiary::WeatherKind::Observed;
  s.add(w);
  EXPECT_DOUBLE_EQ(meanTemperature(s.season, base::YardId("Y"), day(kDay)).value(), 5);
}

}  // namespace
}  // namespace outyard::strength
