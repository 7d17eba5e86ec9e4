// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "core/apiary/schema.h"

namespace outyard::apiary {

/// One row before and after: what a transaction, an undo step and a notice are made of. Before
/// empty = the row is new; after empty = it is taken out.
struct Change {
  TableId table{};
  std::string key;
  std::optional<Row> before, after;
  bool operator==(const Change&) const = default;
};
using ChangeList = std::vector<Change>;
/// The same steps backwards.
ChangeList reversed(const ChangeList& changes);

/// Everything recorded, in memory. Holds rows by key and, for each hive, its journal in order of
/// time. Pointers and references into it stay good until the row itself changes.
class Season {
 public:
  template <class T>
  using Table = std::map<std::string, T>;

  Season() = default;
  Season(const Season& other);  // the indexes point into the copy
  Season& operator=(const Season& other);
  Season(Season&&) noexcept = default;
  Season& operator=(Season&&) noexcept = default;

  template <class T>
  [[nodiscard]] const Table<T>& table() const {
    return std::get<Table<T>>(m_tables);
  }
  template <class T>
  [[nodiscard]] const T* find(const std::string& key) const {
    const auto& t = table<T>();
    const auto it = t.find(key);
    return it == t.end() ? nullptr : &it->second;
  }
  [[nodiscard]] const Yard* yard(const YardId& id) const { return find<Yard>(id.str()); }
  [[nodiscard]] const Hive* hive(const HiveId& id) const { return find<Hive>(id.str()); }
  [[nodiscard]] const Queen* queen(const QueenId& id) const { return find<Queen>(id.str()); }
  [[nodiscard]] std::optional<Row> row(TableId table, const std::string& key) const;
  /// All rows of a table, by key.
  [[nodiscard]] std::vector<Row> rows(TableId table) const;

  /// Journal rows of a hive that count (neither void nor superseded), oldest first; for T one of
  /// ColonyStay, Box, Inspection, Wash, Event, Place, FrameMove. Events that only name the hive as
  /// other_hive are in eventsTouching.
  template <class T>
  [[nodiscard]] std::vector<const T*> journal(const HiveId& hive) const;
  /// Every row of the hive in that table, superseded and void ones too.
  template <class T>
  [[nodiscard]] const std::vector<const T*>& allOf(const HiveId& hive) const;
  /// Events that name the hive as hive or other_hive and count, oldest first.
  [[nodiscard]] std::vector<const Event*> eventsTouching(const HiveId& hive) const;
  /// Stays of a colony that count, oldest first.
  [[nodiscard]] std::vector<const ColonyStay*> stays(const ColonyId& colony) const;
  [[nodiscard]] std::vector<const CombSide*> combSides(const RecordId& inspection) const;
  [[nodiscard]] std::vector<const SeamCount*> seamCounts(const RecordId& inspection) const;
  /// True when the record is neither void nor superseded.
  template <class T>
  [[nodiscard]] bool counts(const T& record) const {
    return !record.isVoid && !isSuperseded(TableOf<T>::kId, record.record);
  }
  [[nodiscard]] bool isSuperseded(TableId table, const RecordId& record) const;
  /// Text of a setting, or nullopt when the shipped value holds.
  [[nodiscard]] std::optional<std::string> setting(const std::string& name) const;
  /// The day that window and commands take as today, when the season sets one.
  [[nodiscard]] std::optional<Date> workingDate() const;

  /// Applies changes as they are; a change whose "before" is not what stands here throws
  /// std::logic_error (a bug: the caller checks first).
  void apply(const ChangeList& changes);
  /// Counts up with every apply; derived results carry the number they were made from.
  [[nodiscard]] std::uint64_t revision() const { return m_revision; }

 private:
  template <class T>
  struct ByHive {
    std::unordered_map<std::string, std::vector<const T*>> rows;
  };
  template <class T>
  void insert(const std::string& key, T record);
  template <class T>
  void erase(const std::string& key);
  void reindex();

  std::tuple<Table<Yard>, Table<Hive>, Table<Queen>, Table<ColonyStay>, Table<Box>,
             Table<Inspection>, Table<CombSide>, Table<SeamCount>, Table<Wash>, Table<Event>,
             Table<Task>, Table<WeatherDay>, Table<Flow>, Table<GearCount>, Table<Setting>,
             Table<Place>, Table<Stand>, Table<Feature>, Table<FrameMove>, Table<FrameType>,
             Table<Plan>, Table<PlanRow>, Table<Visit>, Table<SheetRow>, Table<SheetLine>>
      m_tables;
  std::tuple<ByHive<ColonyStay>, ByHive<Box>, ByHive<Inspection>, ByHive<Wash>, ByHive<Event>,
             ByHive<Place>, ByHive<FrameMove>>
      m_byHive;
  std::unordered_map<std::string, std::vector<const Event*>> m_eventsAsOther;
  std::unordered_map<std::string, std::vector<const ColonyStay*>> m_staysByColony;
  std::unordered_set<std::string> m_superseded[kTableCount];
  std::uint64_t m_revision = 0;
};

}  // namespace outyard::apiary
