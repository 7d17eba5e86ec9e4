// SPDX-License-Identifier: GPL-3.0-or-later
// Rules on looks, room, stores and the follow-ups of a stack, and the table of all rules.
#include "core/planning/due_rules.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/planning/boost_words.h"

namespace outyard::planning {

using apiary::VerdictCode;
using base::Date;
using base::message;
using forecast::ForecastDay;

namespace due {

DueTask task(Date earliest, Date latest, double chance, base::Message why) {
  DueTask t;
  t.earliest = earliest;
  t.latest = std::max(earliest, latest);
  t.chance = std::clamp(chance, 0.0, 1.0);
  t.why = std::move(why);
  return t;
}

int days(double figure) {
  return static_cast<int>(std::lround(figure));
}

std::optional<Date> firstDay(const ColonyFacts& facts, double chance,
                             double (*of)(const ColonyFacts&, const DueFigures&,
                                          const ForecastDay&),
                             const DueFigures& figures) {
  if (facts.days.empty()) return std::nullopt;
  for (Date d = facts.days.front().date; d <= facts.days.back().date; d = d.plusDays(1)) {
    if (of(facts, figures, *facts.on(d)) >= chance) return d;
  }
  return std::nullopt;
}

bool queenSound(const ColonyFacts& facts) {
  switch (facts.verdict) {
    case VerdictCode::Strong:
    case VerdictCode::Fair:
    case VerdictCode::SmallSound:
      return true;
    default:
      return false;
  }
}

}  // namespace due

namespace {

using due::days;

std::int64_t percent(double share) {
  return std::llround(share * 100);
}

double unsure(const ColonyFacts&, const DueFigures&, const ForecastDay& d) {
  const double third = 4.0 / 3;
  return chanceAbove(d.seen, d.seen.median * third, true) +
         (1 - chanceAbove(d.seen, d.seen.median / third, true));
}
/// The bees cover the combs in use of the whole stack to the share from which a box is added.
double crowded(const ColonyFacts& c, const DueFigures& f, const ForecastDay& d) {
  return c.combsBees <= 0 ? 0 : chanceAbove(d.seen, f.roomShare * c.combsBees, true);
}
/// Cells of stores: 0.39 g a cell, 2,564 cells a kg, as in the forecast (kernel_impl.inc).
constexpr double kCellsPerKg = 2564;
/// Brood and stores fill the chambers: the supers take honey first.
double layingFull(const ColonyFacts& c, const DueFigures& f, const ForecastDay& d) {
  if (c.chamberCells <= 0) return 0;
  const auto stores = [&](double kg) { return std::max(kg * kCellsPerKg - c.superCells, 0.0); };
  const forecast::Band used{d.brood.median + stores(d.honeyKg.median),
                            d.brood.low + stores(d.honeyKg.low),
                            d.brood.high + stores(d.honeyKg.high)};
  return chanceAbove(used, f.layingFull * c.chamberCells, false);
}
double storesGone(const ColonyFacts&, const DueFigures& f, const ForecastDay& d) {
  return 1 - chanceAbove(d.honeyKg, f.emptyKg, false);
}
double storesLow(const ColonyFacts&, const DueFigures& f, const ForecastDay& d) {
  return 1 - chanceAbove(d.honeyKg, f.feedBelowKg, false);
}

bool broodSeason(const ColonyFacts& c, Date day) {
  return day >= c.yard->firstPollen.plusDays(-14) && c.yard->seasonDay(day) <= 290;
}

}  // namespace

std::optional<DueTask> dueOpen(const ColonyFacts& c, const DueFigures& f) {
  const bool small = !due::queenSound(c) || c.verdict == VerdictCode::SmallSound;
  const int most = days(small ? f.openSmallDays : f.openDays);
  if (!c.lastLook) {
    const Date from = std::max(c.yard->from, c.yard->firstPollen.plusDays(-14));
    if (!broodSeason(c, from)) return std::nullopt;
    return due::task(from, from.plusDays(days(f.openWindow)), 1,
                     message("planning.due.open_never"));
  }
  Date from = c.lastLook->plusDays(most);
  // Even the day after a look leaves a doubt: a look is a rough measure.
  auto doubt = due::firstDay(c, f.openUnsure, unsure, f);
  if (doubt) doubt = std::max(*doubt, c.lastLook->plusDays(days(f.openSoonest)));
  const bool byDoubt = doubt && *doubt < from;
  if (byDoubt) from = *doubt;
  from = std::max(from, c.yard->firstPollen.plusDays(-14));
  if (!broodSeason(c, from)) return std::nullopt;
  const auto then = c.on(std::max(from, c.yard->from));
  const double chance =
      then ? std::max(unsure(c, f, *then), from <= c.yard->from ? 0.5 : 0.0) : 0.5;
  const auto age = static_cast<std::int64_t>(std::max(from, c.yard->from) - *c.lastLook);
  return due::task(from, from.plusDays(days(f.openWindow)), chance,
                   byDoubt ? message("planning.due.open_unsure", age, percent(chance))
                   : small ? message("planning.due.open_small", age)
                           : message("planning.due.open_age", age));
}

std::optional<DueTask> dueAddBox(const ColonyFacts& c, const DueFigures& f) {
  const auto by = due::firstDay(c, 0.5, crowded, f);
  const Date last = c.days.empty() ? c.yard->to : c.days.back().date;
  const auto end = c.on(by.value_or(last));
  if (!end || !broodSeason(c, last)) return std::nullopt;
  const double chance = crowded(c, f, *end);
  if (chance < f.leastChance) return std::nullopt;
  const Date until = by.value_or(last);
  const auto combs = static_cast<std::int64_t>(std::lround(end->seen.median / f.combBees));
  auto t = due::task(until.plusDays(-days(f.roomAhead)), until, chance,
                     message("planning.due.add_box", twoFigures(end->seen.median), combs,
                             until.iso(), percent(f.roomShare)));
  t.amount = 1;
  t.unit = apiary::Unit::Boxes;
  const std::string type = !c.superType.empty() ? c.superType : c.chamberType;
  if (!type.empty()) t.gear = (c.chambers < 2 && c.supers == 0 ? "chamber:" : "super:") + type;
  if (c.supers > 0) t.kind = "supered";
  t.cautions = {message("planning.due.caution_cold_box"), message("planning.caution.lift")};
  return t;
}

std::optional<DueTask> dueNoRoom(const ColonyFacts& c, const DueFigures& f) {
  if (!due::queenSound(c)) return std::nullopt;
  const auto by = due::firstDay(c, 0.5, layingFull, f);
  const Date last = c.days.empty() ? c.yard->to : c.days.back().date;
  const Date until = by.value_or(last);
  const auto end = c.on(until);
  if (!end || !broodSeason(c, until)) return std::nullopt;
  const double chance = layingFull(c, f, *end);
  if (chance < f.leastChance) return std::nullopt;
  auto t = due::task(until.plusDays(-days(f.roomAhead)), until, chance,
                     message("planning.due.no_room", until.iso(), percent(f.layingFull),
                             std::round(end->honeyKg.median)));
  t.what = apiary::Goods::Drawn;
  t.amount = 2;
  t.unit = apiary::Unit::Frames;
  if (!c.chamberType.empty()) t.gear = "drawn_comb:" + c.chamberType;
  t.cautions = {message("planning.room.caution_split"), message("planning.room.caution_comb")};
  return t;
}

std::optional<DueTask> dueStoresOut(const ColonyFacts& c, const DueFigures& f) {
  const auto by = due::firstDay(c, f.leastChance, storesGone, f);
  if (!by) return std::nullopt;
  const auto end = c.on(c.days.back().date);
  const auto then = c.on(*by);
  const double chance = std::max(storesGone(c, f, *then), storesGone(c, f, *end));
  return due::task(c.yard->from, *by, chance,
                   message("planning.due.stores_out", by->iso(), percent(storesGone(c, f, *then)),
                           std::round(then->honeyKg.median * 2) / 2));
}

std::optional<DueTask> dueFeed(const ColonyFacts& c, const DueFigures& f) {
  const int season = c.yard->seasonDay(c.yard->from);
  const int seasonTo = c.yard->seasonDay(c.yard->to);
  const bool winter = season <= f.winterFeedTo && seasonTo >= f.winterFeedFrom;
  std::optional<Date> by;
  double chance = 0, needKg = 0;
  base::Message why;
  if (winter) {
    // Before winter the weight counts, whatever comes in until then.
    const double lat = std::abs(c.yard->latitude);
    const double wanted = lat >= f.coldLatitude ? f.winterKgCold : f.winterKgMild;
    const auto end = c.on(c.days.empty() ? c.yard->to : c.days.back().date);
    if (!end) return std::nullopt;
    chance = 1 - chanceAbove(end->honeyKg, wanted, false);
    if (chance < f.leastChance) return std::nullopt;
    needKg = wanted - end->honeyKg.median;
    by = c.yard->seasonWindow(f.winterFeedFrom, f.winterFeedTo).second;
    why = message("planning.due.feed_winter", std::round(end->honeyKg.median), wanted, by->iso());
  } else {
    by = due::firstDay(c, 0.5, storesLow, f);
    if (!by) return std::nullopt;
    const auto then = c.on(*by);
    chance = storesLow(c, f, *c.on(c.days.back().date));
    chance = std::max(chance, storesLow(c, f, *then));
    needKg = f.feedToKg - then->honeyKg.median;
    why = message("planning.due.feed", by->iso(), f.feedBelowKg,
                  std::round(then->honeyKg.median * 2) / 2);
  }
  if (needKg <= 0.25) return std::nullopt;
  const Date from =
      winter ? std::max(c.yard->from, by->plusDays(days(f.winterFeedFrom - f.winterFeedTo)))
             : by->plusDays(-days(f.feedWindow));
  auto t = due::task(std::min(from, *by), *by, chance, why);
  // Sugar from the stores wanted, litres from the sugar of a litre; whole halves.
  const double sugar = needKg / f.storesPerSugar;
  bool warm = false;
  for (Date d = std::max(t.earliest, c.yard->from); d <= t.latest; d = d.plusDays(1)) {
    warm = warm || c.yard->warm(d, f.lidMinC, 1000);
  }
  const auto halves = [](double v) { return std::max(0.5, std::ceil(v * 2) / 2); };
  if (!warm && !winter) {
    t.what = apiary::Goods::Fondant;
    t.amount = halves(sugar / f.sugarFondant);
    t.unit = apiary::Unit::Kg;
  } else {
    t.what = winter ? apiary::Goods::Syrup21 : apiary::Goods::Syrup11;
    t.amount = halves(sugar / (winter ? f.sugarSyrup21 : f.sugarSyrup11));
    t.unit = apiary::Unit::L;
  }
  t.gear = *t.what == apiary::Goods::Fondant ? "" : "feeder";
  t.cautions = {message("planning.feed.caution_spill"), message("planning.feed.caution_honey")};
  if (c.supers > 0) t.cautions.push_back(message("planning.feed.caution_supers"));
  return t;
}

std::optional<DueTask> duePaper(const ColonyFacts& c, const DueFigures& f) {
  if (!c.upper || !c.stackedOn || c.paperOpenOn) return std::nullopt;
  if (c.lastLook && *c.lastLook > *c.stackedOn) return std::nullopt;
  // Once the week's look is due it asks for the paper too.
  if (c.yard->from >= c.stackedOn->plusDays(days(f.stackLookFrom))) return std::nullopt;
  return due::task(c.stackedOn->plusDays(days(f.paperFrom)), c.stackedOn->plusDays(days(f.paperTo)),
                   1, message("planning.due.paper", c.stackedOn->iso()));
}

std::optional<DueTask> dueStackLook(const ColonyFacts& c, const DueFigures& f) {
  if (!c.upper || !c.stackedOn) return std::nullopt;
  const Date from = c.stackedOn->plusDays(days(f.stackLookFrom));
  if (c.lastLook && *c.lastLook >= from.plusDays(-1)) return std::nullopt;
  auto t = due::task(from, c.stackedOn->plusDays(days(f.stackLookTo)), 1,
                     message("planning.due.stack_look", c.stackedOn->iso()));
  t.cautions = {message("planning.caution.lift")};
  return t;
}

std::optional<DueTask> dueSeparate(const ColonyFacts& c, const DueFigures& f) {
  if (!c.upper || !c.stackedOn) return std::nullopt;
  auto t = due::task(c.stackedOn->plusDays(days(f.separateFrom)),
                     c.stackedOn->plusDays(days(f.separateTo)), 1,
                     message("planning.due.separate", c.stackedOn->iso()));
  t.otherHive = c.partner;
  t.gear = "floor";
  t.cautions = {message("planning.caution.lift"), message("planning.stack.caution_field"),
                message("planning.caution.stings")};
  return t;
}

std::optional<DueTask> dueOwnStand(const ColonyFacts& c, const DueFigures& f) {
  if (c.upper || !c.unstackedOn) return std::nullopt;
  const Date from = c.unstackedOn->plusDays(days(f.ownStandFrom));
  if (c.lastLook && *c.lastLook >= from) return std::nullopt;
  if (c.yard->from - *c.unstackedOn > 30) return std::nullopt;
  return due::task(from, c.unstackedOn->plusDays(days(f.ownStandTo)), 1,
                   message("planning.due.own_stand", c.unstackedOn->iso()));
}

std::optional<DueTask> applyRule(const DueRule& rule, const ColonyFacts& facts,
                                 const DueFigures& figures) {
  auto t = rule.apply(facts, figures);
  if (!t) return std::nullopt;
  t->rule = rule.code;
  if (t->kind.empty()) t->kind = rule.kind;
  t->yard = facts.yard->yard;
  t->hive = facts.hive;
  t->colony = facts.colony;
  t->minutes = rule.minutes;
  if (rule.moves) t->cautions.push_back(message("planning.caution.foul_brood"));
  if (facts.healthBar && rule.moves) t->cautions.push_back(*facts.healthBar);
  return t;
}

namespace {
constexpr std::string_view kPractice = "common practice, no source";
// Minutes: our assumption, from what a beekeeper with a helper gets through in a day.
constexpr std::array kRules{
    DueRule{"treat_off", "treatment_off", 4, 1, false, "treatment_off",
            "the label; six to eight weeks from memory", dueTreatOff},
    DueRule{"treat", "treated", 5, 1, false, "treated", "extension tables, from memory", dueTreat},
    DueRule{"queen_check", "look", 12, 2, false, "look open queen_introduced frames_moved",
            kPractice, dueQueenCheck},
    DueRule{"paper", "paper_open", 4, 1, false, "paper_open look", kPractice, duePaper},
    DueRule{"stack_look", "look", 12, 2, false, "look open", kPractice, dueStackLook},
    DueRule{"separate", "unstacked", 20, 2, true, "unstacked", kPractice, dueSeparate},
    DueRule{"own_stand", "look", 10, 2, false, "look open", kPractice, dueOwnStand},
    DueRule{"stores_out", "look", 4, 1, false, "fed", "our assumption", dueStoresOut},
    DueRule{"feed", "fed", 6, 1, false, "fed", kPractice, dueFeed},
    DueRule{"swarm", "look", 12, 2, false, "cells_removed split",
            "queen's biology; hazard our assumption", dueSwarm},
    DueRule{"add_box", "box_added", 8, 1, true, "box_added supered", kPractice, dueAddBox},
    DueRule{"no_room", "frames_given", 12, 2, true, "frames_given box_added supered", kPractice,
            dueNoRoom},
    DueRule{"reverse", "reversed", 12, 2, false, "reversed", kPractice, dueReverse},
    DueRule{"split", "split", 30, 2, true, "split", kPractice, dueSplit},
    DueRule{"wash", "look", 10, 2, false, "look", kPractice, dueWash},
    DueRule{"take_off", "harvested", 15, 1, true, "harvested box_removed", kPractice, dueTakeOff},
    DueRule{"unwrap", "unwrapped", 4, 0, false, "unwrapped", kPractice, dueUnwrap},
    DueRule{"wrap", "wrapped", 10, 0, false, "wrapped", kPractice, dueWrap},
    DueRule{"open", "open", 12, 2, false, "open look", kPractice, dueOpen},
};
}  // namespace

std::span<const DueRule> dueRules() {
  return kRules;
}

const DueRule* findDueRule(std::string_view code) {
  for (const DueRule& r : kRules) {
    if (r.code == code) return &r;
  }
  return nullptr;
}

}  // namespace outyard::planning
