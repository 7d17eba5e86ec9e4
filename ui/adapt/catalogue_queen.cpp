// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

// Texts of queens, swarms and ends (core/session/commands_queen), and of one piece of work at
// several hives (core/session/bulk).
namespace outyard::adapt {
namespace {

constexpr std::array kWords{
    CatalogueEntry{"session.title.bought", QT_TRANSLATE_NOOP("Messages", "bought: %1 in %2")},
    CatalogueEntry{"session.title.queen_introduced",
                   QT_TRANSLATE_NOOP("Messages", "queen %1 into %2")},
    CatalogueEntry{"session.title.bulk", QT_TRANSLATE_NOOP("Messages", "work at %1 hives")},
    CatalogueEntry{"session.bulk_has_excluder",
                   QT_TRANSLATE_NOOP("Messages", "%1 has an excluder under its supers already")},
    CatalogueEntry{"session.bulk_no_excluder",
                   QT_TRANSLATE_NOOP("Messages", "%1 has no excluder under its supers")},
    CatalogueEntry{"session.bulk_no_super", QT_TRANSLATE_NOOP("Messages", "%1 has no super")},
    CatalogueEntry{"session.bulk_not_wrapped", QT_TRANSLATE_NOOP("Messages", "%1 is not wrapped")},
    CatalogueEntry{"session.bulk_wrapped", QT_TRANSLATE_NOOP("Messages", "%1 is wrapped already")},
    CatalogueEntry{"session.cells_amount",
                   QT_TRANSLATE_NOOP("Messages", "%1: give from 1 to 10 cells")},
    CatalogueEntry{"session.marking_empty",
                   QT_TRANSLATE_NOOP("Messages",
                                     "%1: say whether the queen was marked, clipped or "
                                     "both")},
    CatalogueEntry{
        "session.no_box_for_bees",
        QT_TRANSLATE_NOOP("Messages", "%1 has no box for the bees; set one on it first")},
    CatalogueEntry{"session.queen_elsewhere",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Queen %1 lives in %2; record there first that she was taken "
                                     "out, or type another name")},
    CatalogueEntry{"session.queen_known",
                   QT_TRANSLATE_NOOP("Messages",
                                     "There is a queen %1 already, with other particulars; choose "
                                     "her in the list, or type another name")},
    CatalogueEntry{"session.queen_year",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Queen %1 cannot be of %2 when she is given on %3; check the "
                                     "year")},
    CatalogueEntry{"session.take_off_first",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Two colonies live in %1; take the upper one off first, or "
                                     "name the colony that goes")},
    CatalogueEntry{
        "session.use_colony",
        QT_TRANSLATE_NOOP("Messages", "\"%1\" begins or ends a colony: use the menu Hive, Colony")},
    CatalogueEntry{
        "session.use_queen",
        QT_TRANSLATE_NOOP("Messages", "\"%1\" changes the queen: use the menu Hive, Queen")},
};

}  // namespace

std::span<const CatalogueEntry> queenWords() {
  return kWords;
}

}  // namespace outyard::adapt
