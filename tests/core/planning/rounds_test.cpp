// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/rounds.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>

#include "core/base/random.h"

namespace outyard::planning {
namespace {

base::Date day(const char* iso) {
  return base::Date::parse(iso).value();
}

std::vector<std::vector<double>> randomKm(std::size_t n, base::Random& random) {
  std::vector<std::pair<double, double>> at(n);
  for (auto& [x, y] : at) {
    x = 40 * random.uniform();
    y = 40 * random.uniform();
  }
  std::vector<std::vector<double>> km(n, std::vector<double>(n));
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) {
      km[i][j] = std::hypot(at[i].first - at[j].first, at[i].second - at[j].second);
    }
  }
  return km;
}

double along(const std::vector<std::vector<double>>& km, const std::vector<std::size_t>& order,
             bool closed) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < order.size(); ++i) sum += km[order[i]][order[i + 1]];
  return closed ? sum + km[order.back()][order.front()] : sum;
}

double byTryingAll(const std::vector<std::vector<double>>& km, bool closed) {
  std::vector<std::size_t> order(km.size());
  std::iota(order.begin(), order.end(), 0U);
  double best = 1e300;
  do {
    if (closed && order.front() != 0) break;
    best = std::min(best, along(km, order, closed));
  } while (std::next_permutation(order.begin(), order.end()));
  return best;
}

TEST(ShortestTour, EqualsTryingEveryOrder) {
  constexpr std::uint64_t kSeed = 20260425;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  base::Random random(kSeed);
  for (int run = 0; run < 60; ++run) {
    const auto n = static_cast<std::size_t>(1 + run % 8);
    const auto km = randomKm(n, random);
    for (const bool closed : {false, true}) {
      const Tour t = shortestTour(km, closed);
      EXPECT_TRUE(t.exact);
      ASSERT_EQ(t.order.size(), n);
      EXPECT_NEAR(t.km, byTryingAll(km, closed), 1e-9) << n << closed;
      EXPECT_NEAR(t.km, along(km, t.order, closed), 1e-9) << n << closed;
      std::vector<std::size_t> sorted = t.order;
      std::sort(sorted.begin(), sorted.end());
      for (std::size_t i = 0; i < n; ++i) EXPECT_EQ(sorted[i], i);
      if (closed) {
        EXPECT_EQ(t.order.front(), 0U);
      }
    }
  }
}

TEST(ShortestTour, ThirteenPlacesExactlyAndManyNearlySo) {
  base::Random random(7);
  EXPECT_TRUE(shortestTour(randomKm(13, random), false).exact);
  // A circle: the shortest round trip is known.
  constexpr std::size_t kPlaces = 30;
  std::vector<std::vector<double>> km(kPlaces, std::vector<double>(kPlaces));
  for (std::size_t i = 0; i < kPlaces; ++i) {
    for (std::size_t j = 0; j < kPlaces; ++j) {
      const double turn = 3.141592653589793 * (static_cast<double>(i) - static_cast<double>(j)) /
                          static_cast<double>(kPlaces);
      km[(i * 7) % kPlaces][(j * 7) % kPlaces] = 2 * std::abs(std::sin(turn));
    }
  }
  const Tour t = shortestTour(km, true);
  EXPECT_FALSE(t.exact);
  EXPECT_NEAR(t.km, kPlaces * 2 * std::sin(3.141592653589793 / kPlaces), 1e-9);
  EXPECT_TRUE(shortestTour({}, true).order.empty());
}

struct Rounds : testing::Test {
  apiary::Season season;
  DueList due;
  RoundFigures figures;

