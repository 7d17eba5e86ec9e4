// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFont>
#include <QFontMetricsF>
#include <string>
#include <unordered_map>

#include "core/sheet/shape.h"

namespace outyard::print {

/// Text is set at this pixel size and scaled to its millimetres, for measuring and for painting
/// alike: so it is as wide on screen, in the PDF and on the printer as the layout believed.
inline constexpr int kFontPixels = 100;

/// The font of sheets and drawings; the system's own where it is not installed.
QFont sheetFont(bool bold, bool italic = false);

/// Widths by the font that the painter uses. Needs a QGuiApplication.
class FontMeasurer : public sheet::TextMeasurer {
 public:
  FontMeasurer();
  [[nodiscard]] double widthMm(const std::string& text, double sizeMm, bool bold) const override;

 private:
  QFontMetricsF m_regular, m_bold;
  /// The same labels are measured for every line of a sheet.
  mutable std::unordered_map<std::string, double> m_known[2];
};

}  // namespace outyard::print
