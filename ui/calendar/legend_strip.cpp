// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/calendar/legend_strip.h"

#include <QFontInfo>
#include <QPainter>
#include <cmath>

#include "ui/calendar/board_painter.h"
#include "ui/widgets/theme.h"

namespace outyard::calendar {

namespace {

BoardMeasures measuresFor(const QWidget& widget) {
  QFont font = widget.font();
  font.setPixelSize(std::max(9, QFontInfo(font).pixelSize() * 10 / 11));
  return BoardMeasures::forFont(font, {});
}

}  // namespace

LegendStrip::LegendStrip(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Legend of the calendar"));
  QStringList words;
  for (int i = 0; i < kLanes; ++i) {
    const Lane lane = static_cast<Lane>(i);
    words << tr("%1: %2").arg(laneLetter(lane), laneName(lane));
  }
  setAccessibleDescription(words.join(QStringLiteral("; ")));
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
}

int LegendStrip::heightForWidth(int width) const {
  return static_cast<int>(std::ceil(legendHeight(width, measuresFor(*this)))) + 4;
}

QSize LegendStrip::sizeHint() const {
  return {600, heightForWidth(600)};
}

void LegendStrip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  paintLegend(painter, QRectF(rect()).adjusted(4, 4, -4, 0), measuresFor(*this),
              widgets::drawingPalette(palette()));
}

}  // namespace outyard::calendar
