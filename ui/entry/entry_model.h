// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>

#include "core/session/sheet_entry.h"
#include "ui/widgets/session_model.h"

namespace outyard::entry {

/// The lines of a sheet as a table: line, hive, what was printed, the columns to circle, the tasks
/// and boosts to tick. Holds what is typed, also what is wrong with it. A line of a dead or an
/// empty hive has other cells, as on paper: they lie over several of the columns. On a blank line
/// the number of the hive and its origin are typed too.
class EntryModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Fixed { kLine, kHive, kExpected, kFirstEntry };
  static constexpr int kFirstTask = kFirstEntry + static_cast<int>(session::kColonyColumns);

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

  /// Where the cell stands on a line that has it.
  static int columnOf(session::EntryColumn column);
  /// How many columns it lies over.
  static int spanOf(session::EntryColumn column);
  /// What the head of the column says; nullopt for line, hive, expected and tasks.
  static std::optional<session::EntryColumn> entryColumn(int column);
  /// What is typed there on that line; nullopt where nothing is.
  [[nodiscard]] std::optional<session::EntryColumn> cellAt(const QModelIndex& index) const;
  /// The first cell of the line in which something can be typed or ticked; -1 when there is none.
  [[nodiscard]] int firstOpen(int row) const;
  [[nodiscard]] const session::EntryLine& line(int row) const;
  [[nodiscard]] QString typed(const QModelIndex& index) const;
  /// Why the text cannot stand in the cell; empty when it can.
  [[nodiscard]] QString whyNot(const QModelIndex& index, const QString& text) const;
  /// Something can be typed or ticked there.
  [[nodiscard]] bool open(const QModelIndex& index) const;
  /// A printed boost is ticked there, not a task.
  [[nodiscard]] bool isBoost(const QModelIndex& index) const { return boost(index).has_value(); }
  /// The line is that of a colony again; false when it was not marked as found dead.
  bool takeBackDeath(int row);

 Q_SIGNALS:
  /// A cell changed: the fault or the caution that goes with it, else empty.
  void said(const QString& sentence);
  void edited();
  /// The line has other cells than before: a colony was found dead, or that was taken back.
  void reshaped(int row);

 private:
  [[nodiscard]] QVariant entryData(const QModelIndex& index, session::EntryColumn column,
                                   int role) const;
  [[nodiscard]] QVariant taskData(const QModelIndex& index, int role) const;
  [[nodiscard]] QVariant fixedData(const QModelIndex& index, int role) const;
  [[nodiscard]] const apiary::Task* task(const QModelIndex& index) const;
  /// The printed boost that is ticked there, as a place in the sheet's list.
  [[nodiscard]] std::optional<std::size_t> boost(const QModelIndex& index) const;
  [[nodiscard]] QString tickText(const QModelIndex& index) const;
  [[nodiscard]] QString shownText(const session::EntryLine& line, session::EntryColumn column,
                                  bool fault, bool mark) const;
  [[nodiscard]] QString cautionOf(const session::EntryLine& line,
                                  session::EntryColumn column) const;

  /// Who the number on a blank line is, where something is still to be said about it.
  [[nodiscard]] QString numberHint(const session::EntryLine& line) const;
  static void reshape(session::EntryLine& line, session::LineKind before);

  widgets::SeasonHub& m_hub;
  session::EntrySheet m_sheet;
  int m_taskColumns = 0;
};

}  // namespace outyard::entry
