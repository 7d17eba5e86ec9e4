// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

namespace outyard::adapt {

std::span<const CatalogueEntry> storageWords() {
  static constexpr std::array kWords{
      CatalogueEntry{
          "storage.already_there",
          QT_TRANSLATE_NOOP("Messages",
                            "%1 is already there and is not overwritten; choose another name")},
      CatalogueEntry{
          "storage.bad_row",
          QT_TRANSLATE_NOOP("Messages",
                            "The file holds a row in %1 (%2) that the program cannot read: %3: %4. "
                            "Open a copy made before, or export what can be read")},
      CatalogueEntry{
          "storage.broken_reference",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Rows of %1 name rows of %2 that are missing: %3. Open a copy made before")},
      CatalogueEntry{"storage.cannot_create",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 cannot be made; check the folder and the rights on it")},
      CatalogueEntry{"storage.cannot_open",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 cannot be opened; check the path and the rights on it")},
      CatalogueEntry{
          "storage.changed_by_other",
          QT_TRANSLATE_NOOP(
              "Messages",
              "%1 was changed by another program in the table %2; close it and open it again")},
      CatalogueEntry{
          "storage.column_missing",
          QT_TRANSLATE_NOOP("Messages",
                            "The table %1 lacks the column %2: this is not a whole season file")},
      CatalogueEntry{
          "storage.copy_failed",
          QT_TRANSLATE_NOOP(
              "Messages", "The copy %1 could not be written; free space or choose another folder")},
      CatalogueEntry{
          "storage.copy_onto_itself",
          QT_TRANSLATE_NOOP("Messages", "%1 is the file that is open; choose another name")},
      CatalogueEntry{
          "storage.cut_short",
          QT_TRANSLATE_NOOP(
              "Messages",
              "%1 is cut short: its end is missing. Fetch it again or open a copy made before")},
      CatalogueEntry{
          "storage.damaged",
          QT_TRANSLATE_NOOP("Messages",
                            "%1 is damaged: %2. Open a copy made before; nothing was changed")},
      CatalogueEntry{
          "storage.disk_full",
          QT_TRANSLATE_NOOP("Messages",
                            "The disk is full; %1 is as it was. Free space and do it again")},
      CatalogueEntry{
          "storage.disk_refused",
          QT_TRANSLATE_NOOP("Messages",
                            "The disk refused to write to %1 (%2); the file is as it was")},
      CatalogueEntry{
          "storage.empty_file",
          QT_TRANSLATE_NOOP(
              "Messages",
              "%1 is an empty file, not a season; make a new season or choose another file")},
      CatalogueEntry{
          "storage.held_by_other",
          QT_TRANSLATE_NOOP("Messages",
                            "%1 is open in another window or program; close it there first")},
      CatalogueEntry{"storage.held_here", QT_TRANSLATE_NOOP("Messages", "%1 is already open here")},
      CatalogueEntry{"storage.newer_version",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 was written by a newer Outyard (format %2, this one "
                                       "knows %3); update the program")},
      CatalogueEntry{
          "storage.no_driver",
          QT_TRANSLATE_NOOP(
              "Messages", "The SQLite driver of Qt is not installed (package libqt6sql6-sqlite)")},
      CatalogueEntry{
          "storage.no_foreign_keys",
          QT_TRANSLATE_NOOP("Messages",
                            "This SQLite cannot check references; install the packaged one")},
      CatalogueEntry{"storage.no_such_file",
                     QT_TRANSLATE_NOOP("Messages", "There is no file %1; check the path")},
      CatalogueEntry{"storage.not_a_file", QT_TRANSLATE_NOOP("Messages", "%1 is not a file")},
      CatalogueEntry{
          "storage.not_a_season",
          QT_TRANSLATE_NOOP(
              "Messages",
              "%1 is not a season file of Outyard; choose a file that ends in .outyard")},
      CatalogueEntry{"storage.not_readable",
                     QT_TRANSLATE_NOOP("Messages", "%1 cannot be read; check the rights on it")},
      CatalogueEntry{"storage.old_and_read_only",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 has an older format and cannot be written here; copy it "
                                       "to a folder of yours and open the copy")},
      CatalogueEntry{
          "storage.read_only",
          QT_TRANSLATE_NOOP(
              "Messages",
              "%1 can be looked at but not written; save it under another name to work on it")},
      CatalogueEntry{"storage.row_refused",
                     QT_TRANSLATE_NOOP("Messages", "The file refused a row: %1")},
      CatalogueEntry{"storage.table_missing",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The table %1 is missing: this is not a whole season file")},
  };
  return kWords;
}

}  // namespace outyard::adapt
