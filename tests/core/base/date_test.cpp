// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/date.h"

#include <gtest/gtest.h>

namespace outyard::base {
namespace {

TEST(Date, ReadsAndWritesIso) {
  struct Case {
    const char* text;
    bool good;
  };
  for (const Case& c :
       {Case{"2026-04-25", true}, Case{"2024-02-29", true}, Case{"2026-02-29", false},
        Case{"2026-02-30", false}, Case{"2026-13-01", false}, Case{"2026-00-10", false},
        Case{"26-04-25", false}, Case{"2026-4-25", false}, Case{"2026/04/25", false},
        Case{"2026-04-25 ", false}, Case{"1899-12-31", false}, Case{"2200-01-01", false},
        Case{"", false}}) {
    const auto d = Date::parse(c.text);
    EXPECT_EQ(d.has_value(), c.good) << c.text;
    if (d) {
      EXPECT_EQ(d->iso(), c.text);
    }
  }
}

TEST(Date, CountsDays) {
  const Date d = *Date::parse("2026-04-25");
  EXPECT_EQ(d.dayOfYear(), 115);  // 31 + 28 + 31 + 25
  EXPECT_EQ(d.weekday(), 5);      // a Saturday
  EXPECT_EQ(d.plusDays(6).iso(), "2026-05-01");
  EXPECT_EQ(*Date::parse("2026-05-01") - d, 6);
  EXPECT_EQ(Date::parse("1970-01-01")->days(), 0);
  EXPECT_EQ(Date::parse("1969-12-31")->weekday(), 2);
}

TEST(Date, EveryDayOfFourYearsRoundTrips) {
  const Date start = *Date::parse("2023-01-01");
  for (int i = 0; i < 1461; ++i) {
    const Date d = start.plusDays(i);
    EXPECT_EQ(Date::parse(d.iso()), d);
    EXPECT_EQ(Date::fromYmd(d.year(), d.month(), d.day()), d);
  }
}

TEST(TimeOfDay, ReadsAndWrites) {
  EXPECT_EQ(TimeOfDay::parse("07:05")->text(), "07:05");
  EXPECT_EQ(TimeOfDay::parse("23:59")->minutes(), 23 * 60 + 59);
  for (const char* bad : {"24:00", "7:05", "07:60", "0705", "", "ab:cd"}) {
    EXPECT_FALSE(TimeOfDay::parse(bad)) << bad;
  }
}

}  // namespace
}  // namespace outyard::base
