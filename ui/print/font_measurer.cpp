// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/font_measurer.h"

#include <QFontDatabase>
#include <QString>
#include <QStringList>

namespace outyard::print {

QFont sheetFont(bool bold, bool italic) {
  QFont font;
  font.setFamilies({QStringLiteral("DejaVu Sans"),
                    QFontDatabase::systemFont(QFontDatabase::GeneralFont).family()});
  font.setPixelSize(kFontPixels);
  font.setBold(bold);
  font.setItalic(italic);
  // Hinting would fit the letters to the pixels of one device, and change their widths.
  font.setHintingPreference(QFont::PreferNoHinting);
  font.setKerning(true);
  return font;
}

FontMeasurer::FontMeasurer() : m_regular(sheetFont(false)), m_bold(sheetFont(true)) {}

double FontMeasurer::widthMm(const std::string& text, double sizeMm, bool bold) const {
  auto& known = m_known[bold ? 1 : 0];
  const auto it = known.find(text);
  double pixels = 0;
  if (it != known.end()) {
    pixels = it->second;
  } else {
    const QString words = QString::fromStdString(text);
    pixels = (bold ? m_bold : m_regular).horizontalAdvance(words);
    constexpr std::size_t kMost = 20000, kLongest = 64;
    if (known.size() < kMost && text.size() <= kLongest) known.emplace(text, pixels);
  }
  return pixels * sizeMm / kFontPixels;
}

}  // namespace outyard::print
