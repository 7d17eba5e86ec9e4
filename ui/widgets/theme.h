// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QColor>
#include <QIcon>
#include <QPalette>
#include <QString>

#include "core/sheet/shape.h"
#include "ui/adapt/settings.h"
#include "ui/print/palette.h"

/// Light and dark, and the colours of drawings in both. Fusion with a palette of our own, so that
/// the window looks the same everywhere and every colour has been tried against both grounds.
namespace outyard::widgets {

QPalette lightPalette();
QPalette darkPalette();
/// Style and palette of the application; System follows the desktop's own lightness.
void applyTheme(adapt::Theme theme);

bool isDark(const QPalette& palette);
/// The palette for drawings on that ground.
const print::Palette& drawingPalette(const QPalette& palette);
QColor inkColour(const QPalette& palette, sheet::Ink ink);

/// One of our own drawings under resources/icons, in the palette's text colours.
QIcon ownIcon(const QString& name, const QPalette& palette);

}  // namespace outyard::widgets
