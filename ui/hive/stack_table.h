// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>

#include "core/apiary/comb_state.h"
#include "ui/widgets/stack_view.h"

namespace outyard::hive {

/// The stack as a table, box by box from below: the same combs for those who read by ear.
class StackTable : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column { kBox, kComb, kSideA, kSideB, kSeen, kColumnCount };
  explicit StackTable(QObject* parent = nullptr) : QAbstractTableModel(parent) {}
  void load(const apiary::HiveCombs& combs);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role) const override;
  [[nodiscard]] widgets::StackPick pick(int row) const;
  /// -1 when it is not in the table (a box).
  [[nodiscard]] int rowOf(const widgets::StackPick& pick) const;

 private:
  apiary::HiveCombs m_combs;
  std::vector<widgets::StackPick> m_rows;
};

}  // namespace outyard::hive
