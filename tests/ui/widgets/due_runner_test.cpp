// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/due_runner.h"

#include <gtest/gtest.h>

#include "tests/support/season_builder.h"

namespace outyard::widgets {
namespace {

using apiary::TableId;
using tests::day;

const std::set<base::YardId> kHome{base::YardId{"TR"}};

session::Notice noticeOf(std::vector<apiary::Change> changes) {
  session::Notice notice;
  notice.hives = {base::HiveId{"TR-01"}};
  notice.yards.assign(kHome.begin(), kHome.end());
  notice.changes = std::move(changes);
  return notice;
}
apiary::Change of(TableId table) {
  return {table, "x", {}, {}};
}

TEST(TouchedBy, AChangeTouchesOnlyWhatItTouches) {
  const auto season = tests::smallSeason();
  auto touched = touchedBy(season, noticeOf({of(TableId::Inspections)}), true);
  EXPECT_FALSE(touched.all);
  EXPECT_EQ(touched.yards, kHome);
  EXPECT_TRUE(touchedBy(season, noticeOf({of(TableId::Weather)}), true).all);
  touched = touchedBy(season, noticeOf({of(TableId::Gear)}), true);
  EXPECT_TRUE(touched.gear && touched.yards.empty() && !touched.all);
  touched = touchedBy(season, noticeOf({of(TableId::Sheets), of(TableId::Features)}), true);
  EXPECT_FALSE(touched.gear || touched.all);
  EXPECT_TRUE(touched.yards.empty());
  auto nowhere = noticeOf({of(TableId::Events)});
  nowhere.yards.clear();
  nowhere.hives.clear();  // nobody knows where: everywhere
  EXPECT_TRUE(touchedBy(season, nowhere, true).all);
}

TEST(TouchedBy, TheVisitOfATaskMattersOnlyToThoseWhoMindIt) {
  const auto season = tests::smallSeason();
  apiary::Task before;
  before.task = base::TaskId{"T1"};
  before.kind = "open";
  before.hive = base::HiveId{"TR-01"};
  apiary::Task after = before;
  after.visit = base::VisitId{"V1"};
  after.plannedOn = day("2026-05-02");
  const auto put = [&](const apiary::Task& now) {
    return noticeOf({{TableId::Tasks, "T1", apiary::toRow(before), apiary::toRow(now)}});
  };
  EXPECT_EQ(touchedBy(season, put(after), true).yards, kHome);
  EXPECT_TRUE(touchedBy(season, put(after), false).yards.empty());
  after.dueOn = day("2026-05-02");
  EXPECT_EQ(touchedBy(season, put(after), false).yards, kHome);
}

}  // namespace
}  // namespace outyard::widgets
