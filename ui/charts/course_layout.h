// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFont>
#include <QRectF>
#include <vector>

#include "ui/charts/course_data.h"

namespace outyard::charts {

/// Where everything stands for a range of days: shared by painter and pointer.
class CourseLayout {
 public:
  struct LaneBox {
    QRectF rect;
    double top = 1;            ///< value at the upper edge
    std::vector<double> grid;  ///< values with a line
    [[nodiscard]] double yOf(double value) const {
      return rect.bottom() - value / top * rect.height();
    }
  };
  CourseLayout(const CourseData& data, const QRectF& area, base::Date from, base::Date to,
               const QFont& font);

  [[nodiscard]] base::Date from() const { return m_from; }
  [[nodiscard]] base::Date to() const { return m_to; }
  [[nodiscard]] double xOf(base::Date day) const;
  [[nodiscard]] base::Date dayAt(double x) const;
  /// Lane under a height, as dayWords counts them; -1 between them.
  [[nodiscard]] int laneAt(double y) const;
  [[nodiscard]] const std::vector<LaneBox>& lanes() const { return m_lanes; }
  [[nodiscard]] const QRectF& weather() const { return m_weather; }
  [[nodiscard]] double weatherY(double temperature) const;
  [[nodiscard]] double warmest() const { return m_warmest; }
  [[nodiscard]] double coldest() const { return m_coldest; }
  [[nodiscard]] const QRectF& journal() const { return m_journal; }
  [[nodiscard]] const QRectF& axis() const { return m_axis; }
  /// Left edges of names and right edge of numbers stand this far left of the days.
  [[nodiscard]] double gutter() const { return m_gutter; }
  /// The part of the drawing that has days.
  [[nodiscard]] QRectF plot() const;

 private:
  base::Date m_from, m_to;
  double m_left = 0, m_right = 0, m_gutter = 0;
  std::vector<LaneBox> m_lanes;
  QRectF m_weather, m_journal, m_axis;
  double m_warmest = 20, m_coldest = 0;
};

/// A round number at or above the value, with two to four steps below it.
double roundTop(double value, std::vector<double>& grid);

}  // namespace outyard::charts
