// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/course_painter.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QLocale>
#include <algorithm>
#include <cmath>

namespace outyard::charts {
namespace {

using base::Date;
using sheet::Ink;

struct Course {
  Q_DECLARE_TR_FUNCTIONS(Course)
};

QColor faded(QColor colour, double alpha) {
  colour.setAlphaF(static_cast<float>(alpha));
  return colour;
}

/// The points of a band inside the range, with its values on the range's edges.
Band inside(const Band& band, Date from, Date to) {
  Band out;
  if (const auto edge = at(band, from)) out.push_back(*edge);
  for (const auto& p : band) {
    if (p.date > from && p.date < to) out.push_back(p);
  }
  if (const auto edge = at(band, to)) out.push_back(*edge);
  return out;
}

/// Days of a run differ by the chance of its sample: what is drawn ahead is the mean of three
/// neighbours, so that the eye follows the course. Words, table and files give the days as they
/// are.
Band calmed(const Band& band) {
  Band out = band;
  for (std::size_t i = 1; i + 1 < band.size(); ++i) {
    const auto mean = [&](double BandPoint::*v) {
      return (band[i - 1].*v + band[i].*v + band[i + 1].*v) / 3;
    };
    out[i] = {band[i].date, mean(&BandPoint::low), mean(&BandPoint::median),
              mean(&BandPoint::high)};
  }
  return out;
}

class Drawing {
 public:
  Drawing(QPainter& painter, const CourseLayout& layout, const CourseData& data,
          const CourseStyle& style)
      : m_p(painter), m_l(layout), m_d(data), m_style(style), m_metrics(style.font) {
    m_small = style.font;
    m_small.setPixelSize(std::max(7, style.font.pixelSize() - 1));
  }

  void all() {
    m_p.setRenderHint(QPainter::Antialiasing);
    months();
    for (std::size_t i = 0; i < m_d.lanes.size(); ++i) lane(i);
    if (m_l.weather().height() > 0) weather();
    ticks();
    today();
    reading();
  }

 private:
  [[nodiscard]] QColor ink(Ink i) const { return m_style.palette->colour(i); }
  [[nodiscard]] bool inRange(Date d) const { return d >= m_l.from() && d <= m_l.to(); }

  void text(const QRectF& box, int flags, const QString& words, const QColor& colour,
            bool bold = false, bool small = false) {
    QFont font = small ? m_small : m_style.font;
    font.setBold(bold);
    m_p.setFont(font);
    m_p.setPen(colour);
    m_p.drawText(box, flags | Qt::TextDontClip, words);
  }

  /// Lines at the months, or at the weeks when few are shown; names only where they have room.
  void months() {
    const QRectF plot = m_l.plot();
    const int days = m_l.to() - m_l.from();
    const double perDay = plot.width() / days;
    const bool weeks = days <= 75;
    double lastEnd = -1e9;
    for (Date d = m_l.from(); d <= m_l.to(); d = d.plusDays(1)) {
      const bool month = d.day() == 1;
      if (!month && !(weeks && d.weekday() == 0)) continue;
      const double x = m_l.xOf(d);
      m_p.setPen(QPen(faded(ink(Ink::FaintLine), month ? 0.9 : 0.45), 1));
      m_p.drawLine(QPointF(x, plot.top()), QPointF(x, plot.bottom()));
      QString name;
      if (month) {
        name = QLocale().standaloneMonthName(d.month(), QLocale::ShortFormat);
        if (d.month() == 1) name = QString::number(d.year());
      } else {
        name = QString::number(d.day());
      }
      const double width = m_metrics.horizontalAdvance(name);
      // In the middle of its month when months are wide, else at its line.
      const bool middle = month && !weeks && perDay * 30 > width + 6;
      const double centre = middle ? x + perDay * 15 : x;
      const double left = centre - width / 2;
      if (left < lastEnd + 4 || left < plot.left() - width / 2 ||
          left + width > plot.right() + width / 2) {
        continue;
      }
      lastEnd = left + width;
      text({left, m_l.axis().top(), width, m_l.axis().height()}, Qt::AlignCenter, name,
           month && d.month() == 1 ? ink(Ink::Text) : ink(Ink::FaintText),
           month && (d.month() == 1 || weeks));
    }
  }

