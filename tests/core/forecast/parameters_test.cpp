// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/parameters.h"

#include <gtest/gtest.h>

#include <set>
#include <stdexcept>

namespace outyard::forecast {
namespace {

TEST(Parameters, EveryFigureHasRangeUnitAndSource) {
  std::set<std::string> names;
  for (const Figure& f : Figures::shipped().all()) {
    SCOPED_TRACE(f.name);
    EXPECT_TRUE(names.insert(f.name).second);
    EXPECT_FALSE(f.unit.empty());
    EXPECT_GE(f.source.size(), 10U);
    EXPECT_LT(f.low, f.high);
    EXPECT_GE(f.value, f.low);
    EXPECT_LE(f.value, f.high);
    const bool spreads = f.shape == Figure::Shape::Normal || f.shape == Figure::Shape::LogNormal;
    EXPECT_EQ(spreads, f.spread > 0);
  }
  EXPECT_GE(names.size(), 30U);
}

TEST(Parameters, DrawsStayInRangeAroundTheValue) {
  base::Random random(4);
  for (const Figure& f : Figures::shipped().all()) {
    SCOPED_TRACE(f.name);
    int above = 0;
    for (int k = 0; k < 2000; ++k) {
      const double v = drawn(f, random);
      ASSERT_GE(v, f.low);
      ASSERT_LE(v, f.high);
      above += v > f.value ? 1 : 0;
    }
    // Half above the mean of a normal and the median of a log-normal figure.
    if (f.shape == Figure::Shape::Normal || f.shape == Figure::Shape::LogNormal) {
      EXPECT_NEAR(above, 1000, 130);
    }
    if (f.shape == Figure::Shape::Fixed) {
      EXPECT_EQ(above, 0);
    }
  }
}

TEST(Parameters, TheOutfitsOwnValueIsTakenWithinTheRange) {
  apiary::Season season;
  const auto set = [&](const char* name, const char* value) {
    apiary::Setting s;
    s.name = name;
    s.value = value;
    const auto row = apiary::toRow(s);
    season.apply({{row.table, apiary::rowKey(row), std::nullopt, row}});
  };
  set("forecast.queen_potential", "1600");
  set("forecast.fill_days", "1000");
  set("forecast.income", "much");
  const Figures f = Figures::of(season);
  EXPECT_EQ(f.value("queen_potential"), 1600);
  EXPECT_EQ(f.value("fill_days"), f.at("fill_days").high);
  EXPECT_EQ(f.value("income"), Figures::shipped().value("income"));
  EXPECT_EQ(f.at("queen_potential").source, "set by the outfit");
  EXPECT_THROW((void)f.value("no such figure"), std::out_of_range);
}

}  // namespace
}  // namespace outyard::forecast
