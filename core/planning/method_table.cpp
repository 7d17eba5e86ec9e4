// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/method_table.h"

#include <stdexcept>

#include "core/planning/boost.h"

namespace outyard::planning {
namespace {

using apiary::Method;
using base::message;

// A full ten-frame deep chamber weighs 36 to 41 kg (published sheets of hive makers); every lift
// of a chamber is work for two. Minutes are whole multiples of three, so that hours are exact.
const std::vector<MethodFigures>& table() {
  static const std::vector<MethodFigures> kTable{
      {Method::Leave, 0, 0, 1, 0, 0, "", 0, 0, 0, false, {}},
      {Method::Room, 12, 0, 1, 0, 0, "frames_given", 0, 0, 0, true, {}},
      {Method::Feed, 6, 6, 1, 0, 0, "fed", 0, 0, 1, false, {{"look", 6, 8, "planning.task.fed"}}},
      {Method::SealedFrames,
       21,
       12,
       1,
       0,
       0,
       "frames_moved",
       0,
       0,
       0,
       true,
       {{"look", 6, 8, "planning.task.donor_queen", true}}},
      {Method::NurseBees,
       21,
       12,
       1,
       0,
       0,
       "bees_shaken",
       0,
       0,
       0,
       false,
       {{"look", 6, 8, "planning.task.queen_kept"}}},
      {Method::Stack,
       30,
       45,
       2,
       2,
       40,
       "stacked",
       1,
       1,
       0,
       false,
       {{"look", 7, 9, "planning.task.stack_look"},
        {"unstacked", 21, 28, "planning.task.take_off"}}},
      {Method::ChangePlaces,
       15,
       12,
       2,
       4,
       40,
       "places_changed",
       0,
       0,
       0,
       false,
       {{"look", 3, 7, "planning.task.queen_kept"}}},
      {Method::Unite,
       24,
       12,
       2,
       1,
       40,
       "united",
       0,
       1,
       0,
       false,
       {{"queen_removed", -1, -1, "planning.task.poor_queen"},
        {"look", 7, 9, "planning.task.united_eggs", true}}},
  };
  return kTable;
}

}  // namespace

const MethodFigures& methodFigures(Method method) {
  for (const MethodFigures& m : table()) {
    if (m.method == method) return m;
  }
  throw std::logic_error("method without figures");
}

MethodGuide methodGuide(Method method) {
  switch (method) {
    case Method::Leave:
      return {{}, {message("planning.leave.step")}, {message("planning.leave.return")}, {}};
    case Method::Room:
      return {{message("planning.room.need_weather"), message("planning.room.need_comb")},
              {message("planning.room.step_honey"), message("planning.room.step_comb"),
               message("planning.room.step_food")},
              {message("planning.room.return")},
              {message("planning.room.caution_split"), message("planning.room.caution_comb"),
               message("planning.caution.cold_doubt"), message("planning.caution.stings")}};
    case Method::Feed:
      return {{message("planning.feed.need_stores"), message("planning.feed.need_weather")},
              {message("planning.feed.step_evening"), message("planning.feed.step_inside"),
               message("planning.feed.step_entrance")},
              {message("planning.feed.return")},
              {message("planning.feed.caution_spill"), message("planning.feed.caution_honey"),
               message("planning.feed.caution_supers"), message("planning.caution.stings")}};
    case Method::SealedFrames:
      return {{message("planning.sealed.need_donor"), message("planning.sealed.need_receiver"),
               message("planning.sealed.need_weather"), message("planning.need.healthy")},
              {message("planning.sealed.step_find"), message("planning.sealed.step_queen"),
               message("planning.sealed.step_carry"), message("planning.sealed.step_beside"),
               message("planning.sealed.step_fill")},
              {message("planning.sealed.return")},
              {message("planning.sealed.caution_chill"), message("planning.sealed.caution_outer"),
               message("planning.caution.stings"), message("planning.caution.smoke"),
               message("planning.caution.foul_brood")}};
    case Method::NurseBees:
      return {{message("planning.nurse.need_donor"), message("planning.nurse.need_weather"),
               message("planning.need.healthy")},
              {message("planning.nurse.step_queen"), message("planning.nurse.step_receiver"),
               message("planning.nurse.step_shake")},
              {message("planning.nurse.return")},
              {message("planning.nurse.caution_half"), message("planning.caution.stings"),
               message("planning.caution.smoke"), message("planning.caution.foul_brood")}};
    case Method::Stack:
      return {{message("planning.stack.need_weak"), message("planning.stack.need_donor"),
               message("planning.stack.need_room"), message("planning.stack.need_weather"),
               message("planning.stack.need_gear"), message("planning.need.healthy")},
              {message("planning.stack.step_prepare"), message("planning.stack.step_donor"),
               message("planning.stack.step_paper"), message("planning.stack.step_set"),
               message("planning.stack.step_entrance"), message("planning.stack.step_stand")},
              {message("planning.stack.return_look"), message("planning.stack.return_off")},
              {message("planning.caution.lift"), message("planning.stack.caution_eggs"),
               message("planning.stack.caution_risk"), message("planning.stack.caution_field"),
               message("planning.stack.caution_room"), message("planning.stack.caution_cold"),
               message("planning.caution.stings"), message("planning.caution.smoke"),
               message("planning.caution.foul_brood")}};
    case Method::ChangePlaces:
      return {{message("planning.swap.need_flow"), message("planning.swap.need_both"),
               message("planning.need.healthy")},
              {message("planning.swap.step_midday"), message("planning.swap.step_swap")},
              {message("planning.swap.return")},
              {message("planning.caution.lift"), message("planning.swap.caution_queen"),
               message("planning.caution.stings"), message("planning.caution.smoke"),
               message("planning.caution.foul_brood")}};
    case Method::Unite:
      return {{message("planning.unite.need_one"), message("planning.unite.need_not"),
               message("planning.unite.need_mites"), message("planning.unite.need_gear")},
              {message("planning.unite.step_queen"), message("planning.unite.step_paper"),
               message("planning.unite.step_set"), message("planning.unite.step_stand")},
              {message("planning.unite.return")},
              {message("planning.caution.lift"), message("planning.unite.caution_feed"),
               message("planning.caution.stings"), message("planning.caution.smoke"),
               message("planning.caution.foul_brood")}};
  }
  throw std::logic_error("method without guide");
}

}  // namespace outyard::planning
