// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <optional>
#include <string>

#include "core/planning/due.h"
#include "core/planning/rounds.h"
#include "ui/adapt/units.h"

/// Work that falls due or is planned, and the gear for it, in the words that every place uses.
namespace outyard::widgets {

/// The yard's name, or its id where it has none.
QString yardName(const apiary::Season& season, const base::YardId& yard);
/// "25 Apr": within some weeks the year goes without saying.
QString shortDay(base::Date day);
/// "Sat 25 Apr".
QString weekDay(base::Date day);
/// "25 Apr – 2 May", "by 2 May" once it has begun, "overdue since 20 Apr" when it is over.
QString windowText(const planning::DueTask& task, base::Date today);
/// "80 %"; empty for what is certain or was planned.
QString percentText(const planning::DueTask& task);
/// "Add a super": what falls due or was planned, as work to be done.
QString workName(const planning::DueTask& task);
/// "Feed, 4 l syrup 1:1".
QString workText(const planning::DueTask& task, const adapt::Units& units);
/// The same of planned work as it stands in the season.
QString plannedText(const apiary::Task& task, const adapt::Units& units);
QString reasonText(const planning::DueTask& task);
QStringList cautionTexts(const planning::DueTask& task);
/// "super, Langstroth medium", "syrup 1:1".
QString itemText(const std::string& item);
/// "4", "12.5 l", "3 kg" in the user's units.
QString countText(double count, const std::optional<apiary::Unit>& unit, const adapt::Units& units);

}  // namespace outyard::widgets
