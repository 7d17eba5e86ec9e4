// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/text_layout.h"

#include <cstdint>
#include <stdexcept>

namespace outyard::sheet {

namespace {

constexpr double kSlackMm = 0.05;
const std::string kEllipsis = "\u2026";

/// Length in bytes of the code point that starts here.
std::size_t stepAt(const std::string& text, std::size_t at) {
  const auto byte = static_cast<unsigned char>(text[at]);
  std::size_t n = 1;
  if (byte >= 0xF0) {
    n = 4;
  } else if (byte >= 0xE0) {
    n = 3;
  } else if (byte >= 0xC0) {
    n = 2;
  }
  return std::min(n, text.size() - at);
}

std::uint32_t codePointAt(const std::string& text, std::size_t at) {
  const std::size_t n = stepAt(text, at);
  const auto byte = [&](std::size_t i) {
    return static_cast<std::uint32_t>(static_cast<unsigned char>(text[at + i]));
  };
  if (n == 1) return byte(0);
  std::uint32_t value = byte(0) & (0xFFU >> (n + 1));
  for (std::size_t i = 1; i < n; ++i) value = (value << 6U) | (byte(i) & 0x3FU);
  return value;
}

/// True where a break would tear a mark from its letter.
bool joinsBefore(std::uint32_t c) {
  return (c >= 0x300 && c <= 0x36F) || (c >= 0x591 && c <= 0x5C7) || (c >= 0x64B && c <= 0x65F) ||
         (c >= 0x1AB0 && c <= 0x1AFF) || (c >= 0x200C && c <= 0x200D) ||
         (c >= 0x20D0 && c <= 0x20FF) || (c >= 0xFE00 && c <= 0xFE0F) ||
         (c >= 0x1F3FB && c <= 0x1F3FF);
}

/// Byte positions at which a word may be broken, without 0, with its end.
std::vector<std::size_t> breaksOf(const std::string& word) {
  std::vector<std::size_t> breaks;
  bool afterJoiner = false;
  for (std::size_t at = 0; at < word.size(); at += stepAt(word, at)) {
    const std::uint32_t c = codePointAt(word, at);
    if (at > 0 && !joinsBefore(c) && !afterJoiner) breaks.push_back(at);
    afterJoiner = c == 0x200D;
  }
  breaks.push_back(word.size());
  return breaks;
}

std::vector<std::string> wordsOf(const std::string& text) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\n' || c == '\r' || c == '\t';
    if (!space) {
      word += c;
    } else if (!word.empty()) {
      words.push_back(std::exchange(word, {}));
    }
  }
  if (!word.empty()) words.push_back(word);
  return words;
}

class Wrapper {
 public:
  Wrapper(const TextMeasurer& measurer, const TextStyle& style, double widthMm)
      : m_measurer(measurer), m_style(style), m_width(widthMm) {}

  [[nodiscard]] bool fits(const std::string& text) const {
    return m_measurer.widthMm(text, m_style.sizeMm, m_style.bold) <= m_width;
  }
  /// Longest beginning of the word that fits with `tail` after it; at least one letter unless a
  /// tail is wanted.
  [[nodiscard]] std::size_t head(const std::string& word, const std::string& tail) const {
    const std::vector<std::size_t> breaks = breaksOf(word);
    std::size_t low = 0, high = breaks.size();  // the first `low` breaks fit
    while (low < high) {
      const std::size_t middle = (low + high) / 2;
      if (fits(word.substr(0, breaks[middle]) + tail)) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    if (low == 0) return tail.empty() ? breaks.front() : 0;
    return breaks[low - 1];
  }

 private:
  const TextMeasurer& m_measurer;
  TextStyle m_style;
  double m_width;
};

std::string joined(const std::vector<std::string>& words, std::size_t from) {
  std::string text;
  for (std::size_t i = from; i < words.size(); ++i) {
    if (!text.empty()) text += ' ';
    text += words[i];
  }
  return text;
}

}  // namespace

