// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "ui/widgets/session_model.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QSortFilterProxyModel;
class QTableView;

namespace outyard::main_window {

class FiguresModel;

/// The figures that the program counts with: searched by word, changed in their range, taken back
/// to what is shipped.
class FiguresDialog : public QDialog {
  Q_OBJECT
 public:
  explicit FiguresDialog(widgets::SeasonHub& hub, QWidget* parent = nullptr);

 private:
  void showRow();
  void takeBack();
  void addType();

  widgets::SeasonHub& m_hub;
  FiguresModel* m_model;
  QSortFilterProxyModel* m_shown;
  QComboBox* m_group;
  QLineEdit* m_filter;
  QTableView* m_table;
  QLabel* m_say;
  QPushButton* m_back;
};

}  // namespace outyard::main_window
