// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/forecast/expected.h"
#include "core/sheet/yard_sheet.h"
#include "tests/core/sheet/sheet_checks.h"
#include "tests/core/sheet/sheet_fixture.h"

namespace outyard::sheet {
namespace {

using fixture::plainWord;

strength::ExpectedLook look(double low, double high, double combsLow, double combsHigh) {
  strength::ExpectedLook l;
  l.seams = {(low + high) / 2, low, high};
  l.combs = {(combsLow + combsHigh) / 2, combsLow, combsHigh};
  l.width = (high - low) / l.seams.median;
  return l;
}

/// Outlined seams of a mark: rectangles with an edge of that ink and no filling.
int outlines(const Shapes& shapes, Ink ink) {
  int found = 0;
  for (const auto& shape : shapes) {
    const auto* r = std::get_if<RectShape>(&shape);
    if (r && r->fill == Ink::None && r->stroke.ink == ink) ++found;
  }
  return found;
}

TEST(ExpectedOnTheMark, IsDrawnInOutlineAndFaintWhenWide) {
  MarkInput input;
  input.entranceDeg = 180;  // as drawn, unturned
  input.seams = 5;
  EXPECT_EQ(outlines(hiveMark(input), Ink::BeesExpected), 0);
  input.expectedSeams = 8;
  input.expectedWidth = 0.2;
  EXPECT_EQ(outlines(hiveMark(input), Ink::BeesExpected), 8);
  input.expectedWidth = 1.6;
  EXPECT_EQ(outlines(hiveMark(input), Ink::BeesExpected), 0);
  EXPECT_EQ(outlines(hiveMark(input), Ink::FaintText), 8);
  input.stacked = true;
  input.upperExpected = 3;
  EXPECT_EQ(outlines(hiveMark(input), Ink::BeesExpected), 3);  // the upper colony's, narrow
}

TEST(ExpectedOnTheMark, IsPutInForLivingColoniesOnly) {
  fixture::Wish wish;
  const auto y = fixture::makeYard(wish);
  ExpectedLooks expected;
  for (const auto& hive : apiary::yardOn(y.season, y.yard, y.date)) {
    for (const auto& c : hive.colonies) expected.emplace(c.colony, look(7.6, 9.2, 4.7, 6.1));
  }
  for (const auto& hive : apiary::yardOn(y.season, y.yard, y.date)) {
    MarkInput mark;
    addExpected(mark, hive, expected);
    EXPECT_EQ(mark.expectedSeams.has_value(), hive.status == apiary::HiveStatus::Live)
        << hive.hive.str();
    EXPECT_EQ(mark.upperExpected.has_value(), hive.stacked()) << hive.hive.str();
  }
}

TEST(ExpectedOnTheSheet, IsSaidInWholeSeamsAndCombsAndKept) {
  const auto y = fixture::makeYard({});
  static const fixture::PlainMeasurer kMeasurer;
  auto in = y.input(Paper::A4, kMeasurer, plainWord);
  ExpectedLooks expected;
  for (const auto& hive : apiary::yardOn(y.season, y.yard, y.date)) {
    for (const auto& c : hive.colonies) expected.emplace(c.colony, look(7.6, 9.2, 4.7, 6.1));
  }
  in.expected = &expected;
  const auto sheet = layoutYardSheet(in);
  int said = 0;
  for (const auto& line : sheet.lines) {
    if (!line.colony) continue;
    EXPECT_EQ(line.expected, "look many_seams 8\u20139 many_combs 5\u20136") << line.colony->str();
    ++said;
  }
  EXPECT_GT(said, 30);
  for (const auto& page : sheet.document.pages) {
    EXPECT_EQ(fixture::textFault(page, kMeasurer), "");
  }
}

TEST(ExpectedOnTheSheet, NoBroodAndOneNumberReadPlainly) {
  const auto y = fixture::makeYard({});
  static const fixture::PlainMeasurer kMeasurer;
  auto in = y.input(Paper::A4, kMeasurer, plainWord);
  ExpectedLooks expected;
  for (const auto& hive : apiary::yardOn(y.season, y.yard, y.date)) {
    for (const auto& c : hive.colonies) expected.emplace(c.colony, look(2.9, 3.1, 0, 0.2));
  }
  in.expected = &expected;
  for (const auto& line : layoutYardSheet(in).lines) {
    if (!line.colony) continue;
    EXPECT_EQ(line.expected, "look_no_brood many_seams 3");
  }
}

TEST(ExpectedOnTheSheet, OneSeamAndOneCombAreNotSaidAsMany) {
  const auto y = fixture::makeYard({});
  static const fixture::PlainMeasurer kMeasurer;
  auto in = y.input(Paper::A4, kMeasurer, plainWord);
  ExpectedLooks expected;
  for (const auto& hive : apiary::yardOn(y.season, y.yard, y.date)) {
    for (const auto& c : hive.colonies) expected.emplace(c.colony, look(0.9, 1.2, 0.8, 1.3));
  }
  in.expected = &expected;
  for (const auto& line : layoutYardSheet(in).lines) {
    if (!line.colony) continue;
    EXPECT_EQ(line.expected, "look one_seam one_comb");
  }
}

TEST(ForecastDays, AreReadBetweenTheRows) {
  forecast::ForecastDay a, b;
  a.date = fixture::day("2026-05-01");
  b.date = fixture::day("2026-05-08");
  a.seen = {7000, 6000, 8000};
  b.seen = {14000, 9500, 18500};
  EXPECT_DOUBLE_EQ(forecast::dayBetween({a, b}, a.date.plusDays(2))->seen.median, 9000);
  EXPECT_DOUBLE_EQ(forecast::dayBetween({a, b}, a.date.plusDays(2))->seen.high, 11000);
  EXPECT_EQ(forecast::dayBetween({a, b}, b.date)->seen.median, 14000);
  EXPECT_FALSE(forecast::dayBetween({a, b}, a.date.plusDays(-1)));
  EXPECT_FALSE(forecast::dayBetween({a, b}, b.date.plusDays(1)));
}

}  // namespace
}  // namespace outyard::sheet
