// SPDX-License-Identifier: GPL-3.0-or-later
// What the board is made of: cards, heads and cells.
#include <QApplication>
#include <QDrag>
#include <QDragEnterEvent>
#include <QKeyEvent>
#include <QMimeData>
#include <QMouseEvent>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/rounds/day_board.h"
#include "ui/widgets/theme.h"

namespace outyard::rounds {
namespace {

using sheet::Ink;

constexpr int kPad = 6;
const QString kMime = QStringLiteral("application/x-outyard-stop");

QFont bolder(QFont font) {
  font.setBold(true);
  return font;
}
QFont smaller(QFont font) {
  font.setPointSizeF(font.pointSizeF() * 0.9);
  return font;
}

/// The page keys go to the other week.
int weeksOf(const QKeyEvent& event) {
  if (event.key() == Qt::Key_PageDown) return 1;
  return event.key() == Qt::Key_PageUp ? -1 : 0;
}

/// A word in a box whose edge says as much as its colour: full for combs, plain for the lid,
/// dashed where nothing is known; too cold has the alarm's colour. Returns its width.
int paintWarmth(QPainter& p, QPoint rightTop, const QString& text, Warmth warm, const QFont& font,
                const QPalette& palette, int most) {
  if (text.isEmpty()) return 0;
  const QFontMetrics metrics(font);
  const QString shown = metrics.elidedText(text, Qt::ElideRight, most - 10);
  const int width = metrics.horizontalAdvance(shown) + 10, height = metrics.height() + 1;
  const QRectF box(rightTop.x() - width + 0.5, rightTop.y() + 0.5, width - 1, height - 1);
  const QColor good = widgets::inkColour(palette, Ink::Green);
  const QColor ground = palette.color(QPalette::Base);
  QColor pen = palette.color(QPalette::PlaceholderText);
  if (warm == Warmth::Combs || warm == Warmth::Lid) pen = good;
  if (warm == Warmth::Shut) pen = widgets::inkColour(palette, Ink::Alarm);
  p.save();
  p.setRenderHint(QPainter::Antialiasing);
  p.setPen(QPen(pen, 1.2, warm == Warmth::Unknown ? Qt::DashLine : Qt::SolidLine));
  QColor tint = good;
  tint.setAlpha(widgets::isDark(palette) ? 90 : 60);
  p.setBrush(warm == Warmth::Combs ? QBrush(tint) : QBrush(ground));
  p.drawRoundedRect(box, 4, 4);
  p.setFont(font);
  p.setPen(warm == Warmth::Shut ? pen : palette.color(QPalette::Text));
  p.drawText(box, Qt::AlignCenter, shown);
  p.restore();
  return width;
}

}  // namespace

// --- StopCard -----------------------------------------------------------------------------------

StopCard::StopCard(StopKey key, Text text, QWidget* parent)
    : QAbstractButton(parent), m_key(std::move(key)), m_text(std::move(text)) {
  setObjectName(
      QStringLiteral("stop_%1_%2")
          .arg(QString::fromStdString(m_key.yard.str()), QString::fromStdString(m_key.date.iso())));
  setCheckable(true);
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::OpenHandCursor);
  setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
}

QSize StopCard::sizeHint() const {
  return {150, heightWhen(m_dense)};
}

int StopCard::heightWhen(bool dense) const {
  const int line = fontMetrics().height(), small = QFontMetrics(smaller(font())).height();
  return dense ? line + small + 2 * kPad + 2 : line + 2 * small + 2 * kPad + 4;
}

void StopCard::setDense(bool dense) {
  if (m_dense == dense) return;
  m_dense = dense;
  updateGeometry();
  update();
}

QSize StopCard::minimumSizeHint() const {
  return {60, sizeHint().height()};
}

