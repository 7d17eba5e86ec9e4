// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractItemView>
#include <QGuiApplication>
#include <QHelpEvent>
#include <QPainter>
#include <QStyle>
#include <QStyleOptionViewItem>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "core/sheet/marks.h"
#include "ui/desk/day_strip.h"
#include "ui/desk/desk_list.h"
#include "ui/widgets/mark_painter.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/theme.h"

namespace outyard::desk {
namespace {

using sheet::Ink;

constexpr int kPad = 8, kGap = 5, kBar = 3;

}  // namespace

/// Where everything of a row stands, from its own left upper corner.
struct DeskDelegate::Layout {
  QFont plain, bold;
  int line = 0;  ///< height of one line of text
  QRect mark;    ///< of the hive; empty = none
  QRect lead, title, extra, right;
  bool extraBelow = false;  ///< no room for it on the first line
  std::vector<QRect> lines;
  std::vector<QRect> badges;
  QRect strip;
  int height = 0;
};

DeskDelegate::DeskDelegate(widgets::SeasonHub& hub, DeskList& list)
    : QStyledItemDelegate(&list), m_hub(hub), m_list(list) {}

int DeskDelegate::widthOf(const QModelIndex& index) const {
  int depth = m_list.rootIsDecorated() ? 1 : 0;
  if (index.parent().isValid()) ++depth;
  return m_list.viewport()->width() - depth * m_list.indentation();
}

DeskDelegate::Layout DeskDelegate::layoutOf(const Row& row, const QFont& font, int width) const {
  Layout out;
  out.plain = out.bold = font;
  out.bold.setBold(true);
  const QFontMetrics plain(out.plain), bold(out.bold);
  out.line = plain.height();
  int x = kPad, y = kGap;
  const int right = width - kPad;
  if (row.kind == Row::Kind::Risk && row.hive) {
    const int high = out.line * 2;
    out.mark = QRect(x, y, high * 3 / 2, high);
    x += out.mark.width() + kPad;
  }
  const bool head = !row.lead.isEmpty() || !row.right.isEmpty();
  if (head) {
    const bool strong = row.urgent || row.kind == Row::Kind::Yard;
    const int rightWidth = (strong ? bold : plain).horizontalAdvance(row.right);
    const int leadWidth = bold.horizontalAdvance(row.lead);
    // Numbers of hives stand in a column, so that the work beside them does too.
    const bool column = row.kind == Row::Kind::Task;
    const int leadColumn =
        column ? std::max(leadWidth, bold.horizontalAdvance(QStringLiteral("WW-000"))) : leadWidth;
    const int titleWidth = plain.horizontalAdvance(row.title);
    const int extraWidth = plain.horizontalAdvance(row.extra);
    const int windowColumn =
        column ? std::max(rightWidth, plain.horizontalAdvance(QStringLiteral("30 Apr – 30 May")))
               : rightWidth;
    const int need = leadColumn + kPad + titleWidth + kPad;
    out.extraBelow = !row.extra.isEmpty() && x + need + extraWidth + kPad + windowColumn > right;
    const bool rightBelow = x + need + rightWidth > right;
    out.lead = QRect(x, y, std::min(leadColumn, right - x), out.line);
    const int titleLeft = x + leadColumn + kPad;
    const int titleEnd = rightBelow ? right : right - rightWidth - kPad;
    const int room = std::max(titleEnd - titleLeft, 40);
    const int titleHigh =
        row.title.isEmpty()
            ? out.line
            : plain.boundingRect(QRect(0, 0, room, 10000), Qt::TextWordWrap, row.title).height();
    out.title = QRect(titleLeft, y, room, std::max(out.line, titleHigh));
    if (!row.extra.isEmpty() && !out.extraBelow) {
      const int extraLeft = right - windowColumn - kPad - extraWidth;
      out.extra = QRect(extraLeft, y, extraWidth, out.line);
    }
    if (rightBelow) y += out.title.height();
    out.right = QRect(right - rightWidth, y, rightWidth, out.line);
    if (out.extraBelow && rightBelow && titleLeft + extraWidth + kPad <= out.right.left()) {
      out.extra = QRect(titleLeft, y, extraWidth, out.line);
      out.extraBelow = false;
    }
    y += rightBelow ? out.line : out.title.height();
    if (out.extraBelow) {
      out.extra = QRect(titleLeft, y, std::max(right - titleLeft, 40), out.line);
      y += out.line;
    }
    if (column) x = titleLeft;
  }
  for (qsizetype i = 0; i < row.lines.size(); ++i) {
    const bool badge = i < row.badges.size() && !row.badges.at(i).isSpace();
    const int badgeSide = badge ? out.line : 0;
    const int left = x + (badge ? badgeSide + 5 : 0);
    const int high = plain
                         .boundingRect(QRect(0, 0, std::max(right - left, 40), 10000),
                                       Qt::TextWordWrap, row.lines.at(i))
                         .height();
    out.badges.push_back(badge ? QRect(x, y, badgeSide, badgeSide) : QRect());
    out.lines.push_back(QRect(left, y, std::max(right - left, 40), high));
    y += high + (i + 1 < row.lines.size() ? 2 : 0);
  }
  if (!out.mark.isEmpty()) y = std::max(y, out.mark.bottom() + 1);
  if (row.days) {
    const int high = static_cast<int>(std::ceil(stripHeight(out.plain)));
    out.strip = QRect(kPad, y + 4, width - 2 * kPad, high);
    y = out.strip.bottom() + 1;
  }
  out.height = y + kGap;
  return out;
}

QSize DeskDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const int width = std::max(widthOf(index), 120);
  return {width, layoutOf(DeskList::rowOf(index), option.font, width).height};
}

