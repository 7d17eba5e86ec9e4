// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/season.h"

#include <algorithm>
#include <stdexcept>

namespace outyard::apiary {
namespace {

template <class T>
concept HiveJournal = std::is_base_of_v<RecordHead, T>;

template <class T>
Date dateOf(const T& r) {
  if constexpr (requires { r.fromDate; }) {
    return r.fromDate;
  } else {
    return r.date;
  }
}
template <class T>
int minuteOf(const T& r) {
  if constexpr (requires { r.time; }) {
    return r.time ? r.time->minutes() : -1;
  } else {
    return -1;
  }
}

/// Oldest first; on one day by time, then in the order in which they were entered, then by id.
template <class T>
bool earlier(const T* a, const T* b) {
  return std::tuple(dateOf(*a), minuteOf(*a), a->enteredAt, a->record) <
         std::tuple(dateOf(*b), minuteOf(*b), b->enteredAt, b->record);
}

template <class T>
void addSorted(std::vector<const T*>& list, const T* item) {
  list.insert(std::upper_bound(list.begin(), list.end(), item, earlier<T>), item);
}
template <class T>
void removeFrom(std::vector<const T*>& list, const T* item) {
  list.erase(std::remove(list.begin(), list.end(), item), list.end());
}

template <class T>
std::vector<const T*> rangeOf(const std::map<std::string, T>& table, const RecordId& inspection) {
  std::vector<const T*> out;
  const std::string prefix = inspection.str() + '\x1F';
  for (auto it = table.lower_bound(prefix); it != table.end(); ++it) {
    if (it->first.compare(0, prefix.size(), prefix) != 0) break;
    out.push_back(&it->second);
  }
  return out;
}

}  // namespace

ChangeList reversed(const ChangeList& changes) {
  ChangeList out;
  out.reserve(changes.size());
  for (auto it = changes.rbegin(); it != changes.rend(); ++it) {
    out.push_back(Change{it->table, it->key, it->after, it->before});
  }
  return out;
}

Season::Season(const Season& other) : m_tables(other.m_tables), m_revision(other.m_revision) {
  reindex();
}

Season& Season::operator=(const Season& other) {
  if (this != &other) {
    m_tables = other.m_tables;
    m_revision = other.m_revision;
    reindex();
  }
  return *this;
}

void Season::reindex() {
  m_byHive = {};
  m_eventsAsOther.clear();
  m_staysByColony.clear();
  for (auto& s : m_superseded) s.clear();
  std::apply(
      [this](auto&... tables) {
        const auto refill = [this]<class T>(Table<T>& t) {
          Table<T> old;
          old.swap(t);
          for (auto& [key, record] : old) insert<T>(key, std::move(record));
        };
        (refill(tables), ...);
      },
      m_tables);
}

template <class T>
void Season::insert(const std::string& key, T record) {
  auto& t = std::get<Table<T>>(m_tables);
  const auto it = t.emplace(key, std::move(record)).first;
  const T& r = it->second;
  if constexpr (HiveJournal<T>) {
    addSorted(std::get<ByHive<T>>(m_byHive).rows[r.hive.str()], &r);
    if (r.supersedes) {
      m_superseded[static_cast<int>(TableOf<T>::kId)].insert(r.supersedes->str());
    }
  }
  if constexpr (std::is_same_v<T, Event>) {
    if (r.otherHive && *r.otherHive != r.hive) addSorted(m_eventsAsOther[r.otherHive->str()], &r);
  }
  if constexpr (std::is_same_v<T, ColonyStay>) addSorted(m_staysByColony[r.colony.str()], &r);
}

template <class T>
void Season::erase(const std::string& key) {
  auto& t = std::get<Table<T>>(m_tables);
  const auto it = t.find(key);
  const T& r = it->second;
  if constexpr (HiveJournal<T>) {
    removeFrom(std::get<ByHive<T>>(m_byHive).rows[r.hive.str()], &r);
    if (r.supersedes) {
      m_superseded[static_cast<int>(TableOf<T>::kId)].erase(r.supersedes->str());
    }
  }
  if constexpr (std::is_same_v<T, Event>) {
    if (r.otherHive && *r.otherHive != r.hive) removeFrom(m_eventsAsOther[r.otherHive->str()], &r);
  }
  if constexpr (std::is_same_v<T, ColonyStay>) removeFrom(m_staysByColony[r.colony.str()], &r);
  t.erase(it);
}

std::optional<Row> Season::row(TableId table, const std::string& key) const {
  return withTable(table, [&]<class T>(std::type_identity<T>) -> std::optional<Row> {
    const T* r = find<T>(key);
    if (!r) return std::nullopt;
    return toRow(*r);
  });
}

std::vector<Row> Season::rows(TableId table) const {
  return withTable(table, [&]<class T>(std::type_identity<T>) {
    std::vector<Row> out;
    for (const auto& [key, r] : this->table<T>()) out.push_back(toRow(r));
    return out;
  });
}

template <class T>
const std::vector<const T*>& Season::allOf(const HiveId& hive) const {
  static const std::vector<const T*> kNone;
  const auto& rows = std::get<ByHive<T>>(m_byHive).rows;
  const auto it = rows.find(hive.str());
  return it == rows.end() ? kNone : it->second;
}

template <class T>
std::vector<const T*> Season::journal(const HiveId& hive) const {
  std::vector<const T*> out;
  for (const T* r : allOf<T>(hive)) {
    if (counts(*r)) out.push_back(r);
  }
  return out;
}

#define OUTYARD_JOURNAL(T)                                                \
  template std::vector<const T*> Season::journal<T>(const HiveId&) const; \
  template const std::vector<const T*>& Season::allOf<T>(const HiveId&) const;
OUTYARD_JOURNAL(ColonyStay)
OUTYARD_JOURNAL(Box)
OUTYARD_JOURNAL(Inspection)
OUTYARD_JOURNAL(Wash)
OUTYARD_JOURNAL(Event)
OUTYARD_JOURNAL(Place)
OUTYARD_JOURNAL(FrameMove)
#undef OUTYARD_JOURNAL

std::vector<const Event*> Season::eventsTouching(const HiveId& hive) const {
  std::vector<const Event*> out = journal<Event>(hive);
  const auto it = m_eventsAsOther.find(hive.str());
  if (it != m_eventsAsOther.end()) {
    for (const Event* e : it->second) {
      if (counts(*e)) addSorted(out, e);
    }
  }
  return out;
}

std::vector<const ColonyStay*> Season::stays(const ColonyId& colony) const {
  std::vector<const ColonyStay*> out;
  const auto it = m_staysByColony.find(colony.str());
  if (it == m_staysByColony.end()) return out;
  for (const ColonyStay* s : it->second) {
    if (counts(*s)) out.push_back(s);
  }
  return out;
}

std::vector<const CombSide*> Season::combSides(const RecordId& inspection) const {
  auto out = rangeOf(table<CombSide>(), inspection);
  // Keys sort as text ("10" before "2"); people read boxes and slots as numbers.
  std::sort(out.begin(), out.end(), [](const CombSide* a, const CombSide* b) {
    return std::tuple(a->box, a->slot, a->side) < std::tuple(b->box, b->slot, b->side);
  });
  return out;
}

std::vector<const SeamCount*> Season::seamCounts(const RecordId& inspection) const {
  auto out = rangeOf(table<SeamCount>(), inspection);
  std::sort(out.begin(), out.end(),
            [](const SeamCount* a, const SeamCount* b) { return a->box < b->box; });
  return out;
}

bool Season::isSuperseded(TableId table, const RecordId& record) const {
  return m_superseded[static_cast<int>(table)].contains(record.str());
}

std::optional<std::string> Season::setting(const std::string& name) const {
  const Setting* s = find<Setting>(name);
  if (!s) return std::nullopt;
  return s->value;
}

std::optional<Date> Season::workingDate() const {
  const auto text = setting("working_date");
  return text ? Date::parse(*text) : std::nullopt;
}

void Season::apply(const ChangeList& changes) {
  for (const Change& c : changes) {
    withTable(c.table, [&]<class T>(std::type_identity<T>) {
      const bool stands = find<T>(c.key) != nullptr;
      if (stands != c.before.has_value()) {
        throw std::logic_error("change does not fit: " + tableSpec(c.table).name);
      }
      if (stands) erase<T>(c.key);
      if (c.after) insert<T>(c.key, fromRow<T>(*c.after));
    });
  }
  ++m_revision;
}

}  // namespace outyard::apiary
