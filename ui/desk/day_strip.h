// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFont>
#include <QRectF>
#include <QString>

#include "core/planning/due.h"
#include "ui/adapt/units.h"
#include "ui/print/palette.h"
#include "ui/widgets/day_words.h"

class QPainter;

/// The strip of days of a yard: for each day a hive that is shut, has its lid lifted or a comb
/// drawn out, with the day's warmth and rain. Shapes carry the meaning, colour only follows.
namespace outyard::desk {

using widgets::dayWords;
using widgets::isWet;
using widgets::Warmth;
using widgets::warmthOf;
using widgets::warmthWords;

/// The whole strip in words: which days do for what.
QString stripWords(const planning::YardDays& days, const adapt::Units& units);

/// Height of a strip in that font, in the font's pixels.
double stripHeight(const QFont& font);
/// Paints the days over the whole width. The font must have a pixel size.
void paintStrip(QPainter& painter, const QRectF& area, const planning::YardDays& days,
                const QFont& font, const print::Palette& palette, const adapt::Units& units);
/// The hive of one kind of day, for the legend: in a box so high.
void paintDayMark(QPainter& painter, const QRectF& box, Warmth kind, const print::Palette& palette);
/// Which day of the strip lies under a point; -1 beside it.
int dayAt(const QRectF& area, const planning::YardDays& days, const QPointF& point);

}  // namespace outyard::desk
