// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>

#include "ui/adapt/units.h"
#include "ui/rounds/round_board.h"
#include "ui/widgets/work_words.h"

/// The board in words.
namespace outyard::rounds {

// The words of work that every place uses.
using widgets::cautionTexts;
using widgets::countText;
using widgets::itemText;
using widgets::percentText;
using widgets::reasonText;
using widgets::shortDay;
using widgets::weekDay;
using widgets::windowText;
using widgets::workText;
using widgets::yardName;

/// "2.4 h".
QString hoursText(double hours);
/// "12 km", "7 mi".
QString driveText(double km, const adapt::Units& units);
/// "12 km, 16 min".
QString legText(const planning::RoundStop& stop, const adapt::Units& units);
/// "12 km, 16 min to drive", "first stop" where there is no way to it.
QString wayText(const planning::RoundStop& stop, const adapt::Units& units);
/// "combs", "lid only", "too cold", "wet", "weather?".
QString warmthText(const planning::YardDay* day);
/// "Sat 25 Apr: warm enough to take combs out, up to 16 °C, 2 mm of rain".
QString warmthSentence(base::Date date, const planning::YardDay* day, const adapt::Units& units);
/// "6 pieces of work", "1 piece of work", "no work yet".
QString countOfWork(std::size_t count);
/// All of a stop, for tool tips and screen readers.
QString stopSentence(const RoundBoard& board, const BoardDay& day, const BoardStop& stop,
                     const apiary::Season& season, const adapt::Units& units);
QString daySentence(const RoundBoard& board, const BoardDay& day, const apiary::Season& season,
                    const adapt::Units& units);

}  // namespace outyard::rounds
