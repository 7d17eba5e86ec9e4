// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/move_caution.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/adapt/units.h"

namespace outyard::yards {
namespace {

/// Field bees find home from within their flight range: move under a metre a day or over three
/// kilometres (common practice, no source).
constexpr double kShortMoveM = 1, kFlightRangeM = 3000;
/// From about this warmth on a closed colony overheats on the truck (common practice, no source).
constexpr double kHeatC = 25;

struct Caution {
  Q_DECLARE_TR_FUNCTIONS(SpotDialog)
};

/// The warmest that is known of the day in either yard; nullopt when nobody entered it.
std::optional<double> warmest(const apiary::Season& season, const base::YardId& from,
                              const base::YardId& to, base::Date day) {
  std::optional<double> most;
  for (const auto& [key, weather] : season.table<apiary::WeatherDay>()) {
    if (weather.date != day || weather.kind == apiary::WeatherKind::Normal) continue;
    if (weather.yard != from && weather.yard != to) continue;
    most = std::max(most.value_or(weather.tmaxC), weather.tmaxC);
  }
  return most;
}

QString heatText(const widgets::SeasonHub& hub, const base::YardId& from, const base::YardId& to,
                 base::Date day) {
  const auto most = warmest(hub.season(), from, to, day);
  if (most && *most < kHeatC) return {};
  const auto units = adapt::Units::from(hub.settings());
  if (most) {
    return Caution::tr(
               "%1 on that day: closed colonies overheat and young combs break. Travel in "
               "the cool of the night, give air through a screen over the whole top, "
               "unload at once.")
        .arg(units.text(base::Temperature{*most}));
  }
  return Caution::tr(
             "No weather is entered for that day: above %1 closed colonies overheat; give "
             "air through a screen over the whole top.")
      .arg(units.text(base::Temperature{kHeatC}));
}

}  // namespace

std::optional<double> distanceBetween(const apiary::Yard& a, const apiary::Yard& b) {
  if (!a.latitude || !a.longitude || !b.latitude || !b.longitude) return std::nullopt;
  // Great circle (haversine) on a sphere of 6,371 km, the mean radius of the Earth (IUGG).
  constexpr double kEarthM = 6371000, kRad = std::numbers::pi / 180;
  const double dLat = (*b.latitude - *a.latitude) * kRad;
  const double dLon = (*b.longitude - *a.longitude) * kRad;
  const double h = std::pow(std::sin(dLat / 2), 2) + std::cos(*a.latitude * kRad) *
                                                         std::cos(*b.latitude * kRad) *
                                                         std::pow(std::sin(dLon / 2), 2);
  return 2 * kEarthM * std::asin(std::sqrt(h));
}

QString moveCaution(const widgets::SeasonHub& hub, const std::vector<session::Spot>& spots,
                    const base::YardId& to, base::Date day) {
  const QString load = Caution::tr(
      "Move at night or early, screened and strapped; tie the load down and keep within the "
      "truck's limit. A full hive is a lift for two.");
  std::optional<double> metres;
  bool leaves = false;
  base::YardId from = to;
  for (const auto& spot : spots) {
    const auto now = apiary::hiveOn(hub.season(), spot.hive, day);
    std::optional<double> way;
    if (now.yard == to) {
      if (now.xM && now.yM) way = std::hypot(spot.xM - *now.xM, spot.yM - *now.yM);
    } else {
      leaves = true;
      from = now.yard;
      const auto* a = hub.season().yard(now.yard);
      const auto* b = hub.season().yard(to);
      if (a && b) way = distanceBetween(*a, *b);
    }
    const auto loses = [](double m) { return m > kShortMoveM && m < kFlightRangeM; };
    // The worst way counts: one inside flight range, else the longest.
    if (way && (!metres || (loses(*way) && !loses(*metres)) ||
                (loses(*way) == loses(*metres) && *way > *metres))) {
      metres = way;
    }
  }
  QStringList said;
  if (metres && *metres > kShortMoveM && *metres < kFlightRangeM) {
    const auto units = adapt::Units::from(hub.settings());
    said << Caution::tr(
                "%1 is within flight range: field bees fly back to the old stand and are "
                "lost. Under %2 a day, or over %3, they are kept.")
                .arg(units.text(base::Length{*metres}), units.text(base::Length{kShortMoveM}),
                     units.text(base::Length{kFlightRangeM}));
  }
  said << load;
  const QString heat = leaves ? heatText(hub, from, to, day) : QString();
  if (!heat.isEmpty()) said << heat;
  return said.join(u' ');
}

}  // namespace outyard::yards
