// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/weather.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/forecast/day_length.h"
#include "core/forecast/exact_math.h"
#include "core/forecast/kernel.h"

namespace outyard::forecast {
namespace {

using apiary::WeatherDay;
using apiary::WeatherKind;
using base::Date;

constexpr double kPi = 3.14159265358979323846;
constexpr double kDayHalfRangeC = 5.5;
constexpr double kPersistence = 0.75;  ///< of a day's anomaly, our assumption
constexpr double kAnomalyC = 4.0;      ///< standard deviation, our assumption
constexpr double kPlaceOffsetC = 2.5;  ///< of a place without any weather
constexpr double kMostKm = 30;

struct Rows {
  std::map<int, WeatherOfDay> observed;                   // by days since 1970
  std::map<int, std::pair<Date, WeatherOfDay>> forecast;  // latest issued
  std::map<int, std::pair<int, WeatherOfDay>> normal;     // by month * 100 + day: count, sum
};

Rows rowsOf(const apiary::Season& season, const base::YardId& yard, const WeatherAsk& ask) {
  Rows rows;
  const auto& table = season.table<WeatherDay>();
  const std::string prefix = yard.str() + '\x1F';
  for (auto it = table.lower_bound(prefix); it != table.end(); ++it) {
    const WeatherDay& w = it->second;
    if (w.yard != yard) break;
    const WeatherOfDay day{w.tminC, w.tmaxC, w.rainMm.value_or(0)};
    if (w.kind == WeatherKind::Observed) {
      if (w.date <= ask.asOf || ask.allKnown) rows.observed[w.date.days()] = day;
    } else if (w.kind == WeatherKind::Forecast) {
      // Without a day of issue a forecast counts as issued on the eve of its first day.
      const Date issued = w.issued.value_or(w.date.plusDays(-1));
      if (issued > ask.asOf) continue;
      auto& best = rows.forecast[w.date.days()];
      if (best.first <= issued) best = {issued, day};
    } else {
      auto& n = rows.normal[w.date.month() * 100 + w.date.day()];
      ++n.first;
      n.second.tminC += day.tminC;
      n.second.tmaxC += day.tmaxC;
      n.second.rainMm += day.rainMm;
    }
  }
  return rows;
}

class Climate {
 public:
  Climate(const Rows& rows, double latitude) : m_rows(rows), m_latitude(latitude) {}
  /// Mean of the day with the place's normals, else the latitude's.
  [[nodiscard]] double meanC(Date d) const {
    const auto it = m_rows.normal.find(d.month() * 100 + d.day());
    if (it != m_rows.normal.end()) {
      return (it->second.second.tminC + it->second.second.tmaxC) / 2 / it->second.first;
    }
    return normalMeanC(m_latitude, d.dayOfYear());
  }
  [[nodiscard]] double halfRangeC(Date d) const {
    const auto it = m_rows.normal.find(d.month() * 100 + d.day());
    if (it != m_rows.normal.end()) {
      return (it->second.second.tmaxC - it->second.second.tminC) / 2 / it->second.first;
    }
    return kDayHalfRangeC;
  }
  [[nodiscard]] bool ownNormals() const { return m_rows.normal.size() > 300; }

