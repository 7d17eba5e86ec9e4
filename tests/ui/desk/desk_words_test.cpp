// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_words.h"

#include <gtest/gtest.h>

#include "tests/support/season_builder.h"
#include "ui/desk/day_strip.h"

namespace outyard::desk {
namespace {

using tests::day;

TEST(DeskWords, WindowsAndChances) {
  const auto today = day("2026-04-25");
  planning::DueTask t;
  const auto window = [&](const char* from, const char* to) {
    t.earliest = day(from);
    t.latest = day(to);
    return windowText(t, today);
  };
  EXPECT_EQ(window("2026-04-10", "2026-04-24"), QStringLiteral("overdue since 24 Apr"));
  EXPECT_EQ(window("2026-04-10", "2026-04-25"), QStringLiteral("today"));
  EXPECT_EQ(window("2026-04-10", "2026-04-27"), QStringLiteral("by 27 Apr"));
  EXPECT_EQ(window("2026-04-25", "2026-04-27"), QStringLiteral("by 27 Apr"));
  EXPECT_EQ(window("2026-04-26", "2026-05-02"), QStringLiteral("26 Apr – 2 May"));
  EXPECT_EQ(window("2026-04-26", "2026-04-26"), QStringLiteral("on 26 Apr"));
  const auto chance = [&](double value) {
    t.chance = value;
    return chanceText(t);
  };
  EXPECT_EQ(chance(1), QString());
  EXPECT_EQ(chance(0.95), QStringLiteral("almost sure, 95 %"));
  EXPECT_EQ(chance(0.8), QStringLiteral("likely, 80 %"));
  EXPECT_EQ(chance(0.5), QStringLiteral("about even, 50 %"));
  EXPECT_EQ(chance(0.21), QStringLiteral("possible, 21 %"));
  t.rule = "planned";
  EXPECT_EQ(chance(0.21), QString());
}

TEST(DeskWords, DaysAreToldByWhatTheyAreGoodFor) {
  planning::YardDay d;
  d.date = day("2026-04-25");
  EXPECT_EQ(warmthOf(d), Warmth::Unknown);
  d.tmaxC = 16;
  EXPECT_EQ(warmthOf(d), Warmth::Shut);  // warm, but for the rain
  d.lidWarm = true;
  EXPECT_EQ(warmthOf(d), Warmth::Lid);
  d.combWarm = true;
  d.rainMm = 0;
  EXPECT_EQ(warmthOf(d), Warmth::Combs);
  EXPECT_EQ(
      dayWords(d, adapt::Units()),
      QStringLiteral("Sat 25 Apr: warm and dry enough to take combs out, up to 16\u00A0°C, dry"));
  const adapt::Units us(adapt::MassUnit::Pound, adapt::TemperatureUnit::Fahrenheit,
                        adapt::LengthUnit::Foot);
  d.rainMm = 3;
  EXPECT_TRUE(dayWords(d, us).contains(QStringLiteral("61\u00A0°F, 3 mm of rain")))
      << dayWords(d, us).toStdString();
  EXPECT_EQ(countText(10, apiary::Unit::L, us), QStringLiteral("2.6\u00A0gal"));
  EXPECT_EQ(countText(10, apiary::Unit::Kg, us), QStringLiteral("22\u00A0lb"));
  planning::YardDays days;
  days.days = {d, d, d, d};
  EXPECT_EQ(dayAt({0, 0, 100, 20}, days, {99, 3}), 3);
  EXPECT_EQ(dayAt({0, 0, 100, 20}, days, {0, 3}), 0);
  EXPECT_EQ(dayAt({0, 0, 100, 20}, days, {50, 30}), -1);
}

}  // namespace
}  // namespace outyard::desk