  Rounds() {
    due.ask.from = day("2026-04-25");
    due.ask.to = day("2026-05-08");
    figures.homeLatitude = 45;
    figures.homeLongitude = -97;
    figures.people = 1;
  }
  void addYard(const char* id, double latitude, double longitude, double tmaxC = 20) {
    apiary::Yard y;
    y.yard = base::YardId(id);
    y.latitude = latitude;
    y.longitude = longitude;
    season.apply({{apiary::TableId::Yards, id, std::nullopt, apiary::toRow(y)}});
    YardDays days;
    days.yard = y.yard;
    for (auto d = due.ask.from; d <= due.ask.to; d = d.plusDays(1)) {
      days.days.push_back({d, tmaxC, 0.0, tmaxC >= 10, tmaxC >= 14});
    }
    due.yards.push_back(days);
  }
  DueTask& add(const char* yard, const char* hive, const char* from, const char* to,
               double minutes = 10, double chance = 1) {
    DueTask t;
    t.rule = "open";
    t.kind = "open";
    t.yard = base::YardId(yard);
    t.hive = base::HiveId(hive);
    t.earliest = t.date = day(from);
    t.latest = day(to);
    t.minutes = minutes;
    t.chance = chance;
    due.tasks.push_back(t);
    return due.tasks.back();
  }
};

TEST_F(Rounds, YardsNearEachOtherShareADay) {
  addYard("A", 45.05, -97);
  addYard("B", 45.06, -97);
  addYard("C", 44.7, -97);
  for (int i = 0; i < 4; ++i) {
    for (const char* yard : {"A", "B", "C"}) {
      add(yard, (std::string(yard) + std::to_string(i)).c_str(), "2026-04-27", "2026-05-04");
    }
  }
  const auto plan = proposeRounds(season, due, figures);
  EXPECT_TRUE(plan.left.empty());
  std::optional<base::Date> a, b;
  std::size_t stops = 0;
  for (const auto& d : plan.days) {
    for (const auto& s : d.stops) {
      ++stops;
      if (s.yard == base::YardId("A")) a = d.date;
      if (s.yard == base::YardId("B")) b = d.date;
      EXPECT_EQ(s.tasks.size(), 4U);
      EXPECT_FALSE(s.why.empty());
    }
    EXPECT_LE(d.hours, figures.dayHours);
  }
  EXPECT_EQ(stops, 3U);
  ASSERT_TRUE(a && b);
  EXPECT_EQ(*a, *b);
}

TEST_F(Rounds, WindowsHoursAndWarmDaysCount) {
  addYard("A", 45.05, -97);
  add("A", "A1", "2026-05-01", "2026-05-03");
  add("A", "A2", "2026-05-02", "2026-05-07");
  // Only the third of May is warm enough.
  for (auto& d : due.yards[0].days) {
    d.lidWarm = d.combWarm = d.date == day("2026-05-03");
    d.tmaxC = d.lidWarm ? 18 : 5;
  }
  const auto plan = proposeRounds(season, due, figures);
  ASSERT_EQ(plan.days.size(), 1U);
  EXPECT_EQ(plan.days[0].date, day("2026-05-03"));
  EXPECT_EQ(plan.days[0].stops[0].tasks.size(), 2U);
}

TEST_F(Rounds, AFullDayIsNotOverfilled) {
  addYard("A", 45.05, -97);
  addYard("B", 45.06, -97);
  for (int i = 0; i < 30; ++i) {
    add("A", ("A" + std::to_string(i)).c_str(), "2026-04-25", "2026-05-08", 12);
    add("B", ("B" + std::to_string(i)).c_str(), "2026-04-25", "2026-05-08", 12);
  }
  // 30 x 12 minutes are six hours: two such yards do not go into eight.
  const auto plan = proposeRounds(season, due, figures);
  ASSERT_EQ(plan.days.size(), 2U);
  for (const auto& d : plan.days) EXPECT_LE(d.hours, 8);
  figures.people = 2;
  EXPECT_EQ(proposeRounds(season, due, figures).days.size(), 1U);
}

TEST_F(Rounds, FarForLittleIsLeft) {
  addYard("FAR", 46.5, -97);  // some 450 km there and back by road
  add("FAR", "F1", "2026-04-27", "2026-05-04", 10, 0.4);
  const auto plan = proposeRounds(season, due, figures);
  EXPECT_TRUE(plan.days.empty());
  ASSERT_EQ(plan.left.size(), 1U);
  EXPECT_TRUE(std::any_of(plan.notes.begin(), plan.notes.end(),
                          [](const auto& m) { return m.key == "planning.round.left"; }));
}

