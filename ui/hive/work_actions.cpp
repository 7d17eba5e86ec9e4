// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/work_actions.h"

#include <QKeySequence>
#include <QWidget>

#include "core/session/task_done.h"
#include "ui/hive/verb_dialog.h"
#include "ui/widgets/session_model.h"

namespace outyard::hive {

WorkActions::WorkActions(widgets::SeasonHub& hub, QWidget& window)
    : QObject(&window), m_hub(hub), m_window(window) {}

void WorkActions::add(QAction* action, std::function<QString()> whyNot, std::function<void()> run) {
  // A record may have changed what can be done since the action was last looked at.
  connect(action, &QAction::triggered, this, [whyNot, run = std::move(run)] {
    if (whyNot().isEmpty()) run();
  });
  m_work.push_back({action, std::move(whyNot)});
}

QList<QAction*> WorkActions::all() const {
  QList<QAction*> out;
  for (const Work& work : m_work) out << work.action;
  return out;
}

QAction* WorkActions::named(const QString& name) const {
  for (const Work& work : m_work) {
    if (work.action->objectName() == name) return work.action;
  }
  return nullptr;
}

void WorkActions::refresh() {
  for (const Work& work : m_work) {
    QString why;
    if (!m_hub.isOpen()) {
      why = tr("No season is open.");
    } else if (!m_hub.selection().hive) {
      why = tr("Choose a hive first.");
    } else {
      why = work.whyNot();
    }
    work.action->setEnabled(why.isEmpty());
    QString plain = work.action->text();
    plain.remove(u'&');
    const QString key = work.action->shortcut().toString(QKeySequence::NativeText);
    if (!key.isEmpty()) plain += QStringLiteral(" (%1)").arg(key);
    work.action->setToolTip(why.isEmpty() ? plain
                                          : tr("%1 cannot be done now: %2").arg(plain, why));
    work.action->setStatusTip(why);
  }
}

void WorkActions::doTask(const apiary::Task& task, QAction& action) {
  m_task = task;
  action.trigger();
  m_task.reset();
}

void WorkActions::carryOut(VerbDialog& dialog) {
  if (!m_hub.dialogs().run(dialog)) return;
  auto work = dialog.command();
  if (m_task) work = session::forTask(m_task->task, dialog.date(), std::move(work));
  m_hub.execute(std::move(work), &m_window);
}

base::HiveId WorkActions::hive() const {
  return m_hub.selection().hive.value_or(base::HiveId{});
}

apiary::HiveState WorkActions::state(base::Date day) const {
  return apiary::hiveOn(m_hub.season(), hive(), day);
}

}  // namespace outyard::hive
