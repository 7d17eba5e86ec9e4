// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QGlyphRun>
#include <QList>
#include <QPointF>
#include <QRawFont>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

namespace outyard::print {

/// Text set once and drawn often: glyphs and their places in the font of sheets, as QPainter would
/// set them at kFontPixels. Belongs to the thread it is made in (as raw fonts do).
class SetText {
 public:
  /// Glyphs of one font; places are in pixels from the start of the baseline.
  struct Run {
    std::size_t font = 0;
    QList<quint32> glyphs;
    QList<QPointF> places;
  };
  struct Words {
    std::vector<Run> runs;
    double width = 0;  ///< of the font at kFontPixels, in whole pixels as QFontMetrics has it
  };
  const Words& words(const std::string& text, bool bold, bool italic);

  /// A run with its baseline at `at` in a font of `pixels` units, every glyph on a whole unit; its
  /// font is not valid where it cannot be had in that size.
  [[nodiscard]] QGlyphRun glyphs(const Run& run, double pixels, QPointF at);

 private:
  [[nodiscard]] Words set(const std::string& text, bool bold, bool italic);
  std::size_t fontIndex(const QRawFont& font);

  std::vector<QRawFont> m_fonts;  ///< at kFontPixels
  std::map<std::pair<std::size_t, int>, QRawFont> m_sized;
  std::unordered_map<std::string, Words> m_known[4];
};

}  // namespace outyard::print
