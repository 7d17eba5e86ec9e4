// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/course_layout.h"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>

namespace outyard::charts {
namespace {

/// Highest value that is drawn in the range: bands are never cut.
double highest(const Lane& lane, base::Date from, base::Date to) {
  double top = 0;
  const auto take = [&](const Band& band) {
    for (const auto& p : band) {
      if (p.date >= from && p.date <= to) top = std::max(top, p.high);
    }
    for (const auto edge : {from, to}) {
      if (const auto p = at(band, edge)) top = std::max(top, p->high);
    }
  };
  for (const auto& s : lane.series) {
    take(s.past);
    take(s.ahead);
    take(s.other);
    for (const auto& p : s.seen) {
      if (p.date >= from && p.date <= to) top = std::max(top, p.high);
    }
  }
  return top;
}

}  // namespace

double roundTop(double value, std::vector<double>& grid) {
  grid.clear();
  const double wanted = value > 0 ? value : 1;
  const double power = std::pow(10, std::floor(std::log10(wanted)));
  double step = power;
  for (const double s : {0.2, 0.25, 0.5, 1.0, 2.0, 2.5, 5.0}) {
    if (wanted / (s * power) <= 4.0) {
      step = s * power;
      break;
    }
  }
  const double top = std::ceil(wanted / step - 1e-9) * step;
  for (double v = 0; v <= top + step / 2; v += step) grid.push_back(v);
  return top;
}

CourseLayout::CourseLayout(const CourseData& data, const QRectF& area, base::Date from,
                           base::Date to, const QFont& font)
    : m_from(from), m_to(std::max(to, from.plusDays(1))) {
  const QFontMetricsF metrics(font);
  const double line = metrics.height();
  double names = metrics.horizontalAdvance(QStringLiteral("Weather00"));
  for (const auto& lane : data.lanes) {
    names = std::max(
        {names, metrics.horizontalAdvance(lane.name) * 1.15, metrics.horizontalAdvance(lane.unit)});
  }
  m_gutter = names + metrics.horizontalAdvance(QStringLiteral("100,0000"));
  m_left = area.left() + m_gutter;
  // Room for the direct labels at the lines' ends.
  m_right = area.right() - metrics.horizontalAdvance(QStringLiteral("sealed brood00"));
  const double width = std::max(10.0, m_right - m_left);
  const double gap = line * 1.1;
  const double axis = line * 1.4, journal = line * 1.5;
  const double weatherShare = data.weather.empty() ? 0 : 2.4;
  double shares = weatherShare;
  for (const auto& lane : data.lanes) shares += lane.height;
  const double count = static_cast<double>(data.lanes.size()) + (weatherShare > 0 ? 1 : 0);
  const double free = area.height() - axis - journal - gap * (count + 1);
  const double unit = std::max(4.0, free / std::max(1.0, shares));
  double y = area.top() + gap * 0.6;
  for (const auto& lane : data.lanes) {
    LaneBox box;
    box.rect = {m_left, y, width, unit * lane.height};
    box.top = roundTop(highest(lane, m_from, m_to), box.grid);
    m_lanes.push_back(box);
    y += box.rect.height() + gap;
  }
  m_weather = {m_left, y, width, unit * weatherShare};
  if (weatherShare > 0) y += m_weather.height() + gap;
  for (const auto& w : data.weather) {
    if (w.date < m_from || w.date > m_to) continue;
    m_warmest = std::max(m_warmest, std::ceil(w.tmax / 5) * 5);
    m_coldest = std::min(m_coldest, std::floor(w.tmin / 5) * 5);
  }
  m_journal = {m_left, y, width, journal};
  m_axis = {m_left, y + journal, width, axis};
}

QRectF CourseLayout::plot() const {
  const double top = m_lanes.empty() ? m_weather.top() : m_lanes.front().rect.top();
  return {m_left, top, std::max(10.0, m_right - m_left), m_journal.bottom() - top};
}

double CourseLayout::xOf(base::Date day) const {
  return m_left + (m_right - m_left) * static_cast<double>(day - m_from) / (m_to - m_from);
}

base::Date CourseLayout::dayAt(double x) const {
  const double share = (x - m_left) / std::max(1.0, m_right - m_left);
  const int days = static_cast<int>(std::lround(share * (m_to - m_from)));
  return m_from.plusDays(std::clamp(days, 0, m_to - m_from));
}

int CourseLayout::laneAt(double y) const {
  for (std::size_t i = 0; i < m_lanes.size(); ++i) {
    if (y >= m_lanes[i].rect.top() && y <= m_lanes[i].rect.bottom()) return static_cast<int>(i);
  }
  const int count = static_cast<int>(m_lanes.size());
  if (m_weather.height() > 0 && y >= m_weather.top() && y <= m_weather.bottom()) return count;
  if (y >= m_journal.top() && y <= m_journal.bottom()) return count + 1;
  return -1;
}

double CourseLayout::weatherY(double temperature) const {
  const double span = std::max(1.0, m_warmest - m_coldest);
  return m_weather.bottom() - (temperature - m_coldest) / span * m_weather.height();
}

}  // namespace outyard::charts