  void frame(const QRectF& rect, const QString& name, const QString& unit) {
    m_p.setPen(QPen(ink(Ink::FaintLine), 1));
    m_p.drawLine(rect.bottomLeft(), rect.bottomRight());
    const double line = m_metrics.height();
    const double width = m_l.gutter();
    const double left = rect.left() - width;
    text({left, rect.top() - line * 0.35, width, line}, Qt::AlignLeft | Qt::AlignTop, name,
         ink(Ink::Text), true);
    if (rect.height() > line * 1.6) {
      text({left, rect.top() + line * 0.6, width, line}, Qt::AlignLeft | Qt::AlignTop, unit,
           ink(Ink::FaintText), false, true);
    }
  }

  void lane(std::size_t index) {
    const auto& box = m_l.lanes()[index];
    const auto& lane = m_d.lanes[index];
    const QRectF& r = box.rect;
    const double line = m_metrics.height();
    double lastY = r.bottom() + line;
    for (const double v : box.grid) {
      const double y = box.yOf(v);
      if (v > 0) {
        m_p.setPen(QPen(faded(ink(Ink::FaintLine), 0.55), 1));
        m_p.drawLine(QPointF(r.left(), y), QPointF(r.right(), y));
      }
      if (lastY - y < line * 0.95 && v > 0) continue;
      // The name stands where the highest number would.
      if (y - line / 2 < r.top() + line * 1.35 && r.height() < line * 3 && v > 0 &&
          v < box.grid.back()) {
        continue;
      }
      lastY = y;
      const QString number = v == 0 || v >= 10 || lane.decimals == 0
                                 ? QLocale().toString(v, 'f', std::fmod(v, 1.0) > 0.01 ? 1 : 0)
                                 : QLocale().toString(v, 'f', 1);
      text({r.left() - 70, y - line / 2, 64, line}, Qt::AlignRight | Qt::AlignVCenter, number,
           ink(Ink::FaintText), false, true);
    }
    frame(r, lane.name, lane.unit);
    for (const auto& s : lane.series) band(box, s.past, s.ink, false);
    for (const auto& s : lane.series) band(box, calmed(s.ahead), s.ink, true);
    for (const auto& s : lane.series) hatched(box, calmed(s.other));
    for (const auto& s : lane.series) {
      curve(box, s.past, ink(s.ink), s.broken);
      curve(box, calmed(s.ahead), ink(s.ink), s.broken);
      curve(box, calmed(s.other), ink(Ink::Arrow), true);
    }
    for (const auto& s : lane.series) {
      for (const auto& p : s.seen) {
        if (inRange(p.date)) point(box, p, ink(s.ink), s.broken);
      }
    }
    labels(box, lane);
  }

  void band(const CourseLayout::LaneBox& box, const Band& whole, Ink colour, bool ahead) {
    const Band points = inside(whole, m_l.from(), m_l.to());
    if (points.size() < 2) return;
    QPolygonF shape;
    for (const auto& p : points) shape << QPointF(m_l.xOf(p.date), box.yOf(p.high));
    for (auto it = points.rbegin(); it != points.rend(); ++it) {
      shape << QPointF(m_l.xOf(it->date), box.yOf(it->low));
    }
    m_p.setPen(Qt::NoPen);
    m_p.setBrush(faded(ink(colour), ahead ? 0.20 : 0.30));
    m_p.drawPolygon(shape);
  }

  /// The second band as upright lines, told from the first in grey too.
  void hatched(const CourseLayout::LaneBox& box, const Band& whole) {
    const Band points = inside(whole, m_l.from(), m_l.to());
    if (points.size() < 2) return;
    m_p.setPen(QPen(faded(ink(Ink::Arrow), 0.4), 0.9));
    constexpr double kStepPx = 7;
    std::size_t at = 0;
    const double end = m_l.xOf(points.back().date);
    for (double x = m_l.xOf(points.front().date); x <= end; x += kStepPx) {
      while (at + 2 < points.size() && m_l.xOf(points[at + 1].date) < x) ++at;
      const double x0 = m_l.xOf(points[at].date), x1 = m_l.xOf(points[at + 1].date);
      const double share = x1 > x0 ? std::clamp((x - x0) / (x1 - x0), 0.0, 1.0) : 0;
      const auto mix = [&](double a, double b) { return a + (b - a) * share; };
      m_p.drawLine(QPointF(x, box.yOf(mix(points[at].low, points[at + 1].low))),
                   QPointF(x, box.yOf(mix(points[at].high, points[at + 1].high))));
    }
    QPolygonF high, low;
    for (const auto& p : points) {
      high << QPointF(m_l.xOf(p.date), box.yOf(p.high));
      low << QPointF(m_l.xOf(p.date), box.yOf(p.low));
    }
    m_p.setBrush(Qt::NoBrush);
    m_p.drawPolyline(high);
    m_p.drawPolyline(low);
  }

