// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

namespace outyard::adapt {

std::span<const CatalogueEntry> sessionWords() {
  static constexpr std::array kWords{
      CatalogueEntry{"session.across_colonies",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Two colonies share hive %1: boxes change places within one "
                                       "colony only. Take the upper one off first")},
      CatalogueEntry{
          "session.bees_need_colony",
          QT_TRANSLATE_NOOP(
              "Messages",
              "No colony lives in hive %1 on %2: shake the bees off, or put a colony in first")},
      CatalogueEntry{
          "session.bees_on_the_heap",
          QT_TRANSLATE_NOOP("Messages",
                            "Bees cannot stay on the gear heap: shake or brush them off first")},
      CatalogueEntry{
          "session.box_without_combs",
          QT_TRANSLATE_NOOP("Messages", "Box %2 of hive %1 is a feeder: it holds no combs")},
      CatalogueEntry{
          "session.brood_in_the_middle",
          QT_TRANSLATE_NOOP(
              "Messages",
              "No brood was seen on the combs of hive %1, or it stands in the middle already")},
      CatalogueEntry{"session.combs_of_one_hive",
                     QT_TRANSLATE_NOOP("Messages", "Choose the combs of one hive only")},
      CatalogueEntry{"session.exchange_one_comb",
                     QT_TRANSLATE_NOOP(
                         "Messages", "Comb for comb: choose one comb, and one to change it with")},
      CatalogueEntry{"session.later_moves",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Combs or boxes of hive %1 were moved on %2, after %3; "
                                       "withdraw that move first or choose a later date")},
      CatalogueEntry{"session.no_free_slot",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Box %2 of hive %1 takes %3 combs and is full: take one out "
                                       "first, or change comb for comb")},
      CatalogueEntry{
          "session.no_such_comb",
          QT_TRANSLATE_NOOP("Messages", "Box %2 of hive %1 has no comb %3; it holds %4")},
      CatalogueEntry{
          "session.no_such_place",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Hive %1 has no place %2 for a box; choose 1 to %3, counted from the floor")},
      CatalogueEntry{"session.not_on_the_heap",
                     QT_TRANSLATE_NOOP("Messages", "That piece is not on the gear heap on %1")},
      CatalogueEntry{"session.nothing_moves", QT_TRANSLATE_NOOP("Messages", "Choose a comb first")},
      CatalogueEntry{"session.nothing_seen",
                     QT_TRANSLATE_NOOP("Messages", "Say first what is on the combs of hive %1")},
      CatalogueEntry{
          "session.other_frame_type",
          QT_TRANSLATE_NOOP("Messages",
                            "The comb does not fit: box %2 of hive %1 has frames of another type")},
      CatalogueEntry{"session.together_refused",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Nothing was done, because of hive %1. Leave it out, or "
                                       "put right what follows")},
      CatalogueEntry{"session.stands_there",
                     QT_TRANSLATE_NOOP("Messages", "It stands there already")},
      CatalogueEntry{"session.kind.bees_shaken", QT_TRANSLATE_NOOP("Messages", "bees shaken")},
      CatalogueEntry{"session.kind.bloom", QT_TRANSLATE_NOOP("Messages", "bloom")},
      CatalogueEntry{"session.kind.bought", QT_TRANSLATE_NOOP("Messages", "bought")},
      CatalogueEntry{"session.kind.box_added", QT_TRANSLATE_NOOP("Messages", "box added")},
      CatalogueEntry{"session.kind.box_removed", QT_TRANSLATE_NOOP("Messages", "box taken off")},
      CatalogueEntry{"session.kind.cells_removed",
                     QT_TRANSLATE_NOOP("Messages", "queen cells removed")},
      CatalogueEntry{"session.kind.died", QT_TRANSLATE_NOOP("Messages", "death")},
      CatalogueEntry{"session.kind.excluder_off", QT_TRANSLATE_NOOP("Messages", "excluder off")},
      CatalogueEntry{"session.kind.excluder_on", QT_TRANSLATE_NOOP("Messages", "excluder on")},
      CatalogueEntry{"session.kind.fed", QT_TRANSLATE_NOOP("Messages", "feed")},
      CatalogueEntry{"session.kind.frames_given", QT_TRANSLATE_NOOP("Messages", "frames given")},
      CatalogueEntry{"session.kind.frames_moved", QT_TRANSLATE_NOOP("Messages", "frames moved")},
      CatalogueEntry{"session.kind.frames_taken", QT_TRANSLATE_NOOP("Messages", "frames taken")},
      CatalogueEntry{"session.kind.harvested", QT_TRANSLATE_NOOP("Messages", "harvest")},
      CatalogueEntry{"session.kind.installed", QT_TRANSLATE_NOOP("Messages", "colony put in")},
      CatalogueEntry{"session.kind.lost", QT_TRANSLATE_NOOP("Messages", "lost")},
      CatalogueEntry{"session.kind.moved", QT_TRANSLATE_NOOP("Messages", "move")},
      CatalogueEntry{"session.kind.note", QT_TRANSLATE_NOOP("Messages", "note")},
      CatalogueEntry{"session.kind.paper_open", QT_TRANSLATE_NOOP("Messages", "paper open")},
      CatalogueEntry{"session.kind.places_changed",
                     QT_TRANSLATE_NOOP("Messages", "swapped stands")},
      CatalogueEntry{"session.kind.poisoned", QT_TRANSLATE_NOOP("Messages", "poisoned")},
      CatalogueEntry{"session.kind.queen_cell_given",
                     QT_TRANSLATE_NOOP("Messages", "queen cell given")},
      CatalogueEntry{"session.kind.queen_introduced",
                     QT_TRANSLATE_NOOP("Messages", "queen introduced")},
      CatalogueEntry{"session.kind.queen_lost", QT_TRANSLATE_NOOP("Messages", "queen lost")},
      CatalogueEntry{"session.kind.queen_marked", QT_TRANSLATE_NOOP("Messages", "queen marked")},
      CatalogueEntry{"session.kind.queen_removed", QT_TRANSLATE_NOOP("Messages", "queen removed")},
      CatalogueEntry{"session.kind.queen_seen_laying",
                     QT_TRANSLATE_NOOP("Messages", "queen seen laying")},
      CatalogueEntry{"session.kind.reversed", QT_TRANSLATE_NOOP("Messages", "reversal")},
      CatalogueEntry{"session.kind.robbed", QT_TRANSLATE_NOOP("Messages", "robbed")},
      CatalogueEntry{"session.kind.sold", QT_TRANSLATE_NOOP("Messages", "sold")},
      CatalogueEntry{"session.kind.split", QT_TRANSLATE_NOOP("Messages", "split")},
      CatalogueEntry{"session.kind.stacked", QT_TRANSLATE_NOOP("Messages", "set over")},
      CatalogueEntry{"session.kind.supered", QT_TRANSLATE_NOOP("Messages", "super added")},
      CatalogueEntry{"session.kind.swarmed", QT_TRANSLATE_NOOP("Messages", "swarmed")},
      CatalogueEntry{"session.kind.treated", QT_TRANSLATE_NOOP("Messages", "treatment")},
      CatalogueEntry{"session.kind.treatment_off", QT_TRANSLATE_NOOP("Messages", "treatment off")},
      CatalogueEntry{"session.kind.united", QT_TRANSLATE_NOOP("Messages", "united")},
      CatalogueEntry{"session.kind.unstacked", QT_TRANSLATE_NOOP("Messages", "taken off")},
      CatalogueEntry{"session.kind.unwrapped", QT_TRANSLATE_NOOP("Messages", "unwrapped")},
      CatalogueEntry{"session.kind.verdict", QT_TRANSLATE_NOOP("Messages", "judgement")},
      CatalogueEntry{"session.kind.wrapped", QT_TRANSLATE_NOOP("Messages", "wrapped")},
      CatalogueEntry{"session.as_said", QT_TRANSLATE_NOOP("Messages", "%1")},
      CatalogueEntry{"session.layout_empty",
                     QT_TRANSLATE_NOOP("Messages",
                                       "There is nothing of that kind in %1 to copy: draw a stand "
                                       "or feature first")},
      CatalogueEntry{"session.layout_same",
                     QT_TRANSLATE_NOOP("Messages", "%1 is the yard itself: choose another one")},
      CatalogueEntry{
          "session.not_the_upper",
          QT_TRANSLATE_NOOP("Messages",
                            "Colony %1 is not the upper one of hive %2; choose the upper one")},
      CatalogueEntry{
          "session.stack_look_empty",
          QT_TRANSLATE_NOOP("Messages",
                            "Say what was seen in the stack of %1: the paper, eggs, queen, cells, "
                            "seams or a note")},
      CatalogueEntry{
          "session.already_stacked",
          QT_TRANSLATE_NOOP("Messages",
                            "Hive %1 already holds two colonies; take the upper one off first")},
      CatalogueEntry{"session.bad_value", QT_TRANSLATE_NOOP("Messages", "%1: %2")},
      CatalogueEntry{"session.before_first_place",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Hive %1 stands in a yard only from %2; %3 is before that")},
      CatalogueEntry{
          "session.beneath_lowest",
          QT_TRANSLATE_NOOP("Messages", "Hive %1: nothing can lie beneath the lowest box")},
      CatalogueEntry{
          "session.box_frames",
          QT_TRANSLATE_NOOP("Messages", "Hive %1, box %2: the number of frames must be 0 to 60")},
      CatalogueEntry{
          "session.box_of_other",
          QT_TRANSLATE_NOOP("Messages", "Hive %1, box %2: colony %3 does not live there")},
      CatalogueEntry{"session.boxes_not_recorded",
                     QT_TRANSLATE_NOOP(
                         "Messages", "The boxes of hive %1 are not recorded; say its stack first")},
      CatalogueEntry{
          "session.built_upon",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Hive %1 has a later record of %2 that builds on this one; withdraw that one first")},
      CatalogueEntry{
          "session.cause_missing",
          QT_TRANSLATE_NOOP("Messages", "Say of what %1 died, and what becomes of the combs")},
      CatalogueEntry{
          "session.changed_meanwhile",
          QT_TRANSLATE_NOOP("Messages",
                            "The season has changed since this was worked out; do it again")},
      CatalogueEntry{
          "session.colony_elsewhere",
          QT_TRANSLATE_NOOP(
              "Messages",
              "The name %1 is another colony's already; put in a colony of another name")},
      CatalogueEntry{"session.colony_not_there",
                     QT_TRANSLATE_NOOP("Messages", "Colony %1 does not live in hive %2 on %3")},
      CatalogueEntry{"session.done_when",
                     QT_TRANSLATE_NOOP("Messages", "Say on which day the task was done")},
      CatalogueEntry{"session.feature_exists",
                     QT_TRANSLATE_NOOP("Messages",
                                       "There is already a \"%1\" on a map; give it another name")},
      CatalogueEntry{"session.feed_missing",
                     QT_TRANSLATE_NOOP("Messages", "Say what hive %1 was fed")},
      CatalogueEntry{
          "session.first_place_stays",
          QT_TRANSLATE_NOOP(
              "Messages",
              "The first place of hive %1 cannot be withdrawn; arrange the hive instead")},
      CatalogueEntry{
          "session.foul_brood",
          QT_TRANSLATE_NOOP("Messages",
                            "Foul brood is suspected in yard %1 (hive %2): no bees, combs, honey, "
                            "boxes or tools go in or out. Call the bee inspector")},
      CatalogueEntry{
          "session.from_dead_hive",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Hive %1 is dead; combs of a dead hive are not moved before the cause is known")},
      CatalogueEntry{
          "session.gear_place",
          QT_TRANSLATE_NOOP("Messages", "\"%1\" is no place for gear; use a yard, truck or shed")},
      CatalogueEntry{"session.gift_amount",
                     QT_TRANSLATE_NOOP("Messages", "Say how much hive %1 receives: more than 0")},
      CatalogueEntry{"session.giver_missing",
                     QT_TRANSLATE_NOOP("Messages", "Say from which hive %1 receives")},
      CatalogueEntry{
          "session.hive_dead",
          QT_TRANSLATE_NOOP("Messages", "Hive %1 is dead on %2; choose another hive or day")},
      CatalogueEntry{
          "session.hive_empty",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Hive %1 holds no colony on %2; put one in first, or choose another hive")},
      CatalogueEntry{
          "session.hive_exists",
          QT_TRANSLATE_NOOP("Messages", "There is already a hive %1; give it another number")},
      CatalogueEntry{"session.hive_gone",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1 is no longer there on %2")},
      CatalogueEntry{"session.hive_twice",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1 stands twice in the list")},
      CatalogueEntry{
          "session.in_the_future",
          QT_TRANSLATE_NOOP("Messages",
                            "%1 is in the future (today is %2); plan a task instead of a record")},
      CatalogueEntry{
          "session.later_place",
          QT_TRANSLATE_NOOP("Messages",
                            "Hive %1 was moved on %2, after %3; withdraw that move first")},
      CatalogueEntry{"session.later_records",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Hive %1 has later records of %2; this cannot be dated %3")},
      CatalogueEntry{
          "session.later_stack",
          QT_TRANSLATE_NOOP(
              "Messages",
              "The boxes of hive %1 were changed on %2, after %3; withdraw that change first")},
      CatalogueEntry{"session.line_twice",
                     QT_TRANSLATE_NOOP("Messages", "Line %1 stands twice on the sheet")},
      CatalogueEntry{"session.loose_state_rows",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Hive %1 has state rows of %2 that belong to no event; "
                                       "correct them through the exchange tables")},
      CatalogueEntry{"session.lower_stays",
                     QT_TRANSLATE_NOOP(
                         "Messages",
                         "Colony %1 is the lower one in hive %2; only the upper one is taken off")},
      CatalogueEntry{"session.name_blank", QT_TRANSLATE_NOOP("Messages", "Give it a name")},
      CatalogueEntry{"session.name_long",
                     QT_TRANSLATE_NOOP("Messages",
                                       "\"%1\" is too long for a name; use at most 64 characters")},
      CatalogueEntry{"session.name_the_colony",
                     QT_TRANSLATE_NOOP("Messages", "Two colonies share hive %1; name %2 or %3")},
      CatalogueEntry{
          "session.name_untidy",
          QT_TRANSLATE_NOOP(
              "Messages",
              "\"%1\" has spaces at an end or signs that cannot be written; write the name anew")},
      CatalogueEntry{"session.no_chamber",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1: colony %2 would have no chamber")},
      CatalogueEntry{"session.no_place",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1 has no recorded place")},
      CatalogueEntry{"session.no_such_box",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1 has no box %2; it has %3")},
      CatalogueEntry{"session.not_a_gift",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" is not given with combs")},
      CatalogueEntry{
          "session.not_a_record",
          QT_TRANSLATE_NOOP("Messages", "Rows of %1 are not withdrawn; change them instead")},
      CatalogueEntry{"session.not_a_stack_kind",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" does not change a stack")},
      CatalogueEntry{
          "session.not_on_the_floor",
          QT_TRANSLATE_NOOP(
              "Messages",
              "Colony %1 in hive %2 does not stand on the floor alone; take it off first")},
      CatalogueEntry{"session.not_stacked",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1 does not hold two colonies on %2")},
      CatalogueEntry{"session.nothing_to_redo",
                     QT_TRANSLATE_NOOP("Messages", "There is nothing to redo")},
      CatalogueEntry{"session.nothing_to_undo",
                     QT_TRANSLATE_NOOP("Messages", "There is nothing to undo")},
      CatalogueEntry{"session.option_twice",
                     QT_TRANSLATE_NOOP("Messages", "The option %1 stands twice in the plan")},
      CatalogueEntry{"session.plan_exists",
                     QT_TRANSLATE_NOOP("Messages", "The plan %1 is already kept")},
      CatalogueEntry{"session.product_missing",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Say with what hive %1 was treated, as the label names it")},
      CatalogueEntry{"session.queen_stays_and_goes",
                     QT_TRANSLATE_NOOP("Messages", "Queen %1 cannot both stay and be removed")},
      CatalogueEntry{
          "session.reason_missing",
          QT_TRANSLATE_NOOP("Messages", "Say why the judgement on hive %1 is overruled")},
      CatalogueEntry{
          "session.record_withdrawn",
          QT_TRANSLATE_NOOP("Messages",
                            "The record of hive %1 of %2 is already withdrawn or corrected")},
      CatalogueEntry{"session.same_hive",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1 cannot be both; choose another hive")},
      CatalogueEntry{"session.seams_twice",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1: the seams of box %2 are given twice")},
      CatalogueEntry{
          "session.set_over_without_excluder",
          QT_TRANSLATE_NOOP("Messages",
                            "%1 is not set over %2 without an excluder: one queen would be lost")},
      CatalogueEntry{"session.sheet_exists",
                     QT_TRANSLATE_NOOP("Messages", "There is already a sheet %1")},
      CatalogueEntry{
          "session.side_twice",
          QT_TRANSLATE_NOOP("Messages", "Hive %1: a side of box %2, slot %3 is given twice")},
      CatalogueEntry{"session.stack_needs_excluder",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Hive %1: between the two colonies an excluder, double "
                                       "screen or board must lie beneath box %2")},
      CatalogueEntry{"session.stack_not_as_said",
                     QT_TRANSLATE_NOOP(
                         "Messages", "Hive %1: \"%2\" does not fit a change from %3 to %4 boxes")},
      CatalogueEntry{
          "session.stack_positions",
          QT_TRANSLATE_NOOP("Messages", "Hive %1: number the boxes 1, 2, 3 ... from the bottom")},
      CatalogueEntry{"session.stack_too_high",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1 would have more than %2 boxes")},
      CatalogueEntry{"session.stack_without_box",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1 must keep at least one box")},
      CatalogueEntry{"session.stand_exists",
                     QT_TRANSLATE_NOOP("Messages", "There is already a stand %1 in %2")},
      CatalogueEntry{
          "session.stand_in_use",
          QT_TRANSLATE_NOOP("Messages", "Stand %1 in %2 carries hive %3; move the hive first")},
      CatalogueEntry{
          "session.stay_ended_later",
          QT_TRANSLATE_NOOP("Messages",
                            "Colony %1 left hive %2 later than %3; withdraw that step first")},
      CatalogueEntry{
          "session.super_goes_first",
          QT_TRANSLATE_NOOP("Messages",
                            "Take supers and feeders off hive %1 before it is set over another")},
      CatalogueEntry{
          "session.target_not_empty",
          QT_TRANSLATE_NOOP("Messages", "Hive %1 holds colony %2; choose an empty hive")},
      CatalogueEntry{"session.task_closed",
                     QT_TRANSLATE_NOOP("Messages", "Task %1 is already done or dropped")},
      CatalogueEntry{"session.task_exists",
                     QT_TRANSLATE_NOOP("Messages", "There is already a task %1")},
      CatalogueEntry{
          "session.task_has_record",
          QT_TRANSLATE_NOOP("Messages",
                            "The task was done on %1 and has a record; withdraw the record first")},
      CatalogueEntry{
          "session.task_starts_planned",
          QT_TRANSLATE_NOOP("Messages", "A new task is planned; it is ticked off later")},
      CatalogueEntry{"session.too_many_colonies",
                     QT_TRANSLATE_NOOP("Messages", "Hive %1: at most two colonies share a hive")},
      CatalogueEntry{"session.unknown_feature",
                     QT_TRANSLATE_NOOP("Messages", "There is no \"%1\" on a map")},
      CatalogueEntry{
          "session.unknown_frame_type",
          QT_TRANSLATE_NOOP("Messages", "Hive %1, box %2: there is no frame type \"%3\"")},
      CatalogueEntry{"session.unknown_hive",
                     QT_TRANSLATE_NOOP("Messages", "There is no hive %1; check the number")},
      CatalogueEntry{"session.unknown_plan", QT_TRANSLATE_NOOP("Messages", "There is no plan %1")},
      CatalogueEntry{"session.unknown_queen",
                     QT_TRANSLATE_NOOP("Messages", "There is no queen %1")},
      CatalogueEntry{"session.unknown_record",
                     QT_TRANSLATE_NOOP("Messages", "There is no record %1")},
      CatalogueEntry{"session.unknown_sheet",
                     QT_TRANSLATE_NOOP("Messages", "There is no sheet %1")},
      CatalogueEntry{"session.unknown_stand",
                     QT_TRANSLATE_NOOP("Messages", "There is no stand %1 in %2")},
      CatalogueEntry{"session.unknown_task", QT_TRANSLATE_NOOP("Messages", "There is no task %1")},
      CatalogueEntry{"session.unknown_visit",
                     QT_TRANSLATE_NOOP("Messages", "There is no visit %1")},
      CatalogueEntry{"session.unknown_yard",
                     QT_TRANSLATE_NOOP("Messages", "There is no yard %1; check the name")},
      CatalogueEntry{
          "session.use_change_stack",
          QT_TRANSLATE_NOOP("Messages", "\"%1\" changes the boxes: use Change the boxes")},
      CatalogueEntry{
          "session.use_death",
          QT_TRANSLATE_NOOP("Messages", "\"%1\" ends a colony: use the menu Hive, Colony")},
      CatalogueEntry{"session.use_install",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" brings a colony: use Put in a colony")},
      CatalogueEntry{"session.use_move",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" changes the place: use Move")},
      CatalogueEntry{"session.use_stack_over",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" joins two colonies: use Set over")},
      CatalogueEntry{"session.use_swap",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" changes two places: use Swap stands")},
      CatalogueEntry{
          "session.use_tables",
          QT_TRANSLATE_NOOP("Messages", "\"%1\" is entered through the exchange tables")},
      CatalogueEntry{"session.use_take_off",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" parts two colonies: use Take off")},
      CatalogueEntry{"session.use_unite",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" ends a colony: use Unite")},
      CatalogueEntry{"session.use_verdict",
                     QT_TRANSLATE_NOOP("Messages", "\"%1\" is entered with Overrule judgement")},
      CatalogueEntry{
          "session.withdraw_the_event",
          QT_TRANSLATE_NOOP("Messages",
                            "This row of hive %1 belongs to the event of %2; withdraw the event")},
      CatalogueEntry{"session.usable_range",
                     QT_TRANSLATE_NOOP("Messages",
                                       "A usable colony has 0 to 30 seams and brood on 0 to 30 "
                                       "combs. Give numbers in that range.")},
      CatalogueEntry{
          "session.working_date",
          QT_TRANSLATE_NOOP(
              "Messages",
              "\"%1\" is no date for the working date; write it as 2026-04-25, or leave it empty")},
      CatalogueEntry{
          "session.yard_exists",
          QT_TRANSLATE_NOOP("Messages", "There is already a yard %1; give it another name")},
      // Weather and flows
      CatalogueEntry{"session.flow_empty",
                     QT_TRANSLATE_NOOP("Messages",
                                       "The flow from day %1 to day %2 has no strength: give its "
                                       "nectar or its pollen, 0 to 3")},
      CatalogueEntry{"session.flow_exists",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 has a flow from day %2 to day %3 already: change that "
                                       "one, or take other days")},
      CatalogueEntry{"session.unknown_flow",
                     QT_TRANSLATE_NOOP("Messages",
                                       "%1 has no flow from day %2 to day %3: open its calendar "
                                       "again")},
      CatalogueEntry{"session.unknown_weather",
                     QT_TRANSLATE_NOOP(
                         "Messages", "There is no such weather of %1 on %2: open the list again")},
      CatalogueEntry{"session.weather_issued",
                     QT_TRANSLATE_NOOP("Messages",
                                       "Say on which day the forecast for %1 was issued: its error "
                                       "grows with the days between")},
      CatalogueEntry{"session.weather_issued_late",
                     QT_TRANSLATE_NOOP("Messages",
                                       "A forecast cannot be issued on %1 for the earlier day %2: "
                                       "correct one of them, or enter the day as observed")},
  };
  return kWords;
}

}  // namespace outyard::adapt
