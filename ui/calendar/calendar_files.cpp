// SPDX-License-Identifier: GPL-3.0-or-later
// The calendar on paper and in files: always whole, on one page.
#include <QBuffer>
#include <QPageLayout>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QSaveFile>
#include <QSvgGenerator>
#include <algorithm>

#include "ui/adapt/words.h"
#include "ui/calendar/board_painter.h"
#include "ui/calendar/calendar_place.h"
#include "ui/print/font_measurer.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/theme.h"

namespace outyard::calendar {

namespace {

constexpr int kPrintPixels = 13;  ///< letters of the board before it is scaled to the page

BoardMeasures measuresOf(const QStringList& names, int pixels) {
  QFont font = print::sheetFont(false);
  font.setPixelSize(pixels);
  return BoardMeasures::forFont(font, names);
}

/// Board, title above and legend below.
QSizeF wholeSize(const planning::SeasonCalendar& calendar, const BoardMeasures& m) {
  const QSizeF board = m.sizeOf(calendar);
  return {board.width(), board.height() + 3 * m.lane + legendHeight(board.width(), m)};
}

}  // namespace

void CalendarPlace::paintWhole(QPainter& painter, const QRectF& target, bool onPaper) const {
  const auto calendar = shown();
  if (!calendar || calendar->weeks.empty()) return;
  const auto& palette =
      onPaper ? print::Palette::paper() : widgets::drawingPalette(this->palette());
  const QStringList yards = names();
  const BoardMeasures m = measuresOf(yards, kPrintPixels);
  const QSizeF all = wholeSize(*calendar, m);
  const QSizeF board = m.sizeOf(*calendar);
  painter.save();
  painter.translate(target.topLeft());
  const double scale = std::min(target.width() / all.width(), target.height() / all.height());
  painter.scale(scale, scale);
  QFont head = m.font;
  head.setBold(true);
  head.setPixelSize(m.font.pixelSize() * 5 / 4);
  painter.setFont(head);
  painter.setPen(palette.colour(sheet::Ink::Text));
  const QRectF top(4, 0, board.width() - 8, 2 * m.lane);
  QString words = tr("Season calendar, %1 to %2")
                      .arg(adapt::dateText(calendar->weeks.front().monday),
                           adapt::dateText(calendar->weeks.back().monday.plusDays(6)));
  if (m_trial) words = tr("%1, with dates that are being tried").arg(words);
  painter.drawText(top, Qt::AlignLeft | Qt::AlignVCenter, words);
  painter.setFont(m.font);
  painter.drawText(top, Qt::AlignRight | Qt::AlignVCenter,
                   tr("As of %1").arg(adapt::dateText(calendar->today)));
  painter.translate(0, 2 * m.lane);
  BoardLook look;
  look.palette = &palette;
  look.names = yards;
  paintBoard(painter, *calendar, m, look);
  paintLegend(painter, QRectF(4, board.height() + m.lane / 2, board.width() - 8, all.height()), m,
              palette);
  painter.restore();
}

void CalendarPlace::printTo(QPagedPaintDevice& device) {
  // The weeks lie side by side: across is the way they are read.
  QPageLayout layout = device.pageLayout();
  layout.setOrientation(QPageLayout::Landscape);
  device.setPageLayout(layout);
  QPainter painter;
  if (!painter.begin(&device)) return;
  const QRectF page(QPointF(), device.pageLayout().paintRectPixels(device.logicalDpiX()).size());
  const QMarginsF margins = device.pageLayout().margins(QPageLayout::Millimeter);
  const double missing = std::max(0.0, 8 - std::min(margins.left(), margins.top()));
  const double edge = missing * device.logicalDpiX() / 25.4;
  if (shown()) {
    paintWhole(painter, page.adjusted(edge, edge, -edge, -edge), true);
  } else {
    const double pt = device.logicalDpiX() / 72.0;
    painter.scale(pt, pt);
    QFont font = print::sheetFont(false);
    font.setPixelSize(12);
    painter.setFont(font);
    painter.drawText(QRectF(40, 40, page.width() / pt - 80, 200), Qt::TextWordWrap,
                     tr("There is no season calendar yet: let it be worked out, then print."));
  }
}

QImage CalendarPlace::picture() {
  const auto calendar = shown();
  if (!calendar || calendar->weeks.empty()) return Place::picture();
  const QSizeF all = wholeSize(*calendar, measuresOf(names(), kPrintPixels));
  const double scale = 2400 / all.width();
  QImage image((all * scale).toSize() + QSize(40, 40), QImage::Format_RGB32);
  image.fill(print::Palette::paper().colour(sheet::Ink::Paper));
  QPainter painter(&image);
  paintWhole(painter, QRectF(image.rect()).adjusted(20, 20, -20, -20), true);
  return image;
}

bool CalendarPlace::writeSvg(const QString& path) {
  const auto calendar = shown();
  if (!calendar || calendar->weeks.empty()) return false;
  const QSize size =
      (wholeSize(*calendar, measuresOf(names(), kPrintPixels)) * 1.2).toSize() + QSize(20, 20);
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  {
    QSvgGenerator svg;
    svg.setOutputDevice(&buffer);
    svg.setSize(size);
    svg.setViewBox(QRect(QPoint(), size));
    svg.setTitle(tr("Season calendar"));
    QPainter painter(&svg);
    painter.fillRect(QRect(QPoint(), size), Qt::white);
    paintWhole(painter, QRectF(10, 10, size.width() - 20, size.height() - 20), true);
  }
  QSaveFile file(path);
  return file.open(QIODevice::WriteOnly) && file.write(buffer.data()) == buffer.size() &&
         file.commit();
}

void CalendarPlace::saveSvg() {
  QString path = m_hub.dialogs().saveFile(this, tr("Save calendar as SVG"), tr("Drawings (*.svg)"),
                                          tr("season-calendar.svg"));
  if (path.isEmpty()) return;
  if (!path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive)) path += QStringLiteral(".svg");
  if (!writeSvg(path)) {
    m_hub.dialogs().failure(
        this, tr("The calendar was not saved"),
        tr("%1 could not be written. Choose another folder or free some space.").arg(path));
  }
}

}  // namespace outyard::calendar
