// SPDX-License-Identifier: GPL-3.0-or-later
// The place of yards on paper: the map and the table of its hives.
#include <QPagedPaintDevice>
#include <QPainter>
#include <QStackedWidget>

#include "ui/yards/hive_table.h"
#include "ui/yards/map_file.h"
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
    paintText(painter, {kMarginMm, kMarginMm, width, 7}, mapTitle(m_hub, yard->yard), 5, true);
  };
  heading();
  const double mapHeight = width * 0.62;
  painter.save();
  painter.translate(kMarginMm, kMarginMm + kHeadMm);
  paintMap(painter, m_hub, yard->yard, width, mapHeight);
  painter.restore();

  const HiveTableModel& model = m_table->hives();
  double y = kMarginMm + kHeadMm + mapHeight + 6;
  const auto line = [&](const auto& textOf, bool bold) {
    double x = kMarginMm;
    for (const auto& [column, columnWidth] : kColumns) {
      paintText(painter, {x, y, columnWidth - 1.5, kRowMm}, textOf(column), kTextPx, bold);
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