  void curve(const CourseLayout::LaneBox& box, const Band& whole, const QColor& colour,
             bool broken) {
    const Band points = inside(whole, m_l.from(), m_l.to());
    m_p.setBrush(Qt::NoBrush);
    // Runs of days that were looked at lately, and of days that were not.
    for (std::size_t i = 0; i + 1 < points.size();) {
      const bool dotted = unseen(m_d, points[i + 1].date);
      QPolygonF run;
      run << QPointF(m_l.xOf(points[i].date), box.yOf(points[i].median));
      while (i + 1 < points.size() && unseen(m_d, points[i + 1].date) == dotted) {
        ++i;
        run << QPointF(m_l.xOf(points[i].date), box.yOf(points[i].median));
      }
      QPen pen(colour, 1.8);
      pen.setCapStyle(dotted ? Qt::RoundCap : Qt::FlatCap);
      if (dotted) {
        pen.setDashPattern({0.1, 2.6});
        pen.setWidthF(2.0);
      } else if (broken) {
        pen.setDashPattern({4, 2.2});
      }
      m_p.setPen(pen);
      m_p.drawPolyline(run);
    }
  }

  void point(const CourseLayout::LaneBox& box, const SeenPoint& p, const QColor& colour,
             bool square) {
    const QPointF c(m_l.xOf(p.date), box.yOf(p.median));
    m_p.setPen(QPen(colour, 1.2));
    const double high = box.yOf(p.high), low = box.yOf(p.low);
    m_p.drawLine(QPointF(c.x(), high), QPointF(c.x(), low));
    for (const double y : {high, low}) m_p.drawLine(QPointF(c.x() - 3, y), QPointF(c.x() + 3, y));
    m_p.setPen(QPen(ink(Ink::Text), 1.2));
    m_p.setBrush(ink(Ink::Paper));
    if (square) {
      m_p.drawRect(QRectF(c.x() - 3, c.y() - 3, 6, 6));
    } else {
      m_p.drawEllipse(c, 3.6, 3.6);
    }
    if (!p.surprise) return;
    // A surprise has its own shape: a triangle with a mark above the point.
    const double top = std::max(box.rect.top() - 4, high - 16);
    m_p.setPen(QPen(ink(Ink::Paper), 1));
    m_p.setBrush(ink(Ink::Alarm));
    m_p.drawPolygon(QPolygonF{QPointF(c.x(), top), QPointF(c.x() - 6.5, top + 12),
                              QPointF(c.x() + 6.5, top + 12)});
    m_p.setPen(QPen(ink(Ink::Paper), 1.6));
    m_p.drawLine(QPointF(c.x(), top + 4), QPointF(c.x(), top + 8));
    m_p.drawPoint(QPointF(c.x(), top + 10));
  }

  /// Names at the lines' right ends, moved apart where they would cover each other.
  void labels(const CourseLayout::LaneBox& box, const Lane& lane) {
    struct Label {
      double y;
      QString words;
      QColor colour;
    };
    std::vector<Label> found;
    const auto end = [&](const Band& band) -> std::optional<double> {
      const Band points = inside(band, m_l.from(), m_l.to());
      return points.empty() ? std::nullopt : std::optional(box.yOf(points.back().median));
    };
    for (const auto& s : lane.series) {
      const auto y = end(s.ahead) ? end(s.ahead) : end(s.past);
      if (y && (lane.series.size() > 1 || !s.other.empty())) {
        found.push_back(
            {*y, s.other.empty() || lane.series.size() > 1 ? s.name : Course::tr("as it is"),
             ink(s.ink)});
      }
      if (const auto other = end(s.other)) {
        found.push_back({*other, Course::tr("tried"), ink(Ink::Arrow)});
      }
    }
    std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.y < b.y; });
    const double line = m_metrics.height();
    for (std::size_t i = 1; i < found.size(); ++i) {
      found[i].y = std::max(found[i].y, found[i - 1].y + line * 0.95);
    }
    const double over = found.empty() ? 0 : found.back().y - (box.rect.bottom() + line * 0.3);
    for (auto& l : found) {
      if (over > 0) l.y -= over;
      text({box.rect.right() + 6, l.y - line / 2, 200, line}, Qt::AlignLeft | Qt::AlignVCenter,
           l.words, l.colour, true, true);
    }
  }

