// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/tables.h"
#include "core/planning/rounds.h"
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using apiary::Task;
using apiary::TaskState;
using apiary::Visit;
using base::TaskId;
using base::VisitId;
using testing::ElementsAre;

std::string plainWord(const base::Message& m) {
  return m.key;
}

struct VisitsTest : CommandsTest {
  const Date later = d.plusDays(3);

  static Visit visit(const char* yard, Date date, const char* id = "") {
    Visit v;
    v.visit = VisitId{id};
    v.yard = YardId{yard};
    v.date = date;
    return v;
  }
  static Task work(const char* hive, const char* id = "") {
    Task t;
    t.task = TaskId{id};
    t.kind = "open";
    t.hive = HiveId{hive};
    return t;
  }
  /// Two tasks planned in TR, one in MB, and a visit to TR that takes the first.
  void someWork() {
    mustDo(addTasks({work("TR-01", "T1"), work("TR-02", "T2"), work("MB-01", "T3")}));
    mustDo(addVisit(visit("TR", d, "V1"), {TaskId{"T1"}}));
  }
  const Task& task(const char* id) const { return *season().find<Task>(id); }
  const Visit* find(const char* id) const { return season().find<Visit>(id); }
};

TEST_F(VisitsTest, AVisitTakesItsTasksAndGivesThemItsDay) {
  Visit v = visit("TR", d);
  v.time = base::TimeOfDay::fromHm(9, 30);
  v.notes = "gate key from the neighbour";
  mustDo(addTasks({work("TR-01", "T1"), work("TR-02", "T2")}));
  mustDo(addVisit(v, {TaskId{"T1"}, TaskId{"T2"}}));
  EXPECT_EQ(session->undoTitle()->key, "session.title.add_visit");
  ASSERT_EQ(season().table<Visit>().size(), 1U);
  const Visit& made = season().table<Visit>().begin()->second;
  EXPECT_EQ(made.notes, v.notes);
  EXPECT_EQ(made.time, v.time);
  EXPECT_FALSE(made.visit.blank());
  for (const char* id : {"T1", "T2"}) {
    EXPECT_EQ(task(id).visit, made.visit);
    EXPECT_EQ(task(id).plannedOn, d);
  }
}

TEST_F(VisitsTest, TheDayOfTheWorkMovesWithTheVisit) {
  someWork();
  mustDo(moveVisit(VisitId{"V1"}, later));
  EXPECT_EQ(find("V1")->date, later);
  EXPECT_EQ(task("T1").plannedOn, later);
  EXPECT_FALSE(task("T2").plannedOn);
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(find("V1")->date, d);
  EXPECT_EQ(task("T1").plannedOn, d);
  ASSERT_TRUE(session->redo().ok());
  EXPECT_EQ(task("T1").plannedOn, later);
}

TEST_F(VisitsTest, SeveralVisitsMoveInOneStep) {
  someWork();
  mustDo(addVisit(visit("MB", d, "V2"), {TaskId{"T3"}}));
  mustDo(moveVisits({VisitId{"V1"}, VisitId{"V2"}}, later));
  EXPECT_EQ(task("T1").plannedOn, later);
  EXPECT_EQ(task("T3").plannedOn, later);
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(find("V1")->date, d);
  EXPECT_EQ(find("V2")->date, d);
}

TEST_F(VisitsTest, WhatWasDoneHoldsTheVisitOnItsDay) {
  someWork();
  mustDo(setTaskState(TaskId{"T1"}, TaskState::Done, d));
  EXPECT_THAT(refused(moveVisit(VisitId{"V1"}, later)), ElementsAre("session.visit_was_made"));
}

TEST_F(VisitsTest, OneVisitOfAYardOnADay) {
  someWork();
  EXPECT_THAT(refused(addVisit(visit("TR", d))), ElementsAre("session.visit_that_day"));
  mustDo(addVisit(visit("TR", later, "V2")));
  EXPECT_THAT(refused(moveVisit(VisitId{"V2"}, d)), ElementsAre("session.visit_that_day"));
  // Both to the same third day: the one would stand on the other.
  EXPECT_THAT(refused(moveVisits({VisitId{"V1"}, VisitId{"V2"}}, later.plusDays(1))),
              ElementsAre("session.visit_that_day"));
}

TEST_F(VisitsTest, TimeAndNotes) {
  someWork();
  mustDo(editVisit(VisitId{"V1"}, base::TimeOfDay::fromHm(7, 0), "take the short ladder"));
  EXPECT_EQ(find("V1")->notes, "take the short ladder");
  EXPECT_EQ(find("V1")->time->text(), "07:00");
  mustDo(editVisit(VisitId{"V1"}, std::nullopt, ""));
  EXPECT_FALSE(find("V1")->time);
  EXPECT_THAT(refused(editVisit(VisitId{"V1"}, std::nullopt, std::string(5000, 'x'))),
              ElementsAre("session.bad_value"));
}

