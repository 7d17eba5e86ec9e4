// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/yard_map.h"

#include <QScrollBar>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>
#include <set>

#include "core/sheet/marks.h"
#include "ui/adapt/words.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/hive_facts.h"
#include "ui/widgets/theme.h"
#include "ui/yards/mark_layout.h"

namespace outyard::yards {
namespace {

constexpr double kLeastPxPerMetre = 1.5, kMostPxPerMetre = 400;
/// The mark grows with the zoom as a hive of about a metre would, between its limits.
constexpr double kMarkMetres = 0.9;
constexpr double kLeastMarkWidthPx = kLeastMarkPx * sheet::kMarkWidthMm / sheet::kMarkHeightMm;
constexpr double kMostNudgePx = 48;

QPointF sceneOf(const apiary::HiveState& hive) {
  return {hive.xM.value_or(0), -hive.yM.value_or(0)};
}

/// "3–5 thousand": an arrow's label says no more than the forecast knows.
QString gainText(const planning::Gain& gain) {
  constexpr double kThousand = 1000;
  if (gain.low < kThousand / 2) {
    return YardMap::tr("%1–%2 bees")
        .arg(adapt::roundNumber(std::max(0.0, gain.low)), adapt::roundNumber(gain.high));
  }
  const auto low = std::lround(gain.low / kThousand), high = std::lround(gain.high / kThousand);
  return low == high ? YardMap::tr("about %1 thousand").arg(low)
                     : YardMap::tr("%1–%2 thousand").arg(low).arg(high);
}

QString textOf(const base::HiveId& hive) {
  return QString::fromStdString(hive.str());
}

}  // namespace

std::vector<PairArrow> pairArrows(const planning::BoostPlan& plan) {
  std::vector<PairArrow> arrows;
  for (const auto& id : plan.chosen) {
    const auto* option = plan.option(id);
    if (!option || !option->donorHive) continue;
    // A small colony is carried onto its donor; everything else is carried to the small colony.
    const bool goesToDonor =
        option->method == apiary::Method::Stack || option->method == apiary::Method::Unite;
    arrows.push_back(
        {goesToDonor ? option->hive : *option->donorHive,
         goesToDonor ? *option->donorHive : option->hive, option->hive,
         YardMap::tr("%1 gains %2").arg(textOf(option->hive), gainText(option->gain))});
  }
  return arrows;
}

YardMap::YardMap(widgets::SeasonHub& hub, QWidget* parent) : QGraphicsView(parent), m_hub(hub) {
  setScene(&m_scene);
  setObjectName(QStringLiteral("yardMap"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setFrameShape(QFrame::StyledPanel);
  setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  setViewportUpdateMode(FullViewportUpdate);  // north and scale bar stay in their corners
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setTransformationAnchor(NoAnchor);
  setResizeAnchor(AnchorViewCenter);
  setMinimumSize(320, 240);
  m_ground = new GroundItem;
  m_ground->setZValue(-1);
  m_scene.addItem(m_ground);
  m_arrowLayer = new ArrowLayer([this](QPainter& painter) { paintArrows(painter); });
  m_scene.addItem(m_arrowLayer);
  connect(&m_hub, &widgets::SeasonHub::selectionChanged, this, [this] {
    chooseThing(std::nullopt);
    dropStaleMarks();
    if (m_hub.selection().yard != m_yard) {
      refresh();
    } else {
      refreshChosen();
    }
  });
}

YardMap::~YardMap() = default;

// --- what is shown ------------------------------------------------------------------------------

void YardMap::refresh() {
  if (m_drag && m_drag->moving) cancelDrag();
  m_carriedThing.reset();
  const auto yard = m_hub.selection().yard;
  const bool other = yard != m_yard;
  m_yard = yard;
  refreshGround();
  refreshStands();
  refreshFeatures();
  refreshHives();
  dropStaleMarks();
  if (other || !m_fitted) {
    fit();
  } else {
    layOut();
  }
}

QRectF YardMap::hivesRect() const {
  QRectF rect;
  if (!m_yard) return rect;
  for (const auto& hive : m_hub.hives(*m_yard)) {
    if (!hive.xM || !hive.yM) continue;
    const QRectF at(sceneOf(hive) - QPointF(0.5, 0.5), QSizeF(1, 1));
    rect = rect.isNull() ? at : rect.united(at);
  }
  return rect;
}

QRectF YardMap::groundRect() const {
  const auto* yard = m_yard ? m_hub.season().yard(*m_yard) : nullptr;
  QRectF ground;
  if (yard && yard->widthM && yard->lengthM) {
    ground = QRectF(0, -*yard->lengthM, *yard->widthM, *yard->lengthM);
  }
  const QRectF hives = hivesRect();
  if (ground.isNull()) {
    // Nobody measured the ground: draw what the hives need.
    ground = hives.isNull() ? QRectF(0, -20, 30, 20) : hives.adjusted(-3, -3, 3, 3);
  } else if (!hives.isNull()) {
    ground = ground.united(hives.adjusted(-0.5, -0.5, 0.5, 0.5));
  }
  return ground;
}

void YardMap::refreshGround() {
  setBackgroundBrush(palette().color(QPalette::Base));
  m_ground->setVisible(m_yard.has_value());
  const QRectF ground = groundRect();
  m_ground->setGround(ground, palette());
  const double wide = std::max(ground.width(), ground.height());
  m_scene.setSceneRect(ground.adjusted(-wide, -wide, wide, wide));
  m_arrowLayer->setArea(m_scene.sceneRect());
}

void YardMap::refreshStands() {
  std::set<std::string> here;
  for (const auto& [key, stand] : m_hub.season().table<apiary::Stand>()) {
    if (!m_yard || stand.yard != *m_yard) continue;
    here.insert(key);
    auto& item = m_stands[key];
    if (!item) {
      item = new StandItem;
      m_scene.addItem(item);
    }
    item->setStand(stand, pxPerMetre(), palette());
  }
  for (auto it = m_stands.begin(); it != m_stands.end();) {
    if (here.count(it->first)) {
      ++it;
    } else {
      delete it->second;
      it = m_stands.erase(it);
    }
  }
}

void YardMap::refreshFeatures() {
  const QString folder = m_hub.path().section(u'/', 0, -2) + QStringLiteral("/pictures");
  std::set<std::string> here;
  for (const auto& [key, feature] : m_hub.season().table<apiary::Feature>()) {
    if (!m_yard || feature.yard != *m_yard) continue;
    here.insert(key);
    auto& item = m_features[key];
    if (!item) {
      item = new FeatureItem;
      m_scene.addItem(item);
    }
    item->setFeature(feature, folder, palette(), font());
    const bool picture = feature.kind == apiary::FeatureKind::Picture;
    item->setVisible(!picture || m_picturePercent > 0);
    item->setOpacity(picture ? m_picturePercent / 100.0 : 1.0);
  }
  for (auto it = m_features.begin(); it != m_features.end();) {
    if (here.count(it->first)) {
      ++it;
    } else {
      delete it->second;
      it = m_features.erase(it);
    }
  }
}

void YardMap::refreshHives() {
  std::set<base::HiveId> here;
  if (m_yard) {
    const auto& judgements = m_hub.judgements(*m_yard);
    const auto expected = m_hub.forecasts().expectedIn(*m_yard, m_hub.shownDate());
    const auto seenUpTo = std::min(m_hub.shownDate(), m_hub.workingDate());
    for (const auto& hive : m_hub.hives(*m_yard)) {
      here.insert(hive.hive);
      auto& item = m_hives[hive.hive];
      if (!item) {
        item = new HiveItem(hive.hive);
        m_scene.addItem(item);
      }
      item->setPos(sceneOf(hive));
      auto input = sheet::markInput(m_hub.season(), hive, judgements, seenUpTo);
      sheet::addExpected(input, hive, expected);
      item->setLook(widgets::makeMark(input),
                    QString::fromStdString(sheet::markLetters(hive, judgements)), palette(),
                    font());
      item->setToolTip(widgets::hiveFacts(m_hub, hive).sentence());
    }
  }
  for (auto it = m_hives.begin(); it != m_hives.end();) {
    if (here.count(it->first)) {
      ++it;
    } else {
      delete it->second;
      it = m_hives.erase(it);
    }
  }
  const auto* yard = m_yard ? m_hub.season().yard(*m_yard) : nullptr;
  setAccessibleName(yard ? tr("Map of %1").arg(QString::fromStdString(yard->name))
                         : tr("Map, no yard chosen"));
  setAccessibleDescription(
      tr("%1 hives. The table shows the same facts as text.").arg(here.size()));
}

double YardMap::pxPerMetre() const {
  return transform().m11();
}

void YardMap::layOut() {
  const double scale = pxPerMetre();
  const double mark = std::clamp(kMarkMetres * scale, kLeastMarkWidthPx, kMostMarkPx);
  std::vector<HiveItem*> items;
  std::vector<QPointF> places;
  std::vector<QSizeF> cells;
  for (auto& [id, item] : m_hives) {
    item->setMarkWidth(mark);
    item->setNudge({});
    items.push_back(item);
    const QRectF cell = item->occupied();
    places.push_back(item->pos() * scale + cell.center());
    cells.push_back(cell.size() + QSizeF(2, 1));
  }
  const auto layout = layoutMarks(places, cells, kMostNudgePx);
  for (std::size_t i = 0; i < items.size(); ++i) {
    items[i]->setNudge(layout.nudge[i]);
    items[i]->setVisible(true);
  }
  for (auto* group : m_groups) delete group;
  m_groups.clear();
  m_groupOf.clear();
  for (const auto& members : layout.groups) {
    std::vector<base::HiveId> hives;
    QPointF middle;
    for (const int member : members) {
      auto* item = items[static_cast<std::size_t>(member)];
      item->setVisible(false);
      hives.push_back(item->hive());
      m_groupOf[item->hive()] = m_groups.size();
      middle += item->pos() / static_cast<double>(members.size());
    }
    auto* group = new GroupItem;
    group->setPos(middle);
    group->setGroup(hives, {}, false, palette(), font());
    m_scene.addItem(group);
    m_groups.push_back(group);
  }
  for (auto& [key, item] : m_stands) {
    const auto* stand = m_hub.season().find<apiary::Stand>(key);
    if (stand) item->setStand(*stand, scale, palette());
  }
  refreshChosen();
}

void YardMap::refreshChosen() {
  const auto chosen = m_hub.selection().hive;
  for (auto& [id, item] : m_hives) item->setChosen(id == chosen || m_marked.count(id) > 0);
  for (auto* group : m_groups) {
    QString letters;
    bool holds = false;
    for (const auto& hive : group->hives()) {
      holds = holds || hive == chosen;
      for (const QChar letter : m_hives.at(hive)->letters()) {
        if (!letters.contains(letter)) letters += letter;
      }
    }
    group->setGroup(group->hives(), letters, holds, palette(), font());
  }
  viewport()->update();
}

void YardMap::setArrows(std::vector<PairArrow> arrows) {
  m_arrows = std::move(arrows);
  viewport()->update();
}

void YardMap::setArranging(bool arranging) {
  m_arranging = arranging;
  if (m_drag) cancelDrag();
  m_band.reset();
  if (m_carriedThing) letThingGo(std::nullopt);
  if (!arranging) {
    chooseThing(std::nullopt);
    setMarked({});
  }
  viewport()->update();
}

// --- zoom and pan -------------------------------------------------------------------------------

void YardMap::fit() {
  QRectF area = hivesRect();
  area = area.isNull() ? groundRect() : area.adjusted(-1.2, -1.2, 1.2, 1.6);
  const double scale = std::clamp(std::min((viewport()->width() - 60) / area.width(),
                                           (viewport()->height() - 96) / area.height()),
                                  kLeastPxPerMetre, 90.0);
  setTransform(QTransform::fromScale(scale, scale));
  centerOn(area.center());
  m_fitted = isVisible();
  m_userZoomed = false;
  layOut();
}

void YardMap::zoomBy(double factor) {
  zoomBy(factor, viewport()->rect().center());
}

void YardMap::zoomBy(double factor, QPointF about) {
  const double scale = std::clamp(pxPerMetre() * factor, kLeastPxPerMetre, kMostPxPerMetre);
  const QPointF before = mapToScene(about.toPoint());
  setTransform(QTransform::fromScale(scale, scale));
  const QPointF now = mapToScene(about.toPoint());
  const QPointF middle = mapToScene(viewport()->rect().center());
  centerOn(middle + before - now);
  m_userZoomed = true;
  layOut();
}

void YardMap::wheelEvent(QWheelEvent* event) {
  if (event->angleDelta().y() == 0 || (m_drag && m_drag->moving)) return;
  zoomBy(std::pow(1.0015, event->angleDelta().y()), event->position());
  event->accept();
}

void YardMap::resizeEvent(QResizeEvent* event) {
  QGraphicsView::resizeEvent(event);
  if (!m_userZoomed) fit();
}

void YardMap::changeEvent(QEvent* event) {
  QGraphicsView::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) refresh();
}

QPointF YardMap::metresAt(const QPoint& viewportPoint) const {
  const QPointF scene = mapToScene(viewportPoint);
  return {scene.x(), -scene.y()};
}

// --- finding ------------------------------------------------------------------------------------

const HiveItem* YardMap::item(const base::HiveId& hive) const {
  const auto it = m_hives.find(hive);
  return it == m_hives.end() ? nullptr : it->second;
}

QPoint YardMap::markCentre(const base::HiveId& hive) const {
  const auto* found = item(hive);
  if (!found) return {};
  const auto group = m_groupOf.find(hive);
  if (group != m_groupOf.end()) return mapFromScene(m_groups[group->second]->pos());
  return mapFromScene(found->pos()) + found->markRect().center().toPoint();
}

HiveItem* YardMap::hiveAt(const QPoint& point) const {
  HiveItem* best = nullptr;
  for (const auto& [id, hive] : m_hives) {
    if (!hive->isVisible()) continue;
    const QPointF local = point - QPointF(mapFromScene(hive->pos()));
    if (!hive->shape().contains(local)) continue;
    if (!best || hive->zValue() > best->zValue()) best = hive;
  }
  return best;
}

GroupItem* YardMap::groupAt(const QPoint& point) const {
  for (auto* group : m_groups) {
    const QPointF local = point - QPointF(mapFromScene(group->pos()));
    if (group->boundingRect().contains(local)) return group;
  }
  return nullptr;
}

std::vector<base::HiveId> YardMap::order() const {
  // By rows from the top of the drawing, each from left to right; a row is as deep as a pallet.
  std::vector<std::pair<std::pair<double, double>, base::HiveId>> places;
  for (const auto& [id, hive] : m_hives) {
    places.push_back({{std::floor(hive->pos().y() / 1.5), hive->pos().x()}, id});
  }
  std::sort(places.begin(), places.end());
  std::vector<base::HiveId> hives;
  for (const auto& [place, id] : places) hives.push_back(id);
  return hives;
}

// --- groups -------------------------------------------------------------------------------------

void YardMap::openGroup(const GroupItem& group) {
  QRectF area;
  for (const auto& id : group.hives()) {
    const QRectF at(m_hives.at(id)->pos() - QPointF(0.3, 0.3), QSizeF(0.6, 0.6));
    area = area.isNull() ? at : area.united(at);
  }
  const base::HiveId first = group.hives().front();
  const double scale = std::clamp(std::min(viewport()->width() * 0.6 / area.width(),
                                           viewport()->height() * 0.6 / area.height()),
                                  pxPerMetre() * 1.6, kMostPxPerMetre);
  setTransform(QTransform::fromScale(scale, scale));
  centerOn(area.center());
  m_userZoomed = true;
  m_hub.selectHive(first);
  layOut();
}

}  // namespace outyard::yards
