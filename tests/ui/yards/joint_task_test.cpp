// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QDateEdit>
#include <QRadioButton>

#include "tests/ui/support/desk.h"
#include "ui/adapt/system_clock.h"
#include "ui/widgets/task_actions.h"
#include "ui/yards/yards_place.h"

/// Planned joint work that is recorded from the dialog of the pair.
namespace outyard::yards {
namespace {

using apiary::Task;
using apiary::TaskState;
using tests::day;

class JointTaskTest : public testing::Test {
 protected:
  JointTaskTest() : m_desk(tests::smallSeason()), m_place(m_desk.hub) {}
  void plan(const char* kind) {
    Task t;
    t.task = base::TaskId{"T1"};
    t.kind = kind;
    t.hive = base::HiveId{"TR-01"};
    t.otherHive = base::HiveId{"TR-05"};
    ASSERT_TRUE(m_desk.hub.execute(session::addTask(t)));
  }
  const Task& task() { return *m_desk.hub.season().find<Task>("T1"); }
  void begin() { m_place.begin(widgets::beginFor(base::TaskId{"T1"})); }

  tests::Desk m_desk;
  YardsPlace m_place;
};

TEST_F(JointTaskTest, SettingOverIsRecordedAndTickedOff) {
  plan("stacked");
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  begin();
  ASSERT_EQ(task().state, TaskState::Done);
  const auto* event = m_desk.hub.season().find<apiary::Event>(task().doneRecord->str());
  ASSERT_NE(event, nullptr);
  EXPECT_EQ(event->kind, apiary::EventKind::Stacked);
  EXPECT_EQ(event->task, task().task);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(task().state, TaskState::Planned) << "one step";
}

TEST_F(JointTaskTest, TheHiveThatStaysComesFirstInAUnion) {
  plan("united");
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  begin();
  ASSERT_EQ(task().state, TaskState::Done);
  const auto now = apiary::hiveOn(m_desk.hub.season(), base::HiveId{"TR-01"}, day("2026-04-26"));
  EXPECT_FALSE(now.colonies.empty()) << "TR-01 stays";
}

TEST_F(JointTaskTest, ALaterDayPutsTheWorkOff) {
  plan("places_changed");
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    dialog.findChild<QDateEdit*>()->setDate(adapt::toQDate(day("2026-05-02")));
    return true;
  };
  begin();
  EXPECT_EQ(task().state, TaskState::Planned);
  EXPECT_EQ(task().dueOn, day("2026-05-02"));
  EXPECT_EQ(m_desk.hub.season().table<Task>().size(), 1U) << "no second task";
}

}  // namespace
}  // namespace outyard::yards
