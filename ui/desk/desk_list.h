// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPixmap>
#include <QStyledItemDelegate>
#include <QTreeView>
#include <map>
#include <vector>

#include "ui/desk/desk_rows.h"

class QStandardItem;
class QStandardItemModel;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::desk {

class DeskDelegate;

/// A list of rows of the desk, drawn by ourselves: as high as their words need at this width, never
/// cut. Enter or a double click opens what a row is about.
class DeskList : public QTreeView {
  Q_OBJECT
 public:
  DeskList(widgets::SeasonHub& hub, const QString& name, const QString& accessible,
           QWidget* parent = nullptr);

  /// Takes rows over with those below them. What was chosen stays chosen where it is still there.
  struct Branch {
    Row row;
    std::vector<Row> below;
  };
  void setRows(Facts facts, const std::vector<Branch>& rows);
  void setFlat(Facts facts, const std::vector<Row>& rows);
  void clear();
  [[nodiscard]] static const Row& rowOf(const QModelIndex& index);
  /// Rows that are chosen, in the order of the list.
  [[nodiscard]] std::vector<Row> chosen() const;
  [[nodiscard]] const Facts& facts() const { return m_facts; }
  /// Height that all rows take.
  [[nodiscard]] int wholeHeight() const;

 Q_SIGNALS:
  void opened(const outyard::desk::Row& row);
  void chosenChanged();

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void drawBranches(QPainter* painter, const QRect& rect, const QModelIndex& index) const override;

 private:
  QStandardItem* itemOf(const Row& row) const;
  widgets::SeasonHub& m_hub;
  QStandardItemModel* m_model;
  DeskDelegate* m_delegate;
  Facts m_facts;
};

/// Draws one row.
class DeskDelegate : public QStyledItemDelegate {
  Q_OBJECT
 public:
  DeskDelegate(widgets::SeasonHub& hub, DeskList& list);
  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                               const QModelIndex& index) const override;
  bool helpEvent(QHelpEvent* event, QAbstractItemView* view, const QStyleOptionViewItem& option,
                 const QModelIndex& index) override;
  void forgetMarks() { m_marks.clear(); }

 private:
  struct Layout;
  [[nodiscard]] Layout layoutOf(const Row& row, const QFont& font, int width) const;
  [[nodiscard]] int widthOf(const QModelIndex& index) const;
  [[nodiscard]] const QPixmap& markOf(const base::HiveId& hive, int height) const;

  widgets::SeasonHub& m_hub;
  DeskList& m_list;
  mutable std::map<base::HiveId, QPixmap> m_marks;
};

}  // namespace outyard::desk
