// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/course_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QStyle>
#include <QStyleOptionFocusRect>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "ui/widgets/theme.h"

namespace outyard::charts {
namespace {

constexpr int kLeastDays = 14;
constexpr double kZoomStep = 1.25;

}  // namespace

std::pair<base::Date, base::Date> seasonDays(const CourseData& data) {
  const auto first = base::Date::fromYmd(data.today.year(), 1, 1).value();
  const auto last = base::Date::fromYmd(data.today.year(), 12, 31).value();
  auto from = std::max(first, data.first);
  auto to = std::min(last, data.last);
  // Late in the year the coming winter counts more than the past one.
  if (to - data.today < 60) to = std::min(data.last, data.today.plusDays(120));
  if (to - from < kLeastDays) from = to.plusDays(-kLeastDays);
  return {from, to};
}

CourseView::CourseView(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("courseView"));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAccessibleName(tr("Course over time"));
  setToolTip(QString());
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void CourseView::setData(std::shared_ptr<const CourseData> data, const QString& whyNone) {
  m_whyNone = whyNone;
  const bool same = m_data && data && m_data->title == data->title && m_data->today == data->today;
  m_data = std::move(data);
  if (m_data) {
    setAccessibleName(tr("Course: %1").arg(m_data->title));
    if (!same) {
      m_reading.reset();
      showSeason();
    }
  }
  read(m_data ? m_reading : std::nullopt);
  update();
}

QRectF CourseView::area() const {
  return QRectF(rect()).adjusted(6, 10, -4, -2);
}

CourseStyle CourseView::style() const {
  CourseStyle style;
  style.palette = &widgets::drawingPalette(palette());
  style.font = font();
  style.font.setPixelSize(QFontInfo(font()).pixelSize());
  style.reading = m_reading;
  return style;
}

CourseLayout CourseView::layoutNow() const {
  static const CourseData kNothing;
  return {m_data ? *m_data : kNothing, area(), m_from, m_to, style().font};
}

void CourseView::showDays(base::Date from, base::Date to) {
  if (!m_data) return;
  const int most = std::max(kLeastDays, m_data->last - m_data->first);
  const int days = std::clamp(to - from, kLeastDays, most);
  m_from = std::clamp(from, m_data->first, std::max(m_data->first, m_data->last.plusDays(-days)));
  m_to = m_from.plusDays(days);
  update();
  Q_EMIT daysChanged();
}

void CourseView::showSeason() {
  if (!m_data) return;
  const auto [from, to] = seasonDays(*m_data);
  showDays(from, to);
}

void CourseView::zoom(double factor, std::optional<base::Date> about) {
  if (!m_data) return;
  const int days = m_to - m_from;
  base::Date still = about.value_or(m_reading.value_or(m_from.plusDays(days / 2)));
  still = std::clamp(still, m_from, m_to);
  const int wanted = static_cast<int>(std::lround(days / factor));
  const int most = std::max(kLeastDays, m_data->last - m_data->first);
  const int now = std::clamp(wanted, kLeastDays, most);
  const double share = static_cast<double>(still - m_from) / std::max(1, days);
  const auto from = still.plusDays(-static_cast<int>(std::lround(share * now)));
  showDays(from, from.plusDays(now));
}

void CourseView::pan(int days) {
  showDays(m_from.plusDays(days), m_to.plusDays(days));
}

void CourseView::read(std::optional<base::Date> day, int lane) {
  m_reading = m_data ? day : std::nullopt;
  const QString words = m_reading ? dayWords(*m_data, *m_reading, lane) : QString();
  update();
  if (words == m_words) return;
  m_words = words;
  setAccessibleDescription(words);
  Q_EMIT wordsChanged(words);
}

void CourseView::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  const auto how = style();
  painter.fillRect(rect(), how.palette->colour(sheet::Ink::Paper));
  if (m_data) {
    paintCourse(painter, area(), *m_data, m_from, m_to, how);
  } else {
    painter.setPen(how.palette->colour(sheet::Ink::FaintText));
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, m_whyNone);
  }
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
    painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
  }
}

