// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper_painter.h"

#include <QList>
#include <QPainterPath>
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include "ui/print/font_measurer.h"
#include "ui/print/hatch.h"
#include "ui/print/paint_order.h"
#include "ui/print/painter.h"
#include "ui/print/set_text.h"

namespace outyard::print {

namespace {

using sheet::Hatch;
using sheet::Ink;
using sheet::Stroke;
using Box = PaintOrder::Box;
using Touching = PaintOrder::Touching;

/// Control points of a quarter of a circle, as QPainterPath has them.
constexpr double kKappa = 0.5522847498;

double units(double mm) {
  return std::round(mm * PaperPainter::kUnitsPerMm);
}
QPointF units(const sheet::Point& p) {
  return {units(p.x), units(p.y)};
}
QPointF rounded(double x, double y) {
  return {std::round(x), std::round(y)};
}

Box boxOf(const QRectF& r, double more) {
  return {r.left() - more, r.top() - more, r.right() + more, r.bottom() + more};
}

enum class Kind { Rects, Path, Text, Own };

/// What is drawn with the same pen and brush. A colour of 0 means none: inks of paper are opaque.
struct Look {
  Kind kind = Kind::Path;
  QRgb fill = 0, line = 0;
  double lineMm = 0;
  bool dashed = false;
  bool operator==(const Look&) const = default;
  [[nodiscard]] bool blank() const { return fill == 0 && line == 0; }
  /// Half the line, rounded up: how far it reaches beyond the outline.
  [[nodiscard]] double half() const {
    return line == 0 ? 0 : std::ceil(lineMm * PaperPainter::kUnitsPerMm / 2);
  }
};

/// The part of the page that a shape covers: a rectangle, or a frame so wide along its sides.
struct Cover {
  QRectF rect;
  double more = 0;    ///< beyond the rectangle
  double frame = -1;  ///< inwards from the rectangle; less than 0 is solid
};

struct Batch {
  std::size_t look = 0;
  QList<QRectF> rects{};
  QPainterPath path{};
  std::vector<const sheet::TextShape*> texts{};
  const sheet::PolygonShape* own = nullptr;
};

/// From the left end of the upper left corner clockwise, as QPainterPath::addRoundedRect.
void addRounded(QPainterPath& path, const QRectF& r, double radius) {
  const double rx = std::min(radius, r.width() / 2), ry = std::min(radius, r.height() / 2);
  const double x0 = r.left(), y0 = r.top(), x1 = r.right(), y1 = r.bottom();
  const double kx = rx * (1 - kKappa), ky = ry * (1 - kKappa);
  path.moveTo(rounded(x0, y0 + ry));
  path.cubicTo(rounded(x0, y0 + ky), rounded(x0 + kx, y0), rounded(x0 + rx, y0));
  path.lineTo(rounded(x1 - rx, y0));
  path.cubicTo(rounded(x1 - kx, y0), rounded(x1, y0 + ky), rounded(x1, y0 + ry));
  path.lineTo(rounded(x1, y1 - ry));
  path.cubicTo(rounded(x1, y1 - ky), rounded(x1 - kx, y1), rounded(x1 - rx, y1));
  path.lineTo(rounded(x0 + rx, y1));
  path.cubicTo(rounded(x0 + kx, y1), rounded(x0, y1 - ky), rounded(x0, y1 - ry));
  path.closeSubpath();
}

/// From the right end clockwise, as QPainterPath::addEllipse.
void addEllipse(QPainterPath& path, QPointF c, double rx, double ry) {
  const double kx = rx * kKappa, ky = ry * kKappa;
  const double x0 = c.x() - rx, x1 = c.x() + rx, y0 = c.y() - ry, y1 = c.y() + ry;
  path.moveTo(rounded(x1, c.y()));
  path.cubicTo(rounded(x1, c.y() + ky), rounded(c.x() + kx, y1), rounded(c.x(), y1));
  path.cubicTo(rounded(c.x() - kx, y1), rounded(x0, c.y() + ky), rounded(x0, c.y()));
  path.cubicTo(rounded(x0, c.y() - ky), rounded(c.x() - kx, y0), rounded(c.x(), y0));
  path.cubicTo(rounded(c.x() + kx, y0), rounded(x1, c.y() - ky), rounded(x1, c.y()));
  path.closeSubpath();
}

}  // namespace

/// What is kept from page to page.
struct PaperPainter::Kept {
  SetText text;
};

/// One page: first every shape finds its batch, then the batches are drawn.
class PaperPainter::Job {
 public:
  Job(QPainter& painter, const Palette& palette, SetText& text, const sheet::SheetPage& page)
      : m_p(painter),
        m_palette(palette),
        m_text(text),
        m_order(units(page.widthMm), units(page.heightMm)) {
    for (const sheet::Shape& shape : page.shapes) {
      std::visit([this](const auto& s) { add(s); }, shape);
    }
  }

