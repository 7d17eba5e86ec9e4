// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/due_facts.h"

#include <algorithm>
#include <cmath>
#include <memory>

#include "core/strength/yard_calendar.h"

namespace outyard::planning {
namespace {

using apiary::BoxRole;
using apiary::Event;
using apiary::EventKind;
using base::Date;

/// Area under the normal curve up to z (complementary error function).
double below(double z) {
  return 0.5 * std::erfc(-z / std::sqrt(2.0));
}
constexpr double kTenth = 1.2815515655446004;  // tenth quantile of the normal curve

Date latest(std::optional<Date> a, Date b) {
  return a ? std::max(*a, b) : b;
}

/// The date of a day of the year.
Date yearDay(int year, int day) {
  return Date::fromYmd(year, 1, 1)->plusDays(day - 1);
}

bool meant(const Event& e, const base::ColonyId& colony, bool main) {
  return e.colony ? *e.colony == colony : main;
}

void readStack(const apiary::Season& season, const apiary::HiveState& hive, ColonyFacts& out,
               const DueFigures& f) {
  const auto deep = strength::shippedFigures("langstroth_deep");
  double seamsBelow = 0, seamsAbove = 0;
  out.chambers = out.supers = 0;
  int lowest = 0, highest = 0;
  for (const auto& b : hive.boxesOf(out.colony)) {
    if (b.role == BoxRole::Feeder) continue;
    const auto figures = strength::figuresFor(season, b.frameType);
    if (!figures) continue;
    const int frames = b.frames > 0 ? b.frames : figures->framesPerBox;
    const double comb = 2 * figures->cellsPerSide();
    out.combsBees += frames * f.combBees * figures->combCm2 / deep->combCm2;
    if (b.role == BoxRole::Chamber) {
      ++out.chambers;
      out.chamberCells += frames * comb;
      if (out.chamberType.empty()) {
        out.chamberType = b.frameType;
        out.combCells = comb;
        lowest = b.position;
      }
      highest = b.position;
    } else {
      ++out.supers;
      out.superCells += frames * comb;
      out.superType = b.frameType;
    }
  }
  const apiary::ColonyState* c = hive.colony(out.colony);
  if (out.chambers < 2 || !c || !c->lastInspection) return;
  bool any = false;
  for (const auto* s : season.seamCounts(c->lastInspection->record)) {
    any = true;
    const double seams = std::max(s->fromAbove.value_or(0), s->fromBelow.value_or(0));
    if (s->box == lowest) seamsBelow = seams;
    if (s->box == highest) seamsAbove = seams;
  }
  if (any) out.nestAbove = seamsAbove >= 2 && seamsBelow < 1;
}

void readEvents(const apiary::Season& season, const apiary::HiveState& hive, Date day,
                ColonyFacts& out) {
  const apiary::ColonyState* own = hive.colony(out.colony);
  const bool main = !own || own->place == apiary::ColonyPlace::Main;
  for (const Event* e : season.eventsTouching(hive.hive)) {
    if (e->date > day) break;
    // Taken off: the event names the colony and its new hive.
    if (e->kind == EventKind::Unstacked && e->hive == hive.hive && e->colony == out.colony) {
      out.unstackedOn = e->date;
    }
    // Dealt with: cells cut out, swarmed, or divided (a split names the new hive first).
    const bool dealt = e->kind == EventKind::CellsRemoved || e->kind == EventKind::Swarmed ||
                       e->kind == EventKind::Split;
    if (dealt && out.cellsOn && e->date >= *out.cellsOn) out.cellsOn.reset();
    if (e->kind == EventKind::PaperOpen) out.paperOpenOn = e->date;
    if (e->hive != hive.hive || !meant(*e, out.colony, main)) continue;
    switch (e->kind) {
      case EventKind::Reversed:
        out.reversedOn = e->date;
        break;
      case EventKind::Treated:
        out.treatedOn = e->date;
        out.treatment = e->method;
        if (e->withdrawalDays) {
          out.harvestFrom = latest(out.harvestFrom, e->date.plusDays(*e->withdrawalDays));
        }
        break;
      case EventKind::TreatmentOff:
        out.treatmentOffOn = e->date;
        break;
      default:
        break;
    }
  }
}

/// Since when the upper colony stands over the other.
void readJoint(const apiary::Season& season, const apiary::HiveState& hive, Date day,
               ColonyFacts& out) {
  if (!hive.stacked()) return;
  const apiary::ColonyState* own = hive.colony(out.colony);
  out.upper = own && own->place != apiary::ColonyPlace::Main &&
              own->place != apiary::ColonyPlace::Left && own->place != apiary::ColonyPlace::Right;
  if (out.upper) {
    out.stackedOn = own->since;
    for (const Event* e : season.eventsTouching(hive.hive)) {
      if (e->date <= day && e->kind == EventKind::Stacked) out.stackedOn = e->date;
    }
    if (out.paperOpenOn && *out.paperOpenOn < *out.stackedOn) out.paperOpenOn.reset();
  }
  for (const auto& c : hive.colonies) {
    if (c.colony != out.colony) out.partner = hive.hive;
  }
}

}  // namespace

int YardFacts::seasonDay(Date date) const {
  return strength::seasonDay(date, latitude);
}

Date YardFacts::seasonDate(double day) const {
  int delta = static_cast<int>(std::lround(day)) - seasonDay(from);
  while (delta > 182) delta -= 365;
  while (delta < -182) delta += 365;
  return from.plusDays(delta);
}

std::pair<Date, Date> YardFacts::seasonWindow(double fromDay, double toDay) const {
  Date first = from.plusDays(static_cast<int>(std::lround(fromDay)) - seasonDay(from));
  int length = static_cast<int>(std::lround(toDay - fromDay));
  if (length < 0) length += 365;
  while (first.plusDays(length) < from) first = first.plusDays(365);
  while (first.plusDays(length - 365) >= from) first = first.plusDays(-365);
  return {first, first.plusDays(length)};
}

bool YardFacts::warm(Date day, double minC, double dryMm) const {
  const auto w = weather ? weather(day) : std::nullopt;
  if (!w) return false;
  return w->tmaxC >= minC && w->rainMm.value_or(0) <= dryMm;
}

std::optional<forecast::ForecastDay> ColonyFacts::on(Date day) const {
  if (days.empty() || day < days.front().date || day > days.back().date) return std::nullopt;
  const auto after = std::lower_bound(days.begin(), days.end(), day,
                                      [](const auto& d, Date at) { return d.date < at; });
  if (after->date == day || after == days.begin()) return *after;
  const auto& a = *(after - 1);
  const auto& b = *after;
  const double share = static_cast<double>(day - a.date) / (b.date - a.date);
  const auto between = [&](const forecast::Band& x, const forecast::Band& y) {
    return forecast::Band{x.median + (y.median - x.median) * share, x.low + (y.low - x.low) * share,
                          x.high + (y.high - x.high) * share};
  };
  return forecast::ForecastDay{day,
                               between(a.bees, b.bees),
                               between(a.seen, b.seen),
                               between(a.sealed, b.sealed),
                               between(a.brood, b.brood),
                               between(a.honeyKg, b.honeyKg),
                               between(a.mites, b.mites),
                               between(a.mitesPer100, b.mitesPer100)};
}

double chanceAbove(const forecast::Band& band, double value, bool onLogs) {
  double median = band.median, low = band.low, high = band.high;
  if (onLogs) {
    constexpr double kFloor = 1e-3;
    if (value <= 0) return 1;
    median = std::log(std::max(median, kFloor));
    low = std::log(std::max(low, kFloor));
    high = std::log(std::max(high, kFloor));
    value = std::log(value);
  }
  const double spread = std::max(value < median ? (median - low) : (high - median), 1e-9) / kTenth;
  return 1 - below((value - median) / spread);
}

YardFacts yardFacts(const apiary::Season& season, const base::YardId& yard, const DueAsk& ask) {
  YardFacts out;
  out.yard = yard;
  out.from = ask.from;
  out.to = ask.to;
  const apiary::Yard* row = season.yard(yard);
  out.latitude = row && row->latitude ? *row->latitude : 45;
  out.firstPollen = strength::yardCalendar(season, yard, ask.from).firstPollenDate;
  for (const auto& [key, flow] : season.table<apiary::Flow>()) {
    if (flow.yard != yard || !flow.nectar) continue;
    for (const int year : {ask.from.year() - 1, ask.from.year(), ask.from.year() + 1}) {
      const Date from = yearDay(year, flow.fromDay);
      const Date to = yearDay(flow.fromDay > flow.toDay ? year + 1 : year, flow.toDay);
      if (to >= ask.from.plusDays(-60) && from <= ask.to.plusDays(120)) {
        out.flows.push_back({from, to, *flow.nectar});
      }
    }
  }
  std::sort(out.flows.begin(), out.flows.end(),
            [](const auto& a, const auto& b) { return a.from < b.from; });
  out.foulBrood = apiary::foulBroodIn(season, yard, ask.from);
  const auto weather = std::make_shared<const YardWeather>(season, yard);
  out.weather = [weather](Date d) { return weather->on(d); };
  return out;
}

ColonyFacts colonyFacts(const apiary::Season& season, const YardFacts& yard,
                        const apiary::HiveState& hive, const apiary::ColonyState& colony,
                        const DueFigures& figures) {
  const Date day = yard.from;
  ColonyFacts out;
  out.yard = &yard;
  out.hive = hive.hive;
  out.colony = colony.colony;
  out.wrapped = hive.wrapped;
  readStack(season, hive, out, figures);
  const auto rules = strength::rulesFor(season);
  const auto evidence = strength::gatherEvidence(season, colony.colony, day, rules);
  const auto judgement = strength::judge(season, colony.colony, day);
  out.verdict = judgement.verdict;
  out.healthBar = judgement.healthBar;
  out.lastLook = evidence.lastSeen;
  out.seams = evidence.seams;
  if (evidence.queenDue) {
    out.queenSince = evidence.queenDue->since;
    out.queenDue = evidence.queenDue->due;
  }
  const apiary::Inspection* look = colony.lastInspection;
  if (look) {
    out.dronesSeen = look->dronesSeen.value_or(false) || look->droneBrood.value_or(0) >= 1;
    const bool cups = look->cellKind == apiary::CellKind::Cups;
    const bool kind = look->cellKind && !cups;
    if (kind || (look->queenCells.value_or(0) > 0 && !cups)) out.cellsOn = look->date;
  }
  for (const auto* w : season.journal<apiary::Wash>(hive.hive)) {
    if (w->date > day || w->bees <= 0) continue;
    const bool main = colony.place == apiary::ColonyPlace::Main;
    if (w->colony ? *w->colony != colony.colony : !main) continue;
    out.washedOn = w->date;
    out.mitesPer100 = 100.0 * w->mites / w->bees;
  }
  out.mitesThreshold = rules.mitesFor(yard.seasonDay(day));
  readEvents(season, hive, day, out);
  readJoint(season, hive, day, out);
  return out;
}

}  // namespace outyard::planning
