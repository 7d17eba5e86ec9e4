// SPDX-License-Identifier: GPL-3.0-or-later
// The yard map by keyboard, and what is painted over it.
#include <QFontMetricsF>
#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>
#include <QScrollBar>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "ui/adapt/units.h"
#include "ui/widgets/theme.h"
#include "ui/yards/arrange.h"
#include "ui/yards/yard_map.h"

namespace outyard::yards {
namespace {

using sheet::Ink;
using widgets::inkColour;

std::optional<QPointF> arrowOf(int key) {
  switch (key) {
    case Qt::Key_Left:
      return QPointF(-1, 0);
    case Qt::Key_Right:
      return QPointF(1, 0);
    case Qt::Key_Up:
      return QPointF(0, -1);
    case Qt::Key_Down:
      return QPointF(0, 1);
    default:
      return std::nullopt;
  }
}

constexpr int kPanPx = 60;
constexpr double kStepMetres = 0.1;

}  // namespace

void YardMap::keyPressEvent(QKeyEvent* event) {
  if (rulerKey(*event) || thingKey(*event)) return;
  if (const auto direction = arrowOf(event->key())) {
    if (event->modifiers() & Qt::ControlModifier || !m_hub.selection().hive) {
      const QPointF by = *direction * kPanPx;
      horizontalScrollBar()->setValue(horizontalScrollBar()->value() + static_cast<int>(by.x()));
      verticalScrollBar()->setValue(verticalScrollBar()->value() + static_cast<int>(by.y()));
      m_userZoomed = true;
    } else if (event->modifiers() & Qt::ShiftModifier) {
      if (m_arranging) nudgeChosen(*direction * kStepMetres);
    } else {
      stepHive(*direction);
    }
    return;
  }
  switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      zoomBy(1.25);
      return;
    case Qt::Key_Minus:
      zoomBy(0.8);
      return;
    case Qt::Key_0:
      fit();
      return;
    case Qt::Key_BracketLeft:
    case Qt::Key_BracketRight:
      if (m_arranging) {
        Q_EMIT turnAsked(event->key() == Qt::Key_BracketLeft ? -kTurnStepDeg : kTurnStepDeg);
      } else {
        event->ignore();
      }
      return;
    case Qt::Key_A:
      if (event->modifiers() == Qt::ControlModifier) {
        markAll();
      } else {
        event->ignore();
      }
      return;
    case Qt::Key_Escape:
      if (m_drag && m_drag->moving) {
        cancelDrag();
      } else if (m_band || !m_marked.empty()) {
        m_band.reset();
        setMarked({});
      } else {
        event->ignore();
      }
      return;
    case Qt::Key_Space:
      if (!event->isAutoRepeat()) m_space = true;
      return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (m_hub.selection().hive) Q_EMIT hiveOpened(*m_hub.selection().hive);
      return;
    default:
      // Not to the base class: it would scroll by keys of its own.
      event->ignore();
  }
}

void YardMap::keyReleaseEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) m_space = false;
  event->ignore();
}

bool YardMap::focusNextPrevChild(bool next) {
  // Tab walks through the hives, and leaves the map after the last one.
  return stepInOrder(next ? 1 : -1) || QGraphicsView::focusNextPrevChild(next);
}

bool YardMap::stepInOrder(int by) {
  const auto hives = order();
  if (hives.empty()) return false;
  const auto chosen = m_hub.selection().hive;
  const auto it = chosen ? std::find(hives.begin(), hives.end(), *chosen) : hives.end();
  if (it == hives.end()) {
    m_hub.selectHive(by > 0 ? hives.front() : hives.back());
  } else {
    const auto index = std::distance(hives.begin(), it) + by;
    if (index < 0 || index >= static_cast<std::ptrdiff_t>(hives.size())) return false;
    m_hub.selectHive(hives[static_cast<std::size_t>(index)]);
  }
  if (const auto* item = this->item(*m_hub.selection().hive)) reveal(item->scenePos());
  return true;
}

void YardMap::reveal(QPointF spot) {
  // Not ensureVisible(item): marks keep their pixels at every zoom, so that the view would take a
  // mark's size for metres and jump away.
  constexpr int kMarginPx = 60;
  ensureVisible(QRectF(spot, QSizeF(0.01, 0.01)), kMarginPx, kMarginPx);
}

