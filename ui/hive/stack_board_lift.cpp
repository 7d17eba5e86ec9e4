// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QKeyEvent>
#include <QListWidget>
#include <QMouseEvent>
#include <algorithm>

#include "ui/hive/stack_board.h"
#include "ui/widgets/session_model.h"

// What is lifted, where it would land, and what becomes of it. Nothing is written before the drop.
namespace outyard::hive {

using widgets::StackPick;
using widgets::StackView;

namespace {

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

std::optional<Lift> StackBoard::liftOf(int which) const {
  const auto hive = hiveOf(which);
  auto picks = m_views[static_cast<std::size_t>(which)]->picked();
  if (!hive || picks.empty()) return std::nullopt;
  Lift lift;
  lift.hive = *hive;
  if (picks.back().slot == 0) {
    lift.what = Lift::What::Box;
    lift.position = picks.back().box;
    return lift;
  }
  std::sort(picks.begin(), picks.end());
  for (const StackPick& p : picks) {
    if (p.slot > 0) lift.combs.push_back({*hive, p.box, p.slot});
  }
  return lift;
}

std::optional<Lift> StackBoard::liftOfItem(const QListWidgetItem* item) const {
  if (!item) return std::nullopt;
  Lift lift;
  switch (item->data(kFreshRole).toInt()) {
    case kNewSuper:
    case kNewChamber:
      lift.what = Lift::What::FreshBox;
      lift.role = item->data(kFreshRole).toInt() == kNewSuper ? apiary::BoxRole::Super
                                                              : apiary::BoxRole::Chamber;
      return lift;
    case kNewDrawn:
    case kNewFoundation:
      lift.what = Lift::What::FreshComb;
      lift.fresh = item->data(kFreshRole).toInt() == kNewDrawn ? apiary::Goods::Drawn
                                                               : apiary::Goods::Foundation;
      return lift;
    default:
      break;
  }
  lift.key = item->data(kKeyRole).toString().toStdString();
  for (const auto& each : m_heapItems) {
    if (each.key != lift.key) continue;
    lift.what = each.wholeBox ? Lift::What::HeapBox : Lift::What::HeapComb;
    return lift;
  }
  return std::nullopt;
}

void StackBoard::beginLift(std::optional<Lift> lift) {
  endLift();
  if (const QString why = whyNothingMoves(); !why.isEmpty()) return say(why);
  m_lift = std::move(lift);
}

void StackBoard::endLift() {
  m_lift.reset();
  m_aim.reset();
  for (StackView* view : m_views) view->setMark(StackView::Mark::None);
  m_hives->clearSelection();
}

void StackBoard::aimAt(Landing landing, bool onto, StackView* view, const QString& where) {
  m_aim = tryLanding(m_hub, *m_lift, landing, today(), onto);
  const bool refused = !m_aim->why.isEmpty();
  for (StackView* each : m_views) {
    if (each != view) each->setMark(StackView::Mark::None);
  }
  if (view) {
    StackPick at{landing.box, m_lift->isBox() ? 0 : landing.slot};
    if (m_lift->what == Lift::What::Box && landing.hive == m_lift->hive &&
        landing.box > m_lift->position) {
      ++at.box;  // the line lies over the box that it goes above
    }
    view->setMark(m_aim->landing.exchange ? StackView::Mark::Onto : StackView::Mark::Between, at,
                  refused);
  }
  if (refused) return say(tr("Not here: %1").arg(m_aim->why));
  say(m_aim->landing.exchange ? tr("Comb for comb: %1").arg(where) : where);
}

void StackBoard::aim(const QPoint& global) {
  if (!m_lift) return;
  for (int i = 0; i < 2; ++i) {
    StackView* view = m_views[static_cast<std::size_t>(i)];
    const QPointF at = view->mapFromGlobal(global);
    const auto hive = hiveOf(i);
    if (!view->isVisible() || !hive || !QRectF(view->rect()).contains(at)) continue;
    Landing landing;
    landing.hive = hive;
    if (m_lift->isBox()) {
      landing.box = view->boxSpotAt(at);
      const bool own = m_lift->what == Lift::What::Box && m_lift->hive == *hive;
      if (own && landing.box > m_lift->position) --landing.box;
      return aimAt(landing, false, view,
                   tr("Box %1 of %2 afterwards").arg(landing.box).arg(qs(hive->str())));
    }
    const auto spot = view->combSpotAt(at);
    if (!spot) break;
    landing.box = spot->box;
    landing.slot = spot->slot;
    const QString where =
        tr("Box %1 of %2, slot %3").arg(spot->box).arg(qs(hive->str())).arg(spot->slot);
    aimAt(landing, false, view, where);
    const auto under = view->pickAt(at);
    if (!m_aim->why.isEmpty() && under && under->slot > 0) {
      landing.slot = under->slot;
      aimAt(landing, true, view,
            tr("Box %1 of %2, slot %3").arg(under->box).arg(qs(hive->str())).arg(under->slot));
    }
    return;
  }
  const auto inside = [&](const QWidget* w) {
    return w->isVisible() && w->rect().contains(w->mapFromGlobal(global));
  };
  if (inside(m_heap)) {
    Landing landing;
    landing.hive.reset();
    return aimAt(landing, false, nullptr, tr("Off to the gear heap"));
  }
  if (inside(m_hives)) {
    const auto* viewport = m_hives->viewport();
    if (auto* item = m_hives->itemAt(viewport->mapFromGlobal(global))) {
      m_hives->setCurrentItem(item);
      const base::HiveId hive(item->data(kKeyRole).toString().toStdString());
      return aimAt(usualLanding(m_hub, *m_lift, hive, today()), false, nullptr,
                   tr("Into %1").arg(qs(hive.str())));
    }
  }
  m_aim.reset();
  for (StackView* view : m_views) view->setMark(StackView::Mark::None);
  say(tr("Let go here and everything stays where it was."));
}

void StackBoard::stepAim(int which, int right, int up) {
  const auto hive = hiveOf(which);
  if (!m_lift || !hive) return;
  StackView* view = m_views[static_cast<std::size_t>(which)];
  Landing to;
  to.hive = hive;
  if (m_lift->isBox()) {
    to.box = std::clamp((m_aim ? m_aim->landing.box : m_lift->position) + up, 1, view->boxCount());
    return aimAt(to, false, view, tr("Box %1 afterwards").arg(to.box));
  }
  const auto& first = m_lift->combs.front();
  to.box = m_aim ? m_aim->landing.box : first.box;
  to.slot = m_aim ? m_aim->landing.slot : first.slot;
  const int before = to.box;
  to.box = std::clamp(to.box + up, 1, view->boxCount());
  to.slot += right;
  int low = 0, high = -1;  // slots in which they would stand where they stand
  for (const auto& c : m_lift->combs) {
    if (c.box != to.box) continue;
    low = low == 0 ? c.slot : std::min(low, c.slot);
    high = std::max(high, c.slot);
  }
  if (right > 0 && to.slot > low && to.slot <= high + 1) to.slot = high + 2;
  if (right < 0 && to.slot > low && to.slot <= high + 1) to.slot = low;
  to.slot = std::clamp(to.slot, 1, view->combCount(to.box) + 1);
  const QString where = tr("Box %1, slot %2").arg(to.box).arg(to.slot);
  aimAt(to, false, view, where);
  if (!m_aim->why.isEmpty() && to.box != first.box && to.slot <= view->combCount(to.box)) {
    aimAt(to, true, view, where);
  } else if (!m_aim->why.isEmpty() && to.box != before && to.slot > view->combCount(to.box)) {
    to.slot = std::max(1, view->combCount(to.box));
    aimAt(to, true, view, where);
  }
}

void StackBoard::drop() {
  const auto lift = m_lift;
  const auto aimed = m_aim;
  endLift();
  if (!lift) return;
  if (!aimed) return say(tr("Everything stays where it was."));
  if (!aimed->why.isEmpty()) return say(tr("Not moved: %1").arg(aimed->why));
  askMove(*lift, aimed->landing);
}

bool StackBoard::eventFilter(QObject* watched, QEvent* event) {
  if (watched == m_heap && event->type() == QEvent::KeyPress && m_lift &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    m_pressedItem.reset();
    endLift();
    say(tr("Everything stays where it was."));
    return true;
  }
  if (watched != m_heap->viewport()) return QWidget::eventFilter(watched, event);
  const auto* mouse = static_cast<QMouseEvent*>(event);
  switch (event->type()) {
    case QEvent::MouseButtonPress:
      if (mouse->button() == Qt::LeftButton && m_heap->itemAt(mouse->pos())) {
        m_pressedItem = mouse->pos();
      }
      break;
    case QEvent::MouseMove:
      if (!m_pressedItem) break;
      if (!m_lift) {
        if ((mouse->pos() - *m_pressedItem).manhattanLength() < QApplication::startDragDistance()) {
          return true;
        }
        beginLift(liftOfItem(m_heap->itemAt(*m_pressedItem)));
      }
      aim(mouse->globalPosition().toPoint());
      return true;
    case QEvent::MouseButtonRelease:
      m_pressedItem.reset();
      if (!m_lift) break;
      aim(mouse->globalPosition().toPoint());
      drop();
      return true;
    default:
      break;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace outyard::hive
