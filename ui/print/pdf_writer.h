// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/base/result.h"
#include "core/sheet/yard_sheet.h"

namespace outyard::print {

/// Writes all pages as a PDF: vector, fonts embedded, in black and greys. Through a temporary file,
/// so that a full disk leaves an older file as it was. Needs a QGuiApplication (QPdfWriter aborts
/// without one); throws std::logic_error where there is none.
base::Result<void> writePdf(const sheet::SheetDocument& document, const QString& path);

}  // namespace outyard::print
