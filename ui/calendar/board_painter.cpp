// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/calendar/board_painter.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QLocale>
#include <algorithm>
#include <cmath>

namespace outyard::calendar {

namespace {

using planning::CalendarCell;
using planning::SeasonCalendar;
using sheet::Ink;

struct Board {
  Q_DECLARE_TR_FUNCTIONS(Board)
};

Ink inkOf(Lane lane) {
  switch (lane) {
    case Lane::Flow:
      return Ink::Nectar;
    case Lane::Divide:
      return Ink::Bees;
    case Lane::Boost:
      return Ink::Accent;
    case Lane::Treat:
      return Ink::Warning;
    case Lane::Honey:
      return Ink::Honey;
    case Lane::Work:
      return Ink::FaintText;
  }
  return Ink::Text;
}

QColor mixed(const QColor& a, const QColor& b, double shareOfA) {
  const auto mix = [&](int x, int y) {
    return static_cast<int>(std::lround(x * shareOfA + y * (1 - shareOfA)));
  };
  return {mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue())};
}

/// What a bar is: filled, outlined, or outlined and fainter.
enum class Tone { Done, Planned, Expected };

class Painting {
 public:
  Painting(QPainter& painter, const BoardMeasures& measures, const print::Palette& palette)
      : m_p(painter), m_m(measures), m_c(palette), m_small(measures.font), m_bold(measures.font) {
    m_bold.setBold(true);
    m_small.setPixelSize(std::max(1, measures.font.pixelSize() * 9 / 10));
  }

  [[nodiscard]] QColor colour(Ink ink) const { return m_c.colour(ink); }

  void bar(const QRectF& rect, Lane lane, Tone tone, const QString& words) {
    const QColor paper = colour(Ink::Paper);
    const QColor own = colour(inkOf(lane));
    QColor fill = tone == Tone::Done ? own : mixed(own, paper, tone == Tone::Planned ? 0.3 : 0.14);
    const QRectF in = rect.adjusted(1, 1, -1, -1);
    m_p.setPen(QPen(mixed(own, colour(Ink::Text), tone == Tone::Expected ? 0.7 : 0.45),
                    tone == Tone::Planned ? 1.3 : 1,
                    tone == Tone::Expected ? Qt::DashLine : Qt::SolidLine));
    m_p.setBrush(fill);
    m_p.drawRoundedRect(in, 2, 2);
    if (words.isEmpty()) return;
    // Text or paper, whichever stands out more from the fill.
    const QColor dark = colour(Ink::Text);
    const bool onPaper = print::contrast(dark, fill) >= print::contrast(paper, fill);
    m_p.setPen(onPaper ? dark : paper);
    m_p.setFont(tone == Tone::Done ? m_bold : m_small);
    m_p.drawText(in, Qt::AlignCenter, words);
  }

  void hatch(const QRectF& rect, Ink ink) {
    m_p.save();
    m_p.setClipRect(rect.adjusted(1, 2, -1, -2), Qt::IntersectClip);
    m_p.setPen(QPen(colour(ink), 1));
    const double step = std::max(4.0, m_m.lane / 3);
    for (double x = rect.left() - rect.height(); x < rect.right(); x += step) {
      m_p.drawLine(QPointF(x, rect.bottom()), QPointF(x + rect.height(), rect.top()));
    }
    m_p.restore();
  }

  void cell(const SeasonCalendar& c, std::size_t y, std::size_t w) {
    const CalendarCell& cell = c.cell(y, w);
    const bool over = c.weeks[w].monday.plusDays(6) < c.today;
    const Tone comes = c.expectedOnly(w) ? Tone::Expected : Tone::Planned;
    const QRectF rect = m_m.cell(y, w);
    const auto lane = [&](Lane which) {
      return QRectF(rect.left(), rect.top() + static_cast<int>(which) * m_m.lane, rect.width(),
                    m_m.lane);
    };
    if (cell.nectar > 0) flow(c, y, w, lane(Lane::Flow), over ? Tone::Done : comes);
    const QString d = laneLetter(Lane::Divide);
    if (cell.splitsDone > 0) {
      bar(lane(Lane::Divide), Lane::Divide, Tone::Done, d + QString::number(cell.splitsDone));
    } else if (cell.splitReady && *cell.splitReady >= 0.5) {
      bar(lane(Lane::Divide), Lane::Divide, comes,
          d + QString::number(std::lround(*cell.splitReady)));
    }
    both(lane(Lane::Boost), Lane::Boost, cell.boostsDone, cell.boostsPlanned, comes);
    treatment(c, y, w, lane(Lane::Treat), comes);
    honey(cell, lane(Lane::Honey), comes);
    const int due = cell.looksDue + cell.feedsDue + cell.washesDue + cell.otherDue;
    const int done = cell.looksDone + cell.feedsDone + cell.washesDone;
    both(lane(Lane::Work), Lane::Work, done, due, comes);
  }

