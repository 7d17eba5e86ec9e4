// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/sheet/shape.h"
#include "core/sheet/yard_sheet.h"

/// Text in lines of known width, and a page that refuses what does not fit.
namespace outyard::sheet {

struct TextStyle {
  double sizeMm = 2.7;
  bool bold = false;
  Ink ink = Ink::Text;
  Align align = Align::Left;
};

/// Share of the em above and below the baseline that a line of text takes.
inline constexpr double kAscent = 0.78, kDescent = 0.22;

struct Wrapped {
  std::vector<std::string> lines;
  std::string rest;  ///< what did not fit into the lines; the last line then ends in an ellipsis
};

/// Breaks text at spaces, and inside a word only where the word alone is wider than the line
/// (never between a letter and its combining marks). Line breaks in the text count as spaces.
Wrapped wrapText(const TextMeasurer& measurer, const std::string& text, const TextStyle& style,
                 double widthMm, int maxLines);

/// One page being filled. Text that is wider than promised or leaves the page is a bug of the
/// layout and throws std::logic_error.
class PageCanvas {
 public:
  PageCanvas(SheetPage& page, const TextMeasurer& measurer) : m_page(page), m_measurer(measurer) {}
  [[nodiscard]] const TextMeasurer& measurer() const { return m_measurer; }
  [[nodiscard]] double width(const std::string& text, const TextStyle& style) const;
  /// One line at its baseline, at most widthMm wide.
  void text(Point baseline, const std::string& text, const TextStyle& style, double widthMm);
  /// Lines one under the other; gives the baseline after the last.
  double lines(Point baseline, const std::vector<std::string>& lines, const TextStyle& style,
               double widthMm, double leadingMm);
  void line(Point from, Point to, double widthMm = 0.2, Ink ink = Ink::Line, bool dashed = false);
  void box(Point corner, double widthMm, double heightMm, double strokeMm = 0.25,
           double radiusMm = 0, Ink fill = Ink::None);
  void add(const Shapes& shapes);

 private:
  SheetPage& m_page;
  const TextMeasurer& m_measurer;
};

}  // namespace outyard::sheet
