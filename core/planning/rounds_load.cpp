// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/planning/boost_gear.h"
#include "core/planning/boost_weather.h"
#include "core/planning/due_figures.h"
#include "core/planning/rounds.h"

namespace outyard::planning {
namespace {

using apiary::Goods;
using apiary::Unit;
using base::message;
using F = RoundFigures;
constexpr std::string_view kOurs = "our assumption";

constexpr std::array kTable{
    RoundFigure{"round.day_hours", &F::dayHours, 1, 24, "h", kOurs},
    RoundFigure{"round.people", &F::people, 1, 20, "hands", kOurs},
    RoundFigure{"round.speed_kmh", &F::speedKmh, 5, 130, "km/h", kOurs},
    RoundFigure{"round.road_factor", &F::roadFactor, 1, 4, "road to straight line", kOurs},
    RoundFigure{"round.yard_minutes", &F::yardMinutes, 0, 240, "min a yard", kOurs},
    RoundFigure{"round.unknown_km", &F::unknownKm, 0, 500, "km between yards without a place",
                kOurs},
    RoundFigure{"round.most", &F::most, 1, 30, "yards a day", kOurs},
    RoundFigure{"round.truck_kg", &F::truckKg, 50, 20000, "kg; the truck's papers go first", kOurs},
    RoundFigure{"round.home_latitude", &F::homeLatitude, -90, 90, "degrees", "the outfit's own"},
    RoundFigure{"round.home_longitude", &F::homeLongitude, -180, 180, "degrees",
                "the outfit's own"},
    RoundFigure{"round.least", &F::least, 0, 20, "certain pieces of work", kOurs},
    RoundFigure{"round.km_worth", &F::kmWorth, 1, 1000, "km", kOurs},
    RoundFigure{"round.cold_share", &F::coldShare, 0, 1, "of its worth on a cold or wet day",
                kOurs},
};

/// What one piece weighs when nothing else says so, in kg: our assumption.
std::optional<double> pieceKg(const apiary::Season& season, const std::string& item) {
  static const std::map<std::string, double> kKg{
      {"excluder", 0.8}, {"feeder", 1.0}, {"floor", 3.0}, {"cover", 3.0}, {"paper", 0.05}};
  if (const auto it = kKg.find(item); it != kKg.end()) return it->second;
  const auto colon = item.find(':');
  if (colon == std::string::npos) return std::nullopt;
  const auto figures = strength::figuresFor(season, item.substr(colon + 1));
  if (!figures || figures->boxKg <= 0) return std::nullopt;
  const std::string kind = item.substr(0, colon);
  if (kind == "chamber" || kind == "super") return figures->boxKg;
  if (kind == "drawn_comb" || kind == "foundation") {
    return figures->boxKg / std::max(1, figures->framesPerBox);
  }
  return std::nullopt;
}

/// Kilograms of a litre of syrup: ICUMSA density tables at 20 C, 50 and 66.7 % sugar (from memory).
double litreKg(Goods what) {
  return what == Goods::Syrup21 ? 1.328 : 1.230;
}

}  // namespace

std::span<const RoundFigure> roundFigureTable() {
  return kTable;
}

RoundFigures roundFigures(const apiary::Season& season, std::vector<base::Message>& notes) {
  RoundFigures out;
  for (const RoundFigure& f : kTable) {
    const std::string name(f.name);
    const auto text = season.setting(name);
    if (!text || text->empty()) continue;
    const auto value = base::parseNumber(*text);
    if (!value || *value < f.min || *value > f.max) {
      notes.push_back(
          message("planning.setting_bad", name, *text, f.min, f.max, f.unit, out.*f.member));
      continue;
    }
    out.*f.member = *value;
  }
  return out;
}

double RoundItem::missing() const {
  return atHand ? std::max(0.0, needed - *atHand) : 0;
}

double workHours(const DueList& due, const std::vector<std::size_t>& tasks,
                 const RoundFigures& figures) {
  // A hive that is open takes the rest of its work in passing: a third of it (our assumption).
  constexpr double kInPassing = 1.0 / 3;
  std::map<std::optional<base::HiveId>, std::pair<double, double>> byHive;  // longest, sum
  for (const std::size_t i : tasks) {
    const DueTask& t = due.tasks.at(i);
    auto& [longest, sum] = byHive[t.hive];
    longest = std::max(longest, t.minutes);
    sum += t.minutes;
  }
  double minutes = 0;
  for (const auto& [hive, m] : byHive) minutes += m.first + (m.second - m.first) * kInPassing;
  return (minutes / std::max(1.0, figures.people) + figures.yardMinutes) / 60;
}

double driveKm(const apiary::Season& season, const base::YardId& a, const base::YardId& b,
               const RoundFigures& figures) {
  if (a == b) return 0;
  const apiary::Yard *x = season.yard(a), *y = season.yard(b);
  const auto km = x && y ? distanceKm(*x, *y) : std::nullopt;
  return km ? *km * figures.roadFactor : figures.unknownKm;
}

RoundLoad loadOf(const apiary::Season& season, const DueList& due,
                 const std::vector<std::size_t>& tasks, base::Date date,
                 const RoundFigures& figures) {
  std::vector<base::Message> notes;
  const DueFigures rules = dueFigures(season, notes);
  std::map<std::string, RoundItem> items;
  std::set<base::YardId> yards;
  bool lifts = false, treats = false, liquid = false;
  for (const std::size_t i : tasks) {
    const DueTask& t = due.tasks.at(i);
    yards.insert(t.yard);
    lifts = lifts || t.kind == "unstacked" || t.kind == "reversed" || t.kind == "harvested" ||
            t.kind == "stacked" || t.kind == "united";
    if (!t.gear.empty()) {
      RoundItem& item = items[t.gear];
      item.item = t.gear;
      const bool many = t.unit == Unit::Boxes || t.unit == Unit::Frames;
      item.needed += many && t.amount ? *t.amount : 1;
    }
    if (t.kind == "fed" && t.amount && (t.unit == Unit::L || t.unit == Unit::Kg)) {
      const Goods what = t.what.value_or(Goods::Syrup11);
      RoundItem& item = items[std::string(apiary::code(what))];
      item.item = apiary::code(what);
      item.unit = t.unit;
      item.needed += *t.amount;
      const bool litres = t.unit == Unit::L;
      liquid = liquid || litres;
      item.kg = item.kg.value_or(0) + (litres ? *t.amount * litreKg(what) : *t.amount);
      const double sugar = litres
                               ? (what == Goods::Syrup21 ? rules.sugarSyrup21 : rules.sugarSyrup11)
                               : rules.sugarFondant;
      item.sugarKg = item.sugarKg.value_or(0) + *t.amount * sugar;
    }
    if (t.kind == "treated") {
      treats = true;
      items["treatment"].item = "treatment";
      items["treatment"].needed += 1;
    }
    if (t.kind == "queen_introduced" || t.kind == "queen_cell_given") {
      items["queen"].item = "queen";
      items["queen"].needed += 1;
    }
    if (t.kind == "stacked" || t.kind == "united") {
      items["paper"].item = "paper";
      items["paper"].needed += t.kind == "stacked" ? 1 : 0;
    }
  }
  std::erase_if(items, [](const auto& i) { return i.second.needed <= 0; });
  RoundLoad load;
  bool unknown = false;
  const std::vector<base::YardId> places(yards.begin(), yards.end());
  for (auto& [name, item] : items) {
    if (const auto hand = gearAtHand(season, name, places, date)) item.atHand = *hand;
    if (!item.unit) {
      if (const auto kg = pieceKg(season, name)) item.kg = *kg * item.needed;
    }
    unknown = unknown || !item.kg;
    load.kg += item.kg.value_or(0);
    load.items.push_back(item);
  }
  load.tooHeavy = load.kg > figures.truckKg;
  if (load.tooHeavy) {
    load.cautions.push_back(
        message("planning.round.too_heavy", std::round(load.kg), figures.truckKg));
  }
  if (load.kg > 0) load.cautions.push_back(message("planning.round.tied"));
  if (unknown) load.cautions.push_back(message("planning.round.weight_unknown"));
  if (liquid) load.cautions.push_back(message("planning.round.syrup"));
  if (lifts) load.cautions.push_back(message("planning.caution.lift"));
  if (treats) load.cautions.push_back(message("planning.due.caution_acid"));
  return load;
}

}  // namespace outyard::planning
