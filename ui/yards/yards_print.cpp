// SPDX-License-Identifier: GPL-3.0-or-later
// The place of yards on paper: the map and the table of its hives.
#include <QFontMetricsF>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QStackedWidget>

#include "core/sheet/map_drawing.h"
#include "ui/adapt/words.h"
#include "ui/print/font_measurer.h"
#include "ui/print/painter.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/hive_facts.h"
#include "ui/yards/hive_table.h"
#include "ui/yards/yard_map.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr double kMarginMm = 14, kRowMm = 6, kHeadMm = 12;
constexpr int kTextPx = 3;  // in millimetres of the page: the painter is scaled

/// Table columns that fit across a portrait page, with their widths in millimetres.
struct PrintColumn {
  HiveTableModel::Column column;
  double widthMm;
};
constexpr PrintColumn kColumns[] = {{HiveTableModel::Number, 16},    {HiveTableModel::Letters, 14},
                                    {HiveTableModel::Judgement, 39}, {HiveTableModel::Seams, 15},
                                    {HiveTableModel::Bees, 38},      {HiveTableModel::LastLook, 47},
                                    {HiveTableModel::Stand, 13}};

/// Text of a fixed height in millimetres. Set large and scaled down: fonts of a few pixels are
/// rounded by the font engine.
void drawText(QPainter& painter, const QRectF& rect, const QString& text, double heightMm,
              bool bold = false) {
  painter.save();
  painter.translate(rect.topLeft());
  const double scale = heightMm / print::kFontPixels;
  painter.scale(scale, scale);
  const QFont font = print::sheetFont(bold);
  painter.setFont(font);
  painter.setPen(Qt::black);
  const QRectF room(0, 0, rect.width() / scale, rect.height() / scale);
  painter.drawText(room, Qt::AlignLeft | Qt::AlignVCenter,
                   QFontMetricsF(font).elidedText(text, Qt::ElideRight, room.width()));
  painter.restore();
}

}  // namespace

QImage YardsPlace::picture() {
  return m_views->currentWidget()->grab().toImage();
}

void YardsPlace::printTo(QPagedPaintDevice& device) {
  const auto chosen = m_hub.selection().yard;
  const auto* yard = chosen ? m_hub.season().yard(*chosen) : nullptr;
  if (!yard) return;
  QPainter painter(&device);
  const double perMm = device.logicalDpiX() / kMmPerInch;
  painter.scale(perMm, perMm);
  const double width = device.width() / perMm - 2 * kMarginMm;
  const double bottom = device.height() / perMm - kMarginMm;
  const auto heading = [&] {
    const QString name = QString::fromStdString(yard->name.empty() ? yard->yard.str() : yard->name);
    drawText(painter, {kMarginMm, kMarginMm, width, 7},
             tr("%1, %2").arg(name, adapt::dateText(m_hub.shownDate())), 5, true);
  };
  heading();
  const print::FontMeasurer measurer;
  sheet::MapInput input;
  input.season = &m_hub.season();
  input.yard = yard->yard;
  input.day = m_hub.shownDate();
  input.hives = &m_hub.hives(yard->yard);
  input.judgements = &m_hub.judgements(yard->yard);
  // Numbers only: the letters stand in the table below, and short labels leave room for marks.
  for (const auto& hive : *input.hives) input.labels[hive.hive] = hive.hive.str();
  input.widthMm = width;
  input.heightMm = width * 0.62;
  input.word = adapt::wordsUtf8;
  input.text = &measurer;
  const auto expected = m_hub.forecasts().expectedIn(yard->yard, m_hub.shownDate());
  input.expected = &expected;
  painter.save();
  painter.translate(kMarginMm, kMarginMm + kHeadMm);
  print::paintShapes(painter, sheet::mapDrawing(input).shapes, print::Palette::paper());
  painter.restore();

  const HiveTableModel& model = m_table->hives();
  double y = kMarginMm + kHeadMm + input.heightMm + 6;
  const auto line = [&](const auto& textOf, bool bold) {
    double x = kMarginMm;
    for (const auto& [column, columnWidth] : kColumns) {
      drawText(painter, {x, y, columnWidth - 1.5, kRowMm}, textOf(column), kTextPx, bold);
      x += columnWidth;
    }
    y += kRowMm;
    painter.setPen(QPen(Qt::black, bold ? 0.35 : 0.1));
    painter.drawLine(QPointF(kMarginMm, y), QPointF(kMarginMm + width, y));
  };
  const auto head = [&] {
    line(
        [&](int column) {
          return model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
        },
        true);
  };
  head();
  for (int row = 0; row < model.rowCount(); ++row) {
    if (y + kRowMm > bottom) {
      device.newPage();
      heading();
      y = kMarginMm + kHeadMm;
      head();
    }
    line(
        [&](int column) {
          return model.data(model.index(row, column), Qt::DisplayRole).toString();
        },
        false);
  }
}

}  // namespace outyard::yards
