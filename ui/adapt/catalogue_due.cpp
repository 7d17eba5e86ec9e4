// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

// Texts of what falls due and of the rounds (core/planning/due*, rounds*). What the trade advises
// here is common practice, no source, unless the text names one.
namespace outyard::adapt {
namespace {

constexpr std::array kWords{
    CatalogueEntry{"planning.due.rule.treat_off.name",
                   QT_TRANSLATE_NOOP("Messages", "Take the treatment off")},
    CatalogueEntry{
        "planning.due.rule.treat_off.needs",
        QT_TRANSLATE_NOOP("Messages",
                          "Strips or pads were put in and nothing says that they came out.")},
    CatalogueEntry{
        "planning.due.rule.treat_off.window",
        QT_TRANSLATE_NOOP("Messages",
                          "As the label says; where that is not entered, six to eight weeks "
                          "after they went in.")},
    CatalogueEntry{"planning.due.rule.treat_off.caution",
                   QT_TRANSLATE_NOOP("Messages", "The label and local rules go first.")},
    CatalogueEntry{"planning.due.rule.treat.name",
                   QT_TRANSLATE_NOOP("Messages", "Treat for mites")},
    CatalogueEntry{
        "planning.due.rule.treat.needs",
        QT_TRANSLATE_NOOP("Messages",
                          "The last wash was at or over the threshold of the season, and "
                          "nothing was given since.")},
    CatalogueEntry{"planning.due.rule.treat.window",
                   QT_TRANSLATE_NOOP("Messages", "Within two weeks of the wash.")},
    CatalogueEntry{
        "planning.due.rule.treat.caution",
        QT_TRANSLATE_NOOP("Messages",
                          "The label and local rules go first: dose, temperature, waiting "
                          "period, gloves, goggles and mask.")},
    CatalogueEntry{"planning.due.rule.queen_check.name",
                   QT_TRANSLATE_NOOP("Messages", "Look for a laying queen")},
    CatalogueEntry{
        "planning.due.rule.queen_check.needs",
        QT_TRANSLATE_NOOP("Messages",
                          "A new queen should have begun to lay, or the judgement doubts the "
                          "queen.")},
    CatalogueEntry{
        "planning.due.rule.queen_check.window",
        QT_TRANSLATE_NOOP("Messages",
                          "Up to the day on which eggs are due; a queen in doubt within a "
                          "week, with a test comb with eggs.")},
    CatalogueEntry{
        "planning.due.rule.queen_check.caution",
        QT_TRANSLATE_NOOP("Messages",
                          "Look for eggs, not for the queen; a young queen balls easily when "
                          "disturbed.")},
    CatalogueEntry{"planning.due.rule.paper.name",
                   QT_TRANSLATE_NOOP("Messages", "See whether the paper is open")},
    CatalogueEntry{"planning.due.rule.paper.needs",
                   QT_TRANSLATE_NOOP(
                       "Messages", "A colony was set over another and nobody saw the paper open.")},
    CatalogueEntry{
        "planning.due.rule.paper.window",
        QT_TRANSLATE_NOOP("Messages", "Two to four days after, without taking the box off.")},
    CatalogueEntry{"planning.due.rule.stack_look.name",
                   QT_TRANSLATE_NOOP("Messages", "Look at the stacked pair")},
    CatalogueEntry{"planning.due.rule.stack_look.needs",
                   QT_TRANSLATE_NOOP("Messages", "A colony stands over another.")},
    CatalogueEntry{
        "planning.due.rule.stack_look.window",
        QT_TRANSLATE_NOOP("Messages", "Seven to nine days after: paper, eggs above, cells above.")},
    CatalogueEntry{
        "planning.due.rule.stack_look.caution",
        QT_TRANSLATE_NOOP("Messages", "Lift with two: a full chamber weighs up to 40 kg.")},
    CatalogueEntry{"planning.due.rule.separate.name",
                   QT_TRANSLATE_NOOP("Messages", "Take the upper colony off")},
    CatalogueEntry{"planning.due.rule.separate.needs",
                   QT_TRANSLATE_NOOP("Messages", "A colony stands over another.")},
    CatalogueEntry{
        "planning.due.rule.separate.window",
        QT_TRANSLATE_NOOP("Messages", "Three to four weeks after, when both fill their chamber.")},
    CatalogueEntry{
        "planning.due.rule.separate.caution",
        QT_TRANSLATE_NOOP("Messages", "Lift with two; its field bees fly home to the old stand.")},
    CatalogueEntry{"planning.due.rule.own_stand.name",
                   QT_TRANSLATE_NOOP("Messages", "See the colony on its own stand")},
    CatalogueEntry{"planning.due.rule.own_stand.needs",
                   QT_TRANSLATE_NOOP("Messages", "A colony was taken off a stack.")},
    CatalogueEntry{
        "planning.due.rule.own_stand.window",
        QT_TRANSLATE_NOOP("Messages", "A week to ten days after: eggs, stores, entrance.")},
    CatalogueEntry{"planning.due.rule.stores_out.name",
                   QT_TRANSLATE_NOOP("Messages", "Stores run out")},
    CatalogueEntry{
        "planning.due.rule.stores_out.needs",
        QT_TRANSLATE_NOOP("Messages",
                          "There is a chance of one in five that less than a kilogram is "
                          "left.")},
    CatalogueEntry{"planning.due.rule.stores_out.window",
                   QT_TRANSLATE_NOOP("Messages", "Before that day.")},
    CatalogueEntry{"planning.due.rule.stores_out.caution",
                   QT_TRANSLATE_NOOP("Messages", "Hefting is quick and needs no open hive.")},
    CatalogueEntry{"planning.due.rule.feed.name", QT_TRANSLATE_NOOP("Messages", "Feed")},
    CatalogueEntry{
        "planning.due.rule.feed.needs",
        QT_TRANSLATE_NOOP("Messages",
                          "Stores are expected under what the colony needs until more comes "
                          "in, or under its winter weight.")},
    CatalogueEntry{
        "planning.due.rule.feed.window",
        QT_TRANSLATE_NOOP("Messages",
                          "In the week before; before winter while syrup is still taken.")},
    CatalogueEntry{
        "planning.due.rule.feed.caution",
        QT_TRANSLATE_NOOP("Messages",
                          "No spills, no honey of unknown origin, no feed with supers on.")},
    CatalogueEntry{"planning.due.rule.swarm.name",
                   QT_TRANSLATE_NOOP("Messages", "Look for queen cells")},
    CatalogueEntry{
        "planning.due.rule.swarm.needs",
        QT_TRANSLATE_NOOP("Messages",
                          "Charged or sealed cells were seen, or the nest is crowded with "
                          "brood in the swarm season.")},
    CatalogueEntry{
        "planning.due.rule.swarm.window",
        QT_TRANSLATE_NOOP("Messages",
                          "Every seven to nine days: a cell is sealed on day eight or nine.")},
    CatalogueEntry{
        "planning.due.rule.swarm.caution",
        QT_TRANSLATE_NOOP("Messages", "Cutting cells alone does not end it: give room or divide.")},
    CatalogueEntry{"planning.due.rule.add_box.name", QT_TRANSLATE_NOOP("Messages", "Add a box")},
    CatalogueEntry{
        "planning.due.rule.add_box.needs",
        QT_TRANSLATE_NOOP("Messages", "The bees are expected to cover four fifths of the combs.")},
    CatalogueEntry{"planning.due.rule.add_box.window",
                   QT_TRANSLATE_NOOP("Messages", "In the ten days before.")},
    CatalogueEntry{
        "planning.due.rule.add_box.caution",
        QT_TRANSLATE_NOOP("Messages",
                          "In cold or doubt set an empty chamber under, in a flow over; lift "
                          "with two.")},
    CatalogueEntry{"planning.due.rule.no_room.name",
                   QT_TRANSLATE_NOOP("Messages", "Give room in the nest")},
    CatalogueEntry{"planning.due.rule.no_room.needs",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Brood and stores are expected to fill nine tenths of the "
                                     "chambers' cells.")},
    CatalogueEntry{
        "planning.due.rule.no_room.window",
        QT_TRANSLATE_NOOP("Messages",
                          "In the ten days before: honey combs out or to the walls, drawn "
                          "comb beside the brood.")},
    CatalogueEntry{
        "planning.due.rule.no_room.caution",
        QT_TRANSLATE_NOOP("Messages", "Do not part the brood with empty comb in the cold.")},
    CatalogueEntry{"planning.due.rule.reverse.name",
                   QT_TRANSLATE_NOOP("Messages", "Reverse the chambers")},
    CatalogueEntry{
        "planning.due.rule.reverse.needs",
        QT_TRANSLATE_NOOP("Messages", "Two chambers, and the bees sit in the upper one.")},
    CatalogueEntry{"planning.due.rule.reverse.window",
                   QT_TRANSLATE_NOOP(
                       "Messages", "Two to six weeks after the first pollen, combs out weather.")},
    CatalogueEntry{
        "planning.due.rule.reverse.caution",
        QT_TRANSLATE_NOOP("Messages",
                          "Only when no brood stands across both; no hard frost ahead; lift "
                          "with two.")},
    CatalogueEntry{"planning.due.rule.split.name", QT_TRANSLATE_NOOP("Messages", "Divide")},
    CatalogueEntry{
        "planning.due.rule.split.needs",
        QT_TRANSLATE_NOOP("Messages",
                          "Eight combs of bees and six with brood, a sound queen, drones "
                          "flying, 16 °C for mating.")},
    CatalogueEntry{
        "planning.due.rule.split.window",
        QT_TRANSLATE_NOOP("Messages",
                          "From that day for three weeks, not after mid July (mid January in "
                          "the south).")},
    CatalogueEntry{
        "planning.due.rule.split.caution",
        QT_TRANSLATE_NOOP("Messages",
                          "A split without stores or guard is robbed; queen or cell at hand "
                          "first.")},
    CatalogueEntry{"planning.due.rule.wash.name",
                   QT_TRANSLATE_NOOP("Messages", "Wash bees for mites")},
    CatalogueEntry{"planning.due.rule.wash.needs",
                   QT_TRANSLATE_NOOP("Messages", "No wash in the last month of the brood season.")},
    CatalogueEntry{"planning.due.rule.wash.window",
                   QT_TRANSLATE_NOOP("Messages", "Within two weeks.")},
    CatalogueEntry{"planning.due.rule.wash.caution",
                   QT_TRANSLATE_NOOP("Messages", "Be sure that the queen is not in the cup.")},
    CatalogueEntry{"planning.due.rule.take_off.name",
                   QT_TRANSLATE_NOOP("Messages", "Take the honey off")},
    CatalogueEntry{
        "planning.due.rule.take_off.needs",
        QT_TRANSLATE_NOOP("Messages",
                          "The main flow is over and the supers hold more than the colony "
                          "keeps.")},
    CatalogueEntry{"planning.due.rule.take_off.window",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Within two weeks of the end of the flow, after every waiting "
                                     "period.")},
    CatalogueEntry{
        "planning.due.rule.take_off.caution",
        QT_TRANSLATE_NOOP("Messages",
                          "Only sealed honey; lift with two; keep the waiting period of any "
                          "treatment.")},
    CatalogueEntry{"planning.due.rule.unwrap.name", QT_TRANSLATE_NOOP("Messages", "Unwrap")},
    CatalogueEntry{
        "planning.due.rule.unwrap.needs",
        QT_TRANSLATE_NOOP("Messages", "The hive is wrapped and the first pollen is near.")},
    CatalogueEntry{
        "planning.due.rule.unwrap.window",
        QT_TRANSLATE_NOOP("Messages", "From a week before the first pollen to two weeks after.")},
    CatalogueEntry{"planning.due.rule.wrap.name", QT_TRANSLATE_NOOP("Messages", "Wrap")},
    CatalogueEntry{
        "planning.due.rule.wrap.needs",
        QT_TRANSLATE_NOOP("Messages",
                          "The hive is not wrapped, the winter is cold there, and the yard's usual "
                          "nights come down to frost.")},
    CatalogueEntry{"planning.due.rule.wrap.window",
                   QT_TRANSLATE_NOOP("Messages",
                                     "From two weeks before the usual first frosts to three weeks "
                                     "after. Common practice, no source.")},
    CatalogueEntry{"planning.due.rule.wrap.caution",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Damp kills sooner than cold: leave a way for air below and "
                                     "above. Heft with the legs, with two for a heavy hive.")},
    CatalogueEntry{"planning.due.wrap",
                   QT_TRANSLATE_NOOP("Messages",
                                     "First frosts usually come about %1; the usual coldest nights "
                                     "there are %2 °C.")},
    CatalogueEntry{"planning.due.caution_wrap",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Leave the entrance and a small upper way open, so that damp "
                                     "air gets out: bees die of wet rather than of cold. Feed to "
                                     "winter weight before wrapping.")},
    CatalogueEntry{"planning.calendar.title_shift",
                   QT_TRANSLATE_NOOP("Messages", "Shift the planned work of %1 by %2 day(s)")},
    CatalogueEntry{"planning.calendar.title_flow",
                   QT_TRANSLATE_NOOP("Messages", "Shift a flow of %1 by %2 day(s)")},
    CatalogueEntry{"planning.calendar.nothing_to_shift",
                   QT_TRANSLATE_NOOP("Messages",
                                     "No work is planned in %1: plan some at the desk or in the "
                                     "rounds first.")},
    CatalogueEntry{"planning.calendar.before_today",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Planned work in %1 would come before %2: shift it by fewer "
                                     "than %3 day(s).")},
    CatalogueEntry{"planning.calendar.visit_there",
                   QT_TRANSLATE_NOOP("Messages",
                                     "%1 has a visit on %2 that stays: shift by another number of "
                                     "days.")},
    CatalogueEntry{"planning.calendar.no_flow",
                   QT_TRANSLATE_NOOP("Messages",
                                     "%1 has no flow from day %2 to day %3 of the year: choose "
                                     "another one.")},
    CatalogueEntry{
        "planning.calendar.flow_there",
        QT_TRANSLATE_NOOP("Messages",
                          "%1 has a flow from day %2 to day %3 already: shift by another "
                          "number of days.")},
    CatalogueEntry{"planning.due.rule.open.name", QT_TRANSLATE_NOOP("Messages", "Open next")},
    CatalogueEntry{
        "planning.due.rule.open.needs",
        QT_TRANSLATE_NOOP("Messages", "The last look is old, or the forecast has grown unsure.")},
    CatalogueEntry{
        "planning.due.rule.open.window",
        QT_TRANSLATE_NOOP("Messages",
                          "Three weeks after the last look, ten days where the colony is "
                          "small or the queen in doubt.")},
    CatalogueEntry{
        "planning.due.rule.open.caution",
        QT_TRANSLATE_NOOP("Messages", "Only in open-hive weather; begin at an outer frame.")},
    CatalogueEntry{"planning.due.rule.inspector.name",
                   QT_TRANSLATE_NOOP("Messages", "Call the bee inspector")},
    CatalogueEntry{"planning.due.rule.inspector.needs",
                   QT_TRANSLATE_NOOP("Messages", "Foul brood was suspected in the yard.")},
    CatalogueEntry{"planning.due.rule.inspector.window",
                   QT_TRANSLATE_NOOP("Messages", "Now: nothing in or out of the yard.")},
    CatalogueEntry{
        "planning.due.rule.inspector.caution",
        QT_TRANSLATE_NOOP("Messages",
                          "It is notifiable in most places; the program never diagnoses.")},
    CatalogueEntry{"planning.due.rule.clear_dead.name",
                   QT_TRANSLATE_NOOP("Messages", "Close and clear a dead hive")},
    CatalogueEntry{"planning.due.rule.clear_dead.needs",
                   QT_TRANSLATE_NOOP("Messages", "The colony died and its boxes stand.")},
    CatalogueEntry{
        "planning.due.rule.clear_dead.window",
        QT_TRANSLATE_NOOP("Messages", "Entrance closed at once, cleared within a week.")},
    CatalogueEntry{
        "planning.due.rule.clear_dead.caution",
        QT_TRANSLATE_NOOP("Messages",
                          "Combs from a hive that died of unknown causes go to no other hive.")},
    CatalogueEntry{"planning.due.kind.open", QT_TRANSLATE_NOOP("Messages", "Open")},
    CatalogueEntry{"planning.due.kind.look", QT_TRANSLATE_NOOP("Messages", "Look in")},
    CatalogueEntry{"planning.due.kind.other", QT_TRANSLATE_NOOP("Messages", "%1")},
    CatalogueEntry{"planning.due.planned", QT_TRANSLATE_NOOP("Messages", "planned")},
    CatalogueEntry{"planning.due.planned_why", QT_TRANSLATE_NOOP("Messages", "%1")},
    CatalogueEntry{"planning.due.no_weather",
                   QT_TRANSLATE_NOOP("Messages",
                                     "No weather is known for %1: import a weather file or type a "
                                     "forecast; until then no day can be called warm enough.")},
    CatalogueEntry{
        "planning.due.caution_no_day",
        QT_TRANSLATE_NOOP("Messages",
                          "No day of the window promises %1 °C and dry: take the best one, "
                          "or a quick look only.")},
    CatalogueEntry{"planning.due.open_never",
                   QT_TRANSLATE_NOOP("Messages", "Never looked at so far.")},
    CatalogueEntry{
        "planning.due.open_unsure",
        QT_TRANSLATE_NOOP("Messages",
                          "%1 days after the last look; the size may be a third off (%2 %).")},
    CatalogueEntry{
        "planning.due.open_small",
        QT_TRANSLATE_NOOP("Messages",
                          "%1 days after the last look at a colony that is small or has a "
                          "queen in doubt.")},
    CatalogueEntry{"planning.due.open_age",
                   QT_TRANSLATE_NOOP("Messages", "%1 days after the last look.")},
    CatalogueEntry{
        "planning.due.add_box",
        QT_TRANSLATE_NOOP("Messages",
                          "About %1 bees on %2 combs by %3: they cover %4 % of the combs, "
                          "add a box before.")},
    CatalogueEntry{
        "planning.due.no_room",
        QT_TRANSLATE_NOOP("Messages",
                          "By %1 brood and %3 kg of stores fill %2 % of the chambers' cells: "
                          "the queen has no room.")},
    CatalogueEntry{
        "planning.due.stores_out",
        QT_TRANSLATE_NOOP("Messages",
                          "By %1 the chance of empty combs reaches %2 %; then about %3 kg "
                          "are expected.")},
    CatalogueEntry{
        "planning.due.feed",
        QT_TRANSLATE_NOOP("Messages", "Under %2 kg from %1 on; then about %3 kg are expected.")},
    CatalogueEntry{
        "planning.due.feed_winter",
        QT_TRANSLATE_NOOP("Messages", "About %1 kg expected, %2 kg wanted for the winter by %3.")},
    CatalogueEntry{
        "planning.due.paper",
        QT_TRANSLATE_NOOP("Messages",
                          "Set over on %1: are the bees chewing the paper? Do not lift the "
                          "box.")},
    CatalogueEntry{
        "planning.due.stack_look",
        QT_TRANSLATE_NOOP("Messages",
                          "Set over on %1: paper open, eggs above, no queen cells above?")},
    CatalogueEntry{
        "planning.due.separate",
        QT_TRANSLATE_NOOP("Messages",
                          "Set over on %1: three to four weeks are enough when both fill "
                          "their chamber; the upper one to a new stand.")},
    CatalogueEntry{
        "planning.due.own_stand",
        QT_TRANSLATE_NOOP("Messages",
                          "Taken off on %1: laying again, stores, few field bees: make the "
                          "entrance small.")},
    CatalogueEntry{"planning.due.reverse",
                   QT_TRANSLATE_NOOP("Messages", "The bees sit in the upper of two chambers.")},
    CatalogueEntry{
        "planning.due.reverse_unknown",
        QT_TRANSLATE_NOOP("Messages",
                          "Two chambers; nobody noted where the bees sit: lift the lid and "
                          "look before.")},
    CatalogueEntry{
        "planning.due.split",
        QT_TRANSLATE_NOOP("Messages",
                          "About %1 combs of bees and %2 with brood; mating needs %3 °C.")},
    CatalogueEntry{
        "planning.due.swarm_cells",
        QT_TRANSLATE_NOOP("Messages", "Queen cells with larvae or sealed were seen on %1.")},
    CatalogueEntry{
        "planning.due.swarm",
        QT_TRANSLATE_NOOP("Messages",
                          "Chance of a swarm %1 % until %2: the nest is crowded with brood.")},
    CatalogueEntry{
        "planning.due.wash_again",
        QT_TRANSLATE_NOOP("Messages",
                          "%1 days since the last wash or treatment; chance of being over %3 "
                          "mites per 100 bees: %2 %.")},
    CatalogueEntry{
        "planning.due.wash_never",
        QT_TRANSLATE_NOOP("Messages",
                          "No wash on record; chance of being over %2 mites per 100 bees: %1 "
                          "%.")},
    CatalogueEntry{"planning.due.treat",
                   QT_TRANSLATE_NOOP("Messages", "%1 mites per 100 bees on %2, threshold %3.")},
    CatalogueEntry{"planning.due.treat_off", QT_TRANSLATE_NOOP("Messages", "%1 went in on %2.")},
    CatalogueEntry{"planning.due.queen_due",
                   QT_TRANSLATE_NOOP("Messages", "New queen since %1: eggs are due by %2.")},
    CatalogueEntry{
        "planning.due.queen_doubt",
        QT_TRANSLATE_NOOP("Messages",
                          "Judged: %1 (seen %2). Give a test comb with eggs, or look again.")},
    CatalogueEntry{"planning.due.take_off",
                   QT_TRANSLATE_NOOP(
                       "Messages", "The flow ends on %1; about %2 kg more than the colony keeps.")},
    CatalogueEntry{
        "planning.due.take_off_wait",
        QT_TRANSLATE_NOOP("Messages",
                          "The flow ends on %1, yet the waiting period of the treatment runs "
                          "until %2; about %3 kg more than the colony keeps.")},
    CatalogueEntry{"planning.due.unwrap", QT_TRANSLATE_NOOP("Messages", "First pollen about %1.")},
    CatalogueEntry{
        "planning.due.inspector",
        QT_TRANSLATE_NOOP("Messages",
                          "Foul brood was suspected in %1: nothing in or out of this yard "
                          "until the inspector has been.")},
    CatalogueEntry{
        "planning.due.clear_dead",
        QT_TRANSLATE_NOOP("Messages", "Died about %1: close the entrance now, then clear it.")},
    CatalogueEntry{"planning.due.caution_cold_box",
                   QT_TRANSLATE_NOOP(
                       "Messages", "In cold or doubt set an empty chamber under, in a flow over.")},
    CatalogueEntry{
        "planning.due.caution_reverse",
        QT_TRANSLATE_NOOP("Messages",
                          "Not when brood stands across both chambers, nor with hard frost "
                          "ahead.")},
    CatalogueEntry{
        "planning.due.caution_split",
        QT_TRANSLATE_NOOP("Messages",
                          "Queen or ripe cell at hand; feed it and make its entrance small "
                          "against robbing.")},
    CatalogueEntry{
        "planning.due.caution_cells",
        QT_TRANSLATE_NOOP("Messages",
                          "Cutting cells alone does not end it: give room or divide; look "
                          "again within nine days.")},
    CatalogueEntry{
        "planning.due.caution_label",
        QT_TRANSLATE_NOOP("Messages",
                          "The label and local rules go first; note product, batch and date.")},
    CatalogueEntry{
        "planning.due.caution_acid",
        QT_TRANSLATE_NOOP("Messages",
                          "Acids and oils burn: gloves, goggles and the mask that the label "
                          "names.")},
    CatalogueEntry{
        "planning.due.caution_supers_on",
        QT_TRANSLATE_NOOP("Messages",
                          "Supers for harvest come off first unless the label allows them.")},
    CatalogueEntry{
        "planning.due.caution_honey_dry",
        QT_TRANSLATE_NOOP("Messages",
                          "Only sealed combs: honey with more than about 18 % water ferments.")},
    CatalogueEntry{
        "planning.due.caution_dead",
        QT_TRANSLATE_NOOP("Messages", "No comb of it to another hive before the cause is known.")},
    // Rounds
    CatalogueEntry{"planning.round.why", QT_TRANSLATE_NOOP("Messages", "%1: %2 by %3")},
    CatalogueEntry{"planning.round.too_heavy",
                   QT_TRANSLATE_NOOP("Messages",
                                     "The load weighs about %1 kg, the truck carries %2 kg: take "
                                     "two trips or fewer boxes.")},
    CatalogueEntry{"planning.round.tied",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Tie the load down, the heavy things low and in front of the "
                                     "axle; keep within what the truck's papers allow.")},
    CatalogueEntry{"planning.round.weight_unknown",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Some things have no weight on record: the load is heavier "
                                     "than the sum.")},
    CatalogueEntry{
        "planning.round.syrup",
        QT_TRANSLATE_NOOP("Messages", "Syrup in closed cans: a spill in the yard starts robbing.")},
    CatalogueEntry{"planning.round.long_day",
                   QT_TRANSLATE_NOOP("Messages",
                                     "%1 takes %2 hours, more than the %3 of a day: part the work "
                                     "or take more hands.")},
    CatalogueEntry{"planning.round.left",
                   QT_TRANSLATE_NOOP("Messages",
                                     "%1 thing(s) fit on no visit that is worth the drive: they "
                                     "stay on the list.")},
    CatalogueEntry{"planning.round.no_home",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Drives count from yard to yard only: enter where the rounds "
                                     "begin (latitude and longitude of home, in the figures of "
                                     "this outfit) to count the way from home.")},
    CatalogueEntry{"exchange.ics_visit", QT_TRANSLATE_NOOP("Messages", "Visit to %1")},
    CatalogueEntry{"exchange.ics_due", QT_TRANSLATE_NOOP("Messages", "%1: %2 thing(s) due")},
    CatalogueEntry{"exchange.ics_by", QT_TRANSLATE_NOOP("Messages", "The first of them by %1")},
};

}  // namespace

std::span<const CatalogueEntry> dueWords() {
  return kWords;
}

}  // namespace outyard::adapt