  void draw() {
    for (const Batch& batch : m_batches) {
      switch (m_looks[batch.look].kind) {
        case Kind::Text:
          for (const sheet::TextShape* text : batch.texts) drawText(*text);
          break;
        case Kind::Own:
          drawOwn(*batch.own);
          break;
        case Kind::Rects:
          take(m_looks[batch.look]);
          m_p.drawRects(batch.rects.constData(), static_cast<int>(batch.rects.size()));
          break;
        case Kind::Path:
          take(m_looks[batch.look]);
          m_p.drawPath(batch.path);
          break;
      }
    }
  }

 private:
  // --- which batch ------------------------------------------------------------------------------

  void add(const sheet::LineShape& s) {
    const Look look = lookOf(Kind::Path, Ink::None, s.stroke);
    if (look.blank()) return;
    const QPointF from = units(s.from), to = units(s.to);
    QPainterPath& path = batch(look, {QRectF(from, to).normalized(), look.half()}).path;
    path.moveTo(from);
    path.lineTo(to);
  }

  void add(const sheet::RectShape& s) {
    const QRectF r(units(s.corner), units({s.corner.x + s.widthMm, s.corner.y + s.heightMm}));
    const double radius = s.radiusMm > 0 ? units(s.radiusMm) : 0;
    const auto part = [&](Ink fill, const Stroke& stroke) {
      const Look look = lookOf(radius > 0 ? Kind::Path : Kind::Rects, fill, stroke);
      if (look.blank()) return;
      Batch& to = batch(look, {r, look.half(), look.fill == 0 ? look.half() + radius : -1});
      if (radius > 0) {
        addRounded(to.path, r, radius);
      } else {
        to.rects << r;
      }
    };
    if (s.hatch == Hatch::None) {
      part(s.fill, s.stroke);
      return;
    }
    part(s.fill, Stroke{Ink::None});
    addHatch(s);
    part(Ink::None, s.stroke);
  }

  void add(const sheet::PolygonShape& s) {
    if (s.points.empty()) return;
    if (s.closed && s.hatch != Hatch::None) {
      addOwn(s);
      return;
    }
    const Look look = lookOf(Kind::Path, s.closed ? s.fill : Ink::None, s.stroke);
    if (look.blank()) return;
    // a mitre reaches twice as far as the line is wide
    QPainterPath& path = batch(look, {boundsOf(s), 2 * look.half()}).path;
    path.moveTo(units(s.points.front()));
    for (std::size_t i = 1; i < s.points.size(); ++i) path.lineTo(units(s.points[i]));
    if (s.closed) path.closeSubpath();
  }

  void add(const sheet::EllipseShape& s) {
    const Look look = lookOf(Kind::Path, s.fill, s.stroke);
    if (look.blank()) return;
    const QPointF centre = units(s.centre);
    const double rx = units(s.rxMm), ry = units(s.ryMm);
    const QRectF r(centre.x() - rx, centre.y() - ry, 2 * rx, 2 * ry);
    addEllipse(batch(look, {r, look.half()}).path, centre, rx, ry);
  }

