// SPDX-License-Identifier: GPL-3.0-or-later
// Bad input gives sane bands and no crash; any start gives bands in order.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/forecast/colony_forecast.h"
#include "tests/support/season_builder.h"

namespace outyard::forecast {
namespace {

using base::Date;
using strength::Estimate;
using tests::day;

constexpr double kMostBees = 150000, kMostCells = 400000, kMostHoney = 200;

apiary::Season place(double latitude) {
  apiary::Season season;
  apiary::Yard yard;
  yard.yard = base::YardId("Y");
  yard.latitude = latitude;
  const auto row = apiary::toRow(yard);
  season.apply({{row.table, apiary::rowKey(row), std::nullopt, row}});
  return season;
}

void expectSane(const Band& b, double most, const char* what) {
  EXPECT_TRUE(std::isfinite(b.low) && std::isfinite(b.median) && std::isfinite(b.high)) << what;
  EXPECT_GE(b.low, 0) << what;
  EXPECT_LE(b.low, b.median) << what;
  EXPECT_LE(b.median, b.high) << what;
  EXPECT_LE(b.high, most) << what;
}
void expectSane(const ColonyForecast& f) {
  ASSERT_FALSE(f.days.empty());
  for (const ForecastDay& d : f.days) {
    SCOPED_TRACE(d.date.iso());
    expectSane(d.bees, kMostBees, "bees");
    expectSane(d.seen, kMostBees * 1.7, "seen");
    expectSane(d.sealed, kMostCells, "sealed");
    expectSane(d.brood, kMostCells, "brood");
    expectSane(d.honeyKg, kMostHoney, "stores");
    expectSane(d.mites, kMostBees * 3, "mites");
  }
  for (const Surprise& s : f.surprises) {
    EXPECT_TRUE(std::isfinite(s.expected) && std::isfinite(s.seen));
  }
}

ColonyForecast forecast(const apiary::Season& season, double latitude, const History& h,
                        const ForecastAsk& ask) {
  const auto start = Date::fromYmd(ask.from.year() - 1, 1, 1).value();
  const auto weather = yardWeather(season, base::YardId("Y"), start, ask, Figures::shipped());
  return forecastHistory(h, latitude, weather, Figures::shipped(), ask);
}

History plain(Date start, double bees) {
  History h;
  h.colony = base::ColonyId("C");
  h.yard = base::YardId("Y");
  h.start = start;
  Look look;
  look.date = start;
  look.bees = Estimate::fromMedian(bees, 0.2);
  h.looks.push_back(look);
  h.actions.push_back({start, Action::Kind::Boxes, 69000, 30000});
  return h;
}

TEST(Robust, AnyStartGivesBandsInOrder) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    SCOPED_TRACE(seed);
    base::Random random(seed);
    const double latitude = -60 + 120 * random.uniform();
    const Date start = day("2025-01-01").plusDays(static_cast<int>(365 * random.uniform()));
    History h = plain(start, 1500 * std::pow(40.0, random.uniform()));
    const double u = random.uniform();
    using O = apiary::ColonyOrigin;
    if (u < 0.8) {
      h.origin = u < 0.2 ? O::Wintered : (u < 0.4 ? O::Split : (u < 0.6 ? O::Package : O::Swarm));
    }
    const auto maybe = [&](std::optional<Estimate>& to, double most) {
      if (random.uniform() < 0.5) to = Estimate::fromMedian(most * random.uniform(), 0.2);
      if (random.uniform() < 0.15) to = Estimate::fromMedian(0, 0.2);
    };
    for (int k = 0; k < 4; ++k) {
      Look look;
      look.date = start.plusDays(static_cast<int>(150 * random.uniform()));
      maybe(look.bees, 40000);
      maybe(look.sealed, 25000);
      maybe(look.open, 12000);
      maybe(look.eggs, 6000);
      maybe(look.brood, 40000);
      maybe(look.honeyKg, 40);
      if (random.uniform() < 0.3) look.eggsSeen = random.uniform() < 0.5;
      if (random.uniform() < 0.3) {
        look.mitesPer100 = 30 * random.uniform();
        look.washBees = 300;
      }
      h.looks.push_back(look);
      const auto kind = static_cast<Action::Kind>(1 + static_cast<int>(13 * random.uniform()));
      const double amount = kind == Action::Kind::BroodIn || kind == Action::Kind::OpenIn ||
                                    kind == Action::Kind::BeesIn
                                ? -6000 + 12000 * random.uniform()
                                : random.uniform();
      h.actions.push_back({look.date, kind, amount, 0});
    }
    const auto byDate = [](const auto& a, const auto& b) { return a.date < b.date; };
    std::stable_sort(h.looks.begin(), h.looks.end(), byDate);
    std::stable_sort(h.actions.begin(), h.actions.end(), byDate);
    ForecastAsk ask;
    ask.from = start.plusDays(150);
    ask.to = ask.from.plusDays(300);
    ask.stepDays = 20;
    ask.seed = seed;
    expectSane(forecast(place(latitude), latitude, h, ask));
  }
}

