// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <optional>
#include <vector>

#include "core/apiary/state.h"
#include "core/forecast/colony_forecast.h"
#include "core/strength/expected_look.h"

/// What a look on a day is expected to find, from the forecast.
namespace outyard::forecast {

/// The figures of a day between two rows, on a straight line; nullopt outside the rows.
std::optional<ForecastDay> dayBetween(const std::vector<ForecastDay>& days, base::Date date);

/// In seams and combs with brood of the frames in which the colony sits.
strength::ExpectedLook expectedLook(const apiary::Season& season, const apiary::HiveState& hive,
                                    const base::ColonyId& colony, const ForecastDay& day);

/// Colonies that live in the yard on the day, by hive.
std::vector<base::ColonyId> coloniesIn(const apiary::Season& season, const base::YardId& yard,
                                       base::Date day);

/// Of all colonies that live in a yard on `known` (records after it are not used), what a look on
/// `day` (the same or later) would find. Cancelled: empty.
std::map<base::ColonyId, strength::ExpectedLook> expectedLooks(const apiary::Season& season,
                                                               const base::YardId& yard,
                                                               base::Date known, base::Date day,
                                                               int threads,
                                                               base::Progress& progress);

}  // namespace outyard::forecast
