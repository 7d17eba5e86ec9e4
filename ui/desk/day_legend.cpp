// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/day_legend.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <utility>

#include "ui/desk/day_strip.h"
#include "ui/widgets/theme.h"

namespace outyard::desk {

DayLegend::DayLegend(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("dayLegend"));
  setAccessibleName(tr("What the days mean"));
  auto* line = new QHBoxLayout(this);
  line->setContentsMargins(0, 0, 0, 0);
  line->setSpacing(4);
  for (const auto& [kind, text] :
       {std::pair{Warmth::Combs, tr("combs out")}, std::pair{Warmth::Lid, tr("lid only")},
        std::pair{Warmth::Shut, tr("leave shut")}}) {
    auto* mark = new QLabel;
    mark->setObjectName(QStringLiteral("mark%1").arg(static_cast<int>(kind)));
    mark->setToolTip(warmthWords(kind));
    auto* words = new QLabel(text);
    words->setToolTip(warmthWords(kind));
    line->addWidget(mark);
    line->addWidget(words);
    line->addSpacing(8);
  }
  draw();
}

void DayLegend::draw() {
  const int side = fontMetrics().height();
  for (const Warmth kind : {Warmth::Combs, Warmth::Lid, Warmth::Shut}) {
    auto* mark = findChild<QLabel*>(QStringLiteral("mark%1").arg(static_cast<int>(kind)));
    const double ratio = devicePixelRatioF();
    QPixmap pixmap(QSizeF(side * 1.4 * ratio, side * ratio).toSize());
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    paintDayMark(painter, QRectF(0, 0, side * 1.4, side), kind, widgets::drawingPalette(palette()));
    painter.end();
    mark->setPixmap(pixmap);
  }
}

void DayLegend::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) draw();
}

}  // namespace outyard::desk
