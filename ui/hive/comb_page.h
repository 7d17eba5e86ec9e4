// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <functional>

class QKeySequence;
class QTableView;
class QVBoxLayout;

namespace outyard::hive {

class CombFaceEdit;
class CombModel;

/// Comb by comb: the table of sides in per cent, and the chosen side's face in eighths beside it.
class CombPage : public QWidget {
  Q_OBJECT
 public:
  explicit CombPage(CombModel& model, QWidget* parent = nullptr);
  /// Goes to a side.
  void choose(int row);
  void takeFocus();

 Q_SIGNALS:
  /// A sentence for the form's own line.
  void said(const QString& sentence);

 private:
  void addButton(const QString& text, const QKeySequence& key, const QString& name, QVBoxLayout& to,
                 const std::function<void(int)>& what);

  CombModel& m_model;
  QTableView* m_table = nullptr;
  CombFaceEdit* m_face = nullptr;
};

}  // namespace outyard::hive
