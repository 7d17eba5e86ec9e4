// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

namespace outyard::adapt {

std::span<const CatalogueEntry> entryWords() {
  static constexpr std::array kWords{
      CatalogueEntry{"session.combs_of_living",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1: the colony %2 lives there, so its combs were not "
                                       "cleared out. Record its death first")},
      CatalogueEntry{"session.entry.bad_bees_in",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), bees in it: type y when bees live in it, n "
                                       "when not, . when nobody looked")},
      CatalogueEntry{"session.entry.bad_brood",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), brood combs: type 0 to 60 whole combs, or 8+ "
                                       "(key +) for eight or more")},
      CatalogueEntry{"session.entry.bad_cause",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), cause: type s for starved, q for queenless, "
                                       "m for mites, u for unknown, or . when nobody looked")},
      CatalogueEntry{"session.entry.bad_cells",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), queen cells: type 0 for none, u for cups, c "
                                       "for charged or s for sealed")},
      CatalogueEntry{
          "session.entry.bad_closed",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Line %1 (%2), closed: type y when the entrance is closed, n when it is open")},
      CatalogueEntry{"session.entry.bad_combs",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), combs: type s for stored, m for melted, b "
                                       "for burnt or l for left in the hive")},
      CatalogueEntry{
          "session.entry.bad_drones",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2), drones: type y when drones were seen, n when not")},
      CatalogueEntry{
          "session.entry.bad_eggs",
          QT_TRANSLATE_NOOP(
              "Messages", "Line %1 (%2), eggs: type y or n, or leave it empty when nobody looked")},
      CatalogueEntry{
          "session.entry.bad_number",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Line %1, hive: type its number as it is on the hive, at most 64 characters")},
      CatalogueEntry{"session.entry.bad_origin",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), came as: type s for a swarm, b for bought, p "
                                       "for a split or m for moved here")},
      CatalogueEntry{"session.entry.bad_queen",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2), queen: type m for marked, u for unmarked, v "
                                       "for virgin or - for not seen")},
      CatalogueEntry{
          "session.entry.bad_seams",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2), seams: type 0 to 40, 10+ (key +) for ten or more, . for "
                            "not opened, = for looks about right or x for found dead")},
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
      CatalogueEntry{"session.entry.bees_whence",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2): no colony lives there in the records. Type "
                                       "where the bees came from: s swarm, b bought or p split")},
      CatalogueEntry{"session.entry.brood_at_least",
                     QT_TRANSLATE_NOOP("Messages", "brood on %1 combs or more")},
      CatalogueEntry{"session.entry.cause_mites", QT_TRANSLATE_NOOP("Messages", "mites")},
      CatalogueEntry{"session.entry.cause_queenless", QT_TRANSLATE_NOOP("Messages", "queenless")},
      CatalogueEntry{"session.entry.cause_starved", QT_TRANSLATE_NOOP("Messages", "starved")},
      CatalogueEntry{"session.entry.cause_unknown", QT_TRANSLATE_NOOP("Messages", "cause unknown")},
      CatalogueEntry{"session.entry.closed", QT_TRANSLATE_NOOP("Messages", "entrance closed")},
      CatalogueEntry{"session.entry.combs_burnt",
                     QT_TRANSLATE_NOOP("Messages", "combs burnt on %1")},
      CatalogueEntry{"session.entry.combs_left",
                     QT_TRANSLATE_NOOP("Messages", "combs left in the hive on %1")},
      CatalogueEntry{"session.entry.combs_melted",
                     QT_TRANSLATE_NOOP("Messages", "combs melted on %1")},
      CatalogueEntry{"session.entry.combs_stored",
                     QT_TRANSLATE_NOOP("Messages", "combs stored on %1")},
      CatalogueEntry{"session.entry.dead_yet_seen",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2) is marked as found dead (x), yet something "
                                       "was seen of living bees: clear one of the two")},
      CatalogueEntry{"session.entry.entered_already",
                     QT_TRANSLATE_NOOP(
                         "Messages",
                         "Line %1 (%2) was entered before: correct it in the journal of the hive")},
      CatalogueEntry{
          "session.entry.lives_there",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2): the colony %3 lives there already. Clear what "
                            "it came as, or correct the number of the hive")},
      CatalogueEntry{
          "session.entry.long_note",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2): the note is too long; keep it under 2,000 characters")},
      CatalogueEntry{
          "session.entry.moved_empty",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2): the hive stood empty where it came from. Type no "
                            "answers of a colony, and put the bees in on the hive's own page")},
      CatalogueEntry{
          "session.entry.moved_unknown",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Line %1 (%2): no hive of this season has that number, so it cannot have been moved "
              "here. Correct the number, or type s swarm, b bought or p split for a new hive")},
      CatalogueEntry{
          "session.entry.new_whence",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Line %1 (%2): no hive of this season has that number. For a new hive type where its "
              "bees came from: s swarm, b bought or p split; else correct the number")},
      CatalogueEntry{"session.entry.no_bees",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2): no colony lives there, so the paper has no "
                                       "such cell on this line. Clear it")},
      CatalogueEntry{"session.entry.no_bees_in", QT_TRANSLATE_NOOP("Messages", "no bees in it")},
      CatalogueEntry{"session.entry.not_closed", QT_TRANSLATE_NOOP("Messages", "entrance open")},
      CatalogueEntry{"session.entry.not_done", QT_TRANSLATE_NOOP("Messages", "not done: %1")},
      CatalogueEntry{
          "session.entry.not_on_line",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2): the paper has no such cell on this line. Clear it")},
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
      CatalogueEntry{"session.entry.number_alone",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2): the number alone says nothing. Type what was "
                                       "seen, or clear the number")},
      CatalogueEntry{
          "session.entry.number_missing",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Line %1: type the number of the hive first; it is what the line is about")},
      CatalogueEntry{"session.entry.number_on_sheet",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2): this hive stands on line %3 of the sheet. "
                                       "Type it there, or correct the number")},
      CatalogueEntry{"session.entry.passed_by_yet_said",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2) is marked as not looked at (.), yet something "
                                       "is said of it: clear one of the two")},
      CatalogueEntry{"session.entry.queen_marked", QT_TRANSLATE_NOOP("Messages", "queen marked")},
      CatalogueEntry{"session.entry.queen_unmarked",
                     QT_TRANSLATE_NOOP("Messages", "queen unmarked")},
      CatalogueEntry{"session.entry.queen_virgin", QT_TRANSLATE_NOOP("Messages", "queen virgin")},
      CatalogueEntry{"session.entry.said_before", QT_TRANSLATE_NOOP("Messages", "before: %1")},
      CatalogueEntry{
          "session.entry.stands_elsewhere",
          QT_TRANSLATE_NOOP("Messages",
                            "Line %1 (%2): a hive of that number stands in yard %3 in the records. "
                            "If it was carried here, type m for moved; else correct the number")},
      CatalogueEntry{"session.entry.stands_here",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2): the hive stands in this yard in the records "
                                       "already. Clear what it came as, or correct the number")},
      CatalogueEntry{"session.entry.two_colonies",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Line %1 (%2): two colonies live in that hive. Record the "
                                       "look on the hive's own page, where each can be named")},
      CatalogueEntry{
          "session.not_dead",
          QT_TRANSLATE_NOOP("Messages",
                            "%1 is not a dead hive on %2: its death is to be recorded first")},
      CatalogueEntry{"session.title.death_said",
                     QT_TRANSLATE_NOOP("Messages", "cause of death in %1")},
      CatalogueEntry{"session.title.done_as_printed",
                     QT_TRANSLATE_NOOP("Messages", "boosts done as printed")},
      CatalogueEntry{"session.title.enter_sheet", QT_TRANSLATE_NOOP("Messages", "sheet %1")},
  };
  return kWords;
}

}  // namespace outyard::adapt
