// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "core/apiary/season.h"
#include "core/apiary/state.h"
#include "core/session/session.h"

namespace outyard::session {

/// Collects the rows that one command writes. What is put is seen at once by find and journal, so
/// that a command can build on its own rows; the season itself is not touched. take() gives one
/// change for each row, in the order of first touch, without those that change nothing.
class ChangeBuilder {
 public:
  ChangeBuilder(const apiary::Season& season, const Context& context)
      : m_season(season), m_context(context) {}

  /// The season as it was before the command.
  [[nodiscard]] const apiary::Season& before() const { return m_season; }
  [[nodiscard]] std::string newId() const { return m_context.ids.next(); }
  [[nodiscard]] std::string nowUtc() const { return m_context.clock.nowUtc(); }

  /// A new record id and the time of entry. Rows written by stateHead afterwards belong to it.
  apiary::RecordHead leadHead();
  /// For a state row that goes with the last leadHead record: its id is that record's with a
  /// number behind a point, by which withdrawRecord finds it. Without a lead, a new id.
  apiary::RecordHead stateHead();

  /// Adds the row, or replaces the one with its key.
  template <class T>
  void put(const T& row) {
    set(apiary::TableOf<T>::kId, apiary::rowKey(apiary::toRow(row)), apiary::toRow(row));
  }
  template <class T>
  void remove(const std::string& key) {
    set(apiary::TableOf<T>::kId, key, std::nullopt);
  }
  /// The row as it stands with what was put so far.
  template <class T>
  [[nodiscard]] std::optional<T> find(const std::string& key) const {
    const auto it = m_pending.find({apiary::TableOf<T>::kId, key});
    if (it != m_pending.end()) {
      const auto& after = m_changes[it->second].after;
      if (!after) return std::nullopt;
      return apiary::fromRow<T>(*after);
    }
    const T* row = m_season.find<T>(key);
    return row ? std::optional<T>(*row) : std::nullopt;
  }
  /// Records of the hive that count, with what was put so far, oldest first.
  template <class T>
  [[nodiscard]] std::vector<T> journal(const base::HiveId& hive) const;

  /// Ends the stay by a row that supersedes it.
  void endStay(const apiary::ColonyStay& stay, base::Date date);
  /// A stay from the date on; colony, queen and origin as given.
  void startStay(apiary::ColonyStay stay, const base::HiveId& hive, apiary::ColonyPlace place,
                 base::Date date);
  /// The whole stack of the hive from the date on. Rows of that very date are superseded position
  /// by position, those too many by void rows. An empty stack only withdraws the rows of the date.
  void setStack(const base::HiveId& hive, base::Date date,
                const std::vector<apiary::BoxState>& boxes);
  /// The hive stands there from place.fromDate on; a place of that very day is superseded.
  void setPlace(apiary::Place place);
  /// Makes the hives row say what the latest place that counts says.
  void mirrorHive(const base::HiveId& hive);
  /// Ticks the task off by the record.
  void tickOff(const base::TaskId& task, const base::RecordId& record, base::Date date);

  [[nodiscard]] apiary::ChangeList take();

 private:
  void set(apiary::TableId table, const std::string& key, std::optional<apiary::Row> after);

  const apiary::Season& m_season;
  const Context& m_context;
  apiary::ChangeList m_changes;
  std::map<std::pair<apiary::TableId, std::string>, std::size_t> m_pending;
  std::string m_lead;
  int m_stateRows = 0;
};

template <class T>
std::vector<T> ChangeBuilder::journal(const base::HiveId& hive) const {
  std::vector<T> out;
  std::set<std::string> superseded;
  const auto table = apiary::TableOf<T>::kId;
  for (const T* row : m_season.journal<T>(hive)) {
    if (!m_pending.contains({table, row->record.str()})) out.push_back(*row);
  }
  for (const auto& change : m_changes) {
    if (change.table != table || !change.after) continue;
    T row = apiary::fromRow<T>(*change.after);
    if (row.supersedes) superseded.insert(row.supersedes->str());
    if (row.hive == hive && !row.isVoid) out.push_back(std::move(row));
  }
  std::erase_if(out, [&](const T& row) { return superseded.contains(row.record.str()); });
  const auto dateOf = [](const T& row) {
    if constexpr (requires { row.fromDate; }) {
      return row.fromDate;
    } else {
      return row.date;
    }
  };
  std::stable_sort(out.begin(), out.end(), [&](const T& a, const T& b) {
    return std::tuple(dateOf(a), a.enteredAt, a.record) <
           std::tuple(dateOf(b), b.enteredAt, b.record);
  });
  return out;
}

}  // namespace outyard::session
