// SPDX-License-Identifier: GPL-3.0-or-later
// What falls due in whole seasons: small ones built here, and the sample season as committed.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <set>

#include "core/exchange/calendar.h"
#include "core/exchange/tables.h"
#include "core/planning/due.h"
#include "tests/core/planning/spring_yard.h"

namespace outyard::planning::testing {
namespace {

using tests::day;

DueList dueOf(const apiary::Season& season, const char* from, const char* to, int threads = 1) {
  DueAsk ask;
  ask.from = day(from);
  ask.to = day(to);
  ask.members = 64;
  base::Progress quiet;
  return whatFallsDue(season, ask, threads, quiet);
}
const DueTask* find(const DueList& list, const std::string& hive, const std::string& rule) {
  for (const auto& t : list.tasks) {
    if (t.rule == rule && t.hive == base::HiveId(hive)) return &t;
  }
  return nullptr;
}

TEST(DueList, FollowsRecordsAndJudgements) {
  SpringYard made;
  made.small("TR-01").strong("TR-02").queenless("TR-03");
  const auto list = dueOf(made.season(), "2026-04-25", "2026-05-23");
  ASSERT_EQ(list.yards.size(), 1U);
  EXPECT_EQ(list.forecasts.size(), 3U);
  ASSERT_TRUE(find(list, "TR-03", "queen_check"));
  EXPECT_EQ(find(list, "TR-03", "queen_check")->latest, day("2026-04-29"));
  ASSERT_TRUE(find(list, "TR-01", "open"));
  EXPECT_EQ(find(list, "TR-01", "open")->why.key, "planning.due.open_small");
  EXPECT_TRUE(find(list, "TR-02", "wash"));
  for (const auto& t : list.tasks) {
    EXPECT_LE(t.earliest, t.latest) << t.rule;
    EXPECT_LE(t.earliest, list.ask.to) << t.rule;
    EXPECT_GE(t.date, list.ask.from) << t.rule;
    EXPECT_GE(t.chance, 0) << t.rule;
    EXPECT_LE(t.chance, 1) << t.rule;
  }
  // A yard without weather is named, and nothing fails.
  EXPECT_TRUE(std::any_of(list.notes.begin(), list.notes.end(),
                          [](const auto& m) { return m.key == "planning.due.no_weather"; }));
}

TEST(DueList, APlannedTaskStandsForItsRule) {
  SpringYard made;
  made.queenless("TR-03");
  apiary::Task t;
  t.task = base::TaskId("t1");
  t.kind = "look";
  t.yard = base::YardId("TR");
  t.hive = base::HiveId("TR-03");
  t.earliest = day("2026-04-26");
  t.latest = day("2026-04-30");
  t.why = "test comb";
  made.put(t);
  const auto list = dueOf(made.season(), "2026-04-25", "2026-05-23");
  EXPECT_FALSE(find(list, "TR-03", "queen_check"));
  const auto* planned = find(list, "TR-03", "planned");
  ASSERT_TRUE(planned);
  EXPECT_EQ(planned->task, base::TaskId("t1"));
  EXPECT_EQ(planned->plannedWhy, "test comb");
  DueAsk bare;
  bare.from = day("2026-04-25");
  bare.to = day("2026-05-23");
  bare.members = 32;
  bare.planned = false;
  base::Progress quiet;
  EXPECT_TRUE(find(whatFallsDue(made.season(), bare, 1, quiet), "TR-03", "queen_check"));
}

TEST(DueList, FoulBroodBarsWhatMovesAndCallsTheInspector) {
  SpringYard made;
  made.small("TR-01").strong("TR-02");
  made.inspection("TR-02", "2026-04-23", [](apiary::Inspection& i) {
    i.disease = apiary::Disease::SuspectAfb;
    i.seams = 9;
  });
  const auto list = dueOf(made.season(), "2026-04-25", "2026-06-23");
  EXPECT_TRUE(find(list, "TR-02", "inspector"));
  for (const auto& t : list.tasks) {
    EXPECT_FALSE(t.rule == "split" || t.rule == "add_box" || t.rule == "no_room" ||
                 t.rule == "separate")
        << t.rule;
  }
  ASSERT_FALSE(atRisk(list).empty());
  EXPECT_EQ(list.tasks[atRisk(list).front()].rule, "inspector");
}

TEST(DueList, EmptySeasonsAndTurnedDatesGiveNothing) {
  EXPECT_TRUE(dueOf(apiary::Season{}, "2026-04-25", "2026-05-23").tasks.empty());
  SpringYard made;
  made.small("TR-01");
  EXPECT_TRUE(dueOf(made.season(), "2026-05-23", "2026-04-25").tasks.empty());
}

TEST(DueList, TheTaskThatIsPlannedFromIt) {
  SpringYard made;
  made.queenless("TR-03");
  const auto list = dueOf(made.season(), "2026-04-25", "2026-05-23");
  const auto* due = find(list, "TR-03", "queen_check");
  ASSERT_TRUE(due);
  const auto task = taskOf(*due, base::TaskId("new"), [](const base::Message& m) { return m.key; });
  EXPECT_EQ(task.kind, "look");
  // A task knows the kind of work only: the rule's own name goes into the reason.
  EXPECT_EQ(task.why, dueName(*due).key + ": planning.due.queen_doubt");
  EXPECT_EQ(task.state, apiary::TaskState::Planned);
}

TEST(DueList, OnlyAFewHivesOfAYardAreWashedWhenNothingPointsAtThem) {
  SpringYard made;
  for (int i = 1; i <= 9; ++i) made.strong("TR-0" + std::to_string(i), 8);
  const auto list = dueOf(made.season(), "2026-04-25", "2026-05-10");
  std::size_t washes = 0, pointed = 0;
  for (const auto& t : list.tasks) {
    washes += t.rule == "wash" ? 1 : 0;
    pointed += t.rule == "wash" && t.chance >= 0.2 ? 1 : 0;
  }
  EXPECT_EQ(washes, std::max<std::size_t>(3, pointed));
}

TEST(DueList, StoresRunOutWhereNobodyIsSaidToFeed) {
  SpringYard made;
  made.livingHive("TR-01", "TR", 3, 1, 2);
  made.inspection("TR-01", "2026-04-24", [](apiary::Inspection& i) {
    i.seams = 9;
    i.eggsSeen = true;
    i.honeyKg = 3;
  });
  const auto list = dueOf(made.season(), "2026-04-25", "2026-05-10");
  EXPECT_TRUE(find(list, "TR-01", "stores_out"));
  const auto* feed = find(list, "TR-01", "feed");
  ASSERT_TRUE(feed);
  EXPECT_GT(feed->amount.value(), 3);
}

const apiary::Season& sample() {
  static const apiary::Season season = [] {
    base::Progress quiet;
    const exchange::FolderSource files(std::filesystem::path(OUTYARD_SOURCE_DIR) / "sample");
    apiary::Season s;
    s.apply(exchange::planImport(s, files, day("2026-04-25"), quiet).changes);
    return s;
  }();
  return season;
}

TEST(DueList, SampleSeasonAcrossItsYear) {
  for (const auto& [from, to] :
       {std::pair{"2026-04-25", "2026-05-23"}, std::pair{"2025-10-01", "2025-11-01"}}) {
    const auto list = dueOf(sample(), from, to, 2);
    EXPECT_FALSE(list.tasks.empty()) << from;
    EXPECT_EQ(list.yards.size(), 7U);
    EXPECT_TRUE(std::is_sorted(list.tasks.begin(), list.tasks.end(),
                               [](const auto& a, const auto& b) { return a.date < b.date; }));
  }
  const auto spring = dueOf(sample(), "2026-04-25", "2026-05-23", 2);
  std::set<std::string> rules;
  for (const auto& t : spring.tasks) rules.insert(t.rule);
  for (const char* rule : {"planned", "open", "add_box", "wash", "inspector"}) {
    EXPECT_TRUE(rules.contains(rule)) << rule;
  }
  // Two stacked pairs are in the sample; their taking off is planned already.
  EXPECT_FALSE(rules.contains("separate"));
}

TEST(DueList, TheSameOnOneAndTwoThreads) {
  const auto one = dueOf(sample(), "2026-04-25", "2026-05-10", 1);
  const auto two = dueOf(sample(), "2026-04-25", "2026-05-10", 2);
  ASSERT_EQ(one.tasks.size(), two.tasks.size());
  for (std::size_t i = 0; i < one.tasks.size(); ++i) {
    EXPECT_EQ(one.tasks[i].rule, two.tasks[i].rule);
    EXPECT_EQ(one.tasks[i].hive, two.tasks[i].hive);
    EXPECT_EQ(one.tasks[i].chance, two.tasks[i].chance);
    EXPECT_EQ(one.tasks[i].why, two.tasks[i].why);
  }
}

}  // namespace
}  // namespace outyard::planning::testing