  void add(const sheet::TextShape& s) {
    if (s.text.empty() || s.sizeMm <= 0) return;
    const double em = s.sizeMm * PaperPainter::kUnitsPerMm;
    const SetText::Words& words = m_text.words(s.text, s.bold, s.italic);
    const QPointF start = startOf(s, words);
    const double wide = words.width * em / kFontPixels;
    // with room for accents, slanting and letters of other fonts
    const Box box{start.x() - 0.4 * em, start.y() - 1.4 * em, start.x() + wide + 0.4 * em,
                  start.y() + 0.6 * em};
    const std::size_t look = lookIndex({Kind::Text});
    // Text keeps its order: who copies it or has it read aloud gets it as it was written.
    m_lastText = m_order.place(look, {&box, 1}, Touching::Together, m_lastText);
    at(m_lastText, look).texts.push_back(&s);
  }

  /// Hatches are cut to the outline of a polygon: the common painter does that.
  void addOwn(const sheet::PolygonShape& s) {
    const double more = std::max(0.0, units(s.stroke.widthMm));
    const Box box = boxOf(boundsOf(s), more);
    m_looks.push_back({Kind::Own});
    const std::size_t look = m_looks.size() - 1;
    at(m_order.place(look, {&box, 1}, Touching::Apart), look).own = &s;
  }

  void addHatch(const sheet::RectShape& s) {
    const QRectF mm(s.corner.x, s.corner.y, s.widthMm, s.heightMm);
    const QRectF r(units(s.corner), units({mm.right(), mm.bottom()}));
    const HatchMarks marks = hatchMarks(mm, s.hatch);
    const QRgb colour = m_palette.hatch(s.fill).rgba();
    if (!marks.lines.isEmpty()) {
      const Look look{Kind::Path, 0, colour, kHatchLineMm};
      QPainterPath& path = batch(look, {r, look.half()}).path;
      for (const QLineF& line : marks.lines) {
        path.moveTo(units({line.x1(), line.y1()}));
        path.lineTo(units({line.x2(), line.y2()}));
      }
    }
    if (!marks.dots.isEmpty()) {
      QPainterPath& path = batch({Kind::Path, colour}, {r}).path;
      const double radius = units(kHatchDotMm);
      for (const QPointF& dot : marks.dots) {
        addEllipse(path, units({dot.x(), dot.y()}), radius, radius);
      }
    }
  }

  static QRectF boundsOf(const sheet::PolygonShape& s) {
    const QPointF first = units(s.points.front());
    double left = first.x(), top = first.y(), right = left, bottom = top;
    for (const sheet::Point& p : s.points) {
      const QPointF q = units(p);
      left = std::min(left, q.x());
      right = std::max(right, q.x());
      top = std::min(top, q.y());
      bottom = std::max(bottom, q.y());
    }
    return {QPointF(left, top), QPointF(right, bottom)};
  }

  [[nodiscard]] Look lookOf(Kind kind, Ink fill, const Stroke& stroke) const {
    Look look{kind};
    if (fill != Ink::None) look.fill = m_palette.colour(fill).rgba();
    if (stroke.ink == Ink::None || stroke.widthMm <= 0) return look;
    look.line = m_palette.colour(stroke.ink).rgba();
    look.lineMm = stroke.widthMm;
    look.dashed = stroke.dashed;
    return look;
  }

  std::size_t lookIndex(const Look& look) {
    const auto it = std::find(m_looks.begin(), m_looks.end(), look);
    if (it != m_looks.end()) return static_cast<std::size_t>(it - m_looks.begin());
    m_looks.push_back(look);
    return m_looks.size() - 1;
  }

  Batch& at(std::size_t index, std::size_t look) {
    if (index == m_batches.size()) m_batches.push_back({look});
    return m_batches[index];
  }

