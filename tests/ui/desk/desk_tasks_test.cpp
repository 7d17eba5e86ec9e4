// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDateEdit>
#include <QItemSelectionModel>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTreeWidget>

#include "core/session/commands.h"
#include "tests/ui/desk/desk_fixture.h"
#include "tests/ui/support/pictures.h"
#include "ui/adapt/system_clock.h"
#include "ui/widgets/task_actions.h"

namespace outyard::desk {
namespace {

using apiary::Task;
using apiary::TaskState;

/// The sample with planned work of several kinds at one hive.
apiary::Season withTasks() {
  apiary::Season season = sample();
  const auto& hive = season.table<apiary::Hive>().begin()->second;
  apiary::ChangeList changes;
  const auto plan = [&](const char* id, const char* kind, std::optional<double> amount = {}) {
    Task t;
    t.task = base::TaskId{id};
    t.kind = kind;
    t.yard = hive.yard;
    t.hive = hive.hive;
    t.dueOn = day("2026-04-24");
    t.amount = amount;
    changes.push_back({apiary::TableId::Tasks, id, std::nullopt, apiary::toRow(t)});
  };
  plan("X-unwrap", "unwrapped");
  plan("X-look", "look");
  plan("X-treat", "treated");
  plan("X-take", "harvested");
  plan("X-give", "frames_given", 2);
  season.apply(changes);
  return season;
}

class DeskTasks : public DeskPlaceTest {
 protected:
  DeskTasks() : DeskPlaceTest(withTasks()) {}
  const Task& task(const char* id) { return *m_desk.hub.season().find<Task>(id); }
  void choose(std::initializer_list<const char*> ids) {
    auto& yards = list("yards");
    yards.clearSelection();
    for (const char* id : ids) {
      const auto at = rowWhere(yards, Row::Kind::Task, [&](const Row& row) {
        return due().tasks[row.tasks.front()].task == base::TaskId{id};
      });
      yards.setExpanded(at.parent(), true);
      yards.selectionModel()->select(at, QItemSelectionModel::Select);
      yards.selectionModel()->setCurrentIndex(at, QItemSelectionModel::NoUpdate);
    }
    yards.setFocus();
    QCoreApplication::processEvents();
  }
  void press(Qt::Key key, Qt::KeyboardModifiers with = Qt::ControlModifier) {
    QApplication::setActiveWindow(&m_place);
    QTest::keyClick(&list("yards"), key, with);
    QCoreApplication::processEvents();
  }
};

TEST_F(DeskTasks, AKeyMarksWorkDoneWithItsRecord) {
  const auto before = tests::allRows(m_desk.hub.season());
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    EXPECT_EQ(dialog.objectName(), QStringLiteral("taskDoneDialog"));
    auto* day = field<QDateEdit>(dialog, "taskDay");
    EXPECT_EQ(adapt::fromQDate(day->date()), tests::day("2026-04-24")) << "the planned day";
    EXPECT_EQ(adapt::fromQDate(day->maximumDate()), m_desk.hub.workingDate());
    EXPECT_EQ(field<QTreeWidget>(dialog, "tasks")->topLevelItemCount(), 2);
    day->setDate(adapt::toQDate(tests::day("2026-04-23")));
    return true;
  };
  choose({"X-unwrap", "X-give"});
  press(Qt::Key_D);
  for (const char* id : {"X-unwrap", "X-give"}) {
    EXPECT_EQ(task(id).state, TaskState::Done) << id;
    EXPECT_EQ(task(id).doneOn, day("2026-04-23"));
    ASSERT_TRUE(task(id).doneRecord) << id;
    const auto* event = m_desk.hub.season().find<apiary::Event>(task(id).doneRecord->str());
    ASSERT_NE(event, nullptr);
    EXPECT_EQ(event->date, day("2026-04-23"));
    EXPECT_EQ(std::string(apiary::code(event->kind)), task(id).kind);
  }
  wait();
  for (const auto& t : due().tasks) EXPECT_NE(t.task, base::TaskId{"X-unwrap"});
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before) << "one step";
}

TEST_F(DeskTasks, AnAmountIsAskedForWhereTheRecordNeedsIt) {
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    auto* amount = field<QLineEdit>(dialog, "taskAmount");
    EXPECT_FALSE(field<QPushButton>(dialog, "taskOk")->isEnabled());
    EXPECT_TRUE(field<QLabel>(dialog, "taskFault")->text().contains(QStringLiteral("more than 0")));
    amount->setText(QStringLiteral("7"));
    EXPECT_TRUE(field<QPushButton>(dialog, "taskOk")->isEnabled());
    return true;
  };
  choose({"X-take"});
  press(Qt::Key_D);
  ASSERT_TRUE(task("X-take").doneRecord);
  const auto* event = m_desk.hub.season().find<apiary::Event>(task("X-take").doneRecord->str());
  ASSERT_NE(event, nullptr);
  EXPECT_EQ(event->amount, 7);
  EXPECT_EQ(event->unit, apiary::Unit::Kg);
}

