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
