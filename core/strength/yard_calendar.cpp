// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/yard_calendar.h"

#include <algorithm>
#include <cmath>

namespace outyard::strength {
namespace {

int shifted(int dayOfYear, bool south) {
  return south ? (dayOfYear - 1 + 182) % 365 + 1 : dayOfYear;
}

}  // namespace

int seasonDay(base::Date date, std::optional<double> latitude) {
  return shifted(date.dayOfYear(), latitude.value_or(45) < 0);
}

YardCalendar yardCalendar(const apiary::Season& season, const base::YardId& yard, base::Date day) {
  const apiary::Yard* y = season.yard(yard);
  const std::optional<double> latitude = y ? y->latitude : std::nullopt;
  const bool south = latitude.value_or(45) < 0;
  const double degrees = std::fabs(latitude.value_or(45));
  const double metres = y ? y->elevationM.value_or(0) : 0;

  YardCalendar c;
  c.today = seasonDay(day, latitude);
  c.firstPollen = static_cast<int>(
      std::lround(std::clamp(29 + 3 * (degrees - 30) + metres * 3 / 100, 1.0, 140.0)));
  c.lastBrood = static_cast<int>(std::lround(std::clamp(258 - 2 * (degrees - 45), 230.0, 330.0)));

  std::optional<int> first;
  const std::string prefix = yard.str() + '\x1F';
  const auto& flows = season.table<apiary::Flow>();
  for (auto it = flows.lower_bound(prefix); it != flows.end(); ++it) {
    if (it->first.compare(0, prefix.size(), prefix) != 0) break;
    const apiary::Flow& flow = it->second;
    if (flow.pollen.value_or(0) <= 0) continue;
    const int from = shifted(flow.fromDay, south);
    const int to = shifted(flow.toDay, south);
    // A flow over the turn of the bee year: there is pollen all winter.
    const int starts = from > to ? 1 : from;
    first = std::min(first.value_or(starts), starts);
    c.lastBrood = std::max(c.lastBrood, from > to ? 365 : std::min(to, 330));
  }
  if (first) {
    c.firstPollen = *first;
    c.fromFlows = true;
  }
  c.firstPollenDate = day.plusDays(c.firstPollen - c.today);
  // After the season the pollen that ends the wait is next year's.
  if (c.today > c.lastBrood) c.firstPollenDate = c.firstPollenDate.plusDays(365);
  return c;
}

std::optional<double> meanTemperature(const apiary::Season& season, const base::YardId& yard,
                                      base::Date day) {
  const auto& weather = season.table<apiary::WeatherDay>();
  double sum = 0;
  int days = 0;
  for (int back = 0; back < 7; ++back) {
    const std::string prefix = yard.str() + '\x1F' + day.plusDays(-back).iso() + '\x1F';
    // Kinds stand in the order in which they count; of several forecasts the latest.
    const apiary::WeatherDay* best = nullptr;
    for (auto it = weather.lower_bound(prefix); it != weather.end(); ++it) {
      if (it->first.compare(0, prefix.size(), prefix) != 0) break;
      const apiary::WeatherDay& w = it->second;
      if (!best || w.kind < best->kind || (w.kind == best->kind && w.issued > best->issued)) {
        best = &w;
      }
    }
    if (!best) continue;
    sum += (best->tminC + best->tmaxC) / 2;
    ++days;
  }
  if (days == 0) return std::nullopt;
  return sum / days;
}

}  // namespace outyard::strength
