// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAction>
#include <QList>
#include <QObject>
#include <functional>
#include <optional>
#include <vector>

#include "core/apiary/records.h"

class QAbstractItemView;

namespace outyard::widgets {

class Place;
class SeasonHub;

/// The place and what to begin there (Place::begin) to record the work of a task; nullopt when a
/// day says all, or no dialog of its own knows the work.
struct TaskDialog {
  QString place, begin;
};
std::optional<TaskDialog> taskDialog(const SeasonHub& hub, const apiary::Task& task);
/// begin() for a dialog that records the work of the task, and the task read back from it.
QString beginFor(const base::TaskId& task);
std::optional<base::TaskId> taskOfBegin(const QString& begin);

/// What is done with planned work that is shown in a list: "Mark as done…", "Not done, move to…",
/// "Drop". Their keys work while a list has the keyboard.
class TaskActions : public QObject {
  Q_OBJECT
 public:
  using Chosen = std::function<std::vector<base::TaskId>()>;

  /// `chosen` are the planned tasks among what is chosen; the lists show the actions too.
  TaskActions(SeasonHub& hub, Place& place, const QList<QAbstractItemView*>& lists, Chosen chosen);
  [[nodiscard]] QAction* doneAction() const { return m_done; }
  [[nodiscard]] QAction* moveAction() const { return m_move; }
  [[nodiscard]] QAction* dropAction() const { return m_drop; }
  [[nodiscard]] QList<QAction*> actions() const { return {m_done, m_move, m_drop}; }
  void refresh();
  /// The day that the dialog begins with; the planned day up to the working date where none is set.
  void setDay(std::function<std::optional<base::Date>()> day) { m_day = std::move(day); }

 private:
  [[nodiscard]] std::vector<apiary::Task> tasks() const;
  [[nodiscard]] base::Date firstDay(const std::vector<apiary::Task>& tasks) const;
  void done();
  void move();
  void drop();

  SeasonHub& m_hub;
  Place& m_place;
  Chosen m_chosen;
  std::function<std::optional<base::Date>()> m_day;
  QAction *m_done, *m_move, *m_drop;
};

}  // namespace outyard::widgets
