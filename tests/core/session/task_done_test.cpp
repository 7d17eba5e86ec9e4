// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/task_done.h"

#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using apiary::EventKind;
using apiary::Task;
using apiary::TaskState;
using base::TaskId;
using testing::ElementsAre;
using tests::day;

struct TaskDoneTest : CommandsTest {
  Task plan(const char* id, const char* kind, const char* hive = "TR-01",
            std::function<void(Task&)> fill = {}) {
    Task t;
    t.task = TaskId{id};
    t.kind = kind;
    t.yard = YardId{"TR"};
    t.hive = HiveId{hive};
    t.dueOn = d;
    if (fill) fill(t);
    mustDo(addTask(t));
    return t;
  }
  const Task& task(const char* id) { return *season().find<Task>(id); }
};

TEST_F(TaskDoneTest, SaysWhatMustBeKnown) {
  const auto needs = [&](const Task& t) { return doneNeeds(season(), t, d); };
  EXPECT_EQ(needs(plan("T1", "unwrapped")), DoneNeeds::Day);
  EXPECT_EQ(needs(plan("T2", "look")), DoneNeeds::Look);
  EXPECT_EQ(needs(plan("T3", "harvested")), DoneNeeds::Amount);
  EXPECT_EQ(needs(plan("T4", "fed")), DoneNeeds::Dialog) << "with what is not told";
  EXPECT_EQ(needs(plan("T5", "supered")), DoneNeeds::Dialog);
  Task yard = plan("T6", "note");
  EXPECT_TRUE(doneWrites(season(), yard, d));
  yard.hive.reset();
  EXPECT_EQ(needs(yard), DoneNeeds::Day);
  EXPECT_FALSE(doneWrites(season(), yard, d)) << "work of a whole yard has no record of a hive";
}

TEST_F(TaskDoneTest, DoneWritesTheRecordAndTheTickAsOneStep) {
  const auto one = plan("T1", "fed", "TR-01", [](Task& t) {
    t.what = apiary::Goods::Syrup11;
    t.amount = 4;
    t.unit = apiary::Unit::L;
    t.why = "light";
  });
  const auto two = plan("T2", "unwrapped", "TR-02");
  const auto before = tests::allRows(season());
  mustDo(finishTasks(season(), {one, two}, d.plusDays(2)));
  EXPECT_EQ(task("T1").state, TaskState::Done);
  EXPECT_EQ(task("T1").doneOn, d.plusDays(2));
  EXPECT_EQ(task("T1").doneRecord, lastEvent("TR-01"));
  const auto* fed = season().journal<apiary::Event>(HiveId{"TR-01"}).back();
  EXPECT_EQ(fed->kind, EventKind::Fed);
  EXPECT_EQ(fed->date, d.plusDays(2));
  EXPECT_EQ(fed->amount, 4);
  EXPECT_EQ(fed->task, TaskId{"T1"});
  EXPECT_EQ(task("T2").doneRecord, lastEvent("TR-02"));
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(tests::allRows(season()), before) << "one step";
}

TEST_F(TaskDoneTest, AnAmountThatWasLeftOutIsToldWithTheDay) {
  auto t = plan("T1", "harvested");
  t.amount = 12.5;
  t.unit = apiary::Unit::Kg;
  mustDo(finishTasks(season(), {t}, d));
  const auto* event = season().journal<apiary::Event>(HiveId{"TR-01"}).back();
  EXPECT_EQ(event->kind, EventKind::Harvested);
  EXPECT_EQ(event->amount, 12.5);
  EXPECT_EQ(task("T1").doneRecord, event->record);
}

TEST_F(TaskDoneTest, TheWorkOfADialogNamesItsTask) {
  plan("T1", "treated");
  apiary::Event e;
  e.kind = EventKind::Treated;
  e.hive = HiveId{"TR-01"};
  e.date = d;
  // What the dialog lacks is said as ever, and nothing is ticked.
  EXPECT_THAT(refused(forTask(TaskId{"T1"}, d, recordEvent(e))),
              ElementsAre("session.product_missing"));
  e.method = "strips";
  const auto before = tests::allRows(season());
  mustDo(forTask(TaskId{"T1"}, d, recordEvent(e)));
  EXPECT_EQ(season().journal<apiary::Event>(e.hive).back()->task, TaskId{"T1"});
  EXPECT_EQ(task("T1").state, TaskState::Done);
  EXPECT_EQ(task("T1").doneRecord, lastEvent("TR-01"));
  EXPECT_THAT(refused(forTask(TaskId{"T1"}, d, recordEvent(e))),
              ElementsAre("session.task_closed"));
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(tests::allRows(season()), before);
}

TEST_F(TaskDoneTest, ALookIsTheRecordOfALook) {
  plan("T1", "look");
  apiary::Inspection seen;
  seen.hive = HiveId{"TR-01"};
  seen.date = d;
  seen.seams = 5;
  mustDo(forTask(TaskId{"T1"}, d, recordInspection(seen, {}, {})));
  EXPECT_EQ(task("T1").doneRecord, season().journal<apiary::Inspection>(seen.hive).back()->record);
}

TEST_F(TaskDoneTest, APairIsJoinedByItsTask) {
  plan("T1", "stacked", "TR-01", [](Task& t) { t.otherHive = HiveId{"TR-05"}; });
  mustDo(forTask(TaskId{"T1"}, d, stackOver(stacking("TR-01", "TR-05"))));
  EXPECT_EQ(task("T1").state, TaskState::Done);
  ASSERT_TRUE(task("T1").doneRecord);
  const auto* event = season().find<apiary::Event>(task("T1").doneRecord->str());
  ASSERT_NE(event, nullptr);
  EXPECT_EQ(event->kind, EventKind::Stacked);
  EXPECT_EQ(event->task, TaskId{"T1"});
}

TEST_F(TaskDoneTest, NotDoneIsDueOnAnotherDay) {
  apiary::Visit visit;
  visit.visit = base::VisitId{"V1"};
  visit.yard = YardId{"TR"};
  visit.date = d;
  plan("T1", "look", "TR-01", [&](Task& t) {
    t.earliest = d;
    t.latest = d.plusDays(3);
  });
  plan("T2", "look", "TR-02");
  mustDo(addVisit(visit, {TaskId{"T1"}}));
  apiary::Visit next = visit;
  next.visit = base::VisitId{"V2"};
  next.date = d.plusDays(7);
  mustDo(addVisit(next));

  mustDo(moveTasks({TaskId{"T1"}, TaskId{"T2"}}, d.plusDays(7)));
  EXPECT_EQ(task("T1").visit, next.visit) << "the visit of that day takes it";
  EXPECT_EQ(task("T1").dueOn, d.plusDays(7));
  EXPECT_EQ(task("T1").plannedOn, d.plusDays(7));
  EXPECT_EQ(task("T1").earliest, d);
  EXPECT_EQ(task("T1").latest, d.plusDays(7)) << "no longer overdue before that day";
  EXPECT_FALSE(task("T2").visit);
  mustDo(moveTasks({TaskId{"T1"}}, d.plusDays(9)));
  EXPECT_FALSE(task("T1").visit) << "no visit on that day";
  mustDo(dropTasks({TaskId{"T1"}, TaskId{"T2"}}));
  EXPECT_EQ(task("T1").state, TaskState::Dropped);
  EXPECT_THAT(refused(moveTasks({TaskId{"T1"}}, d)), ElementsAre("session.task_closed"));
  EXPECT_THAT(refused(moveTasks({TaskId{"T9"}}, d)), ElementsAre("session.unknown_task"));
}

}  // namespace
}  // namespace outyard::session
