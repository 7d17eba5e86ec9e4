// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper_text.h"

#include <QAbstractTextDocumentLayout>
#include <QPagedPaintDevice>
#include <QPalette>
#include <QTextDocument>

namespace outyard::print {

PaperText::PaperText(QPagedPaintDevice& device, int points)
    : m_device(device),
      m_page(device.pageLayout().paintRect(QPageLayout::Point).size()),
      m_points(points),
      m_painter(&device) {
  const double scale = m_painter.device()->logicalDpiX() / 72.0;
  m_painter.scale(scale, scale);
}

void PaperText::print(const QString& html, const std::function<void(QPainter&, int)>& more) {
  QTextDocument text;
  QFont font = text.defaultFont();
  font.setPixelSize(m_points);
  text.setDefaultFont(font);
  text.setDocumentMargin(0);
  text.setHtml(html);
  text.setPageSize(m_page);
  QAbstractTextDocumentLayout::PaintContext context;
  context.palette.setColor(QPalette::Text, Qt::black);
  for (int n = 0; n < text.pageCount(); ++n) {
    if (n > 0) m_device.newPage();
    m_painter.save();
    m_painter.translate(0, -n * m_page.height());
    context.clip = QRectF(0, n * m_page.height(), m_page.width(), m_page.height());
    m_painter.setClipRect(context.clip);
    text.documentLayout()->draw(&m_painter, context);
    m_painter.restore();
    if (more) more(m_painter, n);
  }
}

}  // namespace outyard::print
