// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/due_figures.h"

#include <array>

#include "core/base/text.h"

namespace outyard::planning {
namespace {

using F = DueFigures;
constexpr std::string_view kPractice = "common practice, no source";
constexpr std::string_view kOurs = "our assumption";

constexpr std::array kTable{
    DueFigure{"due.least_chance", &F::leastChance, 0, 1, "chance from which it is listed", kOurs},
    DueFigure{"due.lid_min_c", &F::lidMinC, -10, 30, "C", kPractice},
    DueFigure{"due.comb_min_c", &F::combMinC, 0, 30, "C", kPractice},
    DueFigure{"due.dry_mm", &F::dryMm, 0, 100, "mm rain a day that counts as dry", kOurs},
    DueFigure{"due.open_days", &F::openDays, 1, 120, "days after the last look", kPractice},
    DueFigure{"due.open_small_days", &F::openSmallDays, 1, 120,
              "days; small colonies and those with a queen in doubt", kPractice},
    DueFigure{"due.open_unsure", &F::openUnsure, 0, 1,
              "chance that the size is a third off what is expected", kOurs},
    DueFigure{"due.open_soonest", &F::openSoonest, 0, 60,
              "days after a look before doubt alone asks for another", kOurs},
    DueFigure{"due.open_window", &F::openWindow, 0, 60, "days", kOurs},
    DueFigure{"due.comb_bees", &F::combBees, 300, 3000, "bees on a deep comb in use",
              "Simpson 1969, J. Apic. Res. 8:3"},
    DueFigure{"due.room_share", &F::roomShare, 0.3, 1.5, "of the combs in use: add a box",
              kPractice},
    DueFigure{"due.room_ahead", &F::roomAhead, 0, 60, "days before", kPractice},
    DueFigure{"due.laying_full", &F::layingFull, 0.3, 1,
              "of the cells of the chambers in brood and stores", kOurs},
    DueFigure{"due.empty_kg", &F::emptyKg, 0, 30, "kg stores: as good as out", kOurs},
    DueFigure{"due.feed_below_kg", &F::feedBelowKg, 0, 60, "kg stores", kPractice},
    DueFigure{"due.feed_to_kg", &F::feedToKg, 0, 60, "kg stores", kPractice},
    DueFigure{"due.feed_window", &F::feedWindow, 0, 60, "days", kPractice},
    DueFigure{"due.winter_kg_cold", &F::winterKgCold, 0, 80, "kg stores; 30 to 40", kPractice},
    DueFigure{"due.winter_kg_mild", &F::winterKgMild, 0, 80, "kg stores; 20 to 25", kPractice},
    DueFigure{"due.cold_latitude", &F::coldLatitude, 0, 70, "degrees from which winters are cold",
              kOurs},
    DueFigure{"due.winter_feed_from", &F::winterFeedFrom, 1, 365, "day of the season", kPractice},
    DueFigure{"due.winter_feed_to", &F::winterFeedTo, 1, 365, "day of the season", kPractice},
    DueFigure{"due.sugar_syrup_1_1", &F::sugarSyrup11, 0.1, 1.2, "kg sugar a litre, 1 : 1",
              "ICUMSA density tables: 50 % at 20 C, 1.230 kg a litre (from memory)"},
    DueFigure{"due.sugar_syrup_2_1", &F::sugarSyrup21, 0.1, 1.2, "kg sugar a litre, 2 : 1",
              "ICUMSA density tables: 66.7 % at 20 C, 1.328 kg a litre (from memory)"},
    DueFigure{"due.sugar_fondant", &F::sugarFondant, 0.1, 1, "kg sugar a kg", kOurs},
    DueFigure{"due.stores_per_sugar", &F::storesPerSugar, 0.5, 1.4, "kg stores a kg sugar",
              "upper bound: stores hold 80 % sugar"},
    DueFigure{"due.paper_from", &F::paperFrom, 0, 30, "days after stacking", kPractice},
    DueFigure{"due.paper_to", &F::paperTo, 0, 30, "days after stacking", kPractice},
    DueFigure{"due.stack_look_from", &F::stackLookFrom, 0, 30, "days after stacking", kPractice},
    DueFigure{"due.stack_look_to", &F::stackLookTo, 0, 30, "days after stacking", kPractice},
    DueFigure{"due.separate_from", &F::separateFrom, 7, 90, "days after stacking", kPractice},
    DueFigure{"due.separate_to", &F::separateTo, 7, 90, "days after stacking", kPractice},
    DueFigure{"due.own_stand_from", &F::ownStandFrom, 1, 60, "days after taking off", kPractice},
    DueFigure{"due.own_stand_to", &F::ownStandTo, 1, 60, "days after taking off", kPractice},
    DueFigure{"due.reverse_from", &F::reverseFrom, -60, 120, "days after first pollen", kPractice},
    DueFigure{"due.reverse_to", &F::reverseTo, -60, 120, "days after first pollen", kPractice},
    DueFigure{"due.reverse_min_seams", &F::reverseMinSeams, 0, 20, "seams", kPractice},
    DueFigure{"due.reverse_unknown", &F::reverseUnknown, 0, 1,
              "chance that the nest is in the upper chamber, when nobody noted it", kOurs},
    DueFigure{"due.split_combs_of_bees", &F::splitCombsOfBees, 1, 30, "combs of bees", kPractice},
    DueFigure{"due.split_brood_combs", &F::splitBroodCombs, 1, 30, "combs with brood", kPractice},
    DueFigure{"due.drones_after_pollen", &F::dronesAfterPollen, 0, 120, "days", kOurs},
    DueFigure{"due.split_last_day", &F::splitLastDay, 60, 300, "day of the season", kPractice},
    DueFigure{"due.split_min_c", &F::splitMinC, 5, 30, "C for mating flights", kPractice},
    DueFigure{"due.split_window", &F::splitWindow, 1, 90, "days", kOurs},
    DueFigure{"due.swarm_from_day", &F::swarmFromDay, 1, 365, "day of the season at 47 degrees",
              kPractice},
    DueFigure{"due.swarm_to_day", &F::swarmToDay, 1, 365, "day of the season", kPractice},
    DueFigure{"due.swarm_hazard", &F::swarmHazard, 0, 1, "a day when crowded: as in the forecast",
              kOurs},
    DueFigure{"due.swarm_nest", &F::swarmNest, 0.1, 1, "of the cells of the nest in brood", kOurs},
    DueFigure{"due.swarm_look_from", &F::swarmLookFrom, 1, 30, "days between looks for cells",
              "a cell is sealed on day 8 or 9 (biology of the queen)"},
    DueFigure{"due.swarm_look_to", &F::swarmLookTo, 1, 30, "days between looks for cells",
              "a cell is sealed on day 8 or 9 (biology of the queen)"},
    DueFigure{"due.swarm_least", &F::swarmLeast, 0, 1, "chance from which it is listed", kOurs},
    DueFigure{"due.swarm_cells", &F::swarmCells, 0, 1, "chance with charged or sealed cells",
              kOurs},
    DueFigure{"due.wash_from_day", &F::washFromDay, 1, 365, "day of the season", kPractice},
    DueFigure{"due.wash_to_day", &F::washToDay, 1, 365, "day of the season", kPractice},
    DueFigure{"due.wash_every", &F::washEvery, 1, 365, "days", kPractice},
    DueFigure{"due.wash_window", &F::washWindow, 0, 60, "days", kPractice},
    DueFigure{"due.wash_sample", &F::washSample, 0, 1000,
              "hives a yard that are washed though nothing points at them", kPractice},
    DueFigure{"due.mites_on_bees", &F::mitesOnBees, 0.05, 1, "of all mites while there is brood",
              "about a third; from memory"},
    DueFigure{"due.treat_window", &F::treatWindow, 0, 60, "days", kPractice},
    DueFigure{"due.treatment_days", &F::treatmentDays, 1, 120,
              "days until it comes off; the label goes first",
              "six weeks on many labels of strips "
              "(from memory)"},
    DueFigure{"due.treatment_most", &F::treatmentMost, 1, 120,
              "days that it may stay; the label goes first", "eight weeks (from memory)"},
    DueFigure{"due.queen_window", &F::queenWindow, 0, 60, "days", kPractice},
    DueFigure{"due.test_comb_days", &F::testCombDays, 1, 60,
              "days in which a queen in doubt is looked after", kPractice},
    DueFigure{"due.harvest_keep_kg", &F::harvestKeepKg, 0, 60, "kg left in the chambers",
              kPractice},
    DueFigure{"due.harvest_window", &F::harvestWindow, 1, 90, "days after the flow", kPractice},
    DueFigure{"due.main_flow", &F::mainFlow, 0, 3, "strength of a flow that fills supers", kOurs},
    DueFigure{"due.unwrap_before", &F::unwrapBefore, 0, 90, "days before first pollen", kPractice},
    DueFigure{"due.unwrap_after", &F::unwrapAfter, 0, 90, "days after first pollen", kPractice},
    DueFigure{"due.wrap_frost_c", &F::wrapFrostC, -10, 10,
              "C mean night low from which frosts come", kOurs},
    DueFigure{"due.wrap_cold_c", &F::wrapColdC, -40, 10,
              "C mean night low of a winter that is worth wrapping for", kOurs},
    DueFigure{"due.wrap_before", &F::wrapBefore, 0, 90, "days before the frosts", kPractice},
    DueFigure{"due.wrap_after", &F::wrapAfter, 0, 90, "days after the frosts begin", kPractice},
    DueFigure{"due.dead_days", &F::deadDays, 0, 60, "days until a dead hive is cleared", kPractice},
};

}  // namespace

std::span<const DueFigure> dueFigureTable() {
  return kTable;
}

DueFigures dueFigures(const apiary::Season& season, std::vector<base::Message>& notes) {
  DueFigures out;
  for (const DueFigure& f : kTable) {
    const std::string name(f.name);
    const auto text = season.setting(name);
    if (!text || text->empty()) continue;
    const auto value = base::parseNumber(*text);
    if (!value || *value < f.min || *value > f.max) {
      notes.push_back(
          base::message("planning.setting_bad", name, *text, f.min, f.max, f.unit, out.*f.member));
      continue;
    }
    out.*f.member = *value;
  }
  return out;
}

}  // namespace outyard::planning
