// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QComboBox>
#include <QLineEdit>
#include <QTest>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "ui/hive/hive_place.h"
#include "ui/widgets/task_actions.h"

/// Planned work that is recorded from its own dialog.
namespace outyard::hive {
namespace {

using apiary::Task;
using apiary::TaskState;
using tests::day;
using tests::field;

class TaskDialogTest : public testing::Test {
 protected:
  TaskDialogTest() : m_desk(tests::smallSeason()), m_place(m_desk.hub) {
    m_place.resize(1100, 700);
    m_place.show();
  }
  const Task& plan(const char* kind, std::function<void(Task&)> fill = {}) {
    Task t;
    t.task = base::TaskId{"T1"};
    t.kind = kind;
    t.hive = base::HiveId{"TR-01"};
    if (fill) fill(t);
    EXPECT_TRUE(m_desk.hub.execute(session::addTask(t)));
    m_desk.hub.selectHive(*t.hive);
    QCoreApplication::processEvents();
    return task();
  }
  const Task& task() { return *m_desk.hub.season().find<Task>("T1"); }
  void begin() { m_place.begin(widgets::beginFor(base::TaskId{"T1"})); }

  tests::Desk m_desk;
  HivePlace m_place;
};

TEST_F(TaskDialogTest, FeedingBeginsWithWhatWasPlannedAndTicksItOff) {
  plan("fed", [](Task& t) {
    t.what = apiary::Goods::Fondant;
    t.amount = 2.5;
    t.unit = apiary::Unit::Kg;
  });
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    EXPECT_EQ(dialog.objectName(), QStringLiteral("feedDialog"));
    EXPECT_EQ(field<QLineEdit>(dialog, "amount")->text(), QStringLiteral("2.5"));
    field<QLineEdit>(dialog, "amount")->setText(QStringLiteral("3"));
    return true;
  };
  begin();
  EXPECT_EQ(task().state, TaskState::Done);
  ASSERT_TRUE(task().doneRecord);
  const auto* event = m_desk.hub.season().find<apiary::Event>(task().doneRecord->str());
  ASSERT_NE(event, nullptr);
  EXPECT_EQ(event->what, apiary::Goods::Fondant);
  EXPECT_EQ(event->amount, 3);
  EXPECT_EQ(event->task, task().task);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(task().state, TaskState::Planned);
  EXPECT_TRUE(m_desk.hub.season().journal<apiary::Event>(*task().hive).empty()) << "one step";
}

TEST_F(TaskDialogTest, WhoLeavesTheDialogTicksNothingOff) {
  plan("box_added");
  m_desk.dialogs.onRun = [](QDialog&) { return false; };
  begin();
  EXPECT_EQ(m_desk.dialogs.titles.size(), 1);
  EXPECT_EQ(task().state, TaskState::Planned);
  // The same action by hand has nothing to do with the task.
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  m_place.begin(QStringLiteral("addBox"));
  EXPECT_EQ(task().state, TaskState::Planned);
  begin();
  EXPECT_EQ(task().state, TaskState::Done);
}

TEST_F(TaskDialogTest, ALookIsTickedOffByItsInspection) {
  plan("look");
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    field<QLineEdit>(dialog, "seams")->setText(QStringLiteral("5"));
    dialog.accept();
    return true;
  };
  begin();
  EXPECT_EQ(task().state, TaskState::Done);
  const auto seen = m_desk.hub.season().journal<apiary::Inspection>(*task().hive);
  ASSERT_EQ(seen.size(), 1U);
  EXPECT_EQ(task().doneRecord, seen.front()->record);
}

}  // namespace
}  // namespace outyard::hive
