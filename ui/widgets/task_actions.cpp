// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/task_actions.h"

#include <QAbstractItemView>
#include <algorithm>
#include <array>

#include "core/session/task_done.h"
#include "ui/widgets/place.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/task_dialogs.h"

namespace outyard::widgets {
namespace {

constexpr QStringView kBegin = u"task:";

bool among(const std::string& kind, std::initializer_list<const char*> kinds) {
  return std::any_of(kinds.begin(), kinds.end(), [&](const char* k) { return kind == k; });
}

}  // namespace

QString beginFor(const base::TaskId& task) {
  return kBegin.toString() + QString::fromStdString(task.str());
}

std::optional<base::TaskId> taskOfBegin(const QString& begin) {
  if (!begin.startsWith(kBegin)) return std::nullopt;
  return base::TaskId{begin.mid(kBegin.size()).toStdString()};
}

std::optional<TaskDialog> taskDialog(const SeasonHub& hub, const apiary::Task& task) {
  if (!task.hive || !hub.season().hive(*task.hive)) return std::nullopt;
  // Steps of a stack that was made are recorded from the list of stacks, which knows both colonies.
  const bool stack = task.kind == "look" && task.method == apiary::Method::Stack;
  if (task.kind == "unstacked" || stack) {
    return TaskDialog{QStringLiteral("pairs"), QStringLiteral("stacks")};
  }
  if (session::doneNeeds(hub.season(), task, hub.workingDate()) != session::DoneNeeds::Dialog) {
    return std::nullopt;
  }
  if (among(task.kind, {"stacked", "united", "places_changed"}) && task.otherHive) {
    return TaskDialog{QStringLiteral("yards"), beginFor(task.task)};
  }
  if (among(task.kind, {"fed", "treated", "box_added", "supered", "reversed", "queen_introduced",
                        "queen_removed"})) {
    return TaskDialog{QStringLiteral("hive"), beginFor(task.task)};
  }
  return std::nullopt;
}

TaskActions::TaskActions(SeasonHub& hub, Place& place, const QList<QAbstractItemView*>& lists,
                         Chosen chosen)
    : QObject(&place), m_hub(hub), m_place(place), m_chosen(std::move(chosen)) {
  const auto make = [&](const char* name, const QString& text, const QString& tip,
                        const QKeySequence& keys, void (TaskActions::*slot)()) {
    auto* out = new QAction(text, this);
    out->setObjectName(QLatin1String(name));
    out->setToolTip(tip);
    out->setShortcut(keys);
    out->setShortcutContext(Qt::WidgetShortcut);
    connect(out, &QAction::triggered, this, slot);
    out->setEnabled(false);
    for (auto* list : lists) list->addAction(out);
    return out;
  };
  m_done = make("doneAction", tr("Mar&k as done…"),
                tr("The chosen planned work is done: the day, and the record that belongs to it"),
                QKeySequence(Qt::CTRL | Qt::Key_D), &TaskActions::done);
  m_move = make("moveTaskAction", tr("Not done, m&ove to…"),
                tr("The chosen planned work is due on another day"),
                QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_D), &TaskActions::move);
  m_drop = make("dropAction", tr("&Drop the chosen planned work"),
                tr("The chosen work is not to be done at all; nothing is recorded"),
                QKeySequence(Qt::Key_Delete), &TaskActions::drop);
}

std::vector<apiary::Task> TaskActions::tasks() const {
  std::vector<apiary::Task> out;
  for (const auto& id : m_chosen()) {
    const auto* task = m_hub.season().find<apiary::Task>(id.str());
    if (task && task->state == apiary::TaskState::Planned) out.push_back(*task);
  }
  return out;
}

void TaskActions::refresh() {
  const auto chosen = m_hub.isOpen() ? tasks() : std::vector<apiary::Task>{};
  for (auto* action : actions()) action->setEnabled(!chosen.empty());
}

base::Date TaskActions::firstDay(const std::vector<apiary::Task>& tasks) const {
  const auto today = m_hub.workingDate();
  if (m_day) {
    if (const auto day = m_day()) return std::min(*day, today);
  }
  base::Date day = today;
  for (const auto& task : tasks) {
    const auto planned = task.plannedOn ? task.plannedOn : task.dueOn;
    if (planned) day = std::min(day, *planned);
  }
  return day;
}

void TaskActions::done() {
  auto planned = tasks();
  if (planned.empty()) return;
  const auto lead = [this](const apiary::Task& task, const QString& place, const QString& begin) {
    m_hub.select({std::nullopt, *task.hive, task.colony});
    Q_EMIT m_place.openPlace(place, begin);
  };
  if (planned.size() == 1) {
    if (const auto dialog = taskDialog(m_hub, planned.front())) {
      lead(planned.front(), dialog->place, dialog->begin);
      return;
    }
  }
  const auto first = planned.front();
  const auto day = firstDay(planned);
  TaskDoneDialog dialog(m_hub, std::move(planned), day, &m_place);
  if (!m_hub.dialogs().run(dialog)) return;
  if (dialog.asksForLook()) {
    lead(first, QStringLiteral("hive"), beginFor(first.task));
  } else {
    m_hub.execute(dialog.command(), &m_place);
  }
}

void TaskActions::move() {
  auto planned = tasks();
  if (planned.empty()) return;
  TaskMoveDialog dialog(m_hub, std::move(planned), m_hub.workingDate().plusDays(1), &m_place);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), &m_place);
}

void TaskActions::drop() {
  std::vector<base::TaskId> ids;
  for (const auto& task : tasks()) ids.push_back(task.task);
  if (!ids.empty()) m_hub.execute(session::dropTasks(std::move(ids)), &m_place);
}

}  // namespace outyard::widgets
