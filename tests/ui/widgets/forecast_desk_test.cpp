// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/forecast_desk.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "ui/widgets/forecast_status.h"

namespace outyard::widgets {
namespace {

using tests::day;
using tests::Desk;

const base::YardId kYard("TR"), kOther("MB");
const base::ColonyId kColony("TR-01");
constexpr int kLongMs = 60000;

apiary::Season seen() {
  tests::SeasonBuilder b;
  b.yard("TR").yard("MB");
  for (const char* id : {"TR-01", "TR-02"}) b.livingHive(id, "TR");
  b.livingHive("MB-01", "MB");
  for (const char* id : {"TR-01", "TR-02", "MB-01"}) {
    b.inspection(id, "2026-04-18", [](apiary::Inspection& i) {
      i.seams = 5;
      i.framesWithBrood = 3;
    });
  }
  return b.take();
}

/// The entry of a look at TR-01, as the form makes it.
session::CommandPtr lookAt(const char* date, double seams) {
  session::InspectionEntry entry;
  entry.inspection.hive = base::HiveId("TR-01");
  entry.inspection.date = day(date);
  entry.inspection.seams = seams;
  return session::recordInspections({entry});
}

/// Waits until the yard's forecasts are there.
bool waitFor(ForecastDesk& desk, const base::YardId& yard) {
  desk.want(yard);
  return QTest::qWaitFor([&] { return desk.isFresh(yard); }, kLongMs);
}

TEST(ForecastDesk, WorksOutWhatIsAskedForAndNothingElse) {
  Desk d(seen());
  auto& desk = d.hub.forecasts();
  QSignalSpy updated(&desk, &ForecastDesk::updated);
  EXPECT_FALSE(desk.running());
  EXPECT_EQ(desk.of(kYard, kColony), nullptr);  // being worked out
  EXPECT_TRUE(desk.running());
  ASSERT_TRUE(waitFor(desk, kYard));
  EXPECT_EQ(updated.count(), 1);
  const auto* f = desk.of(kYard, kColony);
  ASSERT_NE(f, nullptr);
  EXPECT_EQ(f->days.front().date, d.hub.workingDate());
  EXPECT_EQ(f->days.back().date, d.hub.workingDate().plusDays(ForecastDesk::kDaysAhead));
  EXPECT_EQ(desk.ofYard(kYard).size(), 2u);
  EXPECT_FALSE(desk.isFresh(kOther));
}

TEST(ForecastDesk, AgreesWithTheForecastOfTheColonyAlone) {
  Desk d(seen());
  auto& desk = d.hub.forecasts();
  ASSERT_TRUE(waitFor(desk, kYard));
  forecast::ForecastAsk ask;
  ask.from = d.hub.workingDate();
  ask.to = ask.from.plusDays(ForecastDesk::kDaysAhead);
  const auto alone = forecast::forecastColony(d.hub.season(), kColony, ask);
  ASSERT_TRUE(alone);
  const auto* f = desk.of(kYard, kColony);
  ASSERT_EQ(f->days.size(), alone->days.size());
  for (std::size_t i = 0; i < f->days.size(); ++i) {
    EXPECT_EQ(f->days[i].bees.median, alone->days[i].bees.median) << i;
    EXPECT_EQ(f->days[i].seen.high, alone->days[i].seen.high) << i;
  }
}

TEST(ForecastDesk, AnEntryMovesItsYardAndLeavesTheOther) {
  Desk d(seen());
  auto& desk = d.hub.forecasts();
  ASSERT_TRUE(waitFor(desk, kYard));
  ASSERT_TRUE(waitFor(desk, kOther));
  const double before = desk.of(kYard, kColony)->days.front().bees.median;
  ASSERT_TRUE(d.hub.execute(lookAt("2026-04-25", 9)));
  EXPECT_FALSE(desk.isFresh(kYard));  // never shown after it is outdated
  EXPECT_TRUE(desk.isFresh(kOther));
  ASSERT_TRUE(QTest::qWaitFor([&] { return desk.isFresh(kYard); }, kLongMs));
  EXPECT_GT(desk.of(kYard, kColony)->days.front().bees.median, 1.15 * before);
  ASSERT_TRUE(d.hub.undo());
  ASSERT_TRUE(waitFor(desk, kYard));
  EXPECT_EQ(desk.of(kYard, kColony)->days.front().bees.median, before);
}

TEST(ForecastDesk, AnEntryKeepsTheNeighboursAndEndsAsAllAnew) {
  Desk d(seen());
  auto& desk = d.hub.forecasts();
  ASSERT_TRUE(waitFor(desk, kYard));
  const auto neighbour = desk.of(kYard, base::ColonyId("TR-02"))->days.back().bees.median;
  for (const double seams : {3.0, 8.0}) ASSERT_TRUE(d.hub.execute(lookAt("2026-04-25", seams)));
  ASSERT_TRUE(QTest::qWaitFor([&] { return desk.isFresh(kYard); }, kLongMs));
  const auto all = desk.ofYard(kYard);
  ASSERT_EQ(all.size(), 2u);
  EXPECT_EQ(all[0]->colony, kColony);  // in the order of the yard
  EXPECT_EQ(all[1]->days.back().bees.median, neighbour);
  forecast::ForecastAsk ask;
  ask.from = d.hub.workingDate();
  ask.to = ask.from.plusDays(ForecastDesk::kDaysAhead);
  base::Progress quiet;
  const auto anew = forecast::forecastColonies(
      d.hub.season(), forecast::coloniesIn(d.hub.season(), kYard, ask.from), ask, 1, quiet);
  ASSERT_EQ(anew.size(), all.size());
  for (std::size_t i = 0; i < anew.size(); ++i) {
    EXPECT_EQ(anew[i].colony, all[i]->colony);
    EXPECT_EQ(anew[i].days.back().bees.median, all[i]->days.back().bees.median);
  }
}

TEST(ForecastDesk, WhatWasBegunBeforeAChangeIsDropped) {
  Desk d(seen());
  auto& desk = d.hub.forecasts();
  ASSERT_TRUE(waitFor(desk, kYard));
  QSignalSpy updated(&desk, &ForecastDesk::updated);
  // Three entries while the first is being worked out: only what fits the last one comes.
  for (const double seams : {2.0, 5.0, 9.0}) {
    ASSERT_TRUE(d.hub.execute(lookAt("2026-04-25", seams)));
  }
  ASSERT_TRUE(QTest::qWaitFor([&] { return desk.isFresh(kYard); }, kLongMs));
  EXPECT_EQ(updated.count(), 1);
  forecast::ForecastAsk ask;
  ask.from = d.hub.workingDate();
  ask.to = ask.from.plusDays(ForecastDesk::kDaysAhead);
  const auto alone = forecast::forecastColony(d.hub.season(), kColony, ask);
  EXPECT_EQ(desk.of(kYard, kColony)->days.front().bees.median, alone->days.front().bees.median);
}

TEST(ForecastDesk, AnotherSeasonOrAnotherTodayForgetsAll) {
  Desk d(seen());
  auto& desk = d.hub.forecasts();
  ASSERT_TRUE(waitFor(desk, kYard));
  d.hub.close();
  EXPECT_FALSE(desk.isFresh(kYard));
  EXPECT_EQ(desk.of(kYard, kColony), nullptr);
  EXPECT_FALSE(desk.running());  // nothing is open: nothing is asked for
}

TEST(ForecastDesk, PlannedTasksCostNoForecast) {
  Desk d(seen());
  auto& desk = d.hub.forecasts();
  ASSERT_TRUE(waitFor(desk, kYard));
  session::Notice notice;
  apiary::Task task;
  task.task = base::TaskId("t1");
  task.kind = "look";
  task.hive = base::HiveId("TR-01");
  const auto row = apiary::toRow(task);
  notice.changes = {{apiary::TableId::Tasks, "t1", std::nullopt, row}};
  notice.yards = {kYard};
  Q_EMIT d.hub.changed(notice);
  EXPECT_TRUE(desk.isFresh(kYard));
}

TEST(ForecastDesk, CancelKeepsWhatIsReadyAndStartsAgain) {
  Desk d(tests::sampleSeason(), "2026-05-02");
  auto& desk = d.hub.forecasts();
  QSignalSpy settled(&desk, &ForecastDesk::settled);
  desk.wantAll();
  EXPECT_TRUE(desk.running());
  EXPECT_EQ(desk.goal(), static_cast<int>(d.hub.season().table<apiary::Yard>().size()));
  desk.cancel();
  EXPECT_FALSE(desk.running());
  EXPECT_EQ(settled.count(), 1);
  const auto yard = d.hub.season().table<apiary::Yard>().begin()->second.yard;
  QTest::qWait(50);
  EXPECT_FALSE(desk.isFresh(yard));
  ASSERT_TRUE(waitFor(desk, yard));
  EXPECT_FALSE(desk.ofYard(yard).empty());
}

TEST(ForecastDesk, WorkBesideComesBackOnceAndNotAfterAChange) {
  Desk d(seen());
  auto& desk = d.hub.forecasts();
  int came = 0;
  const auto work = [&](int value) {
    return [&came, value](const apiary::Season& season, base::Progress&) -> SideResult {
      const auto yards = static_cast<int>(season.table<apiary::Yard>().size());
      return [&came, value, yards] { came = value * 10 + yards; };
    };
  };
  desk.beside(QStringLiteral("course"), work(1));
  desk.beside(QStringLiteral("course"), work(2));  // takes the place of the first
  ASSERT_TRUE(QTest::qWaitFor([&] { return came != 0; }, kLongMs));
  EXPECT_EQ(came, 22);
  came = 0;
  desk.beside(QStringLiteral("course"), work(3));
  ASSERT_TRUE(d.hub.execute(lookAt("2026-04-25", 9)));
  ASSERT_TRUE(waitFor(desk, kYard));
  EXPECT_EQ(came, 0);
}

TEST(ForecastDesk, ExpectsSeamsOnTheDayAndMoreOfThemInSpring) {
  Desk d(seen());
  auto& desk = d.hub.forecasts();
  ASSERT_TRUE(waitFor(desk, kYard));
  const auto today = d.hub.workingDate();
  EXPECT_TRUE(desk.expectedIn(kYard, today.plusDays(-1)).empty());
  const auto now = desk.expectedIn(kYard, today).at(kColony);
  const auto later = desk.expectedIn(kYard, today.plusDays(28)).at(kColony);
  EXPECT_GT(now.seams.median, 2);
  EXPECT_LE(now.seams.high, 10);
  EXPECT_GT(later.seams.median, now.seams.median + 1);  // late April to late May
  EXPECT_GT(later.width, 0.1);
}

TEST(ForecastStatusWidget, ShowsAndStops) {
  Desk d(tests::sampleSeason(), "2026-05-02");
  ForecastStatus status(d.hub);
  status.show();
  const auto actions = status.actions();
  ASSERT_EQ(actions.size(), 2);
  EXPECT_FALSE(actions[1]->isEnabled());
  actions[0]->trigger();
  EXPECT_TRUE(d.hub.forecasts().running());
  EXPECT_TRUE(actions[1]->isEnabled());
  auto* stop = status.findChild<QToolButton*>();
  ASSERT_NE(stop, nullptr);
  EXPECT_TRUE(stop->isVisible());
  stop->click();
  EXPECT_FALSE(d.hub.forecasts().running());
  EXPECT_FALSE(stop->isVisible());
}

}  // namespace
}  // namespace outyard::widgets
