// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/find.h"

#include <gtest/gtest.h>

#include <chrono>

#include "core/base/text.h"
#include "tests/support/season_builder.h"

namespace outyard::apiary {
namespace {

Event note(tests::SeasonBuilder& b, const char* hive, const char* day, const std::string& detail) {
  Event e;
  static_cast<RecordHead&>(e) = b.head();
  e.hive = HiveId{hive};
  e.date = tests::day(day);
  e.detail = detail;
  return e;
}

TEST(Folded, CaseAccentsAndBlanksDoNotCount) {
  EXPECT_EQ(base::folded("  Müller's\tHÉTRAIE "), "muller's hetraie");
  EXPECT_EQ(base::folded("Straße"), "strasse");
  EXPECT_EQ(base::folded("\xff"), "");
}

TEST(Find, NearestFirstAndEveryWordInOneThing) {
  auto season = tests::smallSeason();
  const auto found = find(season, "tr-01");
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found[0].kind, FoundKind::Hive);
  EXPECT_EQ(found[0].hive, HiveId{"TR-01"});
  EXPECT_EQ(found[0].rank, 0);
  EXPECT_TRUE(find(season, "   ").empty());
  EXPECT_TRUE(find(season, "tr-01 nowhere").empty());
  EXPECT_EQ(find(season, "tr", 2).size(), 2U);
}

TEST(Find, QueensByLineYearAndMark) {
  tests::SeasonBuilder b;
  b.yard("TR").hive("TR-01", "TR");
  Queen q;
  q.queen = QueenId{"Q7"};
  q.line = "Hêtraie";
  q.year = 2025;
  q.marked = true;
  b.put(q);
  ColonyStay stay;
  static_cast<RecordHead&>(stay) = b.head();
  stay.colony = ColonyId{"C1"};
  stay.hive = HiveId{"TR-01"};
  stay.queen = q.queen;
  stay.fromDate = tests::day("2025-05-01");
  b.put(stay);
  const Season season = b.season();
  const auto found = find(season, "2025 HETRAIE marked");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].kind, FoundKind::Queen);
  EXPECT_EQ(found[0].hive, HiveId{"TR-01"});
  EXPECT_EQ(found[0].yard, YardId{"TR"});
  EXPECT_TRUE(find(season, "hetraie clipped").empty());
}

TEST(Find, JournalNewestFirstWithoutWhatWasWithdrawn) {
  tests::SeasonBuilder b;
  b.yard("TR").hive("TR-01", "TR");
  b.put(note(b, "TR-01", "2026-04-01", "Wasps at the entrance"));
  b.put(note(b, "TR-01", "2026-05-01",
             "one two three four five six seven eight nine ten eleven twelve thirteen fourteen "
             "fifteen sixteen seventeen wasps again"));
  Event gone = note(b, "TR-01", "2026-06-01", "wasps");
  gone.isVoid = true;
  b.put(gone);
  const auto found = find(b.season(), "wasp");
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].date, tests::day("2026-05-01"));
  EXPECT_TRUE(found[0].snippet.starts_with("… thirteen")) << found[0].snippet;
  EXPECT_EQ(found[1].snippet, "Wasps at the entrance");
}

// Typing must not stutter: half a second is far above what an unoptimised build needs.
TEST(Find, TwoThousandHivesFiftyThousandRecords) {
  tests::SeasonBuilder b;
  b.yard("TR");
  for (int i = 0; i < 2000; ++i) b.hive("H" + std::to_string(i), "TR");
  for (int i = 0; i < 50000; ++i) {
    const std::string hive = "H" + std::to_string(i % 2000);
    b.put(
        note(b, hive.c_str(), "2026-04-01", "Syrup given, colony fair, row " + std::to_string(i)));
  }
  const Season season = b.season();
  const auto start = std::chrono::steady_clock::now();
  const auto found = find(season, "row 49999");
  const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].hive, HiveId{"H1999"});
  EXPECT_LT(took.count(), 500);
}

}  // namespace
}  // namespace outyard::apiary