TEST_F(Rounds, VisitsMadeByHandStandAndAreFilled) {
  addYard("A", 45.05, -97);
  add("A", "A1", "2026-04-25", "2026-05-08");
  apiary::Visit v;
  v.visit = base::VisitId("v1");
  v.yard = base::YardId("A");
  v.date = day("2026-05-06");
  const auto plan = proposeRounds(season, due, figures, {v});
  ASSERT_EQ(plan.days.size(), 1U);
  EXPECT_EQ(plan.days[0].date, day("2026-05-06"));
  EXPECT_EQ(plan.days[0].stops[0].tasks.size(), 1U);
}

TEST_F(Rounds, TheOrderOfADayIsTheShortest) {
  addYard("A", 45.30, -97);
  addYard("B", 45.10, -97);
  addYard("C", 45.20, -97);
  std::vector<RoundStop> stops(3);
  stops[0].yard = base::YardId("A");
  stops[1].yard = base::YardId("B");
  stops[2].yard = base::YardId("C");
  figures.homeLatitude = figures.homeLongitude = 0;  // an open way
  const auto d = arrangedDay(season, due, day("2026-05-01"), stops, figures);
  ASSERT_EQ(d.stops.size(), 3U);
  EXPECT_EQ(d.stops[1].yard, base::YardId("C"));
  // 0.2 degrees of latitude are 22.24 km on a sphere of 6,371 km.
  EXPECT_NEAR(d.driveKm, 22.24 * figures.roadFactor, 0.05);
  EXPECT_NEAR(d.stops[0].driveKm + d.stops[1].driveKm + d.stops[2].driveKm, d.driveKm, 1e-9);
}

TEST_F(Rounds, OneHiveIsOpenedOnce) {
  add("A", "A1", "2026-04-25", "2026-05-08", 12);
  add("A", "A1", "2026-04-25", "2026-05-08", 6);
  figures.yardMinutes = 20;
  EXPECT_NEAR(workHours(due, {0, 1}, figures), (12 + 2 + 20) / 60.0, 1e-9);
  figures.people = 2;
  EXPECT_NEAR(workHours(due, {0, 1}, figures), (7 + 20) / 60.0, 1e-9);
}

TEST_F(Rounds, LoadAgainstWhatIsAtHand) {
  addYard("A", 45.05, -97);
  apiary::GearCount shed{"excluder", "shed", day("2026-04-01"), 1};
  const auto row = apiary::toRow(shed);
  season.apply({{apiary::TableId::Gear, apiary::rowKey(row), std::nullopt, row}});
  for (const char* hive : {"A1", "A2"}) {
    auto& t = add("A", hive, "2026-04-27", "2026-05-04");
    t.kind = "stacked";
    t.gear = "excluder";
  }
  auto& feed = add("A", "A3", "2026-04-27", "2026-05-04");
  feed.kind = "fed";
  feed.gear = "feeder";
  feed.what = apiary::Goods::Syrup11;
  feed.amount = 10;
  feed.unit = apiary::Unit::L;
  auto& super = add("A", "A4", "2026-04-27", "2026-05-04");
  super.kind = "supered";
  super.gear = "super:langstroth_medium";
  super.amount = 2;
  super.unit = apiary::Unit::Boxes;
  const auto load = loadOf(season, due, {0, 1, 2, 3}, day("2026-04-27"), figures);
  const auto item = [&](const char* name) {
    const auto it = std::find_if(load.items.begin(), load.items.end(),
                                 [&](const RoundItem& i) { return i.item == name; });
    EXPECT_NE(it, load.items.end()) << name;
    return it == load.items.end() ? RoundItem{} : *it;
  };
  EXPECT_DOUBLE_EQ(item("excluder").needed, 2);
  EXPECT_DOUBLE_EQ(item("excluder").missing(), 1);
  EXPECT_DOUBLE_EQ(item("paper").needed, 2);
  EXPECT_FALSE(item("paper").atHand);  // never counted: taken as enough
  EXPECT_DOUBLE_EQ(item("paper").missing(), 0);
  // 10 l of 1 : 1 hold 6.15 kg of sugar and weigh 12.3 kg (ICUMSA tables, from memory).
  EXPECT_DOUBLE_EQ(item("syrup_1_1").sugarKg.value(), 6.15);
  EXPECT_DOUBLE_EQ(item("syrup_1_1").kg.value(), 12.3);
  EXPECT_DOUBLE_EQ(item("super:langstroth_medium").needed, 2);
  double sum = 0;
  for (const auto& i : load.items) sum += i.kg.value_or(0);
  EXPECT_NEAR(load.kg, sum, 1e-9);
  EXPECT_FALSE(load.tooHeavy);
  figures.truckKg = 10;
  const auto heavy = loadOf(season, due, {0, 1, 2, 3}, day("2026-04-27"), figures);
  EXPECT_TRUE(heavy.tooHeavy);
  EXPECT_EQ(heavy.cautions.front().key, "planning.round.too_heavy");
}