  void weather() {
    const QRectF& r = m_l.weather();
    frame(r, Course::tr("Weather"), m_d.temperatureUnit);
    const double line = m_metrics.height();
    const double day = std::max(1.0, r.width() / (m_l.to() - m_l.from()));
    double mostRain = 10;
    for (const auto& w : m_d.weather) {
      if (inRange(w.date)) mostRain = std::max(mostRain, w.rainMm.value_or(0));
    }
    for (const double t : {m_l.coldest(), 0.0, 20.0, m_l.warmest()}) {
      if (t != 0 && t != 20 && std::abs(t - (t > 0 ? 20 : 0)) < 9) continue;
      const double y = m_l.weatherY(t);
      m_p.setPen(QPen(faded(ink(Ink::FaintLine), t == 0 ? 0.9 : 0.5), 1));
      m_p.drawLine(QPointF(r.left(), y), QPointF(r.right(), y));
      if (t == 0 && m_l.weatherY(m_l.coldest()) - y < line) continue;
      if (t == m_l.warmest() && r.height() < line * 2.6) continue;
      text({r.left() - 70, y - line / 2, 64, line}, Qt::AlignRight | Qt::AlignVCenter,
           QLocale().toString(t, 'f', 0), ink(Ink::FaintText), false, true);
    }
    for (const auto& w : m_d.weather) {
      if (!inRange(w.date)) continue;
      const double x = m_l.xOf(w.date);
      const double top = m_l.weatherY(w.tmax), bottom = m_l.weatherY(w.tmin);
      const bool known = w.kind != WeatherPoint::Kind::Usual;
      // Days warm enough are filled and have a foot; others are bare: told apart without colour.
      const QColor fill = w.opens ? ink(Ink::Honey) : w.flight ? ink(Ink::Nectar) : ink(Ink::Shade);
      const QRectF bar(x - day * 0.4, top, std::max(0.8, day * 0.8), std::max(1.5, bottom - top));
      m_p.setPen(Qt::NoPen);
      m_p.setBrush(faded(fill, known ? 1.0 : 0.55));
      m_p.drawRect(bar);
      if (w.opens) {
        m_p.setBrush(ink(Ink::Text));
        m_p.drawRect(QRectF(bar.left(), r.bottom() - 2, bar.width(), 3));
      }
      if (w.rainMm && *w.rainMm > 0.2) {
        const double h = *w.rainMm / mostRain * r.height() * 0.55;
        m_p.setBrush(faded(ink(Ink::Water), known ? 1.0 : 0.6));
        m_p.drawRect(QRectF(x - day * 0.22, r.top(), std::max(0.8, day * 0.44), h));
        m_p.setPen(QPen(ink(Ink::FaintText), 0.6));
        if (day > 5)
          m_p.drawLine(QPointF(x - day * 0.22, r.top() + h), QPointF(x + day * 0.22, r.top() + h));
      }
    }
    if (r.height() > line * 2.2) {
      const double x = r.right() + 6;
      text({x, r.top() - line * 0.3, 200, line}, Qt::AlignLeft | Qt::AlignTop, Course::tr("rain"),
           ink(Ink::FaintText), false, true);
      text({x, r.bottom() - line, 200, line}, Qt::AlignLeft | Qt::AlignTop, Course::tr("combs"),
           ink(Ink::FaintText), false, true);
    }
  }

