// SPDX-License-Identifier: GPL-3.0-or-later
// What a colony's course shows of washes, of treatments that are not in the journal, and of how
// often its band held.
#include <gtest/gtest.h>

#include "core/strength/measures.h"
#include "tests/support/season_builder.h"
#include "ui/charts/colony_course.h"

namespace outyard::charts {
namespace {

using tests::day;

tests::SeasonBuilder season() {
  tests::SeasonBuilder b;
  b.yard("Y").livingHive("A", "Y", 2, 2, 2);
  int frames = 5;
  for (const char* date : {"2026-05-01", "2026-05-12", "2026-05-24", "2026-06-28", "2026-08-30"}) {
    b.inspection("A", date, [&](apiary::Inspection& i) {
      i.beeFrames = frames++;
      i.sealedBroodFrames = 2;
      i.honeyKg = 12;
    });
  }
  return b;
}

void wash(tests::SeasonBuilder& b, const char* date, int mites) {
  apiary::Wash w;
  static_cast<apiary::RecordHead&>(w) = b.head();
  w.hive = base::HiveId("A");
  w.date = day(date);
  w.method = apiary::WashMethod::Alcohol;
  w.bees = 300;
  w.mites = mites;
  b.put(w);
}

std::shared_ptr<CourseData> course(const apiary::Season& s, const char* today) {
  CourseAsk ask;
  ask.colony = base::ColonyId("A");
  ask.today = day(today);
  ask.daysAhead = 60;
  ask.stepDays = 10;
  base::Progress quiet;
  return colonyCourse(s, ask, quiet);
}

TEST(ColonyCourse, WashesStandAgainstTheBandOfMites) {
  auto b = season();
  wash(b, "2026-08-20", 9);
  wash(b, "2026-06-10", 0);
  const auto data = course(b.take(), "2026-09-05");
  ASSERT_NE(data, nullptr);
  const auto& mites = data->lanes[3].series[0];
  EXPECT_EQ(data->lanes[3].unit, QStringLiteral("on 100 bees"));
  ASSERT_EQ(mites.seen.size(), 2U);
  EXPECT_EQ(mites.seen[0].date, day("2026-06-10"));
  EXPECT_DOUBLE_EQ(mites.seen[0].median, 0);
  EXPECT_GT(mites.seen[0].high, 0.5);  // none of 300 is not none
  const auto& found = mites.seen[1];
  EXPECT_NEAR(found.median, 3, 1e-9);
  const auto error = strength::wilson(9, 300);
  EXPECT_DOUBLE_EQ(found.low, 100 * error.low);
  EXPECT_DOUBLE_EQ(found.high, 100 * error.high);
  // The band is in the same unit: on the day of the wash the two meet.
  const auto band = at(mites, day("2026-08-22"));
  ASSERT_TRUE(band.has_value());
  EXPECT_LT(band->low, found.high);
  EXPECT_GT(band->high, found.low);
  EXPECT_LT(band->high, 30);
  // Stores that were seen stand as points too.
  EXPECT_EQ(data->lanes[2].series[0].seen.size(), 5U);
}

TEST(ColonyCourse, SaysWhenNoTreatmentIsRecorded) {
  const auto words = [](const apiary::Season& s, const char* today) {
    return course(s, today)->remarks.join(QLatin1Char('|'));
  };
  EXPECT_TRUE(words(season().take(), "2026-09-05").contains(QStringLiteral("No treatment")));
  EXPECT_FALSE(words(season().take(), "2026-07-05").contains(QStringLiteral("No treatment")));
  auto b = season();
  apiary::Event e;
  static_cast<apiary::RecordHead&>(e) = b.head();
  e.kind = apiary::EventKind::Treated;
  e.hive = base::HiveId("A");
  e.date = day("2026-08-10");
  b.put(e);
  EXPECT_FALSE(words(b.take(), "2026-09-05").contains(QStringLiteral("No treatment")));
}

TEST(ColonyCourse, TellsHowOftenTheBandHeldByHowLongNobodyLooked) {
  const auto all = course(season().take(), "2026-09-05")->remarks.join(QLatin1Char('|'));
  EXPECT_TRUE(all.contains(QStringLiteral("Of the last 4 looks"))) << all.toStdString();
  EXPECT_TRUE(all.contains(QStringLiteral("within two weeks of the look before"))) << "two";
  EXPECT_TRUE(all.contains(QStringLiteral(" of 2, three to six weeks after it"))) << "one of 35";
  EXPECT_TRUE(all.contains(QStringLiteral("later "))) << "one of 63 days";
}

}  // namespace
}  // namespace outyard::charts
