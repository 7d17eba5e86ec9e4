// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

namespace outyard::adapt {

std::span<const CatalogueEntry> entryWords() {
  static constexpr std::array kWords{
      CatalogueEntry{"session.entry.bad_brood",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), brood combs: type 0 to 60 whole combs, or 8+ "
                                       "(key +) for eight or more")},
      CatalogueEntry{"session.entry.bad_cells",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), queen cells: type 0 for none, u for cups, c "
                                       "for charged or s for sealed")},
      CatalogueEntry{
          "session.entry.bad_drones",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2), drones: type y when drones were seen, n when not")},
      CatalogueEntry{
          "session.entry.bad_eggs",
          QT_TRANSLATE_NOOP(
              "Messages", "Line %1 (%2), eggs: type y or n, or leave it empty when nobody looked")},
      CatalogueEntry{"session.entry.bad_queen",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), queen: type m for marked, u for unmarked, v "
                                       "for virgin or - for not seen")},
      CatalogueEntry{"session.entry.bad_seams",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), seams: type 0 to 40, 10+ (key +) for ten or "
                                       "more, . for not opened or = for looks about right")},
      CatalogueEntry{
          "session.entry.bad_sick",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2), sick: type y when it was circled, else leave it empty")},
      CatalogueEntry{
          "session.entry.bad_stores",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2), stores: type l for low, m for medium or h for heavy")},
      CatalogueEntry{"session.entry.bad_temper",
                     QT_TRANSLATE_NOOP("Messages", "Line %1 (%2), temper: type 1 to 5")},
      CatalogueEntry{
          "session.entry.bad_weight",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Line %1 (%2), weight: type 0 to %3, in the unit at the head of the column")},
      CatalogueEntry{"session.entry.brood_at_least",
                     QT_TRANSLATE_NOOP("Messages", "brood on %1 combs or more")},
      CatalogueEntry{"session.entry.entered_already",
                     QT_TRANSLATE_NOOP(
                         "Messages",
                         "Line %1 (%2) was entered before: correct it in the journal of the hive")},
      CatalogueEntry{
          "session.entry.long_note",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2): the note is too long; keep it under 2,000 characters")},
      CatalogueEntry{"session.entry.no_bees",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2): no colony lives there, so only a note can be "
                                       "kept. Put a colony in first if bees moved in")},
      CatalogueEntry{"session.entry.not_done", QT_TRANSLATE_NOOP("Messages", "not done: %1")},
      CatalogueEntry{"session.entry.not_opened_yet_seen",
                     QT_TRANSLATE_NOOP(
                         "Messages",
                         "Line %1 (%2) is marked as not opened (.), yet something was seen: clear "
                         "one of the two. For stores or weight alone leave the seams empty")},
      CatalogueEntry{
          "session.entry.nothing_printed",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2): no seams were printed as expected, so \"looks about "
                            "right\" says nothing. Type the seams, or . for not opened")},
      CatalogueEntry{
          "session.entry.nothing_typed",
          QT_TRANSLATE_NOOP("Messages", "Nothing is typed on sheet %1 yet: type a line first")},
      CatalogueEntry{"session.entry.queen_marked", QT_TRANSLATE_NOOP("Messages", "queen marked")},
      CatalogueEntry{"session.entry.queen_unmarked",
                     QT_TRANSLATE_NOOP("Messages", "queen unmarked")},
      CatalogueEntry{"session.entry.queen_virgin", QT_TRANSLATE_NOOP("Messages", "queen virgin")},
      CatalogueEntry{"session.title.enter_sheet", QT_TRANSLATE_NOOP("Messages", "sheet %1")},
  };
  return kWords;
}

}  // namespace outyard::adapt
