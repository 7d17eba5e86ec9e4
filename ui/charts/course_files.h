// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPagedPaintDevice>
#include <QSize>
#include <QString>

#include "ui/charts/course_data.h"

/// The course on paper and in files. Each gives an empty text, or the sentence that says why not.
namespace outyard::charts {

/// One page of black, white and greys in the device's orientation.
void printCourse(QPagedPaintDevice& device, const CourseData& data, base::Date from, base::Date to);
/// By the ending of the name: .svg, .png, .pdf or .csv; the shown days (CSV: all days).
QString saveCourse(const QString& file, const CourseData& data, base::Date from, base::Date to,
                   QSize size);
/// Every day with figures: low, middle and high of each line, seen values, weather, journal. Full
/// precision, a point for decimals, dates as YYYY-MM-DD.
QByteArray courseCsv(const CourseData& data);

}  // namespace outyard::charts
