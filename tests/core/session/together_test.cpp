// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using apiary::EventKind;

CommandPtr fed(const char* hive, Date date) {
  apiary::Event e;
  e.kind = EventKind::Fed;
  e.hive = HiveId{hive};
  e.date = date;
  e.what = apiary::Goods::Syrup11;
  return recordEvent(e);
}

TEST_F(CommandsTest, TogetherIsOneStepAndNamesTheHiveThatRefuses) {
  std::vector<HiveStep> good;
  good.push_back({HiveId{"TR-01"}, fed("TR-01", d)});
  good.push_back({HiveId{"TR-02"}, fed("TR-02", d)});
  mustDo(together(base::message("session.as_said", "feed"), std::move(good)));
  EXPECT_EQ(season().journal<apiary::Event>(HiveId{"TR-01"}).back()->kind, EventKind::Fed);
  EXPECT_EQ(season().journal<apiary::Event>(HiveId{"TR-02"}).back()->kind, EventKind::Fed);
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(tests::allRows(season()), start);

  std::vector<HiveStep> bad;
  bad.push_back({HiveId{"TR-01"}, fed("TR-01", d)});
  bad.push_back({HiveId{"TR-07"}, fed("TR-07", d)});
  EXPECT_THAT(refused(together(base::message("session.as_said", "feed"), std::move(bad))),
              testing::ElementsAre("session.together_refused", "session.hive_empty"));
}

TEST_F(CommandsTest, TogetherEachStepSeesTheOnesBefore) {
  apiary::Task t;
  t.task = base::TaskId{"T1"};
  t.kind = "fed";
  t.hive = HiveId{"TR-01"};
  const auto twice = [&] {
    std::vector<HiveStep> steps;
    steps.push_back({HiveId{"TR-01"}, addTask(t)});
    steps.push_back({HiveId{"TR-01"}, setTaskState(t.task, apiary::TaskState::Dropped, {})});
    return steps;
  };
  mustDo(together(base::message("session.as_said", "tasks"), twice()));
  EXPECT_EQ(season().find<apiary::Task>("T1")->state, apiary::TaskState::Dropped);
}

TEST_F(CommandsTest, TogetherRefusesADayThatHasNotCome) {
  std::vector<HiveStep> steps;
  steps.push_back({HiveId{"TR-01"}, fed("TR-01", d)});
  steps.push_back({HiveId{"TR-02"}, fed("TR-02", tests::day("2027-04-25"))});
  EXPECT_THAT(refused(together(base::message("session.as_said", "feed"), std::move(steps))),
              testing::ElementsAre("session.in_the_future"));
}

}  // namespace
}  // namespace outyard::session
