// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/arrange.h"

#include <algorithm>
#include <cmath>

#include "ui/yards/map_items.h"

namespace outyard::yards {
namespace {

constexpr double kFullTurn = 360;
/// A hive this near to a place of its stand still stands on it (half a hive's width).
constexpr double kOnStandM = 0.25;

double wholeCm(double metres) {
  return std::round(metres * 100) / 100;
}

double withinTurn(double degrees) {
  const double rest = std::fmod(degrees, kFullTurn);
  return rest < 0 ? rest + kFullTurn : rest;
}

}  // namespace

std::vector<session::Spot> spotsOf(const widgets::SeasonHub& hub,
                                   const std::vector<base::HiveId>& hives) {
  std::vector<session::Spot> spots;
  for (const auto& id : hives) {
    const auto* hive = hub.hive(id);
    if (!hive || !hive->xM || !hive->yM) continue;
    session::Spot spot;
    spot.hive = id;
    spot.xM = *hive->xM;
    spot.yM = *hive->yM;
    spot.entranceDeg = hive->entranceDeg;
    spot.stand = hive->stand;
    spots.push_back(spot);
  }
  return spots;
}

std::vector<session::Spot> turnedBy(std::vector<session::Spot> spots, double degrees) {
  std::erase_if(spots, [](const session::Spot& spot) { return !spot.entranceDeg; });
  for (auto& spot : spots) spot.entranceDeg = withinTurn(*spot.entranceDeg + degrees);
  return spots;
}

std::vector<session::Spot> facing(std::vector<session::Spot> spots, double degrees) {
  for (auto& spot : spots) spot.entranceDeg = withinTurn(degrees);
  return spots;
}

std::vector<session::Spot> inRow(std::vector<session::Spot> spots, RowAlong along) {
  if (spots.empty()) return spots;
  const auto across = along == RowAlong::X ? &session::Spot::yM : &session::Spot::xM;
  double sum = 0;
  for (const auto& spot : spots) sum += spot.*across;
  const double middle = wholeCm(sum / static_cast<double>(spots.size()));
  for (auto& spot : spots) spot.*across = middle;
  return spots;
}

std::vector<session::Spot> spreadEvenly(std::vector<session::Spot> spots) {
  if (spots.size() < 3) return spots;
  const auto extent = [&](double session::Spot::*side) {
    const auto [least, most] = std::minmax_element(
        spots.begin(), spots.end(),
        [side](const session::Spot& a, const session::Spot& b) { return a.*side < b.*side; });
    return (*most).*side - (*least).*side;
  };
  const auto side = extent(&session::Spot::xM) >= extent(&session::Spot::yM) ? &session::Spot::xM
                                                                             : &session::Spot::yM;
  std::stable_sort(
      spots.begin(), spots.end(),
      [side](const session::Spot& a, const session::Spot& b) { return a.*side < b.*side; });
  const double first = spots.front().*side;
  const double gap = (spots.back().*side - first) / static_cast<double>(spots.size() - 1);
  for (std::size_t i = 1; i + 1 < spots.size(); ++i) {
    spots[i].*side = wholeCm(first + gap * static_cast<double>(i));
  }
  return spots;
}

std::vector<session::Spot> offTheirStands(const apiary::Season& season, const base::YardId& yard,
                                          std::vector<session::Spot> spots) {
  for (auto& spot : spots) {
    if (spot.stand.empty()) continue;
    bool on = false;
    for (const auto& [key, stand] : season.table<apiary::Stand>()) {
      if (stand.yard != yard || stand.stand != spot.stand) continue;
      for (const QPointF& place : standSlots(stand)) {
        on = on || std::hypot(place.x() - spot.xM, -place.y() - spot.yM) <= kOnStandM;
      }
    }
    if (!on) spot.stand.clear();
  }
  return spots;
}

}  // namespace outyard::yards
