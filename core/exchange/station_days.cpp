// SPDX-License-Identifier: GPL-3.0-or-later
// The layouts of GHCN-Daily, read value by value.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "core/base/quantity.h"
#include "core/base/text.h"
#include "core/exchange/csv.h"
#include "core/exchange/weather_file.h"

namespace outyard::exchange {
namespace {

using base::Date;
using base::message;

enum Element { kTmin, kTmax, kRain, kWind, kElements };
constexpr std::array<std::string_view, kElements> kNames{"TMIN", "TMAX", "PRCP", "AWND"};

struct Given {
  double value = 0;
  std::size_t line = 0;
};
using Day = std::array<std::optional<Given>, kElements>;

std::optional<Element> elementOf(std::string_view name) {
  for (std::size_t i = 0; i < kNames.size(); ++i) {
    if (kNames[i] == name) return static_cast<Element>(i);
  }
  return std::nullopt;
}

std::string trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t");
  if (from == std::string_view::npos) return {};
  return std::string(text.substr(from, text.find_last_not_of(" \t") - from + 1));
}

class Station {
 public:
  Station(std::string fileName, const WeatherAsk& ask, FaultList& faults, Ticker& ticker)
      : m_file(std::move(fileName)), m_ask(ask), m_faults(faults), m_ticker(ticker) {}

  void readTable(std::string_view text);
  void readElements(std::string_view text);
  void readFixed(std::string_view text);
  StationDays finish(WeatherLayout layout);

 private:
  void fault(std::size_t line, std::string column, base::Message what) {
    m_faults.add(m_file, line, std::move(column), std::move(what));
  }
  bool oneStation(const std::string& id, std::size_t line);
  std::optional<Date> dateOf(const std::string& text, std::size_t line);
  void take(Date date, Element element, const std::string& text, bool failed, std::size_t line);
  void csvFaults(const CsvReader& reader);
  std::optional<WeatherUnits> unitsShown(WeatherLayout layout);
  double toBase(Element element, double value, WeatherUnits units) const;
  void addDay(Date date, const Day& day, WeatherUnits units, StationDays& out);

