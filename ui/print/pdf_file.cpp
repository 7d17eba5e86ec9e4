// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/pdf_file.h"

#include <QMarginsF>
#include <QPageLayout>
#include <QPageSize>

namespace outyard::print {

namespace {

QPageLayout layoutOf(const sheet::SheetPage& page) {
  const QPageSize size(QSizeF(page.widthMm, page.heightMm), QPageSize::Millimeter, QString(),
                       QPageSize::FuzzyMatch);
  return {size, QPageLayout::Portrait, QMarginsF(0, 0, 0, 0), QPageLayout::Millimeter};
}

}  // namespace

base::Failure PdfFile::failure() const {
  return base::fail(base::message("sheet.pdf_not_written", m_file.fileName().toStdString(),
                                  m_file.errorString().toStdString()));
}

base::Result<void> PdfFile::add(const sheet::SheetPage& page, const std::string& title) {
  if (!m_writer) {
    if (!m_file.open(QIODevice::WriteOnly)) return failure();
    m_writer.emplace(&m_file);
    m_writer->setResolution(PaperPainter::kResolution);
    m_writer->setTitle(QString::fromStdString(title));
    m_writer->setCreator(QStringLiteral("Outyard " OUTYARD_VERSION));
    m_writer->setPageLayout(layoutOf(page));
    if (!m_painter.begin(&*m_writer)) return failure();
    m_paper.emplace(m_painter, Palette::paper());
  } else {
    m_writer->setPageLayout(layoutOf(page));
    m_writer->newPage();
  }
  constexpr double kUnits = PaperPainter::kUnitsPerMm;
  m_paper->page(QRectF(0, 0, page.widthMm * kUnits, page.heightMm * kUnits), page);
  return {};
}

base::Result<void> PdfFile::commit() {
  m_paper.reset();
  m_painter.end();
  m_writer.reset();
  if (!m_file.commit()) return failure();
  return {};
}

}  // namespace outyard::print
