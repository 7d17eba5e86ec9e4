// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <optional>
#include <string>
#include <vector>

#include "ui/widgets/session_model.h"

namespace outyard::main_window {

/// One figure that the program counts with.
struct FigureRow {
  QString group, name;
  std::string setting;    ///< name of the setting; for frames the column of the type's row
  std::string frameType;  ///< empty but for frames
  double shipped = 0;
  bool hasShipped = true;  ///< an own frame type has nothing shipped
  std::optional<double> own;
  double low = 0, high = 0;
  QString unit, source;
};

/// Every figure with what the outfit counts with, what is shipped, range, unit and source. A value
/// typed in is a setting of the season: kept in the file, undone like everything else.
class FiguresModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column { Group, Name, Value, Shipped, Range, Unit, Source, Count };
  explicit FiguresModel(widgets::SeasonHub& hub, QObject* parent = nullptr);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  /// Refuses what is no number and what is out of the range, with a sentence through refused().
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  /// Back to what is shipped.
  bool reset(int row);
  [[nodiscard]] const FigureRow& row(int row) const {
    return m_rows.at(static_cast<std::size_t>(row));
  }
  [[nodiscard]] QStringList groups() const;
  /// A frame type of the outfit's own; false when the name cannot be used (the reason is said).
  bool addFrameType(const QString& name);

 Q_SIGNALS:
  void refused(const QString& why);

 private:
  void fill();
  bool put(const FigureRow& row, std::optional<double> value);

  widgets::SeasonHub& m_hub;
  std::vector<FigureRow> m_rows;
};

}  // namespace outyard::main_window