void YardMap::stepHive(QPointF direction) {
  const auto chosen = m_hub.selection().hive;
  const auto* from = chosen ? item(*chosen) : nullptr;
  if (!from) {
    stepInOrder(1);
    return;
  }
  const HiveItem* best = nullptr;
  double least = std::numeric_limits<double>::max();
  for (const auto& [id, hive] : m_hives) {
    if (hive == from) continue;
    const QPointF way = hive->pos() - from->pos();
    const double along = way.x() * direction.x() + way.y() * direction.y();
    const double aside = std::abs(way.x() * direction.y()) + std::abs(way.y() * direction.x());
    if (along <= 0.01 || aside > along * 2) continue;
    const double cost = along + 2 * aside;
    if (cost < least) {
      least = cost;
      best = hive;
    }
  }
  if (!best) return;
  m_hub.selectHive(best->hive());
  reveal(best->scenePos());
}

void YardMap::nudgeChosen(QPointF metres) {
  if (m_marked.size() > 1) {
    if (!mayDrag()) return;
    auto spots = spotsOf(m_hub, chosenHives());
    for (auto& spot : spots) {
      spot.xM += metres.x();
      spot.yM -= metres.y();
    }
    Q_EMIT arrangedAll(spots);
    return;
  }
  const auto chosen = m_hub.selection().hive;
  const auto* hive = chosen ? item(*chosen) : nullptr;
  if (!hive || !mayDrag()) return;
  auto spot = spotFor(*chosen, hive->pos() + metres, false);
  if (const auto* state = m_hub.hive(*chosen)) spot.stand = state->stand;
  Q_EMIT arranged(spot);
}

// --- painted over the map -----------------------------------------------------------------------

void YardMap::drawForeground(QPainter* painter, const QRectF& /*rect*/) {
  painter->save();
  painter->resetTransform();
  // High-density screens and pages: resetTransform takes their scale away too.
  const double ratio = viewport()->devicePixelRatioF();
  painter->scale(ratio, ratio);
  painter->setRenderHint(QPainter::Antialiasing);
  const QRectF area(viewport()->rect());
  if (m_yard) {
    paintArrowLabels(*painter);
    paintNorth(*painter, area);
    paintScaleBar(*painter, area);
    paintBand(*painter);
    paintTools(*painter);
  } else {
    painter->setPen(palette().color(QPalette::PlaceholderText));
    painter->drawText(area, Qt::AlignCenter,
                      m_hub.isOpen() ? tr("No yard yet. Add one with the button on the left.")
                                     : tr("No season is open."));
  }
  painter->restore();
}

void YardMap::paintNorth(QPainter& painter, const QRectF& area) const {
  const auto* yard = m_hub.season().yard(*m_yard);
  painter.save();
  painter.translate(area.right() - 30, area.top() + 36);
  painter.rotate(yard ? yard->northDeg.value_or(0) : 0);
  const QColor ink = inkColour(palette(), Ink::Text);
  painter.setPen(QPen(ink, 1.6));
  painter.drawLine(QPointF(0, 14), QPointF(0, -10));
  painter.setBrush(ink);
  painter.drawPolygon(QPolygonF{QPointF(0, -16), QPointF(-5, -6), QPointF(5, -6)});
  QFont bold = font();
  bold.setPixelSize(12);
  bold.setBold(true);
  painter.setFont(bold);
  //: North, on the map.
  painter.drawText(QRectF(-12, -32, 24, 15), Qt::AlignCenter, tr("N"));
  painter.restore();
}

void YardMap::paintScaleBar(QPainter& painter, const QRectF& area) const {
  const auto units = adapt::Units::from(m_hub.settings());
  const double pxPerUnit = pxPerMetre() * units.lengthFrom(1).value;
  double length = 1;
  for (const double candidate : {0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0}) {
    length = candidate;
    if (candidate * pxPerUnit >= 70) break;
  }
  const double px = length * pxPerUnit;
  const QPointF right(area.right() - 18, area.bottom() - 16);
  const QPointF left = right - QPointF(px, 0);
  painter.setPen(QPen(inkColour(palette(), Ink::Text), 1.4));
  painter.drawLine(left, right);
  painter.drawLine(left - QPointF(0, 4), left + QPointF(0, 4));
  painter.drawLine(right - QPointF(0, 4), right + QPointF(0, 4));
  QFont small = font();
  small.setPixelSize(12);
  painter.setFont(small);
  painter.drawText(QRectF(left.x(), left.y() - 20, px, 16), Qt::AlignCenter,
                   units.text(units.lengthFrom(length), length < 1 ? 1 : 0));
}