TEST_F(VisitsTest, ARemovedVisitLeavesItsWorkPlannedForNoDay) {
  someWork();
  mustDo(removeVisits({VisitId{"V1"}}));
  EXPECT_EQ(find("V1"), nullptr);
  EXPECT_EQ(task("T1").state, TaskState::Planned);
  EXPECT_FALSE(task("T1").visit);
  EXPECT_FALSE(task("T1").plannedOn);
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(task("T1").visit, VisitId{"V1"});
}

TEST_F(VisitsTest, WorkGoesInAndOut) {
  someWork();
  mustDo(putIntoVisit(VisitId{"V1"}, {TaskId{"T2"}}, {work("TR-03"), work("TR-04", "T9")}));
  EXPECT_EQ(session->undoTitle()->key, "session.title.put_several_into_visit");
  EXPECT_EQ(task("T2").visit, VisitId{"V1"});
  EXPECT_EQ(task("T9").plannedOn, d);
  EXPECT_EQ(season().table<Task>().size(), 5U);
  mustDo(takeOutOfVisit({TaskId{"T1"}, TaskId{"T9"}}));
  EXPECT_FALSE(task("T1").visit);
  EXPECT_FALSE(task("T9").plannedOn);
  EXPECT_EQ(task("T2").visit, VisitId{"V1"});
  ASSERT_TRUE(session->undo().ok());
  ASSERT_TRUE(session->undo().ok());
  EXPECT_FALSE(season().find<Task>("T9"));
}

TEST_F(VisitsTest, WhatDoesNotFitIsRefused) {
  someWork();
  EXPECT_THAT(refused(putIntoVisit(VisitId{"V1"}, {TaskId{"T3"}})),
              ElementsAre("session.task_of_other_yard"));
  EXPECT_THAT(refused(putIntoVisit(VisitId{"V1"}, {}, {work("MB-01")})),
              ElementsAre("session.task_of_other_yard"));
  EXPECT_THAT(refused(putIntoVisit(VisitId{"V1"}, {}, {work("XX-01")})),
              ElementsAre("session.unknown_hive"));
  EXPECT_THAT(refused(putIntoVisit(VisitId{"V7"}, {TaskId{"T2"}})),
              ElementsAre("session.unknown_visit"));
  EXPECT_THAT(refused(putIntoVisit(VisitId{"V1"}, {TaskId{"T7"}})),
              ElementsAre("session.unknown_task"));
  EXPECT_THAT(refused(takeOutOfVisit({TaskId{"T2"}})), ElementsAre("session.task_in_no_visit"));
  EXPECT_THAT(refused(moveVisit(VisitId{"V7"}, d)), ElementsAre("session.unknown_visit"));
  EXPECT_THAT(refused(removeVisits({VisitId{"V7"}})), ElementsAre("session.unknown_visit"));
  EXPECT_THAT(refused(addVisit(visit("XX", d))), ElementsAre("session.unknown_yard"));
  EXPECT_THAT(refused(addVisit(visit("MB", d, "V1"))), ElementsAre("session.visit_exists"));
  mustDo(setTaskState(TaskId{"T2"}, TaskState::Dropped, std::nullopt));
  EXPECT_THAT(refused(putIntoVisit(VisitId{"V1"}, {TaskId{"T2"}})),
              ElementsAre("session.task_closed"));
}

// --- a whole round ------------------------------------------------------------------------------

struct Proposed {
  planning::DueList due;
  planning::RoundsPlan plan;
};
/// TR on the day (its planned task and a new one), MB three days later.
Proposed proposal(Date d) {
  Proposed out;
  const auto piece = [&](const char* yard, const char* hive) {
    planning::DueTask t;
    t.rule = t.kind = "open";
    t.yard = YardId{yard};
    t.hive = HiveId{hive};
    t.date = t.earliest = d;
    t.latest = d.plusDays(7);
    t.why = base::message("planning.due.planned");
    return t;
  };
  out.due.tasks = {piece("TR", "TR-01"), piece("TR", "TR-02"), piece("MB", "MB-01")};
  out.due.tasks[0].task = TaskId{"T1"};
  const auto stop = [](const char* yard, std::vector<std::size_t> tasks) {
    planning::RoundStop s;
    s.yard = YardId{yard};
    s.tasks = std::move(tasks);
    return s;
  };
  planning::RoundDay first, second;
  first.date = d;
  first.stops = {stop("TR", {0, 1})};
  second.date = d.plusDays(3);
  second.stops = {stop("MB", {2})};
  out.plan.days = {first, second};
  return out;
}

