// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/mark_painter.h"

#include <QPainter>
#include <cmath>

#include "ui/print/painter.h"
#include "ui/widgets/shape_bounds.h"
#include "ui/widgets/theme.h"

namespace outyard::widgets {

Mark makeMark(const sheet::MarkInput& input) {
  Mark mark;
  mark.shapes = sheet::hiveMark(input);
  mark.boundsMm = boundsOf(mark.shapes);
  return mark;
}

void paintMark(QPainter& painter, const Mark& mark, double widthPx, const QPalette& palette) {
  painter.save();
  const double scale = widthPx / sheet::kMarkWidthMm;
  painter.scale(scale, scale);
  painter.setRenderHint(QPainter::Antialiasing);
  print::paintShapes(painter, mark.shapes, drawingPalette(palette));
  painter.restore();
}

QPixmap markPixmap(sheet::MarkInput input, int heightPx, const QPalette& palette, double ratio) {
  input.entranceDeg = 180;
  const Mark mark = makeMark(input);
  const double scale = heightPx / mark.boundsMm.height();
  const int width = static_cast<int>(std::ceil(mark.boundsMm.width() * scale));
  QPixmap pixmap(QSizeF(width * ratio, heightPx * ratio).toSize());
  pixmap.setDevicePixelRatio(ratio);
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  painter.translate(-mark.boundsMm.left() * scale, -mark.boundsMm.top() * scale);
  paintMark(painter, mark, sheet::kMarkWidthMm * scale, palette);
  return pixmap;
}

}  // namespace outyard::widgets
