// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/entry_block.h"

#include <algorithm>
#include <optional>
#include <vector>

namespace outyard::sheet {

namespace {

using base::message;

struct Group {
  std::string label;
  std::vector<std::string> options;
};
using Line = std::vector<Group>;

/// Sizes of the form; all shrink together where a translation needs more room.
struct Sizes {
  TextStyle label{2.2, false};
  TextStyle option{2.9, false};
  double leastPitch = 4.35;  ///< between the middles of two things to circle
  double labelGap = 1.2, groupGap = 2.2, optionGap = 1.5;
  [[nodiscard]] Sizes scaled(double by) const {
    Sizes s = *this;
    s.label.sizeMm *= by;
    s.option.sizeMm *= by;
    for (double* d : {&s.leastPitch, &s.labelGap, &s.groupGap, &s.optionGap}) *d *= by;
    return s;
  }
};

class Form {
 public:
  Form(PageCanvas& canvas, std::vector<Line> lines, double width, double optionGap)
      : m_canvas(canvas), m_lines(std::move(lines)), m_width(width) {
    for (double by = 1; by > 0.3; by -= 0.04) {
      Sizes sizes;
      sizes.optionGap = optionGap;
      m_sizes = sizes.scaled(by);
      if (longest() <= m_width) break;
    }
  }

  void draw(Point corner, double pitch) {
    const double labelColumn = firstLabel();
    double y = corner.y + pitch * 0.5 + m_sizes.option.sizeMm * 0.36;
    for (const Line& line : m_lines) {
      double x = corner.x;
      for (std::size_t g = 0; g < line.size(); ++g) {
        if (g > 0) x += m_sizes.groupGap;
        x = drawGroup(line[g], {x, y}, g == 0 ? labelColumn : labelWidth(line[g]));
      }
      m_end = x;
      y += pitch;
    }
  }
  /// Right end of the last line that was drawn.
  [[nodiscard]] double end() const { return m_end; }
  [[nodiscard]] double gap() const { return m_sizes.groupGap; }

 private:
  [[nodiscard]] double labelWidth(const Group& group) const {
    if (group.label.empty()) return 0;
    return m_canvas.width(group.label, m_sizes.label) + m_sizes.labelGap;
  }
  [[nodiscard]] double firstLabel() const {
    double widest = 0;
    for (const Line& line : m_lines) widest = std::max(widest, labelWidth(line.front()));
    return widest;
  }
  [[nodiscard]] double optionWidth(const std::string& option) const {
    return std::max(m_sizes.leastPitch, m_canvas.width(option, m_sizes.option) + m_sizes.optionGap);
  }
  [[nodiscard]] double longest() const {
    double most = 0;
    for (const Line& line : m_lines) {
      double x = firstLabel();
      for (std::size_t g = 0; g < line.size(); ++g) {
        if (g > 0) x += m_sizes.groupGap + labelWidth(line[g]);
        for (const std::string& option : line[g].options) x += optionWidth(option);
      }
      most = std::max(most, x);
    }
    return most;
  }

  double drawGroup(const Group& group, Point at, double labelColumn) {
    m_canvas.text(at, group.label, m_sizes.label, labelColumn);
    at.x += labelColumn;
    TextStyle centred = m_sizes.option;
    centred.align = Align::Centre;
    for (const std::string& option : group.options) {
      const double w = optionWidth(option);
      m_canvas.text({at.x + w / 2, at.y}, option, centred, w);
      at.x += w;
    }
    return at.x;
  }

  PageCanvas& m_canvas;
  std::vector<Line> m_lines;
  double m_width;
  Sizes m_sizes;
  double m_end = 0;
};

std::vector<std::string> numbers(int last, bool more) {
  std::vector<std::string> out;
  for (int i = 0; i <= last; ++i) out.push_back(std::to_string(i));
  if (more) out.back() += "+";
  return out;
}

}  // namespace

void drawEntry(PageCanvas& canvas, const std::function<std::string(const base::Message&)>& word,
               RowKind kind, Point corner, double heightMm) {
  std::vector<Line> lines;
  const std::vector<std::string> yesNo{word(message("sheet.entry.yes")),
                                       word(message("sheet.entry.no"))};
  if (kind == RowKind::Dead) {
    lines = {{{word(message("sheet.entry.cause")),
               {word(message("sheet.entry.starved")), word(message("sheet.entry.queenless")),
                word(message("sheet.entry.mites")), word(message("sheet.entry.unknown"))}}},
             {{word(message("sheet.entry.combs")),
               {word(message("sheet.entry.stored")), word(message("sheet.entry.melted")),
                word(message("sheet.entry.burnt")), word(message("sheet.entry.left"))}}},
             {{word(message("sheet.entry.closed")), yesNo}}};
  } else if (kind == RowKind::Empty) {
    lines = {{{word(message("sheet.entry.bees_in")), yesNo}}};
  } else {
    lines = {{{word(message("sheet.entry.seams")), numbers(10, true)},
              {word(message("sheet.entry.eggs")), yesNo},
              {{}, {word(message("sheet.entry.sick"))}}},
             {{word(message("sheet.entry.brood")), numbers(8, true)},
              {word(message("sheet.entry.queen")),
               {word(message("sheet.entry.marked")), word(message("sheet.entry.unmarked")),
                word(message("sheet.entry.virgin")), "\u2013"}}},
             {{word(message("sheet.entry.cells")),
               {"0", word(message("sheet.entry.cups")), word(message("sheet.entry.charged")),
                word(message("sheet.entry.sealed"))}},
              {word(message("sheet.entry.temper")), {"1", "2", "3", "4", "5"}}},
             {{word(message("sheet.entry.stores")),
               {word(message("sheet.entry.low")), word(message("sheet.entry.medium")),
                word(message("sheet.entry.heavy"))}},
              {{}, {word(message("sheet.entry.drones"))}},
              {{}, {word(message("sheet.entry.not_done"))}}}};
  }
  constexpr int kLines = 4;
  const double pitch = std::min(heightMm, 24.0) / kLines;
  // few words to circle may stand wider apart
  Form form(canvas, lines, kEntryWidthMm, kind == RowKind::Dead ? 4.5 : 1.5);
  form.draw(corner, pitch);
  // The free line: why it was not done, and all else.
  const double right = corner.x + kEntryWidthMm;
  const bool own = lines.size() < kLines;
  const double from = own ? corner.x : form.end() + form.gap();
  const double y = corner.y + pitch * kLines - 0.9;
  canvas.line({from, y}, {right, y}, 0.15, Ink::Line, true);
  for (double more = y + 6; more < corner.y + heightMm - 0.8; more += 6) {
    canvas.line({corner.x, more}, {right, more}, 0.15, Ink::Line, true);
  }
}

std::string entryLegend(const std::function<std::string(const base::Message&)>& word) {
  return word(message("sheet.legend.entry"));
}

}  // namespace outyard::sheet
