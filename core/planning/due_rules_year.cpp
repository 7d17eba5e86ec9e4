// SPDX-License-Identifier: GPL-3.0-or-later
// Rules on the nest, swarming, splits, mites, queens and the turns of the year.
#include <algorithm>
#include <cmath>

#include "core/planning/boost_words.h"
#include "core/planning/due_rules.h"

namespace outyard::planning {

using apiary::VerdictCode;
using base::Date;
using base::message;
using due::days;
using forecast::ForecastDay;

namespace {

std::int64_t percent(double share) {
  return std::llround(share * 100);
}

/// Combs of bees, and combs half filled with brood (a comb with any brood is about half covered:
/// common practice, no source).
double splitReady(const ColonyFacts& c, const DueFigures& f, const ForecastDay& d) {
  return chanceAbove(d.seen, f.splitCombsOfBees * f.combBees, true) *
         chanceAbove(d.brood, f.splitBroodCombs * 0.5 * c.combCells, true);
}

/// How crowded the nest is with brood, 0 to 1: the forecast's own measure (kernel_impl.inc).
double crowd(const ColonyFacts& c, const DueFigures& f, const ForecastDay& d) {
  return std::clamp(d.brood.median / (c.chamberCells * f.swarmNest + 1) - 0.6, 0.0, 1.0);
}

/// Mites per 100 bees that a wash would give: the share of the mites that sits on bees.
forecast::Band washWouldGive(const DueFigures& f, const ForecastDay& d) {
  const double bees = std::max(d.seen.median, 1.0);
  const double part = d.brood.median > 500 ? f.mitesOnBees : 1.0;
  const auto per = [&](double mites) { return 100 * part * mites / bees; };
  return {per(d.mites.median), per(d.mites.low), per(d.mites.high)};
}

}  // namespace

std::optional<DueTask> dueReverse(const ColonyFacts& c, const DueFigures& f) {
  if (c.chambers < 2 || c.upper || c.partner || !due::queenSound(c)) return std::nullopt;
  if (c.seams && *c.seams < f.reverseMinSeams) return std::nullopt;
  if (c.nestAbove == false) return std::nullopt;
  const Date from = c.yard->firstPollen.plusDays(days(f.reverseFrom));
  const Date to = c.yard->firstPollen.plusDays(days(f.reverseTo));
  if (c.reversedOn && *c.reversedOn >= from.plusDays(-45)) return std::nullopt;
  if (to < c.yard->from) return std::nullopt;
  auto t = c.nestAbove
               ? due::task(from, to, 0.8, message("planning.due.reverse"))
               : due::task(from, to, f.reverseUnknown, message("planning.due.reverse_unknown"));
  t.cautions = {message("planning.due.caution_reverse"), message("planning.caution.lift")};
  return t;
}

namespace {

bool mayBeSplit(const ColonyFacts& c) {
  return !c.upper && !c.partner && due::queenSound(c) && c.verdict != VerdictCode::SmallSound &&
         !c.healthBar && c.combCells > 0;
}

/// No queen is mated before drones fly.
Date dronesFrom(const ColonyFacts& c, const DueFigures& f, Date day) {
  return c.dronesSeen ? day
                      : std::max(day, c.yard->firstPollen.plusDays(days(f.dronesAfterPollen)));
}

}  // namespace

double splitChance(const ColonyFacts& c, const DueFigures& f, Date day) {
  if (!mayBeSplit(c) || dronesFrom(c, f, day) > day) return 0;
  const int season = c.yard->seasonDay(day);
  const auto then = c.on(day);
  return then && season <= days(f.splitLastDay) ? splitReady(c, f, *then) : 0;
}

std::optional<DueTask> dueSplit(const ColonyFacts& c, const DueFigures& f) {
  if (!mayBeSplit(c)) return std::nullopt;
  const auto ready = due::firstDay(c, 0.5, splitReady, f);
  if (!ready) return std::nullopt;
  const Date from = dronesFrom(c, f, *ready);
  // A year's splits begin with the bee year.
  const Date last = c.yard->seasonWindow(1, f.splitLastDay).second;
  if (from > last) return std::nullopt;
  const auto then = c.on(std::min(from, c.days.back().date));
  auto t =
      due::task(from, std::min(last, from.plusDays(days(f.splitWindow))), splitReady(c, f, *then),
                message("planning.due.split", std::llround(then->seen.median / f.combBees),
                        std::llround(then->brood.median / (0.5 * c.combCells)), f.splitMinC));
  if (!c.chamberType.empty()) t.gear = "chamber:" + c.chamberType;
  t.cautions = {message("planning.due.caution_split"), message("planning.caution.stings")};
  return t;
}

std::optional<DueTask> dueSwarm(const ColonyFacts& c, const DueFigures& f) {
  if (c.upper) return std::nullopt;
  if (c.cellsOn && c.yard->from - *c.cellsOn <= 21) {
    auto t = due::task(*c.cellsOn, c.cellsOn->plusDays(days(f.swarmLookTo) - 2), f.swarmCells,
                       message("planning.due.swarm_cells", c.cellsOn->iso()));
    t.cautions = {message("planning.due.caution_cells")};
    return t;
  }
  if (!due::queenSound(c) || c.days.empty() || c.chamberCells <= 0) return std::nullopt;
  // Hazard of each warm day of the season, as the forecast has it; the first day with some sets
  // the first look, and the looks come before a cell can be sealed.
  double sum = 0;
  std::optional<Date> first;
  for (Date d = c.days.front().date; d <= c.days.back().date; d = d.plusDays(1)) {
    const int season = c.yard->seasonDay(d);
    if (season < f.swarmFromDay || season > f.swarmToDay) continue;
    const double day = f.swarmHazard * crowd(c, f, *c.on(d));
    if (day > 0.002 && !first) first = d;
    sum += day;
  }
  const double chance = 1 - std::exp(-sum);
  if (!first || chance < f.swarmLeast) return std::nullopt;
  Date from = *first;
  if (c.lastLook) from = std::max(from, c.lastLook->plusDays(days(f.swarmLookFrom)));
  auto t = due::task(from, from.plusDays(days(f.swarmLookTo - f.swarmLookFrom)), chance,
                     message("planning.due.swarm", percent(chance), c.days.back().date.iso()));
  t.cautions = {message("planning.due.caution_cells")};
  return t;
}

std::optional<DueTask> dueWash(const ColonyFacts& c, const DueFigures& f) {
  if (c.upper) return std::nullopt;
  const bool treating = c.treatedOn && (!c.treatmentOffOn || *c.treatmentOffOn < *c.treatedOn) &&
                        c.yard->from - *c.treatedOn <= days(f.treatmentMost);
  if (treating) return std::nullopt;
  const auto [seasonFrom, seasonTo] = c.yard->seasonWindow(f.washFromDay, f.washToDay);
  std::optional<Date> last = c.washedOn;
  if (c.treatmentOffOn && (!last || *c.treatmentOffOn > *last)) last = c.treatmentOffOn;
  Date from = last ? std::max(seasonFrom, last->plusDays(days(f.washEvery))) : seasonFrom;
  if (from > seasonTo) return std::nullopt;
  Date to = from.plusDays(days(f.washWindow));
  const auto then = c.on(std::clamp(to, c.days.empty() ? to : c.days.front().date,
                                    c.days.empty() ? to : c.days.back().date));
  const double over = then ? chanceAbove(washWouldGive(f, *then), c.mitesThreshold, true) : 0;
  if (last) {
    return due::task(from, to, over,
                     message("planning.due.wash_again",
                             static_cast<std::int64_t>(std::max(c.yard->from, from) - *last),
                             percent(over), c.mitesThreshold));
  }
  return due::task(from, to, over,
                   message("planning.due.wash_never", percent(over), c.mitesThreshold));
}

std::optional<DueTask> dueTreat(const ColonyFacts& c, const DueFigures& f) {
  if (!c.washedOn || !c.mitesPer100 || *c.mitesPer100 < c.mitesThreshold) return std::nullopt;
  if (c.treatedOn && *c.treatedOn >= *c.washedOn) return std::nullopt;
  if (c.yard->from - *c.washedOn > 60) return std::nullopt;
  auto t = due::task(*c.washedOn, c.washedOn->plusDays(days(f.treatWindow)), 1,
                     message("planning.due.treat", std::round(*c.mitesPer100 * 10) / 10,
                             c.washedOn->iso(), c.mitesThreshold));
  t.cautions = {message("planning.due.caution_label"), message("planning.due.caution_acid")};
  if (c.supers > 0) t.cautions.push_back(message("planning.due.caution_supers_on"));
  return t;
}

std::optional<DueTask> dueTreatOff(const ColonyFacts& c, const DueFigures& f) {
  if (!c.treatedOn) return std::nullopt;
  if (c.treatmentOffOn && *c.treatmentOffOn >= *c.treatedOn) return std::nullopt;
  // Longer ago it was surely taken off, or it was one that nothing of stays behind.
  if (c.yard->from - *c.treatedOn > 120) return std::nullopt;
  const Date from = c.treatedOn->plusDays(days(f.treatmentDays));
  auto t =
      due::task(from, c.treatedOn->plusDays(days(f.treatmentMost)), 1,
                message("planning.due.treat_off",
                        c.treatment.empty() ? std::string("?") : c.treatment, c.treatedOn->iso()));
  t.cautions = {message("planning.due.caution_label")};
  return t;
}

std::optional<DueTask> dueQueenCheck(const ColonyFacts& c, const DueFigures& f) {
  if (c.queenDue) {
    if (c.lastLook && *c.lastLook >= *c.queenDue) return std::nullopt;
    return due::task(c.queenDue->plusDays(-days(f.queenWindow)), *c.queenDue, 1,
                     message("planning.due.queen_due", c.queenSince->iso(), c.queenDue->iso()));
  }
  const bool doubt = c.verdict == VerdictCode::QueenSuspect ||
                     c.verdict == VerdictCode::Queenless || c.verdict == VerdictCode::DroneLayer ||
                     c.verdict == VerdictCode::LayingWorkers;
  if (!doubt || !c.lastLook) return std::nullopt;
  base::Message verdict;
  verdict.key = "code.verdict.";
  verdict.key += apiary::code(c.verdict);
  return due::task(*c.lastLook, c.lastLook->plusDays(days(f.testCombDays)), 1,
                   message("planning.due.queen_doubt", std::move(verdict), c.lastLook->iso()));
}

std::optional<DueTask> dueTakeOff(const ColonyFacts& c, const DueFigures& f) {
  if (c.supers == 0) return std::nullopt;
  // The flow that fills the supers ends and no other follows within two weeks.
  std::optional<Date> end;
  for (std::size_t i = 0; i < c.yard->flows.size(); ++i) {
    const FlowTime& flow = c.yard->flows[i];
    if (flow.nectar < f.mainFlow || flow.to < c.yard->from.plusDays(-days(f.harvestWindow)))
      continue;
    const bool follows =
        std::any_of(c.yard->flows.begin(), c.yard->flows.end(), [&](const FlowTime& o) {
          return &o != &flow && o.nectar >= f.mainFlow && o.from > flow.from &&
                 o.from <= flow.to.plusDays(14) && o.to > flow.to;
        });
    if (!follows) {
      end = flow.to;
      break;
    }
  }
  if (!end) return std::nullopt;
  const auto then = c.on(std::clamp(*end, c.days.empty() ? *end : c.days.front().date,
                                    c.days.empty() ? *end : c.days.back().date));
  if (!then) return std::nullopt;
  const double surplus = then->honeyKg.median - f.harvestKeepKg;
  const double chance = chanceAbove(then->honeyKg, f.harvestKeepKg + 5, false);
  if (chance < f.leastChance) return std::nullopt;
  Date from = *end;
  const bool waits = c.harvestFrom && *c.harvestFrom > from;
  if (waits) from = *c.harvestFrom;
  auto t = due::task(
      from, std::max(from, end->plusDays(days(f.harvestWindow))), chance,
      waits ? message("planning.due.take_off_wait", end->iso(), from.iso(),
                      twoFigures(std::max(surplus, 0.0)))
            : message("planning.due.take_off", end->iso(), twoFigures(std::max(surplus, 0.0))));
  t.cautions = {message("planning.caution.lift"), message("planning.due.caution_honey_dry")};
  if (c.treatedOn && !c.harvestFrom) t.cautions.push_back(message("planning.due.caution_label"));
  return t;
}

std::optional<DueTask> dueUnwrap(const ColonyFacts& c, const DueFigures& f) {
  if (!c.wrapped) return std::nullopt;
  const Date from = c.yard->firstPollen.plusDays(-days(f.unwrapBefore));
  return due::task(from, c.yard->firstPollen.plusDays(days(f.unwrapAfter)), 1,
                   message("planning.due.unwrap", c.yard->firstPollen.iso()));
}

namespace {

/// The usual weather of a calendar day: nobody has observed or forecast a day two years ahead, so
/// that the yard's normals speak.
std::optional<double> usualNight(const YardFacts& yard, Date day) {
  const auto ahead = Date::fromYmd(day.year() + 2, day.month(), day.day());
  if (!ahead || !yard.weather) return std::nullopt;
  const auto weather = yard.weather(*ahead);
  return weather ? std::optional(weather->tminC) : std::nullopt;
}

constexpr double kAutumnFrom = 244, kAutumnTo = 350;  // 1 September to mid December

}  // namespace

// When to wrap: common practice, no source. Frosts are near when the mean night low comes down to
// freezing; where no winter night is much colder nobody wraps.
std::optional<DueTask> dueWrap(const ColonyFacts& c, const DueFigures& f) {
  if (c.wrapped || c.upper) return std::nullopt;
  const auto [autumn, winter] = c.yard->seasonWindow(kAutumnFrom, kAutumnTo);
  std::optional<Date> frost;
  double coldest = 100;
  for (Date d = autumn; d <= winter.plusDays(75); d = d.plusDays(1)) {
    const auto night = usualNight(*c.yard, d);
    if (!night) continue;
    coldest = std::min(coldest, *night);
    if (!frost && d <= winter && *night <= f.wrapFrostC) frost = d;
  }
  if (!frost || coldest > f.wrapColdC) return std::nullopt;
  auto t = due::task(frost->plusDays(-days(f.wrapBefore)), frost->plusDays(days(f.wrapAfter)), 1,
                     message("planning.due.wrap", frost->iso(), std::round(coldest)));
  t.cautions = {message("planning.due.caution_wrap"), message("planning.caution.lift")};
  return t;
}

}  // namespace outyard::planning