TEST_F(DeskTasks, WorkThatNeedsMoreOpensItsOwnDialog) {
  QSignalSpy opened(&m_place, &DeskPlace::openPlace);
  choose({"X-treat"});
  press(Qt::Key_D);
  ASSERT_EQ(opened.size(), 1);
  EXPECT_EQ(opened[0][0].toString(), QStringLiteral("hive"));
  EXPECT_EQ(widgets::taskOfBegin(opened[0][1].toString()), base::TaskId{"X-treat"});
  EXPECT_EQ(m_desk.hub.selection().hive, task("X-treat").hive);
  EXPECT_EQ(task("X-treat").state, TaskState::Planned) << "only its record ticks it off";

  // A look may be ticked off as it is, or what was seen is typed.
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    field<QPushButton>(dialog, "taskLook")->click();
    return dialog.result() == QDialog::Accepted;
  };
  choose({"X-look"});
  press(Qt::Key_D);
  ASSERT_EQ(opened.size(), 2);
  EXPECT_EQ(widgets::taskOfBegin(opened[1][1].toString()), base::TaskId{"X-look"});
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  press(Qt::Key_D);
  EXPECT_EQ(task("X-look").state, TaskState::Done);
  EXPECT_FALSE(task("X-look").doneRecord);
}

TEST_F(DeskTasks, SeveralAreToldWhichAreTickedOffAlone) {
  QString note;
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    note = field<QLabel>(dialog, "taskNote")->text();
    return false;
  };
  choose({"X-treat", "X-unwrap"});
  press(Qt::Key_D);
  EXPECT_TRUE(note.contains(QStringLiteral("only ticked off"))) << note.toStdString();
  EXPECT_EQ(task("X-treat").state, TaskState::Planned);
}

TEST_F(DeskTasks, NotDoneIsMovedAndCanBeDropped) {
  QString said;
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    EXPECT_EQ(dialog.objectName(), QStringLiteral("taskMoveDialog"));
    field<QDateEdit>(dialog, "taskDay")->setDate(adapt::toQDate(day("2026-05-03")));
    return true;
  };
  choose({"X-unwrap", "X-look"});
  press(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_EQ(task("X-unwrap").dueOn, day("2026-05-03"));
  EXPECT_EQ(task("X-look").plannedOn, day("2026-05-03"));
  wait();
  choose({"X-unwrap", "X-look"});
  press(Qt::Key_Delete, Qt::NoModifier);
  EXPECT_EQ(task("X-unwrap").state, TaskState::Dropped);
  EXPECT_EQ(task("X-look").state, TaskState::Dropped);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(task("X-unwrap").state, TaskState::Planned) << "one step";
  EXPECT_EQ(task("X-look").state, TaskState::Planned);
  EXPECT_TRUE(list("yards").actions().contains(action("moveTaskAction"))) << "its own menu has it";
  EXPECT_TRUE(list("risk").actions().contains(action("doneAction")));
}

TEST_F(DeskTasks, DialogsInLightAndDarkAndLarge) {
  const QFont before = QApplication::font();
  for (const auto& name :
       {QStringLiteral("light"), QStringLiteral("dark"), QStringLiteral("large")}) {
    widgets::applyTheme(name == QStringLiteral("dark") ? adapt::Theme::Dark : adapt::Theme::Light);
    QFont font = before;
    if (name == QStringLiteral("large")) font.setPointSizeF(before.pointSizeF() * 1.5);
    QApplication::setFont(font);
    m_desk.dialogs.onRun = [&](QDialog& dialog) {
      tests::picture(dialog, dialog.objectName() + u'-' + name, dialog.size());
      tests::expectNothingCut(dialog);
      return false;
    };
    choose({"X-look"});
    action("doneAction")->trigger();
    action("moveTaskAction")->trigger();
    choose({"X-take"});
    action("doneAction")->trigger();
    choose({"X-treat", "X-unwrap", "X-look"});
    action("doneAction")->trigger();
  }
  QApplication::setFont(before);
  widgets::applyTheme(adapt::Theme::Light);
  EXPECT_EQ(m_desk.dialogs.titles.size(), 12);
}

}  // namespace
}  // namespace outyard::desk
