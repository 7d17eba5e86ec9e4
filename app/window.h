// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "ui/main_window/main_window.h"

namespace outyard::app {

/// What the window asks of the program: season files, exchange tables, weather files and sheets.
main_window::FileServices windowServices();

/// Opens the main window on the file, the last season, or on a first start the sample season, and
/// runs until it is closed. Needs a QApplication.
int runWindow(const QString& file);

}  // namespace outyard::app
