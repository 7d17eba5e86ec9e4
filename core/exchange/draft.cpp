// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/draft.h"

namespace outyard::exchange {

using apiary::TableId;

void Draft::set(apiary::Row row, Origin origin, bool made) {
  const std::string key = apiary::rowKey(row);
  const TableId table = row.table;
  const auto [it, fresh] =
      m_index[static_cast<std::size_t>(table)].try_emplace(key, m_changes.size());
  if (fresh) {
    m_changes.push_back({table, key, m_current.row(table, key), std::nullopt});
    m_marks.push_back({origin, made});
  }
  apiary::Change& change = m_changes[it->second];
  apiary::ChangeList step{{table, key, fresh ? change.before : std::move(change.after), {}}};
  step.front().after = std::move(row);
  m_next.apply(step);
  change.after = std::move(step.front().after);
}

bool Draft::isMade(TableId table, const std::string& key) const {
  const auto& index = m_index[static_cast<std::size_t>(table)];
  const auto it = index.find(key);
  return it != index.end() && m_marks[it->second].made;
}

std::optional<Origin> Draft::origin(TableId table, const std::string& key) const {
  const auto& index = m_index[static_cast<std::size_t>(table)];
  const auto it = index.find(key);
  if (it == index.end()) return std::nullopt;
  return m_marks[it->second].origin;
}

void Draft::finish(ImportResult& result) {
  std::array<TableReport, apiary::kTableCount> report{};
  for (std::size_t t = 0; t < report.size(); ++t) {
    report[t].table = static_cast<TableId>(t);
    report[t].equal = m_equal[t];
  }
  result.changes.reserve(m_changes.size());
  for (std::size_t i = 0; i < m_changes.size(); ++i) {
    apiary::Change& change = m_changes[i];
    TableReport& r = report[static_cast<std::size_t>(change.table)];
    if (change.before == change.after) {
      if (!m_marks[i].made) ++r.equal;
      continue;
    }
    if (m_marks[i].made) {
      ++r.made;
    } else if (change.before) {
      ++r.replaced;
    } else {
      ++r.added;
    }
    result.changes.push_back(std::move(change));
  }
  for (const auto& r : report) {
    if (r.added + r.equal + r.replaced + r.made > 0) result.report.push_back(r);
  }
}

std::string Draft::fileName(TableId table) const {
  const auto it = m_names.find(table);
  return it != m_names.end() ? it->second : apiary::tableSpec(table).name + ".csv";
}

}  // namespace outyard::exchange
