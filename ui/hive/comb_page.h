// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <functional>
#include <vector>

#include "core/apiary/state.h"

class QKeySequence;
class QTableView;
class QVBoxLayout;

namespace outyard::hive {

class CombFaceEdit;
class CombModel;
class OvalEntry;

/// Comb by comb: the table of sides in per cent, and the chosen side's face in eighths beside it.
class CombPage : public QWidget {
  Q_OBJECT
 public:
  CombPage(CombModel& model, bool inches, QWidget* parent = nullptr);
  /// Goes to a side.
  void choose(int row);
  void takeFocus();
  /// Comb areas of these boxes, for patches that are measured.
  void setAreas(const apiary::Season& season, const std::vector<apiary::BoxState>& boxes);

 Q_SIGNALS:
  /// A sentence for the form's own line.
  void said(const QString& sentence);

 private:
  void addButton(const QString& text, const QKeySequence& key, const QString& name, QVBoxLayout& to,
                 const std::function<void(int)>& what);

  CombModel& m_model;
  QTableView* m_table = nullptr;
  CombFaceEdit* m_face = nullptr;
  OvalEntry* m_oval = nullptr;
};

}  // namespace outyard::hive
