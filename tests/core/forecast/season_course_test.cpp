// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>

#include "core/forecast/day_length.h"
#include "core/forecast/drivers.h"
#include "core/forecast/exact_math.h"
#include "core/forecast/weather.h"

namespace outyard::forecast {
namespace {

TEST(ExactMath, IsTheLibrarysToTheLastDigits) {
  for (double x = -40; x < 40; x += 0.37) {
    EXPECT_NEAR(exactExp(x) / std::exp(x), 1, 3e-15) << x;
    EXPECT_NEAR(exactSin(x), std::sin(x), 2e-13) << x;
    EXPECT_NEAR(exactCos(x), std::cos(x), 2e-13) << x;
  }
  for (double x = 1e-9; x < 1e9; x *= 1.7) EXPECT_NEAR(exactLog(x), std::log(x), 4e-15 * 21) << x;
  EXPECT_NEAR(exactPow(2, 0.5), std::sqrt(2.0), 1e-14);
}

TEST(DayLength, IsThePublishedOne) {
  // Sunrise to sunset, from memory of the almanacs of the US Naval Observatory, +- 4 minutes.
  struct Case {
    double latitude;
    int day;
    double hours;
  };
  for (const Case& c :
       {Case{40, 172, 15.02}, Case{40, 355, 9.34}, Case{0, 80, 12.12}, Case{60, 172, 18.88},
        Case{60, 355, 5.88}, Case{-35, 355, 14.52}, Case{-35, 172, 9.80}, Case{50, 80, 12.2}}) {
    EXPECT_NEAR(dayLengthHours(c.latitude, c.day), c.hours, 0.07) << c.latitude << " " << c.day;
  }
  EXPECT_EQ(dayLengthHours(75, 172), 24);
  EXPECT_EQ(dayLengthHours(75, 355), 0);
}

TEST(Season, LayingFollowsThePublishedCurve) {
  // HoPoMo (Schmickl and Crailsheim 2007) with x = 385, 30, 36, 155, 30, times 1,600 eggs.
  struct Case {
    int day;
    double eggs;
  };
  for (const Case& c : {Case{60, 199}, Case{91, 845}, Case{152, 1564}, Case{213, 687}}) {
    EXPECT_NEAR(1600 * layingSeason(c.day, 0, 0), c.eggs, 1) << c.day;
  }
  double sum = 0;
  for (int d = 1; d <= 365; ++d) sum += 1600 * layingSeason(d, 0, 0);
  EXPECT_NEAR(sum, 191949, 192);
}

TEST(Season, SouthIsHalfAYearAway) {
  EXPECT_EQ(northernDay(-35, 1), 183);
  EXPECT_EQ(northernDay(35, 1), 1);
  EXPECT_NEAR(normalMeanC(-40, 20), normalMeanC(40, 202), 0.01);
  EXPECT_GT(normalMeanC(45, 200), 15);
  EXPECT_LT(normalMeanC(45, 20), 5);
  // Helsinki and Oslo, 60 N: mean of the year about 6, of July about 17 to 18 (from memory).
  double sum = 0;
  for (int d = 1; d <= 365; ++d) sum += normalMeanC(60, d);
  EXPECT_NEAR(sum / 365, 5, 2.5);
  EXPECT_NEAR(normalMeanC(60, 202), 17, 2.5);
}

TEST(Weather, KnownDaysAreKnownAndLaterOnesSpread) {
  apiary::Season season;
  apiary::ChangeList changes;
  const auto add = [&](const auto& r) {
    const auto row = apiary::toRow(r);
    changes.push_back({row.table, apiary::rowKey(row), std::nullopt, row});
  };
  apiary::Yard yard, near, far;
  yard.yard = base::YardId("Y");
  near.yard = base::YardId("near");
  far.yard = base::YardId("far");
  for (auto* y : {&yard, &near, &far}) y->latitude = 45, y->longitude = 10;
  near.longitude = 10.3;  // about 24 km
  far.longitude = 11;     // about 79 km
  for (const auto* y : {&yard, &near, &far}) add(*y);
  const auto day0 = base::Date::parse("2026-04-01").value();
  for (int d = 0; d < 20; ++d) {
    apiary::WeatherDay w;
    w.yard = near.yard;
    w.date = day0.plusDays(d);
    w.tminC = 4;
    w.tmaxC = 12;
    add(w);
  }
  season.apply(changes);
  EXPECT_EQ(weatherSource(season, yard.yard), near.yard);
  EXPECT_FALSE(weatherSource(season, far.yard));
  const WeatherAsk ask{yard.yard, day0, day0.plusDays(60), day0.plusDays(9), false, 1};
  const auto paths = WeatherPaths::of(season, ask);
  EXPECT_EQ(paths.observedDays(), 10);
  double spread = 0;
  for (int s = 0; s < kBlock; ++s) {
    EXPECT_EQ(paths.at(5, s).tmaxC, 12);
    spread = std::max(spread, std::abs(paths.at(15, s).tmaxC - paths.at(15, 0).tmaxC));
    for (int d = 0; d < 60; ++d) EXPECT_LE(paths.at(d, s).tminC, paths.at(d, s).tmaxC);
  }
  EXPECT_GT(spread, 2);
  WeatherAsk known = ask;
  known.allKnown = true;
  EXPECT_EQ(WeatherPaths::of(season, known).observedDays(), 20);
  EXPECT_NEAR(distanceKm(45, 10, 45, 11), 78.6, 0.5);
}

}  // namespace
}  // namespace outyard::forecast