Wrapped wrapText(const TextMeasurer& measurer, const std::string& text, const TextStyle& style,
                 double widthMm, int maxLines) {
  Wrapped result;
  std::vector<std::string> words = wordsOf(text);
  if (words.empty() || maxLines < 1) {
    result.rest = joined(words, 0);
    return result;
  }
  const Wrapper wrapper(measurer, style, widthMm);
  std::string line;
  std::size_t i = 0;
  while (i < words.size()) {
    const std::string longer = line.empty() ? words[i] : line + ' ' + words[i];
    if (wrapper.fits(longer)) {
      line = longer;
      ++i;
      continue;
    }
    if (line.empty()) {  // the word alone is too wide
      const std::size_t cut = wrapper.head(words[i], {});
      line = words[i].substr(0, cut);
      words[i].erase(0, cut);
      if (words[i].empty()) ++i;
    }
    if (static_cast<int>(result.lines.size()) + 1 == maxLines && i < words.size()) break;
    result.lines.push_back(std::exchange(line, {}));
  }
  if (i >= words.size()) {
    if (!line.empty()) result.lines.push_back(line);
    return result;
  }
  // The last line that is allowed, with more to come: make room for the ellipsis.
  const std::size_t keep = wrapper.head(line, kEllipsis);
  std::string cut = line.substr(0, keep);
  std::string rest = line.substr(keep);
  while (!cut.empty() && cut.back() == ' ') cut.pop_back();
  const bool midWord = !rest.empty() && rest.front() != ' ';
  if (midWord) {  // give the whole word to the rest where there is an earlier space
    const std::size_t space = cut.rfind(' ');
    if (space != std::string::npos) {
      rest = cut.substr(space + 1) + rest;
      cut.erase(space);
    }
  }
  result.lines.push_back(cut + kEllipsis);
  while (!rest.empty() && rest.front() == ' ') rest.erase(0, 1);
  const std::string more = joined(words, i);
  result.rest = rest.empty() ? more : rest + ' ' + more;
  return result;
}

double PageCanvas::width(const std::string& text, const TextStyle& style) const {
  return m_measurer.widthMm(text, style.sizeMm, style.bold);
}

void PageCanvas::text(Point baseline, const std::string& text, const TextStyle& style,
                      double widthMm) {
  if (text.empty()) return;
  const double w = width(text, style);
  double left = baseline.x;
  if (style.align == Align::Centre) left -= w / 2;
  if (style.align == Align::Right) left -= w;
  if (w > widthMm + kSlackMm) throw std::logic_error("sheet text wider than its box: " + text);
  if (left < 0 || left + w > m_page.widthMm + kSlackMm || baseline.y - kAscent * style.sizeMm < 0 ||
      baseline.y + kDescent * style.sizeMm > m_page.heightMm) {
    throw std::logic_error("sheet text leaves the page: " + text);
  }
  TextShape shape;
  shape.at = baseline;
  shape.text = text;
  shape.sizeMm = style.sizeMm;
  shape.bold = style.bold;
  shape.align = style.align;
  shape.ink = style.ink;
  shape.maxWidthMm = widthMm;
  m_page.shapes.emplace_back(shape);
}

double PageCanvas::lines(Point baseline, const std::vector<std::string>& lines,
                         const TextStyle& style, double widthMm, double leadingMm) {
  for (const std::string& one : lines) {
    text(baseline, one, style, widthMm);
    baseline.y += leadingMm;
  }
  return baseline.y;
}

void PageCanvas::line(Point from, Point to, double widthMm, Ink ink, bool dashed) {
  m_page.shapes.emplace_back(LineShape{from, to, {ink, widthMm, dashed}});
}

void PageCanvas::box(Point corner, double widthMm, double heightMm, double strokeMm,
                     double radiusMm, Ink fill) {
  RectShape shape{corner, widthMm, heightMm, radiusMm};
  shape.fill = fill;
  shape.stroke = {Ink::Line, strokeMm};
  if (strokeMm <= 0) shape.stroke.ink = Ink::None;
  m_page.shapes.emplace_back(shape);
}

void PageCanvas::add(const Shapes& shapes) {
  m_page.shapes.insert(m_page.shapes.end(), shapes.begin(), shapes.end());
}

}  // namespace outyard::sheet
