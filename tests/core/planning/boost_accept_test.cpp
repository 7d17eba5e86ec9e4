// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/apiary/validate.h"
#include "tests/core/planning/spring_yard.h"

namespace outyard::planning {
namespace {

using apiary::Task;
using testing::planOf;
using testing::springRequest;
using testing::SpringYard;
using tests::day;

std::string key(const base::Message& m) {
  return m.key;
}

std::vector<const Task*> ofKind(const AcceptedPlan& a, const std::string& kind) {
  std::vector<const Task*> out;
  for (const auto& t : a.tasks) {
    if (t.kind == kind) out.push_back(&t);
  }
  return out;
}

AcceptedPlan acceptedOf(const apiary::Season& season) {
  base::SeededIds ids(5);
  return accept(planOf(season, springRequest()), ids, "2026-04-24T19:00:00Z", key);
}

TEST(AcceptPlan, AStackAsksForALookAndForTakingOff) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02").warm("2026-04-25");
  const AcceptedPlan a = acceptedOf(yard.season());
  EXPECT_EQ(a.plan.yard.str(), "TR");
  EXPECT_EQ(a.plan.basis, "strength_now");
  EXPECT_EQ(a.plan.acceptedAt, "2026-04-24T19:00:00Z");
  ASSERT_EQ(a.rows.size(), 1U);
  EXPECT_EQ(a.rows[0].option, "stack:TR-01:TR-02:1");
  EXPECT_EQ(a.rows[0].plan, a.plan.plan);
  EXPECT_NE(a.rows[0].why.find("planning.why.stack"), std::string::npos);
  ASSERT_EQ(a.tasks.size(), 3U);

  const auto stacked = ofKind(a, "stacked");
  ASSERT_EQ(stacked.size(), 1U);
  EXPECT_EQ(stacked[0]->hive->str(), "TR-01");
  EXPECT_EQ(stacked[0]->otherHive->str(), "TR-02");
  EXPECT_EQ(stacked[0]->colony->str(), "TR-01");
  EXPECT_EQ(stacked[0]->otherColony->str(), "TR-02");
  EXPECT_EQ(stacked[0]->dueOn, day("2026-04-25"));
  // Seen on 22 April: the look carries the plan to 2 May.
  EXPECT_EQ(stacked[0]->latest, day("2026-05-02"));
  EXPECT_EQ(stacked[0]->plan, a.plan.plan);
  EXPECT_EQ(stacked[0]->method, apiary::Method::Stack);
  EXPECT_EQ(stacked[0]->state, apiary::TaskState::Planned);

  // One return at 7 to 9 days, then 3 to 4 weeks; both at the hive where the colony then lives.
  const auto look = ofKind(a, "look");
  ASSERT_EQ(look.size(), 1U);
  EXPECT_EQ(look[0]->earliest, day("2026-05-02"));
  EXPECT_EQ(look[0]->latest, day("2026-05-04"));
  EXPECT_EQ(look[0]->hive->str(), "TR-02");
  EXPECT_EQ(look[0]->colony->str(), "TR-01");
  const auto off = ofKind(a, "unstacked");
  ASSERT_EQ(off.size(), 1U);
  EXPECT_EQ(off[0]->earliest, day("2026-05-16"));
  EXPECT_EQ(off[0]->latest, day("2026-05-23"));
}

TEST(AcceptPlan, AUnionKeepsTheHiveWithTheGoodQueen) {
  SpringYard yard;
  yard.queenless("TR-01").strong("TR-02").warm("2026-04-25");
  const AcceptedPlan a = acceptedOf(yard.season());
  const auto united = ofKind(a, "united");
  ASSERT_EQ(united.size(), 1U);
  EXPECT_EQ(united[0]->hive->str(), "TR-02");
  EXPECT_EQ(united[0]->otherHive->str(), "TR-01");
}

TEST(AcceptPlan, RowsAndTasksPassTheChecksOfTheSeasonFile) {
  SpringYard yard;
  yard.small("TR-01").small("TR-02", 4).queenless("TR-03").strong("TR-04").strong("TR-05", 11);
  yard.warm("2026-04-25");
  const AcceptedPlan a = acceptedOf(yard.season());
  EXPECT_TRUE(apiary::checkRow(apiary::toRow(a.plan)).empty());
  for (const auto& r : a.rows) EXPECT_TRUE(apiary::checkRow(apiary::toRow(r)).empty()) << r.option;
  std::set<std::string> ids;
  for (const auto& t : a.tasks) {
    EXPECT_TRUE(apiary::checkRow(apiary::toRow(t)).empty()) << t.kind;
    EXPECT_TRUE(ids.insert(t.task.str()).second);
    EXPECT_TRUE(t.kind == "look" || apiary::parseCode<apiary::EventKind>(t.kind)) << t.kind;
    EXPECT_FALSE(t.why.empty());
    EXPECT_LE(*t.earliest, *t.latest);
  }
  EXPECT_GE(a.tasks.size(), 3U);
}

TEST(AcceptPlan, LeavingAColonyAsksForNothing) {
  SpringYard yard;
  yard.small("TR-01").warm("2026-04-25");
  const AcceptedPlan a = acceptedOf(yard.season());
  ASSERT_EQ(a.rows.size(), 1U);
  EXPECT_EQ(a.rows[0].option, "leave:TR-01::0");
  EXPECT_TRUE(a.tasks.empty());
}

TEST(AcceptPlan, TheSameIdsFromTheSameSource) {
  SpringYard yard;
  yard.small("TR-01").strong("TR-02").warm("2026-04-25");
  const AcceptedPlan a = acceptedOf(yard.season()), b = acceptedOf(yard.season());
  EXPECT_EQ(a.plan, b.plan);
  EXPECT_EQ(a.rows, b.rows);
  EXPECT_EQ(a.tasks, b.tasks);
}

}  // namespace
}  // namespace outyard::planning
