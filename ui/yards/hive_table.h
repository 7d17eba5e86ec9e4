// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <QPixmap>
#include <QTableView>
#include <vector>

#include "ui/widgets/hive_facts.h"
#include "ui/widgets/session_model.h"

namespace outyard::yards {

class HiveFilter;

/// The hives of the chosen yard with the facts that the map shows, as text.
class HiveTableModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  /// What a row is sorted by, and all its words for the filter.
  static constexpr int kSortRole = Qt::UserRole + 1, kWordsRole = Qt::UserRole + 2;
  enum Column {
    Number,
    Letters,
    Judgement,
    Seams,
    Expected,
    Bees,
    Brood,
    Stores,
    Queen,
    LastLook,
    Status,
    Boxes,
    Stand,
    Tasks,
    ColumnCount
  };
  explicit HiveTableModel(widgets::SeasonHub& hub, QObject* parent = nullptr);
  void refresh();
  [[nodiscard]] std::optional<base::HiveId> hiveAt(int row) const;
  [[nodiscard]] int rowOf(const base::HiveId& hive) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role) const override;

 private:
  struct Line {
    base::HiveId hive;
    widgets::HiveFacts facts;
    QPixmap mark;
    double beesOrder = -1, seamsOrder = -1, storesOrder = -1, expectedOrder = -1, broodOrder = -1;
    int lookOrder = -1;
    int boxesOrder = 0;
    bool weak = false;
  };
  [[nodiscard]] QString text(const Line& line, int column) const;
  /// Every text of the line, and what its letters mean.
  [[nodiscard]] QString words(const Line& line) const;

  widgets::SeasonHub& m_hub;
  std::vector<Line> m_lines;
};

/// The table twin of the map.
class HiveTable : public QTableView {
  Q_OBJECT
 public:
  explicit HiveTable(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  void refresh();
  [[nodiscard]] const HiveTableModel& hives() const { return *m_model; }
  /// The selected hives as they stand in the list.
  [[nodiscard]] std::vector<base::HiveId> chosenHives() const;
  /// Shows only the hives with all of these words; the chosen hive stays chosen.
  void setFilter(const QString& words);

 Q_SIGNALS:
  void hiveOpened(const outyard::base::HiveId& hive);
  void menuAsked(const std::optional<outyard::base::HiveId>& hive, const QPoint& globalPoint);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  void showSelection();
  [[nodiscard]] std::optional<base::HiveId> hiveAt(const QModelIndex& index) const;

  widgets::SeasonHub& m_hub;
  HiveTableModel* m_model;
  HiveFilter* m_filter;
  bool m_following = false;
};

}  // namespace outyard::yards
