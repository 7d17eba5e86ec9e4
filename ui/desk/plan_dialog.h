// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <vector>

#include "core/session/session.h"
#include "ui/desk/desk_runner.h"

class QComboBox;
class QDateEdit;
class QLabel;
class QPushButton;
class QTreeWidget;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::desk {

/// Plans pieces of work that fall due: on the day proposed for each or all on one, with the weather
/// of that day and the usual cautions.
class PlanDialog : public QDialog {
  Q_OBJECT
 public:
  PlanDialog(widgets::SeasonHub& hub, Facts facts, std::vector<std::size_t> tasks,
             QWidget* parent = nullptr);
  /// All of it as one step.
  [[nodiscard]] session::CommandPtr command() const;

 private:
  void refresh();
  [[nodiscard]] base::Date dayOf(const planning::DueTask& task) const;
  [[nodiscard]] bool oneDay() const;
  /// What stands against the days as they are chosen.
  [[nodiscard]] QString dayFaults() const;
  [[nodiscard]] QString cautions() const;

  widgets::SeasonHub& m_hub;
  Facts m_facts;
  std::vector<std::size_t> m_tasks;
  QTreeWidget* m_list;
  QComboBox* m_how;
  QDateEdit* m_day;
  QLabel* m_weather;
  QLabel* m_cautions;
  QLabel* m_fault;
  QPushButton* m_plan;
};

}  // namespace outyard::desk
