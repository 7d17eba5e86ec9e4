// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <memory>
#include <vector>

#include "ui/charts/course_data.h"

namespace outyard::charts {

/// The same course as lines of a table, for those who read it out and for the CSV file: every day
/// that the chart has figures, looks or journal letters for, about a week apart.
class CourseTable : public QAbstractTableModel {
  Q_OBJECT
 public:
  explicit CourseTable(QObject* parent = nullptr) : QAbstractTableModel(parent) {}
  void setData(std::shared_ptr<const CourseData> data);
  [[nodiscard]] base::Date dayOf(int row) const;
  /// The line nearest to a day.
  [[nodiscard]] int rowNear(base::Date day) const;

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role) const override;

 private:
  [[nodiscard]] QString text(base::Date day, int column) const;

  std::shared_ptr<const CourseData> m_data;
  std::vector<base::Date> m_days;
};

}  // namespace outyard::charts
