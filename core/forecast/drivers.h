// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/forecast/kernel.h"
#include "core/forecast/parameters.h"
#include "core/forecast/weather.h"

namespace outyard::forecast {

/// The season's share of a queen's potential on a (northern) day: HoPoMo's two logistic arms
/// (Schmickl and Crailsheim 2007; x = 385, 30, 36, 155, 30, a Central European year), each moved
/// by days; southern places begin earlier and end later.
double layingSeason(int northernDayOfYear, double springShiftDays, double autumnShiftDays);
/// How many days earlier spring begins, and later laying ends, than at 47 degrees (our
/// assumption: 2.2 and 2.7 days a degree, north of it 2.2 and 1.2).
double springLeadDays(double latitudeDeg);
double autumnLagDays(double latitudeDeg);

/// Strength of nectar and pollen flow of a yard on a day (0 none to 3 strong): its own calendar
/// (the strongest row that holds the day), else a default for the latitude.
struct FlowOfDay {
  double nectar = 0, pollen = 0;
};
FlowOfDay flowOn(const apiary::Season& season, const base::YardId& yard, double latitudeDeg,
                 int dayOfYear);

/// What the kernel needs for each day, from the weather scenarios, the flow calendar and the
/// season; differences of the season's course are drawn for each scenario from the same seed.
Drivers makeDrivers(const apiary::Season& season, const base::YardId& yard,
                    const WeatherPaths& weather, const Figures& figures, std::uint64_t seed);

}  // namespace outyard::forecast
