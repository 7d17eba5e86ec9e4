// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QLineF>
#include <QList>
#include <QPointF>
#include <QRectF>

#include "core/sheet/shape.h"

namespace outyard::print {

inline constexpr double kHatchLineMm = 0.16, kHatchDotMm = 0.17;

/// The marks of a hatch across a rectangle, in millimetres: lines to be stroked kHatchLineMm wide,
/// or middles of dots of the radius kHatchDotMm.
struct HatchMarks {
  QList<QLineF> lines;
  QList<QPointF> dots;
};

/// All marks start from a grid fixed in the drawing, so that the hatch runs through neighbouring
/// cells.
HatchMarks hatchMarks(const QRectF& r, sheet::Hatch kind);

}  // namespace outyard::print
