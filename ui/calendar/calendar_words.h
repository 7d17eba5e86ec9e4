// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>

#include "core/apiary/season.h"
#include "core/planning/season_calendar.h"

/// The calendar in words: what the board says under the pointer, beside the cursor and to a screen
/// reader, and what the list of it says.
namespace outyard::calendar {

QString yardName(const apiary::Season& season, const base::YardId& yard);
QString weekText(base::Date monday);  ///< "27 Apr to 3 May"
/// The content of a cell, a line each; one line that says so when there is nothing.
QStringList cellLines(const planning::SeasonCalendar& calendar, std::size_t yard, std::size_t week);
/// Work due in the cell with its hives, a line for each kind, the most first.
QStringList workLines(const planning::SeasonCalendar& calendar, std::size_t yard, std::size_t week);
QString hoursText(const planning::SeasonCalendar& calendar, std::size_t week);
/// What shifted dates would do, as lines.
QStringList changeLines(const planning::CalendarChange& change);

}  // namespace outyard::calendar
