// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QImage>
#include <QPainter>
#include <QPen>
#include <QRectF>

#include "core/sheet/yard_sheet.h"
#include "ui/print/palette.h"

/// Paint once: map, lists, hive view, preview, PDF, printer and tests all draw with these.
namespace outyard::print {

/// Draws in the painter's own coordinates, one unit to a millimetre: the caller scales. Hatches are
/// lines, so that they stay sharp and vector at every size. Leaves the painter as it was.
void paintShapes(QPainter& painter, const sheet::Shapes& shapes, const Palette& palette);

/// A pen for strokes where `unitsPerMm` of the painter's units make a millimetre.
QPen strokePen(const QColor& colour, double widthMm, bool dashed, double unitsPerMm = 1);

/// The whole page, scaled to fit the target with its proportions kept.
void paintPage(QPainter& painter, const QRectF& target, const sheet::SheetPage& page,
               const Palette& palette);

/// The page as a picture, for previews and tests.
QImage renderPage(const sheet::SheetPage& page, double dotsPerInch,
                  const Palette& palette = Palette::paper());

}  // namespace outyard::print
