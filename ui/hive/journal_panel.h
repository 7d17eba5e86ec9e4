// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <optional>

#include "ui/hive/journal_model.h"

class QAction;
class QCheckBox;
class QComboBox;
class QLabel;
class QTableView;

namespace outyard::widgets {
class ListFile;
class SeasonHub;
}  // namespace outyard::widgets

namespace outyard::hive {

/// The journal of the selected hive: list, filter, the chosen record in full, and what can be done
/// about it (correct, withdraw).
class JournalPanel : public QWidget {
  Q_OBJECT
 public:
  explicit JournalPanel(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  void reload();
  [[nodiscard]] const JournalModel& model() const { return *m_model; }
  [[nodiscard]] QList<QAction*> actions() const;

 private:
  void showDetail();
  [[nodiscard]] const JournalLine* chosen() const;
  void correct();
  void withdraw();

  widgets::SeasonHub& m_hub;
  JournalModel* m_model = nullptr;
  QTableView* m_table = nullptr;
  QComboBox* m_kind = nullptr;
  QCheckBox* m_all = nullptr;
  QLabel* m_detail = nullptr;
  QAction* m_correct = nullptr;
  QAction* m_withdraw = nullptr;
  widgets::ListFile* m_lists = nullptr;
};

}  // namespace outyard::hive
