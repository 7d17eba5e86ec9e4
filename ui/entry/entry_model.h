// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>

#include "core/session/sheet_entry.h"
#include "ui/widgets/session_model.h"

namespace outyard::entry {

/// The lines of a sheet as a table: line, hive, what was printed, the columns to circle, the tasks
/// to tick. Holds what is typed, also what is wrong with it.
class EntryModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Fixed { kLine, kHive, kExpected, kFirstEntry };
  static constexpr int kFirstTask = kFirstEntry + static_cast<int>(session::kEntryColumns);

  explicit EntryModel(widgets::SeasonHub& hub, QObject* parent = nullptr);
  void setSheet(session::EntrySheet sheet);
  [[nodiscard]] const session::EntrySheet& sheet() const { return m_sheet; }
  /// Who looked, when, how warm: not part of the table.
  void setHead(const session::EntryHead& head) { m_sheet.head = head; }

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation way, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;

  static int columnOf(session::EntryColumn column) {
    return kFirstEntry + static_cast<int>(column);
  }
  /// The column to circle; nullopt for line, hive, expected and tasks.
  static std::optional<session::EntryColumn> entryColumn(int column);
  [[nodiscard]] const session::EntryLine& line(int row) const;
  [[nodiscard]] QString typed(const QModelIndex& index) const;
  /// Why the text cannot stand in the cell; empty when it can.
  [[nodiscard]] QString whyNot(const QModelIndex& index, const QString& text) const;
  /// Something can be typed or ticked there.
  [[nodiscard]] bool open(const QModelIndex& index) const;

 Q_SIGNALS:
  /// A cell changed: the fault or the caution that goes with it, else empty.
  void said(const QString& sentence);
  void edited();

 private:
  [[nodiscard]] QVariant entryData(const QModelIndex& index, session::EntryColumn column,
                                   int role) const;
  [[nodiscard]] QVariant taskData(const QModelIndex& index, int role) const;
  [[nodiscard]] QVariant fixedData(const QModelIndex& index, int role) const;
  [[nodiscard]] const apiary::Task* task(const QModelIndex& index) const;
  [[nodiscard]] QString cautionOf(const session::EntryLine& line,
                                  session::EntryColumn column) const;

  widgets::SeasonHub& m_hub;
  session::EntrySheet m_sheet;
  int m_taskColumns = 0;
};

}  // namespace outyard::entry
