// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFont>
#include <QRectF>
#include <QString>

#include "core/planning/due.h"
#include "ui/adapt/units.h"
#include "ui/print/palette.h"

class QPainter;

/// The strip of days of a yard: for each day a hive that is shut, has its lid lifted or a comb
/// drawn out, with the day's warmth and rain. Shapes carry the meaning, colour only follows.
namespace outyard::desk {

enum class DayKind { Unknown, Shut, Lid, Combs };
DayKind kindOf(const planning::YardDay& day);
/// "Sat 25 Apr: warm enough to take combs out, up to 16 °C, 2 mm of rain".
QString dayWords(const planning::YardDay& day, const adapt::Units& units);
/// The whole strip in words: which days do for what.
QString stripWords(const planning::YardDays& days, const adapt::Units& units);
QString kindWords(DayKind kind);

/// Height of a strip in that font, in the font's pixels.
double stripHeight(const QFont& font);
/// Paints the days over the whole width. The font must have a pixel size.
void paintStrip(QPainter& painter, const QRectF& area, const planning::YardDays& days,
                const QFont& font, const print::Palette& palette, const adapt::Units& units);
/// The hive of one kind of day, for the legend: in a box so high.
void paintDayMark(QPainter& painter, const QRectF& box, DayKind kind,
                  const print::Palette& palette);
/// Which day of the strip lies under a point; -1 beside it.
int dayAt(const QRectF& area, const planning::YardDays& days, const QPointF& point);

}  // namespace outyard::desk
