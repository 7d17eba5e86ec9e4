// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/season_calendar.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/planning/spring_yard.h"

namespace outyard::planning::testing {
namespace {

using tests::day;

SeasonCalendar made(const apiary::Season& season, const char* first, const char* last) {
  CalendarAsk ask;
  ask.first = day(first);
  ask.last = day(last);
  ask.members = 32;
  base::Progress quiet;
  return seasonCalendar(season, day(kSpringDay), ask, 1, quiet);
}

template <class... T>
apiary::Season with(apiary::Season season, const T&... records) {
  apiary::ChangeList changes;
  for (const apiary::Row& row : {apiary::toRow(records)...}) {
    changes.push_back(
        {row.table, apiary::rowKey(row), season.row(row.table, apiary::rowKey(row)), row});
  }
  season.apply(changes);
  return season;
}

apiary::Task task(const char* id, const char* kind, const char* hive, const char* on) {
  apiary::Task t;
  t.task = base::TaskId(id);
  t.kind = kind;
  t.yard = base::YardId("TR");
  if (*hive) t.hive = base::HiveId(hive);
  t.earliest = day(on);
  t.latest = day(on).plusDays(7);
  t.dueOn = day(on);
  return t;
}
apiary::Event event(const char* id, apiary::EventKind kind, const char* hive, const char* on) {
  apiary::Event e;
  e.record = base::RecordId(id);
  e.kind = kind;
  e.hive = base::HiveId(hive);
  e.date = day(on);
  return e;
}
apiary::Flow flow(int from, int to, double nectar) {
  apiary::Flow f;
  f.yard = base::YardId("TR");
  f.fromDay = from;
  f.toDay = to;
  f.nectar = nectar;
  return f;
}

TEST(SeasonCalendar, WeeksBeginOnMondayAndHoldTheWholeSpan) {
  EXPECT_EQ(mondayOf(day("2026-04-26")), day("2026-04-20"));  // a Sunday
  EXPECT_EQ(mondayOf(day("2026-04-27")), day("2026-04-27"));
  SpringYard yard;
  yard.strong("TR-01");
  const auto c = made(yard.season(), "2026-04-01", "2026-05-31");
  ASSERT_EQ(c.weeks.size(), 9u);
  EXPECT_EQ(c.weeks.front().monday, day("2026-03-30"));
  EXPECT_EQ(c.weekOf(day("2026-03-29")), std::nullopt);
  EXPECT_EQ(c.weekOf(day("2026-04-05")), 0u);
  EXPECT_EQ(c.weekOf(day("2026-05-31")), 8u);
  EXPECT_EQ(c.weekOf(day("2026-06-01")), std::nullopt);
  EXPECT_EQ(c.cells.size(), 9u);
  const auto none = made(yard.season(), "2026-05-31", "2026-04-01");
  EXPECT_TRUE(none.weeks.empty());
}

TEST(SeasonCalendar, FlowsRecordsAndPlansStandInTheirWeeks) {
  SpringYard yard;
  yard.strong("TR-01").strong("TR-02");
  auto stacked = event("e1", apiary::EventKind::Stacked, "TR-01", "2026-04-15");
  stacked.otherHive = base::HiveId("TR-02");
  auto treated = event("e2", apiary::EventKind::Treated, "TR-02", "2026-04-08");
  treated.method = "strips";
  treated.withdrawalDays = 30;  // to 8 May
  auto honey = event("e3", apiary::EventKind::Harvested, "TR-01", "2026-04-16");
  honey.amount = 12.5;
  honey.unit = apiary::Unit::Kg;
  auto counted = event("e4", apiary::EventKind::Harvested, "TR-02", "2026-04-16");
  counted.amount = 3;
  counted.unit = apiary::Unit::Frames;
  const auto season =
      with(yard.season(), stacked, treated, honey, counted, flow(125, 140, 2),  // 5 to 20 May
           task("t1", "stacked", "TR-01", "2026-05-06"));
  const auto c = made(season, "2026-04-06", "2026-05-24");
  ASSERT_EQ(c.weeks.size(), 7u);
  const auto in = [&](const char* on) { return c.cell(0, *c.weekOf(day(on))); };
  EXPECT_EQ(in("2026-04-15").boostsDone, 1);
  EXPECT_EQ(in("2026-04-08").treatmentsDone, 1);
  EXPECT_EQ(in("2026-04-16").harvests, 2);
  EXPECT_NEAR(in("2026-04-16").harvestKg, 12.5, 1e-12) << "frames are no kilograms";
  EXPECT_EQ(in("2026-05-01").nectar, 0);
  EXPECT_EQ(in("2026-05-05").nectar, 2);
  EXPECT_EQ(in("2026-05-20").nectar, 2);
  EXPECT_TRUE(in("2026-04-08").waiting);
  EXPECT_TRUE(in("2026-05-08").waiting);
  EXPECT_TRUE(in("2026-05-08").waitingEnds);
  EXPECT_FALSE(in("2026-05-12").waiting);
  EXPECT_TRUE(in("2026-04-24").underTreatment) << "nobody took it off";
  EXPECT_FALSE(in("2026-05-01").underTreatment) << "what comes is not recorded";
  EXPECT_EQ(in("2026-05-06").boostsPlanned, 1);
  EXPECT_FALSE(in("2026-04-10").splitReady.has_value());
  EXPECT_TRUE(in("2026-05-06").splitReady.has_value());
}

TEST(SeasonCalendar, FlowsRunOverNewYear) {
  SpringYard yard;
  yard.strong("TR-01");
  const auto season = with(yard.season(), flow(355, 10, 1));
  const auto c = made(season, "2025-12-15", "2026-01-31");
  EXPECT_EQ(c.cell(0, *c.weekOf(day("2025-12-16"))).nectar, 1);  // 21 December is its Sunday
  EXPECT_EQ(c.cell(0, *c.weekOf(day("2026-01-01"))).nectar, 1);
  EXPECT_EQ(c.cell(0, *c.weekOf(day("2026-01-20"))).nectar, 0);
}

TEST(SeasonCalendar, HoursAreThoseOfTheRoundsAndOverFullWeeksAreMarked) {
  SpringYard yard;
  yard.strong("TR-01");
  auto season = with(yard.season(), task("t1", "stacked", "TR-01", "2026-05-06"));
  const auto c = made(season, "2026-04-20", "2026-05-31");
  std::vector<base::Message> notes;
  const auto figures = roundFigures(season, notes);
  const auto week = *c.weekOf(day("2026-05-06"));
  std::vector<std::size_t> likely;
  for (const auto i : c.cell(0, week).tasks) {
    const auto& t = c.due.tasks[i];
    if (t.minutes > 0 && (t.task || t.chance >= 0.5)) likely.push_back(i);
  }
  ASSERT_FALSE(likely.empty());
  EXPECT_NEAR(c.weeks[week].workHours, workHours(c.due, likely, figures), 1e-9);
  EXPECT_EQ(c.weeks[week].handHours, 5 * figures.dayHours);
  EXPECT_FALSE(c.weeks[week].overFull());
  season = with(season, apiary::Setting{"calendar.days_a_week", "0.5", ""},
                apiary::Setting{"round.day_hours", "1", ""},
                apiary::Setting{"round.yard_minutes", "60", ""});
  const auto tight = made(season, "2026-04-20", "2026-05-31");
  EXPECT_EQ(tight.weeks[week].handHours, 0.5);
  EXPECT_TRUE(tight.weeks[week].overFull());
}

TEST(SeasonCalendar, AStrongYardGetsReadyAndTheSmallOneLater) {
  SpringYard yard;
  yard.strong("TR-01").strong("TR-02");
  yard.addYard("MB");
  yard.small("MB-01");
  const auto c = made(yard.season(), "2026-04-20", "2026-07-05");
  double strong = 0, small = 0;
  for (std::size_t w = 0; w < c.weeks.size(); ++w) {
    const auto mb = c.cell(0, w).splitReady, tr = c.cell(1, w).splitReady;
    ASSERT_TRUE(mb && tr);
    EXPECT_LE(*tr, 2);
    small = std::max(small, *mb);
    strong = std::max(strong, *tr);
  }
  EXPECT_GT(strong, small);
  EXPECT_FALSE(c.expectedOnly(5));
  EXPECT_TRUE(c.expectedOnly(6));
}

TEST(SeasonCalendar, StoppedItHasNoWeeks) {
  struct Stopped : base::Progress {
    [[nodiscard]] bool cancelled() const override { return true; }
  } stopped;
  SpringYard yard;
  yard.strong("TR-01");
  CalendarAsk ask;
  ask.first = day("2026-04-20");
  ask.last = day("2026-05-31");
  EXPECT_TRUE(seasonCalendar(yard.season(), day(kSpringDay), ask, 1, stopped).weeks.empty());
}

TEST(SeasonCalendar, PlannedWorkShiftsWithItsVisitAndBackAgain) {
  SpringYard yard;
  yard.strong("TR-01");
  apiary::Visit visit;
  visit.visit = base::VisitId("v1");
  visit.yard = base::YardId("TR");
  visit.date = day("2026-05-06");
  auto inVisit = task("t1", "look", "TR-01", "2026-05-05");
  inVisit.visit = visit.visit;
  inVisit.plannedOn = visit.date;
  auto done = task("t2", "look", "TR-01", "2026-05-05");
  done.state = apiary::TaskState::Done;
  const auto season = with(yard.season(), visit, inVisit, done);
  const auto changes = shiftedTasks(season, base::YardId("TR"), day(kSpringDay), 9);
  ASSERT_TRUE(changes.ok());
  EXPECT_EQ(changes.value().size(), 2u);
  auto moved = season;
  moved.apply(changes.value());
  EXPECT_EQ(moved.find<apiary::Visit>("v1")->date, day("2026-05-15"));
  EXPECT_EQ(moved.find<apiary::Task>("t1")->plannedOn, day("2026-05-15"));
  EXPECT_EQ(moved.find<apiary::Task>("t1")->latest, day("2026-05-21"));
  EXPECT_EQ(moved.find<apiary::Task>("t2")->dueOn, day("2026-05-05"));
  const auto back = shiftedTasks(moved, base::YardId("TR"), day(kSpringDay), -9);
  ASSERT_TRUE(back.ok());
  moved.apply(back.value());
  EXPECT_EQ(*moved.find<apiary::Task>("t1"), inVisit);
  EXPECT_EQ(moved.find<apiary::Visit>("v1")->date, visit.date);
  EXPECT_FALSE(shiftedTasks(season, base::YardId("TR"), day(kSpringDay), -30).ok());
  EXPECT_FALSE(shiftedTasks(yard.season(), base::YardId("TR"), day(kSpringDay), 3).ok());
}

TEST(SeasonCalendar, AFlowShiftsAndTheCalendarWithIt) {
  SpringYard yard;
  yard.strong("TR-01");
  const auto season = with(yard.season(), flow(125, 140, 2), flow(132, 147, 1));
  const auto changes = shiftedFlow(season, flow(125, 140, 2), 14);
  ASSERT_TRUE(changes.ok());
  auto later = season;
  later.apply(changes.value());
  const auto before = made(season, "2026-04-27", "2026-06-14");
  const auto after = made(later, "2026-04-27", "2026-06-14");
  EXPECT_EQ(before.cell(0, *before.weekOf(day("2026-05-05"))).nectar, 2);
  EXPECT_EQ(after.cell(0, *after.weekOf(day("2026-05-05"))).nectar, 0);
  EXPECT_EQ(after.cell(0, *after.weekOf(day("2026-05-20"))).nectar, 2);
  EXPECT_FALSE(shiftedFlow(season, flow(1, 2, 1), 3).ok());      // there is none
  EXPECT_FALSE(shiftedFlow(season, flow(125, 140, 2), 7).ok());  // another one is there
  const auto turned = shiftedFlow(with(season, flow(360, 364, 1)), flow(360, 364, 1), 5);
  ASSERT_TRUE(turned.ok());
  EXPECT_EQ(apiary::fromRow<apiary::Flow>(*turned.value()[1].after).fromDay, 365);
  EXPECT_EQ(apiary::fromRow<apiary::Flow>(*turned.value()[1].after).toDay, 4);
  const auto change = compared(before, after, base::YardId("TR"));
  EXPECT_GT(change.hoursMostBefore, 0);
  EXPECT_GT(change.readyMostBefore, 0);
}

}  // namespace
}  // namespace outyard::planning::testing
