// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using testing::ElementsAre;

apiary::Task taskAt(const char* hive, const char* id = "") {
  apiary::Task t;
  t.task = base::TaskId{id};
  t.kind = "open";
  t.hive = HiveId{hive};
  return t;
}

TEST_F(CommandsTest, SeveralTasksAreOneStep) {
  mustDo(addTasks({taskAt("TR-01"), taskAt("TR-02"), taskAt("MB-01", "T9")}));
  ASSERT_EQ(season().table<apiary::Task>().size(), 3U);
  EXPECT_TRUE(season().find<apiary::Task>("T9"));
  EXPECT_EQ(session->undoTitle()->key, "session.title.add_tasks");
  ASSERT_TRUE(session->undo().ok());
  EXPECT_TRUE(season().table<apiary::Task>().empty());
  EXPECT_FALSE(session->canUndo());
}

TEST_F(CommandsTest, OneTaskThatCannotBePlannedKeepsAllOut) {
  EXPECT_THAT(refused(addTasks({taskAt("TR-01"), taskAt("XX-01")})),
              ElementsAre("session.unknown_hive"));
  EXPECT_THAT(refused(addTasks({taskAt("TR-01", "T1"), taskAt("TR-02", "T1")})),
              ElementsAre("session.task_exists"));
}

}  // namespace
}  // namespace outyard::session
