// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <optional>
#include <utility>

#include "core/apiary/season.h"
#include "core/base/message.h"
#include "core/planning/boost_figures.h"

namespace outyard::planning {

struct DayWeather {
  double tminC = 0, tmaxC = 0;
  std::optional<double> rainMm, windMs;
  apiary::WeatherKind kind = apiary::WeatherKind::Normal;
};

/// The weather of a yard, day by day: observed before forecast (the latest issued) before normal
/// (of the same month and day of any year). A yard without rows takes those of the nearest yard
/// within 30 km. The rain of a normal day is left out: it is the mean of dry and wet days and says
/// of no day that it is wet.
class YardWeather {
 public:
  YardWeather(const apiary::Season& season, const base::YardId& yard);
  [[nodiscard]] std::optional<DayWeather> on(base::Date day) const;

 private:
  bool read(const apiary::Season& season, const base::YardId& yard);
  struct Row {
    DayWeather weather;
    std::optional<base::Date> issued;
  };
  std::map<base::Date, Row> m_days;
  std::map<std::pair<int, int>, DayWeather> m_normals;  // by month and day
};

/// Great-circle distance in km; nullopt when either place is not recorded.
std::optional<double> distanceKm(const apiary::Yard& a, const apiary::Yard& b);

/// What a piece of work asks of the weather.
struct WeatherNeed {
  double minC = 8;
  bool dry = false, calm = false;
  bool noColdAfter = false;  ///< no hard night, no cold spell in the days after
};
WeatherNeed weatherNeed(apiary::Method method, const BoostFigures& figures);

/// Why the work cannot be done on the day, ending with the first day that will do; nullopt when it
/// can, and when nothing is known of the day.
std::optional<base::Message> weatherBar(const YardWeather& weather, apiary::Method method,
                                        base::Date day, const BoostFigures& figures);

}  // namespace outyard::planning
