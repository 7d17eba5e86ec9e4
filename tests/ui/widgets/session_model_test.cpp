// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/session_model.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"

namespace outyard::widgets {
namespace {

using tests::day;
using tests::Desk;

const base::HiveId kTr01{"TR-01"};
const base::YardId kTr{"TR"};

apiary::Inspection look(const char* date, double seams) {
  apiary::Inspection inspection;
  inspection.hive = kTr01;
  inspection.date = day(date);
  inspection.seams = seams;
  inspection.eggsSeen = true;
  return inspection;
}

TEST(SeasonHubTest, AChangeIsToldAndResultsAreWorkedOutAgain) {
  Desk desk(tests::smallSeason());
  EXPECT_EQ(desk.hub.hive(kTr01)->colonies.front().lastInspection, nullptr);
  int told = 0;
  QObject::connect(&desk.hub, &SeasonHub::changed, &desk.hub, [&](const session::Notice& notice) {
    ++told;
    EXPECT_EQ(notice.hives, std::vector{kTr01});
  });
  ASSERT_TRUE(desk.hub.execute(session::recordInspection(look("2026-04-20", 6), {}, {})));
  EXPECT_EQ(told, 1);
  ASSERT_NE(desk.hub.hive(kTr01)->colonies.front().lastInspection, nullptr);
  EXPECT_EQ(desk.hub.judgementsOf(kTr01).front().strength->seams, 6);
  ASSERT_TRUE(desk.hub.undo());
  EXPECT_EQ(desk.hub.hive(kTr01)->colonies.front().lastInspection, nullptr);
  EXPECT_EQ(told, 2);
}

TEST(SeasonHubTest, ARefusalIsSaidAndNothingChanges) {
  Desk desk(tests::smallSeason());
  const auto before = tests::allRows(desk.hub.season());
  auto command = session::recordInspection(look("2024-04-20", 6), {}, {});
  EXPECT_FALSE(desk.hub.whyNot(*command).isEmpty());
  EXPECT_FALSE(desk.hub.execute(std::move(command)));
  EXPECT_EQ(desk.dialogs.failures.size(), 1);
  EXPECT_EQ(tests::allRows(desk.hub.season()), before);
}

TEST(SeasonHubTest, ADiskThatRefusesLeavesEverythingAsItWas) {
  Desk desk(tests::smallSeason());
  const auto before = tests::allRows(desk.hub.season());
  desk.store->refuse = true;
  EXPECT_FALSE(desk.hub.execute(session::recordInspection(look("2026-04-20", 6), {}, {})));
  EXPECT_EQ(desk.dialogs.failures.size(), 1);
  EXPECT_EQ(tests::allRows(desk.hub.season()), before);
  EXPECT_FALSE(desk.hub.session()->canUndo());
}

TEST(SeasonHubTest, SelectingAHiveFillsInYardAndColony) {
  Desk desk(tests::smallSeason());
  QSignalSpy spy(&desk.hub, &SeasonHub::selectionChanged);
  desk.hub.selectHive(base::HiveId{"MB-01"});
  EXPECT_EQ(desk.hub.selection().yard, base::YardId{"MB"});
  EXPECT_EQ(desk.hub.selection().colony, base::ColonyId{"MB-01"});
  desk.hub.selectHive(base::HiveId{"MB-01"});
  EXPECT_EQ(spy.count(), 1) << "told once, not again for the same";
}

TEST(SeasonHubTest, TheShownDayChangesWhatIsSeen) {
  Desk desk(tests::smallSeason());
  ASSERT_TRUE(desk.hub.execute(session::recordInspection(look("2026-04-20", 6), {}, {})));
  desk.hub.setShownDate(day("2026-04-19"));
  EXPECT_FALSE(desk.hub.showsToday());
  EXPECT_EQ(desk.hub.hive(kTr01)->colonies.front().lastInspection, nullptr);
  desk.hub.setShownDate(day("2025-01-01"));
  EXPECT_TRUE(desk.hub.hives(kTr).empty()) << "before the first place nothing stands there";
  desk.hub.setShownDate(desk.hub.workingDate());
  EXPECT_TRUE(desk.hub.showsToday());
  EXPECT_EQ(desk.hub.firstDate(), day("2025-04-01"));
}

TEST(SeasonHubTest, WithoutASeasonEverythingIsEmptyAndSaysSo) {
  Desk desk(tests::smallSeason());
  desk.hub.close();
  EXPECT_FALSE(desk.hub.isOpen());
  EXPECT_TRUE(desk.hub.season().table<apiary::Yard>().empty());
  EXPECT_EQ(desk.hub.workingDate(), day("2026-04-25"));
  EXPECT_FALSE(desk.hub.execute(session::recordInspection(look("2026-04-20", 6), {}, {})));
  EXPECT_EQ(desk.dialogs.failures.size(), 1);
  EXPECT_FALSE(desk.hub.undo());
}

TEST(SeasonHubTest, AnUndoneHiveIsNoLongerChosen) {
  Desk desk(tests::smallSeason());
  apiary::Hive hive;
  hive.hive = base::HiveId{"TR-08"};
  hive.yard = kTr;
  hive.xM = 18;
  hive.yM = 3;
  apiary::BoxState box;
  box.frameType = "langstroth_deep";
  box.frames = 10;
  ASSERT_TRUE(desk.hub.execute(session::addHive(hive, day("2026-04-25"), {box})));
  desk.hub.selectHive(hive.hive);
  ASSERT_TRUE(desk.hub.undo());
  EXPECT_FALSE(desk.hub.selection().hive.has_value());
}

}  // namespace
}  // namespace outyard::widgets
