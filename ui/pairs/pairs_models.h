// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <QStringList>
#include <optional>
#include <vector>

#include "ui/pairs/plan_runner.h"

namespace outyard::pairs {

/// A table of text that was worked out before: what the steps of the plan show.
class TextTable : public QAbstractTableModel {
  Q_OBJECT
 public:
  struct Line {
    QStringList cells;
    std::optional<base::ColonyId> colony;
    std::optional<base::HiveId> hive;
    bool strong = false;  ///< set in bold
  };
  explicit TextTable(QStringList head, QObject* parent = nullptr)
      : QAbstractTableModel(parent), m_head(std::move(head)) {}
  void setLines(std::vector<Line> lines);
  [[nodiscard]] const Line& line(int row) const {
    return m_lines.at(static_cast<std::size_t>(row));
  }
  [[nodiscard]] int rowOf(const base::ColonyId& colony) const;  ///< -1 = not there

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role) const override;

 private:
  QStringList m_head;
  std::vector<Line> m_lines;
};

QStringList needHead();
/// Step 1: every colony, those that want a decision first, with the evidence.
std::vector<TextTable::Line> needLines(const planning::BoostPlan& plan);
QStringList giveHead();
/// Step 2: who can give, what it can spare and what it keeps.
std::vector<TextTable::Line> giveLines(const planning::BoostPlan& plan);
QStringList barredHead();
/// Step 2: who is barred from giving or receiving, and why.
std::vector<TextTable::Line> barredLines(const planning::BoostPlan& plan);
QStringList pairHead();
/// Step 3: one line for each colony that was decided.
std::vector<TextTable::Line> pairLines(const planning::BoostPlan& plan);

}  // namespace outyard::pairs
