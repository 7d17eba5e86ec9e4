// SPDX-License-Identifier: GPL-3.0-or-later
#include <QHelpEvent>
#include <QKeyEvent>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "ui/adapt/words.h"
#include "ui/charts/course_layout.h"
#include "ui/charts/group_course.h"
#include "ui/widgets/theme.h"

namespace outyard::charts {
namespace {

constexpr double kCellWidth = 180, kCellHeight = 104;
constexpr int kWeeksSoon = 6;

}  // namespace

SmallCourses::SmallCourses(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("smallCourses"));
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("Courses of the hives, one beside the other"));
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
}

void SmallCourses::setCourses(std::vector<SmallCourse> courses, base::Date from, base::Date to,
                              base::Date today) {
  m_courses = std::move(courses);
  m_from = from;
  m_to = to;
  m_today = today;
  double highest = 0;
  for (const auto& c : m_courses) {
    for (const auto& p : c.bees.ahead) highest = std::max(highest, p.high);
  }
  std::vector<double> grid;
  m_top = roundTop(highest, grid);
  m_chosen = m_courses.empty() ? -1 : std::clamp(m_chosen, -1, count() - 1);
  setMinimumHeight(heightForWidth(std::max(width(), static_cast<int>(kCellWidth))));
  updateGeometry();
  update();
}

int SmallCourses::columns(int width) const {
  return std::max(1, static_cast<int>(width / kCellWidth));
}

int SmallCourses::heightForWidth(int width) const {
  const int across = columns(width);
  const int rows = (count() + across - 1) / across;
  return static_cast<int>(rows * kCellHeight) + 8;
}

QSize SmallCourses::sizeHint() const {
  return {static_cast<int>(kCellWidth) * 5, heightForWidth(static_cast<int>(kCellWidth) * 5)};
}

QRectF SmallCourses::cell(int index) const {
  const int across = columns(width());
  const double wide = static_cast<double>(width()) / across;
  return {wide * (index % across), kCellHeight * (index / across), wide, kCellHeight};
}

int SmallCourses::at(QPointF point) const {
  for (int i = 0; i < count(); ++i) {
    if (cell(i).contains(point)) return i;
  }
  return -1;
}

QString SmallCourses::words(int index) const {
  if (index < 0 || index >= count()) return {};
  const auto& c = m_courses[static_cast<std::size_t>(index)];
  const auto now = charts::at(c.bees.ahead, m_today);
  const auto soon = charts::at(c.bees.ahead, m_today.plusDays(kWeeksSoon * 7));
  if (!now || !soon) return c.name;
  return tr("%1: today %2 bees on the combs, in %3 weeks %4")
      .arg(c.name, bandText(*now, 0))
      .arg(kWeeksSoon)
      .arg(bandText(*soon, 0));
}

void SmallCourses::choose(int index) {
  if (index < 0 || index >= count() || index == m_chosen) return;
  m_chosen = index;
  setAccessibleDescription(words(index));
  update();
  Q_EMIT chosenChanged(words(index));
}