void StopCard::paintEvent(QPaintEvent*) {
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  const QPalette& colours = palette();
  const bool chosen = isChecked();
  const QColor edge = chosen || hasFocus() ? colours.color(QPalette::Highlight)
                                           : widgets::inkColour(colours, Ink::Line);
  const QRectF box = QRectF(rect()).adjusted(1, 1, -1, -1);
  p.setPen(QPen(edge, chosen ? 2 : 1.2, m_text.proposed ? Qt::DashLine : Qt::SolidLine));
  p.setBrush(m_text.proposed ? QBrush(colours.color(QPalette::Base))
                             : QBrush(colours.color(QPalette::Button)));
  p.drawRoundedRect(box, 5, 5);
  if (chosen) {
    QColor tint = colours.color(QPalette::Highlight);
    tint.setAlpha(widgets::isDark(colours) ? 64 : 38);
    p.setPen(Qt::NoPen);
    p.setBrush(tint);
    p.drawRoundedRect(box, 5, 5);
  }
  const QFont bold = bolder(font()), small = smaller(font());
  const QFontMetrics boldSize(bold), smallSize(small);
  const int left = kPad + 3, right = width() - kPad - 2;
  int y = kPad;
  p.setFont(small);
  const int numberWidth =
      m_text.number.isEmpty() ? 0 : smallSize.horizontalAdvance(m_text.number) + 5;
  p.setPen(colours.color(QPalette::PlaceholderText));
  p.drawText(QRect(left, y, numberWidth, boldSize.height()), Qt::AlignLeft | Qt::AlignVCenter,
             m_text.number);
  p.setFont(bold);
  p.setPen(colours.color(QPalette::Text));
  const int room = right - left - numberWidth;
  p.drawText(QRect(left + numberWidth, y, room, boldSize.height()),
             Qt::AlignLeft | Qt::AlignVCenter,
             boldSize.elidedText(m_text.name, Qt::ElideRight, room));
  y += boldSize.height() + 2;
  p.setFont(small);
  if (!m_dense) {
    const bool whole = smallSize.horizontalAdvance(m_text.work) <= right - left;
    p.drawText(
        QRect(left, y, right - left, smallSize.height()), Qt::AlignLeft | Qt::AlignVCenter,
        smallSize.elidedText(whole ? m_text.work : m_text.workShort, Qt::ElideRight, right - left));
    y += smallSize.height() + 2;
  }
  // The warmth takes what its word needs, what stands beside it what is left.
  const int pill = paintWarmth(p, QPoint(right, y - 1), m_text.warmth, m_text.warm, small, colours,
                               (right - left) * 3 / 5);
  p.setFont(small);
  p.setPen(colours.color(m_dense ? QPalette::Text : QPalette::PlaceholderText));
  const int sideRoom = right - left - pill - 4;
  const QString& wide = m_dense ? m_text.work : m_text.drive;
  const bool whole = smallSize.horizontalAdvance(wide) <= sideRoom;
  const QString& side = whole ? wide : m_dense ? m_text.workShort : m_text.driveShort;
  p.drawText(QRect(left, y, sideRoom, smallSize.height()), Qt::AlignLeft | Qt::AlignVCenter,
             smallSize.elidedText(side, Qt::ElideRight, sideRoom));
  if (hasFocus()) {
    p.setPen(QPen(colours.color(QPalette::Highlight), 1, Qt::DotLine));
    p.setBrush(Qt::NoBrush);
    p.drawRoundedRect(box.adjusted(2, 2, -2, -2), 4, 4);
  }
}

void StopCard::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) m_pressed = event->position().toPoint();
  QAbstractButton::mousePressEvent(event);
}

void StopCard::mouseMoveEvent(QMouseEvent* event) {
  if (!m_pressed || !event->buttons().testFlag(Qt::LeftButton)) return;
  const auto way = (event->position().toPoint() - *m_pressed).manhattanLength();
  if (way < QApplication::startDragDistance()) return;
  auto* drag = new QDrag(this);
  auto* moved = new QMimeData;
  moved->setData(kMime, QByteArray::fromStdString(m_key.date.iso() + '\n' + m_key.yard.str()));
  drag->setMimeData(moved);
  drag->setPixmap(grab());
  drag->setHotSpot(*m_pressed);
  m_pressed.reset();
  setDown(false);
  drag->exec(Qt::MoveAction);
}

