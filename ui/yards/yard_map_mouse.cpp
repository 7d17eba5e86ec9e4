// SPDX-License-Identifier: GPL-3.0-or-later
// The yard map under the mouse: choosing, panning, dragging. What a drag means is asked and done
// by YardsPlace.
#include <QApplication>
#include <QContextMenuEvent>
#include <QMouseEvent>
#include <QScrollBar>
#include <algorithm>
#include <cmath>

#include "ui/yards/arrange.h"
#include "ui/yards/yard_map.h"

namespace outyard::yards {
namespace {

QString textOf(const base::HiveId& hive) {
  return QString::fromStdString(hive.str());
}

}  // namespace

bool YardMap::mayDrag() const {
  // A day gone by is shown as it stood; nothing is carried there.
  return m_hub.isOpen() && m_hub.showsToday();
}

void YardMap::mousePressEvent(QMouseEvent* event) {
  setFocus(Qt::MouseFocusReason);
  const QPoint point = event->position().toPoint();
  if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && m_space)) {
    m_pan = point;
    setCursor(Qt::ClosedHandCursor);
    return;
  }
  if (event->button() != Qt::LeftButton) return;
  if (m_ruler.active()) {
    rulerMove(point);
    rulerPut();
    return;
  }
  const bool shift = (event->modifiers() & Qt::ShiftModifier) != 0;
  const bool control = (event->modifiers() & Qt::ControlModifier) != 0;
  if (auto* hive = hiveAt(point); hive && shift) {
    pickWithShift(hive->hive());
  } else if (hive && control && takeStandOf(hive->hive())) {
    m_carriedThing->pressed = point;
    m_carriedThing->from = mapToScene(point);
  } else if (hive) {
    Drag drag;
    drag.hive = hive->hive();
    drag.pressed = point;
    drag.home = hive->pos();
    drag.grab = hive->pos() - mapToScene(point);
    m_drag = drag;
    m_hub.selectHive(hive->hive());
  } else if (auto* group = groupAt(point)) {
    openGroup(*group);
  } else if (!shift && takeThing(point)) {
    setCursor(Qt::ClosedHandCursor);
  } else if (m_arranging || shift) {
    m_band = Band{point, point, shift};
  } else {
    m_pan = point;
    setCursor(Qt::ClosedHandCursor);
  }
}

void YardMap::mouseMoveEvent(QMouseEvent* event) {
  const QPoint point = event->position().toPoint();
  if (m_pan) {
    const QPoint delta = point - *m_pan;
    m_pan = point;
    horizontalScrollBar()->setValue(horizontalScrollBar()->value() - delta.x());
    verticalScrollBar()->setValue(verticalScrollBar()->value() - delta.y());
    m_userZoomed = true;
    return;
  }
  if (m_ruler.active()) {
    rulerMove(point);
    return;
  }
  if (m_carriedThing) {
    carryThing(point);
    return;
  }
  if (m_band) {
    m_band->to = point;
    viewport()->update();
    return;
  }
  if (!m_drag) {
    setCursor(hiveAt(point) || groupAt(point) ? Qt::PointingHandCursor : Qt::ArrowCursor);
    QGraphicsView::mouseMoveEvent(event);
    return;
  }
  if (!m_drag->moving) {
    const int far = (point - m_drag->pressed).manhattanLength();
    if (far < QApplication::startDragDistance()) return;
    if (!mayDrag()) {
      Q_EMIT dragHint(tr("Another day is shown. Go back to today to move hives."));
      return;
    }
    beginDrag();
  }
  dragTo(point);
}

void YardMap::beginDrag() {
  m_drag->moving = true;
  m_scene.setItemIndexMethod(QGraphicsScene::NoIndex);
  auto* item = m_hives.at(m_drag->hive);
  // Only what moves is painted anew: with hundreds of hives the whole map would lag behind.
  setViewportUpdateMode(BoundingRectViewportUpdate);
  if (m_marked.count(m_drag->hive)) {
    for (const auto& id : m_marked) {
      if (id == m_drag->hive) continue;
      m_drag->others[id] = m_hives.at(id)->pos();
      m_hives.at(id)->setCarried(true);
    }
  }
  // The nudge made room for neighbours; under the pointer it would be in the way.
  m_drag->grab += item->nudge() / pxPerMetre();
  item->setNudge({});
  item->setCarried(true);
  setCursor(Qt::ClosedHandCursor);
}

session::Spot YardMap::spotFor(const base::HiveId& hive, QPointF scene, bool snap) const {
  session::Spot spot;
  spot.hive = hive;
  double nearest = std::max(0.4, 14 / pxPerMetre());
  if (snap) {
    for (const auto& [key, stand] : m_hub.season().table<apiary::Stand>()) {
      if (!m_yard || stand.yard != *m_yard) continue;
      for (const QPointF& place : standSlots(stand)) {
        const double away = std::hypot(place.x() - scene.x(), place.y() - scene.y());
        if (away >= nearest) continue;
        nearest = away;
        scene = place;
        spot.stand = stand.stand;
      }
    }
  }
  // Whole centimetres: finer than anybody paces a yard out.
  spot.xM = std::round(scene.x() * 100) / 100;
  spot.yM = std::round(-scene.y() * 100) / 100;
  return spot;
}

