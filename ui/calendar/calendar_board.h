// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractScrollArea>
#include <memory>
#include <optional>
#include <utility>

#include "ui/calendar/board_painter.h"

namespace outyard::calendar {

/// The painted calendar: weeks from left to right, yards from above, hours at the foot. The cursor
/// goes over the cells by the arrow keys (Home and End: first and last week, Ctrl with them: first
/// and last yard), by a click, and says what is there in words.
class CalendarBoard : public QAbstractScrollArea {
  Q_OBJECT
 public:
  using Cell = std::pair<std::size_t, std::size_t>;  ///< yard, week

  explicit CalendarBoard(QWidget* parent = nullptr);
  /// Null takes it away. The cursor stays on its yard and week where they still are.
  void show(std::shared_ptr<const planning::SeasonCalendar> calendar, QStringList names);
  [[nodiscard]] std::optional<Cell> cursor() const { return m_cursor; }
  void setCursorCell(Cell cell);
  [[nodiscard]] const BoardMeasures& measures() const { return m_measures; }
  [[nodiscard]] std::optional<Cell> cellAt(QPoint inViewport) const;
  [[nodiscard]] QSize sizeHint() const override;

 Q_SIGNALS:
  void cursorMoved();
  /// A double click or Enter on a cell.
  void yardOpened(const outyard::base::YardId& yard);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void changeEvent(QEvent* event) override;
  bool viewportEvent(QEvent* event) override;

 private:
  void measure();
  void setBars();
  void bringIntoSight();
  [[nodiscard]] QPointF scrolled() const;

  std::shared_ptr<const planning::SeasonCalendar> m_calendar;
  QStringList m_names;
  BoardMeasures m_measures;
  std::optional<Cell> m_cursor;
};

}  // namespace outyard::calendar