void StopCard::keyPressEvent(QKeyEvent* event) {
  const bool alt = event->modifiers().testFlag(Qt::AltModifier);
  const int days = event->key() == Qt::Key_Left ? -1 : event->key() == Qt::Key_Right ? 1 : 0;
  const int stops = event->key() == Qt::Key_Up ? -1 : event->key() == Qt::Key_Down ? 1 : 0;
  const int weeks = weeksOf(*event);
  if (days != 0 && alt) {
    Q_EMIT moveAsked(days);
  } else if (weeks != 0 && !alt) {
    Q_EMIT stepAsked(7 * weeks, 0);
  } else if ((days != 0 || stops != 0) && !alt) {
    Q_EMIT stepAsked(days, stops);
  } else {
    QAbstractButton::keyPressEvent(event);
  }
}

void StopCard::focusInEvent(QFocusEvent* event) {
  QAbstractButton::focusInEvent(event);
  const auto reason = event->reason();
  if (reason == Qt::TabFocusReason || reason == Qt::BacktabFocusReason) Q_EMIT clicked();
}

// --- DayHead ------------------------------------------------------------------------------------

DayHead::DayHead(QWidget* parent) : QAbstractButton(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
}

void DayHead::setText(Text text) {
  m_text = std::move(text);
  update();
}

QSize DayHead::sizeHint() const {
  return {120, fontMetrics().height() + QFontMetrics(smaller(font())).height() + 13};
}

void DayHead::paintEvent(QPaintEvent*) {
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  const QPalette& colours = palette();
  const QFont bold = bolder(font()), small = smaller(font());
  const QFontMetrics boldSize(bold), smallSize(small);
  const int right = width() - 4, left = 4;
  // The date goes before the warmth, which the tool tip has too.
  const int wants =
      boldSize.horizontalAdvance(m_text.day) + 8 + smallSize.horizontalAdvance(m_text.warmth) + 10;
  const int pill = wants > right - left ? 0
                                        : paintWarmth(p, QPoint(right, 2), m_text.warmth,
                                                      m_text.warm, small, colours, right - left);
  p.setFont(bold);
  p.setPen(m_text.today ? colours.color(QPalette::Highlight) : colours.color(QPalette::Text));
  const int room = right - left - pill - 4;
  p.drawText(QRect(left, 1, room, boldSize.height()), Qt::AlignLeft | Qt::AlignVCenter,
             boldSize.elidedText(m_text.day, Qt::ElideRight, room));
  int y = boldSize.height() + 4;
  const bool over = m_text.share > 1;
  p.setFont(over ? bolder(small) : small);
  p.setPen(over ? widgets::inkColour(colours, Ink::Alarm)
                : colours.color(QPalette::PlaceholderText));
  const QFontMetrics sumSize(p.font());
  const bool whole = sumSize.horizontalAdvance(m_text.sum) <= right - left;
  p.drawText(
      QRect(left, y, right - left, smallSize.height()), Qt::AlignLeft | Qt::AlignVCenter,
      sumSize.elidedText(whole ? m_text.sum : m_text.sumShort, Qt::ElideRight, right - left));
  y += smallSize.height() + 3;
  if (m_text.share > 0) {
    const QRectF bar(left, y, right - left, 4);
    p.setPen(Qt::NoPen);
    p.setBrush(widgets::inkColour(colours, Ink::FaintLine));
    p.drawRoundedRect(bar, 2, 2);
    QRectF full = bar;
    full.setWidth(bar.width() * std::min(1.0, m_text.share));
    p.setBrush(over ? widgets::inkColour(colours, Ink::Alarm)
                    : widgets::inkColour(colours, Ink::Accent));
    p.drawRoundedRect(full, 2, 2);
  }
  if (hasFocus()) {
    p.setPen(QPen(colours.color(QPalette::Highlight), 1, Qt::DotLine));
    p.setBrush(Qt::NoBrush);
    p.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
  }
}

