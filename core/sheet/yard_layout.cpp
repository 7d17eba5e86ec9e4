// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/yard_layout.h"

#include "core/sheet/row_layout.h"
#include "core/sheet/sheet_parts.h"

namespace outyard::sheet {

namespace {

using base::message;

constexpr int kBlankLines = 3;
constexpr TextStyle kContinued{2.6, false};
constexpr TextStyle kContinuedHead{3.2, true};
constexpr double kContinuedLeading = 3.4;

class SheetBuilder {
 public:
  SheetBuilder(const YardSheetInput& input, const std::vector<strength::Judgement>& judgements)
      : m_c(input, judgements), m_frame(PageFrame::of(input.paper, input.largeType)) {}

  YardSheet build() {
    newPage();
    {
      PageCanvas canvas = page();
      m_y = drawHead(canvas, m_frame, m_c, m_continued);
      canvas.line({m_frame.left, m_y}, {m_frame.right, m_y}, 0.4);
    }
    for (const HiveBlock& block : m_c.blocks) addBlock(block);
    closeCards();
    addBlankLines();
    addContinued();
    m_linePages = static_cast<int>(m_out.document.pages.size());
    addLoadList();
    const int pages = static_cast<int>(m_out.document.pages.size());
    for (int i = 0; i < pages; ++i) {
      PageCanvas canvas(m_out.document.pages[static_cast<std::size_t>(i)], *m_c.in.text);
      drawFoot(canvas, m_frame, m_c, i + 1, pages, i < m_linePages);
    }
    if (m_c.in.largeType) enlarge();
    m_out.document.sheetNumber = m_c.in.sheetNumber;
    m_out.document.title =
        m_c.word(message("sheet.title", yardName(m_c), m_c.in.date.iso(), m_c.in.sheetNumber));
    m_out.lines = m_c.lines;
    return std::move(m_out);
  }

 private:
  PageCanvas page() { return {m_out.document.pages.back(), *m_c.in.text}; }

  void newPage() {
    m_out.document.pages.push_back({m_frame.widthMm, m_frame.heightMm, {}});
    m_y = m_frame.top;
    m_cards.clear();
  }

  [[nodiscard]] CardsLayout cards(const std::vector<const CardEntry*>& entries) const {
    return {entries, m_c, m_frame, *m_c.in.text};
  }

  /// A hive with the cards of its boosts goes on the page that has room for all of it.
  void addBlock(const HiveBlock& block) {
    BlockLayout layout{&block, {}};
    for (const RowContent& row : block.rows) {
      layout.rows.emplace_back(row, m_frame, *m_c.in.text, m_c.in.word);
    }
    std::vector<const CardEntry*> entries = m_cards;
    for (const CardEntry& card : block.cards) entries.push_back(&card);
    const double cardsTall = entries.empty() ? 0 : cards(entries).heightMm();
    if (m_y + layout.heightMm() + cardsTall > m_frame.bottom + kSlack) {
      closeCards();
      newPage();
      entries.clear();
      for (const CardEntry& card : block.cards) entries.push_back(&card);
    }
    for (const RowLayout& row : layout.rows) {
      PageCanvas canvas = page();
      row.draw(canvas, m_y, m_c);
      m_y += row.heightMm();
      canvas.line({m_frame.left, m_y}, {m_frame.right, m_y},
                  &row == &layout.rows.back() ? 0.25 : 0.1);
      m_continued.insert(m_continued.end(), row.continued().begin(), row.continued().end());
    }
    m_cards = entries;
  }

  void closeCards() {
    if (m_cards.empty()) return;
    const CardsLayout layout = cards(m_cards);
    PageCanvas canvas = page();
    layout.draw(canvas, m_y);
    m_y += layout.heightMm();
    m_cards.clear();
  }

  void addBlankLines() {
    for (int i = 0; i < kBlankLines; ++i) {
      RowContent row;
      row.kind = RowKind::Blank;
      const RowLayout layout(row, m_frame, *m_c.in.text, m_c.in.word);
      if (m_y + layout.heightMm() > m_frame.bottom + kSlack) newPage();
      PageCanvas canvas = page();
      layout.draw(canvas, m_y, m_c);
      m_y += layout.heightMm();
      canvas.line({m_frame.left, m_y}, {m_frame.right, m_y}, 0.25);
    }
  }

  /// What found no room on its line, in full.
  void addContinued() {
    if (m_continued.empty()) return;
    const double width = m_frame.contentWidth();
    const auto room = [&](double tall) {
      if (m_y + tall > m_frame.bottom) newPage();
    };
    room(14);
    m_y += 6;
    page().text({m_frame.left, m_y}, m_c.word(message("sheet.continued.heading")), kContinuedHead,
                width);
    m_y += 1.5;
    for (const Continuation& item : m_continued) {
      const std::string text = m_c.word(message("sheet.continued.item", item.label, item.text));
      constexpr int kAll = 10000;
      for (const std::string& line : wrapText(*m_c.in.text, text, kContinued, width, kAll).lines) {
        room(kContinuedLeading);
        m_y += kContinuedLeading;
        page().text({m_frame.left, m_y - 0.6}, line, kContinued, width);
      }
      m_y += 0.8;
    }
  }

  void addLoadList() {
    const std::vector<LoadItem> items = loadItems(m_c);
    std::size_t done = 0;
    do {
      newPage();
      PageCanvas canvas = page();
      done += drawLoadList(canvas, m_frame, m_c, items, done);
    } while (done < items.size());
  }

  void enlarge() {
    for (SheetPage& page : m_out.document.pages) {
      page.shapes = transformed(page.shapes, {0, 0}, 0, kLargeType);
      page.widthMm *= kLargeType;
      page.heightMm *= kLargeType;
    }
  }

  static constexpr double kSlack = 0.01;
  SheetContext m_c;
  PageFrame m_frame;
  YardSheet m_out;
  double m_y = 0;
  int m_linePages = 0;                    ///< pages before the load list
  std::vector<const CardEntry*> m_cards;  ///< of the hives on this page
  std::vector<Continuation> m_continued;
};

}  // namespace

YardSheet layoutJudgedSheet(const YardSheetInput& input,
                            const std::vector<strength::Judgement>& judgements) {
  return SheetBuilder(input, judgements).build();
}

}  // namespace outyard::sheet