  Batch& batch(const Look& look, const Cover& cover) {
    const std::size_t index = lookIndex(look);
    // Plain black on black may touch: filled at one go it only loses its seams.
    const bool plain = look.kind == Kind::Rects && look.line == 0;
    const Touching touching = plain ? Touching::Together : Touching::Apart;
    const Box outer = boxOf(cover.rect, cover.more);
    if (cover.frame < 0) return at(m_order.place(index, {&outer, 1}, touching), index);
    const Box inner = boxOf(cover.rect, -cover.frame);
    const std::array<Box, 4> sides{Box{outer.left, outer.top, outer.right, inner.top},
                                   Box{outer.left, inner.bottom, outer.right, outer.bottom},
                                   Box{outer.left, outer.top, inner.left, outer.bottom},
                                   Box{inner.right, outer.top, outer.right, outer.bottom}};
    return at(m_order.place(index, sides, touching), index);
  }

  // --- drawing ----------------------------------------------------------------------------------

  void take(const Look& look) {
    if (look.line == 0) {
      m_p.setPen(Qt::NoPen);
    } else {
      m_p.setPen(strokePen(QColor(look.line), look.lineMm, look.dashed, kUnitsPerMm));
    }
    m_p.setBrush(look.fill == 0 ? QBrush(Qt::NoBrush) : QBrush(QColor(look.fill)));
  }

  static QPointF startOf(const sheet::TextShape& s, const SetText::Words& words) {
    const double wide = words.width * s.sizeMm / kFontPixels;
    double x = s.at.x;
    if (s.align == sheet::Align::Centre) x -= wide / 2;
    if (s.align == sheet::Align::Right) x -= wide;
    return {x * kUnitsPerMm, s.at.y * kUnitsPerMm};
  }

  void drawText(const sheet::TextShape& s) {
    const SetText::Words& words = m_text.words(s.text, s.bold, s.italic);
    const QPointF start = startOf(s, words);
    QList<QGlyphRun> runs;
    for (const SetText::Run& run : words.runs) {
      runs << m_text.glyphs(run, s.sizeMm * kUnitsPerMm, start);
      if (runs.back().rawFont().isValid()) continue;
      drawOwn(s);
      return;
    }
    m_p.setPen(m_palette.colour(s.ink));
    for (const QGlyphRun& run : runs) m_p.drawGlyphRun(QPointF(0, 0), run);
  }

  void drawOwn(const sheet::Shape& shape) {
    m_p.save();
    m_p.scale(kUnitsPerMm, kUnitsPerMm);
    paintShapes(m_p, {shape}, m_palette);
    m_p.restore();
  }

  QPainter& m_p;
  const Palette& m_palette;
  SetText& m_text;
  PaintOrder m_order;
  std::vector<Look> m_looks;
  std::vector<Batch> m_batches;
  std::size_t m_lastText = 0;
};

PaperPainter::PaperPainter(QPainter& painter, const Palette& palette)
    : m_painter(painter), m_palette(palette), m_kept(std::make_unique<Kept>()) {}

PaperPainter::~PaperPainter() = default;

void PaperPainter::page(const QRectF& target, const sheet::SheetPage& page) {
  const double perMm = std::min(target.width() / page.widthMm, target.height() / page.heightMm);
  const double scale = perMm / kUnitsPerMm;
  const QPointF corner(target.left() + (target.width() - page.widthMm * perMm) / 2,
                       target.top() + (target.height() - page.heightMm * perMm) / 2);
  m_painter.save();
  // A matrix that says nothing is left out: it would stand before every change of pen.
  if (std::abs(corner.x()) > 0.01 || std::abs(corner.y()) > 0.01) m_painter.translate(corner);
  if (std::abs(scale - 1) > 1e-9) m_painter.scale(scale, scale);
  m_painter.setRenderHint(QPainter::Antialiasing);
  m_painter.setRenderHint(QPainter::TextAntialiasing);
  Job(m_painter, m_palette, m_kept->text, page).draw();
  m_painter.restore();
}

}  // namespace outyard::print
