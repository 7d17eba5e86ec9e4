// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/session/session.h"
#include "core/sheet/yard_sheet.h"

namespace outyard::app {

struct SheetRequest {
  base::YardId yard;
  base::Date date;
  sheet::Paper paper = sheet::Paper::A4;
};
struct SheetWritten {
  std::string sheetNumber;
  int pages = 0;
};

/// Plans the yard's boosts for the day, lays out its sheet, keeps the sheet's number and lines in
/// the season (so that it can be typed back in) and writes the PDF. Needs a QGuiApplication.
base::Result<SheetWritten> writeSheetFile(session::Session& session, const SheetRequest& request,
                                          const QString& path);

/// The yard's sheet as it would be written, without keeping anything: for the preview.
base::Result<sheet::YardSheet> makeYardSheet(const session::Session& session,
                                             const SheetRequest& request);

}  // namespace outyard::app
