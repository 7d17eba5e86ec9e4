// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>
#include <vector>

#include "core/forecast/assimilation.h"
#include "core/forecast/colony_forecast.h"

/// What a forecast and a what-if run share: a colony brought to a day, and its figures there.
namespace outyard::forecast {

/// The figures of every member on one day; member k has the same draws in every run.
struct MemberDay {
  base::Date date;
  std::vector<float> bees, seen, sealed, brood, honeyKg, mites, mitesPer100;
};

/// A stream of chance with a name: the result does not depend on what else is computed (FNV-1a).
std::uint64_t streamOf(std::string_view name, std::uint64_t seed);

/// Median and central 80 %; the values are put in another order.
Band bandOf(std::vector<double>& values);

/// The figures of one day from the ensemble at rest.
MemberDay membersOn(const ColonyEnsemble& ensemble, base::Date date);
ForecastDay bandsOf(const MemberDay& day);

/// Weather begins on one fixed day for all colonies of a yard, so that each sees the same draws.
base::Date weatherStart(base::Date from);

/// Runs the days from now (the ensemble is at rest before that day) to `to`.
void runTo(ColonyEnsemble& ensemble, const YardWeather& weather, base::Date& now, base::Date to);

/// A careful count's own error, standard deviation of the logarithm (single readers 5 to 15 % and
/// their differences: Bartlett et al. 2024), so that the band of `seen` holds counts, not truths.
inline constexpr double kCountError = 0.17;

}  // namespace outyard::forecast