void YardMap::paintArrows(QPainter& painter) const {
  for (const auto& arrow : m_arrows) {
    const auto* from = item(arrow.from);
    const auto* to = item(arrow.to);
    if (!from || !to) continue;
    const QPointF a = markCentre(arrow.from), b = markCentre(arrow.to);
    const QPointF way = b - a;
    const double length = std::hypot(way.x(), way.y());
    if (length < 1) continue;
    // A bow to the upper side, so that arrows of neighbours do not lie on each other.
    QPointF side(way.y() / length, -way.x() / length);
    if (side.y() > 0) side = -side;
    const QPointF bend = (a + b) / 2 + side * std::clamp(length * 0.22, 22.0, 70.0);
    const auto clipped = [](QPointF centre, QPointF towards, double away) {
      const QPointF d = towards - centre;
      return centre + d * (away / std::max(1.0, std::hypot(d.x(), d.y())));
    };
    const QPointF start = clipped(a, bend, 16), end = clipped(b, bend, 22);
    QPainterPath path(start);
    path.quadTo(bend, end);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette().color(QPalette::Base), 5, Qt::SolidLine, Qt::RoundCap));
    painter.drawPath(path);
    const QColor ink = inkColour(palette(), Ink::Arrow);
    painter.setPen(QPen(ink, 2.2, Qt::SolidLine, Qt::RoundCap));
    painter.drawPath(path);
    const QPointF tail = end - bend;
    const double angle = std::atan2(tail.y(), tail.x());
    const auto barb = [&](double turn) {
      return end - QPointF(std::cos(angle + turn), std::sin(angle + turn)) * 11;
    };
    painter.setBrush(ink);
    painter.drawPolygon(QPolygonF{end, barb(0.42), barb(-0.42)});
  }
}

void YardMap::paintArrowLabels(QPainter& painter) const {
  // Over all arrows, at the small colony, where they hide least.
  QFont bold = font();
  bold.setPixelSize(12);
  bold.setBold(true);
  painter.setFont(bold);
  std::vector<QRectF> taken;
  for (const auto& [id, hive] : m_hives) {
    if (hive->isVisible()) taken.push_back(hive->occupied().translated(mapFromScene(hive->pos())));
  }
  const QRectF room = QRectF(viewport()->rect()).adjusted(4, 4, -4, -4);
  for (const auto& arrow : m_arrows) {
    const auto* at = item(arrow.labelAt);
    if (!at) continue;
    const QRectF mark = at->occupied().translated(mapFromScene(at->pos()));
    const QSizeF size(QFontMetricsF(bold).horizontalAdvance(arrow.label) + 10, 18);
    QRectF best;
    double least = std::numeric_limits<double>::max();
    for (int ring = 0; ring < 4; ++ring) {
      const double away = 4 + ring * 14;
      const QPointF centres[] = {{mark.center().x(), mark.top() - away - size.height() / 2},
                                 {mark.center().x(), mark.bottom() + away + size.height() / 2},
                                 {mark.left() - away - size.width() / 2, mark.center().y()},
                                 {mark.right() + away + size.width() / 2, mark.center().y()},
                                 {mark.left() - away, mark.top() - away - size.height() / 2},
                                 {mark.right() + away, mark.top() - away - size.height() / 2},
                                 {mark.left() - away, mark.bottom() + away + size.height() / 2},
                                 {mark.right() + away, mark.bottom() + away + size.height() / 2}};
      for (const QPointF& centre : centres) {
        const QRectF box(centre - QPointF(size.width() / 2, size.height() / 2), size);
        double cost = 30.0 * ring;
        for (const QRectF& other : taken) {
          const QRectF common = box.intersected(other);
          cost += 4 * common.width() * common.height();
        }
        const QRectF inside = box.intersected(room);
        cost += 8 * (box.width() * box.height() - inside.width() * inside.height());
        if (cost < least) {
          least = cost;
          best = box;
        }
      }
    }
    taken.push_back(best);
    painter.setPen(QPen(inkColour(palette(), Ink::Arrow), 1));
    painter.setBrush(palette().color(QPalette::Base));
    painter.drawRoundedRect(best, 3, 3);
    painter.setPen(inkColour(palette(), Ink::Text));
    painter.drawText(best, Qt::AlignCenter, arrow.label);
  }
}

}  // namespace outyard::yards
