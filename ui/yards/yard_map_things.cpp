// SPDX-License-Identifier: GPL-3.0-or-later
// Stands and features of the yard map under the mouse and by keys.
#include <QApplication>
#include <QKeyEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/yards/yard_map.h"

namespace outyard::yards {
namespace {

constexpr double kFencePx = 7;
constexpr double kSignHalfPx = 16;
constexpr double kStepM = 0.1;

double distancePx(const QPointF& point, const QPointF& a, const QPointF& b) {
  const QPointF way = b - a, to = point - a;
  const double square = QPointF::dotProduct(way, way);
  const double along = square > 0 ? std::clamp(QPointF::dotProduct(to, way) / square, 0.0, 1.0) : 0;
  const QPointF off = to - way * along;
  return std::hypot(off.x(), off.y());
}

/// East and north for an arrow key.
std::optional<QPointF> stepOf(int key) {
  switch (key) {
    case Qt::Key_Left:
      return QPointF(-kStepM, 0);
    case Qt::Key_Right:
      return QPointF(kStepM, 0);
    case Qt::Key_Up:
      return QPointF(0, kStepM);
    case Qt::Key_Down:
      return QPointF(0, -kStepM);
    default:
      return std::nullopt;
  }
}

}  // namespace

std::optional<Thing> YardMap::thingAt(const QPoint& point) const {
  const auto at = [this](double xM, double yM) { return QPointF(mapFromScene(xM, -yM)); };
  std::optional<Thing> picture;
  for (const auto& [key, item] : m_features) {
    const auto* feature = m_hub.season().find<apiary::Feature>(key);
    if (!feature || !item->isVisible()) continue;
    const QPointF first = at(feature->xM, feature->yM);
    const QPointF second =
        at(feature->x2M.value_or(feature->xM), feature->y2M.value_or(feature->yM));
    if (feature->kind == apiary::FeatureKind::Fence) {
      if (distancePx(point, first, second) <= kFencePx) return *feature;
    } else if (feature->kind == apiary::FeatureKind::Picture) {
      if (QRectF(first, second).normalized().contains(point)) picture = *feature;
    } else {
      const QPointF off = point - first;
      if (std::max(std::abs(off.x()), std::abs(off.y())) <= kSignHalfPx) return *feature;
    }
  }
  for (const auto& [key, item] : m_stands) {
    const auto* stand = m_hub.season().find<apiary::Stand>(key);
    if (stand && item->contains(item->mapFromScene(mapToScene(point)))) return *stand;
  }
  return picture;
}

QGraphicsItem* YardMap::itemOf(const ThingId& thing) const {
  if (thing.isStand) {
    const auto it = m_stands.find(thing.key);
    return it == m_stands.end() ? nullptr : it->second;
  }
  const auto it = m_features.find(thing.key);
  return it == m_features.end() ? nullptr : it->second;
}

QRectF YardMap::viewportRectOf(const Thing& thing) const {
  const auto* item = itemOf(idOf(thing));
  if (!item) return {};
  const auto* feature = std::get_if<apiary::Feature>(&thing);
  if (feature && !feature->x2M) {
    const QPointF at = mapFromScene(item->pos());
    return {at - QPointF(kSignHalfPx, kSignHalfPx), QSizeF(2 * kSignHalfPx, 2 * kSignHalfPx)};
  }
  return QRectF(mapFromScene(item->sceneBoundingRect()).boundingRect());
}

// --- chosen ---------------------------------------------------------------------------------

std::optional<Thing> YardMap::chosenThing() const {
  return m_thing ? findThing(m_hub.season(), *m_thing) : std::nullopt;
}

void YardMap::chooseThing(std::optional<ThingId> thing) {
  if (thing == m_thing) return;
  m_thing = std::move(thing);
  viewport()->update();
  Q_EMIT thingChosen();
}

void YardMap::chooseNextThing() {
  if (!m_yard) return;
  const auto things = thingsOf(m_hub.season(), *m_yard);
  auto next = things.begin();
  if (m_thing) {
    next = std::find_if(things.begin(), things.end(),
                        [this](const Thing& each) { return idOf(each) == *m_thing; });
    if (next != things.end()) ++next;
  }
  if (next == things.end()) return chooseThing(std::nullopt);
  setMarked({});
  chooseThing(idOf(*next));
  if (const auto* item = itemOf(*m_thing)) reveal(item->scenePos());
}

bool YardMap::thingKey(const QKeyEvent& event) {
  if (!m_arranging) return false;
  if (event.key() == Qt::Key_S && event.modifiers() == Qt::NoModifier) {
    chooseNextThing();
    return true;
  }
  if (m_carriedThing && event.key() == Qt::Key_Escape) {
    letThingGo(std::nullopt);
    return true;
  }
  const auto thing = chosenThing();
  if (!thing || m_carriedThing) return false;
  if (const auto step = stepOf(event.key()); step && (event.modifiers() & Qt::ShiftModifier)) {
    if (mayDrag()) Q_EMIT thingShifted(*m_thing, *step, 0);
    return true;
  }
  switch (event.key()) {
    case Qt::Key_BracketLeft:
    case Qt::Key_BracketRight:
      if (mayDrag()) {
        Q_EMIT thingShifted(*m_thing, {},
                            event.key() == Qt::Key_BracketLeft ? -kTurnStepDeg : kTurnStepDeg);
      }
      return true;
    case Qt::Key_Delete:
      Q_EMIT thingRemoveAsked();
      return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      Q_EMIT thingChangeAsked();
      return true;
    case Qt::Key_Escape:
      chooseThing(std::nullopt);
      return true;
    default:
      return false;
  }
}

// --- dragged --------------------------------------------------------------------------------

bool YardMap::takeThing(const QPoint& point) {
  if (!mayArrange()) return false;
  const auto thing = thingAt(point);
  const auto* feature = thing ? std::get_if<apiary::Feature>(&*thing) : nullptr;
  // A picture lies under everything: a frame is drawn on it. Keys carry it, S chooses it.
  if (!thing || (feature && feature->kind == apiary::FeatureKind::Picture)) {
    chooseThing(std::nullopt);
    return false;
  }
  setMarked({});
  chooseThing(idOf(*thing));
  CarriedThing carried{idOf(*thing), point, mapToScene(point), false, {}};
  if (const auto* stand = std::get_if<apiary::Stand>(&*thing); stand && m_yard) {
    for (const auto& hive : m_hub.hives(*m_yard)) {
      if (hive.stand == stand->stand && hive.xM && hive.yM) {
        carried.hives[hive.hive] = m_hives.at(hive.hive)->pos();
      }
    }
  }
  m_carriedThing = std::move(carried);
  return true;
}

bool YardMap::takeStandOf(const base::HiveId& hive) {
  const auto* state = m_hub.hive(hive);
  if (!mayArrange() || !m_yard || !state || state->stand.empty()) return false;
  for (const auto& [key, item] : m_stands) {
    const auto* stand = m_hub.season().find<apiary::Stand>(key);
    if (!stand || stand->stand != state->stand) continue;
    m_hub.selectHive(hive);
    setMarked({});
    chooseThing(ThingId{true, key});
    CarriedThing carried{ThingId{true, key}, {}, {}, false, {}};
    for (const auto& each : m_hub.hives(*m_yard)) {
      if (each.stand == stand->stand && each.xM && each.yM) {
        carried.hives[each.hive] = m_hives.at(each.hive)->pos();
      }
    }
    m_carriedThing = std::move(carried);
    return true;
  }
  return false;
}

void YardMap::carryThing(const QPoint& point) {
  auto& carried = *m_carriedThing;
  if (!carried.moving &&
      (point - carried.pressed).manhattanLength() < QApplication::startDragDistance()) {
    return;
  }
  const auto thing = findThing(m_hub.season(), carried.id);
  auto* item = itemOf(carried.id);
  if (!thing || !item) return;
  carried.moving = true;
  const QPointF way = mapToScene(point) - carried.from;
  const QPointF home = std::visit([](const auto& row) { return QPointF(row.xM, -row.yM); }, *thing);
  item->setPos(home + way);
  for (const auto& [id, place] : carried.hives) {
    const auto hive = m_hives.find(id);
    if (hive == m_hives.end()) continue;
    hive->second->setCarried(true);
    hive->second->setPos(place + way);
  }
  viewport()->update();
  const QString far =
      distanceText(std::hypot(way.x(), way.y()), adapt::Units::from(m_hub.settings()));
  Q_EMIT dragHint(
      carried.hives.empty()
          ? tr("Corrects the drawing only: %1, %2 from where it was. Esc puts it back.")
                .arg(thingText(*thing), far)
          : tr("Corrects the drawing only: %1 with %n hives, %2 from where it was. Esc puts it "
               "back.",
               nullptr, static_cast<int>(carried.hives.size()))
                .arg(thingText(*thing), far));
}

void YardMap::letThingGo(std::optional<QPoint> point) {
  const CarriedThing carried = *m_carriedThing;
  m_carriedThing.reset();
  if (!carried.moving) return;
  // Home again; what is done moves it by a notice.
  for (const auto& [id, place] : carried.hives) {
    const auto hive = m_hives.find(id);
    if (hive == m_hives.end()) continue;
    hive->second->setCarried(false);
    hive->second->setPos(place);
  }
  refreshStands();
  refreshFeatures();
  layOut();
  Q_EMIT dragHint({});
  if (!point) return;
  const QPointF way = mapToScene(*point) - carried.from;
  // Whole centimetres, as for hives.
  Q_EMIT thingShifted(
      carried.id, QPointF(std::round(way.x() * 100) / 100, std::round(-way.y() * 100) / 100), 0);
}

}  // namespace outyard::yards
