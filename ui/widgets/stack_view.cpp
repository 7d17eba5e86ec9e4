// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/stack_view.h"

#include <QApplication>
#include <QContextMenuEvent>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <QTransform>
#include <algorithm>

#include "ui/print/painter.h"
#include "ui/widgets/shape_bounds.h"
#include "ui/widgets/theme.h"

namespace outyard::widgets {
namespace {

constexpr double kMarginPx = 2;
/// A comb's face of one box stays readable and a lone box does not fill the panel.
constexpr double kMostPxPerMm = 4.5;
/// Room for the numbered grips of the boxes.
constexpr double kGripPx = 24;

}  // namespace

StackView::StackView(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Preferred);
  setAccessibleName(tr("Stack of boxes"));
}

void StackView::setDrawing(sheet::StackDrawing drawing, const QString& description) {
  m_drawing = std::move(drawing);
  m_boundsMm = boundsOf(m_drawing.shapes);
  m_description = description;
  setToolTip(description);
  std::erase_if(m_picked, [this](const StackPick& p) {
    return p.box > boxCount() || p.slot > combCount(p.box);
  });
  describe();
  updateGeometry();
  update();
}

void StackView::clear() {
  setDrawing({}, {});
}

QSize StackView::sizeHint() const {
  if (m_boundsMm.isEmpty()) return {240, 24};
  const double scale = std::min(kMostPxPerMm, 280 / m_boundsMm.width());
  return {static_cast<int>(m_boundsMm.width() * scale) + 4,
          static_cast<int>(m_boundsMm.height() * scale) + 4};
}

QSize StackView::minimumSizeHint() const {
  return m_boundsMm.isEmpty() ? QSize(80, 0) : QSize(120, 60);
}

QTransform StackView::toPixels() const {
  const double left = m_movable ? kGripPx : 0;
  const double scale =
      std::min({kMostPxPerMm, (width() - left - 2 * kMarginPx) / m_boundsMm.width(),
                (height() - 2 * kMarginPx) / m_boundsMm.height()});
  QTransform transform;
  // Where boxes are moved the hive stands on the ground, with room above for the next box.
  const double top = m_movable ? height() - kMarginPx - m_boundsMm.height() * scale : kMarginPx;
  transform.translate(kMarginPx + left, top);
  transform.scale(scale, scale);
  transform.translate(-m_boundsMm.left(), -m_boundsMm.top());
  return transform;
}

std::optional<int> StackView::boxAt(const QPointF& point) const {
  if (m_boundsMm.isEmpty()) return std::nullopt;
  const QPointF mm = toPixels().inverted().map(point);
  for (const auto& box : m_drawing.boxes) {
    if (QRectF(box.corner.x, box.corner.y, box.widthMm, box.heightMm).contains(mm)) {
      return box.position;
    }
  }
  return std::nullopt;
}

void StackView::setMovable(bool movable) {
  m_movable = movable;
  setFocusPolicy(movable ? Qt::StrongFocus : Qt::NoFocus);
  update();
}

int StackView::combCount(int box) const {
  return static_cast<int>(std::count_if(m_drawing.frames.begin(), m_drawing.frames.end(),
                                        [&](const auto& f) { return f.box == box; }));
}

QRectF StackView::rectOf(const StackPick& pick) const {
  const QTransform px = toPixels();
  if (pick.slot == 0) {
    for (const auto& b : m_drawing.boxes) {
      if (b.position == pick.box) {
        return px.mapRect(QRectF(b.corner.x, b.corner.y, b.widthMm, b.heightMm));
      }
    }
    return {};
  }
  for (const auto& f : m_drawing.frames) {
    if (f.box == pick.box && f.slot == pick.slot) {
      return px.mapRect(QRectF(f.corner.x, f.corner.y, f.widthMm, f.heightMm));
    }
  }
  return {};
}

QRectF StackView::gripOf(int box) const {
  const QRectF r = rectOf({box, 0});
  return {r.left() - kGripPx, r.top(), kGripPx - 3, r.height()};
}

QPointF StackView::middleOf(const StackPick& pick) const {
  return pick.slot == 0 ? gripOf(pick.box).center() : rectOf(pick).center();
}

std::optional<StackPick> StackView::pickAt(const QPointF& point) const {
  if (m_boundsMm.isEmpty()) return std::nullopt;
  for (const auto& f : m_drawing.frames) {
    if (rectOf({f.box, f.slot}).contains(point)) return StackPick{f.box, f.slot};
  }
  for (const auto& b : m_drawing.boxes) {
    if (gripOf(b.position).contains(point)) return StackPick{b.position, 0};
  }
  if (const auto box = boxAt(point)) return StackPick{*box, 0};
  return std::nullopt;
}

std::optional<StackPick> StackView::combSpotAt(const QPointF& point) const {
  for (const auto& b : m_drawing.boxes) {
    const QRectF r = rectOf({b.position, 0});
    if (point.y() < r.top() || point.y() > r.bottom()) continue;
    StackPick spot{b.position, 1};
    for (const auto& f : m_drawing.frames) {
      if (f.box == b.position && rectOf({f.box, f.slot}).center().x() < point.x()) {
        spot.slot = f.slot + 1;
      }
    }
    return spot;
  }
  return std::nullopt;
}

