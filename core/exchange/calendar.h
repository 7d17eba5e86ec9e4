// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <string>

#include "core/apiary/season.h"
#include "core/planning/due.h"

namespace outyard::exchange {

using Word = std::function<std::string(const base::Message&)>;

/// Visits and what falls due as an iCalendar file (RFC 5545): a visit is an event at its time (or
/// the whole day), and what falls due is one event for each yard and day with the pieces of work in
/// its description. Times are civil ones, without a zone: those of the yard. Visits before `from`
/// are left out. `nowUtc` ("YYYY-MM-DDTHH:MM:SSZ") is the stamp of the file.
std::string calendarText(const apiary::Season& season, const planning::DueList& due,
                         base::Date from, const std::string& nowUtc, const Word& word);

/// The visits from one day to another alone, in the same way: the round of a day.
std::string visitsCalendar(const apiary::Season& season, base::Date from, base::Date to,
                           const std::string& nowUtc, const Word& word);

/// Yards and hives as GeoJSON (RFC 7946): points, longitude first. A hive's point is worked out
/// from its place on the drawing, whose middle is taken as the yard's position; a yard without a
/// position has no geometry, nor have its hives.
std::string geoJsonText(const apiary::Season& season, base::Date day);

}  // namespace outyard::exchange
