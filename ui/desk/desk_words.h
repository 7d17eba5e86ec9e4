// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>

#include "core/planning/desk_facts.h"
#include "ui/adapt/units.h"
#include "ui/widgets/work_words.h"

/// The desk's facts in words.
namespace outyard::desk {

// The words of work that every place uses.
using widgets::cautionTexts;
using widgets::countText;
using widgets::itemText;
using widgets::reasonText;
using widgets::shortDay;
using widgets::windowText;
using widgets::workName;
using widgets::workText;
using widgets::yardName;

/// "likely, 80 %"; empty for what is certain or was planned.
QString chanceText(const planning::DueTask& task);
/// All of one piece of work in a sentence, for tool tips and screen readers.
QString sentence(const planning::DueTask& task, const apiary::Season& season, base::Date today,
                 const adapt::Units& units);
/// One letter for what presses, as the marks have them where they mean the same.
QChar riskLetter(const planning::DueTask& task);
QString riskMeaning(QChar letter);
/// "3 × Add a box · 2 × Feed": the work of a yard at a glance, the most frequent first.
QString kindsText(const planning::DueList& due, const std::vector<std::size_t>& tasks);
/// "12 excluders needed, 9 at hand".
QString needText(const planning::RoundItem& item, const adapt::Units& units);
/// "Of your last 40 looks 33 fell within what was expected."
QString trustText(const planning::Trust& trust);

}  // namespace outyard::desk
