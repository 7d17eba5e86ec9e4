// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <memory>
#include <vector>

#include "core/planning/season_calendar.h"

namespace outyard::calendar {

/// The calendar as a list, for those who do not look at the board, and for files: a line for each
/// yard and week with something in it.
class CalendarModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column { Yard, Week, Flow, Ready, Boosts, Treatments, Honey, Work, Hours, ColumnCount };
  explicit CalendarModel(QObject* parent = nullptr) : QAbstractTableModel(parent) {}
  void show(std::shared_ptr<const planning::SeasonCalendar> calendar, const QStringList& names);
  [[nodiscard]] std::pair<std::size_t, std::size_t> cellOf(int row) const {
    return m_rows.at(static_cast<std::size_t>(row));
  }

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role) const override;

 private:
  std::shared_ptr<const planning::SeasonCalendar> m_calendar;
  QStringList m_names;
  std::vector<std::pair<std::size_t, std::size_t>> m_rows;
};

}  // namespace outyard::calendar
