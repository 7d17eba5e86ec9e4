// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

namespace outyard::adapt {

std::span<const CatalogueEntry> apiaryWords() {
  static constexpr std::array kWords{
      CatalogueEntry{
          "check.not_text",
          QT_TRANSLATE_NOOP("Messages", "This is not valid UTF-8 text; save the table as UTF-8")},
      CatalogueEntry{"check.required", QT_TRANSLATE_NOOP("Messages", "This must be filled in")},
      CatalogueEntry{"check.too_long",
                     QT_TRANSLATE_NOOP("Messages", "Longer than %1 characters; shorten it")},
      CatalogueEntry{"check.not_whole", QT_TRANSLATE_NOOP("Messages", "\"%1\" is no whole number")},
      CatalogueEntry{
          "check.not_number",
          QT_TRANSLATE_NOOP("Messages", "\"%1\" is no number; write it with a point, as 4.25")},
      CatalogueEntry{"check.range", QT_TRANSLATE_NOOP("Messages", "%1 is outside %2 to %3")},
      CatalogueEntry{"check.not_date",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" is no date; write it as 2026-04-25")},
      CatalogueEntry{"check.not_time",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" is no time; write it as 14:30")},
      CatalogueEntry{"check.not_flag", QT_TRANSLATE_NOOP("Messages", "\"%1\" is neither 0 nor 1")},
      CatalogueEntry{"check.not_code",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" is not known here; use one of: %2")},
      CatalogueEntry{
          "check.comb_sum",
          QT_TRANSLATE_NOOP("Messages", "The contents of this comb side make %1 %, not 100 %")},
      CatalogueEntry{"check.comb_over",
                     QT_TRANSLATE_NOOP(
                         "Messages", "The contents of this comb side make %1 %, more than 100 %")},
      CatalogueEntry{
          "check.to_before_from",
          QT_TRANSLATE_NOOP("Messages",
                            "The stay ends before it begins; correct one of the two dates")},
      CatalogueEntry{
          "check.min_over_max",
          QT_TRANSLATE_NOOP("Messages", "The minimum is above the maximum; swap or correct them")},
      CatalogueEntry{"check.mites_over_bees",
                     QT_TRANSLATE_NOOP("Messages", "More mites than bees; check the two counts")},
      CatalogueEntry{
          "check.latest_before_earliest",
          QT_TRANSLATE_NOOP("Messages",
                            "The latest day is before the earliest; swap or correct them")},
      CatalogueEntry{
          "check.unknown_yard",
          QT_TRANSLATE_NOOP("Messages",
                            "There is no yard \"%1\"; add it to yards.csv or correct the name")},
      CatalogueEntry{
          "check.unknown_hive",
          QT_TRANSLATE_NOOP("Messages",
                            "There is no hive \"%1\"; add it to hives.csv or correct the name")},
      CatalogueEntry{
          "check.unknown_queen",
          QT_TRANSLATE_NOOP("Messages",
                            "There is no queen \"%1\"; add her to queens.csv or correct the name")},
      CatalogueEntry{"check.unknown_frame_type",
                     QT_TRANSLATE_NOOP("Messages",
                                       "There is no frame type \"%1\"; use a shipped one or "
                                       "describe it in frame_types.csv")},
      CatalogueEntry{"check.unknown_reference",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" does not stand in the table %2")},
      CatalogueEntry{"check.superseded_twice",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The record %1 is superseded twice; a record can be "
                                       "corrected only once, correct the correction instead")},
      CatalogueEntry{"check.supersede_circle",
                     QT_TRANSLATE_NOOP(
                         "Messages",
                         "The record %1 supersedes itself in a circle; take one of the links out")},
      CatalogueEntry{"check.stays_overlap",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Colony %1 would live in hive %2 and hive %3 at the same "
                                       "time; end one stay before the other begins")},
      CatalogueEntry{"check.place_taken",
                     QT_TRANSLATE_NOOP("Messages",
                                       "In hive %1 the colonies %2 and %3 would live in the same "
                                       "place at the same time; say which is over the excluder")},
      CatalogueEntry{"check.colony_not_there",
                     QT_TRANSLATE_NOOP("Messages", "Colony %1 does not live in hive %2 on %3")},
      CatalogueEntry{
          "check.colony_must_be_named",
          QT_TRANSLATE_NOOP("Messages",
                            "Two colonies share hive %1 on %2; name the one that is meant")},
      CatalogueEntry{
          "check.side_of_other_inspection",
          QT_TRANSLATE_NOOP("Messages",
                            "This comb side names an inspection that is not of hive %1 on %2")},
      CatalogueEntry{"check.position_twice",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1 has two boxes at position %3 on %2")},
      CatalogueEntry{
          "check.position_gap",
          QT_TRANSLATE_NOOP(
              "Messages",
              "The boxes of hive %1 on %2 are not numbered 1, 2, 3 ... from the bottom")},
  };
  return kWords;
}

}  // namespace outyard::adapt
