// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/validate.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "core/apiary/state.h"
#include "core/base/text.h"

namespace outyard::apiary {
namespace {

using base::Message;
using base::message;

constexpr std::size_t kMostCharacters = 4000;
constexpr std::array<std::string_view, 9> kShippedTypes{
    "langstroth_deep", "langstroth_medium", "langstroth_shallow", "dadant_brood",
    "dadant_super",    "national_brood",    "national_super",     "zander",
    "german_normal"};

std::string joined(std::span<const std::string_view> codes) {
  std::string out;
  for (auto c : codes) {
    if (!out.empty()) out += ", ";
    out += c;
  }
  return out;
}

class Faults {
 public:
  explicit Faults(std::vector<Fault>& out, int most) : m_out(out), m_most(most) {}
  void add(TableId table, const std::string& key, const std::string& column, Message what) {
    if (static_cast<int>(m_out.size()) < m_most) {
      m_out.push_back({table, key, column, std::move(what)});
    }
  }

 private:
  std::vector<Fault>& m_out;
  int m_most;
};

void checkCombSide(const CombSide& s, const std::string& key, Faults& faults) {
  const std::array parts{s.eggsPct,   s.openPct,  s.sealedPct, s.dronePct,  s.pollenPct,
                         s.nectarPct, s.honeyPct, s.emptyPct,  s.undrawnPct};
  double sum = 0;
  int given = 0;
  for (const auto& p : parts) {
    sum += p.value_or(0);
    given += p.has_value() ? 1 : 0;
  }
  if (given == static_cast<int>(parts.size()) && std::abs(sum - 100) > 1) {
    faults.add(TableId::Frames, key, "", message("check.comb_sum", sum));
  } else if (sum > 101) {
    faults.add(TableId::Frames, key, "", message("check.comb_over", sum));
  }
}

struct Reference {
  std::string_view column;
  TableId target;
};
constexpr std::array<Reference, 14> kReferences{{{"yard", TableId::Yards},
                                                 {"other_yard", TableId::Yards},
                                                 {"hive", TableId::Hives},
                                                 {"other_hive", TableId::Hives},
                                                 {"donor_hive", TableId::Hives},
                                                 {"queen", TableId::Queens},
                                                 {"mother", TableId::Queens},
                                                 {"inspection", TableId::Inspections},
                                                 {"plan", TableId::Plans},
                                                 {"visit", TableId::Visits},
                                                 {"sheet", TableId::Sheets},
                                                 {"task", TableId::Tasks},
                                                 {"frame_type", TableId::FrameTypes},
                                                 {"supersedes", TableId::Yards}}};

Message unknownReference(TableId target, const std::string& value) {
  switch (target) {
    case TableId::Yards:
      return message("check.unknown_yard", value);
    case TableId::Hives:
      return message("check.unknown_hive", value);
    case TableId::Queens:
      return message("check.unknown_queen", value);
    case TableId::FrameTypes:
      return message("check.unknown_frame_type", value);
    default:
      return message("check.unknown_reference", value, tableSpec(target).name);
  }
}

template <class T>
bool standsIn(const Season& season, const std::string& key) {
  return season.find<T>(key) != nullptr;
}

bool stands(const Season& season, TableId target, const std::string& key) {
  return withTable(target,
                   [&]<class T>(std::type_identity<T>) { return standsIn<T>(season, key); });
}

template <class T>
void checkReferences(const Season& season, Faults& faults) {
  const TableSpec& spec = tableSpec(TableOf<T>::kId);
  struct Check {
    std::size_t column;
    TableId target;
  };
  std::vector<Check> checks;
  for (std::size_t i = 0; i < spec.columns.size(); ++i) {
    const auto& c = spec.columns[i];
    if (spec.isRecord && c.name == "supersedes") {
      checks.push_back({i, spec.id});
      continue;
    }
    for (const auto& r : kReferences) {
      if (r.column != c.name || c.name == "supersedes") continue;
      const bool ownKey = c.key && r.target == spec.id;
      if (!ownKey) checks.push_back({i, r.target});
    }
  }
  if (checks.empty()) return;
  const auto& columns = columnsOf<T>();
  for (const auto& [key, record] : season.table<T>()) {
    for (const Check& check : checks) {
      const Value v = columns[check.column].get(record);
      const auto* text = std::get_if<std::string>(&v);
      if (!text) continue;
      if (check.target == TableId::FrameTypes &&
          std::find(kShippedTypes.begin(), kShippedTypes.end(), *text) != kShippedTypes.end()) {
        continue;
      }
      // A queen's mother may be a queen from before the season: only the text is kept.
      if (columns[check.column].spec.name == "mother") continue;
      if (!stands(season, check.target, *text)) {
        faults.add(spec.id, key, columns[check.column].spec.name,
                   unknownReference(check.target, *text));
      }
    }
  }
}

template <class T>
void checkSupersedes(const Season& season, Faults& faults) {
  std::map<std::string, std::string> by;  // superseded record -> superseder
  for (const auto& [key, r] : season.table<T>()) {
    if (!r.supersedes) continue;
    const std::string& old = r.supersedes->str();
    if (!by.emplace(old, key).second) {
      faults.add(TableOf<T>::kId, key, "supersedes", message("check.superseded_twice", old));
    }
  }
  for (const auto& [key, r] : season.table<T>()) {
    if (!r.supersedes) continue;
    std::set<std::string> seen{key};
    std::string at = r.supersedes->str();
    while (true) {
      if (!seen.insert(at).second) {
        faults.add(TableOf<T>::kId, key, "supersedes", message("check.supersede_circle", key));
        break;
      }
      const T* next = season.find<T>(at);
      if (!next || !next->supersedes) break;
      at = next->supersedes->str();
    }
  }
}

bool overlap(const ColonyStay& a, const ColonyStay& b) {
  const bool aEndsBefore = a.toDate && *a.toDate <= b.fromDate;
  const bool bEndsBefore = b.toDate && *b.toDate <= a.fromDate;
  return !aEndsBefore && !bEndsBefore;
}

void checkStays(const Season& season, Faults& faults) {
  std::map<std::string, std::vector<const ColonyStay*>> byColony;
  for (const auto& [key, s] : season.table<ColonyStay>()) {
    if (season.counts(s)) byColony[s.colony.str()].push_back(&s);
  }
  for (const auto& [colony, stays] : byColony) {
    for (std::size_t i = 0; i < stays.size(); ++i) {
      for (std::size_t k = i + 1; k < stays.size(); ++k) {
        if (overlap(*stays[i], *stays[k])) {
          faults.add(
              TableId::Colonies, stays[k]->record.str(), "from_date",
              message("check.stays_overlap", colony, stays[i]->hive.str(), stays[k]->hive.str()));
        }
      }
    }
  }
  for (const auto& [hiveKey, hive] : season.table<Hive>()) {
    const auto stays = season.journal<ColonyStay>(hive.hive);
    for (std::size_t i = 0; i < stays.size(); ++i) {
      for (std::size_t k = i + 1; k < stays.size(); ++k) {
        if (stays[i]->colony != stays[k]->colony && overlap(*stays[i], *stays[k]) &&
            stays[i]->place.value_or(ColonyPlace::Main) ==
                stays[k]->place.value_or(ColonyPlace::Main)) {
          faults.add(TableId::Colonies, stays[k]->record.str(), "place",
                     message("check.place_taken", hiveKey, stays[i]->colony.str(),
                             stays[k]->colony.str()));
        }
      }
    }
  }
}

/// A record of a hive must mean a colony that lives there on its day.
template <class T>
void checkColonyNamed(const Season& season, Faults& faults) {
  for (const auto& [key, r] : season.table<T>()) {
    if (!season.counts(r)) continue;
    std::vector<ColonyId> there;
    for (const ColonyStay* s : season.journal<ColonyStay>(r.hive)) {
      // A record on the last day of a stay (to_date) still may speak of the one that left.
      if (s->fromDate <= r.date && (!s->toDate || r.date <= *s->toDate)) there.push_back(s->colony);
    }
    if (r.colony) {
      if (std::find(there.begin(), there.end(), *r.colony) == there.end()) {
        faults.add(TableOf<T>::kId, key, "colony",
                   message("check.colony_not_there", r.colony->str(), r.hive.str(), r.date.iso()));
      }
    } else if constexpr (!std::is_same_v<T, Event>) {
      int sharing = 0;
      for (const ColonyStay* s : season.journal<ColonyStay>(r.hive)) {
        if (s->fromDate < r.date && (!s->toDate || r.date < *s->toDate)) ++sharing;
      }
      if (sharing > 1) {
        faults.add(TableOf<T>::kId, key, "colony",
                   message("check.colony_must_be_named", r.hive.str(), r.date.iso()));
      }
    }
  }
}

void checkCombSides(const Season& season, Faults& faults) {
  for (const auto& [key, s] : season.table<CombSide>()) {
    const Inspection* i = season.find<Inspection>(s.inspection.str());
    if (!i) continue;
    if (i->hive != s.hive || i->date != s.date) {
      faults.add(TableId::Frames, key, "inspection",
                 message("check.side_of_other_inspection", s.hive.str(), s.date.iso()));
    }
  }
}

void checkBoxes(const Season& season, Faults& faults) {
  for (const auto& [hiveKey, hive] : season.table<Hive>()) {
    std::map<Date, std::vector<const Box*>> stacks;
    for (const Box* b : season.journal<Box>(hive.hive)) stacks[b->date].push_back(b);
    for (const auto& [date, boxes] : stacks) {
      std::set<int> positions;
      for (const Box* b : boxes) {
        if (!positions.insert(b->position).second) {
          faults.add(TableId::Boxes, b->record.str(), "position",
                     message("check.position_twice", hiveKey, date.iso(), b->position));
        }
      }
      if (*positions.rbegin() != static_cast<int>(positions.size())) {
        faults.add(TableId::Boxes, boxes.front()->record.str(), "position",
                   message("check.position_gap", hiveKey, date.iso()));
      }
    }
  }
}

}  // namespace

std::span<const std::string_view> shippedFrameTypes() {
  return kShippedTypes;
}

std::string valueText(const Value& value) {
  if (const auto* s = std::get_if<std::string>(&value)) return *s;
  if (const auto* i = std::get_if<std::int64_t>(&value)) return std::to_string(*i);
  if (const auto* d = std::get_if<double>(&value)) return base::shortest(*d);
  return {};
}

base::Result<Value> parseValue(const ColumnSpec& column, std::string_view text) {
  const auto clean = base::normalised(text);
  if (!clean) return base::fail(message("check.not_text"));
  if (clean->empty()) {
    if (column.required) return base::fail(message("check.required"));
    return Value{};
  }
  switch (column.type) {
    case ColumnType::Text:
      if (base::codePoints(*clean) > kMostCharacters) {
        return base::fail(message("check.too_long", kMostCharacters));
      }
      return Value{*clean};
    case ColumnType::Integer: {
      const auto n = base::parseInteger(*clean);
      if (!n) return base::fail(message("check.not_whole", *clean));
      if (static_cast<double>(*n) < column.min || static_cast<double>(*n) > column.max) {
        return base::fail(message("check.range", *clean, column.min, column.max));
      }
      return Value{static_cast<std::int64_t>(*n)};
    }
    case ColumnType::Real: {
      const auto v = base::parseNumber(*clean);
      if (!v) return base::fail(message("check.not_number", *clean));
      if (*v < column.min || *v > column.max) {
        return base::fail(message("check.range", *clean, column.min, column.max));
      }
      return Value{*v};
    }
    case ColumnType::Date:
      if (!Date::parse(*clean)) return base::fail(message("check.not_date", *clean));
      return Value{*clean};
    case ColumnType::Time:
      if (!TimeOfDay::parse(*clean)) return base::fail(message("check.not_time", *clean));
      return Value{*clean};
    case ColumnType::Flag:
      if (*clean != "0" && *clean != "1") return base::fail(message("check.not_flag", *clean));
      return Value{static_cast<std::int64_t>(*clean == "1" ? 1 : 0)};
    case ColumnType::Code:
      if (std::find(column.codes.begin(), column.codes.end(), *clean) == column.codes.end()) {
        return base::fail(message("check.not_code", *clean, joined(column.codes)));
      }
      return Value{*clean};
  }
  return base::fail(message("check.not_text"));
}

std::vector<Fault> checkRow(const Row& row) {
  std::vector<Fault> out;
  Faults faults(out, 100);
  const TableSpec& spec = tableSpec(row.table);
  const std::string key = rowKey(row);
  for (std::size_t i = 0; i < spec.columns.size(); ++i) {
    const auto checked = parseValue(spec.columns[i], valueText(row.values.at(i)));
    if (!checked) faults.add(row.table, key, spec.columns[i].name, checked.failure().messages[0]);
  }
  if (!out.empty()) return out;
  switch (row.table) {
    case TableId::Frames:
      checkCombSide(fromRow<CombSide>(row), key, faults);
      break;
    case TableId::Colonies: {
      const auto s = fromRow<ColonyStay>(row);
      if (s.toDate && *s.toDate < s.fromDate) {
        faults.add(row.table, key, "to_date", message("check.to_before_from"));
      }
      break;
    }
    case TableId::Weather: {
      const auto w = fromRow<WeatherDay>(row);
      if (w.tminC > w.tmaxC) faults.add(row.table, key, "tmin_c", message("check.min_over_max"));
      break;
    }
    case TableId::Washes: {
      const auto w = fromRow<Wash>(row);
      if (w.mites > w.bees) faults.add(row.table, key, "mites", message("check.mites_over_bees"));
      break;
    }
    case TableId::Tasks: {
      const auto t = fromRow<Task>(row);
      if (t.earliest && t.latest && *t.latest < *t.earliest) {
        faults.add(row.table, key, "latest", message("check.latest_before_earliest"));
      }
      break;
    }
    default:
      break;
  }
  return out;
}

std::vector<Fault> checkSeason(const Season& season, int most) {
  std::vector<Fault> out;
  Faults faults(out, most);
  for (int i = 0; i < kTableCount; ++i) {
    withTable(static_cast<TableId>(i), [&]<class T>(std::type_identity<T>) {
      checkReferences<T>(season, faults);
      if constexpr (std::is_base_of_v<RecordHead, T>) checkSupersedes<T>(season, faults);
    });
  }
  checkStays(season, faults);
  checkColonyNamed<Inspection>(season, faults);
  checkColonyNamed<Wash>(season, faults);
  checkColonyNamed<Event>(season, faults);
  checkCombSides(season, faults);
  checkBoxes(season, faults);
  return out;
}

}  // namespace outyard::apiary
