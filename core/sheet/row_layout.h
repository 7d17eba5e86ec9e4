// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "core/sheet/hive_lines.h"
#include "core/sheet/text_layout.h"

namespace outyard::sheet {

/// What found no room on its line: printed in full at the end, under its label.
struct Continuation {
  std::string label, text;
};

inline constexpr double kLargeType = 1.3;

/// Pages of one paper: margins, and the height of a line so that twelve fill a page.
struct PageFrame {
  double widthMm = 210, heightMm = 297;
  double left = 10, right = 200, top = 25, bottom = 284;
  double rowMm = 20;
  [[nodiscard]] double contentWidth() const { return right - left; }
  [[nodiscard]] double contentHeight() const { return bottom - top; }
  /// Large type is laid out on a smaller page across, which is then enlarged by kLargeType.
  static PageFrame of(Paper paper, bool large = false);
};

/// One line of the sheet with its text broken to fit.
class RowLayout {
 public:
  RowLayout(const RowContent& row, const PageFrame& frame, const TextMeasurer& measurer,
            const std::function<std::string(const base::Message&)>& word);
  [[nodiscard]] double heightMm() const { return m_height; }
  [[nodiscard]] const std::vector<Continuation>& continued() const { return m_continued; }
  void draw(PageCanvas& canvas, double top, const SheetContext& context) const;

 private:
  struct Task {
    std::vector<std::string> lines;
  };
  void drawName(PageCanvas& canvas, double top, const SheetContext& context) const;

  RowContent m_row;
  PageFrame m_frame;
  std::vector<std::string> m_name;
  std::string m_verdict;
  double m_detailsMm = 2.5;
  std::vector<std::string> m_details, m_expected;
  std::vector<Task> m_tasks;
  std::vector<std::string> m_notes;
  std::vector<Continuation> m_continued;
  double m_height = 20;
};

/// The lines of a hive together.
struct BlockLayout {
  const HiveBlock* block = nullptr;
  std::vector<RowLayout> rows;
  [[nodiscard]] double heightMm() const;
};

/// The cards of one page: boosts of one method share a card with one set of steps.
class CardsLayout {
 public:
  CardsLayout(const std::vector<const CardEntry*>& entries, const SheetContext& context,
              const PageFrame& frame, const TextMeasurer& measurer);
  [[nodiscard]] double heightMm() const;
  void draw(PageCanvas& canvas, double top) const;

 private:
  struct Line {
    std::string text;
    bool bold = false;
    bool starts = false;  ///< begins a paragraph: a column may break before it
  };
  struct Card {
    std::string heading;
    std::vector<Line> pairs;
    std::vector<std::vector<Line>> columns;
    [[nodiscard]] double heightMm() const;
  };
  [[nodiscard]] Card cardOf(apiary::Method method, const std::vector<const CardEntry*>& entries,
                            const SheetContext& context, const TextMeasurer& measurer) const;

  PageFrame m_frame;
  std::vector<Card> m_cards;
};

}  // namespace outyard::sheet