TEST_F(Rounds, SixtyYardsOfAFortnightAreProposedWhole) {
  base::Random random(11);
  for (int y = 0; y < 60; ++y) {
    const std::string yard = "Y" + std::to_string(y);
    addYard(yard.c_str(), 45 + 0.4 * random.uniform(), -97 + 0.4 * random.uniform());
    for (int h = 0; h < 12; ++h) {
      const auto from = due.ask.from.plusDays(static_cast<int>(7 * random.uniform()));
      add(yard.c_str(), (yard + "-" + std::to_string(h)).c_str(), from.iso().c_str(),
          from.plusDays(7).iso().c_str(), 10, 0.3 + 0.7 * random.uniform());
    }
  }
  figures.people = 3;
  const auto plan = proposeRounds(season, due, figures);
  std::set<std::size_t> seen;
  for (const auto& d : plan.days) {
    EXPECT_LE(d.stops.size(), static_cast<std::size_t>(figures.most));
    if (d.stops.size() > 1) {
      EXPECT_LE(d.hours, figures.dayHours + 1e-9);
    }
    for (const auto& s : d.stops) {
      for (const auto t : s.tasks) EXPECT_TRUE(seen.insert(t).second) << "done twice";
    }
  }
  for (const auto t : plan.left) EXPECT_TRUE(seen.insert(t).second) << "done and left";
  EXPECT_EQ(seen.size(), due.tasks.size());
  EXPECT_GT(plan.days.size(), 10U);  // four yards a day at most
}

TEST_F(Rounds, TheSameListGivesTheSamePlan) {
  addYard("A", 45.05, -97);
  addYard("B", 45.3, -97.2);
  for (int i = 0; i < 5; ++i) {
    add("A", ("A" + std::to_string(i)).c_str(), "2026-04-27", "2026-05-04");
    add("B", ("B" + std::to_string(i)).c_str(), "2026-04-25", "2026-05-08", 20, 0.6);
  }
  const auto one = proposeRounds(season, due, figures), two = proposeRounds(season, due, figures);
  ASSERT_EQ(one.days.size(), two.days.size());
  for (std::size_t i = 0; i < one.days.size(); ++i) {
    EXPECT_EQ(one.days[i].date, two.days[i].date);
    ASSERT_EQ(one.days[i].stops.size(), two.days[i].stops.size());
    for (std::size_t k = 0; k < one.days[i].stops.size(); ++k) {
      EXPECT_EQ(one.days[i].stops[k].yard, two.days[i].stops[k].yard);
      EXPECT_EQ(one.days[i].stops[k].tasks, two.days[i].stops[k].tasks);
    }
  }
}

}  // namespace
}  // namespace outyard::planning
