// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QWidget>
#include <memory>
#include <optional>

#include "ui/charts/course_data.h"
#include "ui/charts/course_painter.h"

namespace outyard::charts {

/// The course on the screen: wheel and + − zoom, drag and arrows move along, Home shows the whole
/// season, the pointer or Ctrl and an arrow read a day out. What it reads is its accessible
/// description; the table beside it lists the same.
class CourseView : public QWidget {
  Q_OBJECT
 public:
  explicit CourseView(QWidget* parent = nullptr);
  /// Keeps the shown days when the same thing is shown again (same title).
  void setData(std::shared_ptr<const CourseData> data, const QString& whyNone = {});
  [[nodiscard]] const CourseData* data() const { return m_data.get(); }
  [[nodiscard]] base::Date from() const { return m_from; }
  [[nodiscard]] base::Date to() const { return m_to; }
  void showDays(base::Date from, base::Date to);
  void showSeason();
  /// Nearer (above 1) or farther, about a day.
  void zoom(double factor, std::optional<base::Date> about = std::nullopt);
  void pan(int days);
  /// Reads a day out; none lets go.
  void read(std::optional<base::Date> day, int lane = -1);
  [[nodiscard]] std::optional<base::Date> reading() const { return m_reading; }
  [[nodiscard]] QString words() const { return m_words; }
  [[nodiscard]] CourseStyle style() const;
  [[nodiscard]] CourseLayout layoutNow() const;
  [[nodiscard]] QSize sizeHint() const override { return {820, 420}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {380, 240}; }

 Q_SIGNALS:
  /// What is under the pointer, in words; empty when nothing is read.
  void wordsChanged(const QString& words);
  void daysChanged();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  [[nodiscard]] QRectF area() const;

  std::shared_ptr<const CourseData> m_data;
  base::Date m_from, m_to;
  std::optional<base::Date> m_reading;
  QString m_words, m_whyNone;
  bool m_dragging = false;
  double m_dragX = 0;
  base::Date m_dragFrom;
};

/// First and last day that "the season" means: the calendar year of today, cut to what is known.
std::pair<base::Date, base::Date> seasonDays(const CourseData& data);

}  // namespace outyard::charts
