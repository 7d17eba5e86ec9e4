// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/day_strip.h"

#include <QCoreApplication>
#include <QDate>
#include <QFontMetricsF>
#include <QLocale>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "ui/adapt/system_clock.h"
#include "ui/desk/desk_words.h"

namespace outyard::desk {
namespace {

using sheet::Ink;

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Desk)
};

constexpr double kMarkLines = 1.5;  ///< height of the hive, in lines of the font

void paintDrop(QPainter& p, const QRectF& box, const print::Palette& colours) {
  QPainterPath drop;
  const double r = box.width() / 2;
  const QPointF centre(box.center().x(), box.bottom() - r);
  drop.moveTo(box.center().x(), box.top());
  drop.quadTo(centre.x() + r * 1.1, centre.y() - r * 0.4, centre.x() + r, centre.y());
  drop.arcTo(QRectF(centre.x() - r, centre.y() - r, 2 * r, 2 * r), 0, -180);
  drop.quadTo(centre.x() - r * 1.1, centre.y() - r * 0.4, box.center().x(), box.top());
  p.setPen(QPen(colours.colour(Ink::Line), box.width() / 8));
  p.setBrush(colours.colour(Ink::Water));
  p.drawPath(drop);
}

Ink groundOf(Warmth kind) {
  switch (kind) {
    case Warmth::Combs:
      return Ink::Nectar;
    case Warmth::Lid:
      return Ink::Comb;
    default:
      return Ink::None;
  }
}

}  // namespace

QString stripWords(const planning::YardDays& days, const adapt::Units& units) {
  QStringList lid, combs, shut;
  bool known = false;
  for (const auto& day : days.days) {
    const QString text = day.tmaxC
                             ? QStringLiteral("%1 (%2)").arg(
                                   shortDay(day.date), units.text(base::Temperature{*day.tmaxC}))
                             : QString();
    known = known || day.tmaxC;
    if (warmthOf(day) == Warmth::Combs) combs << text;
    if (warmthOf(day) == Warmth::Lid) lid << text;
    if (warmthOf(day) == Warmth::Shut) shut << text;
  }
  if (!known) return Words::tr("No weather is known here.");
  const auto list = [](const QStringList& some) {
    return some.isEmpty() ? Words::tr("none") : some.join(QStringLiteral(", "));
  };
  return Words::tr("Days for combs: %1. For the lid only: %2. Shut: %3.")
      .arg(list(combs), list(lid), list(shut));
}

double stripHeight(const QFont& font) {
  const double line = QFontMetricsF(font).height();
  return std::ceil(line * (2 + kMarkLines) + 6);
}

int dayAt(const QRectF& area, const planning::YardDays& days, const QPointF& point) {
  if (days.days.empty() || !area.contains(point)) return -1;
  const int count = static_cast<int>(days.days.size());
  const int at = static_cast<int>((point.x() - area.left()) / area.width() * count);
  return std::clamp(at, 0, count - 1);
}

void paintDayMark(QPainter& p, const QRectF& box, Warmth kind, const print::Palette& colours) {
  p.save();
  p.setRenderHint(QPainter::Antialiasing);
  // The lid stands out on both sides of the box.
  const double h = box.height(), w = std::min(box.width() * 0.88, h * 1.2);
  const double x = box.center().x() - w / 2;
  const QRectF body(x, box.top() + h * 0.52, w, h * 0.44);
  const QPen edge(colours.colour(Ink::WoodEdge), h / 16);
  const QPen dark(colours.colour(Ink::Line), h / 9, Qt::SolidLine, Qt::RoundCap);
  if (kind == Warmth::Unknown) {
    QPen dashed(colours.colour(Ink::FaintLine), h / 16, Qt::DashLine);
    p.setPen(dashed);
    p.setBrush(Qt::NoBrush);
    p.drawRect(body);
    p.restore();
    return;
  }
  if (kind == Warmth::Combs) {  // a comb half out of the box, with its lines of cells
    const QRectF comb(x + w * 0.30, box.top() + h * 0.14, w * 0.52, h * 0.56);
    p.setPen(edge);
    p.setBrush(colours.colour(Ink::Honey));
    p.drawRect(comb);
    p.setPen(QPen(colours.colour(Ink::Line), h / 22));
    for (int i = 1; i <= 2; ++i) {
      const double y = comb.top() + comb.height() * i / 4;
      p.drawLine(QPointF(comb.left(), y), QPointF(comb.right(), y));
    }
    p.setPen(dark);  // its top bar, longer than the comb
    p.drawLine(QPointF(comb.left() - w * 0.07, comb.top()),
               QPointF(comb.right() + w * 0.07, comb.top()));
  }
  p.setPen(edge);
  p.setBrush(colours.colour(Ink::Wood));
  p.drawRect(body);
  p.setPen(dark);  // the entrance
  p.drawLine(QPointF(x + w * 0.38, body.bottom() - h * 0.1),
             QPointF(x + w * 0.62, body.bottom() - h * 0.1));
  // The lid: on, tilted, or away.
  if (kind == Warmth::Shut) {
    p.drawLine(QPointF(x - w * 0.06, body.top()), QPointF(x + w * 1.06, body.top()));
  } else if (kind == Warmth::Lid) {
    p.drawLine(QPointF(x - w * 0.04, body.top() - h * 0.03),
               QPointF(x + w * 0.94, body.top() - h * 0.40));
  }
  p.restore();
}

