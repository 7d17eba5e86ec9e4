// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/comb_face_edit.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

#include "ui/print/painter.h"
#include "ui/widgets/theme.h"

namespace outyard::hive {
namespace {

constexpr int kWide = 4, kHigh = 2;
constexpr double kPxPerMm = 4;
constexpr int kSwatch = 18, kGap = 6, kBetween = 14;

void paintSwatch(QPainter& painter, const QRectF& area, sheet::Ink ink, sheet::Hatch hatch,
                 bool dashed, const QPalette& palette) {
  painter.save();
  painter.translate(area.topLeft());
  painter.scale(kPxPerMm, kPxPerMm);
  sheet::RectShape shape{{0, 0}, area.width() / kPxPerMm, area.height() / kPxPerMm};
  shape.fill = ink;
  shape.hatch = hatch;
  shape.stroke = {sheet::Ink::Line, 0.2, dashed};
  print::paintShapes(painter, {shape}, widgets::drawingPalette(palette));
  painter.restore();
}

int contentOfKey(const QString& text) {
  if (text.isEmpty()) return -1;
  const QChar letter = text.at(0).toUpper();
  for (std::size_t i = 0; i < combContents().size(); ++i) {
    if (QChar(combContents()[i].key) == letter) return static_cast<int>(i);
  }
  return -1;
}

}  // namespace

CombFaceEdit::CombFaceEdit(CombModel& model, QWidget* parent) : QWidget(parent), m_model(model) {
  setObjectName(QStringLiteral("combFace"));
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("Face of the comb in eighths"));
  setToolTip(
      tr("Arrow keys move. A letter fills the eighth: H honey, N nectar, P pollen, C empty comb, "
         "U undrawn, S sealed brood, O open brood, E eggs, D drone brood. Shift and a letter fill "
         "the whole side, = takes the side before, Delete clears an eighth."));
  connect(&m_model, &CombModel::edited, this, [this] {
    describe();
    update();
  });
  connect(&m_model, &QAbstractItemModel::modelReset, this, [this] { setRow(-1); });
}

void CombFaceEdit::setRow(int row) {
  m_row = row;
  m_current = 0;
  describe();
  update();
}

void CombFaceEdit::describe() {
  if (m_row < 0) {
    setAccessibleDescription(tr("No side chosen"));
    return;
  }
  const auto& content = m_model.eighths(m_row).at(static_cast<std::size_t>(m_current));
  const QString what = content ? contentName(combContents()[static_cast<std::size_t>(*content)])
                               : tr("nothing recorded");
  setAccessibleDescription(
      tr("Box %1, comb %2, side %3, eighth %4: %5")
          .arg(m_model.side(m_row).box)
          .arg(m_model.side(m_row).slot)
          .arg(m_model.side(m_row).side == apiary::FrameSide::A ? tr("a") : tr("b"))
          .arg(m_current + 1)
          .arg(what));
}

QRectF CombFaceEdit::cell(int eighth) const {
  const double bar = 10;
  const double w = (width() - 4.0) / kWide, h = (height() - bar - 6.0) / kHigh;
  return {2 + w * (eighth % kWide), bar + 4 + h * (eighth / kWide), w, h};
}

void CombFaceEdit::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  paintSwatch(painter, {2, 2, width() - 4.0, 8}, sheet::Ink::WoodEdge, sheet::Hatch::None, false,
              palette());
  for (int i = 0; i < kEighths; ++i) {
    std::optional<int> content;
    if (m_row >= 0) content = m_model.eighths(m_row).at(static_cast<std::size_t>(i));
    const QRectF area = cell(i).adjusted(1, 1, -1, -1);
    if (!content) {
      paintSwatch(painter, area, sheet::Ink::Paper, sheet::Hatch::None, true, palette());
      continue;
    }
    const Content& c = combContents()[static_cast<std::size_t>(*content)];
    paintSwatch(painter, area, c.ink, c.hatch, c.ink == sheet::Ink::Undrawn, palette());
    // The letter stands on a plate of its own, legible over every hatch.
    const QRectF plate(area.left() + 4, area.top() + 4, 18, 18);
    painter.setPen(Qt::NoPen);
    painter.setBrush(palette().color(QPalette::Base));
    painter.drawRoundedRect(plate, 3, 3);
    painter.setPen(palette().color(QPalette::Text));
    painter.drawText(plate, Qt::AlignCenter, QChar(c.key));
  }
  if (hasFocus() && m_row >= 0) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(palette().color(QPalette::Highlight), 3));
    painter.drawRect(cell(m_current).adjusted(2, 2, -2, -2));
  }
}