void DayHead::keyPressEvent(QKeyEvent* event) {
  const int days = event->key() == Qt::Key_Left ? -1 : event->key() == Qt::Key_Right ? 1 : 0;
  const int stops = event->key() == Qt::Key_Up ? -1 : event->key() == Qt::Key_Down ? 1 : 0;
  const int weeks = weeksOf(*event);
  if (weeks != 0 && event->modifiers() == Qt::NoModifier) {
    Q_EMIT stepAsked(7 * weeks, 0);
  } else if ((days != 0 || stops != 0) && event->modifiers() == Qt::NoModifier) {
    Q_EMIT stepAsked(days, stops);
  } else {
    QAbstractButton::keyPressEvent(event);
  }
}

void DayHead::focusInEvent(QFocusEvent* event) {
  QAbstractButton::focusInEvent(event);
  update();
}

// --- DayCell ------------------------------------------------------------------------------------

DayCell::DayCell(base::Date date, QWidget* parent) : QFrame(parent), m_date(date) {
  setObjectName(QStringLiteral("day_") + QString::fromStdString(date.iso()));
  setAcceptDrops(true);
  setSizePolicy(QSizePolicy::Ignored, QSizePolicy::MinimumExpanding);
  m_layout = new QVBoxLayout(this);
  m_layout->setContentsMargins(4, 4, 4, 4);
  m_layout->setSpacing(4);
  m_head = new DayHead;
  m_head->setObjectName(QStringLiteral("head_") + QString::fromStdString(date.iso()));
  m_layout->addWidget(m_head);
  m_layout->addStretch();
  connect(m_head, &DayHead::clicked, this, &DayCell::chosen);
}

void DayCell::addCard(StopCard* card) {
  m_layout->insertWidget(m_layout->count() - 1, card);
  m_cards.push_back(card);
}

void DayCell::setDense(bool dense) {
  for (auto* card : m_cards) card->setDense(dense);
}

int DayCell::heightWhen(bool dense) const {
  const QMargins margins = m_layout->contentsMargins();
  int out = margins.top() + margins.bottom() + m_head->sizeHint().height() + m_layout->spacing();
  for (const auto* card : m_cards) out += card->heightWhen(dense) + m_layout->spacing();
  return out;
}

void DayCell::setChosen(bool chosen) {
  m_chosen = chosen;
  update();
}

void DayCell::paintEvent(QPaintEvent*) {
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  const QPalette& colours = palette();
  const bool strong = m_chosen || m_target;
  p.setPen(QPen(
      strong ? colours.color(QPalette::Highlight) : widgets::inkColour(colours, Ink::FaintLine),
      strong ? 2 : 1, m_target ? Qt::DashLine : Qt::SolidLine));
  p.setBrush(colours.color(m_chosen ? QPalette::AlternateBase : QPalette::Base));
  p.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 6, 6);
}

void DayCell::mousePressEvent(QMouseEvent* event) {
  QFrame::mousePressEvent(event);
  Q_EMIT chosen();
}

void DayCell::dragEnterEvent(QDragEnterEvent* event) {
  if (!event->mimeData()->hasFormat(kMime)) return;
  event->acceptProposedAction();
  m_target = true;
  update();
  const auto text = event->mimeData()->data(kMime);
  Q_EMIT hovered(base::YardId{text.mid(text.indexOf('\n') + 1).toStdString()});
}

void DayCell::dragMoveEvent(QDragMoveEvent* event) {
  if (!event->mimeData()->hasFormat(kMime)) return;
  event->acceptProposedAction();
  Q_EMIT hoveredAt(mapToGlobal(event->position().toPoint()));
}

void DayCell::dragLeaveEvent(QDragLeaveEvent*) {
  m_target = false;
  update();
  Q_EMIT hovered(std::nullopt);
}

void DayCell::dropEvent(QDropEvent* event) {
  m_target = false;
  update();
  const auto text = event->mimeData()->data(kMime);
  const auto cut = text.indexOf('\n');
  const auto from = base::Date::parse(text.left(cut).toStdString());
  Q_EMIT hovered(std::nullopt);
  if (cut < 0 || !from) return;
  event->acceptProposedAction();
  Q_EMIT dropped({*from, base::YardId{text.mid(cut + 1).toStdString()}});
}

}  // namespace outyard::rounds
