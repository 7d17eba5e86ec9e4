// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPainter>
#include <optional>

#include "ui/charts/course_layout.h"
#include "ui/print/palette.h"

namespace outyard::charts {

struct CourseStyle {
  const print::Palette* palette = nullptr;
  QFont font;  ///< in pixels of the painter's coordinates
  bool title = false;
  std::optional<base::Date> reading;  ///< the day that is read out, with a line through all lanes
};

/// Draws the course into the area: the same for window, paper and files. Uses no clipping and no
/// pattern brushes, so that it stays vector everywhere.
void paintCourse(QPainter& painter, const QRectF& area, const CourseData& data, base::Date from,
                 base::Date to, const CourseStyle& style);
/// The area that is left for the layout below the title.
QRectF chartArea(const QRectF& area, const CourseStyle& style);

}  // namespace outyard::charts