void CombFaceEdit::keyPressEvent(QKeyEvent* event) {
  if (m_row < 0) return QWidget::keyPressEvent(event);
  const auto go = [this](int to) {
    m_current = std::clamp(to, 0, kEighths - 1);
    describe();
    update();
  };
  switch (event->key()) {
    case Qt::Key_Left:
      return go(m_current - 1);
    case Qt::Key_Right:
      return go(m_current + 1);
    case Qt::Key_Up:
      return go(m_current >= kWide ? m_current - kWide : m_current);
    case Qt::Key_Down:
      return go(m_current < kWide ? m_current + kWide : m_current);
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
      m_model.setEighth(m_row, m_current, std::nullopt);
      return;
    case Qt::Key_Equal:
      if (m_model.copyFromBefore(m_row)) Q_EMIT sideFilled();
      return;
    default:
      break;
  }
  const bool plain =
      !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
  const int content = plain ? contentOfKey(event->text()) : -1;
  if (content < 0) return QWidget::keyPressEvent(event);
  m_last = content;
  if (event->modifiers() & Qt::ShiftModifier) {
    m_model.fillSide(m_row, content);
    Q_EMIT sideFilled();
    return;
  }
  m_model.setEighth(m_row, m_current, content);
  if (m_current == kEighths - 1) {
    Q_EMIT sideFilled();
  } else {
    go(m_current + 1);
  }
}

void CombFaceEdit::mousePressEvent(QMouseEvent* event) {
  for (int i = 0; m_row >= 0 && i < kEighths; ++i) {
    if (!cell(i).contains(event->position())) continue;
    m_current = i;
    m_model.setEighth(m_row, i, m_last);
  }
  setFocus(Qt::MouseFocusReason);
}

void CombFaceEdit::focusInEvent(QFocusEvent* event) {
  update();
  QWidget::focusInEvent(event);
}

void CombFaceEdit::focusOutEvent(QFocusEvent* event) {
  update();
  QWidget::focusOutEvent(event);
}

ContentLegend::ContentLegend(bool withKeys, QWidget* parent)
    : QWidget(parent), m_withKeys(withKeys) {
  QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  setAccessibleName(tr("What combs hold"));
  QStringList names;
  for (const Content& c : combContents()) names << contentName(c);
  setAccessibleDescription(names.join(QStringLiteral(", ")));
}

int ContentLegend::laidOut(int width, QPainter* painter) const {
  const QFontMetrics metrics(font());
  const int line = std::max(kSwatch, metrics.height()) + 4;
  int x = 0, y = 0;
  for (const Content& c : combContents()) {
    const QString text = m_withKeys ? QStringLiteral("%1  %2").arg(QChar(c.key)).arg(contentName(c))
                                    : contentName(c);
    const int needed = kSwatch + kGap + metrics.horizontalAdvance(text);
    if (x > 0 && x + needed > width) {
      x = 0;
      y += line;
    }
    if (painter) {
      paintSwatch(*painter, QRectF(x + 0.5, y + 2.5, kSwatch - 1, kSwatch - 1), c.ink, c.hatch,
                  c.ink == sheet::Ink::Undrawn, palette());
      // What has no hatch has its letter in the stack too.
      const bool sealed = c.ink == sheet::Ink::SealedBrood;
      if (!m_withKeys && (sealed || c.ink == sheet::Ink::Nectar)) {
        painter->setPen(
            widgets::inkColour(palette(), sealed ? sheet::Ink::Paper : sheet::Ink::Text));
        painter->drawText(QRectF(x, y + 2, kSwatch, kSwatch), Qt::AlignCenter, QChar(c.key));
      }
      painter->setPen(palette().color(QPalette::WindowText));
      painter->drawText(x + kSwatch + kGap, y + 2 + (kSwatch + metrics.ascent()) / 2 - 1, text);
    }
    x += needed + kBetween;
  }
  return y + line;
}

QSize ContentLegend::sizeHint() const {
  return {480, laidOut(480, nullptr)};
}

int ContentLegend::heightForWidth(int width) const {
  return laidOut(width, nullptr);
}

void ContentLegend::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  laidOut(width(), &painter);
}

}  // namespace outyard::hive