void CourseView::wheelEvent(QWheelEvent* event) {
  if (!m_data) return;
  const QPoint turn = event->angleDelta();
  if (std::abs(turn.x()) > std::abs(turn.y()) || event->modifiers().testFlag(Qt::ShiftModifier)) {
    const int by = turn.x() != 0 ? turn.x() : turn.y();
    pan(-by * std::max(1, (m_to - m_from) / 20) / 120);
  } else if (turn.y() != 0) {
    zoom(std::pow(kZoomStep, turn.y() / 120.0), layoutNow().dayAt(event->position().x()));
  }
  event->accept();
}

void CourseView::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || !m_data) return;
  m_dragging = true;
  m_dragX = event->position().x();
  m_dragFrom = m_from;
}

void CourseView::mouseMoveEvent(QMouseEvent* event) {
  if (!m_data) return;
  const auto layout = layoutNow();
  if (m_dragging) {
    const double perDay = layout.plot().width() / std::max(1, m_to - m_from);
    const int days = static_cast<int>(std::lround((m_dragX - event->position().x()) / perDay));
    if (std::abs(m_dragX - event->position().x()) > 3) {
      setCursor(Qt::ClosedHandCursor);
      const int wide = m_to - m_from;
      showDays(m_dragFrom.plusDays(days), m_dragFrom.plusDays(days + wide));
    }
    return;
  }
  const QRectF plot = layout.plot().adjusted(-4, -6, 4, 4);
  if (!plot.contains(event->position())) {
    read(std::nullopt);
    return;
  }
  // Something that happened is easier to hit than one day of many.
  auto day = layout.dayAt(event->position().x());
  double nearest = 5;
  for (const auto& tick : m_data->ticks) {
    const double off = std::abs(layout.xOf(tick.date) - event->position().x());
    if (off < nearest) {
      nearest = off;
      day = tick.date;
    }
  }
  read(day, layout.laneAt(event->position().y()));
}

void CourseView::mouseReleaseEvent(QMouseEvent* /*event*/) {
  m_dragging = false;
  unsetCursor();
}

void CourseView::mouseDoubleClickEvent(QMouseEvent* event) {
  if (m_data) zoom(2, layoutNow().dayAt(event->position().x()));
}

void CourseView::leaveEvent(QEvent* event) {
  QWidget::leaveEvent(event);
  if (!hasFocus()) read(std::nullopt);
}

void CourseView::keyPressEvent(QKeyEvent* event) {
  if (!m_data) {
    QWidget::keyPressEvent(event);
    return;
  }
  const int step = std::max(1, (m_to - m_from) / 10);
  const bool reads = event->modifiers().testFlag(Qt::ControlModifier);
  const auto readBy = [&](int days) {
    const auto day = m_reading ? m_reading->plusDays(days) : m_data->today;
    const auto kept = std::clamp(day, m_data->first, m_data->last);
    if (kept < m_from) pan(kept - m_from);
    if (kept > m_to) pan(kept - m_to);
    read(kept);
  };
  switch (event->key()) {
    case Qt::Key_Left:
      reads ? readBy(-1) : pan(-step);
      break;
    case Qt::Key_Right:
      reads ? readBy(1) : pan(step);
      break;
    case Qt::Key_Up:
    case Qt::Key_Plus:
    case Qt::Key_Equal:
      zoom(kZoomStep);
      break;
    case Qt::Key_Down:
    case Qt::Key_Minus:
      zoom(1 / kZoomStep);
      break;
    case Qt::Key_Home:
      showSeason();
      break;
    case Qt::Key_End:
      showDays(m_data->today.plusDays(-7), m_data->today.plusDays(42));
      break;
    case Qt::Key_Escape:
      if (!m_reading) {
        QWidget::keyPressEvent(event);
        return;
      }
      read(std::nullopt);
      break;
    default:
      QWidget::keyPressEvent(event);
      return;
  }
  event->accept();
}

}  // namespace outyard::charts
