// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/base/date.h"

namespace outyard::forecast {

/// Hours from sunrise to sunset (upper limb, refraction) at a latitude in degrees (south
/// negative). Solar declination after Spencer 1971 (Search 2:172); horizon 0.833 degrees below, as
/// in the NOAA solar equations. 0 in polar night, 24 in polar day.
double dayLengthHours(double latitudeDeg, int dayOfYear);

/// The day of the year as the northern hemisphere would count it: south of the equator the seasons
/// are shifted by half a year. 1 to 365.
int northernDay(double latitudeDeg, int dayOfYear);

}  // namespace outyard::forecast