TEST(Robust, AbsurdCounts) {
  const Date start = day("2026-05-01");
  ForecastAsk ask;
  ask.from = start.plusDays(60);
  ask.to = ask.from.plusDays(60);
  for (const double bees : {0.0, 1.0, 1e6, 1e9}) {
    for (const double sealed : {0.0, 1.0, 1e6}) {
      SCOPED_TRACE(bees);
      SCOPED_TRACE(sealed);
      History h = plain(start, 10000);
      Look look;
      look.date = start.plusDays(30);
      look.bees = Estimate::fromMedian(bees, 0.2);
      look.sealed = Estimate::fromMedian(sealed, 0.2);
      look.honeyKg = Estimate::fromMedian(bees, 0.2);
      look.mitesPer100 = 100;
      look.washBees = 300;
      h.looks.push_back(look);
      const auto f = forecast(place(45), 45, h, ask);
      for (const ForecastDay& d : f.days) {
        for (const Band& b : {d.bees, d.seen, d.sealed, d.brood, d.honeyKg, d.mites}) {
          expectSane(b, 1e9, "any");
        }
      }
    }
  }
}

TEST(Robust, AnAbsurdCountIsASurpriseAndNotTheNewTruth) {
  const Date start = day("2026-05-01");
  History h = plain(start, 10000);
  Look look;
  look.date = start.plusDays(21);
  look.bees = Estimate::fromMedian(900000, 0.15);
  h.looks.push_back(look);
  ForecastAsk ask;
  ask.from = ask.to = look.date;
  const auto f = forecast(place(45), 45, h, ask);
  ASSERT_EQ(f.surprises.size(), 1U);
  EXPECT_FALSE(f.surprises[0].fewer);
  EXPECT_LT(f.days[0].bees.median, 300000);
}

TEST(Robust, ImpossibleTemperatures) {
  apiary::Season season = place(45);
  apiary::ChangeList changes;
  for (int d = 0; d < 400; ++d) {
    apiary::WeatherDay w;
    w.yard = base::YardId("Y");
    w.date = day("2025-04-01").plusDays(d);
    w.tminC = d % 3 == 0 ? -300 : 500;
    w.tmaxC = d % 2 == 0 ? -999 : 999;
    w.rainMm = d % 5 == 0 ? -50 : 1e6;
    const auto row = apiary::toRow(w);
    changes.push_back({row.table, apiary::rowKey(row), std::nullopt, row});
  }
  season.apply(changes);
  ForecastAsk ask;
  ask.from = day("2026-04-01");
  ask.to = day("2026-09-01");
  expectSane(forecast(season, 45, plain(day("2026-03-15"), 9000), ask));
}

