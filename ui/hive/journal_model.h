// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <optional>
#include <vector>

#include "core/apiary/season.h"
#include "ui/adapt/units.h"
#include "ui/hive/record_words.h"

namespace outyard::hive {

/// One record of a hive's journal.
struct JournalLine {
  apiary::TableId table{};
  base::RecordId record;
  base::Date date;
  std::optional<base::TimeOfDay> time;
  JournalKind kind = JournalKind::Note;
  QString words, who;
  bool corrected = false;  ///< a later record stands in its place
  bool withdrawn = false;
  bool ofOtherHive = false;  ///< the record belongs to another hive's journal
  [[nodiscard]] bool counts() const { return !corrected && !withdrawn; }
};

/// The journal of a hive, newest first. Records that no longer count are hidden unless asked for,
/// then struck through and said in words.
class JournalModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column { kDate, kKind, kWords, kWho, kColumnCount };
  explicit JournalModel(QObject* parent = nullptr) : QAbstractTableModel(parent) {}

  void load(const apiary::Season& season, const std::optional<base::HiveId>& hive,
            const adapt::Units& units);
  void setKind(std::optional<JournalKind> kind);
  void setShowAll(bool all);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role) const override;
  [[nodiscard]] const JournalLine& line(int row) const;
  /// Number of records that no longer count.
  [[nodiscard]] int hiddenCount() const;
  [[nodiscard]] int rowOf(const base::RecordId& record) const;  ///< -1 = not shown

 private:
  void filter();

  std::vector<JournalLine> m_all;
  std::vector<std::size_t> m_shown;
  std::optional<JournalKind> m_kind;
  bool m_showAll = false;
};

}  // namespace outyard::hive