TEST_F(VisitsTest, AWholeRoundIsOneStep) {
  mustDo(addTask(work("TR-01", "T1")));
  const Proposed p = proposal(d);
  mustDo(acceptRounds(roundVisits(season(), p.plan, p.due, plainWord)));
  EXPECT_EQ(session->undoTitle()->key, "session.title.accept_rounds");
  EXPECT_EQ(season().table<Visit>().size(), 2U);
  ASSERT_EQ(season().table<Task>().size(), 3U);
  for (const auto& [key, t] : season().table<Task>()) {
    ASSERT_TRUE(t.visit);
    EXPECT_EQ(t.plannedOn, season().find<Visit>(t.visit->str())->date);
    EXPECT_EQ(t.plannedOn, t.hive == HiveId{"MB-01"} ? later : d);
    if (t.task != TaskId{"T1"}) {
      EXPECT_EQ(t.why, "planning.due.planned");
    }
  }
  ASSERT_TRUE(session->undo().ok());
  EXPECT_TRUE(season().table<Visit>().empty());
  EXPECT_EQ(season().table<Task>().size(), 1U);
}

TEST_F(VisitsTest, OneDayOfARoundAlone) {
  mustDo(addTask(work("TR-01", "T1")));
  const Proposed p = proposal(d);
  mustDo(acceptRounds(roundVisits(season(), p.plan, p.due, plainWord, later)));
  ASSERT_EQ(season().table<Visit>().size(), 1U);
  EXPECT_EQ(season().table<Visit>().begin()->second.yard, YardId{"MB"});
  EXPECT_FALSE(task("T1").visit);
}

TEST_F(VisitsTest, AVisitThatStandsIsFilledNotDoubled) {
  mustDo(addTask(work("TR-01", "T1")));
  mustDo(addVisit(visit("TR", d, "V1")));
  const Proposed p = proposal(d);
  const auto visits = roundVisits(season(), p.plan, p.due, plainWord);
  mustDo(acceptRounds(visits));
  EXPECT_EQ(season().table<Visit>().size(), 2U);
  EXPECT_EQ(task("T1").visit, VisitId{"V1"});
  // Made from the season before it was moved, it does not fit any more.
  ASSERT_TRUE(session->undo().ok());
  mustDo(moveVisit(VisitId{"V1"}, d.plusDays(1)));
  EXPECT_THAT(refused(acceptRounds(visits)), ElementsAre("session.visit_changed"));
}

TEST_F(VisitsTest, ARoundThatDoesNotFitChangesNothing) {
  mustDo(addTask(work("TR-01", "T1")));
  RoundVisit one{visit("TR", d), false, {TaskId{"T1"}}, {}};
  RoundVisit two{visit("TR", later), false, {TaskId{"T1"}}, {}};
  EXPECT_THAT(refused(acceptRounds({one, two})), ElementsAre("session.task_twice"));
  two.visit.date = d;
  two.planned.clear();
  EXPECT_THAT(refused(acceptRounds({one, two})), ElementsAre("session.visit_that_day"));
  two = {visit("XX", d), false, {}, {}};
  EXPECT_THAT(refused(acceptRounds({one, two})), ElementsAre("session.unknown_yard"));
}

TEST_F(VisitsTest, GoesThroughTheExchangeTablesAndBack) {
  mustDo(addTask(work("TR-01", "T1")));
  const Proposed p = proposal(d);
  auto visits = roundVisits(season(), p.plan, p.due, plainWord);
  visits[0].visit.time = base::TimeOfDay::fromHm(8, 15);
  visits[0].visit.notes = "quiet, the \"bull\" is out; two gates";
  mustDo(acceptRounds(visits));
  exchange::MemorySink sink;
  base::Progress quiet;
  ASSERT_TRUE(exchange::exportTables(season(), sink, quiet).ok());
  const exchange::MemorySource files(sink.files());
  const auto read = exchange::planImport(apiary::Season{}, files, d, quiet);
  ASSERT_TRUE(read.ok()) << (read.faults.empty() ? "" : exchange::placeText(read.faults[0]));
  apiary::Season back;
  back.apply(read.changes);
  EXPECT_EQ(back.table<Visit>(), season().table<Visit>());
  EXPECT_EQ(back.table<Task>(), season().table<Task>());
}

}  // namespace
}  // namespace outyard::session
