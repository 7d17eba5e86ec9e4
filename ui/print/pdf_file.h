// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <QString>
#include <optional>

#include "core/base/result.h"
#include "core/sheet/yard_sheet.h"
#include "ui/print/paper_painter.h"

namespace outyard::print {

/// A PDF that is being written page by page; nothing is left of it until it is committed. Belongs
/// to the thread it is made in, which need not be the window's.
class PdfFile {
 public:
  explicit PdfFile(const QString& path) : m_file(path) {}

  base::Result<void> add(const sheet::SheetPage& page, const std::string& title);
  base::Result<void> commit();

 private:
  [[nodiscard]] base::Failure failure() const;

  QSaveFile m_file;
  std::optional<QPdfWriter> m_writer;
  QPainter m_painter;
  std::optional<PaperPainter> m_paper;
};

}  // namespace outyard::print
