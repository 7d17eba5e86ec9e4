// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/legend.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <vector>

#include "ui/widgets/hive_facts.h"
#include "ui/widgets/mark_painter.h"
#include "ui/yards/map_items.h"

namespace outyard::yards {
namespace {

struct Sample {
  sheet::MarkInput input;
  QString meaning;
};

std::vector<Sample> samples() {
  sheet::MarkInput seen;
  seen.seams = 6;
  sheet::MarkInput expected;
  expected.seams = 4;
  expected.expectedSeams = 8;
  sheet::MarkInput old = seen;
  old.seenThisYear = false;
  sheet::MarkInput stacked;
  stacked.stacked = true;
  stacked.seams = 8;
  stacked.upperSeams = 2;
  sheet::MarkInput empty;
  empty.empty = true;
  sheet::MarkInput dead;
  dead.dead = true;
  return {{seen, Legend::tr("filled = seams of bees as last seen; notch = entrance")},
          {expected, Legend::tr("outline = seams expected on the day; fainter = less sure")},
          {stacked, Legend::tr("two colonies, an excluder between")},
          {old, Legend::tr("not opened this year")},
          {empty, Legend::tr("empty")},
          {dead, Legend::tr("dead")}};
}

}  // namespace

Legend::Legend(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("mapLegend"));
  setAccessibleName(tr("Legend of marks and letters"));
  rebuild();
}

void Legend::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) rebuild();
}

void Legend::rebuild() {
  qDeleteAll(findChildren<QLabel*>(QString(), Qt::FindDirectChildrenOnly));
  delete layout();
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(6);
  grid->setVerticalSpacing(3);
  const double ratio = devicePixelRatioF();
  int row = 0;
  const auto add = [&](const QPixmap& sign, const QString& meaning) {
    auto* left = new QLabel;
    left->setPixmap(sign);
    left->setAlignment(Qt::AlignCenter);
    auto* right = new QLabel(meaning);
    right->setWordWrap(true);
    grid->addWidget(left, row, 0);
    grid->addWidget(right, row, 1);
    ++row;
  };
  for (const auto& [input, meaning] : samples()) {
    add(widgets::markPixmap(input, 22, palette(), ratio), meaning);
  }
  for (const auto& [letter, meaning] : widgets::letterMeanings()) {
    QPixmap pixmap(QSizeF(16 * ratio, 16 * ratio).toSize());
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    paintLetters(painter, {1, 8}, QString(letter), palette(), font());
    painter.end();
    add(pixmap, meaning);
  }
  grid->setColumnStretch(1, 1);
}

}  // namespace outyard::yards
