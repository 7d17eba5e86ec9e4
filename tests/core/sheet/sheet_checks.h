// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <string>
#include <vector>

#include "core/sheet/text_layout.h"

/// What must hold on every page, whatever stands on it.
namespace outyard::sheet::fixture {

struct TextBox {
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  const TextShape* text = nullptr;
};

inline std::vector<TextBox> textBoxes(const SheetPage& page, const TextMeasurer& measurer) {
  std::vector<TextBox> boxes;
  for (const Shape& shape : page.shapes) {
    const auto* t = std::get_if<TextShape>(&shape);
    if (!t) continue;
    const double w = measurer.widthMm(t->text, t->sizeMm, t->bold);
    double x = t->at.x;
    if (t->align == Align::Centre) x -= w / 2;
    if (t->align == Align::Right) x -= w;
    boxes.push_back({x, t->at.y - kAscent * t->sizeMm, x + w, t->at.y + kDescent * t->sizeMm, t});
  }
  return boxes;
}

/// Empty when no text leaves the page, is wider than promised, or touches another.
inline std::string textFault(const SheetPage& page, const TextMeasurer& measurer) {
  const auto boxes = textBoxes(page, measurer);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const TextBox& a = boxes[i];
    if (a.x0 < 0 || a.y0 < 0 || a.x1 > page.widthMm || a.y1 > page.heightMm) {
      return "leaves the page: " + a.text->text;
    }
    if (a.text->maxWidthMm > 0 && a.x1 - a.x0 > a.text->maxWidthMm + 0.1) {
      return "wider than promised: " + a.text->text;
    }
    for (std::size_t k = i + 1; k < boxes.size(); ++k) {
      const TextBox& b = boxes[k];
      constexpr double kTouch = 0.02;
      if (a.x0 < b.x1 - kTouch && b.x0 < a.x1 - kTouch && a.y0 < b.y1 - kTouch &&
          b.y0 < a.y1 - kTouch) {
        return "overlap: '" + a.text->text + "' and '" + b.text->text + "'";
      }
    }
  }
  return {};
}

/// Every point of a shape that is not text.
template <class F>
void eachPoint(const SheetPage& page, F&& f) {
  for (const Shape& shape : page.shapes) {
    if (const auto* l = std::get_if<LineShape>(&shape)) {
      f(l->from);
      f(l->to);
    } else if (const auto* r = std::get_if<RectShape>(&shape)) {
      f(r->corner);
      f(Point{r->corner.x + r->widthMm, r->corner.y + r->heightMm});
    } else if (const auto* p = std::get_if<PolygonShape>(&shape)) {
      for (const Point& at : p->points) f(at);
    } else if (const auto* e = std::get_if<EllipseShape>(&shape)) {
      f(Point{e->centre.x - e->rxMm, e->centre.y - e->ryMm});
      f(Point{e->centre.x + e->rxMm, e->centre.y + e->ryMm});
    }
  }
}

inline std::string shapeFault(const SheetPage& page) {
  std::string fault;
  eachPoint(page, [&](Point p) {
    constexpr double kEdge = 3;
    if (p.x < kEdge || p.y < kEdge || p.x > page.widthMm - kEdge || p.y > page.heightMm - kEdge) {
      fault = "a shape leaves the page at " + std::to_string(p.x) + ", " + std::to_string(p.y);
    }
  });
  return fault;
}

/// The highest thing on the page: the top is kept clear for the clip of the board.
inline double highest(const SheetPage& page) {
  double y = page.heightMm;
  eachPoint(page, [&](Point p) { y = std::min(y, p.y); });
  for (const Shape& shape : page.shapes) {
    if (const auto* t = std::get_if<TextShape>(&shape)) {
      y = std::min(y, t->at.y - kAscent * t->sizeMm);
    }
  }
  return y;
}

inline std::vector<std::string> textsOf(const SheetPage& page) {
  std::vector<std::string> texts;
  for (const Shape& shape : page.shapes) {
    if (const auto* t = std::get_if<TextShape>(&shape)) texts.push_back(t->text);
  }
  return texts;
}

}  // namespace outyard::sheet::fixture
