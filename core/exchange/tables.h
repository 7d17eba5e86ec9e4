// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/date.h"
#include "core/base/message.h"
#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/exchange/file_source.h"

/// The open exchange tables: a folder of CSV files, one for each table of the schema.
namespace outyard::exchange {

/// At most this many faults are told one by one; the rest is a count.
inline constexpr std::size_t kMostFaults = 100;

struct ImportFault {
  std::string file;
  std::size_t line = 0;  ///< 0 = the whole file
  std::string column;    ///< name of the column, or empty
  base::Message what;
};
/// "inspections.csv:12: seams", to be followed by ": " and the worded message.
std::string placeText(const ImportFault& fault);

struct TableReport {
  apiary::TableId table{};
  int added = 0;     ///< rows new to the season
  int equal = 0;     ///< passed over: the season holds the same row
  int replaced = 0;  ///< took the place of the row of the same key
  int made = 0;      ///< state rows made from events and first records
};
/// "inspections: 312 new, 4 passed over", for people.
base::Message reportMessage(const TableReport& report);

/// Either changes with their report, or faults; never both.
struct ImportResult {
  apiary::ChangeList changes;        ///< fit the season that was handed in
  std::vector<TableReport> report;   ///< tables that had rows, in the tables' order
  std::vector<ImportFault> faults;   ///< by file and line, at most kMostFaults
  std::size_t faultCount = 0;        ///< all of them
  bool cancelled = false;            ///< the user stopped it; nothing else is filled
  std::vector<base::Message> notes;  ///< what a person should know though nothing is wrong
  [[nodiscard]] bool ok() const { return faultCount == 0 && !cancelled; }
  /// "and 23 more", when not all faults are listed.
  [[nodiscard]] std::optional<base::Message> moreFaults() const;
};

/// Reads every table of the source and plans what it would change, all or nothing. `today` dates
/// what has no record to be dated by. The changes go to session::applyChanges with importTitle().
ImportResult planImport(const apiary::Season& current, const FileSource& files,
                        const base::Date& today, base::Progress& progress);

/// Reads weather rows of one yard: the columns of weather.csv without `yard`; `kind` may be left
/// out and is then `observed`. `fileName` is what faults call the file.
ImportResult planWeatherImport(const apiary::Season& current, const std::string& fileName,
                               std::string_view text, const base::YardId& yard,
                               base::Progress& progress);

/// In what a station file gives its figures: tenths of a degree C and of a mm; degrees C and mm;
/// degrees F and inches.
enum class WeatherUnits { Tenths, Metric, Us };
struct WeatherAsk {
  base::YardId yard;
  std::optional<WeatherUnits> units;   ///< of a station file that does not show it itself
  std::optional<base::Date> from, to;  ///< only these days
  bool normals = false;                ///< makes the yard's usual weather of the days instead
};
/// The same, and also the layouts of NOAA's GHCN-Daily (by-station tables and fixed .dly files), by
/// the look of the file. Values that failed a check of the network, missing ones (-9999) and days
/// without both temperatures are left out and told in the notes, gaps too.
ImportResult planWeatherImport(const apiary::Season& current, const std::string& fileName,
                               std::string_view text, const WeatherAsk& ask,
                               base::Progress& progress);

/// What the undo menu calls an import.
base::Message importTitle();

/// Writes all tables, sorted by key; a table without rows is written with its header only.
base::Result<void> exportTables(const apiary::Season& season, FileSink& sink,
                                base::Progress& progress);
/// One table as text.
std::string tableText(const apiary::Season& season, apiary::TableId table);

/// The day on which the column `status` of hives.csv holds: the working date, else the last day of
/// any record, else nothing is recorded.
std::optional<base::Date> statusDay(const apiary::Season& season);

}  // namespace outyard::exchange
