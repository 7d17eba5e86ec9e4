// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "ui/adapt/catalogue.h"

// Texts of core/planning. What the trade advises here is common practice, no source, unless the
// text names one.
namespace outyard::adapt {
namespace {

constexpr std::array kWords{
    // What can go wrong
    CatalogueEntry{"planning.unknown_yard", "There is no yard %1: check the name."},
    CatalogueEntry{"planning.no_yard", "Name a yard to plan for, or ask for all yards."},
    CatalogueEntry{"planning.target_before",
                   "The target date %1 is before the day of the work, %2: give a later one."},
    CatalogueEntry{"planning.setting_bad",
                   "Setting %1 says “%2”; it must be a number from %3 to %4 (%5). %6 is used."},
    CatalogueEntry{
        "planning.pin_unknown",
        "%1 cannot be pinned: it is not among the options on that day. Take the pin back "
        "or choose another day."},
    CatalogueEntry{"planning.pin_forbidden",
                   "%1 is pinned and forbidden at once: take one of them back."},
    CatalogueEntry{"planning.all_forbidden",
                   "Every option of %1 is forbidden: allow one, for instance to leave it."},
    CatalogueEntry{"planning.pin_breaks",
                   "The pin %1 breaks a limit or a rule: take it back, or raise the limit."},
    CatalogueEntry{"planning.pins_clash",
                   "These pins cannot hold together: %1. Take one of them back."},
    CatalogueEntry{"planning.no_plan",
                   "No plan obeys all limits and rules: take back what was forbidden."},
    CatalogueEntry{"planning.too_hard",
                   "No plan was found within %1 steps of the search: plan fewer yards at once."},
    CatalogueEntry{"planning.cancelled", "Stopped: the plan was not worked out."},
    CatalogueEntry{"planning.plan_yards", "Plan for the yards %1."},

    // Notes
    CatalogueEntry{"planning.note.no_forecast",
                   "Yard %1: forecast not entered. Check the weather rules yourself on the day."},
    CatalogueEntry{"planning.note.short_forecast",
                   "Yard %1: forecast not entered for the days after %2. Check for cold nights "
                   "yourself."},
    CatalogueEntry{"planning.note.weather", "Yard %1: %2"},
    CatalogueEntry{"planning.note.never_counted",
                   "%1 was never counted in these yards, the truck or the shed: taken as enough."},
    CatalogueEntry{"planning.note.none_at_hand", "%1: none at hand by the last count."},

    // Weather
    CatalogueEntry{"planning.weather.wait", "Wait with “%1”: %2 First day that will do: %3."},
    CatalogueEntry{"planning.weather.no_day",
                   "Wait with “%1”: %2 No day that will do in the weather known for the next %3 "
                   "days."},
    CatalogueEntry{"planning.weather.too_cold", "%1 reaches only %2 °C, it needs %3 °C."},
    CatalogueEntry{"planning.weather.wet", "on %1 there are %2 mm of rain, it must be dry."},
    CatalogueEntry{"planning.weather.windy", "on %1 the wind is %2 m/s, it must be under %3 m/s."},
    CatalogueEntry{"planning.weather.cold_night",
                   "the night to %1 falls to %2 °C, no night after it may be under %3 °C."},
    CatalogueEntry{"planning.weather.cold_spell", "from %1 on %2 days running stay under %3 °C."},

    // Barred
    CatalogueEntry{"planning.bar.sick", "%1 is sick: nothing goes in or out."},
    CatalogueEntry{"planning.bar.shares", "%1 holds two colonies: take off or unite those first."},
    CatalogueEntry{"planning.bar.never_seen", "%1 was never looked at: look first."},
    CatalogueEntry{"planning.bar.seen_old",
                   "%1 was last looked at %2 days ago; a look older than %3 days does not carry a "
                   "plan: look first."},
    CatalogueEntry{"planning.bar.no_strength",
                   "%1: no bees recorded at the last look. Count the seams first."},
    CatalogueEntry{"planning.bar.too_small",
                   "%1 is too small to save: bees given to it are lost with it."},
    CatalogueEntry{"planning.bar.too_early",
                   "%1: too early to judge. No brood before the first pollen does not mean that "
                   "there is no queen."},
    CatalogueEntry{"planning.bar.not_enough_seen",
                   "%1: not enough seen to judge. Note seams, eggs and brood first."},
    CatalogueEntry{
        "planning.bar.laying_workers",
        "%1 has laying workers: never set it over or unite it; its bees kill the queen."},

    // Donors
    CatalogueEntry{"planning.donor.hungry",
                   "%1 has under %2 kg of stores: feed it, it gives nothing."},
    CatalogueEntry{"planning.donor.few_bees", "%1 has no bees to spare over the %2 that it keeps."},
    CatalogueEntry{"planning.donor.no_combs",
                   "%1 has chalkbrood or sacbrood: it gives no combs, bees only from beneath."},
    CatalogueEntry{"planning.donor.brood_unknown",
                   "%1: combs with brood were not counted, so it gives none and carries no stack."},
    CatalogueEntry{"planning.donor.keeps_brood",
                   "%1 has brood on %2 combs and keeps %3: it gives no brood."},
    CatalogueEntry{"planning.donor.few_seams",
                   "%1 carries no stack: %2 seams, it takes %3 or more."},
    CatalogueEntry{"planning.donor.few_brood",
                   "%1 carries no stack: it takes brood on %2 combs or more."},
    CatalogueEntry{"planning.donor.queen_cells",
                   "%1 carries no stack: %2 queen cells were seen. See to swarming first."},

    // Why an option is not there
    CatalogueEntry{"planning.because.no_donor",
                   "No healthy colony of yard %1 seen of late is strong enough to give."},
    CatalogueEntry{"planning.because.no_carrier",
                   "No neighbour can carry a stack (%1 seams and brood enough, no queen cells)."},
    CatalogueEntry{"planning.because.donors_weak", "No neighbour has enough to spare for %1."},
    CatalogueEntry{"planning.because.no_eggs",
                   "%1: no eggs and no queen seen at the last look. No eggs, no bees: look for a "
                   "laying queen first."},
    CatalogueEntry{"planning.because.stack_seams",
                   "%1 has %2 seams; set over a strong one are colonies of %3 to %4 seams."},
    CatalogueEntry{"planning.because.boxes", "The boxes of %1 and %2 do not stand on each other."},
    CatalogueEntry{"planning.because.combs", "Combs of %2 do not hang in the box of %1."},
    CatalogueEntry{"planning.because.few_come_up",
                   "Over %1 fewer than %2 bees would come up, or it would be left with too few."},
    CatalogueEntry{"planning.because.gift_seams",
                   "%1 has %2 seams; a comb of brood needs %3 to keep it warm."},
    CatalogueEntry{"planning.because.sealed_unknown",
                   "%1: sealed brood was not recorded, so none can be planned from it."},
    CatalogueEntry{"planning.because.no_flow",
                   "No flow in yard %1 on that day: no swapping of "
                   "stands."},

    // Why this option
    CatalogueEntry{"planning.why.sound",
                   "%1 has a laying queen and %2 seams: too few bees, not a poor queen."},
    CatalogueEntry{"planning.why.queen", "%1 has %2 seams and its queen is poor or gone."},
    CatalogueEntry{"planning.why.stack",
                   "Set over %3, %1 gains about %2 bees in a week; both queens stay."},
    CatalogueEntry{"planning.why.donor_room",
                   "%1 needs laying room beneath first: a second chamber goes on."},
    CatalogueEntry{
        "planning.why.sealed",
        "Combs of sealed brood from %3 for %1: %2; about %4 bees with those that emerge."},
    CatalogueEntry{"planning.why.uncovered",
                   "%1 cannot keep about %2 of those cells warm; they are not counted."},
    CatalogueEntry{"planning.why.nurse",
                   "About %2 nurse bees stay with %1, shaken from %3 combs of %4; the other half "
                   "flies home."},
    CatalogueEntry{"planning.why.swap", "On the stand of %2, %1 gains about %3 field bees."},
    CatalogueEntry{"planning.why.unite", "About %2 bees of %1 go on working with %3."},
    CatalogueEntry{"planning.why.room",
                   "%1 has %2 empty combs: about %3 bees have no brood to cover for want of room."},
    CatalogueEntry{"planning.why.feed", "%1 has %2 kg of stores, under %3 kg."},
    CatalogueEntry{"planning.why.cost",
                   "%1 (%2 seams) gives up what about %3 bees are worth to it."},
    CatalogueEntry{
        "planning.why.chance",
        "Chance that %1 is usable on %2: %4 % instead of %3 %, with about %5 more bees."},
    CatalogueEntry{"planning.why.donor_chance",
                   "%1: chance %3 % instead of %2 %, with about %4 fewer bees."},
    CatalogueEntry{
        "planning.why.donor_gain",
        "%1 is then usable on %2 with a chance of %4 % instead of %3 %, with about %5 more "
        "bees."},
    CatalogueEntry{"planning.note.from_looks",
                   "%1 cannot be forecast: its gain is from what was seen alone."},
    CatalogueEntry{"planning.why.drive", "Drive to yard %1."},

    // The rows of the plan
    CatalogueEntry{"planning.do.leave", "leave"},
    CatalogueEntry{"planning.do.room", "a drawn comb beside the brood"},
    CatalogueEntry{"planning.do.feed", "feed"},
    CatalogueEntry{"planning.do.sealed_one", "one comb of sealed brood from %1"},
    CatalogueEntry{"planning.do.sealed", "%1 combs of sealed brood from %2"},
    CatalogueEntry{"planning.do.nurse", "about %1 nurse bees from %2"},
    CatalogueEntry{"planning.do.stack", "set over %1"},
    CatalogueEntry{"planning.do.swap", "swap stands with %1"},
    CatalogueEntry{"planning.do.unite", "unite with %1"},
    CatalogueEntry{"planning.one_more", "One more of %1 would add %2 to the plan's worth."},
    CatalogueEntry{"planning.second_usable", "Second best: %1, −%2 usable colonies."},
    CatalogueEntry{"planning.elsewhere_usable",
                   "For this colony alone %1 would be better by %2 usable colonies; the donor, the "
                   "gear or the hours do more good elsewhere or are not at hand."},
    CatalogueEntry{"planning.second_donor_usable", "Second donor: %1, −%2 usable colonies."},
    CatalogueEntry{"planning.second_best", "Second best: %1, %2 thousand bees less."},
    CatalogueEntry{"planning.better_elsewhere",
                   "For this colony alone %1 would be better by %2 thousand bees; the donor, the "
                   "gear or the hours do more good elsewhere or are not at hand."},
    CatalogueEntry{"planning.about_equal",
                   "About equal: the looks cannot tell this from %1. Take the easier one."},
    CatalogueEntry{"planning.second_donor_equal", "Second donor: %1, about as good."},
    CatalogueEntry{"planning.second_equal", "Second best: %1, about as good."},
    CatalogueEntry{"planning.second_donor", "Second donor: %1, %2 thousand bees less."},

    // Rules
    CatalogueEntry{"planning.rule.one", "%1 gets one option at most."},
    CatalogueEntry{"planning.rule.some", "%1 gets one option at least; to leave it is one."},
    CatalogueEntry{"planning.rule.joint",
                   "%1 takes part in one stack, union or swap of stands at most."},
    CatalogueEntry{"planning.rule.per_stop", "In yard %1 at most %2 stacks a stop."},
    CatalogueEntry{"planning.rule.donor_receiver", "%1 does not give and receive on one day."},
    CatalogueEntry{"planning.rule.visit", "Work on %1 needs a drive to yard %2."},

    // Tasks that follow
    CatalogueEntry{"planning.task.stack_look",
                   "%1 over %2: is the paper open, are there eggs above, any queen cells? Earlier "
                   "only if it turned colder than 8 °C."},
    CatalogueEntry{"planning.task.take_off",
                   "Take %1 off %2 when both fill their chamber; to a new stand. Its field bees go "
                   "home to %2. Lift with two."},
    CatalogueEntry{"planning.task.donor_queen",
                   "%2 gave brood to %1: eggs in %2 show that its queen stayed."},
    CatalogueEntry{"planning.task.queen_kept",
                   "%1 got strange bees from %2: eggs show that its "
                   "queen was kept."},
    CatalogueEntry{"planning.task.poor_queen",
                   "The day before: find and remove the poorer queen of %1."},
    CatalogueEntry{"planning.task.united_eggs", "%1 was united with %2: look for eggs."},
    CatalogueEntry{"planning.task.fed", "%1 was fed: is it taken, is more needed?"},

    // Cautions of every kind of work
    CatalogueEntry{"planning.need.healthy",
                   "Both healthy, mites treated where over the threshold."},
    CatalogueEntry{
        "planning.caution.lift",
        "A full chamber weighs up to 40 kg: lift with two, close to the body, feet firm."},
    CatalogueEntry{"planning.caution.stings",
                   "Veil, gloves and suit closed; know who is allergic and have their medicine at "
                   "hand; never alone in the yard."},
    CatalogueEntry{"planning.caution.smoke",
                   "Smoker out on bare ground, water at hand; no open fire in dry grass."},
    CatalogueEntry{"planning.caution.foul_brood",
                   "Any sign of foul brood: stop. Nothing in or out of the yard, clean the tools, "
                   "call the bee inspector. It is notifiable in most places."},
    CatalogueEntry{"planning.caution.cold_doubt",
                   "In cold or doubt the empty chamber goes under, in "
                   "a flow over."},
    CatalogueEntry{"planning.caution.feed_first", "%1 has only %2 kg of stores: feed it as well."},
    CatalogueEntry{"planning.caution.carry",
                   "Between yards %1 and %2: screened, strapped, at night or early, the load tied "
                   "down and within the truck’s limit."},
    CatalogueEntry{"planning.caution.frame_type",
                   "Frame type of %1 or %2 not recorded: check that box and combs fit."},
    CatalogueEntry{"planning.caution.one_box", "%1 first goes into one box, its nest together."},
    CatalogueEntry{
        "planning.caution.cells_unknown",
        "%1: queen cells were not noted. Look before stacking; with cells use the second "
        "donor."},
    CatalogueEntry{"planning.caution.room_unknown",
                   "%1: boxes not recorded. It must have laying room below the excluder."},

    // Leave
    CatalogueEntry{"planning.leave.step", "Nothing is moved."},
    CatalogueEntry{"planning.leave.return", "Look again on the next round."},

    // Room
    CatalogueEntry{"planning.room.need_weather", "14 °C or more, dry and calm, 10 to 16 h."},
    CatalogueEntry{"planning.room.need_comb",
                   "Drawn comb, no foundation; none from a dead-out of "
                   "unknown cause."},
    CatalogueEntry{"planning.room.step_honey", "Honey combs out, or to the walls."},
    CatalogueEntry{"planning.room.step_comb", "Drawn comb beside the brood, never between it."},
    CatalogueEntry{"planning.room.step_food",
                   "Food stays touching the nest on both sides, the nest "
                   "in the middle."},
    CatalogueEntry{"planning.room.return", "Look again on the next round."},
    CatalogueEntry{"planning.room.caution_split",
                   "Do not split the brood with empty comb in cold."},
    CatalogueEntry{"planning.room.caution_comb", "Brushed mouldy comb is fine."},

    // Feed
    CatalogueEntry{"planning.feed.need_stores",
                   "Under 5 kg of stores in spring; under 2 to 3 kg is an emergency."},
    CatalogueEntry{"planning.feed.need_weather",
                   "1:1 syrup by weight in spring; below 10 °C nothing liquid, fondant instead."},
    CatalogueEntry{"planning.feed.step_evening", "In the evening, when flight is over."},
    CatalogueEntry{"planning.feed.step_inside", "Inside the hive, close to the cluster."},
    CatalogueEntry{"planning.feed.step_entrance", "Entrances small."},
    CatalogueEntry{"planning.feed.return", "Look after a week whether it is taken."},
    CatalogueEntry{"planning.feed.caution_spill", "No spills: they start robbing."},
    CatalogueEntry{"planning.feed.caution_honey",
                   "No honey of unknown origin: it carries foul "
                   "brood."},
    CatalogueEntry{"planning.feed.caution_supers", "No feed with supers on."},

    // Sealed brood
    CatalogueEntry{"planning.sealed.need_donor",
                   "Healthy donor that keeps brood on 5 combs in April, on 4 later."},
    CatalogueEntry{"planning.sealed.need_receiver",
                   "No comb under 2 seams, one at 3 to 5, two at 6 or more."},
    CatalogueEntry{"planning.sealed.need_weather",
                   "15 °C or more, dry, wind under 5 m/s; no night under −3 °C and no three days "
                   "under 8 °C in the next 7."},
    CatalogueEntry{"planning.sealed.step_find",
                   "Begin at an empty outer comb of the donor, choose a comb about to emerge."},
    CatalogueEntry{"planning.sealed.step_queen",
                   "Be sure that the donor’s queen stays: find her, or shake the comb and let the "
                   "nurse bees come back."},
    CatalogueEntry{"planning.sealed.step_carry",
                   "Carry it covered, minutes only, nurse bees left "
                   "on."},
    CatalogueEntry{"planning.sealed.step_beside", "Set it beside the nest, not into it."},
    CatalogueEntry{"planning.sealed.step_fill", "A drawn comb goes to the donor in its place."},
    CatalogueEntry{"planning.sealed.return", "After a week: eggs in the donor."},
    CatalogueEntry{"planning.sealed.caution_chill",
                   "Chilled brood is lost: give no more than the "
                   "bees can cover."},
    CatalogueEntry{"planning.sealed.caution_outer",
                   "Never pull a comb full of bees first: the queen "
                   "gets rolled."},

    // Nurse bees
    CatalogueEntry{"planning.nurse.need_donor", "Combs of open brood in the donor, bees to spare."},
    CatalogueEntry{"planning.nurse.need_weather", "A warm afternoon, 15 °C or more, calm."},
    CatalogueEntry{"planning.nurse.step_queen", "Set the donor’s queen aside first, on her comb."},
    CatalogueEntry{"planning.nurse.step_receiver", "Cage or cover the queen of the small one."},
    CatalogueEntry{"planning.nurse.step_shake",
                   "Shake open-brood combs onto a board before the small one’s entrance; put the "
                   "combs back at once."},
    CatalogueEntry{"planning.nurse.return", "After a week: eggs in the small one."},
    CatalogueEntry{"planning.nurse.caution_half", "Old bees fly home: count on half."},

    // Stack
    CatalogueEntry{"planning.stack.need_weak",
                   "Small one: 1 to 3 seams, brood, eggs seen, in one box with pollen and food."},
    CatalogueEntry{"planning.stack.need_donor",
                   "Donor: 7 seams or more, brood on 5 combs or more, bees up at the top bars, no "
                   "queen cells."},
    CatalogueEntry{"planning.stack.need_room",
                   "Laying room below the excluder: a second chamber or 2 to 3 empty drawn combs."},
    CatalogueEntry{"planning.stack.need_weather",
                   "12 °C or more that day and dry; no night under −3 °C and no three days under "
                   "8 °C in the next 7."},
    CatalogueEntry{"planning.stack.need_gear",
                   "An excluder, 1 to 2 sheets of newspaper, few slits."},
    CatalogueEntry{
        "planning.stack.step_prepare",
        "See eggs in the small one; its queen on a comb. In the cool before flight or at "
        "evening."},
    CatalogueEntry{
        "planning.stack.step_donor",
        "Take supers and honey boxes off the donor: nest over nest. Drive the bees down."},
    CatalogueEntry{"planning.stack.step_paper", "Paper on the top bars, excluder on the paper."},
    CatalogueEntry{"planning.stack.step_set",
                   "With two: set the small one’s box on, its floor off; cover."},
    CatalogueEntry{
        "planning.stack.step_entrance",
        "Its upper entrance stays closed until the paper is open, then one finger wide."},
    CatalogueEntry{"planning.stack.step_stand", "Clear the old stand."},
    CatalogueEntry{"planning.stack.return_look",
                   "One return at 7 to 9 days: paper open, eggs above, queen cells broken. Earlier "
                   "only if it turned colder than 8 °C."},
    CatalogueEntry{"planning.stack.return_off",
                   "After 3 to 4 weeks, when both fill their chamber: take the upper one off to a "
                   "new stand; its field bees go home."},
    CatalogueEntry{"planning.stack.caution_eggs", "No eggs: do not stack."},
    CatalogueEntry{"planning.stack.caution_risk",
                   "The upper queen is lost in about 1 of 10 stacks (1 of 20 to 1 of 4), the "
                   "donor’s in 1 of 50. Some excluders leak."},
    CatalogueEntry{"planning.stack.caution_field",
                   "Field bees of the small one are lost to the old "
                   "stand."},
    CatalogueEntry{"planning.stack.caution_room",
                   "The stack is no room for the donor: see to its room as well."},
    CatalogueEntry{"planning.stack.caution_cold",
                   "In a cold spell the bees go down and the upper "
                   "brood chills: wait."},

    // Swapped stands
    CatalogueEntry{"planning.swap.need_flow", "Only in a flow, for colonies of 4 to 6 seams."},
    CatalogueEntry{"planning.swap.need_both", "Both queens laying."},
    CatalogueEntry{"planning.swap.step_midday", "At midday, when the field bees are out."},
    CatalogueEntry{"planning.swap.step_swap", "With two: each hive to the other’s stand."},
    CatalogueEntry{"planning.swap.return", "After 3 to 7 days: eggs in the small one."},
    CatalogueEntry{"planning.swap.caution_queen", "A weak queen may be balled; never in a dearth."},

    // Unite
    CatalogueEntry{"planning.unite.need_one", "One queen poor or missing, the other laying well."},
    CatalogueEntry{"planning.unite.need_not", "Not sick, not two weak ones, no laying workers."},
    CatalogueEntry{"planning.unite.need_mites", "Mites treated first."},
    CatalogueEntry{"planning.unite.need_gear", "A sheet of newspaper with few slits."},
    CatalogueEntry{"planning.unite.step_queen", "The day before: remove the poorer queen."},
    CatalogueEntry{"planning.unite.step_paper",
                   "In the evening: paper on the top bars of the one "
                   "that stays."},
    CatalogueEntry{"planning.unite.step_set", "With two: the weak one’s box on top; cover."},
    CatalogueEntry{"planning.unite.step_stand", "Clear the old stand."},
    CatalogueEntry{"planning.unite.return", "After a week: eggs, paper open."},
    CatalogueEntry{"planning.unite.caution_feed", "Feed if there is no flow."},
};

}  // namespace

std::span<const CatalogueEntry> planningWords() {
  return kWords;
}

}  // namespace outyard::adapt
