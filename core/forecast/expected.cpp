// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/expected.h"

#include <algorithm>

#include "core/strength/estimate.h"

namespace outyard::forecast {
namespace {

Band between(const Band& a, const Band& b, double share) {
  const auto mix = [share](double x, double y) { return x + (y - x) * share; };
  return {mix(a.median, b.median), mix(a.low, b.low), mix(a.high, b.high)};
}

strength::Spread spreadOf(const Band& band) {
  return {band.median, band.low, band.high};
}

}  // namespace

std::optional<ForecastDay> dayBetween(const std::vector<ForecastDay>& days, base::Date date) {
  const auto after =
      std::lower_bound(days.begin(), days.end(), date,
                       [](const ForecastDay& row, base::Date d) { return row.date < d; });
  if (after == days.end()) return std::nullopt;
  if (after->date == date) return *after;
  if (after == days.begin()) return std::nullopt;
  const ForecastDay &a = *std::prev(after), &b = *after;
  const double share = static_cast<double>(date - a.date) / (b.date - a.date);
  return ForecastDay{date,
                     between(a.bees, b.bees, share),
                     between(a.seen, b.seen, share),
                     between(a.sealed, b.sealed, share),
                     between(a.brood, b.brood, share),
                     between(a.honeyKg, b.honeyKg, share),
                     between(a.mites, b.mites, share),
                     between(a.mitesPer100, b.mitesPer100, share)};
}

strength::ExpectedLook expectedLook(const apiary::Season& season, const apiary::HiveState& hive,
                                    const base::ColonyId& colony, const ForecastDay& day) {
  const auto frames = strength::framesMeant(season, hive, colony);
  return strength::expectedLook(spreadOf(day.seen), spreadOf(day.brood), frames.figures,
                                strength::framesOf(hive, colony));
}

std::vector<base::ColonyId> coloniesIn(const apiary::Season& season, const base::YardId& yard,
                                       base::Date day) {
  std::vector<base::ColonyId> colonies;
  for (const auto& hive : apiary::yardOn(season, yard, day)) {
    if (hive.status != apiary::HiveStatus::Live) continue;
    for (const auto& colony : hive.colonies) colonies.push_back(colony.colony);
  }
  return colonies;
}

std::map<base::ColonyId, strength::ExpectedLook> expectedLooks(const apiary::Season& season,
                                                               const base::YardId& yard,
                                                               base::Date known, base::Date day,
                                                               int threads,
                                                               base::Progress& progress) {
  ForecastAsk ask;
  ask.from = std::min(known, day);
  ask.to = day;
  ask.stepDays = std::max(1, day - ask.from);
  std::map<base::ColonyId, strength::ExpectedLook> looks;
  const auto forecasts =
      forecastColonies(season, coloniesIn(season, yard, ask.from), ask, threads, progress);
  for (const auto& f : forecasts) {
    if (f.days.empty()) continue;
    const auto hive = apiary::hiveOn(season, f.hive, ask.from);
    looks.emplace(f.colony, expectedLook(season, hive, f.colony, f.days.back()));
  }
  return looks;
}

}  // namespace outyard::forecast
