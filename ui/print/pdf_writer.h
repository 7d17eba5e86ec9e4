// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <functional>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/sheet/yard_sheet.h"

namespace outyard::print {

/// Writes all pages as a PDF: vector, fonts embedded, in black and greys. Through a temporary file,
/// so that a full disk leaves an older file as it was, and so does stopping. Progress is told page
/// by page on the calling thread. Needs a QGuiApplication (QPdfWriter aborts without one); throws
/// std::logic_error where there is none.
base::Result<void> writePdf(const sheet::SheetDocument& document, const QString& path,
                            base::Progress& progress);
base::Result<void> writePdf(const sheet::SheetDocument& document, const QString& path);

/// Makes the sheet with this place in the print.
using MakeSheet = std::function<base::Result<sheet::YardSheet>(std::size_t index)>;

struct SheetsOnPaper {
  std::vector<sheet::YardSheet> sheets;  ///< without their pages: those went to the file
  std::size_t pages = 0;
};

/// Several sheets as one PDF, in their order: the calling thread makes one sheet after the other
/// and tells the progress, a second thread writes the pages of those that are made. The file is the
/// same as writePdf makes of all sheets together. The first sheet that fails, or stopping, ends the
/// work and leaves an older file as it was.
base::Result<SheetsOnPaper> writeSheets(std::size_t count, const MakeSheet& make,
                                        const QString& path, base::Progress& progress);

}  // namespace outyard::print