void paintStrip(QPainter& p, const QRectF& area, const planning::YardDays& days, const QFont& font,
                const print::Palette& colours, const adapt::Units& units) {
  if (days.days.empty()) return;
  p.save();
  p.setRenderHint(QPainter::Antialiasing);
  QFont small = font, bold = font;
  bold.setBold(true);
  const QFontMetricsF metrics(font);
  const double line = metrics.height();
  const double each = area.width() / static_cast<double>(days.days.size());
  const double mark = line * kMarkLines;
  const QLocale locale;
  // One form of the day for the whole strip: "Sat 25", "Sa 25", "S 25" or the number alone.
  const auto named = [&](const QDate& date, int letters) {
    const QString name = locale.dayName(date.dayOfWeek(), QLocale::ShortFormat).left(letters);
    return letters == 0 ? QString::number(date.day())
                        : QStringLiteral("%1 %2").arg(name).arg(date.day());
  };
  const QFontMetricsF widest(bold);
  int letters = 3;
  while (letters > 0 && std::any_of(days.days.begin(), days.days.end(), [&](const auto& day) {
           return widest.horizontalAdvance(named(adapt::toQDate(day.date), letters)) > each - 2;
         })) {
    --letters;
  }
  for (std::size_t i = 0; i < days.days.size(); ++i) {
    const auto& day = days.days[i];
    const QDate date = adapt::toQDate(day.date);
    const QRectF cell(area.left() + each * static_cast<double>(i), area.top(), each, area.height());
    const QRectF inside = cell.adjusted(1.5, 0, -1.5, 0);
    const Warmth kind = warmthOf(day);
    if (const Ink ground = groundOf(kind); ground != Ink::None) {
      p.setPen(Qt::NoPen);
      QColor colour = colours.colour(ground);
      colour.setAlphaF(0.6F);  // the hive on it has the same inks
      p.setBrush(colour);
      p.drawRoundedRect(inside.adjusted(0, line + 1, 0, 0), 3, 3);
    }
    // Saturday and Sunday stand out: helpers are there on other days than the keeper.
    const bool weekend = date.dayOfWeek() >= 6;
    const QString full = named(date, letters);
    p.setFont(weekend ? bold : small);
    p.setPen(colours.colour(weekend ? Ink::Text : Ink::FaintText));
    p.drawText(QRectF(inside.left(), inside.top(), inside.width(), line), Qt::AlignCenter, full);
    const QRectF middle(inside.left(), inside.top() + line + 3, inside.width(), mark);
    const QString mm = isWet(day) ? locale.toString(*day.rainMm, 'f', 0) : QString();
    const double dropWidth = line * 0.42;
    const double rainWidth = dropWidth + 1.5 + metrics.horizontalAdvance(mm);
    const double room = middle.width() - (isWet(day) ? dropWidth + 2 : 0);
    const double markWidth = std::min(mark * 1.3, room * 0.92);
    const bool withNumber = isWet(day) && markWidth + rainWidth + 3 <= middle.width();
    const double total = markWidth + (isWet(day) ? 2 + (withNumber ? rainWidth : dropWidth) : 0);
    const double left = middle.left() + (middle.width() - total) / 2;
    paintDayMark(p, QRectF(left, middle.top(), markWidth, mark), kind, colours);
    if (isWet(day)) {
      const double x = left + markWidth + 2, y = middle.top() + mark * 0.36;
      paintDrop(p, QRectF(x, y, dropWidth, line * 0.62), colours);
      if (withNumber) {
        p.setFont(small);
        p.setPen(colours.colour(Ink::Text));
        p.drawText(QRectF(x + dropWidth + 1.5, y - line * 0.15, rainWidth + 4, line),
                   Qt::AlignLeft | Qt::AlignVCenter, mm);
      }
    }
    const QString warmth =
        day.tmaxC
            ? QStringLiteral("%1°").arg(std::lround(units.shown(base::Temperature{*day.tmaxC})))
            : QStringLiteral("?");
    p.setFont(small);
    p.setPen(colours.colour(kind == Warmth::Shut || kind == Warmth::Unknown ? Ink::FaintText
                                                                            : Ink::Text));
    p.drawText(QRectF(inside.left(), middle.bottom() + 1, inside.width(), line), Qt::AlignCenter,
               warmth);
  }
  p.restore();
}

}  // namespace outyard::desk
