// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/map_ruler.h"

#include <QFont>
#include <QFontMetricsF>
#include <QPainter>
#include <QPalette>
#include <cmath>

#include "ui/widgets/theme.h"

namespace outyard::yards {
namespace {

using sheet::Ink;
using widgets::inkColour;

constexpr double kTickPx = 6, kCrossPx = 9, kLabelPx = 18, kLabelRoomPx = 130;

}  // namespace

void MapRuler::start(QPointF cursor) {
  m_active = true;
  m_cursor = cursor;
  clear();
}

void MapRuler::stop() {
  m_active = false;
  clear();
}

void MapRuler::moveTo(QPointF scene) {
  m_cursor = scene;
}

bool MapRuler::put() {
  if (!m_from || m_to) {
    m_from = m_cursor;
    m_to.reset();
    return false;
  }
  m_to = m_cursor;
  return true;
}

bool MapRuler::clear() {
  const bool any = m_from.has_value();
  m_from.reset();
  m_to.reset();
  return any;
}

double MapRuler::metres() const {
  if (!m_from) return 0;
  const QPointF way = to() - *m_from;
  return std::hypot(way.x(), way.y());
}

void MapRuler::paint(QPainter& painter, const ToViewport& at, const adapt::Units& units,
                     const QPalette& palette, const QFont& font) const {
  if (!m_active) return;
  if (m_from) {
    paintDistance(painter, at(*m_from), at(to()), distanceText(metres(), units), palette, font);
  }
  const QPointF cross = at(m_cursor);
  painter.setPen(QPen(inkColour(palette, Ink::Text), 1.4));
  painter.drawLine(cross - QPointF(kCrossPx, 0), cross + QPointF(kCrossPx, 0));
  painter.drawLine(cross - QPointF(0, kCrossPx), cross + QPointF(0, kCrossPx));
}

void paintDistance(QPainter& painter, QPointF from, QPointF to, const QString& text,
                   const QPalette& palette, const QFont& font) {
  const QPointF way = to - from;
  const double length = std::hypot(way.x(), way.y());
  if (length < 1) return;
  const QPointF side = QPointF(-way.y(), way.x()) / length * kTickPx;
  const QLineF lines[] = {{from, to}, {from - side, from + side}, {to - side, to + side}};
  for (const auto& pen :
       {QPen(palette.color(QPalette::Base), 4.5), QPen(inkColour(palette, Ink::Accent), 1.8)}) {
    painter.setPen(pen);
    painter.drawLines(lines, 3);
  }
  QFont bold = font;
  bold.setBold(true);
  bold.setPixelSize(12);
  painter.setFont(bold);
  const double width = QFontMetricsF(bold).horizontalAdvance(text) + 12;
  const QRectF box((from + to) / 2 - QPointF(width / 2, kLabelPx / 2), QSizeF(width, kLabelPx));
  painter.setPen(QPen(inkColour(palette, Ink::Accent), 1));
  painter.setBrush(palette.color(QPalette::Base));
  painter.drawRoundedRect(box, 3, 3);
  painter.setPen(inkColour(palette, Ink::Text));
  painter.drawText(box, Qt::AlignCenter, text);
}

QRectF distanceRect(QPointF from, QPointF to) {
  const QRectF label((from + to) / 2 - QPointF(kLabelRoomPx / 2, kLabelPx),
                     QSizeF(kLabelRoomPx, 2 * kLabelPx));
  return QRectF(from, to).normalized().adjusted(-12, -12, 12, 12).united(label);
}

QString distanceText(double metres, const adapt::Units& units) {
  return units.text(base::Length{metres}, 1);
}

}  // namespace outyard::yards
