// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPalette>
#include <QPixmap>
#include <QSizeF>

#include "core/sheet/marks.h"

class QPainter;

namespace outyard::widgets {

/// A hive's mark as shapes with the box that holds them, so that a view lays out without drawing.
struct Mark {
  sheet::Shapes shapes;
  QRectF boundsMm;
};
Mark makeMark(const sheet::MarkInput& input);

/// Paints the mark around the origin, `widthPx` wide for an unturned box.
void paintMark(QPainter& painter, const Mark& mark, double widthPx, const QPalette& palette);
/// For tables and lists: entrance down, `heightPx` high.
QPixmap markPixmap(sheet::MarkInput input, int heightPx, const QPalette& palette, double ratio);

}  // namespace outyard::widgets
