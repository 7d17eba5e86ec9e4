// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/hatch.h"

#include <algorithm>
#include <cmath>

namespace outyard::print {

namespace {

using sheet::Hatch;

double first(double from, double step) {
  return (std::floor(from / step) + 0.5) * step;
}

void diagonals(QList<QLineF>& lines, const QRectF& r, double step, bool rising) {
  // x + y = c (rising to the right, since y points down) or x - y = c
  const double low = rising ? r.left() + r.top() : r.left() - r.bottom();
  const double high = rising ? r.right() + r.bottom() : r.right() - r.top();
  for (double c = first(low, step); c < high; c += step) {
    const double x0 = rising ? std::max(r.left(), c - r.bottom()) : std::max(r.left(), c + r.top());
    const double x1 =
        rising ? std::min(r.right(), c - r.top()) : std::min(r.right(), c + r.bottom());
    if (x1 <= x0) continue;
    lines << QLineF(x0, rising ? c - x0 : x0 - c, x1, rising ? c - x1 : x1 - c);
  }
}

void dots(QList<QPointF>& dots, const QRectF& r) {
  constexpr double kStep = 0.8;
  for (double y = first(r.top(), kStep); y < r.bottom(); y += kStep) {
    for (double x = first(r.left(), kStep); x < r.right(); x += kStep) {
      if (x - kHatchDotMm < r.left() || x + kHatchDotMm > r.right() || y - kHatchDotMm < r.top() ||
          y + kHatchDotMm > r.bottom()) {
        continue;
      }
      dots << QPointF(x, y);
    }
  }
}

}  // namespace

HatchMarks hatchMarks(const QRectF& r, Hatch kind) {
  HatchMarks marks;
  QList<QLineF>& lines = marks.lines;
  switch (kind) {
    case Hatch::None:
      break;
    case Hatch::Diagonal:
      diagonals(lines, r, 1.0, true);
      break;
    case Hatch::Cross:
      diagonals(lines, r, 1.0, true);
      diagonals(lines, r, 1.0, false);
      break;
    case Hatch::Dense:
      diagonals(lines, r, 0.5, false);
      break;
    case Hatch::Horizontal:
      for (double y = first(r.top(), 0.8); y < r.bottom(); y += 0.8) {
        lines << QLineF(r.left(), y, r.right(), y);
      }
      break;
    case Hatch::Vertical:
      for (double x = first(r.left(), 0.9); x < r.right(); x += 0.9) {
        for (double y = first(r.top(), 0.9); y + 0.45 < r.bottom(); y += 0.9) {
          lines << QLineF(x, y, x, y + 0.45);
        }
      }
      break;
    case Hatch::Dots:
      dots(marks.dots, r);
      break;
  }
  return marks;
}

}  // namespace outyard::print