int StackView::boxSpotAt(const QPointF& point) const {
  int under = 0;
  for (const auto& b : m_drawing.boxes) {
    under += rectOf({b.position, 0}).center().y() > point.y() ? 1 : 0;
  }
  return under + 1;
}

void StackView::setPicked(std::vector<StackPick> picks) {
  if (picks == m_picked) return;
  m_picked = std::move(picks);
  describe();
  update();
  Q_EMIT pickedChanged();
}

void StackView::setMark(Mark mark, const StackPick& at, bool refused) {
  m_mark = mark;
  m_markAt = at;
  m_refused = refused;
  update();
}

void StackView::describe() {
  QString text = m_description;
  if (!m_picked.empty() && m_words) text = m_words(m_picked.back());
  setAccessibleDescription(text);
}

void StackView::paintEvent(QPaintEvent* /*event*/) {
  if (m_boundsMm.isEmpty()) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.save();
  painter.setTransform(toPixels(), true);
  print::paintShapes(painter, m_drawing.shapes, drawingPalette(palette()));
  painter.restore();
  if (!m_movable) return;
  painter.setPen(palette().color(QPalette::WindowText));
  for (const auto& b : m_drawing.boxes) {
    const QRectF grip = gripOf(b.position);
    painter.drawText(grip.adjusted(0, 0, -7, 0), Qt::AlignCenter, QString::number(b.position));
    // Two rows of dots say that this is where to take hold.
    for (int i = -1; i <= 1; ++i) {
      for (int k = 0; k < 2; ++k) {
        painter.fillRect(QRectF(grip.right() - 6 + 3 * k, grip.center().y() + 4 * i - 1, 1.6, 1.6),
                         palette().color(QPalette::WindowText));
      }
    }
  }
  paintPicks(painter);
  paintMark(painter);
}

void StackView::paintPicks(QPainter& painter) const {
  painter.setBrush(Qt::NoBrush);
  for (const StackPick& pick : m_picked) {
    const QRectF r = rectOf(pick).adjusted(-1, -1, 1, 1);
    // A dark and a light line, so that it stands out over every content.
    painter.setPen(QPen(palette().color(QPalette::Base), 4));
    painter.drawRect(r);
    painter.setPen(QPen(palette().color(QPalette::Highlight), 2.5));
    painter.drawRect(r);
    if (pick.slot == 0) painter.drawRect(gripOf(pick.box).adjusted(0, 1, 0, -1));
  }
  if (hasFocus()) {
    painter.setPen(QPen(palette().color(QPalette::Highlight), 1, Qt::DotLine));
    painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
  }
}

void StackView::paintMark(QPainter& painter) const {
  if (m_mark == Mark::None) return;
  const QColor colour =
      m_refused ? inkColour(palette(), sheet::Ink::Alarm) : palette().color(QPalette::Highlight);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colour, 4, m_refused ? Qt::DotLine : Qt::SolidLine));
  QPointF end;
  if (m_mark == Mark::Onto) {
    const QRectF r = rectOf(m_markAt).adjusted(-2, -2, 2, 2);
    painter.drawRect(r);
    end = r.topRight();
  } else if (m_markAt.slot == 0) {
    // Between boxes: where the lower edge of a box in that position is.
    QRectF r = rectOf({std::min(m_markAt.box, boxCount()), 0});
    const double y = m_markAt.box > boxCount() ? r.top() : r.bottom();
    painter.drawLine(QPointF(r.left() - 4, y), QPointF(r.right() + 4, y));
    end = {r.right(), y};
  } else {
    const int count = combCount(m_markAt.box);
    const QRectF box = rectOf({m_markAt.box, 0});
    double x = box.left() + 4;
    if (count > 0) {
      const QRectF r = rectOf({m_markAt.box, std::min(m_markAt.slot, count)});
      x = m_markAt.slot > count ? r.right() : r.left();
    }
    painter.drawLine(QPointF(x, box.top() - 3), QPointF(x, box.bottom() + 3));
    end = {x, box.top() + 6};
  }
  if (m_refused) {
    // A cross doubles the colour.
    painter.setPen(QPen(colour, 2.5));
    painter.drawLine(end + QPointF(-5, -5), end + QPointF(5, 5));
    painter.drawLine(end + QPointF(-5, 5), end + QPointF(5, -5));
  }
}

void StackView::mousePressEvent(QMouseEvent* event) {
  if (!m_movable || event->button() != Qt::LeftButton) return QWidget::mousePressEvent(event);
  const auto pick = pickAt(event->position());
  if (!pick) return setPicked({});
  const bool has = std::find(m_picked.begin(), m_picked.end(), *pick) != m_picked.end();
  if ((event->modifiers() & Qt::ControlModifier) && pick->slot > 0) {
    auto picks = m_picked;
    std::erase_if(picks, [&](const StackPick& p) { return p.slot == 0 || p == *pick; });
    if (!has) picks.push_back(*pick);
    setPicked(std::move(picks));
  } else if (!has) {
    setPicked({*pick});
  }
  m_pressed = event->position();
}

