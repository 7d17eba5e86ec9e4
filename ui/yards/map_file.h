// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/base/ids.h"
#include "ui/widgets/session_model.h"

class QPagedPaintDevice;
class QPainter;

namespace outyard::yards {

/// The map of a yard on the shown day, black on white, in millimetres from the painter's origin.
/// Numbers only: letters stand in the tables.
void paintMap(QPainter& painter, const widgets::SeasonHub& hub, const base::YardId& yard,
              double widthMm, double heightMm);
/// Text of a fixed height in millimetres, cut to the rectangle.
void paintText(QPainter& painter, const QRectF& rectMm, const QString& text, double heightMm,
               bool bold = false);
/// "Home yard, 25 April 2026".
QString mapTitle(const widgets::SeasonHub& hub, const base::YardId& yard);

/// The map alone with its title, on one page.
void printMapTo(const widgets::SeasonHub& hub, const base::YardId& yard, QPagedPaintDevice& device);
/// The same as a file; its ending says which: .pdf, .svg or .png. Through a temporary file, so that
/// a full disk leaves an older one as it was. Empty, or a sentence why not.
QString writeMap(const widgets::SeasonHub& hub, const base::YardId& yard, const QString& file);

}  // namespace outyard::yards