void SmallCourses::paintEvent(QPaintEvent* event) {
  using sheet::Ink;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const auto& inks = widgets::drawingPalette(palette());
  painter.fillRect(rect(), inks.colour(Ink::Paper));
  QFont small = font();
  small.setPixelSize(std::max(8, QFontInfo(font()).pixelSize() - 2));
  QFont bold = font();
  bold.setBold(true);
  for (int i = 0; i < count(); ++i) {
    const QRectF box = cell(i);
    if (!box.intersects(event->rect())) continue;
    const auto& c = m_courses[static_cast<std::size_t>(i)];
    const QRectF plot = box.adjusted(8, 22, -8, -10);
    const auto x = [&](base::Date d) {
      return plot.left() + plot.width() * static_cast<double>(d - m_from) / (m_to - m_from);
    };
    const auto y = [&](double v) { return plot.bottom() - v / m_top * plot.height(); };
    painter.setPen(QPen(inks.colour(Ink::FaintLine), 1));
    painter.drawLine(plot.bottomLeft(), plot.bottomRight());
    QColor faint = inks.colour(Ink::FaintLine);
    faint.setAlphaF(0.5F);
    painter.setPen(QPen(faint, 1));
    painter.drawLine(plot.topLeft(), plot.topRight());
    for (base::Date d = m_from.plusDays(1); d < m_to; d = d.plusDays(1)) {
      if (d.day() == 1) painter.drawLine(QPointF(x(d), plot.top()), QPointF(x(d), plot.bottom()));
    }
    QPolygonF band, line;
    for (const auto& p : c.bees.ahead) {
      band << QPointF(x(p.date), y(p.high));
      line << QPointF(x(p.date), y(p.median));
    }
    for (auto it = c.bees.ahead.rbegin(); it != c.bees.ahead.rend(); ++it) {
      band << QPointF(x(it->date), y(it->low));
    }
    QColor wash = inks.colour(Ink::Bees);
    wash.setAlphaF(0.25F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(wash);
    painter.drawPolygon(band);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(inks.colour(Ink::Bees), 1.6));
    painter.drawPolyline(line);
    painter.setFont(bold);
    painter.setPen(inks.colour(Ink::Text));
    painter.drawText(QRectF(box.left() + 8, box.top() + 3, box.width() - 16, 18),
                     Qt::AlignLeft | Qt::AlignVCenter, c.name);
    painter.setFont(small);
    painter.setPen(inks.colour(Ink::FaintText));
    painter.drawText(QRectF(box.left() + 8, box.top() + 3, box.width() - 16, 18),
                     Qt::AlignRight | Qt::AlignVCenter, QLocale().toString(m_top, 'f', 0));
    if (i == m_chosen) {
      painter.setBrush(Qt::NoBrush);
      painter.setPen(QPen(palette().color(QPalette::Highlight), 2));
      painter.drawRoundedRect(box.adjusted(2, 2, -2, -2), 4, 4);
    }
  }
  if (m_courses.empty()) {
    painter.setPen(inks.colour(Ink::FaintText));
    painter.drawText(rect(), Qt::AlignCenter, tr("No forecast is ready"));
  }
}

void SmallCourses::mousePressEvent(QMouseEvent* event) {
  choose(at(event->position()));
}

void SmallCourses::mouseDoubleClickEvent(QMouseEvent* event) {
  const int index = at(event->position());
  if (index >= 0) Q_EMIT opened(m_courses[static_cast<std::size_t>(index)].hive);
}

bool SmallCourses::event(QEvent* event) {
  if (event->type() == QEvent::ToolTip) {
    const auto* help = static_cast<QHelpEvent*>(event);
    QToolTip::showText(help->globalPos(), words(at(help->pos())), this);
    return true;
  }
  return QWidget::event(event);
}

void SmallCourses::keyPressEvent(QKeyEvent* event) {
  const int across = columns(width());
  const int now = std::max(0, m_chosen);
  switch (event->key()) {
    case Qt::Key_Left:
      choose(std::max(0, now - 1));
      break;
    case Qt::Key_Right:
      choose(m_chosen < 0 ? 0 : std::min(count() - 1, now + 1));
      break;
    case Qt::Key_Up:
      choose(std::max(0, now - across));
      break;
    case Qt::Key_Down:
      choose(std::min(count() - 1, now + across));
      break;
    case Qt::Key_Home:
      choose(0);
      break;
    case Qt::Key_End:
      choose(count() - 1);
      break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      if (m_chosen >= 0) Q_EMIT opened(m_courses[static_cast<std::size_t>(m_chosen)].hive);
      break;
    default:
      QWidget::keyPressEvent(event);
      return;
  }
  event->accept();
}

}  // namespace outyard::charts
