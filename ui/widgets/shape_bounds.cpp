// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/shape_bounds.h"

#include <algorithm>
#include <limits>

namespace outyard::widgets {
namespace {

struct Bounds {
  double left = std::numeric_limits<double>::max(), top = left;
  double right = std::numeric_limits<double>::lowest(), bottom = right;

  void add(double x, double y) {
    left = std::min(left, x);
    right = std::max(right, x);
    top = std::min(top, y);
    bottom = std::max(bottom, y);
  }
  void operator()(const sheet::LineShape& line) {
    add(line.from.x, line.from.y);
    add(line.to.x, line.to.y);
  }
  void operator()(const sheet::RectShape& rect) {
    add(rect.corner.x, rect.corner.y);
    add(rect.corner.x + rect.widthMm, rect.corner.y + rect.heightMm);
  }
  void operator()(const sheet::PolygonShape& polygon) {
    for (const auto& p : polygon.points) add(p.x, p.y);
  }
  void operator()(const sheet::EllipseShape& ellipse) {
    add(ellipse.centre.x - ellipse.rxMm, ellipse.centre.y - ellipse.ryMm);
    add(ellipse.centre.x + ellipse.rxMm, ellipse.centre.y + ellipse.ryMm);
  }
  void operator()(const sheet::TextShape& text) { add(text.at.x, text.at.y); }
};

}  // namespace

QRectF boundsOf(const sheet::Shapes& shapes) {
  if (shapes.empty()) return {};
  Bounds bounds;
  for (const auto& shape : shapes) std::visit(bounds, shape);
  return {QPointF(bounds.left, bounds.top), QPointF(bounds.right, bounds.bottom)};
}

}  // namespace outyard::widgets
