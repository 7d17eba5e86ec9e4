// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <optional>

#include "ui/widgets/session_model.h"

class QLineEdit;
class QTreeWidget;
class QTreeWidgetItem;

namespace outyard::yards {

/// The yards with how many hives are live, small and dead; choosing one shows it.
class YardList : public QWidget {
  Q_OBJECT
 public:
  explicit YardList(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  void refresh();
  /// The yard whose line is under a point of the screen.
  [[nodiscard]] std::optional<base::YardId> yardAt(const QPoint& globalPoint) const;

 private:
  void showSelection();
  void applyFilter();
  [[nodiscard]] static base::YardId yardOf(const QTreeWidgetItem& item);

  widgets::SeasonHub& m_hub;
  QLineEdit* m_filter;
  QTreeWidget* m_tree;
  bool m_following = false;
};

}  // namespace outyard::yards
