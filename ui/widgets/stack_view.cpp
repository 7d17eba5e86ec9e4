// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/stack_view.h"

#include <QMouseEvent>
#include <QPainter>
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

}  // namespace

StackView::StackView(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Preferred);
  setAccessibleName(tr("Stack of boxes"));
}

void StackView::setDrawing(sheet::StackDrawing drawing, const QString& description) {
  m_drawing = std::move(drawing);
  m_boundsMm = boundsOf(m_drawing.shapes);
  setAccessibleDescription(description);
  setToolTip(description);
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
  const double scale = std::min({kMostPxPerMm, (width() - 2 * kMarginPx) / m_boundsMm.width(),
                                 (height() - 2 * kMarginPx) / m_boundsMm.height()});
  QTransform transform;
  transform.translate(kMarginPx, kMarginPx);
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

void StackView::paintEvent(QPaintEvent* /*event*/) {
  if (m_boundsMm.isEmpty()) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setTransform(toPixels(), true);
  print::paintShapes(painter, m_drawing.shapes, drawingPalette(palette()));
}

void StackView::mouseReleaseEvent(QMouseEvent* event) {
  if (const auto box = boxAt(event->position())) Q_EMIT boxClicked(*box);
}

}  // namespace outyard::widgets
