// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

namespace outyard::app {

/// Opens the main window on the file, the last season, or on a first start the sample season, and
/// runs until it is closed. Needs a QApplication.
int runWindow(const QString& file);

}  // namespace outyard::app