const QPixmap& DeskDelegate::markOf(const base::HiveId& hive, int height) const {
  const auto found = m_marks.find(hive);
  if (found != m_marks.end()) return found->second;
  QPixmap pixmap;
  if (const auto* state = m_hub.hive(hive)) {
    const auto seenUpTo = std::min(m_hub.shownDate(), m_hub.workingDate());
    const auto mark =
        sheet::markInput(m_hub.season(), *state, m_hub.judgements(state->yard), seenUpTo);
    pixmap = widgets::markPixmap(mark, height, m_list.palette(), m_list.devicePixelRatioF());
  }
  return m_marks.emplace(hive, pixmap).first->second;
}

void DeskDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
  const Row& row = DeskList::rowOf(index);
  const QPalette& colours = option.palette;
  const auto& inks = widgets::drawingPalette(colours);
  const QColor text = colours.color(QPalette::Text);
  const QColor faint = colours.color(QPalette::PlaceholderText);
  const Layout l = layoutOf(row, option.font, option.rect.width());
  QPainter& p = *painter;
  p.save();
  p.setClipRect(option.rect);
  // The yard's row is a heading; what is chosen has a bar and a tint, so that every colour on it
  // still reads.
  if (row.kind == Row::Kind::Yard) {
    p.fillRect(option.rect, colours.color(QPalette::AlternateBase));
  }
  const bool selected = option.state.testFlag(QStyle::State_Selected);
  if (selected) {
    const QColor chosen = QGuiApplication::palette().color(QPalette::Highlight);
    QColor tint = chosen;
    tint.setAlpha(widgets::isDark(colours) ? 64 : 38);
    p.fillRect(option.rect, tint);
    p.fillRect(QRect(option.rect.left(), option.rect.top(), kBar, option.rect.height()), chosen);
  }
  p.setPen(QPen(colours.color(QPalette::Mid), 1));
  p.drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
  const QPoint origin = option.rect.topLeft();
  const auto say = [&](const QRect& at, const QString& words, const QFont& font, QColor colour,
                       int flags = Qt::AlignLeft | Qt::AlignTop) {
    if (words.isEmpty()) return;
    p.setFont(font);
    p.setPen(colour);
    p.drawText(at.translated(origin), flags, words);
  };
  if (!l.mark.isEmpty()) {
    const QPixmap& mark = markOf(*row.hive, l.mark.height());
    if (!mark.isNull()) {
      const QSizeF size = mark.deviceIndependentSize();
      const QRect box = l.mark.translated(origin);
      p.drawPixmap(QPointF(box.left() + (box.width() - size.width()) / 2, box.top()), mark);
    }
  }
  say(l.lead, row.lead, l.bold, text);
  const bool isName =
      row.kind == Row::Kind::Risk || row.kind == Row::Kind::Look || row.kind == Row::Kind::Yard;
  say(l.title, row.title, l.plain, isName ? faint : text,
      Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
  if (row.planned) {  // a ticked box before the word
    const QRect at = l.extra.translated(origin);
    const double side = l.line * 0.6;
    const QRectF box(at.left() - side - 5, at.top() + (l.line - side) / 2, side, side);
    p.setRenderHint(QPainter::Antialiasing);
    p.setPen(QPen(faint, 1.2));
    p.setBrush(Qt::NoBrush);
    if (!l.extraBelow) {
      p.drawRect(box);
      p.drawPolyline(QPolygonF{QPointF(box.left() + side * 0.2, box.center().y()),
                               QPointF(box.left() + side * 0.42, box.bottom() - side * 0.2),
                               QPointF(box.right() - side * 0.12, box.top() + side * 0.15)});
    }
    p.setRenderHint(QPainter::Antialiasing, false);
  }
  say(l.extra, row.extra, l.plain, faint);
  say(l.right, row.right, row.urgent || row.kind == Row::Kind::Yard ? l.bold : l.plain,
      row.urgent ? inks.colour(Ink::Alarm) : text, Qt::AlignRight | Qt::AlignTop);
  for (std::size_t i = 0; i < l.lines.size(); ++i) {
    const auto k = static_cast<qsizetype>(i);
    if (!l.badges[i].isEmpty()) {
      // A letter stands in a box; an arrow alone.
      const QChar sign = row.badges.at(k);
      const bool letter = sign.isLetter();
      const QColor colour = letter ? inks.colour(Ink::Alarm) : text;
      if (letter) {
        p.setRenderHint(QPainter::Antialiasing);
        p.setPen(QPen(colour, 1.2));
        p.setBrush(Qt::NoBrush);
        p.drawRoundedRect(QRectF(l.badges[i].translated(origin)).adjusted(0.5, 0.5, -0.5, -0.5), 3,
                          3);
        p.setRenderHint(QPainter::Antialiasing, false);
      }
      QFont small = l.bold;
      small.setPointSizeF(small.pointSizeF() * 0.86);
      say(l.badges[i], QString(sign), letter ? small : l.plain, colour, Qt::AlignCenter);
    }
    const QColor colour = row.kind == Row::Kind::Risk || row.kind == Row::Kind::Look ? text : faint;
    say(l.lines[i], row.lines.at(k), l.plain, colour,
        Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap);
  }
  if (!l.strip.isEmpty() && m_list.facts()) {
    paintStrip(p, l.strip.translated(origin), m_list.facts()->due.yards[*row.days], l.plain, inks,
               adapt::Units::from(m_hub.settings()));
  }
  if (option.state.testFlag(QStyle::State_HasFocus)) {
    const QColor line = QGuiApplication::palette().color(QPalette::Highlight);
    QPen dotted(line, 1, Qt::DotLine);
    p.setPen(dotted);
    p.setBrush(Qt::NoBrush);
    p.drawRect(option.rect.adjusted(1, 1, -2, -2));
  }
  p.restore();
}

bool DeskDelegate::helpEvent(QHelpEvent* event, QAbstractItemView* view,
                             const QStyleOptionViewItem& option, const QModelIndex& index) {
  const Row& row = DeskList::rowOf(index);
  if (event->type() == QEvent::ToolTip && row.days && m_list.facts()) {
    const Layout l = layoutOf(row, option.font, option.rect.width());
    const QRect strip = l.strip.translated(option.rect.topLeft());
    const auto& days = m_list.facts()->due.yards[*row.days];
    const int day = dayAt(strip, days, event->pos());
    if (day >= 0) {
      QToolTip::showText(
          event->globalPos(),
          dayWords(days.days[static_cast<std::size_t>(day)], adapt::Units::from(m_hub.settings())),
          view);
      return true;
    }
  }
  return QStyledItemDelegate::helpEvent(event, view, option, index);
}

}  // namespace outyard::desk