  std::string m_file;
  const WeatherAsk& m_ask;
  FaultList& m_faults;
  Ticker& m_ticker;
  std::string m_station;
  std::map<Date, Day> m_days;
  int m_flagged = 0;
  bool m_pointInTemperature = false, m_pointInRain = false;
  int m_temperatures = 0, m_over60 = 0, m_over140 = 0;
  std::size_t m_told = 0;
};

bool Station::oneStation(const std::string& id, std::size_t line) {
  if (m_station.empty()) m_station = id;
  if (m_station == id) return true;
  if (m_told++ == 0) fault(line, "STATION", message("exchange.weather_stations", m_station, id));
  return false;
}

std::optional<Date> Station::dateOf(const std::string& text, std::size_t line) {
  auto date = Date::parse(text);
  if (!date && text.size() == 8) {
    date = Date::parse(text.substr(0, 4) + '-' + text.substr(4, 2) + '-' + text.substr(6, 2));
  }
  if (!date) fault(line, "DATE", message("exchange.weather_date", text));
  return date;
}

void Station::take(Date date, Element element, const std::string& text, bool failed,
                   std::size_t line) {
  // 9999 with either sign is what the network writes for a missing value.
  if (text.empty() || text == "-9999" || text == "9999" || text == "-9999.0") return;
  const auto value = base::parseNumber(text);
  const std::string column(kNames[element]);
  if (!value) return fault(line, column, message("exchange.weather_number", text));
  if (failed) {
    ++m_flagged;
    return;
  }
  if ((m_ask.from && date < *m_ask.from) || (m_ask.to && date > *m_ask.to)) return;
  auto& place = m_days[date][element];
  if (place) return fault(line, column, message("exchange.weather_twice", date.iso(), place->line));
  place = Given{*value, line};
  const bool point = text.find('.') != std::string::npos;
  if (element == kTmin || element == kTmax) {
    m_pointInTemperature = m_pointInTemperature || point;
    ++m_temperatures;
    if (std::abs(*value) > 60) ++m_over60;
    if (std::abs(*value) > 140) ++m_over140;
  } else if (element == kRain) {
    m_pointInRain = m_pointInRain || point;
  }
}

void Station::csvFaults(const CsvReader& reader) {
  for (const auto& f : reader.faults()) {
    fault(f.line, std::to_string(f.field + 1), message("exchange.at_character", f.column, f.what));
  }
}

void Station::readTable(std::string_view text) {
  CsvReader reader(text);
  reader.next();
  std::array<int, kElements> at{}, flags{};
  at.fill(-1);
  flags.fill(-1);
  int station = -1, day = -1;
  for (std::size_t i = 0; i < reader.fields().size(); ++i) {
    const std::string name = trimmed(reader.fields()[i].text);
    const int n = static_cast<int>(i);
    if (name == "STATION") station = n;
    if (name == "DATE") day = n;
    if (const auto e = elementOf(name)) at[*e] = n;
    const std::string_view kEnding = "_ATTRIBUTES";
    if (name.size() > kEnding.size() && name.ends_with(kEnding)) {
      if (const auto e = elementOf(name.substr(0, name.size() - kEnding.size()))) flags[*e] = n;
    }
  }
  const std::size_t columns = reader.fields().size();
  for (const Element e : {kTmax, kTmin}) {
    if (at[e] < 0) {
      fault(1, std::string(kNames[e]), message("exchange.weather_no_column", kNames[e]));
    }
  }
  if (!m_faults.empty()) return;
  while (reader.next()) {
    if (!m_ticker.step(static_cast<double>(reader.position()) /
                       static_cast<double>(text.size() + 1))) {
      return;
    }
    const auto& f = reader.fields();
    if (f.size() == 1 && trimmed(f[0].text).empty()) continue;
    if (f.size() != columns) {
      fault(reader.line(), {},
            f.size() < columns ? message("exchange.line_short", f.size(), columns)
                               : message("exchange.line_long", f.size(), columns));
      continue;
    }
    const auto cell = [&](int i) { return trimmed(f[static_cast<std::size_t>(i)].text); };
    if (!oneStation(cell(station), reader.line())) continue;
    const auto date = dateOf(cell(day), reader.line());
    if (!date) continue;
    for (int e = 0; e < kElements; ++e) {
      const auto i = static_cast<std::size_t>(e);
      if (at[i] < 0) continue;
      bool failed = false;  // attributes: measurement, quality and source flag, with commas between
      if (flags[i] >= 0) {
        const std::string a = cell(flags[i]);
        const auto comma = a.find(',');
        failed = comma != std::string::npos && comma + 1 < a.size() && a[comma + 1] != ',' &&
                 a[comma + 1] != ' ';
      }
      take(*date, static_cast<Element>(e), cell(at[i]), failed, reader.line());
    }
  }
  csvFaults(reader);
}

void Station::readElements(std::string_view text) {
  CsvReader reader(text);
  while (reader.next()) {
    if (!m_ticker.step(static_cast<double>(reader.position()) /
                       static_cast<double>(text.size() + 1))) {
      return;
    }
    const auto& f = reader.fields();
    if (f.size() == 1 && trimmed(f[0].text).empty()) continue;
    if (f.size() < 4) {
      fault(reader.line(), {}, message("exchange.line_short", f.size(), 8));
      continue;
    }
    if (trimmed(f[0].text) == "ID") continue;  // the line of names
    const auto element = elementOf(trimmed(f[2].text));
    if (!element || !oneStation(trimmed(f[0].text), reader.line())) continue;
    const auto date = dateOf(trimmed(f[1].text), reader.line());
    if (!date) continue;
    const bool failed = f.size() > 5 && !trimmed(f[5].text).empty();
    take(*date, *element, trimmed(f[3].text), failed, reader.line());
  }
  csvFaults(reader);
}

void Station::readFixed(std::string_view text) {
  // ID 1-11, year 12-15, month 16-17, element 18-21, then 31 times value (5) and three flags.
  std::size_t line = 0, at = 0;
  while (at < text.size()) {
    std::size_t end = text.find('\n', at);
    if (end == std::string_view::npos) end = text.size();
    std::string_view row = text.substr(at, end - at);
    if (!row.empty() && row.back() == '\r') row.remove_suffix(1);
    at = end + 1;
    ++line;
    if (!m_ticker.step(static_cast<double>(at) / static_cast<double>(text.size() + 1))) return;
    if (trimmed(row).empty()) continue;
    if (row.size() < 21) {
      fault(line, {}, message("exchange.weather_fixed_short", row.size()));
      continue;
    }
    const auto element = elementOf(row.substr(17, 4));
    if (!element || !oneStation(std::string(row.substr(0, 11)), line)) continue;
    const auto year = base::parseInteger(row.substr(11, 4));
    const auto month = base::parseInteger(row.substr(15, 2));
    if (!year || !month || !Date::fromYmd(static_cast<int>(*year), static_cast<int>(*month), 1)) {
      fault(line, "DATE", message("exchange.weather_date", row.substr(11, 6)));
      continue;
    }
    for (std::size_t day = 0; day < 31; ++day) {
      const std::size_t from = 21 + day * 8;
      if (from >= row.size()) break;  // blanks at the end may have been cut
      const std::string value = trimmed(row.substr(from, 5));
      const bool failed = from + 6 < row.size() && row[from + 6] != ' ';
      const auto date = Date::fromYmd(static_cast<int>(*year), static_cast<int>(*month),
                                      static_cast<int>(day) + 1);
      if (!date) {
        if (value.empty() || value == "-9999") continue;
        fault(line, std::string(kNames[*element]),
              message("exchange.weather_no_such_day", day + 1, row.substr(11, 6)));
        continue;
      }
      take(*date, *element, value, failed, line);
    }
  }
}

/// A table does not say its units; its figures do, unless they are few.
std::optional<WeatherUnits> Station::unitsShown(WeatherLayout layout) {
  if (layout != WeatherLayout::Table) return WeatherUnits::Tenths;
  if (m_ask.units) return m_ask.units;
  // No place has 60 degrees C and none 140 degrees F; one slip of the pen must not turn the units
  // of a whole file, so a few such figures leave it open.
  const auto share = [&](int over) { return over * 20 >= m_temperatures ? 1 : over == 0 ? 0 : -1; };
  if (m_pointInTemperature) {
    if (share(m_over60) == 1) return WeatherUnits::Us;
    if (share(m_over60) == 0) return WeatherUnits::Metric;
  } else {
    if (share(m_over140) == 1) return WeatherUnits::Tenths;
    // Degrees F have no decimals in the network's tables, inches have.
    if (share(m_over140) == 0 && m_pointInRain) return WeatherUnits::Us;
  }
  fault(1, {}, message("exchange.weather_units"));
  return std::nullopt;
}

double Station::toBase(Element element, double value, WeatherUnits units) const {
  if (units == WeatherUnits::Tenths) return value / 10;
  if (units == WeatherUnits::Metric) return value;
  if (element == kRain) return value * base::kMetresPerInch * 1000;
  if (element == kWind) return value * 0.44704;  // miles an hour, exact by definition
  return base::fromFahrenheit(value).value;
}

void Station::addDay(Date date, const Day& day, WeatherUnits units, StationDays& out) {
  const auto given = [&](Element e) -> std::optional<double> {
    if (!day[e]) return std::nullopt;
    // Two decimals: what was measured in tenths comes out as tenths.
    return static_cast<double>(std::llround(toBase(e, day[e]->value, units) * 100)) / 100;
  };
  const auto tmin = given(kTmin), tmax = given(kTmax);
  if (!tmin || !tmax) {
    if (tmin || tmax) ++out.halved;
    return;
  }
  bool good = true;
  for (const auto& [e, value] : {std::pair{kTmin, *tmin}, std::pair{kTmax, *tmax}}) {
    if (value >= -60 && value <= 60) continue;
    fault(day[e]->line, std::string(kNames[e]),
          message("exchange.weather_impossible", date.iso(), value));
    good = false;
  }
  if (good && *tmin > *tmax) {
    fault(day[kTmin]->line, std::string(kNames[kTmin]),
          message("exchange.weather_min_over_max", date.iso(), *tmin, *tmax));
    good = false;
  }
  const auto rain = given(kRain), wind = given(kWind);
  if (rain && (*rain < 0 || *rain > 2000)) {
    fault(day[kRain]->line, std::string(kNames[kRain]),
          message("exchange.weather_rain", date.iso(), *rain));
    good = false;
  }
  if (!good) return;
  apiary::WeatherDay w;
  w.yard = m_ask.yard;
  w.date = date;
  w.tminC = *tmin;
  w.tmaxC = *tmax;
  w.rainMm = rain;
  if (wind && *wind >= 0 && *wind <= 120) w.windMs = wind;
  out.rows.rows.push_back({apiary::toRow(w), day[kTmin]->line});
}

StationDays Station::finish(WeatherLayout layout) {
  StationDays out;
  out.station = m_station;
  out.flagged = m_flagged;
  if (!m_faults.empty()) return out;
  if (m_temperatures == 0) {
    fault(0, {}, message("exchange.weather_no_days"));
    return out;
  }
  const auto units = unitsShown(layout);
  if (!units) return out;
  out.units = *units;
  for (const auto& [date, day] : m_days) addDay(date, day, *units, out);
  if (out.rows.rows.empty() && m_faults.empty()) {
    fault(0, {}, message("exchange.weather_no_days"));
  }
  return out;
}

}  // namespace

StationDays readStation(WeatherLayout layout, const std::string& fileName, std::string_view text,
                        const WeatherAsk& ask, FaultList& faults, Ticker& ticker) {
  Station station(fileName, ask, faults, ticker);
  if (layout == WeatherLayout::Table) station.readTable(text);
  if (layout == WeatherLayout::Elements) station.readElements(text);
  if (layout == WeatherLayout::Fixed) station.readFixed(text);
  return station.finish(layout);
}

}  // namespace outyard::exchange
