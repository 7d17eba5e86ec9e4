// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "core/planning/stack_follow.h"
#include "core/session/commands.h"

class QComboBox;
class QDateEdit;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::pairs {

/// What was seen or done at one step of a stack.
class StackStepDialog : public QDialog {
  Q_OBJECT
 public:
  StackStepDialog(widgets::SeasonHub& hub, const planning::MadeStack& stack,
                  const planning::StackStep& step, QWidget* parent = nullptr);
  /// As the fields stand.
  [[nodiscard]] session::CommandPtr command() const;

 private:
  void makeLook(QFormLayout& form);
  void makeParting(QFormLayout& form);
  QComboBox* choice(QFormLayout& form, const QString& name, const QString& label,
                    const QStringList& texts);
  QLineEdit* field(QFormLayout& form, const QString& name, const QString& label);
  [[nodiscard]] session::CommandPtr look() const;
  [[nodiscard]] session::CommandPtr parting() const;
  [[nodiscard]] QString fieldFault() const;
  void refresh();

  widgets::SeasonHub& m_hub;
  const planning::MadeStack m_stack;
  const planning::StackStep m_step;
  QDateEdit* m_date = nullptr;
  QComboBox *m_paper = nullptr, *m_eggs = nullptr, *m_queen = nullptr, *m_to = nullptr;
  QLineEdit *m_cells = nullptr, *m_seams = nullptr, *m_notes = nullptr;
  QLabel* m_why = nullptr;
  QPushButton* m_ok = nullptr;
};

}  // namespace outyard::pairs
