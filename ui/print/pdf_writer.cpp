// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/pdf_writer.h"

#include <QGuiApplication>
#include <QMarginsF>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <stdexcept>

#include "ui/print/painter.h"

namespace outyard::print {

namespace {

constexpr int kResolution = 1200;

QPageLayout layoutOf(const sheet::SheetPage& page) {
  const QPageSize size(QSizeF(page.widthMm, page.heightMm), QPageSize::Millimeter, QString(),
                       QPageSize::FuzzyMatch);
  return {size, QPageLayout::Portrait, QMarginsF(0, 0, 0, 0), QPageLayout::Millimeter};
}

}  // namespace

base::Result<void> writePdf(const sheet::SheetDocument& document, const QString& path) {
  if (!qobject_cast<QGuiApplication*>(QCoreApplication::instance())) {
    throw std::logic_error("a PDF needs a QGuiApplication");
  }
  const std::string name = path.toStdString();
  if (document.pages.empty()) return base::fail(base::message("sheet.pdf_no_pages", name));
  QSaveFile file(path);
  const auto failed = [&] {
    return base::fail(
        base::message("sheet.pdf_not_written", name, file.errorString().toStdString()));
  };
  if (!file.open(QIODevice::WriteOnly)) return failed();
  {
    QPdfWriter writer(&file);
    writer.setResolution(kResolution);
    writer.setTitle(QString::fromStdString(document.title));
    writer.setCreator(QStringLiteral("Outyard " OUTYARD_VERSION));
    writer.setPageLayout(layoutOf(document.pages.front()));
    QPainter painter;
    if (!painter.begin(&writer)) return failed();
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
      const sheet::SheetPage& page = document.pages[i];
      if (i > 0) {
        writer.setPageLayout(layoutOf(page));
        writer.newPage();
      }
      const double dots = kResolution / 25.4;
      paintPage(painter, QRectF(0, 0, page.widthMm * dots, page.heightMm * dots), page,
                Palette::paper());
    }
    painter.end();
  }
  if (!file.commit()) return failed();
  return {};
}

}  // namespace outyard::print