 private:
  const Rows& m_rows;
  double m_latitude;
};

struct Offset {
  double meanC = 0, spreadC = kPlaceOffsetC;
};

/// How much warmer the place has been than the normals over the last sixty observed days: a place
/// keeps most of such a difference.
Offset offsetOf(const Rows& rows, const Climate& climate, Date asOf) {
  Offset out;
  if (climate.ownNormals()) out.spreadC = 0.8;
  double sum = 0;
  int n = 0;
  for (auto it = rows.observed.lower_bound(asOf.days() - 60); it != rows.observed.end(); ++it) {
    if (it->first > asOf.days()) break;
    const Date d = Date::fromDays(it->first);
    sum += it->second.meanC() - climate.meanC(d);
    ++n;
  }
  if (n >= 10) {
    const double keep = climate.ownNormals() ? 0.3 : 0.75;
    out.meanC = keep * sum / n;
    out.spreadC = climate.ownNormals() ? 0.8 : 1.2;
  }
  return out;
}

double normalDraw(base::Random& random) {
  for (;;) {
    const double u = 2 * random.uniform() - 1, v = 2 * random.uniform() - 1;
    const double s = u * u + v * v;
    if (s > 0 && s < 1) return u * std::sqrt(-2 * exactLog(s) / s);
  }
}

}  // namespace

double normalMeanC(double latitudeDeg, int dayOfYear) {
  const double lat = latitudeDeg < 0 ? -latitudeDeg : latitudeDeg;
  // Beyond 47 degrees bees are kept where it is mild for the latitude: the parabola would fall to
  // -3 degrees of yearly mean at 60, places there have about +4.
  const double south = std::min(lat, 47.0);
  const double mean = 27 - 0.0083 * south * south - 0.38 * (lat - south);
  const double half = 4 + 0.18 * south;
  const int day = northernDay(latitudeDeg, dayOfYear);
  return mean + half * exactCos(2 * kPi * (day - 202) / 365.0);  // warmest about 21 July
}

double distanceKm(double lat1, double lon1, double lat2, double lon2) {
  const double rad = kPi / 180;
  const double a = exactSin((lat2 - lat1) * rad / 2), b = exactSin((lon2 - lon1) * rad / 2);
  const double h = a * a + exactCos(lat1 * rad) * exactCos(lat2 * rad) * b * b;
  return 2 * 6371.0 * std::asin(std::sqrt(std::min(1.0, h)));  // only for choosing a yard
}

std::optional<base::YardId> weatherSource(const apiary::Season& season, const base::YardId& yard) {
  const auto hasRows = [&](const base::YardId& id) {
    const std::string prefix = id.str() + '\x1F';
    const auto& table = season.table<WeatherDay>();
    const auto it = table.lower_bound(prefix);
    return it != table.end() && it->second.yard == id;
  };
  if (hasRows(yard)) return yard;
  const apiary::Yard* own = season.yard(yard);
  if (!own || !own->latitude || !own->longitude) return std::nullopt;
  std::optional<base::YardId> best;
  double bestKm = kMostKm;
  for (const auto& [key, other] : season.table<apiary::Yard>()) {
    if (!other.latitude || !other.longitude || !hasRows(other.yard)) continue;
    const double km =
        distanceKm(*own->latitude, *own->longitude, *other.latitude, *other.longitude);
    if (km <= bestKm) {
      bestKm = km;
      best = other.yard;
    }
  }
  return best;
}

const WeatherOfDay& WeatherPaths::at(int day, int scenario) const {
  return m_weather.at(static_cast<std::size_t>(day) * kBlock + static_cast<std::size_t>(scenario));
}

WeatherPaths WeatherPaths::of(const apiary::Season& season, const WeatherAsk& ask) {
  WeatherPaths paths;
  paths.m_from = ask.from;
  paths.m_days = std::max(0, ask.to - ask.from);
  if (const apiary::Yard* y = season.yard(ask.yard)) paths.m_latitude = y->latitude.value_or(45);
  const auto source = weatherSource(season, ask.yard);
  const Rows rows = source ? rowsOf(season, *source, ask) : Rows{};
  const Climate climate(rows, paths.m_latitude);
  const Offset offset = offsetOf(rows, climate, ask.asOf);
  paths.m_weather.resize(static_cast<std::size_t>(paths.m_days) * kBlock);
  for (int s = 0; s < kBlock; ++s) {
    base::Random random(ask.seed * 1000003ULL + static_cast<std::uint64_t>(s));
    const double place = offset.meanC + offset.spreadC * normalDraw(random);
    double anomaly = kAnomalyC * normalDraw(random);
    bool wet = false;
    for (int d = 0; d < paths.m_days; ++d) {
      const Date date = ask.from.plusDays(d);
      WeatherOfDay& w =
          paths.m_weather[static_cast<std::size_t>(d) * kBlock + static_cast<std::size_t>(s)];
      const double normal = climate.meanC(date) + place;
      // The same number of draws every day, so that a known day shifts nothing behind it.
      const double z = normalDraw(random), z2 = normalDraw(random);
      const double u = random.uniform(), amount = random.uniform();
      anomaly = kPersistence * anomaly + kAnomalyC * std::sqrt(1 - kPersistence * kPersistence) * z;
      wet = u < (wet ? 0.5 : 0.25);
      if (const auto o = rows.observed.find(date.days()); o != rows.observed.end()) {
        w = o->second;
        anomaly = w.meanC() - normal;
        wet = w.rainMm >= 1;
        if (s == 0) ++paths.m_observed;
      } else if (const auto f = rows.forecast.find(date.days()); f != rows.forecast.end()) {
        const double error = (0.8 + 0.35 * (date - f->second.first)) * z2;
        w = f->second.second;
        w.tminC += error;
        w.tmaxC += error;
        anomaly = w.meanC() - normal;
        wet = w.rainMm >= 1;
      } else {
        const double half = climate.halfRangeC(date) * (wet ? 0.7 : 1.1);
        const double mean = normal + anomaly;
        w.tminC = mean - half;
        w.tmaxC = mean + half;
        w.rainMm = wet ? -6 * exactLog(1 - amount * 0.999) : 0;
      }
    }
  }
  return paths;
}

}  // namespace outyard::forecast