  void text(const QRectF& rect, int flags, const QString& words, Ink ink, bool bold = false) {
    m_p.setPen(colour(ink));
    m_p.setFont(bold ? m_bold : m_m.font);
    m_p.drawText(rect, flags, words);
  }
  void smallText(const QRectF& rect, int flags, const QString& words, Ink ink) {
    m_p.setPen(colour(ink));
    m_p.setFont(m_small);
    m_p.drawText(rect, flags, words);
  }
  void line(QPointF from, QPointF to, Ink ink, double width = 1) {
    m_p.setPen(QPen(colour(ink), width));
    m_p.drawLine(from, to);
  }

 private:
  void both(const QRectF& rect, Lane lane, int done, int due, Tone comes) {
    if (done > 0 && due > 0) {
      QRectF left = rect, right = rect;
      left.setWidth(rect.width() / 2);
      right.setLeft(left.right());
      bar(left, lane, Tone::Done, QString::number(done));
      bar(right, lane, comes, QString::number(due));
    } else if (done > 0) {
      bar(rect, lane, Tone::Done, laneLetter(lane) + QString::number(done));
    } else if (due > 0) {
      bar(rect, lane, comes, laneLetter(lane) + QString::number(due));
    }
  }

  // A flow is as high as it is strong and runs on from week to week; its letter stands once.
  void flow(const SeasonCalendar& c, std::size_t y, std::size_t w, const QRectF& rect, Tone tone) {
    const CalendarCell& cell = c.cell(y, w);
    const double share = std::clamp(cell.nectar / 3, 0.2, 1.0);
    QRectF in = rect;
    in.setTop(rect.bottom() - share * (rect.height() - 1));
    const QColor own = colour(Ink::Nectar);
    m_p.setPen(Qt::NoPen);
    m_p.setBrush(tone == Tone::Expected ? mixed(own, colour(Ink::Paper), 0.45) : own);
    m_p.drawRect(in);
    line(in.topLeft(), in.topRight(), Ink::Line, 1);
    const bool first = w == 0 || c.cell(y, w - 1).nectar != cell.nectar;
    if (!first) return;
    const QString words = laneLetter(Lane::Flow) + QLocale().toString(cell.nectar, 'g', 2);
    // The line of a weak flow must not strike its own letter.
    const double wide = QFontMetricsF(m_small).horizontalAdvance(words) + 6;
    if (share < 0.9) {
      m_p.fillRect(QRectF(rect.left() + 1, rect.top(), wide, rect.height()), colour(Ink::Paper));
    }
    smallText(rect.adjusted(3, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, words, Ink::Text);
  }

  void treatment(const SeasonCalendar& c, std::size_t y, std::size_t w, const QRectF& rect,
                 Tone comes) {
    const CalendarCell& cell = c.cell(y, w);
    if (cell.underTreatment || cell.waiting) {
      hatch(rect, Ink::Warning);
      if (cell.waitingEnds) {
        line(rect.topRight() - QPointF(2, 0), rect.bottomRight() - QPointF(2, 0), Ink::Line, 3);
      }
    }
    both(rect, Lane::Treat, cell.treatmentsDone, cell.treatmentsPlanned, comes);
  }

  void honey(const CalendarCell& cell, const QRectF& rect, Tone comes) {
    if (cell.harvestKg > 0) {
      bar(rect, Lane::Honey, Tone::Done, Board::tr("%1 kg").arg(std::lround(cell.harvestKg)));
    } else {
      both(rect, Lane::Honey, cell.harvests, cell.harvestsDue, comes);
    }
  }

  QPainter& m_p;
  const BoardMeasures& m_m;
  const print::Palette& m_c;
  QFont m_small, m_bold;
};

struct Sign {
  Lane lane;
  Tone tone;
  bool hatched;
  QString mark, meaning;
};

std::vector<Sign> signs() {
  std::vector<Sign> out;
  for (int i = 0; i < kLanes; ++i) {
    const Lane lane = static_cast<Lane>(i);
    out.push_back({lane, Tone::Planned, false, laneLetter(lane), laneName(lane)});
  }
  out.push_back({Lane::Treat, Tone::Planned, true, {}, Board::tr("in the hive or waiting period")});
  out.push_back({Lane::Boost, Tone::Done, false, Board::tr("2"), Board::tr("done")});
  out.push_back({Lane::Boost, Tone::Planned, false, Board::tr("2"), Board::tr("planned or due")});
  out.push_back({Lane::Boost, Tone::Expected, false, Board::tr("2"),
                 Board::tr("expected, more than five weeks off")});
  return out;
}

template <class F>
double layLegend(double width, const BoardMeasures& m, F place) {
  const QFontMetricsF metrics(m.font);
  const double height = m.lane + 5;
  double x = 0, y = 0;
  for (const Sign& sign : signs()) {
    const double wide = m.week * 0.8 + 6 + metrics.horizontalAdvance(sign.meaning) + 18;
    if (x > 0 && x + wide > width) {
      x = 0;
      y += height;
    }
    place(sign, QPointF(x, y));
    x += wide;
  }
  return y + height;
}

void paintGrid(Painting& paint, const SeasonCalendar& c, const BoardMeasures& m, QSizeF size,
               QPainter& painter) {
  for (std::size_t w = 0; w < c.weeks.size(); ++w) {
    const QRectF first = m.cell(0, w);
    const bool month = w == 0 || c.weeks[w].monday.month() != c.weeks[w - 1].monday.month();
    paint.line({first.left(), m.head}, {first.left(), size.height()}, Ink::FaintLine,
               month ? 1.6 : 0.5);
  }
  for (std::size_t y = 0; y < c.yards.size(); ++y) {
    const double top = m.cell(y, 0).top() - m.gap / 2;
    paint.line({m.names, top}, {size.width(), top}, Ink::FaintLine, 1);
  }
  if (const auto week = c.weekOf(c.today)) {
    const double x = m.cell(0, *week).left() + (c.today - c.weeks[*week].monday) * m.week / 7;
    QPen pen(paint.colour(Ink::Alarm), 2);
    painter.setPen(pen);
    painter.drawLine(QPointF(x, m.head - 4), QPointF(x, size.height()));
  }
}

void paintHours(Painting& paint, const SeasonCalendar& c, const BoardMeasures& m, double top,
                QPainter& painter) {
  double most = 1;
  for (const auto& week : c.weeks) most = std::max({most, week.hours(), week.handHours});
  const double text = m.lane + 2, high = m.hours - text - 6, foot = top + m.hours - 3;
  for (std::size_t w = 0; w < c.weeks.size(); ++w) {
    const auto& week = c.weeks[w];
    if (week.handHours <= 0) continue;
    const QRectF column = m.cell(0, w);
    const double left = column.left(), wide = column.width();
    const auto y = [&](double hours) { return foot - high * hours / most; };
    const QRectF drive(left + wide * 0.2, y(week.driveHours), wide * 0.6,
                       foot - y(week.driveHours));
    const QRectF work(left + wide * 0.2, y(week.hours()), wide * 0.6,
                      drive.top() - y(week.hours()));
    const QColor own = paint.colour(week.overFull() ? Ink::Alarm : Ink::BeesExpected);
    painter.setPen(QPen(paint.colour(Ink::Line), 1));
    painter.setBrush(c.expectedOnly(w) ? mixed(own, paint.colour(Ink::Paper), 0.4) : own);
    if (week.workHours > 0) painter.drawRect(work);
    painter.setBrush(paint.colour(Ink::Paper));
    if (week.driveHours > 0) {
      painter.drawRect(drive);
      paint.hatch(drive, Ink::Line);
    }
    paint.line({left, y(week.handHours)}, {left + wide, y(week.handHours)}, Ink::Text, 1.5);
    if (week.hours() > 0) {
      const QString number = QString::number(std::lround(week.hours()));
      paint.text(QRectF(left, top + 2, wide, text), Qt::AlignCenter,
                 week.overFull() ? number + QLatin1Char('!') : number,
                 week.overFull() ? Ink::Alarm : Ink::Text, week.overFull());
    }
  }
  paint.line({0, top}, {m.names + m.week * static_cast<double>(c.weeks.size()), top}, Ink::Line,
             1.2);
}

void paintNames(Painting& paint, const SeasonCalendar& c, const BoardMeasures& m,
                const BoardLook& look) {
  for (std::size_t y = 0; y < c.yards.size(); ++y) {
    const QRectF rect(6, m.cell(y, 0).top(), m.names - m.lane - 14, kLanes * m.lane);
    const double letters = m.names - m.lane - 4;
    paint.text(rect, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
               look.names.value(static_cast<int>(y)), Ink::Text, true);
    for (int i = 0; i < kLanes; ++i) {
      paint.smallText(QRectF(letters, rect.top() + i * m.lane, m.lane, m.lane), Qt::AlignCenter,
                      laneLetter(static_cast<Lane>(i)), Ink::FaintText);
    }
  }
}

void paintHead(Painting& paint, const SeasonCalendar& c, const BoardMeasures& m) {
  const QLocale locale;
  for (std::size_t w = 0; w < c.weeks.size(); ++w) {
    const base::Date monday = c.weeks[w].monday;
    const QRectF column = m.cell(0, w);
    const bool month = w == 0 || monday.month() != c.weeks[w - 1].monday.month();
    if (month) {
      QString name = locale.standaloneMonthName(monday.month(), QLocale::ShortFormat);
      if (w == 0 || monday.month() == 1) name += QStringLiteral(" %1").arg(monday.year());
      paint.text(QRectF(column.left() + 3, 1, 4 * m.week, m.head / 2),
                 Qt::AlignLeft | Qt::AlignVCenter, name, Ink::Text, true);
    }
    paint.text(QRectF(column.left(), m.head / 2, m.week, m.head / 2), Qt::AlignCenter,
               QString::number(monday.day()), Ink::FaintText);
  }
  const double end = m.names + m.week * static_cast<double>(c.weeks.size());
  paint.line({0, m.head}, {end, m.head}, Ink::Line, 1.2);
}

}  // namespace

QString laneLetter(Lane lane) {
  switch (lane) {
    case Lane::Flow:
      return Board::tr("F", "flow");
    case Lane::Divide:
      return Board::tr("D", "divide");
    case Lane::Boost:
      return Board::tr("B", "boost");
    case Lane::Treat:
      return Board::tr("T", "treatment");
    case Lane::Honey:
      return Board::tr("H", "honey taken off");
    case Lane::Work:
      return Board::tr("W", "work");
  }
  return {};
}

QString laneName(Lane lane) {
  switch (lane) {
    case Lane::Flow:
      return Board::tr("flow, 0 to 3");
    case Lane::Divide:
      return Board::tr("colonies ready to divide");
    case Lane::Boost:
      return Board::tr("boosts");
    case Lane::Treat:
      return Board::tr("treatments");
    case Lane::Honey:
      return Board::tr("honey taken off");
    case Lane::Work:
      return Board::tr("looks, feeds, washes, other work");
  }
  return {};
}

QSizeF BoardMeasures::sizeOf(const SeasonCalendar& c) const {
  return {names + week * static_cast<double>(c.weeks.size()),
          head + row() * static_cast<double>(c.yards.size()) + hours};
}

QRectF BoardMeasures::cell(std::size_t y, std::size_t w) const {
  return {names + week * static_cast<double>(w), head + row() * static_cast<double>(y) + gap / 2,
          week, kLanes * lane};
}

BoardMeasures BoardMeasures::forFont(const QFont& font, const QStringList& names) {
  BoardMeasures m;
  m.font = font;
  if (m.font.pixelSize() <= 0) m.font.setPixelSize(QFontMetrics(font).height() * 3 / 4);
  QFont bold = m.font;
  bold.setBold(true);
  const QFontMetricsF metrics(bold);
  m.lane = std::ceil(metrics.height() * 0.98);
  m.week = std::ceil(metrics.horizontalAdvance(QStringLiteral("W88!"))) + 4;
  m.head = 2 * m.lane + 6;
  m.gap = std::ceil(m.lane * 0.5);
  m.hours = 6 * m.lane;
  // Names wrap at their blanks, so the longest word decides.
  double widest = metrics.horizontalAdvance(Board::tr("Hours a week"));
  for (const QString& name : names) {
    for (const QString& word : name.split(QLatin1Char(' '))) {
      widest = std::max(widest, metrics.horizontalAdvance(word));
    }
  }
  m.names = std::min(widest, 14 * m.week) + 2 * m.lane + 12;
  return m;
}

void paintBoard(QPainter& painter, const SeasonCalendar& c, const BoardMeasures& m,
                const BoardLook& look) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  Painting paint(painter, m, *look.palette);
  const QSizeF size = m.sizeOf(c);
  const QSizeF view = look.view.isEmpty() ? size : look.view;
  const double hoursTop = std::min(size.height(), view.height()) - m.hours;
  const QRectF body(m.names, m.head, view.width() - m.names, hoursTop - m.head);
  painter.fillRect(QRectF(QPointF(), view), paint.colour(Ink::Paper));
  if (c.weeks.empty()) {
    painter.restore();
    return;
  }
  // Names, head and hours stay in sight; the body scrolls below them both ways.
  const auto part = [&](const QRectF& clip, QPointF shift, auto draw) {
    painter.save();
    painter.setClipRect(clip);
    painter.translate(-shift);
    draw();
    painter.restore();
  };
  part(body, look.scrolled, [&] {
    for (std::size_t w = 0; w < c.weeks.size(); ++w) {
      if (!c.expectedOnly(w)) continue;
      const QRectF column = m.cell(0, w);
      painter.fillRect(QRectF(column.left(), m.head, m.week, size.height() - m.hours - m.head),
                       mixed(paint.colour(Ink::FaintLine), paint.colour(Ink::Paper), 0.12));
    }
    paintGrid(paint, c, m, QSizeF(size.width(), size.height() - m.hours), painter);
    for (std::size_t y = 0; y < c.yards.size(); ++y) {
      for (std::size_t w = 0; w < c.weeks.size(); ++w) paint.cell(c, y, w);
    }
    if (look.cursor) {
      const QRectF at = m.cell(look.cursor->first, look.cursor->second);
      painter.setBrush(Qt::NoBrush);
      painter.setPen(QPen(paint.colour(Ink::Text), look.cursorHasFocus ? 2.5 : 1.2,
                          look.cursorHasFocus ? Qt::SolidLine : Qt::DotLine));
      painter.drawRect(at.adjusted(0.5, -m.gap / 2 + 1, -0.5, m.gap / 2 - 1));
    }
  });
  part(QRectF(0, m.head, m.names, hoursTop - m.head), QPointF(0, look.scrolled.y()),
       [&] { paintNames(paint, c, m, look); });
  part(QRectF(m.names, 0, view.width() - m.names, m.head), QPointF(look.scrolled.x(), 0),
       [&] { paintHead(paint, c, m); });
  part(QRectF(m.names, hoursTop, view.width() - m.names, m.hours), QPointF(look.scrolled.x(), 0),
       [&] { paintHours(paint, c, m, hoursTop, painter); });
  paint.line({0, hoursTop}, {m.names, hoursTop}, Ink::Line, 1.2);
  paint.text(QRectF(6, hoursTop + 3, m.names - 10, m.lane + 2), Qt::AlignLeft | Qt::AlignVCenter,
             Board::tr("Hours a week"), Ink::Text, true);
  paint.smallText(QRectF(6, hoursTop + m.lane + 5, m.names - 10, m.hours - m.lane - 6),
                  Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                  Board::tr("line: what the hands have; hatched: driving; !: over full"),
                  Ink::FaintText);
  painter.restore();
}

double legendHeight(double width, const BoardMeasures& m) {
  return layLegend(width, m, [](const Sign&, QPointF) {});
}

void paintLegend(QPainter& painter, const QRectF& rect, const BoardMeasures& m,
                 const print::Palette& palette) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  Painting paint(painter, m, palette);
  layLegend(rect.width(), m, [&](const Sign& sign, QPointF at) {
    const QRectF mark(rect.topLeft() + at, QSizeF(m.week * 0.8, m.lane));
    if (sign.hatched) {
      paint.hatch(mark, Ink::Warning);
    } else {
      paint.bar(mark, sign.lane, sign.tone, sign.mark);
    }
    paint.text(QRectF(mark.right() + 6, mark.top() - 2, rect.width(), m.lane + 4),
               Qt::AlignLeft | Qt::AlignVCenter, sign.meaning, Ink::Text);
  });
  painter.restore();
}

}  // namespace outyard::calendar
