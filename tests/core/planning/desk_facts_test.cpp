// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/desk_facts.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/planning/spring_yard.h"

namespace outyard::planning::testing {
namespace {

using tests::day;

DueTask task(const char* yard, const char* hive, const char* rule, const char* earliest,
             const char* latest, double chance = 1) {
  DueTask t;
  t.rule = rule;
  t.kind = "look";
  t.yard = base::YardId(yard);
  if (*hive) t.hive = base::HiveId(hive);
  t.earliest = day(earliest);
  t.latest = day(latest);
  t.date = std::max(t.earliest, day(kSpringDay));
  t.chance = chance;
  return t;
}
DueList listOf(std::vector<DueTask> tasks, std::vector<const char*> yards = {"TR"}) {
  DueList list;
  list.ask.from = day(kSpringDay);
  list.ask.to = list.ask.from.plusDays(13);
  list.tasks = std::move(tasks);
  for (const char* y : yards) list.yards.push_back({base::YardId(y), {}, std::nullopt});
  return list;
}
forecast::LookCheck check(const char* date, double low, double high, double seen) {
  return {day(date), {(low + high) / 2, low, high}, seen, 7};
}

TEST(DeskFacts, YardsWorkedOutOneByOneMakeTheSameListAsAllTogether) {
  SpringYard made;
  made.small("TR-01").strong("TR-02");
  made.addYard("MB");
  made.queenless("MB-01").strong("MB-02");
  DueAsk ask;
  ask.from = day(kSpringDay);
  ask.to = ask.from.plusDays(13);
  ask.members = 32;
  base::Progress quiet;
  const auto whole = whatFallsDue(made.season(), ask, 1, quiet);
  std::vector<DueList> parts;
  for (const char* yard : {"TR", "MB"}) {  // not in their order
    ask.yards = {base::YardId(yard)};
    parts.push_back(whatFallsDue(made.season(), ask, 1, quiet));
  }
  const auto list = joined({&parts[0], &parts[1]});
  ASSERT_GT(whole.tasks.size(), 3U);
  ASSERT_EQ(list.tasks.size(), whole.tasks.size());
  for (std::size_t i = 0; i < whole.tasks.size(); ++i) {
    EXPECT_EQ(list.tasks[i].rule, whole.tasks[i].rule) << i;
    EXPECT_EQ(list.tasks[i].hive, whole.tasks[i].hive) << i;
    EXPECT_EQ(list.tasks[i].chance, whole.tasks[i].chance) << i;
  }
  ASSERT_EQ(list.yards.size(), 2U);
  EXPECT_EQ(list.yards[0].yard, base::YardId("MB"));
  EXPECT_EQ(list.forecasts.size(), 4U);
  ASSERT_EQ(list.notes.size(), whole.notes.size());  // no weather in either; each said once
  for (const auto& note : whole.notes) {
    EXPECT_EQ(std::count(list.notes.begin(), list.notes.end(), note), 1) << note.key;
  }
  EXPECT_TRUE(joined({}).tasks.empty());
}

TEST(DeskFacts, AHiveAtRiskStandsOnceWithAllThatPresses) {
  const auto list = listOf({task("TR", "TR-01", "no_room", "2026-04-25", "2026-05-01"),
                            task("TR", "TR-02", "queen_check", "2026-04-25", "2026-04-30"),
                            task("TR", "TR-01", "stores_out", "2026-04-25", "2026-04-28", 0.5),
                            task("TR", "TR-03", "open", "2026-04-25", "2026-04-28"),
                            task("TR", "TR-04", "stores_out", "2026-04-25", "2026-04-26", 0.3)});
  const auto risk = hivesAtRisk(list);
  ASSERT_EQ(risk.size(), 2U);  // an old look is no risk, nor is a chance under one in three
  EXPECT_EQ(risk[0].hive, base::HiveId("TR-02"));
  EXPECT_EQ(risk[1].hive, base::HiveId("TR-01"));
  EXPECT_EQ(risk[1].tasks, (std::vector<std::size_t>{2, 0}));  // stores before room
}

TEST(DeskFacts, YardsThatPressComeFirstAndOverdueWorkLeads) {
  auto list = listOf({task("AB", "AB-01", "open", "2026-04-26", "2026-05-02"),
                      task("AB", "AB-02", "open", "2026-04-10", "2026-04-17"),
                      task("AB", "AB-03", "open", "2026-04-12", "2026-04-15"),
                      task("TR", "TR-01", "queen_check", "2026-04-25", "2026-04-25"),
                      task("TR", "TR-02", "queen_check", "2026-04-20", "2026-04-24"),
                      task("TR", "TR-03", "queen_check", "2026-04-25", "2026-04-30")},
                     {"AA", "AB", "MB", "TR"});
  list.yards[2].foulBrood = base::HiveId("MB-07");
  const auto work = workByYard(list, hivesAtRisk(list));
  ASSERT_EQ(work.size(), 4U);
  EXPECT_EQ(work[0].yard, base::YardId("MB"));  // foul brood before everything
  EXPECT_EQ(work[1].yard, base::YardId("TR"));
  EXPECT_EQ(work[1].pressing, 3);
  EXPECT_EQ(work[1].overdue, 1);  // the window that ends today is not over
  EXPECT_EQ(work[2].yard, base::YardId("AB"));
  EXPECT_EQ(work[2].overdue, 2);
  EXPECT_EQ(work[2].tasks, (std::vector<std::size_t>{2, 1, 0}));  // the longest overdue first
  EXPECT_EQ(work[3].yard, base::YardId("AA"));
  EXPECT_TRUE(work[3].tasks.empty());
  EXPECT_EQ(list.yards[work[3].days].yard, base::YardId("AA"));
}

TEST(DeskFacts, GearIsShortBySoManyAndUncountedGearIsNamed) {
  SpringYard made;
  made.small("TR-01").strong("TR-02");
  apiary::GearCount count;
  count.item = "super:langstroth_deep";
  count.place = "shed";
  count.date = day("2026-04-01");
  count.count = 1;
  made.put(count);
  auto box = task("TR", "TR-01", "add_box", "2026-04-25", "2026-05-01");
  box.kind = "supered";
  box.gear = "super:langstroth_deep";
  box.unit = apiary::Unit::Boxes;
  box.amount = 2;
  auto feed = task("TR", "TR-02", "feed", "2026-04-25", "2026-05-01");
  feed.kind = "fed";
  feed.gear = "feeder";
  feed.what = apiary::Goods::Syrup11;
  feed.amount = 4;
  feed.unit = apiary::Unit::L;
  const auto need = gearNeed(made.season(), listOf({feed, box}));
  ASSERT_EQ(need.missing.size(), 1U);
  EXPECT_EQ(need.missing[0].item.item, "super:langstroth_deep");
  EXPECT_EQ(need.missing[0].item.missing(), 1);
  EXPECT_EQ(need.missing[0].tasks, std::vector<std::size_t>{1});
  ASSERT_EQ(need.uncounted.size(), 2U);  // feeder and syrup
  EXPECT_TRUE(need.anything);
  EXPECT_FALSE(gearNeed(made.season(), listOf({})).anything);
}

TEST(DeskFacts, ALookOutsideIsSaidInWholeSeams) {
  SpringYard made;
  made.small("TR-01", 2.5).strong("TR-02", 9);
  auto list = listOf({});
  forecast::ColonyForecast few, many, old;
  few.colony = base::ColonyId("TR-01");
  few.checks = {check("2026-04-10", 4000, 6000, 5000), check(kSeenDay, 6000, 9000, 3000)};
  many.colony = base::ColonyId("TR-02");
  many.checks = {check(kSeenDay, 5000, 7000, 15000)};
  many.surprises = {{day(kSeenDay), false, true, 20000, 9000},
                    {day(kSeenDay), false, true, 16, 4, true},
                    {day("2026-04-02"), false, true, 20000, 100}};
  list.forecasts = {few, many};
  const auto looks = lastLooks(made.season(), list);
  EXPECT_EQ(looks.looks, 2);
  ASSERT_EQ(looks.outside.size(), 4U);
  EXPECT_EQ(looks.outside[0].hive, base::HiveId("TR-01"));
  EXPECT_TRUE(looks.outside[0].fewer);
  EXPECT_EQ(looks.outside[0].seen, 2.5);  // as it was counted, not worked back from the bees
  EXPECT_EQ(lookText(looks.outside[0]).key, "planning.desk.seams");
  EXPECT_FALSE(looks.outside[1].fewer);
  EXPECT_EQ(lookHint(looks.outside[1]).key, "planning.desk.hint_more");
  EXPECT_TRUE(looks.outside[2].brood);
  EXPECT_EQ(std::get<std::int64_t>(lookText(looks.outside[2]).args[0]), 45);
  EXPECT_FALSE(looks.outside[3].brood);
  EXPECT_EQ(lookText(looks.outside[3]),
            base::message("planning.desk.less_stores", std::int64_t{25}));
  EXPECT_EQ(lookHint(looks.outside[3]).key, "planning.desk.hint_less_stores");
  LookOutside far = looks.outside[2];
  far.fewer = false;
  far.share = 43.5;
  EXPECT_EQ(lookText(far).key, "planning.desk.far_more_brood");
  // Three weeks later these looks are no news.
  list.ask.from = day(kSeenDay).plusDays(14);
  EXPECT_EQ(lastLooks(made.season(), list).looks, 0);
}

TEST(DeskFacts, WhatWholeSeamsDoNotShowIsNoSurprise) {
  SpringYard made;
  made.small("TR-01", 2.5);
  const auto hive = apiary::hiveOn(made.season(), base::HiveId("TR-01"), day(kSpringDay));
  const auto figures = strength::framesMeant(made.season(), hive, base::ColonyId("TR-01")).figures;
  const auto bees = [&](double seams) { return strength::beesFromSeams(seams, figures); };
  auto list = listOf({});
  forecast::ColonyForecast f;
  f.colony = base::ColonyId("TR-01");
  // Counted 2.5 seams, rounded 3; expected 2.6 to 3.4, rounded 3 to 3.
  f.checks = {check(kSeenDay, bees(2.6), bees(3.4), bees(2.5))};
  list.forecasts = {f};
  EXPECT_TRUE(lastLooks(made.season(), list).outside.empty());
  list.forecasts[0].checks = {check(kSeenDay, bees(3.6), bees(4.4), bees(2.5))};
  const auto looks = lastLooks(made.season(), list);
  ASSERT_EQ(looks.outside.size(), 1U);
  EXPECT_EQ(lookText(looks.outside[0]).key, "planning.desk.seams_one");
}

TEST(DeskFacts, TrustCountsTheLastLooks) {
  auto list = listOf({});
  EXPECT_EQ(trustOf(list), (Trust{0, 0}));
  forecast::ColonyForecast a, b;
  a.colony = base::ColonyId("A");
  a.checks = {check("2026-04-01", 10, 20, 30), check("2026-04-10", 10, 20, 10)};
  b.colony = base::ColonyId("B");
  b.checks = {check("2026-04-05", 10, 20, 9), check("2026-04-12", 10, 20, 20)};
  list.forecasts = {a, b};
  EXPECT_EQ(trustOf(list), (Trust{4, 2}));
  EXPECT_EQ(trustOf(list, 2), (Trust{2, 2}));  // the last two, of both colonies
  EXPECT_EQ(trustOf(list, 3), (Trust{3, 2}));
  EXPECT_EQ(trustOf(list, 0), (Trust{0, 0}));
}

}  // namespace
}  // namespace outyard::planning::testing
