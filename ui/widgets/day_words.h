// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/planning/due.h"
#include "ui/adapt/units.h"

/// What a day is good for in a yard, in the words that every place uses.
namespace outyard::widgets {

enum class Warmth { Unknown, Shut, Lid, Combs };
Warmth warmthOf(const planning::YardDay& day);
/// "warm and dry enough to take combs out".
QString warmthWords(Warmth warmth);
/// "Sat 25 Apr: warm and dry enough to take combs out, up to 16 °C, 2 mm of rain".
QString dayWords(const planning::YardDay& day, const adapt::Units& units);
/// Rain worth a drop.
bool isWet(const planning::YardDay& day);

}  // namespace outyard::widgets
