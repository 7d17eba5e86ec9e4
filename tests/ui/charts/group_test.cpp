// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QComboBox>
#include <QSignalSpy>
#include <QTest>

#include "core/strength/estimate.h"
#include "tests/support/season_builder.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/charts/course_panel.h"
#include "ui/charts/course_view.h"
#include "ui/charts/group_course.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/theme.h"

namespace outyard::charts {
namespace {

using tests::day;

forecast::ColonyForecast flat(const char* name, double bees, double spread) {
  forecast::ColonyForecast f;
  f.colony = base::ColonyId(name);
  f.hive = base::HiveId(name);
  for (int i = 0; i <= 10; ++i) {
    forecast::ForecastDay d;
    d.date = day("2026-05-02").plusDays(7 * i);
    d.bees = d.seen = {bees, bees - spread, bees + spread};
    f.days.push_back(d);
  }
  return f;
}

TEST(GroupCourse, MediansAddAndBandsEvenOutInPart) {
  const auto a = flat("A", 10000, 2000), b = flat("B", 5000, 2000);
  const auto sum = sumOf({&a, &b});
  ASSERT_EQ(sum.size(), a.days.size());
  EXPECT_DOUBLE_EQ(sum[0].seen.median, 15000);
  // Narrower than if all moved together (4,000), wider than if nothing did (2,828).
  EXPECT_LT(sum[0].seen.high - 15000, 4000);
  EXPECT_GT(sum[0].seen.high - 15000, 2828);
  EXPECT_TRUE(sumOf({}).empty());
}

TEST(GroupCourse, ThePastIsWhatWasSeenBroughtUpToAll) {
  tests::SeasonBuilder b;
  b.yard("Y").yard("Z");
  for (const char* hive : {"A", "B", "C"}) b.livingHive(hive, "Y", 1, 1);
  b.livingHive("D", "Z", 1, 1);
  const auto look = [&](const char* hive, const char* date, double frames) {
    b.inspection(hive, date, [&](apiary::Inspection& i) { i.beeFrames = frames; });
  };
  look("A", "2026-04-20", 4);
  look("B", "2026-04-24", 6);
  look("D", "2026-04-24", 9);
  look("A", "2025-07-10", 8);  // alone of three: fewer than half
  const auto season = b.take();
  base::Progress quiet;
  const auto today = day("2026-05-09");
  const PastSum yard = pastSum(season, base::YardId("Y"), today, quiet);
  const auto of = [&](const char* hive) {
    return strength::estimateColony(season, base::ColonyId(hive), day("2026-04-25"))->bees->median;
  };
  // 25 April is a fortnight back: two of three were seen.
  ASSERT_EQ(yard.bees.size(), 1U);
  EXPECT_EQ(yard.bees.back().date, day("2026-04-25"));
  EXPECT_NEAR(yard.bees.back().median, 1.5 * (of("A") + of("B")), 1);
  EXPECT_LT(yard.bees.back().low, yard.bees.back().median);
  EXPECT_GT(yard.bees.back().high, yard.bees.back().median);
  EXPECT_TRUE(yard.honeyKg.empty());
  const PastSum all = pastSum(season, std::nullopt, today, quiet);
  EXPECT_NEAR(all.bees.back().median, 4.0 / 3 * (of("A") + of("B") + of("D")), 1);

  auto a = flat("A", 10000, 2000);
  const auto course =
      groupCourse(season, std::nullopt, QStringLiteral("all"), {&a}, a.days.front().date, {}, all);
  ASSERT_NE(course, nullptr);
  EXPECT_EQ(course->first, all.bees.front().date);
  const auto& past = course->lanes[0].series[0].past;
  ASSERT_EQ(past.size(), all.bees.size() + 1);  // and today, where it meets what is expected
  EXPECT_DOUBLE_EQ(past.back().median, 10000);
  EXPECT_TRUE(course->remarks.join(QLatin1Char(' ')).contains(QStringLiteral("Before today")));
}

TEST(SmallCourses, KeysChooseAndOpen) {
  SmallCourses small;
  std::vector<SmallCourse> courses;
  for (const char* name : {"A", "B", "C", "D"}) {
    SmallCourse c{base::HiveId(name), base::ColonyId(name), QString::fromLatin1(name), {}};
    for (int i = 0; i <= 10; ++i) {
      c.bees.ahead.push_back({day("2026-05-02").plusDays(7 * i), 800, 1000, 1300});
    }
    courses.push_back(c);
  }
  small.resize(400, 300);
  small.setCourses(courses, day("2026-05-02"), day("2026-07-11"), day("2026-05-02"));
  small.show();
  QSignalSpy opened(&small, &SmallCourses::opened);
  QTest::keyClick(&small, Qt::Key_Right);
  QTest::keyClick(&small, Qt::Key_Right);
  EXPECT_EQ(small.chosen(), 1);
  QTest::keyClick(&small, Qt::Key_Down);
  EXPECT_EQ(small.chosen(), 3);  // two across
  EXPECT_TRUE(small.accessibleDescription().contains(QStringLiteral("D: today 1,000")))
      << small.accessibleDescription().toStdString();
  QTest::keyClick(&small, Qt::Key_Return);
  ASSERT_EQ(opened.count(), 1);
  EXPECT_EQ(opened.at(0).at(0).value<base::HiveId>(), base::HiveId("D"));
}

TEST(GroupCourseDialog, ShowsTheSumAndEachHive) {
  tests::Desk d(tests::sampleSeason(), "2026-05-02");
  const auto yard = d.hub.season().table<apiary::Yard>().begin()->second.yard;
  d.hub.selectYard(yard);
  GroupCourseDialog dialog(d.hub);
  dialog.setPalette(widgets::lightPalette());
  dialog.show();
  ASSERT_TRUE(QTest::qWaitFor([&] { return d.hub.forecasts().isFresh(yard); }, 120000));
  ASSERT_NE(dialog.panel().view().data(), nullptr);
  const auto* data = dialog.panel().view().data();
  double sum = 0;
  for (const auto* f : d.hub.forecasts().ofYard(yard)) sum += f->days.front().seen.median;
  EXPECT_NEAR(data->lanes[0].series[0].ahead.front().median, sum, 1e-6 * sum);
  // The past follows from the worker.
  EXPECT_TRUE(QTest::qWaitFor(
      [&] { return !dialog.panel().view().data()->lanes[0].series[0].past.empty(); }, 60000));
  EXPECT_LT(dialog.panel().view().data()->first, d.hub.workingDate());
  tests::picture(dialog, QStringLiteral("group_sum"), {980, 680});
  dialog.findChild<QComboBox*>(QStringLiteral("groupHow"))->setCurrentIndex(1);
  EXPECT_EQ(dialog.small().count(), static_cast<int>(d.hub.forecasts().ofYard(yard).size()));
  tests::picture(dialog, QStringLiteral("group_small"), {980, 680});
}

}  // namespace
}  // namespace outyard::charts
