// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <memory>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/progress.h"
#include "core/forecast/colony_forecast.h"
#include "ui/adapt/units.h"
#include "ui/charts/course_data.h"

/// Courses made from the season: on any thread, from values alone.
namespace outyard::charts {

/// What can be tried out on paper before it is done.
enum class Trial { AsItIs, Chamber, Fed, Swarmed, Requeened, Boosted };
inline constexpr Trial kTrials[] = {Trial::AsItIs,  Trial::Chamber,   Trial::Fed,
                                    Trial::Swarmed, Trial::Requeened, Trial::Boosted};
QString trialText(Trial trial);

struct CourseAsk {
  base::ColonyId colony;
  QString title;
  base::Date today;
  std::vector<Tick> ticks;  ///< the journal, in the words of the place that asks
  adapt::Units units;
  Trial trial = Trial::AsItIs;
  int daysAhead = 365;
  int stepDays = 3;
};
/// The course of a colony: as it was thought of day by day, and as it is expected. Cancelled or
/// not living on the day: null.
std::shared_ptr<CourseData> colonyCourse(const apiary::Season& season, const CourseAsk& ask,
                                         base::Progress& progress);

/// Adds what the trial gives, with the difference to leaving it as it is in words.
void addTrial(CourseData& data, const apiary::Season& season, const CourseAsk& ask,
              base::Progress& progress);

/// The weather of a yard as a lane: what was observed and forecast, else what is usual.
std::vector<WeatherPoint> weatherCourse(const apiary::Season& season, const base::YardId& yard,
                                        base::Date from, base::Date to, base::Date today,
                                        const adapt::Units& units);

/// One colony shows mites on 100 bees, as washes count them; many show all their mites.
enum class LaneSet { Colony, Sum };
/// Lanes without values, in their order: bees, brood, stores, mites.
std::vector<Lane> emptyLanes(const adapt::Units& units, LaneSet set = LaneSet::Colony);
/// Puts a forecast's days into the lanes.
void addDays(std::vector<Lane>& lanes, const std::vector<forecast::ForecastDay>& days,
             const adapt::Units& units, Band Series::*where, LaneSet set = LaneSet::Colony);

/// The sum of many colonies: medians add; of the bands two parts in five move together (weather
/// and flow are shared), the rest evens out (our assumption).
std::vector<forecast::ForecastDay> sumOf(
    const std::vector<const forecast::ColonyForecast*>& colonies);

}  // namespace outyard::charts
