// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/shape.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace outyard::sheet {

namespace {

struct Turn {
  double cos = 1, sin = 0, scale = 1;
  Point move;
  [[nodiscard]] Point at(Point p) const {
    // y points downwards, so this turns clockwise as seen.
    return {move.x + scale * (p.x * cos - p.y * sin), move.y + scale * (p.x * sin + p.y * cos)};
  }
  [[nodiscard]] Stroke at(Stroke s) const {
    s.widthMm *= scale;
    return s;
  }
};

/// The outline of a rectangle with its round corners as short chords.
std::vector<Point> outline(const RectShape& r) {
  const double x0 = r.corner.x, y0 = r.corner.y, x1 = x0 + r.widthMm, y1 = y0 + r.heightMm;
  const double radius = std::min({r.radiusMm, r.widthMm / 2, r.heightMm / 2});
  if (radius <= 0) return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
  std::vector<Point> points;
  const Point centres[] = {{x1 - radius, y0 + radius},
                           {x1 - radius, y1 - radius},
                           {x0 + radius, y1 - radius},
                           {x0 + radius, y0 + radius}};
  constexpr int kChords = 4;
  for (int corner = 0; corner < 4; ++corner) {
    for (int i = 0; i <= kChords; ++i) {
      const double angle = std::numbers::pi / 2 * (corner - 1 + static_cast<double>(i) / kChords);
      points.push_back({centres[corner].x + radius * std::cos(angle),
                        centres[corner].y + radius * std::sin(angle)});
    }
  }
  return points;
}

std::vector<Point> outline(const EllipseShape& e) {
  std::vector<Point> points;
  constexpr int kPoints = 36;
  for (int i = 0; i < kPoints; ++i) {
    const double angle = 2 * std::numbers::pi * i / kPoints;
    points.push_back(
        {e.centre.x + e.rxMm * std::cos(angle), e.centre.y + e.ryMm * std::sin(angle)});
  }
  return points;
}

struct Mover {
  Turn turn;
  bool upright;

  [[nodiscard]] PolygonShape polygon(std::vector<Point> points, Ink fill, Hatch hatch,
                                     const Stroke& stroke) const {
    for (Point& p : points) p = turn.at(p);
    return {std::move(points), fill, hatch, turn.at(stroke), true};
  }
  Shape operator()(LineShape s) const {
    s.from = turn.at(s.from);
    s.to = turn.at(s.to);
    s.stroke = turn.at(s.stroke);
    return s;
  }
  Shape operator()(RectShape s) const {
    if (!upright) return polygon(outline(s), s.fill, s.hatch, s.stroke);
    s.corner = turn.at(s.corner);
    s.widthMm *= turn.scale;
    s.heightMm *= turn.scale;
    s.radiusMm *= turn.scale;
    s.stroke = turn.at(s.stroke);
    return s;
  }
  Shape operator()(PolygonShape s) const {
    for (Point& p : s.points) p = turn.at(p);
    s.stroke = turn.at(s.stroke);
    return s;
  }
  Shape operator()(EllipseShape s) const {
    if (!upright && s.rxMm != s.ryMm) return polygon(outline(s), s.fill, Hatch::None, s.stroke);
    s.centre = turn.at(s.centre);
    s.rxMm *= turn.scale;
    s.ryMm *= turn.scale;
    s.stroke = turn.at(s.stroke);
    return s;
  }
  Shape operator()(TextShape s) const {
    s.at = turn.at(s.at);
    s.sizeMm *= turn.scale;
    s.maxWidthMm *= turn.scale;
    return s;
  }
};

}  // namespace

Shapes transformed(const Shapes& shapes, Point move, double turnDeg, double scale) {
  double degrees = std::fmod(turnDeg, 360.0);
  if (degrees < 0) degrees += 360.0;
  Turn turn;
  turn.scale = scale;
  turn.move = move;
  const bool upright = degrees == 0;
  if (!upright) {
    const double angle = degrees * std::numbers::pi / 180;
    turn.cos = std::cos(angle);
    turn.sin = std::sin(angle);
  }
  Shapes moved;
  moved.reserve(shapes.size());
  const Mover mover{turn, upright};
  for (const Shape& shape : shapes) moved.push_back(std::visit(mover, shape));
  return moved;
}

}  // namespace outyard::sheet
