// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cctype>
#include <set>
#include <tuple>
#include <unordered_map>
#include <unordered_set>

#include "core/apiary/validate.h"
#include "core/exchange/draft.h"
#include "core/exchange/state_rows.h"
#include "core/exchange/table_reader.h"
#include "core/exchange/tables.h"
#include "core/exchange/weather_file.h"

namespace outyard::exchange {
namespace {

using apiary::CombSide;
using apiary::Date;
using apiary::Event;
using apiary::Inspection;
using apiary::Row;
using apiary::SeamCount;
using apiary::Season;
using apiary::TableId;
using apiary::Value;
using base::message;

constexpr int kAllFaults = 1'000'000;
/// Shares of the work, measured with 50,000 inspections: reading, rows, the season as a whole.
constexpr double kRead = 0.45, kRows = 0.8, kStates = 0.85;

std::size_t indexOf(TableId table) {
  return static_cast<std::size_t>(table);
}

const std::string* text(const Row& row, std::string_view column) {
  const int i = apiary::tableSpec(row.table).columnIndex(column);
  return i < 0 ? nullptr : std::get_if<std::string>(&row.values[static_cast<std::size_t>(i)]);
}

/// The row as the season would hold it: what is left out and what is said to be so are one.
Row tidy(const Row& row) {
  return apiary::withTable(row.table, [&]<class T>(std::type_identity<T>) {
    return apiary::toRow(apiary::fromRow<T>(row));
  });
}

class Import {
 public:
  Import(const Season& current, const Date& today, base::Progress& progress)
      : m_draft(current), m_ticker(progress) {
    m_input.today = today;
  }

