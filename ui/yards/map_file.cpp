// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/map_file.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QFontMetricsF>
#include <QImage>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <QSvgGenerator>

#include "core/sheet/map_drawing.h"
#include "ui/adapt/words.h"
#include "ui/print/font_measurer.h"
#include "ui/print/painter.h"
#include "ui/widgets/forecast_desk.h"

namespace outyard::yards {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr double kMarginMm = 12, kHeadMm = 10, kTitleMm = 5;
/// A sheet of A4 across, for files that know no paper.
constexpr double kWideMm = 297, kTallMm = 210;
constexpr double kPngDpi = 200, kSvgDpi = 96;

struct Files {
  Q_DECLARE_TR_FUNCTIONS(YardsPlace)
};

/// Title and map on a page of that size; the painter counts in millimetres.
void paintPage(QPainter& painter, const widgets::SeasonHub& hub, const base::YardId& yard,
               double wideMm, double tallMm) {
  const double width = wideMm - 2 * kMarginMm;
  paintText(painter, {kMarginMm, kMarginMm, width, 7}, mapTitle(hub, yard), kTitleMm, true);
  painter.save();
  painter.translate(kMarginMm, kMarginMm + kHeadMm);
  paintMap(painter, hub, yard, width, tallMm - 2 * kMarginMm - kHeadMm);
  painter.restore();
}

QByteArray pdfOf(const widgets::SeasonHub& hub, const base::YardId& yard) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter pdf(&buffer);
  const bool letter = hub.settings().get(adapt::desk::kLetterPaper);
  pdf.setPageSize(QPageSize(letter ? QPageSize::Letter : QPageSize::A4));
  pdf.setPageOrientation(QPageLayout::Landscape);
  pdf.setPageMargins(QMarginsF());
  pdf.setTitle(mapTitle(hub, yard));
  printMapTo(hub, yard, pdf);
  return bytes;
}

QByteArray svgOf(const widgets::SeasonHub& hub, const base::YardId& yard) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  const double perMm = kSvgDpi / kMmPerInch;
  const QSize size = (QSizeF(kWideMm, kTallMm) * perMm).toSize();
  QSvgGenerator svg;
  svg.setOutputDevice(&buffer);
  svg.setResolution(static_cast<int>(kSvgDpi));
  svg.setSize(size);
  svg.setViewBox(QRect(QPoint(), size));
  svg.setTitle(mapTitle(hub, yard));
  QPainter painter(&svg);
  painter.fillRect(QRect(QPoint(), size), Qt::white);
  painter.scale(perMm, perMm);
  paintPage(painter, hub, yard, kWideMm, kTallMm);
  painter.end();
  return bytes;
}

QByteArray pngOf(const widgets::SeasonHub& hub, const base::YardId& yard) {
  const double perMm = kPngDpi / kMmPerInch;
  QImage image((QSizeF(kWideMm, kTallMm) * perMm).toSize(), QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  painter.scale(perMm, perMm);
  paintPage(painter, hub, yard, kWideMm, kTallMm);
  painter.end();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, "PNG");
  return bytes;
}

}  // namespace

void paintText(QPainter& painter, const QRectF& rectMm, const QString& text, double heightMm,
               bool bold) {
  // Set large and scaled down: fonts of a few pixels are rounded by the font engine.
  painter.save();
  painter.translate(rectMm.topLeft());
  const double scale = heightMm / print::kFontPixels;
  painter.scale(scale, scale);
  const QFont font = print::sheetFont(bold);
  painter.setFont(font);
  painter.setPen(Qt::black);
  const QRectF room(0, 0, rectMm.width() / scale, rectMm.height() / scale);
  painter.drawText(room, Qt::AlignLeft | Qt::AlignVCenter,
                   QFontMetricsF(font).elidedText(text, Qt::ElideRight, room.width()));
  painter.restore();
}

QString mapTitle(const widgets::SeasonHub& hub, const base::YardId& yard) {
  const auto* row = hub.season().yard(yard);
  const std::string name = row && !row->name.empty() ? row->name : yard.str();
  return Files::tr("%1, %2").arg(QString::fromStdString(name), adapt::dateText(hub.shownDate()));
}

void paintMap(QPainter& painter, const widgets::SeasonHub& hub, const base::YardId& yard,
              double widthMm, double heightMm) {
  const print::FontMeasurer measurer;
  sheet::MapInput input;
  input.season = &hub.season();
  input.yard = yard;
  input.day = hub.shownDate();
  input.hives = &hub.hives(yard);
  input.judgements = &hub.judgements(yard);
  // Short labels leave room for the marks.
  for (const auto& hive : *input.hives) input.labels[hive.hive] = hive.hive.str();
  input.widthMm = widthMm;
  input.heightMm = heightMm;
  input.word = adapt::wordsUtf8;
  input.text = &measurer;
  const auto expected = hub.forecasts().expectedIn(yard, hub.shownDate());
  input.expected = &expected;
  const auto drawing = sheet::mapDrawing(input);
  const auto ground = drawing.shapes.begin() + static_cast<std::ptrdiff_t>(drawing.groundShapes);
  print::paintShapes(painter, {drawing.shapes.begin(), ground}, print::Palette::paper());
  const QDir folder(QFileInfo(hub.path()).dir().filePath(QStringLiteral("pictures")));
  painter.save();
  painter.setClipRect(QRectF(0, 0, widthMm, heightMm), Qt::IntersectClip);
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  constexpr double kPercent = 100;
  painter.setOpacity(hub.settings().get(adapt::desk::kGroundPicturePercent) / kPercent);
  for (const auto& picture : drawing.pictures) {
    // A file that is gone leaves the plain ground, as on the screen.
    const QImage image(folder.filePath(QString::fromStdString(picture.file)));
    if (image.isNull()) continue;
    painter.drawImage(QRectF(picture.corner.x, picture.corner.y, picture.widthMm, picture.heightMm),
                      image);
  }
  painter.restore();
  print::paintShapes(painter, {ground, drawing.shapes.end()}, print::Palette::paper());
}

void printMapTo(const widgets::SeasonHub& hub, const base::YardId& yard,
                QPagedPaintDevice& device) {
  QPainter painter(&device);
  const double perMm = device.logicalDpiX() / kMmPerInch;
  painter.scale(perMm, perMm);
  paintPage(painter, hub, yard, device.width() / perMm, device.height() / perMm);
}

QString writeMap(const widgets::SeasonHub& hub, const base::YardId& yard, const QString& file) {
  const QString ending = QFileInfo(file).suffix().toLower();
  QByteArray bytes;
  if (ending == QStringLiteral("pdf")) {
    bytes = pdfOf(hub, yard);
  } else if (ending == QStringLiteral("svg")) {
    bytes = svgOf(hub, yard);
  } else if (ending == QStringLiteral("png")) {
    bytes = pngOf(hub, yard);
  } else {
    return Files::tr("%1: give the name an ending that says what to write: .pdf, .svg or .png.")
        .arg(file);
  }
  QSaveFile out(file);
  if (out.open(QIODevice::WriteOnly) && out.write(bytes) == bytes.size() && out.commit()) return {};
  return Files::tr("%1 could not be written: %2. Choose another folder.")
      .arg(file, out.errorString());
}

}  // namespace outyard::yards
