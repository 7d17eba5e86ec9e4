// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAction>
#include <QList>
#include <QObject>
#include <functional>
#include <optional>
#include <vector>

#include "core/session/commands.h"

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::hive {

class VerbDialog;

/// Work that can be recorded about the selected hive: actions that are greyed, with their reason,
/// while it cannot be done.
class WorkActions : public QObject {
  Q_OBJECT
 public:
  [[nodiscard]] QList<QAction*> all() const;
  [[nodiscard]] QAction* named(const QString& name) const;
  /// Looks again at what can be done.
  void refresh();
  /// Opens the dialog of the action for a planned task: the record then ticks the task off.
  void doTask(const apiary::Task& task, QAction& action);

 protected:
  WorkActions(widgets::SeasonHub& hub, QWidget& window);
  [[nodiscard]] widgets::SeasonHub& hub() const { return m_hub; }
  [[nodiscard]] QWidget& window() const { return m_window; }
  void add(QAction* action, std::function<QString()> whyNot, std::function<void()> run);
  /// Shows the dialog and does its command.
  void carryOut(VerbDialog& dialog);
  /// The planned task that the dialog which is being opened is for.
  [[nodiscard]] const std::optional<apiary::Task>& task() const { return m_task; }
  [[nodiscard]] base::HiveId hive() const;
  [[nodiscard]] apiary::HiveState state(base::Date day) const;

 private:
  struct Work {
    QAction* action = nullptr;
    std::function<QString()> whyNot;
  };
  widgets::SeasonHub& m_hub;
  QWidget& m_window;
  std::vector<Work> m_work;
  std::optional<apiary::Task> m_task;
};

}  // namespace outyard::hive
