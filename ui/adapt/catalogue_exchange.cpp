// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

namespace outyard::adapt {

std::span<const CatalogueEntry> exchangeWords() {
  static constexpr std::array kWords{
      // Files and folders
      CatalogueEntry{"exchange.cannot_read",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 cannot be read: %2. Check the path and the "
                                       "rights on it.")},
      CatalogueEntry{"exchange.cannot_write",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 cannot be written: %2. Free space or choose "
                                       "another folder; the old files stand.")},
      CatalogueEntry{"exchange.export_stopped",
                     QT_TRANSLATE_NOOP("Messages", "The export was stopped; the old files stand.")},
      CatalogueEntry{"exchange.no_tables",
                     QT_TRANSLATE_NOOP("Messages",
                                       "There is no table in this folder. Choose the "
                                       "folder that holds hives.csv and the others.")},
      CatalogueEntry{"exchange.unknown_table",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 is no table of the season. Take it out of "
                                       "the folder or rename it; tables are: %2.")},
      // The form of a file
      CatalogueEntry{"exchange.at_character",
                     QT_TRANSLATE_NOOP("Messages", "At character %1 of the line: %2")},
      CatalogueEntry{"exchange.utf16",
                     QT_TRANSLATE_NOOP("Messages",
                                       "the file is UTF-16. Save it again as CSV with "
                                       "the encoding UTF-8.")},
      CatalogueEntry{"exchange.not_utf8",
                     QT_TRANSLATE_NOOP("Messages",
                                       "this is not UTF-8, probably Latin-1 or Windows-1252. Save "
                                       "the file again as CSV with the encoding UTF-8.")},
      CatalogueEntry{"exchange.nul_byte",
                     QT_TRANSLATE_NOOP("Messages",
                                       "there is a NUL byte. The file is damaged or no "
                                       "text: export it again from where it came.")},
      CatalogueEntry{"exchange.stray_quote",
                     QT_TRANSLATE_NOOP("Messages",
                                       "a quote inside a field without quotes. Put the "
                                       "field in quotes and double those within.")},
      CatalogueEntry{"exchange.unclosed_quote",
                     QT_TRANSLATE_NOOP("Messages", "the quote that opens here is never closed.")},
      CatalogueEntry{"exchange.text_after_quote",
                     QT_TRANSLATE_NOOP("Messages",
                                       "text behind the closing quote. Double the "
                                       "quotes that belong to the text.")},
      CatalogueEntry{"exchange.stray_return",
                     QT_TRANSLATE_NOOP("Messages",
                                       "a carriage return without a line feed. Save "
                                       "the file with the line ends LF or CRLF.")},
      CatalogueEntry{"exchange.field_too_long",
                     QT_TRANSLATE_NOOP("Messages",
                                       "the field is longer than %1 KiB. Shorten it; a "
                                       "quote that is never closed does this too.")},
      CatalogueEntry{"exchange.empty_file",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The file is empty. Take it out of the folder, "
                                       "or give it at least the line of columns.")},
      CatalogueEntry{"exchange.no_header",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The first line must name the columns, beginning "
                                       "like: %1. Add that line.")},
      CatalogueEntry{"exchange.semicolons",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The columns are parted by semicolons. Save the file with "
                                       "commas, and with points as decimal signs.")},
      CatalogueEntry{"exchange.unknown_column",
                     QT_TRANSLATE_NOOP("Messages",
                                       "“%1” is no column of the table %2. Correct its "
                                       "name or take the column out.")},
      CatalogueEntry{"exchange.column_twice",
                     QT_TRANSLATE_NOOP("Messages", "The column %1 stands here twice. Keep one.")},
      CatalogueEntry{"exchange.column_missing",
                     QT_TRANSLATE_NOOP("Messages", "The column %1 is missing and must be there.")},
      CatalogueEntry{"exchange.blank_line",
                     QT_TRANSLATE_NOOP("Messages", "The line is blank. Take it out.")},
      CatalogueEntry{"exchange.line_short",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The line has %1 field(s), the first line %2. "
                                       "Add what is missing, if only the commas.")},
      CatalogueEntry{"exchange.line_long",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The line has %1 field(s), the first line %2. A text with a "
                                       "comma needs quotes; the decimal sign is a point.")},
      // Keys
      CatalogueEntry{"exchange.key_twice",
                     QT_TRANSLATE_NOOP("Messages",
                                       "“%1” stands in line %2 already. Keep one of "
                                       "the two lines.")},
      CatalogueEntry{"exchange.key_known",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The season holds %1 with another value. Records do not "
                                       "change: give the correction its own record and name this "
                                       "one in “supersedes”.")},
      CatalogueEntry{"exchange.record_in_two_tables",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The record %1 is in the table %2 too. Give one "
                                       "of them another id.")},
      CatalogueEntry{"exchange.which_inspection",
                     QT_TRANSLATE_NOOP("Messages",
                                       "There are %1 inspections of hive %2 on %3. Name "
                                       "the one that is meant.")},
      CatalogueEntry{"exchange.season_row",
                     QT_TRANSLATE_NOOP("Messages",
                                       "With these tables the row %1 of the season no longer fits: "
                                       "%2")},
      // States and events
      CatalogueEntry{"exchange.status_disagrees",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The status says %1, yet by the records hive %2 is %4 on "
                                       "%3. Correct it, leave it empty, or add the record that is "
                                       "missing.")},
      CatalogueEntry{"exchange.place_disagrees",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Hive %1 is given %2 here, its latest place says %3. Leave "
                                       "the field empty, or add the move to places.csv.")},
      CatalogueEntry{"exchange.moved_elsewhere",
                     QT_TRANSLATE_NOOP("Messages",
                                       "By this event hive %1 stands in yard %2, by its place in "
                                       "yard %3 (%4). Correct one of them.")},
      CatalogueEntry{"exchange.moved_where",
                     QT_TRANSLATE_NOOP("Messages",
                                       "It is not told where hive %1 was moved to. "
                                       "Name the yard.")},
      CatalogueEntry{"exchange.swap_unknown",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Hive %1 changed places on %2, yet it is not told where the "
                                       "other one stood before. Add its row to places.csv.")},
      CatalogueEntry{"exchange.event_needs_other_hive",
                     QT_TRANSLATE_NOOP("Messages", "%1 needs the other hive. Name it.")},
      CatalogueEntry{"exchange.event_no_colony",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: no colony lives in hive %2 on %3. Correct the hive or "
                                       "the date, or the row in colonies.csv.")},
      CatalogueEntry{"exchange.event_colony_not_there",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: colony %2 does not live in hive %3 on %4. Correct the "
                                       "event, or the row in colonies.csv.")},
      CatalogueEntry{"exchange.event_which_colony",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: two colonies share hive %2 on %3. Name the "
                                       "colony.")},
      CatalogueEntry{"exchange.event_stay_goes_on",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: by colonies.csv, colony %2 stays in hive %3 until %4, "
                                       "not until %5. Correct one of them.")},
      CatalogueEntry{"exchange.event_arrived_elsewhere",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: by colonies.csv, colony %2 comes to hive %3 on %4, not "
                                       "to hive %5. Correct one of them.")},
      CatalogueEntry{"exchange.event_other_colony",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 names colony %2, yet by colonies.csv colony %3 comes to "
                                       "hive %4 on %5. Correct one of them.")},
      CatalogueEntry{"exchange.event_hive_taken",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: colony %3 still lives in hive %2 on %4. Give the new "
                                       "colony an empty hive, or end the old one's stay.")},
      // Weather files
      CatalogueEntry{"exchange.weather_yard",
                     QT_TRANSLATE_NOOP("Messages",
                                       "There is no yard %1 in the season. Choose a yard "
                                       "of the list.")},
      CatalogueEntry{"exchange.weather_stations",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The file holds the stations %1 and %2. Keep the lines of "
                                       "the one that is nearest to the yard.")},
      CatalogueEntry{
          "exchange.weather_date",
          QT_TRANSLATE_NOOP("Messages", "“%1” is no date. Write it as 2026-04-25 or 20260425.")},
      CatalogueEntry{"exchange.weather_number",
                     QT_TRANSLATE_NOOP("Messages",
                                       "“%1” is no number. Correct it, or leave it empty when "
                                       "nothing was measured.")},
      CatalogueEntry{
          "exchange.weather_twice",
          QT_TRANSLATE_NOOP("Messages", "%1 stands in line %2 already. Keep one of the two.")},
      CatalogueEntry{"exchange.weather_no_column",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The column %1 is missing. Order the file again with TMAX "
                                       "and TMIN, or take a station that measures temperature.")},
      CatalogueEntry{"exchange.weather_fixed_short",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The line has %1 characters; a month has 21 and 8 for each "
                                       "day. Fetch the file again, it was cut.")},
      CatalogueEntry{"exchange.weather_no_such_day",
                     QT_TRANSLATE_NOOP("Messages",
                                       "There is a value for day %1 of the month %2, which has no "
                                       "such day. Correct the line or write -9999.")},
      CatalogueEntry{"exchange.weather_units",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The file does not show its units. Say them: tenths (of a "
                                       "degree C and a mm), metric (degrees C, mm) or us (degrees "
                                       "F, inches); on the command line with --units.")},
      CatalogueEntry{"exchange.weather_impossible",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: %2 °C is no temperature of a place with bees (-60 to "
                                       "60). Correct the line, take it out, or give the right "
                                       "units.")},
      CatalogueEntry{"exchange.weather_min_over_max",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: the lowest temperature (%2 °C) is above the highest "
                                       "(%3 °C). Correct the line or take it out.")},
      CatalogueEntry{"exchange.weather_rain",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: %2 mm of rain in a day cannot be (0 to 2,000). Correct "
                                       "the line, leave it empty, or give the right units.")},
      CatalogueEntry{"exchange.weather_no_days",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The file holds no day with both temperatures. Take a "
                                       "station that measures TMAX and TMIN, or other days.")},
      CatalogueEntry{"exchange.weather_few_years",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Usual weather needs about five years; about the day %1 "
                                       "there are only %2 days in the file. Take a longer file.")},
      CatalogueEntry{"exchange.weather_read",
                     QT_TRANSLATE_NOOP("Messages", "Station %1: %2 days, %3 to %4, read as %5")},
      CatalogueEntry{"exchange.units_tenths",
                     QT_TRANSLATE_NOOP("Messages", "tenths of a degree C and of a mm")},
      CatalogueEntry{"exchange.units_metric", QT_TRANSLATE_NOOP("Messages", "degrees C and mm")},
      CatalogueEntry{"exchange.units_us", QT_TRANSLATE_NOOP("Messages", "degrees F and inches")},
      CatalogueEntry{"exchange.weather_flagged",
                     QT_TRANSLATE_NOOP(
                         "Messages", "%1 value(s) failed the network's checks and were left out")},
      CatalogueEntry{
          "exchange.weather_halved",
          QT_TRANSLATE_NOOP("Messages", "%1 day(s) with only one temperature were left out")},
      CatalogueEntry{"exchange.weather_gaps",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 day(s) are missing in %2 gap(s), the longest from %3 to "
                                       "%4; the yard's usual weather stands in for them")},
      CatalogueEntry{"exchange.weather_usual",
                     QT_TRANSLATE_NOOP("Messages", "Usual weather made from the days %1 to %2")},
      // Report
      CatalogueEntry{"exchange.report",
                     QT_TRANSLATE_NOOP("Messages", "%1: %2 new, %3 passed over")},
      CatalogueEntry{"exchange.report_more",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: %2 new, %3 passed over, %4 replaced, %5 made "
                                       "from other records")},
      CatalogueEntry{"exchange.more_faults", QT_TRANSLATE_NOOP("Messages", "and %1 more fault(s)")},
      CatalogueEntry{"exchange.title_import", QT_TRANSLATE_NOOP("Messages", "Import of tables")},
  };
  return kWords;
}

}  // namespace outyard::adapt
