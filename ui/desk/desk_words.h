// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>

#include "core/planning/desk_facts.h"
#include "ui/adapt/units.h"

/// The desk's facts in words.
namespace outyard::desk {

QString yardName(const apiary::Season& season, const base::YardId& yard);
/// "25 Apr": within the two weeks the year goes without saying.
QString dayText(base::Date day);
/// "25 Apr – 2 May", "by 2 May" once it has begun, "since 20 Apr" when it is over.
QString windowText(const planning::DueTask& task, base::Date today);
/// "likely, 80 %"; empty for what is certain or was planned.
QString chanceText(const planning::DueTask& task);
/// "Add a super": what falls due or was planned, as work to be done.
QString workName(const planning::DueTask& task);
/// "Feed, 4 l syrup 1:1".
QString workText(const planning::DueTask& task, const adapt::Units& units);
QString reasonText(const planning::DueTask& task);
QStringList cautionTexts(const planning::DueTask& task);
/// All of one piece of work in a sentence, for tool tips and screen readers.
QString sentence(const planning::DueTask& task, const apiary::Season& season, base::Date today,
                 const adapt::Units& units);
/// One letter for what presses, as the marks have them where they mean the same.
QChar riskLetter(const planning::DueTask& task);
QString riskMeaning(QChar letter);
/// "3 × Add a box · 2 × Feed": the work of a yard at a glance, the most frequent first.
QString kindsText(const planning::DueList& due, const std::vector<std::size_t>& tasks);
/// "super, Langstroth medium", "syrup 1:1".
QString itemText(const std::string& item);
/// "4", "12.5 l", "3 kg" in the user's units.
QString countText(double count, const std::optional<apiary::Unit>& unit, const adapt::Units& units);
/// "12 excluders needed, 9 at hand".
QString needText(const planning::RoundItem& item, const adapt::Units& units);
/// "Of your last 40 looks 33 fell within what was expected."
QString trustText(const planning::Trust& trust);

}  // namespace outyard::desk
