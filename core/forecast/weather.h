// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/random.h"

namespace outyard::forecast {

/// One day's weather of one scenario.
struct WeatherOfDay {
  double tminC = 0, tmaxC = 0, rainMm = 0;
  [[nodiscard]] double meanC() const { return (tminC + tmaxC) / 2; }
};

/// Daily mean, half range of the day and spread of a place without a station, from its latitude.
/// Our assumption, between maritime and continental places: mean of the year 27 - 0.0083 lat^2,
/// half range of the year 4 + 0.18 lat, from 47 degrees on 0.38 C less a degree and no wider; the
/// offset of a real place from it has a standard deviation of about 3 degrees C.
double normalMeanC(double latitudeDeg, int dayOfYear);

/// What may be known of the weather.
struct WeatherAsk {
  base::YardId yard;
  base::Date from, to;    ///< days [from, to)
  base::Date asOf;        ///< observed days after it are not used unless allKnown
  bool allKnown = false;  ///< later observed weather is let in (for tests of a past forecast)
  std::uint64_t seed = 1;
};

/// Weather of a yard for a range of days in kBlock scenarios: observed where known, then forecasts
/// issued by then (with an error that grows with the lead), then drawn about the normals (rows of
/// kind "normal" by month and day of any year, else the latitude's) with an autoregressive anomaly.
/// A yard without weather takes the nearest within 30 km.
class WeatherPaths {
 public:
  static WeatherPaths of(const apiary::Season& season, const WeatherAsk& ask);
  [[nodiscard]] base::Date from() const { return m_from; }
  [[nodiscard]] int days() const { return m_days; }
  [[nodiscard]] const WeatherOfDay& at(int day, int scenario) const;
  [[nodiscard]] double latitude() const { return m_latitude; }
  /// Days of the range whose weather was observed.
  [[nodiscard]] int observedDays() const { return m_observed; }

 private:
  base::Date m_from;
  int m_days = 0, m_observed = 0;
  double m_latitude = 45;
  std::vector<WeatherOfDay> m_weather;
};

/// The yard whose weather rows serve this yard: itself, or the nearest with rows within 30 km.
std::optional<base::YardId> weatherSource(const apiary::Season& season, const base::YardId& yard);
/// Great-circle distance in km (haversine, Earth radius 6,371 km).
double distanceKm(double lat1, double lon1, double lat2, double lon2);

}  // namespace outyard::forecast
