// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/apiary/season.h"

/// Where in the bee year a day lies for a yard.
namespace outyard::strength {

/// Day of the year as a yard north of the equator would have it: south of it the seasons shift by
/// half a year.
int seasonDay(base::Date date, std::optional<double> latitude);

struct YardCalendar {
  int today = 1;           ///< season day
  int firstPollen = 85;    ///< season day of the first pollen
  int lastBrood = 258;     ///< after it a colony without brood is nothing unusual
  bool fromFlows = false;  ///< true when the yard's own flow table says the first pollen
  base::Date firstPollenDate;
  [[nodiscard]] bool beforePollen() const { return today < firstPollen; }
  [[nodiscard]] bool broodSeason() const { return today >= firstPollen && today <= lastBrood; }
};

/// First pollen from the yard's flow table, else by latitude and height: season day 29 at 30
/// degrees, 3 days later for each degree towards the pole and for each 100 m (a softened form of
/// Hopkins' rule of 4 days a degree; common practice, no source). No latitude known: 45 degrees.
YardCalendar yardCalendar(const apiary::Season& season, const base::YardId& yard, base::Date day);

/// Mean of daily minimum and maximum over the week up to the day; nullopt without weather.
std::optional<double> meanTemperature(const apiary::Season& season, const base::YardId& yard,
                                      base::Date day);

}  // namespace outyard::strength
