// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/stack_table.h"

#include <algorithm>

#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/hive/stack_words.h"

namespace outyard::hive {

void StackTable::load(const apiary::HiveCombs& combs) {
  beginResetModel();
  m_combs = combs;
  m_rows.clear();
  for (const auto& box : m_combs.boxes) {
    for (std::size_t slot = 1; slot <= box.frames.size(); ++slot) {
      m_rows.push_back({box.position, static_cast<int>(slot)});
    }
  }
  endResetModel();
}

int StackTable::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int StackTable::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : kColumnCount;
}

QVariant StackTable::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || (role != Qt::DisplayRole && role != Qt::ToolTipRole)) return {};
  const auto at = pick(index.row());
  const auto& frame = *m_combs.frame(at.box, at.slot);
  switch (index.column()) {
    case kBox:
      return at.box;
    case kComb:
      return at.slot;
    case kSideA:
    case kSideB:
      return sideWords(frame.sides[index.column() == kSideA ? 0 : 1]);
    default:
      break;
  }
  std::optional<base::Date> latest;
  for (const auto& side : frame.sides) {
    if (side && (!latest || side->seenOn > *latest)) latest = side->seenOn;
  }
  return latest ? adapt::dateText(*latest) : QString();
}

QVariant StackTable::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  switch (section) {
    case kBox:
      return tr("Box");
    case kComb:
      return tr("Comb");
    case kSideA:
      return tr("Side a");
    case kSideB:
      return tr("Side b");
    default:
      return tr("Seen on");
  }
}

widgets::StackPick StackTable::pick(int row) const {
  return m_rows.at(static_cast<std::size_t>(row));
}

int StackTable::rowOf(const widgets::StackPick& pick) const {
  const auto it = std::find(m_rows.begin(), m_rows.end(), pick);
  return it == m_rows.end() ? -1 : static_cast<int>(it - m_rows.begin());
}

}  // namespace outyard::hive