void StackView::mouseMoveEvent(QMouseEvent* event) {
  if (!m_pressed) return QWidget::mouseMoveEvent(event);
  if (!m_lifting) {
    const auto far = (event->position() - *m_pressed).manhattanLength();
    if (far < QApplication::startDragDistance() || m_picked.empty()) return;
    m_lifting = true;
    setCursor(Qt::ClosedHandCursor);
    Q_EMIT lifted();
  }
  Q_EMIT liftMoved(mapToGlobal(event->position().toPoint()));
}

void StackView::mouseReleaseEvent(QMouseEvent* event) {
  if (m_lifting) {
    m_lifting = false;
    m_pressed.reset();
    unsetCursor();
    Q_EMIT liftDropped(mapToGlobal(event->position().toPoint()));
    return;
  }
  m_pressed.reset();
  if (const auto box = boxAt(event->position())) Q_EMIT boxClicked(*box);
}

void StackView::mouseDoubleClickEvent(QMouseEvent* event) {
  m_pressed.reset();
  if (m_movable && pickAt(event->position())) Q_EMIT activated();
}

void StackView::contextMenuEvent(QContextMenuEvent* event) {
  if (!m_movable) return QWidget::contextMenuEvent(event);
  if (event->reason() == QContextMenuEvent::Mouse) {
    const auto pick = pickAt(event->pos());
    if (pick && std::find(m_picked.begin(), m_picked.end(), *pick) == m_picked.end()) {
      setPicked({*pick});
    }
  }
  const bool keys = event->reason() == QContextMenuEvent::Keyboard && !m_picked.empty();
  Q_EMIT menuAsked(keys ? mapToGlobal(middleOf(m_picked.back()).toPoint()) : event->globalPos());
}

void StackView::step(int right, int up, bool more) {
  if (boxCount() == 0) return;
  if (m_picked.empty())
    return setPicked({StackPick{boxCount(), combCount(boxCount()) > 0 ? 1 : 0}});
  StackPick at = m_picked.back();
  at.box = std::clamp(at.box + up, 1, boxCount());
  at.slot = std::clamp(at.slot + right, more && at.slot > 0 ? 1 : 0, combCount(at.box));
  auto picks = more && at.slot > 0 ? m_picked : std::vector<StackPick>{};
  std::erase_if(picks, [&](const StackPick& p) { return p == at || p.slot == 0; });
  picks.push_back(at);
  setPicked(std::move(picks));
}

void StackView::keyPressEvent(QKeyEvent* event) {
  if (!m_movable) return QWidget::keyPressEvent(event);
  int right = 0, up = 0;
  switch (event->key()) {
    case Qt::Key_Left:
      right = -1;
      break;
    case Qt::Key_Right:
      right = 1;
      break;
    case Qt::Key_Up:
      up = 1;
      break;
    case Qt::Key_Down:
      up = -1;
      break;
    case Qt::Key_Home:
      right = -100;
      break;
    case Qt::Key_End:
      right = 100;
      break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (m_keyLift) {
        m_keyLift = false;
        Q_EMIT liftSetDown();
      } else if (!m_picked.empty()) {
        Q_EMIT activated();
      }
      return;
    case Qt::Key_Escape:
      if (!m_lifting && !m_keyLift) return QWidget::keyPressEvent(event);
      m_lifting = m_keyLift = false;
      m_pressed.reset();
      unsetCursor();
      Q_EMIT liftCancelled();
      return;
    default:
      return QWidget::keyPressEvent(event);
  }
  if (event->modifiers() & Qt::ControlModifier) {
    if (m_picked.empty()) return;
    if (!m_keyLift) {
      m_keyLift = true;
      Q_EMIT lifted();
    }
    Q_EMIT liftStepped(right, up);
    return;
  }
  if (m_keyLift) {
    m_keyLift = false;
    Q_EMIT liftCancelled();
  }
  step(right, up, event->modifiers() & Qt::ShiftModifier);
}

bool StackView::event(QEvent* event) {
  if (event->type() == QEvent::ToolTip && m_movable && m_words) {
    const auto* help = static_cast<QHelpEvent*>(event);
    if (const auto pick = pickAt(help->pos())) {
      QToolTip::showText(help->globalPos(), m_words(*pick), this);
      return true;
    }
  }
  return QWidget::event(event);
}

void StackView::focusInEvent(QFocusEvent* event) {
  if (m_movable && m_picked.empty() && event->reason() != Qt::MouseFocusReason) step(0, 0, false);
  update();
  QWidget::focusInEvent(event);
}

void StackView::focusOutEvent(QFocusEvent* event) {
  if (m_keyLift) {
    m_keyLift = false;
    Q_EMIT liftCancelled();
  }
  update();
  QWidget::focusOutEvent(event);
}

}  // namespace outyard::widgets
