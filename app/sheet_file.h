// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/session/session.h"
#include "core/sheet/yard_sheet.h"

namespace outyard::app {

struct SheetRequest {
  std::vector<base::YardId> yards;  ///< one sheet each, in this order
  base::Date date;
  sheet::Paper paper = sheet::Paper::A4;
  bool largeType = false;
};
struct SheetsWritten {
  std::vector<std::string> sheetNumbers;
  int pages = 0;
};

/// Plans the yards' boosts for the day, lays out their sheets, writes them as one PDF and keeps
/// numbers and lines in the season (so that they can be typed back in). A sheet is planned and laid
/// out here while another thread writes the one before. Needs a QGuiApplication.
base::Result<SheetsWritten> writeSheetFile(session::Session& session, const SheetRequest& request,
                                           const QString& path, base::Progress& progress);

/// The sheets as they would be written, without keeping anything: for the preview. Stopping is a
/// failure; progress is told sheet by sheet, on the calling thread.
base::Result<std::vector<sheet::YardSheet>> makeYardSheets(const session::Session& session,
                                                           const SheetRequest& request,
                                                           base::Progress& progress);
/// Keeps numbers and lines of sheets that were written or printed, as one undo step.
base::Result<void> keepSheets(session::Session& session, const SheetRequest& request,
                              const std::vector<sheet::YardSheet>& sheets);

}  // namespace outyard::app
