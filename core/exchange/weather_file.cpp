// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/weather_file.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "core/exchange/csv.h"

namespace outyard::exchange {
namespace {

using apiary::WeatherDay;
using apiary::WeatherKind;
using base::Date;
using base::message;

bool digits(std::string_view s) {
  return !s.empty() && std::all_of(s.begin(), s.end(), [](char c) { return c >= '0' && c <= '9'; });
}
bool stationId(std::string_view s) {
  return s.size() == 11 && std::all_of(s.begin(), s.end(), [](char c) {
           return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || c == '_' || c == '-';
         });
}

base::Message unitsWord(WeatherUnits units) {
  switch (units) {
    case WeatherUnits::Tenths:
      return message("exchange.units_tenths");
    case WeatherUnits::Metric:
      return message("exchange.units_metric");
    case WeatherUnits::Us:
      break;
  }
  return message("exchange.units_us");
}

WeatherDay dayOf(const FileRow& row) {
  return apiary::fromRow<WeatherDay>(row.row);
}

}  // namespace

WeatherLayout layoutOf(std::string_view text) {
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
  const std::string_view first = text.substr(0, text.find_first_of("\r\n"));
  if (first.find(',') == std::string_view::npos) {
    const bool fixed =
        first.size() >= 21 && stationId(first.substr(0, 11)) && digits(first.substr(11, 6));
    return fixed ? WeatherLayout::Fixed : WeatherLayout::Own;
  }
  CsvReader reader(first);
  if (!reader.next()) return WeatherLayout::Own;
  std::set<std::string_view> names;
  for (const auto& f : reader.fields()) names.insert(f.text);
  if (names.contains("ELEMENT") && names.contains("ID")) return WeatherLayout::Elements;
  if (names.contains("STATION") && names.contains("DATE")) return WeatherLayout::Table;
  const auto& f = reader.fields();
  const bool plain =
      f.size() >= 4 && stationId(f[0].text) && f[1].text.size() == 8 && digits(f[1].text);
  return plain ? WeatherLayout::Elements : WeatherLayout::Own;
}

std::vector<base::Message> stationNotes(const StationDays& station, const TableFile& rows) {
  std::vector<base::Message> out;
  if (rows.rows.empty()) return out;
  out.push_back(message("exchange.weather_read", station.station, rows.rows.size(),
                        dayOf(rows.rows.front()).date.iso(), dayOf(rows.rows.back()).date.iso(),
                        unitsWord(station.units)));
  if (station.flagged > 0) out.push_back(message("exchange.weather_flagged", station.flagged));
  if (station.halved > 0) out.push_back(message("exchange.weather_halved", station.halved));
  return out;
}

std::optional<TableFile> usualWeather(const TableFile& observed, const std::string& fileName,
                                      FaultList& faults, std::vector<base::Message>& notes) {
  constexpr int kDays = 366, kWithin = 7, kLeast = 5 * 11;  // of the 15 days of each of five years
  struct Sum {
    int n = 0, rainy = 0;
    double tmin = 0, tmax = 0, rain = 0;
  };
  // By day of a leap year, so that each date of the calendar has its place.
  std::array<Sum, kDays> sums{};
  const Date newYear = Date::fromYmd(2000, 1, 1).value();
  const auto placeOf = [&](Date d) {
    return static_cast<std::size_t>(*Date::fromYmd(2000, d.month(), d.day()) - newYear);
  };
  Date first, last;
  base::YardId yard;
  bool any = false;
  for (const FileRow& row : observed.rows) {
    const WeatherDay w = dayOf(row);
    if (w.kind != WeatherKind::Observed) continue;
    first = any ? std::min(first, w.date) : w.date;
    last = any ? std::max(last, w.date) : w.date;
    any = true;
    yard = w.yard;
    Sum& s = sums[placeOf(w.date)];
    ++s.n;
    s.tmin += w.tminC;
    s.tmax += w.tmaxC;
    if (w.rainMm) {
      ++s.rainy;
      s.rain += *w.rainMm;
    }
  }
  TableFile out;
  const auto tenth = [](double v) { return static_cast<double>(std::llround(v * 10)) / 10; };
  for (int day = 0; day < kDays; ++day) {
    Sum all;
    for (int k = -kWithin; k <= kWithin; ++k) {
      const Sum& s = sums[static_cast<std::size_t>((day + k + kDays) % kDays)];
      all.n += s.n;
      all.rainy += s.rainy;
      all.tmin += s.tmin;
      all.tmax += s.tmax;
      all.rain += s.rain;
    }
    const Date date = newYear.plusDays(day);
    if (all.n < kLeast) {
      faults.add(fileName, 0, {},
                 message("exchange.weather_few_years", date.iso().substr(5), all.n));
      return std::nullopt;
    }
    WeatherDay w;
    w.yard = yard;
    w.date = date;
    w.kind = WeatherKind::Normal;
    w.tminC = tenth(all.tmin / all.n);
    w.tmaxC = tenth(all.tmax / all.n);
    if (all.rainy > 0) w.rainMm = tenth(all.rain / all.rainy);
    out.rows.push_back({apiary::toRow(w), 0});
  }
  notes.push_back(message("exchange.weather_usual", first.iso(), last.iso()));
  return out;
}

apiary::ChangeList formerUsual(const apiary::Season& season, const base::YardId& yard,
                               const TableFile& usual) {
  std::set<std::string> made;
  for (const FileRow& row : usual.rows) made.insert(apiary::rowKey(row.row));
  apiary::ChangeList out;
  for (const auto& [key, w] : season.table<WeatherDay>()) {
    if (w.yard != yard || w.kind != WeatherKind::Normal || made.contains(key)) continue;
    out.push_back({apiary::TableId::Weather, key, apiary::toRow(w), std::nullopt});
  }
  return out;
}

std::optional<base::Message> gapMessage(const TableFile& observed) {
  std::set<Date> days;
  for (const FileRow& row : observed.rows) {
    const WeatherDay w = dayOf(row);
    if (w.kind == WeatherKind::Observed) days.insert(w.date);
  }
  int missing = 0, gaps = 0, longest = 0;
  Date from, to;
  std::optional<Date> before;
  for (const Date d : days) {
    const int hole = before ? d - *before - 1 : 0;
    if (hole > 0) {
      ++gaps;
      missing += hole;
      if (hole > longest) {
        longest = hole;
        from = before->plusDays(1);
        to = d.plusDays(-1);
      }
    }
    before = d;
  }
  if (gaps == 0) return std::nullopt;
  return message("exchange.weather_gaps", missing, gaps, from.iso(), to.iso());
}

}  // namespace outyard::exchange
