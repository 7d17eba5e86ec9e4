// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/painter.h"

#include <QPainterPath>
#include <QPen>
#include <QPolygonF>
#include <algorithm>
#include <cmath>

#include "ui/print/font_measurer.h"
#include "ui/print/hatch.h"

namespace outyard::print {

namespace {

using sheet::Hatch;
using sheet::Ink;
using sheet::Stroke;

constexpr double kMmPerInch = 25.4;

QPointF at(const sheet::Point& p) {
  return {p.x, p.y};
}

class ShapePainter {
 public:
  ShapePainter(QPainter& painter, const Palette& palette) : m_p(painter), m_palette(palette) {}

  void operator()(const sheet::LineShape& s) {
    setPen(s.stroke);
    m_p.drawLine(at(s.from), at(s.to));
  }
  void operator()(const sheet::RectShape& s) {
    const QRectF r(s.corner.x, s.corner.y, s.widthMm, s.heightMm);
    fillBrush(s.fill);
    m_p.setPen(Qt::NoPen);
    const bool plain = s.radiusMm <= 0;
    if (s.fill != Ink::None) {
      if (plain) {
        m_p.fillRect(r, m_p.brush());
      } else {
        m_p.drawRoundedRect(r, s.radiusMm, s.radiusMm);
      }
    }
    if (s.hatch != Hatch::None) hatch(r, s.hatch, s.fill);
    if (s.stroke.ink == Ink::None) return;
    setPen(s.stroke);
    m_p.setBrush(Qt::NoBrush);
    if (plain) {
      m_p.drawRect(r);
    } else {
      m_p.drawRoundedRect(r, s.radiusMm, s.radiusMm);
    }
  }
  void operator()(const sheet::PolygonShape& s) {
    QPolygonF polygon;
    for (const sheet::Point& p : s.points) polygon << at(p);
    fillBrush(s.closed ? s.fill : Ink::None);
    if (s.hatch != Hatch::None && s.closed) {
      m_p.setPen(Qt::NoPen);
      m_p.drawPolygon(polygon);
      QPainterPath path;
      path.addPolygon(polygon);
      m_p.save();
      m_p.setClipPath(path, Qt::IntersectClip);
      hatch(polygon.boundingRect(), s.hatch, s.fill);
      m_p.restore();
      m_p.setBrush(Qt::NoBrush);
    }
    setPen(s.stroke);
    if (s.closed) {
      m_p.drawPolygon(polygon);
    } else {
      m_p.setBrush(Qt::NoBrush);
      m_p.drawPolyline(polygon);
    }
  }
  void operator()(const sheet::EllipseShape& s) {
    fillBrush(s.fill);
    setPen(s.stroke);
    m_p.drawEllipse(at(s.centre), s.rxMm, s.ryMm);
  }
  void operator()(const sheet::TextShape& s) {
    if (s.text.empty() || s.sizeMm <= 0) return;
    const QString words = QString::fromStdString(s.text);
    const double scale = s.sizeMm / kFontPixels;
    m_p.save();
    m_p.setFont(sheetFont(s.bold, s.italic));
    m_p.setPen(m_palette.colour(s.ink));
    m_p.translate(at(s.at));
    m_p.scale(scale, scale);
    const double width =
        s.align == sheet::Align::Left ? 0 : m_p.fontMetrics().horizontalAdvance(words);
    double x = 0;
    if (s.align == sheet::Align::Centre) x = -width / 2;
    if (s.align == sheet::Align::Right) x = -width;
    m_p.drawText(QPointF(x, 0), words);
    m_p.restore();
  }

 private:
  void fillBrush(Ink ink) {
    m_p.setBrush(ink == Ink::None ? QBrush(Qt::NoBrush) : QBrush(m_palette.colour(ink)));
  }

  void setPen(const Stroke& s) {
    if (s.ink == Ink::None || s.widthMm <= 0) {
      m_p.setPen(Qt::NoPen);
    } else {
      m_p.setPen(strokePen(m_palette.colour(s.ink), s.widthMm, s.dashed));
    }
  }

  void hatch(const QRectF& r, Hatch kind, Ink fill) {
    const HatchMarks marks = hatchMarks(r, kind);
    m_p.setPen(strokePen(m_palette.hatch(fill), kHatchLineMm, false));
    if (!marks.lines.isEmpty()) m_p.drawLines(marks.lines);
    if (marks.dots.isEmpty()) return;
    m_p.setPen(Qt::NoPen);
    m_p.setBrush(m_palette.hatch(fill));
    for (const QPointF& dot : marks.dots) m_p.drawEllipse(dot, kHatchDotMm, kHatchDotMm);
  }

  QPainter& m_p;
  const Palette& m_palette;
};

}  // namespace

QPen strokePen(const QColor& colour, double widthMm, bool dashed, double unitsPerMm) {
  QPen pen(colour, widthMm * unitsPerMm);
  pen.setCapStyle(Qt::FlatCap);
  pen.setJoinStyle(Qt::MiterJoin);
  if (dashed) {
    // Dash lengths are in pen widths: the same millimetres for thin and thick lines.
    constexpr double kDashMm = 0.9, kGapMm = 0.7;
    pen.setDashPattern({std::max(1.0, kDashMm / widthMm), std::max(1.0, kGapMm / widthMm)});
  }
  return pen;
}

void paintShapes(QPainter& painter, const sheet::Shapes& shapes, const Palette& palette) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setRenderHint(QPainter::TextAntialiasing);
  ShapePainter one(painter, palette);
  for (const sheet::Shape& shape : shapes) std::visit(one, shape);
  painter.restore();
}

void paintPage(QPainter& painter, const QRectF& target, const sheet::SheetPage& page,
               const Palette& palette) {
  const double scale = std::min(target.width() / page.widthMm, target.height() / page.heightMm);
  painter.save();
  painter.translate(target.left() + (target.width() - page.widthMm * scale) / 2,
                    target.top() + (target.height() - page.heightMm * scale) / 2);
  painter.scale(scale, scale);
  paintShapes(painter, page.shapes, palette);
  painter.restore();
}

QImage renderPage(const sheet::SheetPage& page, double dotsPerInch, const Palette& palette) {
  const double perMm = dotsPerInch / kMmPerInch;
  QImage image(static_cast<int>(std::lround(page.widthMm * perMm)),
               static_cast<int>(std::lround(page.heightMm * perMm)), QImage::Format_RGB32);
  image.fill(palette.colour(Ink::Paper));
  QPainter painter(&image);
  paintPage(painter, QRectF(QPointF(0, 0), QSizeF(image.size())), page, palette);
  return image;
}

}  // namespace outyard::print
