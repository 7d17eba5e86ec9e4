// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

// Texts of the desk (core/planning/desk_facts). What may be behind a look outside of what was
// expected is common practice, no source.
namespace outyard::adapt {
namespace {

constexpr std::array kWords{
    CatalogueEntry{"planning.desk.seams",
                   QT_TRANSLATE_NOOP("Messages", "%1 seams seen, %2–%3 expected")},
    CatalogueEntry{"planning.desk.seams_one",
                   QT_TRANSLATE_NOOP("Messages", "%1 seams seen, %2 expected")},
    CatalogueEntry{"planning.desk.less_brood",
                   QT_TRANSLATE_NOOP("Messages", "Less brood: %1 % of what was expected")},
    CatalogueEntry{"planning.desk.more_brood",
                   QT_TRANSLATE_NOOP("Messages", "More brood: %1 % of what was expected")},
    CatalogueEntry{"planning.desk.far_more_brood",
                   QT_TRANSLATE_NOOP("Messages", "More brood: over ten times what was expected")},
    CatalogueEntry{"planning.desk.far_more_stores",
                   QT_TRANSLATE_NOOP("Messages", "More stores: over ten times what was expected")},
    CatalogueEntry{"planning.desk.less_stores",
                   QT_TRANSLATE_NOOP("Messages", "Less stores: %1 % of what was expected")},
    CatalogueEntry{"planning.desk.more_stores",
                   QT_TRANSLATE_NOOP("Messages", "More stores: %1 % of what was expected")},
    CatalogueEntry{"planning.desk.hint_less_stores",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Less stores: is it robbed, or does it eat more than thought? "
                                     "Look whether it must be fed.")},
    CatalogueEntry{"planning.desk.hint_more_stores",
                   QT_TRANSLATE_NOOP("Messages",
                                     "More stores: fed without a record, a flow, or honey that "
                                     "crowds the brood.")},
    CatalogueEntry{
        "planning.desk.hint_fewer",
        QT_TRANSLATE_NOOP("Messages",
                          "Fewer bees: a swarm, robbing, a failing queen, poisoning, bees lost to "
                          "a neighbour; or looked at while many were out.")},
    CatalogueEntry{"planning.desk.hint_more",
                   QT_TRANSLATE_NOOP("Messages",
                                     "More bees: drift from neighbours, a warm spell, or seams "
                                     "read from above with the bees drawn up.")},
    CatalogueEntry{"planning.desk.hint_less_brood",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Less brood: is the queen laying, has she room, is pollen "
                                     "coming in?")},
    CatalogueEntry{
        "planning.desk.hint_more_brood",
        QT_TRANSLATE_NOOP("Messages", "More brood: soon more bees; does it need a box earlier?")},
};

}  // namespace

std::span<const CatalogueEntry> deskWords() {
  return kWords;
}

}  // namespace outyard::adapt
