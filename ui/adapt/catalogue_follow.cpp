// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

// Texts of what follows on a boost (core/planning/stack_follow, plan_review). What the trade
// advises here is common practice, no source.
namespace outyard::adapt {
namespace {

constexpr std::array kWords{
    CatalogueEntry{"planning.follow.step.set", QT_TRANSLATE_NOOP("Messages", "Set over")},
    CatalogueEntry{"planning.follow.step.paper",
                   QT_TRANSLATE_NOOP("Messages", "Look at the paper")},
    CatalogueEntry{"planning.follow.step.upper_queen",
                   QT_TRANSLATE_NOOP("Messages", "Check the upper queen")},
    CatalogueEntry{"planning.follow.step.separate",
                   QT_TRANSLATE_NOOP("Messages", "Excluder off, upper one on its stand")},
    CatalogueEntry{"planning.follow.step.own_stand",
                   QT_TRANSLATE_NOOP("Messages", "Look at it on its own stand")},
    CatalogueEntry{"planning.follow.set", QT_TRANSLATE_NOOP("Messages", "%1 over %2 on %3.")},
    CatalogueEntry{"planning.follow.paper_open",
                   QT_TRANSLATE_NOOP("Messages", "Paper open on %1.")},
    CatalogueEntry{"planning.follow.paper_with_look",
                   QT_TRANSLATE_NOOP("Messages", "The upper colony was looked at on %1.")},
    CatalogueEntry{
        "planning.follow.paper_passed",
        QT_TRANSLATE_NOOP("Messages", "Not recorded; the look at the upper queen shows it too.")},
    CatalogueEntry{"planning.follow.look_passed",
                   QT_TRANSLATE_NOOP("Messages", "Not recorded before they were parted.")},
    CatalogueEntry{"planning.follow.eggs",
                   QT_TRANSLATE_NOOP("Messages", "Eggs or queen seen above on %1.")},
    CatalogueEntry{"planning.follow.no_eggs",
                   QT_TRANSLATE_NOOP("Messages", "No eggs seen above on %1.")},
    CatalogueEntry{
        "planning.follow.eggs_unsaid",
        QT_TRANSLATE_NOOP("Messages", "Looked at on %1, eggs not noted. See eggs before parting.")},
    CatalogueEntry{
        "planning.follow.plan_b",
        QT_TRANSLATE_NOOP("Messages",
                          "Plan B: no queen lays above. Take the excluder off, so that the bees of "
                          "%1 are one colony, or give the upper box a queen.")},
    CatalogueEntry{"planning.follow.taken_off",
                   QT_TRANSLATE_NOOP("Messages", "On its own stand as %1 since %2.")},
    CatalogueEntry{"planning.follow.joined",
                   QT_TRANSLATE_NOOP("Messages", "One colony with that of %1 since %2.")},
    CatalogueEntry{"planning.follow.gone", QT_TRANSLATE_NOOP("Messages", "Colony %1 ended on %2.")},
    CatalogueEntry{"planning.follow.separate_on",
                   QT_TRANSLATE_NOOP("Messages",
                                     "By %1 both are expected on %2 seams or more; warm enough and "
                                     "dry.")},
    CatalogueEntry{"planning.follow.separate_strong",
                   QT_TRANSLATE_NOOP("Messages", "By %1 both are expected on %2 seams or more.")},
    CatalogueEntry{
        "planning.follow.separate_wait",
        QT_TRANSLATE_NOOP("Messages",
                          "%1 is not expected on %3 seams by %2. Leave them together and look "
                          "again in a week; with no eggs or a failing queen use plan B.")},
    CatalogueEntry{"planning.follow.drift",
                   QT_TRANSLATE_NOOP("Messages",
                                     "About %2 of %3 bees flew home to %1. Food and brood need the "
                                     "rest: see that it is not robbed.")},
    CatalogueEntry{"planning.follow.advice.paper",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Lift the lid only: shreds of paper at the entrance or on the "
                                     "top bars say that it is open.")},
    CatalogueEntry{
        "planning.follow.advice.entrance",
        QT_TRANSLATE_NOOP("Messages", "Open the upper entrance one finger wide once it is.")},
    CatalogueEntry{"planning.follow.advice.eggs",
                   QT_TRANSLATE_NOOP("Messages", "Look for eggs above, one comb is enough.")},
    CatalogueEntry{"planning.follow.advice.cells",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Queen cells above: look below too, before anything is cut.")},
    CatalogueEntry{"planning.follow.advice.plan_b",
                   QT_TRANSLATE_NOOP("Messages",
                                     "No eggs above: look once more after five days, then take the "
                                     "excluder off or give a queen.")},
    CatalogueEntry{"planning.follow.advice.eggs_first",
                   QT_TRANSLATE_NOOP("Messages", "See eggs above first.")},
    CatalogueEntry{"planning.follow.advice.stand",
                   QT_TRANSLATE_NOOP("Messages",
                                     "In the evening or before flight, the upper chamber on its "
                                     "floor at its stand; two people lift, up to 40 kg.")},
    CatalogueEntry{"planning.follow.advice.excluder",
                   QT_TRANSLATE_NOOP("Messages", "The excluder comes off the lower one.")},
    CatalogueEntry{"planning.follow.advice.food",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Entrance small, food for a week: its field bees fly home to "
                                     "the lower one.")},
    CatalogueEntry{"planning.follow.advice.own_stand",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Eggs, bees left, food. Note the seams: the forecast follows "
                                     "what flew home.")},
    CatalogueEntry{"planning.review.seams", QT_TRANSLATE_NOOP("Messages", "%1–%2 seams")},
    CatalogueEntry{"planning.review.seams_one", QT_TRANSLATE_NOOP("Messages", "%1 seams")},
    CatalogueEntry{"planning.review.seen",
                   QT_TRANSLATE_NOOP("Messages", "Promised %1 on %2, seen %3.")},
    CatalogueEntry{"planning.review.so_far",
                   QT_TRANSLATE_NOOP("Messages",
                                     "So far: promised %1 on %2, seen %3. The day to judge by is "
                                     "%4.")},
    CatalogueEntry{"planning.review.waiting",
                   QT_TRANSLATE_NOOP("Messages", "Promised %1 on %2; not looked at yet.")},
    CatalogueEntry{"planning.review.waiting_plain",
                   QT_TRANSLATE_NOOP("Messages", "To be judged on %1.")},
    CatalogueEntry{"planning.review.died",
                   QT_TRANSLATE_NOOP("Messages", "Promised %1 on %2; died on %3.")},
    CatalogueEntry{"planning.review.died_plain", QT_TRANSLATE_NOOP("Messages", "Died on %1.")},
    CatalogueEntry{"planning.review.not_made",
                   QT_TRANSLATE_NOOP("Messages", "Planned for %1 and not made.")},
    CatalogueEntry{
        "planning.review.not_looked",
        QT_TRANSLATE_NOOP("Messages", "Promised %1 on %2; nobody looked within three weeks.")},
    CatalogueEntry{"planning.review.not_looked_plain",
                   QT_TRANSLATE_NOOP("Messages", "Nobody looked within three weeks of %1.")},
    CatalogueEntry{"planning.review.unknown",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Seen %2 seams on %1. The records of the plan's day are not "
                                     "in this season, so its promise cannot be worked out.")},
    CatalogueEntry{"planning.review.sum",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Of %1 promises %2 fell within. In %3 the colony was nearer "
                                     "to the forecast with the boost than to that without.")},
    CatalogueEntry{
        "planning.review.sum_none",
        QT_TRANSLATE_NOOP("Messages", "No boost has been looked at near its target day yet.")},
};

}  // namespace

std::span<const CatalogueEntry> followWords() {
  return kWords;
}

}  // namespace outyard::adapt
