// SPDX-License-Identifier: GPL-3.0-or-later
// Distances on the yard map: the measuring line, the way of what is dragged.
#include <QKeyEvent>
#include <QPainter>
#include <cmath>
#include <limits>

#include "ui/yards/yard_map.h"

namespace outyard::yards {
namespace {

constexpr int kFarStepPx = 10;

std::optional<QPoint> stepOf(int key) {
  switch (key) {
    case Qt::Key_Left:
      return QPoint(-1, 0);
    case Qt::Key_Right:
      return QPoint(1, 0);
    case Qt::Key_Up:
      return QPoint(0, -1);
    case Qt::Key_Down:
      return QPoint(0, 1);
    default:
      return std::nullopt;
  }
}

}  // namespace

void YardMap::setMeasuring(bool measuring) {
  if (measuring == m_ruler.active()) return;
  if (measuring) {
    if (m_drag) cancelDrag();
    if (m_carriedThing) letThingGo(std::nullopt);
    m_band.reset();
    const auto chosen = m_hub.selection().hive;
    const auto* hive = chosen ? item(*chosen) : nullptr;
    m_ruler.start(hive ? hive->pos() : mapToScene(viewport()->rect().center()));
    setFocus();
    setCursor(Qt::CrossCursor);
    Q_EMIT dragHint(rulerHint());
  } else {
    m_ruler.stop();
    setCursor(Qt::ArrowCursor);
    Q_EMIT dragHint({});
    Q_EMIT measuringStopped();
  }
  viewport()->update();
}

QString YardMap::rulerHint() const {
  if (!m_ruler.from()) {
    return tr(
        "Measure: click the first point, or go there with the arrow keys (Shift: finely) and "
        "press Return. Esc ends.");
  }
  const QString far = distanceText(m_ruler.metres(), adapt::Units::from(m_hub.settings()));
  return m_ruler.finished()
             ? tr("%1 from point to point. Click for another line; Esc ends.").arg(far)
             : tr("%1 so far. Click the second point, or press Return. Esc forgets the first.")
                   .arg(far);
}

void YardMap::rulerMove(const QPoint& point) {
  // Onto a hive means its true place, not where its mark was nudged.
  const auto* hive = hiveAt(point);
  m_ruler.moveTo(hive ? hive->pos() : mapToScene(point));
  viewport()->update();
  if (m_ruler.from() && !m_ruler.finished()) Q_EMIT dragHint(rulerHint());
}

void YardMap::rulerPut() {
  const bool second = m_ruler.put();
  viewport()->update();
  Q_EMIT dragHint(rulerHint());
  if (!second) return;
  const QPointF from = *m_ruler.from(), to = m_ruler.to();
  Q_EMIT measured({from.x(), -from.y()}, {to.x(), -to.y()});
}

bool YardMap::rulerKey(const QKeyEvent& event) {
  if (!m_ruler.active()) return false;
  if (const auto step = stepOf(event.key())) {
    if (event.modifiers() & Qt::ControlModifier) return false;  // pans
    const int px = event.modifiers() & Qt::ShiftModifier ? 1 : kFarStepPx;
    const QPointF by = QPointF(*step * px) / pxPerMetre();
    m_ruler.moveTo(m_ruler.cursor() + by);
    reveal(m_ruler.cursor());
    viewport()->update();
    Q_EMIT dragHint(rulerHint());
    return true;
  }
  switch (event.key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
      rulerPut();
      return true;
    case Qt::Key_Escape:
      if (m_ruler.clear()) {
        viewport()->update();
        Q_EMIT dragHint(rulerHint());
      } else {
        setMeasuring(false);
      }
      return true;
    default:
      return false;
  }
}

QString YardMap::carriedHint() const {
  const auto units = adapt::Units::from(m_hub.settings());
  const QPointF now(m_drag->spot.xM, -m_drag->spot.yM);
  const auto far = [](QPointF a, QPointF b) { return std::hypot(a.x() - b.x(), a.y() - b.y()); };
  const QString way = distanceText(far(now, m_drag->home), units);
  const HiveItem* nearest = nullptr;
  double least = std::numeric_limits<double>::max();
  for (const auto& [id, hive] : m_hives) {
    if (id == m_drag->hive || m_drag->others.count(id)) continue;
    const double away = far(hive->pos(), now);
    if (away >= least) continue;
    least = away;
    nearest = hive;
  }
  return nearest ? tr("%1 from its place, %2 to %3.")
                       .arg(way, distanceText(least, units),
                            QString::fromStdString(nearest->hive().str()))
                 : tr("%1 from its place.").arg(way);
}

void YardMap::updateWay() {
  const QRectF now =
      distanceRect(mapFromScene(m_drag->home), mapFromScene(m_drag->spot.xM, -m_drag->spot.yM));
  const QRect rect = now.toAlignedRect();
  viewport()->update(m_wayShown.united(rect));
  m_wayShown = rect;
}

void YardMap::paintTools(QPainter& painter) const {
  if (const auto thing = chosenThing(); thing && m_arranging) {
    QColor wash = palette().color(QPalette::Highlight);
    painter.setPen(QPen(wash, 2, Qt::DashLine));
    wash.setAlphaF(0.12F);
    painter.setBrush(wash);
    painter.drawRoundedRect(viewportRectOf(*thing).adjusted(-4, -4, 4, 4), 4, 4);
  }
  const auto units = adapt::Units::from(m_hub.settings());
  if (m_drag && m_drag->moving && !m_drag->target) {
    const QPointF now(m_drag->spot.xM, -m_drag->spot.yM);
    const QPointF way = now - m_drag->home;
    paintDistance(painter, mapFromScene(m_drag->home), mapFromScene(now),
                  distanceText(std::hypot(way.x(), way.y()), units), palette(), font());
  }
  m_ruler.paint(
      painter, [this](QPointF scene) { return QPointF(mapFromScene(scene)); }, units, palette(),
      font());
}

void YardMap::setPicturePercent(int percent) {
  m_picturePercent = percent;
  refreshFeatures();
  viewport()->update();
}

}  // namespace outyard::yards