void YardMap::dragTo(const QPoint& point) {
  auto* carried = m_hives.at(m_drag->hive);
  std::optional<base::HiveId> target;
  if (!m_arranging && m_drag->others.empty()) {
    for (const auto& [id, hive] : m_hives) {
      if (id == m_drag->hive || !hive->isVisible()) continue;
      const QPointF local = point - QPointF(mapFromScene(hive->pos()));
      if (hive->innerHalf().contains(local)) target = id;
    }
  }
  if (target != m_drag->target) {
    if (m_drag->target) m_hives.at(*m_drag->target)->setTarget(HiveItem::Target::None);
    m_drag->target = target;
    if (target) {
      m_drag->refused = m_dropCheck ? m_dropCheck(m_drag->hive, *target) : QString();
      m_hives.at(*target)->setTarget(m_drag->refused.isEmpty() ? HiveItem::Target::Possible
                                                               : HiveItem::Target::Refused);
    }
  }
  m_drag->spot =
      spotFor(m_drag->hive, mapToScene(point) + m_drag->grab, !target && m_drag->others.empty());
  carried->setPos(m_drag->spot.xM, -m_drag->spot.yM);
  for (const auto& [id, home] : m_drag->others) {
    m_hives.at(id)->setPos(home + carried->pos() - m_drag->home);
  }
  updateWay();
  if (target) {
    Q_EMIT dragHint(m_drag->refused.isEmpty()
                        ? tr("Let go to set %1 over %2, unite them or swap their stands.")
                              .arg(textOf(m_drag->hive), textOf(*target))
                        : m_drag->refused);
  } else if (m_arranging) {
    Q_EMIT dragHint(m_drag->spot.stand.empty()
                        ? tr("Corrects the drawing only. Esc puts it back. %1").arg(carriedHint())
                        : tr("Corrects the drawing: on stand %1. Esc puts it back. %2")
                              .arg(QString::fromStdString(m_drag->spot.stand), carriedHint()));
  } else {
    Q_EMIT dragHint(
        m_drag->others.empty()
            ? tr("Let go to move the hive here for real, or over another yard in the list; the "
                 "date is asked. Esc puts it back. %1")
                  .arg(carriedHint())
            : tr("Let go to move the %1 hives here for real, or over another yard in the list; "
                 "the date is asked. Esc puts them back. %2")
                  .arg(m_drag->others.size() + 1)
                  .arg(carriedHint()));
  }
}

void YardMap::mouseReleaseEvent(QMouseEvent* event) {
  if (m_pan) {
    m_pan.reset();
    setCursor(Qt::ArrowCursor);
    return;
  }
  if (m_ruler.active()) return;
  if (m_carriedThing && event->button() == Qt::LeftButton) {
    setCursor(Qt::ArrowCursor);
    letThingGo(event->position().toPoint());
    return;
  }
  if (m_band && event->button() == Qt::LeftButton) {
    endBand();
    return;
  }
  if (!m_drag || event->button() != Qt::LeftButton) return;
  if (m_drag->moving) {
    endDrag(event->position().toPoint());
  } else {
    m_drag.reset();
    setMarked({});  // a plain click means this hive alone
  }
}

void YardMap::endDrag(const QPoint& point) {
  const Drag drag = *m_drag;
  cancelDrag();  // the item goes home; what is done moves it by a notice
  if (!drag.others.empty()) {
    // The way of one is the way of all.
    auto spots = spotsOf(m_hub, chosenHives());
    const QPointF way = QPointF(drag.spot.xM, -drag.spot.yM) - drag.home;
    for (auto& spot : spots) {
      spot.xM = std::round((spot.xM + way.x()) * 100) / 100;
      spot.yM = std::round((spot.yM - way.y()) * 100) / 100;
    }
    if (m_arranging) {
      Q_EMIT arrangedAll(spots);
    } else if (viewport()->rect().contains(point)) {
      Q_EMIT severalCarriedTo(spots);
    } else {
      Q_EMIT severalDroppedOutside(spots, viewport()->mapToGlobal(point));
    }
  } else if (!viewport()->rect().contains(point)) {
    Q_EMIT droppedOutside(drag.hive, viewport()->mapToGlobal(point));
  } else if (drag.target) {
    Q_EMIT droppedOn(drag.hive, *drag.target);
  } else if (m_arranging) {
    Q_EMIT arranged(drag.spot);
  } else {
    Q_EMIT carriedTo(drag.spot);
  }
}

void YardMap::cancelDrag() {
  if (m_drag && m_drag->moving) {
    if (m_drag->target) m_hives.at(*m_drag->target)->setTarget(HiveItem::Target::None);
    auto* item = m_hives.at(m_drag->hive);
    item->setCarried(false);
    item->setPos(m_drag->home);
    for (const auto& [id, home] : m_drag->others) {
      m_hives.at(id)->setCarried(false);
      m_hives.at(id)->setPos(home);
    }
    m_scene.setItemIndexMethod(QGraphicsScene::BspTreeIndex);
    setViewportUpdateMode(FullViewportUpdate);
    m_wayShown = {};
    Q_EMIT dragHint({});
    setCursor(Qt::ArrowCursor);
    m_drag.reset();
    layOut();
  }
  m_drag.reset();
}

void YardMap::mouseDoubleClickEvent(QMouseEvent* event) {
  if (auto* hive = hiveAt(event->position().toPoint())) Q_EMIT hiveOpened(hive->hive());
}

void YardMap::contextMenuEvent(QContextMenuEvent* event) {
  QPoint point = event->pos();
  std::optional<base::HiveId> hive;
  if (event->reason() == QContextMenuEvent::Keyboard) {
    const auto thing = chosenThing();
    if (!thing) hive = m_hub.selection().hive;
    if (hive) point = markCentre(*hive);
    if (thing) point = viewportRectOf(*thing).center().toPoint();
  } else if (auto* item = hiveAt(point)) {
    hive = item->hive();
    m_hub.selectHive(item->hive());
  }
  Q_EMIT menuAsked(hive, point);
}

}  // namespace outyard::yards
