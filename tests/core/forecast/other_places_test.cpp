// SPDX-License-Identifier: GPL-3.0-or-later
// Colonies that were never counted: latitudes 30 to 60 north and south, starts through the year,
// from nuclei of 1,500 bees to 60,000. Nothing is known here but the trade's bounds; each is named
// beside its check. A grid of 36 places and seasons times six starts.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "core/forecast/colony_forecast.h"
#include "tests/support/season_builder.h"

namespace outyard::forecast {
namespace {

using apiary::ColonyOrigin;
using base::Date;
using strength::Estimate;

constexpr int kDays = 210, kStep = 7;

struct Start {
  const char* name;
  double bees;   ///< living adults
  double brood;  ///< cells, all stages
  std::optional<ColonyOrigin> origin;
  double nestCells, superCells;
};
const Start kNucleus{"nucleus of 1,500", 1500, 1500, ColonyOrigin::Split, 34000, 0};
const Start kPackage{"package of 9,000", 9000, 0, ColonyOrigin::Package, 69000, 0};
const Start kBroodless{"broodless, 8,000", 8000, 0, ColonyOrigin::Wintered, 69000, 30000};
const Start kUsual{"15,000", 15000, 11000, ColonyOrigin::Wintered, 69000, 60000};
const Start kFull{"60,000", 60000, 31000, ColonyOrigin::Wintered, 138000, 138000};
const Start kUnseen{"not counted", 0, 0, ColonyOrigin::Wintered, 69000, 60000};
const std::vector<Start> kStarts{kNucleus, kPackage, kBroodless, kUsual, kFull, kUnseen};

/// Days of a northern year: early spring, May, July, mid-September, November, January.
constexpr int kEarlySpring = 75, kMay = 135, kJuly = 196, kSeptember = 258, kNovember = 319,
              kJanuary = 15;

struct Place {
  double latitude;
  int northernDay;
  [[nodiscard]] Date date() const {
    const int day = latitude > 0 ? northernDay : (northernDay + 181) % 365 + 1;
    return Date::fromYmd(2026, 1, 1).value().plusDays(day - 1);
  }
  [[nodiscard]] std::string name() const {
    return std::to_string(static_cast<int>(latitude)) + " degrees, day " +
           std::to_string(northernDay) + " of a northern year";
  }
};

std::vector<Place> places() {
  std::vector<Place> out;
  for (const double latitude : {30.0, 45.0, 60.0, -30.0, -45.0, -60.0}) {
    for (const int d : {kEarlySpring, kMay, kJuly, kSeptember, kNovember, kJanuary}) {
      out.push_back({latitude, d});
    }
  }
  return out;
}

ColonyForecast forecast(const Place& place, const Start& start) {
  apiary::Season season;
  apiary::Yard yard;
  yard.yard = base::YardId("Y");
  yard.latitude = place.latitude;
  const auto row = apiary::toRow(yard);
  season.apply({{row.table, apiary::rowKey(row), std::nullopt, row}});
  const Figures& figures = Figures::shipped();
  History h;
  h.colony = base::ColonyId("C");
  h.yard = yard.yard;
  h.start = place.date();
  h.origin = start.origin;
  if (start.bees > 0) {
    Look look;
    look.date = h.start;
    look.bees = Estimate::fromMedian(start.bees * 0.95 * figures.value("seen_share"), 0.15);
    if (start.brood > 0) {
      look.brood = Estimate::fromMedian(start.brood * figures.value("sealed_read"), 0.15);
      look.eggsSeen = true;
    } else if (start.origin == ColonyOrigin::Wintered) {
      look.brood = Estimate::fromMedian(0, 0);
    }
    h.looks.push_back(look);
  }
  h.actions.push_back({h.start, Action::Kind::Boxes, start.nestCells, start.superCells});
  ForecastAsk ask;
  ask.from = h.start;
  ask.to = ask.from.plusDays(kDays);
  ask.stepDays = kStep;
  const auto weather =
      yardWeather(season, yard.yard, Date::fromYmd(2025, 1, 1).value(), ask, figures);
  return forecastHistory(h, place.latitude, weather, figures, ask);
}

const ForecastDay& on(const ColonyForecast& f, int day) {
  return f.days.at(static_cast<std::size_t>(day / kStep));
}
/// Width of a band on the log scale; 200 keeps dead colonies out of the logarithm.
double width(const Band& b) {
  return std::log((b.high + 200) / (b.low + 200));
}

TEST(OtherPlaces, BandsAreInOrderFiniteAndWithinWhatAHiveCanHold) {
  for (const Place& place : places()) {
    for (const Start& start : kStarts) {
      SCOPED_TRACE(place.name() + ", " + start.name);
      const auto f = forecast(place, start);
      ASSERT_EQ(f.days.size(), static_cast<std::size_t>(kDays / kStep + 1));
      for (const ForecastDay& d : f.days) {
        SCOPED_TRACE(d.date.iso());
        for (const Band* b : {&d.bees, &d.seen, &d.sealed, &d.brood, &d.honeyKg, &d.mites}) {
          ASSERT_TRUE(std::isfinite(b->low) && std::isfinite(b->median) && std::isfinite(b->high));
          EXPECT_GE(b->low, 0);
          EXPECT_LE(b->low, b->median);
          EXPECT_LE(b->median, b->high);
        }
        // The largest colonies known hold 60,000 to 80,000 bees: common practice, no source. One
        // that starts with 60,000 may be 100,000 when it was read too low.
        EXPECT_LE(d.bees.high, std::max(85000.0, 1.75 * start.bees));
        // Of a queen's 2,000 eggs a day (Khoury et al. 2011) no more than 21 days' worth is in the
        // combs; a patch is read a fifth larger than its cells (75 to 85 % sealed: common
        // practice).
        EXPECT_LE(d.brood.high, 2000 * 21 * 1.4);
        // 100 kg is a very good year's crop in one hive, and no more than the combs hold.
        EXPECT_LE(d.honeyKg.high, 110);
      }
    }
  }
}

TEST(OtherPlaces, BandsWidenWithTheLead) {
  for (const Place& place : places()) {
    for (const Start& start : kStarts) {
      if (start.bees == 0) continue;  // begins as wide as a season's colonies differ
      SCOPED_TRACE(place.name() + ", " + start.name);
      const auto f = forecast(place, start);
      // A month on a colony is known no better than on the day it was counted, two months on worse
      // than two weeks on, as long as it is more than a handful.
      if (on(f, 63).bees.median > 1000) {
        EXPECT_GE(width(on(f, 63).bees), 0.95 * width(on(f, 14).bees));
        EXPECT_GE(width(on(f, 63).bees), 0.5);
      }
      if (on(f, 126).bees.median > 2000) {
        EXPECT_GE(width(on(f, 126).bees), 0.95 * width(on(f, 35).bees));
      }
    }
  }
}

TEST(OtherPlaces, GrowthAndDeclineKeepWithinWhatBeesCanDo) {
  for (const Place& place : places()) {
    for (const Start& start : kStarts) {
      SCOPED_TRACE(place.name() + ", " + start.name);
      const auto f = forecast(place, start);
      for (int day = 0; day + 21 <= kDays; day += 7) {
        const double now = on(f, day).bees.median, later = on(f, day + 21).bees.median;
        if (now < 1000) continue;
        // In three weeks no colony more than triples: what emerges was laid before, at most about
        // two cells of brood a bee (Khoury et al. 2011: 1.45 for 2,000 bees; Harbo 1986).
        EXPECT_LE(later, 3.0 * now) << day;
        // Nor do more than three in four bees go in three weeks: summer bees live four to six.
        // Common practice, no source. A cluster under 2,000 may melt away in frost.
        if (now > 2500) {
          EXPECT_GE(later, 0.25 * now) << day;
        }
      }
      for (const ForecastDay& d : f.days) {
        // Cells of brood a bee: 1.45 at 2,000 bees by Khoury et al. 2011, 1.2 at most in the small
        // units of Harbo 1986; read a fifth larger, and after a dwindle more for a while.
        if (d.bees.median > 1500) {
          EXPECT_LE(d.brood.median, 3.2 * d.bees.median) << d.date.iso();
        }
      }
    }
  }
}

TEST(OtherPlaces, ASoundColonyOfMaySpansTheSummer) {
  for (const double latitude : {30.0, 45.0, 60.0, -30.0, -45.0, -60.0}) {
    SCOPED_TRACE(latitude);
    const auto f = forecast({latitude, kMay}, kUsual);
    double most = 0;
    for (const ForecastDay& d : f.days) most = std::max(most, d.bees.median);
    // 20,000 to 60,000 at the height of the year: common practice, no source.
    EXPECT_GE(most, 20000);
    EXPECT_LE(most, 60000);
    // The counts of twice fifteen colonies spread as widely: the upper edge is past 30,000.
    EXPECT_GE(on(f, 63).bees.high, 30000);
  }
}

TEST(OtherPlaces, NucleiAndPackagesOfMayGrowAsTheTradeKnows) {
  for (const double latitude : {30.0, 45.0, -30.0, -45.0}) {
    SCOPED_TRACE(latitude);
    // A nucleus of 1,500 bees needs the summer: 3,000 to 10,000 after nine weeks, under 20,000 at
    // the end. Common practice, no source.
    const auto nucleus = forecast({latitude, kMay}, kNucleus);
    EXPECT_GE(on(nucleus, 63).bees.median, 2500);
    EXPECT_LE(on(nucleus, 63).bees.median, 10000);
    EXPECT_LE(on(nucleus, 126).bees.median, 22000);
    // A package loses 35 to 55 % by day 21 and is back by days 40 to 60 (common practice and the
    // published stage times, no count found; here with the slack of other places).
    const auto package = forecast({latitude, kMay}, kPackage);
    const double start = on(package, 0).bees.median;
    EXPECT_GE(on(package, 21).bees.median, 0.40 * start);
    EXPECT_LE(on(package, 21).bees.median, 0.68 * start);
    EXPECT_GE(on(package, 63).bees.median, 0.9 * start);
    EXPECT_LE(on(package, 63).bees.median, 2.5 * start);
  }
}

TEST(OtherPlaces, WintersTakeWhatWintersTake) {
  for (const double latitude : {45.0, 60.0, -45.0, -60.0}) {
    SCOPED_TRACE(latitude);
    // A third to two thirds of November's bees see March: daily deaths of 0.004 (Martin 2001) to
    // 0.0053 (Sumpter and Martin 2004), to half as much again, over 120 days.
    const auto usual = forecast({latitude, kNovember}, kUsual);
    const double share = on(usual, 119).bees.median / on(usual, 0).bees.median;
    EXPECT_GE(share, 0.32);
    EXPECT_LE(share, 0.75);
    // No brood to speak of in deep winter: common practice, no source.
    EXPECT_LE(on(usual, 42).brood.median, 1000);
    // 1,500 bees do not come through: about 1,000 is the critical size (Dennis and Kemp 2016),
    // under 1,500 at the first flight is death for most (common practice). Not for certain: some
    // winters are mild and some counts too low.
    const auto nucleus = forecast({latitude, kNovember}, kNucleus);
    EXPECT_LE(on(nucleus, 119).bees.median, 700);
    EXPECT_GT(on(nucleus, 119).bees.high, 100);
    // Stores used from November to March, broodless to first brood: 4 to 14 kg. Common practice
    // (15 to 20 kg to be given where winters are long), no source; the feeding keeper counts too.
    const double used = on(usual, 0).honeyKg.median - on(usual, 119).honeyKg.median;
    EXPECT_GE(used, 3);
    EXPECT_LE(used, 14);
  }
}

TEST(OtherPlaces, AColonyLostNothingByStandingSouth) {
  for (const int d : {kEarlySpring, kMay, kJuly, kSeptember, kNovember, kJanuary}) {
    for (const double latitude : {30.0, 45.0, 60.0}) {
      const auto north = forecast({latitude, d}, kUsual), south = forecast({-latitude, d}, kUsual);
      SCOPED_TRACE(std::to_string(d) + " at " + std::to_string(latitude));
      for (const int lead : {42, 84, 168}) {
        EXPECT_NEAR(std::log(on(north, lead).bees.median / on(south, lead).bees.median), 0, 0.15);
      }
    }
  }
}

TEST(OtherPlaces, AnAutumnWithoutARecordedTreatmentIsNoCertainDeath) {
  for (const double latitude : {30.0, 45.0, -45.0}) {
    SCOPED_TRACE(latitude);
    for (const Start& start : {kUsual, kUnseen, kFull}) {
      SCOPED_TRACE(start.name);
      const auto f = forecast({latitude, kJuly}, start);
      // Most keepers treat though the journal does not say so: the middle lives, and the band
      // holds colonies that dwindle (losses of 5 to 40 % a winter: common practice, no source).
      EXPECT_GE(on(f, 203).bees.median, 4000);
      EXPECT_GE(width(on(f, 203).bees), 1.0);
    }
  }
}

}  // namespace
}  // namespace outyard::forecast
