// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using apiary::Event;
using apiary::EventKind;
using apiary::Inspection;
using apiary::Task;
using apiary::TaskState;
using testing::Contains;
using testing::ElementsAre;

struct StackSteps : CommandsTest {
  const Date week = d.plusDays(8), month = d.plusDays(24);

  void SetUp() override {
    open(tests::smallSeason());
    mustDo(stackOver(stacking("TR-01", "TR-02")));
  }
  base::TaskId planned(const char* id, const char* kind, const char* hive) {
    Task t;
    t.task = base::TaskId{id};
    t.kind = kind;
    t.hive = HiveId{hive};
    t.colony = ColonyId{"TR-01"};
    t.dueOn = week;
    mustDo(addTask(t));
    return t.task;
  }
  StackLook look() const {
    StackLook l;
    l.hive = HiveId{"TR-02"};
    l.upper = ColonyId{"TR-01"};
    l.date = week;
    return l;
  }
  const Task& task(const base::TaskId& id) const { return *season().find<Task>(id.str()); }
};

TEST_F(StackSteps, ALookRecordsThePaperTheQueenAndTheTaskInOneStep) {
  const auto id = planned("look-1", "look", "TR-02");
  StackLook l = look();
  l.paperOpen = true;
  l.eggs = true;
  l.queenCells = 0;
  l.seams = 5;
  l.tasks = {id};
  const auto before = tests::allRows(season());
  mustDo(recordStackLook(l));
  EXPECT_EQ(season().journal<Event>(HiveId{"TR-02"}).back()->kind, EventKind::PaperOpen);
  const Inspection* i = season().journal<Inspection>(HiveId{"TR-02"}).back();
  EXPECT_EQ(i->colony, ColonyId{"TR-01"});
  EXPECT_EQ(i->eggsSeen, true);
  EXPECT_EQ(i->seams, 5);
  EXPECT_FALSE(i->queenSeen) << "not recorded is not zero";
  EXPECT_EQ(task(id).state, TaskState::Done);
  EXPECT_EQ(task(id).doneOn, week);
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(tests::allRows(season()), before);
  ASSERT_TRUE(session->redo().ok());
}

TEST_F(StackSteps, PaperAloneMakesNoLookAtTheColony) {
  const auto looks = season().journal<Inspection>(HiveId{"TR-02"}).size();
  StackLook l = look();
  l.paperOpen = true;
  mustDo(recordStackLook(l));
  EXPECT_EQ(season().journal<Inspection>(HiveId{"TR-02"}).size(), looks);
}

TEST_F(StackSteps, ALookIsRefusedWithoutAnythingSeenOrAtTheWrongColony) {
  EXPECT_THAT(refused(recordStackLook(look())), Contains("session.stack_look_empty"));
  StackLook lower = look();
  lower.upper = ColonyId{"TR-02"};
  lower.eggs = true;
  EXPECT_THAT(refused(recordStackLook(lower)), Contains("session.not_the_upper"));
  StackLook alone = look();
  alone.hive = HiveId{"TR-03"};
  alone.upper = ColonyId{"TR-03"};
  alone.eggs = true;
  EXPECT_THAT(refused(recordStackLook(alone)), Contains("session.not_stacked"));
  StackLook noTask = look();
  noTask.eggs = true;
  noTask.tasks = {base::TaskId{"nowhere"}};
  EXPECT_THAT(refused(recordStackLook(noTask)), Contains("session.unknown_task"));
}

TEST_F(StackSteps, TakingOffTicksItsTaskAndTakesTheExcluderOff) {
  const auto id = planned("off-1", "unstacked", "TR-02");
  mustDo(takeOff({HiveId{"TR-02"}, ColonyId{"TR-01"}, HiveId{"TR-01"}, month, id}));
  EXPECT_EQ(task(id).state, TaskState::Done);
  EXPECT_EQ(task(id).doneRecord, season().journal<Event>(HiveId{"TR-01"}).back()->record);
  for (const char* hive : {"TR-01", "TR-02"}) {
    for (const auto& b : at(hive, month).boxes) EXPECT_NE(b.beneath, Beneath::Excluder) << hive;
    EXPECT_FALSE(at(hive, month).stacked()) << hive;
  }
}

TEST_F(StackSteps, WithoutAQueenAboveBothBecomeOneColony) {
  const auto id = planned("off-1", "unstacked", "TR-02");
  const auto boxes = at("TR-02", week).boxes.size();
  mustDo(joinStack({HiveId{"TR-02"}, ColonyId{"TR-01"}, week, id}));
  const auto now = at("TR-02", week);
  ASSERT_EQ(now.colonies.size(), 1U);
  EXPECT_EQ(now.colonies[0].colony, ColonyId{"TR-02"});
  EXPECT_EQ(now.boxes.size(), boxes);
  for (const auto& b : now.boxes) {
    EXPECT_FALSE(b.colony);
    EXPECT_NE(b.beneath, Beneath::Excluder);
  }
  EXPECT_FALSE(apiary::hiveOfColony(season(), ColonyId{"TR-01"}, week));
  EXPECT_EQ(task(id).state, TaskState::Done);
  EXPECT_THAT(refused(joinStack({HiveId{"TR-02"}, ColonyId{"TR-01"}, month, std::nullopt})),
              Contains("session.colony_not_there"));
}

}  // namespace
}  // namespace outyard::session
