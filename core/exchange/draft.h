// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>
#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/apiary/season.h"
#include "core/exchange/fault_list.h"
#include "core/exchange/made_keys.h"

namespace outyard::exchange {

/// Where a planned row comes from: a line of a table file; for a made row the line it was made for.
struct Origin {
  apiary::TableId table{};
  std::size_t line = 0;
};

/// The season as it would stand after the import, and the changes that lead there.
class Draft {
 public:
  explicit Draft(const apiary::Season& current) : m_current(current), m_next(current) {}

  [[nodiscard]] const apiary::Season& current() const { return m_current; }
  [[nodiscard]] const apiary::Season& next() const { return m_next; }

  void set(apiary::Row row, Origin origin, bool made);
  template <class T>
  void put(const T& record, Origin origin, bool made = true) {
    set(apiary::toRow(record), origin, made);
  }
  /// Puts a state row of a record table with a made id that is free.
  template <class T>
  T make(T record, Origin origin) {
    const std::string key = madeKey(apiary::toRow(record));
    int n = 1;
    while (m_next.find<T>(numbered(key, n))) ++n;
    record.record = base::RecordId(numbered(key, n));
    put(record, origin);
    return record;
  }
  /// True for rows that this import made: they may still be changed in place.
  [[nodiscard]] bool isMade(apiary::TableId table, const std::string& key) const;
  [[nodiscard]] std::optional<Origin> origin(apiary::TableId table, const std::string& key) const;
  /// True when a row of that table is new or other in this import.
  [[nodiscard]] bool touches(apiary::TableId table) const {
    return !m_index[static_cast<std::size_t>(table)].empty();
  }

  void passedOver(apiary::TableId table) { ++m_equal[static_cast<std::size_t>(table)]; }
  /// Drops what changes nothing, counts, and hands the changes over.
  void finish(ImportResult& result);

  [[nodiscard]] std::string fileName(apiary::TableId table) const;
  void setFileName(apiary::TableId table, std::string name) { m_names[table] = std::move(name); }

 private:
  const apiary::Season& m_current;
  apiary::Season m_next;
  apiary::ChangeList m_changes;
  struct Mark {
    Origin origin;
    bool made = false;
  };
  std::vector<Mark> m_marks;  ///< beside m_changes
  std::array<std::unordered_map<std::string, std::size_t>, apiary::kTableCount> m_index;
  std::array<int, apiary::kTableCount> m_equal{};
  std::map<apiary::TableId, std::string> m_names;
};

}  // namespace outyard::exchange
