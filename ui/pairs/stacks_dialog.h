// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <optional>
#include <vector>

#include "core/planning/stack_follow.h"

class QLabel;
class QPushButton;
class QStackedWidget;
class QTableView;

namespace outyard::widgets {
class SeasonHub;
class ListFile;
}  // namespace outyard::widgets

namespace outyard::pairs {

class TextTable;

/// The stacks that were made, step by step: what is done, what is next and on which day; the next
/// step is recorded from here.
class StacksDialog : public QDialog {
  Q_OBJECT
 public:
  explicit StacksDialog(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~StacksDialog() override;
  [[nodiscard]] bool busy() const { return m_busy; }
  [[nodiscard]] const std::vector<planning::MadeStack>& stacks() const { return m_stacks; }
  /// The stack and step of a line of the table.
  struct At {
    std::size_t stack = 0, step = 0;
  };
  [[nodiscard]] std::optional<At> current() const;
  /// Puts the cursor on the next step of the stack in that hive.
  void choose(const base::HiveId& hive);

 public Q_SLOTS:
  /// Asks for what was seen or done at the chosen step and records it.
  void record();

 private:
  void again();
  void take(std::vector<planning::MadeStack> stacks);
  void showChosen();
  [[nodiscard]] QString whyNotRecord() const;

  widgets::SeasonHub& m_hub;
  std::vector<planning::MadeStack> m_stacks;
  std::vector<At> m_lines;
  bool m_busy = false;
  std::optional<base::HiveId> m_wanted;
  QStackedWidget* m_pages = nullptr;
  QLabel* m_sentence = nullptr;
  QTableView* m_table = nullptr;
  TextTable* m_model = nullptr;
  QLabel* m_detail = nullptr;
  QPushButton* m_record = nullptr;
  widgets::ListFile* m_file = nullptr;
};

QString stepStateText(const planning::StackStep& step);

}  // namespace outyard::pairs
