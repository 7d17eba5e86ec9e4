// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/forecast/drivers.h"
#include "core/forecast/history.h"

namespace outyard::forecast {

inline constexpr int kMembers = 256;

/// Median and central 80 % band.
struct Band {
  double median = 0, low = 0, high = 0;
};

/// One day of a forecast. bees = all living adults; seen = what a careful full count would read
/// that day; cells are worker cells as a reader of the comb would count them (a sealed patch is
/// read as full though a fifth of its cells are not sealed).
struct ForecastDay {
  base::Date date;
  Band bees, seen, sealed, brood, honeyKg, mites;
  /// Mites on the bees of 100, as a wash counts them.
  Band mitesPer100{};
};

/// A look that lay beyond the 95 % band of what was expected.
struct Surprise {
  base::Date date;
  bool bees = false;              ///< about bees, else about brood or stores
  bool fewer = false;             ///< fewer than expected
  double expected = 0, seen = 0;  ///< bees, cells or kg
  bool stores = false;            ///< about stores
};

/// One look at the bees held against what was expected of it on the day before anything was known
/// of it: "of your last 40 looks 33 fell within".
struct LookCheck {
  base::Date date;
  Band expected;  ///< of the count, the error of this way of looking included
  double seen = 0;
  int daysSince = 0;  ///< days since the look before
  [[nodiscard]] bool within() const { return seen >= expected.low && seen <= expected.high; }
};

struct ColonyForecast {
  base::ColonyId colony;
  base::HiveId hive;
  std::vector<ForecastDay> days;
  std::vector<Surprise> surprises;
  std::vector<ForecastDay> past;  ///< days before `from`, when they were asked for
  std::vector<LookCheck> checks;  ///< looks at the bees but the first, oldest first
};

struct ForecastAsk {
  base::Date from, to;  ///< records dated after `from` are not used
  int stepDays = 7;     ///< rows: from, every step, to
  bool knownWeather = false;
  std::uint64_t seed = 1;
  int members = kMembers;
  /// Also the course from this day (or the first look) to `from`, every stepDays: each day as it
  /// was thought of when all up to that day had been seen.
  std::optional<base::Date> pastFrom;
  /// From `from` on the keeper neither feeds nor treats: what must be known to say when to do so.
  bool leftAlone = false;
};

/// What one yard's colonies share: weather scenarios and drivers from the earliest start on.
struct YardWeather {
  base::Date from;
  Drivers drivers;
};
YardWeather yardWeather(const apiary::Season& season, const base::YardId& yard, base::Date start,
                        const ForecastAsk& ask, const Figures& figures);

/// Forecast from a history with weather that reaches from its start (or later) to ask.to.
ColonyForecast forecastHistory(const History& history, double latitudeDeg,
                               const YardWeather& weather, const Figures& figures,
                               const ForecastAsk& ask);

/// Forecast of one colony. Deterministic for a seed, whatever else is computed beside it: each
/// colony has a stream of its own, named by its id. nullopt when it does not live on `from`.
std::optional<ColonyForecast> forecastColony(const apiary::Season& season,
                                             const base::ColonyId& colony, const ForecastAsk& ask);

/// All colonies that live in the yards on ask.from, on as many threads as given, in order of hive
/// and colony. Cancelled: an empty list.
std::vector<ColonyForecast> forecastColonies(const apiary::Season& season,
                                             const std::vector<base::ColonyId>& colonies,
                                             const ForecastAsk& ask, int threads,
                                             base::Progress& progress);

}  // namespace outyard::forecast
