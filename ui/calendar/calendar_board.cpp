// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/calendar/calendar_board.h"

#include <QAccessible>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>
#include <QToolTip>
#include <algorithm>

#include "ui/calendar/calendar_words.h"
#include "ui/widgets/theme.h"

namespace outyard::calendar {

CalendarBoard::CalendarBoard(QWidget* parent) : QAbstractScrollArea(parent) {
  setObjectName(QStringLiteral("calendarBoard"));
  setAccessibleName(tr("Season calendar"));
  setFocusPolicy(Qt::StrongFocus);
  setFrameShape(QFrame::NoFrame);
  viewport()->setMouseTracking(true);
  viewport()->setAutoFillBackground(false);
  measure();
}

void CalendarBoard::show(std::shared_ptr<const planning::SeasonCalendar> calendar,
                         QStringList names) {
  std::optional<base::YardId> yard;
  std::optional<base::Date> monday;
  if (m_calendar && m_cursor) {
    yard = m_calendar->yards.at(m_cursor->first);
    monday = m_calendar->weeks.at(m_cursor->second).monday;
  }
  m_calendar = std::move(calendar);
  m_names = std::move(names);
  m_cursor.reset();
  if (m_calendar && !m_calendar->weeks.empty() && !m_calendar->yards.empty()) {
    const auto& yards = m_calendar->yards;
    const auto at = yard ? std::find(yards.begin(), yards.end(), *yard) : yards.begin();
    const auto row = at == yards.end() ? 0 : static_cast<std::size_t>(at - yards.begin());
    const auto week = m_calendar->weekOf(monday.value_or(m_calendar->today));
    m_cursor = Cell{row, week.value_or(0)};
  }
  measure();
  bringIntoSight();
  Q_EMIT cursorMoved();
}

void CalendarBoard::measure() {
  QFont own = font();
  own.setPixelSize(std::max(9, QFontInfo(font()).pixelSize() * 10 / 11));
  m_measures = BoardMeasures::forFont(own, m_names);
  if (m_calendar && !m_calendar->weeks.empty() && !m_calendar->yards.empty()) {
    // Where there is room the weeks take the whole width, and the lanes some more of the height.
    const QSizeF all = m_measures.sizeOf(*m_calendar);
    const QSizeF spare = QSizeF(viewport()->size()) - all;
    if (spare.width() > 0) {
      m_measures.week += spare.width() / static_cast<double>(m_calendar->weeks.size());
    }
    if (spare.height() > 0) {
      const double lanes = (m_measures.row() - m_measures.gap) / m_measures.lane *
                           static_cast<double>(m_calendar->yards.size());
      m_measures.lane += std::min(spare.height() / lanes, 0.4 * m_measures.lane);
    }
  }
  setBars();
  viewport()->update();
}

QSize CalendarBoard::sizeHint() const {
  return {900, 500};
}

void CalendarBoard::setBars() {
  const QSizeF all = m_calendar ? m_measures.sizeOf(*m_calendar) : QSizeF(1, 1);
  const QSize view = viewport()->size();
  horizontalScrollBar()->setRange(0, std::max(0, static_cast<int>(all.width()) - view.width()));
  horizontalScrollBar()->setPageStep(view.width());
  horizontalScrollBar()->setSingleStep(static_cast<int>(m_measures.week));
  verticalScrollBar()->setRange(0, std::max(0, static_cast<int>(all.height()) - view.height()));
  verticalScrollBar()->setPageStep(view.height());
  verticalScrollBar()->setSingleStep(static_cast<int>(m_measures.row() / 3));
}

QPointF CalendarBoard::scrolled() const {
  return {static_cast<double>(horizontalScrollBar()->value()),
          static_cast<double>(verticalScrollBar()->value())};
}

void CalendarBoard::bringIntoSight() {
  if (!m_cursor) return;
  const QRectF cell = m_measures.cell(m_cursor->first, m_cursor->second);
  auto* across = horizontalScrollBar();
  auto* down = verticalScrollBar();
  const double width = viewport()->width() - m_measures.names;
  const double height = viewport()->height() - m_measures.head - m_measures.hours;
  const double x = cell.left() - m_measures.names, y = cell.top() - m_measures.head;
  if (x < across->value()) across->setValue(static_cast<int>(x));
  if (x + cell.width() > across->value() + width) {
    across->setValue(static_cast<int>(x + cell.width() - width));
  }
  if (y < down->value()) down->setValue(static_cast<int>(y - m_measures.gap));
  if (y + cell.height() > down->value() + height) {
    down->setValue(static_cast<int>(y + cell.height() + m_measures.gap - height));
  }
}

void CalendarBoard::setCursorCell(Cell cell) {
  if (!m_calendar || cell.first >= m_calendar->yards.size() ||
      cell.second >= m_calendar->weeks.size()) {
    return;
  }
  if (m_cursor != cell) {
    m_cursor = cell;
    Q_EMIT cursorMoved();
  }
  bringIntoSight();
  viewport()->update();
}

std::optional<CalendarBoard::Cell> CalendarBoard::cellAt(QPoint at) const {
  if (!m_calendar || m_calendar->weeks.empty() || m_calendar->yards.empty()) return std::nullopt;
  if (at.x() < m_measures.names || at.y() < m_measures.head) return std::nullopt;
  const QPointF on = QPointF(at) + scrolled();
  const double x = (on.x() - m_measures.names) / m_measures.week;
  const double y = (on.y() - m_measures.head) / m_measures.row();
  const auto week = static_cast<std::size_t>(x), yard = static_cast<std::size_t>(y);
  const double foot =
      std::min<double>(viewport()->height(), m_measures.sizeOf(*m_calendar).height()) -
      m_measures.hours;
  if (week >= m_calendar->weeks.size() || yard >= m_calendar->yards.size() || at.y() >= foot) {
    return std::nullopt;
  }
  return Cell{yard, week};
}

void CalendarBoard::paintEvent(QPaintEvent*) {
  QPainter painter(viewport());
  const auto& palette = widgets::drawingPalette(this->palette());
  painter.fillRect(viewport()->rect(), palette.colour(sheet::Ink::Paper));
  if (!m_calendar) return;
  BoardLook look;
  look.palette = &palette;
  look.names = m_names;
  look.cursor = m_cursor;
  look.cursorHasFocus = hasFocus();
  look.scrolled = scrolled();
  look.view = viewport()->size();
  paintBoard(painter, *m_calendar, m_measures, look);
}

void CalendarBoard::resizeEvent(QResizeEvent*) {
  measure();
}

void CalendarBoard::mousePressEvent(QMouseEvent* event) {
  if (const auto cell = cellAt(event->position().toPoint())) setCursorCell(*cell);
}

void CalendarBoard::mouseDoubleClickEvent(QMouseEvent* event) {
  if (const auto cell = cellAt(event->position().toPoint())) {
    Q_EMIT yardOpened(m_calendar->yards.at(cell->first));
  }
}

void CalendarBoard::keyPressEvent(QKeyEvent* event) {
  if (!m_cursor) return QAbstractScrollArea::keyPressEvent(event);
  Cell cell = *m_cursor;
  const bool control = (event->modifiers() & Qt::ControlModifier) != 0;
  const std::size_t lastWeek = m_calendar->weeks.size() - 1;
  const std::size_t lastYard = m_calendar->yards.size() - 1;
  switch (event->key()) {
    case Qt::Key_Left:
      cell.second -= cell.second > 0 ? 1 : 0;
      break;
    case Qt::Key_Right:
      cell.second = std::min(lastWeek, cell.second + 1);
      break;
    case Qt::Key_Up:
      cell.first -= cell.first > 0 ? 1 : 0;
      break;
    case Qt::Key_Down:
      cell.first = std::min(lastYard, cell.first + 1);
      break;
    case Qt::Key_PageUp:
      cell.second -= std::min<std::size_t>(cell.second, 4);
      break;
    case Qt::Key_PageDown:
      cell.second = std::min(lastWeek, cell.second + 4);
      break;
    case Qt::Key_Home:
      (control ? cell.first : cell.second) = 0;
      break;
    case Qt::Key_End:
      (control ? cell.first : cell.second) = control ? lastYard : lastWeek;
      break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      Q_EMIT yardOpened(m_calendar->yards.at(cell.first));
      return;
    default:
      return QAbstractScrollArea::keyPressEvent(event);
  }
  setCursorCell(cell);
}

void CalendarBoard::focusInEvent(QFocusEvent*) {
  viewport()->update();
}

void CalendarBoard::focusOutEvent(QFocusEvent*) {
  viewport()->update();
}

void CalendarBoard::changeEvent(QEvent* event) {
  QAbstractScrollArea::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) measure();
}

bool CalendarBoard::viewportEvent(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return QAbstractScrollArea::viewportEvent(event);
  const auto* help = static_cast<QHelpEvent*>(event);
  QString words;
  if (const auto cell = cellAt(help->pos())) {
    words = m_names.value(static_cast<int>(cell->first)) + QLatin1Char('\n') +
            weekText(m_calendar->weeks.at(cell->second).monday) + QLatin1Char('\n') +
            cellLines(*m_calendar, cell->first, cell->second).join(QLatin1Char('\n'));
  } else if (m_calendar && help->pos().x() > m_measures.names &&
             help->pos().y() > m_measures.head) {
    const double x = help->pos().x() + scrolled().x() - m_measures.names;
    const auto week = static_cast<std::size_t>(x / m_measures.week);
    if (week < m_calendar->weeks.size()) {
      words = weekText(m_calendar->weeks[week].monday) + QLatin1Char('\n') +
              hoursText(*m_calendar, week);
    }
  }
  QToolTip::showText(help->globalPos(), words, viewport());
  return true;
}

}  // namespace outyard::calendar
