// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/table_reader.h"
#include "core/exchange/tables.h"

/// Daily weather files of stations: the layouts in which the Global Historical Climatology Network
/// daily (GHCN-Daily; Menne et al. 2012, J. Atmos. Oceanic Technol. 29:897) is handed out: tenths
/// of a degree C and of a millimetre, -9999 = missing, a quality flag that is not blank = the value
/// failed a check. Columns of the fixed file as in the data set's readme.txt, section III, and in
/// read.dly of the R package VFS; those of the ordered tables from memory.
namespace outyard::exchange {

enum class WeatherLayout {
  Own,       ///< the columns of weather.csv
  Table,     ///< STATION,DATE,…,PRCP,TMAX,TMIN: a line for each day
  Elements,  ///< ID,YYYYMMDD,ELEMENT,VALUE,flags: a line for each value, with or without a header
  Fixed      ///< .dly: fixed columns, a line for each month and element
};
/// By the first line.
WeatherLayout layoutOf(std::string_view text);

/// What a station file says, before it is a table of the season.
struct StationDays {
  TableFile rows;  ///< observed days of the yard with both temperatures, by date
  std::string station;
  WeatherUnits units = WeatherUnits::Tenths;
  int flagged = 0;  ///< values left out because they failed a check of the network
  int halved = 0;   ///< days left out because a temperature is missing
};
/// Reads one of the station layouts; faults name line, column and cure.
StationDays readStation(WeatherLayout layout, const std::string& fileName, std::string_view text,
                        const WeatherAsk& ask, FaultList& faults, Ticker& ticker);

/// What was read and what was left out.
std::vector<base::Message> stationNotes(const StationDays& station, const TableFile& rows);

/// Days of a yard as usual weather: for each day of the calendar the mean of all days of the file
/// within a week of it, in whatever year (running mean over fifteen days: our assumption). Fails
/// where fewer than about five years stand behind a day.
std::optional<TableFile> usualWeather(const TableFile& observed, const std::string& fileName,
                                      FaultList& faults, std::vector<base::Message>& notes);
/// Takes out the yard's former rows of usual weather that the new ones do not replace by key.
apiary::ChangeList formerUsual(const apiary::Season& season, const base::YardId& yard,
                               const TableFile& usual);

/// Days missing between the first and the last observed day, told as one message; nullopt without.
std::optional<base::Message> gapMessage(const TableFile& observed);

}  // namespace outyard::exchange
