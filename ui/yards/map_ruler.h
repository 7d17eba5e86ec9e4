// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPointF>
#include <functional>
#include <optional>

#include "ui/adapt/units.h"

class QFont;
class QPainter;
class QPalette;

namespace outyard::yards {

/// A line between two points of the map, set by clicks or by keys, and the distance between them.
/// Points are of the scene (metres, y down).
class MapRuler {
 public:
  void start(QPointF cursor);
  void stop();
  [[nodiscard]] bool active() const { return m_active; }
  /// The pointer, or the cross that the arrow keys move.
  [[nodiscard]] QPointF cursor() const { return m_cursor; }
  void moveTo(QPointF scene);
  /// Sets a point at the cursor; true when that was the second one. A third begins anew.
  bool put();
  /// Forgets the points; false when there were none.
  bool clear();
  [[nodiscard]] std::optional<QPointF> from() const { return m_from; }
  /// The second point, or the cursor while it is still to be set.
  [[nodiscard]] QPointF to() const { return m_to.value_or(m_cursor); }
  [[nodiscard]] bool finished() const { return m_to.has_value(); }
  [[nodiscard]] double metres() const;

  using ToViewport = std::function<QPointF(QPointF scene)>;
  void paint(QPainter& painter, const ToViewport& at, const adapt::Units& units,
             const QPalette& palette, const QFont& font) const;

 private:
  bool m_active = false;
  QPointF m_cursor;
  std::optional<QPointF> m_from, m_to;
};

/// A line with end ticks and its length beside it, in pixels.
void paintDistance(QPainter& painter, QPointF from, QPointF to, const QString& text,
                   const QPalette& palette, const QFont& font);
/// The room that paintDistance may use.
QRectF distanceRect(QPointF from, QPointF to);
/// "3.4 m", "11.2 ft".
QString distanceText(double metres, const adapt::Units& units);

}  // namespace outyard::yards
