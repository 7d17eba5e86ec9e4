// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QStringList>
#include <optional>

#include "ui/pairs/plan_runner.h"

namespace outyard::pairs {

/// Foul brood that is suspected, a line for each sign: nothing goes in or out of those yards.
QStringList foulBroodLines(const planning::BoostProblem& problem);
/// What stands above the plan: foul brood, weather, gear, and why nobody is helped; like notes are
/// put in one line.
QStringList planNotes(const PlanOutcome& outcome, const apiary::Season& season);
/// The first day on which the weather lets work be done that it forbids on the plan's day; nullopt
/// when it forbids nothing or no such day is known.
std::optional<base::Date> firstWarmDay(const PlanOutcome& outcome);
/// "25–27 Apr 2026, 1 May 2026": days in rows.
QString daysText(const std::vector<base::Date>& days);
QString yardText(const apiary::Season& season, const base::YardId& yard);
/// "4 of 10 colonies are small but sound: …": what step 1 begins with.
QString needSum(const planning::BoostPlan& plan);

}  // namespace outyard::pairs