// A colony not seen since autumn: wide, but neither empty nor a giant.
TEST(Robust, UnseenSinceAutumnIsWideAndSaneInApril) {
  History h = plain(day("2025-09-20"), 9000);
  h.looks[0].sealed = Estimate::fromMedian(5000, 0.2);
  ForecastAsk ask;
  ask.from = day("2026-04-15");
  ask.to = day("2026-07-15");
  for (const double latitude : {36.0, 45.0, 52.0}) {
    SCOPED_TRACE(latitude);
    const auto f = forecast(place(latitude), latitude, h, ask);
    expectSane(f);
    const Band& april = f.days.front().bees;
    EXPECT_GT(april.high, 3 * std::max(april.low, 1000.0));
    EXPECT_GT(april.median, 1000);
    EXPECT_LT(april.median, 20000);
    EXPECT_LT(april.high, 45000);
  }
}

TEST(Robust, GapsOfYearsFallBackToWhatIsUsual) {
  History h = plain(day("2019-06-01"), 3000);
  h.origin = apiary::ColonyOrigin::Package;
  ForecastAsk ask;
  ask.from = day("2026-06-15");
  ask.to = day("2026-08-15");
  const auto f = forecast(place(46), 46, h, ask);
  expectSane(f);
  // Seven years later it is no package any more.
  EXPECT_GT(f.days.front().brood.median, 3000);
  EXPECT_GT(f.days.front().bees.high, 2 * std::max(f.days.front().bees.low, 2000.0));
}

// Records dated after the asked day change nothing; the order of entry neither.
TEST(Robust, FutureAndUnorderedInspections) {
  const auto build = [](bool swapped, bool future) {
    tests::SeasonBuilder b(7);
    b.yard("Y").hive("H", "Y", 1, 1, 2).colony("H", "H", "2026-04-01");
    const auto look = [&](const char* date, double frames) {
      b.inspection("H", date, [&](apiary::Inspection& i) {
        i.record = base::RecordId(std::string("look ") + date);
        i.beeFrames = frames;
        i.broodFrames = frames / 2;
        i.eggsSeen = true;
      });
    };
    if (swapped) {
      look("2026-05-20", 6);
      look("2026-04-20", 3);
    } else {
      look("2026-04-20", 3);
      look("2026-05-20", 6);
    }
    if (future) look("2027-03-01", 1);
    return b.take();
  };
  ForecastAsk ask;
  ask.from = day("2026-06-01");
  ask.to = day("2026-08-01");
  const auto plainForecast = forecastColony(build(false, false), base::ColonyId("H"), ask);
  ASSERT_TRUE(plainForecast);
  expectSane(*plainForecast);
  for (const auto& season : {build(true, false), build(false, true)}) {
    const auto other = forecastColony(season, base::ColonyId("H"), ask);
    ASSERT_TRUE(other);
    ASSERT_EQ(other->days.size(), plainForecast->days.size());
    for (std::size_t k = 0; k < other->days.size(); ++k) {
      EXPECT_EQ(other->days[k].bees.median, plainForecast->days[k].bees.median);
      EXPECT_EQ(other->days[k].seen.low, plainForecast->days[k].seen.low);
    }
  }
}

// No brood where there should be some: may be queenless, may begin to lay; the band holds both.
TEST(Robust, BroodlessUnitInMayMayGoEitherWay) {
  History h = plain(day("2026-05-10"), 8000);
  h.looks[0].sealed = Estimate::fromMedian(0, 0.2);
  h.looks[0].open = Estimate::fromMedian(0, 0.2);
  ForecastAsk ask;
  ask.from = day("2026-05-10");
  ask.to = day("2026-06-25");
  ask.stepDays = 46;
  const auto f = forecast(place(45), 45, h, ask);
  expectSane(f);
  EXPECT_LT(f.days[0].brood.high, 400);  // a trace is left, at most one cell in a hundred
  EXPECT_LT(f.days[1].brood.low, 200);
  EXPECT_GT(f.days[1].brood.high, 6000);
}

}  // namespace
}  // namespace outyard::forecast