  void ticks() {
    const QRectF& r = m_l.journal();
    const double line = m_metrics.height();
    const double width = m_l.gutter();
    text({r.left() - width, r.top(), width, r.height()}, Qt::AlignLeft | Qt::AlignVCenter,
         Course::tr("Journal"), ink(Ink::Text), true);
    const double top = m_l.plot().top();
    const double box = line * 1.02;
    double lastRight = -1e9;
    QChar last;
    int more = 0;
    for (const auto& t : m_d.ticks) {
      if (!inRange(t.date)) continue;
      const double x = m_l.xOf(t.date);
      m_p.setPen(QPen(faded(ink(Ink::Line), 0.35), 0.8));
      m_p.drawLine(QPointF(x, top), QPointF(x, r.top()));
      double left = x - box / 2;
      if (left < lastRight + 1) {
        // Letters that would cover each other stand side by side while there is room near.
        if (lastRight + 1 - left > box * 0.7 || last == t.letter) {
          ++more;
          continue;
        }
        left = lastRight + 1;
      }
      lastRight = left + box;
      last = t.letter;
      const QRectF letter(left, r.center().y() - box / 2, box, box);
      m_p.setPen(QPen(ink(Ink::Line), 1));
      m_p.setBrush(ink(Ink::Paper));
      m_p.drawRoundedRect(letter, 2.5, 2.5);
      text(letter, Qt::AlignCenter, QString(t.letter), ink(Ink::Text), true, true);
    }
    if (more > 0) {
      text({r.right() + 6, r.top(), 200, r.height()}, Qt::AlignLeft | Qt::AlignVCenter,
           Course::tr("%1 more").arg(more), ink(Ink::FaintText), false, true);
    }
  }

  void today() {
    if (!inRange(m_d.today)) return;
    const double x = m_l.xOf(m_d.today);
    const QRectF plot = m_l.plot();
    QPen pen(ink(Ink::Accent), 1.6);
    pen.setDashPattern({5, 2});
    m_p.setPen(pen);
    m_p.drawLine(QPointF(x, plot.top() - 6), QPointF(x, plot.bottom()));
    const double line = m_metrics.height();
    const QString word = Course::tr("today");
    const double width = m_metrics.horizontalAdvance(word) + 10;
    const bool fits = x + width < plot.right() + 40;
    const QRectF box(fits ? x + 3 : x - width - 3, plot.top() - line * 0.55, width, line);
    text(box, Qt::AlignLeft | Qt::AlignVCenter, word, ink(Ink::Accent), true);
  }

  void reading() {
    if (!m_style.reading || !inRange(*m_style.reading)) return;
    const double x = m_l.xOf(*m_style.reading);
    const QRectF plot = m_l.plot();
    m_p.setPen(QPen(ink(Ink::Text), 1));
    m_p.drawLine(QPointF(x, plot.top()), QPointF(x, plot.bottom()));
    for (std::size_t i = 0; i < m_d.lanes.size(); ++i) {
      for (const auto& s : m_d.lanes[i].series) {
        const auto p = at(s, *m_style.reading);
        if (!p) continue;
        m_p.setPen(QPen(ink(Ink::Paper), 1.2));
        m_p.setBrush(ink(s.ink));
        m_p.drawEllipse(QPointF(x, m_l.lanes()[i].yOf(p->median)), 4, 4);
      }
    }
  }

  QPainter& m_p;
  const CourseLayout& m_l;
  const CourseData& m_d;
  const CourseStyle& m_style;
  QFontMetricsF m_metrics;
  QFont m_small;
};

}  // namespace

QRectF chartArea(const QRectF& area, const CourseStyle& style) {
  return style.title ? area.adjusted(0, style.font.pixelSize() * 2.2, 0, 0) : area;
}

void paintCourse(QPainter& painter, const QRectF& area, const CourseData& data, base::Date from,
                 base::Date to, const CourseStyle& style) {
  painter.save();
  const QRectF chart = chartArea(area, style);
  const CourseLayout layout(data, chart, from, to, style.font);
  if (style.title) {
    QFont font = style.font;
    font.setBold(true);
    font.setPixelSize(style.font.pixelSize() * 5 / 4);
    painter.setFont(font);
    painter.setPen(style.palette->colour(Ink::Text));
    painter.drawText(QRectF(area.left(), area.top(), area.width(), style.font.pixelSize() * 2.0),
                     Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, data.title);
  }
  Drawing(painter, layout, data, style).all();
  painter.restore();
}

}  // namespace outyard::charts
