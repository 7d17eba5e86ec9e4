// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <vector>

#include "core/session/commands.h"

class QDateEdit;
class QDialogButtonBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTreeWidget;
class QVBoxLayout;

namespace outyard::widgets {

class SeasonHub;

/// Planned work in a list, and a day for it.
class TaskDayDialog : public QDialog {
  Q_OBJECT
 public:
  [[nodiscard]] base::Date day() const;
  [[nodiscard]] const std::vector<apiary::Task>& tasks() const { return m_tasks; }
  /// What the fields say.
  [[nodiscard]] virtual session::CommandPtr command() const = 0;

 protected:
  TaskDayDialog(SeasonHub& hub, std::vector<apiary::Task> tasks, base::Date day, QWidget* parent);
  /// The label of the day, the button's words, and what stands in the list's last column.
  void make(const QString& dayLabel, const QString& button, const QString& column);
  QLabel* addSentence(const QString& name);
  [[nodiscard]] SeasonHub& hub() const { return m_hub; }
  [[nodiscard]] QVBoxLayout& fields() const { return *m_fields; }
  [[nodiscard]] QDateEdit& dayField() const { return *m_day; }
  /// A button beside the others; closes the dialog, and says so by chosen().
  QPushButton* addButton(const QString& name, const QString& text);
  /// Shows anew what depends on the day.
  void refresh();
  virtual void refreshMore() {}
  /// What stands in the last column for a task.
  [[nodiscard]] virtual QString said(const apiary::Task& task) const = 0;
  /// What keeps the fields from being taken, before the command is asked.
  [[nodiscard]] virtual QString fieldFault() const { return {}; }

 private:
  SeasonHub& m_hub;
  std::vector<apiary::Task> m_tasks;
  base::Date m_start;
  QTreeWidget* m_list = nullptr;
  QVBoxLayout* m_fields = nullptr;
  QDateEdit* m_day = nullptr;
  QLabel* m_fault = nullptr;
  QPushButton* m_ok = nullptr;
  QDialogButtonBox* m_buttons = nullptr;
};

/// On which day planned work was done, and what is recorded with it.
class TaskDoneDialog : public TaskDayDialog {
  Q_OBJECT
 public:
  TaskDoneDialog(SeasonHub& hub, std::vector<apiary::Task> tasks, base::Date day,
                 QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;
  /// True when the person would rather type what was seen.
  [[nodiscard]] bool asksForLook() const { return m_look; }

 private:
  [[nodiscard]] QString said(const apiary::Task& task) const override;
  [[nodiscard]] QString fieldFault() const override;
  [[nodiscard]] std::vector<apiary::Task> told() const;
  void refreshMore() override;

  QLineEdit* m_amount = nullptr;
  QLabel* m_note = nullptr;
  bool m_look = false;
};

/// Not done: due on another day.
class TaskMoveDialog : public TaskDayDialog {
  Q_OBJECT
 public:
  TaskMoveDialog(SeasonHub& hub, std::vector<apiary::Task> tasks, base::Date day,
                 QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;

 private:
  [[nodiscard]] QString said(const apiary::Task& task) const override;
};

}  // namespace outyard::widgets
