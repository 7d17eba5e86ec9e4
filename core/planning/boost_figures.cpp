// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_figures.h"

#include <array>

#include "core/base/text.h"

namespace outyard::planning {
namespace {

using F = BoostFigures;
constexpr std::string_view kPractice = "common practice, no source";
constexpr std::string_view kOurs = "our assumption";

constexpr std::array kTable{
    BoostFigure{"boost.stack_min_c", &F::stackMinC, 0, 30, "C", kPractice},
    BoostFigure{"boost.brood_min_c", &F::broodMinC, 0, 30, "C", "from memory: 15 to 18"},
    BoostFigure{"boost.comb_min_c", &F::combMinC, 0, 30, "C", "from memory: 14 to 16"},
    BoostFigure{"boost.unite_min_c", &F::uniteMinC, 0, 30, "C", kPractice},
    BoostFigure{"boost.lid_min_c", &F::lidMinC, -10, 30, "C", kPractice},
    BoostFigure{"boost.liquid_feed_min_c", &F::liquidFeedMinC, -10, 30, "C", kPractice},
    BoostFigure{"boost.dry_mm", &F::dryMm, 0, 100, "mm rain a day that counts as dry", kOurs},
    BoostFigure{"boost.brood_wind_ms", &F::broodWindMs, 0, 30, "m/s", kPractice},
    BoostFigure{"boost.night_min_c", &F::nightMinC, -30, 20, "C", kPractice},
    BoostFigure{"boost.cold_day_c", &F::coldDayC, -10, 25, "C", kPractice},
    BoostFigure{"boost.cold_days", &F::coldDays, 1, 30, "days running", kPractice},
    BoostFigure{"boost.ahead_days", &F::aheadDays, 0, 30, "days", kPractice},
    BoostFigure{"boost.evidence_days", &F::evidenceDays, 1, 60, "days", kPractice},
    BoostFigure{"boost.stack_weak_min_seams", &F::stackWeakMinSeams, 0, 10, "seams", kPractice},
    BoostFigure{"boost.stack_weak_max_seams", &F::stackWeakMaxSeams, 0, 10, "seams", kPractice},
    BoostFigure{"boost.stack_donor_min_seams", &F::stackDonorMinSeams, 1, 30, "seams", kPractice},
    BoostFigure{"boost.stack_donor_min_brood_combs", &F::stackDonorMinBroodCombs, 0, 30, "combs",
                kPractice},
    BoostFigure{"boost.stacks_per_stop", &F::stacksPerStop, 0, 100, "stacks a yard and day",
                kPractice},
    BoostFigure{"boost.donor_keep_bees", &F::donorKeepBees, 0, 60000, "bees", kOurs},
    BoostFigure{"boost.donor_keep_brood_combs", &F::donorKeepBroodCombs, 0, 30,
                "combs up to the end of April", kPractice},
    BoostFigure{"boost.donor_keep_brood_combs_later", &F::donorKeepBroodCombsLater, 0, 30, "combs",
                kPractice},
    BoostFigure{"boost.donor_max_combs", &F::donorMaxCombs, 0, 10, "combs a day", kOurs},
    BoostFigure{"boost.donor_min_kg", &F::donorMinKg, 0, 60, "kg stores", kPractice},
    BoostFigure{"boost.gift_min_seams", &F::giftMinSeams, 0, 10, "seams for one comb", kPractice},
    BoostFigure{"boost.gift_two_seams", &F::giftTwoSeams, 0, 20, "seams for two combs", kPractice},
    BoostFigure{"boost.shake_min_seams", &F::shakeMinSeams, 0, 10, "seams", kOurs},
    BoostFigure{"boost.stack_share", &F::stackShare, 0, 0.5, "of the difference in bees",
                "our assumption; gives the 3,000 to 6,000 bees in a week of common practice"},
    BoostFigure{"boost.stack_max_bees", &F::stackMaxBees, 0, 20000, "bees", kPractice},
    BoostFigure{"boost.stack_min_bees", &F::stackMinBees, 0, 20000, "bees", kOurs},
    BoostFigure{"boost.cells_per_bee", &F::cellsPerBee, 0.5, 5, "brood cells a bee keeps warm",
                "between 3.1 (one layer of bees at 130 a dm2 over 400 cells a dm2, Liebefeld "
                "figures from memory) and 1.5 in frost"},
    BoostFigure{"boost.emergence", &F::emergence, 0.5, 1, "of sealed cells", "from memory"},
    BoostFigure{"boost.best_comb", &F::bestComb, 1, 3, "times the mean comb", kOurs},
    BoostFigure{"boost.full_comb", &F::fullComb, 0.2, 1, "of a comb that is really sealed",
                kPractice},
    BoostFigure{"boost.bees_on_comb", &F::beesOnComb, 0, 3000, "nurse bees left on a comb", kOurs},
    BoostFigure{"boost.bees_shaken", &F::beesShaken, 0, 3000, "bees shaken from a comb", kOurs},
    BoostFigure{"boost.shaken_stay", &F::shakenStay, 0, 1, "of them", kPractice},
    BoostFigure{"boost.field_share", &F::fieldShare, 0, 0.6, "of the bees", kOurs},
    BoostFigure{"boost.field_lost", &F::fieldLost, 0, 1, "of the field bees; 0.10 to 0.40",
                kPractice},
    BoostFigure{"boost.upper_queen_lost", &F::upperQueenLost, 0, 1, "of stacks; 0.05 to 0.25",
                kPractice},
    BoostFigure{"boost.donor_queen_lost", &F::donorQueenLost, 0, 1, "of stacks", kPractice},
    BoostFigure{"boost.unite_kept", &F::uniteKept, 0, 1, "of the bees", kOurs},
    BoostFigure{"boost.swap_min_seams", &F::swapMinSeams, 0, 10, "seams", kPractice},
    BoostFigure{"boost.swap_max_seams", &F::swapMaxSeams, 0, 20, "seams", kPractice},
    BoostFigure{"boost.swap_min_flow", &F::swapMinFlow, 0, 3, "strength of the flow", kPractice},
    BoostFigure{"boost.room_max_empty_combs", &F::roomMaxEmptyCombs, 0, 20, "empty combs", kOurs},
    BoostFigure{"boost.room_comb_bees", &F::roomCombBees, 0, 3000, "bees on a comb in use",
                kPractice},
    BoostFigure{"boost.feed_below_kg", &F::feedBelowKg, 0, 60, "kg", kPractice},
    BoostFigure{"boost.feed_emergency_kg", &F::feedEmergencyKg, 0, 60, "kg", kPractice},
    BoostFigure{"boost.feed_keeps", &F::feedKeeps, 0, 1, "of the bees", kOurs},
    BoostFigure{"boost.feed_keeps_emergency", &F::feedKeepsEmergency, 0, 1, "of the bees", kOurs},
    BoostFigure{"boost.spare_weight", &F::spareWeight, 0, 1,
                "cost of a bee that the donor's brood does not need", kOurs},
    BoostFigure{"boost.brood_weight", &F::broodWeight, 0, 1, "cost of a sealed cell given, in bees",
                "our assumption; a donor misses the bees of a comb for about eight weeks"},
    BoostFigure{"boost.hour_cost", &F::hourCost, 0, 100, "thousand bees an hour", kOurs},
    BoostFigure{"boost.gear_cost", &F::gearCost, 0, 100, "thousand bees a piece", kOurs},
    BoostFigure{"boost.drive_cost", &F::driveCost, 0, 1000, "thousand bees a drive", kOurs},
    BoostFigure{"boost.usable_seams", &F::usableSeams, 0, 30,
                "seams on the target day that make a colony usable",
                "our assumption: about the 12,000 living bees of a colony of use for a flow"},
    BoostFigure{"boost.usable_brood_combs", &F::usableBroodCombs, 0, 30,
                "combs with brood on the target day that make a colony usable", kOurs},
    BoostFigure{"boost.take_off_seams", &F::takeOffSeams, 0, 30,
                "seams of both colonies before a stack is taken off", kPractice},
    BoostFigure{"boost.take_off_brood_combs", &F::takeOffBroodCombs, 0, 30,
                "combs with brood of the upper colony before a stack is taken off", kPractice},
    BoostFigure{"boost.stack_days", &F::stackDays, 7, 60, "days until a stack is taken off",
                "common practice, no source: 3 to 4 weeks"},
    BoostFigure{"boost.plan_draws", &F::planMembers, 32, 1024, "draws of each run, in 32s", kOurs},
    BoostFigure{"boost.donor_weight", &F::donorWeight, 0, 10,
                "weight of the donor's chance to be usable", kOurs},
    BoostFigure{"boost.queenless_doubt", &F::queenlessDoubt, 0, 1,
                "of the forecast's chance stays with a colony judged to have no laying queen",
                "our assumption: one in ten is misjudged"},
    BoostFigure{"boost.bees_weight", &F::beesWeight, 0, 1,
                "usable colonies that a thousand bees on the target day are worth", kOurs},
    BoostFigure{"boost.hour_weight", &F::hourWeight, 0, 10, "usable colonies an hour of work",
                kOurs},
    BoostFigure{"boost.gear_weight", &F::gearWeight, 0, 10, "usable colonies a piece of gear",
                kOurs},
    BoostFigure{"boost.drive_weight", &F::driveWeight, 0, 100, "usable colonies a drive", kOurs},
    BoostFigure{"boost.hours", &F::hours, 0, 240, "hours of the day; 0 = no limit", kOurs},
};

}  // namespace

std::span<const BoostFigure> boostFigureTable() {
  return kTable;
}

BoostFigures boostFigures(const apiary::Season& season, std::vector<base::Message>& notes) {
  BoostFigures out;
  for (const BoostFigure& f : kTable) {
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