  void readFolder(const FileSource& source) {
    const auto names = source.list();
    if (!names) return m_faults.add(source.place(), names.failure());
    bool any = false;
    std::vector<std::pair<TableId, std::string>> files;
    for (const std::string& name : *names) {
      const auto dot = name.rfind('.');
      std::string ending = dot == std::string::npos ? std::string{} : name.substr(dot);
      std::transform(ending.begin(), ending.end(), ending.begin(),
                     [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
      if (ending != ".csv") continue;
      any = true;
      const apiary::TableSpec* spec = apiary::findTable(name.substr(0, dot));
      if (!spec || name != spec->name + ".csv") {
        m_faults.add(name, 0, {}, message("exchange.unknown_table", name, tableNames()));
        continue;
      }
      files.emplace_back(spec->id, name);
    }
    if (!any) return m_faults.add(source.place(), 0, {}, message("exchange.no_tables"));
    std::sort(files.begin(), files.end());
    double done = 0;
    for (const auto& [id, name] : files) {
      if (m_ticker.stopped()) return;
      const auto bytes = source.read(name);
      // The share of one file in the reading is not known before all are read: the count serves.
      const double next = done + kRead / static_cast<double>(files.size());
      m_ticker.stage(done, next);
      done = next;
      if (!bytes) {
        m_faults.add(name, bytes.failure());
        m_files[indexOf(id)].unreadable = true;
        continue;
      }
      m_files[indexOf(id)] = readTable(apiary::tableSpec(id), name, *bytes, m_faults, m_ticker);
    }
  }

  void readWeather(const std::string& fileName, std::string_view bytes, const WeatherAsk& ask) {
    if (!m_draft.current().yard(ask.yard)) {
      return m_faults.add(fileName, 0, {}, message("exchange.weather_yard", ask.yard.str()));
    }
    m_draft.setFileName(TableId::Weather, fileName);
    m_ticker.stage(0, kRead);
    TableFile& file = m_files[indexOf(TableId::Weather)];
    const WeatherLayout layout = layoutOf(bytes);
    if (layout == WeatherLayout::Own) {
      file = readTable(apiary::tableSpec(TableId::Weather), fileName, bytes, m_faults, m_ticker,
                       {{"yard", ask.yard.str(), false},
                        {"kind", std::string(apiary::code(apiary::WeatherKind::Observed)), true}});
      std::erase_if(file.rows, [&](const FileRow& row) {
        const auto date = Date::parse(*text(row.row, "date"));
        return date && ((ask.from && *date < *ask.from) || (ask.to && *date > *ask.to));
      });
    } else {
      StationDays station = readStation(layout, fileName, bytes, ask, m_faults, m_ticker);
      file = std::move(station.rows);
      m_notes = stationNotes(station, file);
    }
    if (!m_faults.empty()) return;
    if (const auto gaps = gapMessage(file)) m_notes.push_back(*gaps);
    if (!ask.normals) return;
    if (auto usual = usualWeather(file, fileName, m_faults, m_notes)) {
      file = std::move(*usual);
      m_gone = formerUsual(m_draft.current(), ask.yard, file);
    }
  }

  ImportResult run() {
    ImportResult result;
    takeRows();
    if (!m_ticker.stopped()) checkRecordIds();
    // State rows made from half of the records would only raise faults that are none.
    const bool clean = m_faults.empty();
    if (!m_ticker.stopped() && clean) makeStates();
    if (!m_ticker.stopped()) checkWhole(clean);
    if (m_ticker.stopped()) {
      result.cancelled = true;
      return result;
    }
    m_ticker.stage(1, 1);
    if (m_faults.empty()) {
      m_draft.finish(result);
      for (auto& change : m_gone) result.changes.push_back(std::move(change));
      result.notes = std::move(m_notes);
    } else {
      m_faults.moveInto(result);
    }
    return result;
  }

 private:
  static std::string tableNames() {
    std::string out;
    for (const auto& s : apiary::tableSpecs()) out += (out.empty() ? "" : ", ") + s.name;
    return out;
  }

  void fault(TableId table, std::size_t line, std::string column, base::Message what) {
    m_faults.add(m_draft.fileName(table), line, std::move(column), std::move(what));
  }

  void takeRows() {
    std::size_t total = 1, done = 0;
    for (const auto& f : m_files) total += f.rows.size();
    m_ticker.stage(kRead, kRows);
    // What other rows refer to comes first; comb sides and seams need every inspection.
    for (int t = 0; t < apiary::kTableCount; ++t) {
      const auto id = static_cast<TableId>(t);
      if (apiary::tableSpec(id).isRecord) numberRecords(id);
      for (FileRow& row : m_files[indexOf(id)].rows) {
        if (!m_ticker.step(static_cast<double>(++done) / static_cast<double>(total))) return;
        if (id == TableId::Frames) findInspection<CombSide>(row);
        if (id == TableId::Seams) findInspection<SeamCount>(row);
        takeRow(row);
      }
    }
  }

  void numberRecords(TableId id) {
    KeyCounter counter;
    auto& rows = m_files[indexOf(id)].rows;
    for (const auto& r : rows) {
      if (const auto* given = std::get_if<std::string>(&r.row.values[0])) counter.taken(*given);
    }
    for (auto& r : rows) {
      if (std::holds_alternative<std::monostate>(r.row.values[0])) {
        r.row.values[0] = counter.next(r.row);
      }
    }
  }

  void takeRow(FileRow& file) {
    const TableId id = file.row.table;
    const auto wrong = apiary::checkRow(file.row);
    for (const auto& f : wrong) fault(id, file.line, f.column, f.what);
    if (id == TableId::Settings) checkSetting(file);
    const std::string key = apiary::rowKey(file.row);
    const auto [first, fresh] = m_lines[indexOf(id)].try_emplace(key, file.line);
    if (!fresh) {
      fault(id, file.line, keyColumn(id), message("exchange.key_twice", shown(key), first->second));
    }
    if (!wrong.empty() || !fresh) {
      m_files[indexOf(id)].brokenKeys.insert(key);
      return;
    }
    Row row = tidy(file.row);
    if (id == TableId::Hives) noteHive(row, file.line);
    const auto before = m_draft.current().row(id, key);
    if (before && *before == row && id != TableId::Hives) return m_draft.passedOver(id);
    const bool journal =
        apiary::tableSpec(id).isRecord || id == TableId::Frames || id == TableId::Seams;
    if (before && *before != row && journal) {
      fault(id, file.line, differing(*before, row), message("exchange.key_known", shown(key)));
      return;
    }
    m_draft.set(std::move(row), {id, file.line}, false);
    if (journal) noteRecord(id, key, file.line);
  }

  static std::string keyColumn(TableId id) {
    for (const auto& c : apiary::tableSpec(id).columns) {
      if (c.key) return c.name;
    }
    return {};
  }
  /// A key for people: its parts with a space between.
  static std::string shown(std::string key) {
    std::replace(key.begin(), key.end(), '\x1F', ' ');
    return key;
  }
  static std::string differing(const Row& a, const Row& b) {
    const auto& columns = apiary::tableSpec(a.table).columns;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (a.values[i] != b.values[i]) return columns[i].name;
    }
    return {};
  }

  void checkSetting(const FileRow& file) {
    const auto* name = text(file.row, "name");
    const auto* value = text(file.row, "value");
    if (name && value && *name == "working_date" && !Date::parse(*value)) {
      fault(TableId::Settings, file.line, "value", message("check.not_date", *value));
    }
  }

  /// The status is derived: it is kept for a comparison and never stored.
  void noteHive(Row& row, std::size_t line) {
    auto hive = apiary::fromRow<apiary::Hive>(row);
    m_input.hives.push_back({hive, {TableId::Hives, line}});
    hive.status.reset();
    row = apiary::toRow(hive);
  }

  void noteRecord(TableId id, const std::string& key, std::size_t line) {
    const Season& season = m_draft.next();
    const Origin origin{id, line};
    if (id == TableId::Inspections) {
      m_input.touched.emplace(season.find<Inspection>(key)->hive.str(), origin);
    } else if (id == TableId::Washes) {
      m_input.touched.emplace(season.find<apiary::Wash>(key)->hive.str(), origin);
    } else if (id == TableId::Events) {
      const Event* e = season.find<Event>(key);
      m_input.touched.emplace(e->hive.str(), origin);
      if (e->otherHive) m_input.touched.emplace(e->otherHive->str(), origin);
      m_input.events.push_back({e, origin});
    }
  }

  /// A comb side or seam count without `inspection` belongs to the only one of its hive, colony
  /// and day; where there is none, one is made.
  template <class T>
  void findInspection(FileRow& file) {
    Value& cell = file.row.values[0];
    if (!std::holds_alternative<std::monostate>(cell)) return;
    const auto* hive = text(file.row, "hive");
    const auto* day = text(file.row, "date");
    const auto* named = text(file.row, "colony");
    const std::string colony = named ? *named : std::string{};
    const std::string key = *hive + '\x1F' + *day + '\x1F' + colony;
    if (const auto it = m_found.find(key); it != m_found.end()) {
      cell = it->second;
      return;
    }
    const Date date = Date::parse(*day).value();
    std::vector<const Inspection*> fit, unnamed;
    for (const auto* i : m_draft.next().template journal<Inspection>(base::HiveId(*hive))) {
      if (i->date != date) continue;
      if (colony.empty() || (i->colony && i->colony->str() == colony)) {
        fit.push_back(i);
      } else if (!i->colony) {
        unnamed.push_back(i);
      }
    }
    if (fit.empty()) fit = unnamed;
    if (fit.size() > 1) {
      fault(file.row.table, file.line, "inspection",
            message("exchange.which_inspection", fit.size(), *hive, *day));
    }
    std::string record;
    if (!fit.empty()) {
      record = fit.front()->record.str();
    } else {
      Inspection i;
      i.hive = base::HiveId(*hive);
      i.date = date;
      if (!colony.empty()) i.colony = base::ColonyId(colony);
      const Origin origin{file.row.table, file.line};
      record = m_draft.make(i, origin).record.str();
      m_input.touched.emplace(*hive, origin);
    }
    m_found.emplace(key, record);
    cell = record;
  }

  /// The id of a record is unique in the season, whatever its table.
  void checkRecordIds() {
    std::unordered_map<std::string, TableId> owner;
    for (const auto& spec : apiary::tableSpecs()) {
      if (!spec.isRecord) continue;
      apiary::withTable(spec.id, [&]<class T>(std::type_identity<T>) {
        for (const auto& [key, record] : m_draft.next().template table<T>()) {
          const auto [it, fresh] = owner.try_emplace(key, spec.id);
          if (fresh) continue;
          for (const TableId id : {spec.id, it->second}) {
            const auto origin = m_draft.origin(id, key);
            const TableId other = id == spec.id ? it->second : spec.id;
            if (!origin) continue;
            fault(id, origin->line, "record",
                  message("exchange.record_in_two_tables", key, apiary::tableSpec(other).name));
            break;
          }
        }
      });
    }
  }

  void makeStates() {
    m_ticker.stage(kRows, kStates);
    const Season& season = m_draft.next();
    std::erase_if(m_input.events, [&](const FileEvent& e) { return !season.counts(*e.event); });
    std::stable_sort(
        m_input.events.begin(), m_input.events.end(), [](const FileEvent& a, const FileEvent& b) {
          const auto minute = [](const Event& e) { return e.time ? e.time->minutes() : -1; };
          return std::tuple(a.event->date, minute(*a.event)) <
                 std::tuple(b.event->date, minute(*b.event));
        });
    makeFirstColonies(m_draft, m_input);
    makeColonyRows(m_draft, m_input, m_faults);
    makePlaceRows(m_draft, m_input, m_faults);
    if (m_faults.empty()) checkStatus(m_draft, m_input, m_faults);
  }

  void checkWhole(bool clean) {
    m_ticker.stage(kStates, 1);
    std::optional<std::set<std::tuple<TableId, std::string, std::string, std::string>>> old;
    std::set<std::tuple<std::string, std::size_t, std::string>> told;
    for (auto& f : apiary::checkSeason(m_draft.next(), kAllFaults)) {
      if (!clean && !stillTrue(f)) continue;
      const auto origin = m_draft.origin(f.table, f.key);
      if (!origin) {
        // Not a row of these files: only a fault of the import when it was none before.
        if (!old) {
          old.emplace();
          for (const auto& o : apiary::checkSeason(m_draft.current(), kAllFaults)) {
            old->emplace(o.table, o.key, o.column, o.what.key);
          }
        }
        if (old->contains({f.table, f.key, f.column, f.what.key})) continue;
        fault(f.table, 0, f.column, message("exchange.season_row", shown(f.key), f.what));
        continue;
      }
      // One cause may show in a file's row and in rows that were made from it.
      std::string name = m_draft.fileName(origin->table);
      std::string id = f.what.key;
      for (const auto& a : f.what.args) {
        if (const auto* s = std::get_if<std::string>(&a)) id += '\x1F' + *s;
      }
      if (!told.emplace(name, origin->line, id).second) continue;
      m_faults.add(std::move(name), origin->line, f.column, std::move(f.what));
    }
  }

  /// With faults in single rows only what those rows cannot have caused is told: references to
  /// things that no file and no season knows.
  [[nodiscard]] bool stillTrue(const apiary::Fault& f) const {
    static constexpr std::array<std::pair<std::string_view, TableId>, 4> kKeys{
        {{"check.unknown_yard", TableId::Yards},
         {"check.unknown_hive", TableId::Hives},
         {"check.unknown_queen", TableId::Queens},
         {"check.unknown_frame_type", TableId::FrameTypes}}};
    if (f.what.args.empty()) return false;
    const auto* name = std::get_if<std::string>(&f.what.args[0]);
    if (!name) return false;
    const auto known = [&](TableId id) {
      const TableFile& file = m_files[indexOf(id)];
      return file.unreadable || file.brokenKeys.contains(*name);
    };
    for (const auto& [key, id] : kKeys) {
      if (f.what.key == key) return !known(id);
    }
    if (f.what.key != "check.unknown_reference" || f.what.args.size() < 2) return false;
    const auto* table = std::get_if<std::string>(&f.what.args[1]);
    const auto* spec = table ? apiary::findTable(*table) : nullptr;
    return spec && !known(spec->id);
  }

  Draft m_draft;
  FaultList m_faults;
  std::vector<base::Message> m_notes;
  apiary::ChangeList m_gone;  ///< rows that what was read takes the place of
  Ticker m_ticker;
  StateInput m_input;
  std::array<TableFile, apiary::kTableCount> m_files;
  std::array<std::unordered_map<std::string, std::size_t>, apiary::kTableCount> m_lines;
  std::unordered_map<std::string, std::string> m_found;  ///< inspections of sides, by hive and day
};

}  // namespace

std::string placeText(const ImportFault& fault) {
  std::string out = fault.file;
  if (fault.line > 0) out += ':' + std::to_string(fault.line);
  if (!fault.column.empty()) out += ": " + fault.column;
  return out;
}

base::Message reportMessage(const TableReport& r) {
  const std::string& name = apiary::tableSpec(r.table).name;
  if (r.replaced == 0 && r.made == 0) {
    return message("exchange.report", name, r.added, r.equal);
  }
  return message("exchange.report_more", name, r.added, r.equal, r.replaced, r.made);
}

std::optional<base::Message> ImportResult::moreFaults() const {
  if (faultCount <= faults.size()) return std::nullopt;
  return message("exchange.more_faults", faultCount - faults.size());
}

base::Message importTitle() {
  return message("exchange.title_import");
}

ImportResult planImport(const Season& current, const FileSource& files, const Date& today,
                        base::Progress& progress) {
  Import import(current, today, progress);
  import.readFolder(files);
  return import.run();
}

ImportResult planWeatherImport(const Season& current, const std::string& fileName,
                               std::string_view text, const base::YardId& yard,
                               base::Progress& progress) {
  WeatherAsk ask;
  ask.yard = yard;
  return planWeatherImport(current, fileName, text, ask, progress);
}

ImportResult planWeatherImport(const Season& current, const std::string& fileName,
                               std::string_view text, const WeatherAsk& ask,
                               base::Progress& progress) {
  // Weather rows are dated themselves: no day of today is needed.
  Import import(current, Date{}, progress);
  import.readWeather(fileName, text, ask);
  return import.run();
}

}  // namespace outyard::exchange
