// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/sheet/row_layout.h"

namespace outyard::sheet {

namespace {

using base::message;

constexpr double kInset = 2, kColumnGap = 3.5;
constexpr int kColumns = 2;
constexpr TextStyle kHeading{3.3, true};
constexpr TextStyle kText{2.4, false};
constexpr TextStyle kBold{2.4, true};
constexpr double kHeadingMm = 5.2, kLeading = 2.8;
constexpr double kCardGap = 1.6;

/// Said once in the head of the sheet, for all work in the yard.
bool inHead(const base::Message& caution) {
  return caution.key == "planning.caution.stings" || caution.key == "planning.caution.smoke" ||
         caution.key == "planning.caution.foul_brood";
}

}  // namespace

double CardsLayout::Card::heightMm() const {
  std::size_t longest = 0;
  for (const auto& column : columns) longest = std::max(longest, column.size());
  return kHeadingMm + kLeading * static_cast<double>(pairs.size() + longest) + 1.8;
}

CardsLayout::CardsLayout(const std::vector<const CardEntry*>& entries, const SheetContext& context,
                         const PageFrame& frame, const TextMeasurer& measurer)
    : m_frame(frame) {
  std::vector<const CardEntry*> left = entries;
  while (!left.empty()) {
    const apiary::Method method = left.front()->option->method;
    const auto others = std::stable_partition(
        left.begin(), left.end(), [&](const auto* e) { return e->option->method == method; });
    const std::vector<const CardEntry*> same(left.begin(), others);
    m_cards.push_back(cardOf(method, same, context, measurer));
    left.erase(left.begin(), others);
  }
}

CardsLayout::Card CardsLayout::cardOf(apiary::Method method,
                                      const std::vector<const CardEntry*>& entries,
                                      const SheetContext& context,
                                      const TextMeasurer& measurer) const {
  Card card;
  std::string letters;
  const double width = m_frame.contentWidth() - 2 * kInset;
  for (const CardEntry* entry : entries) {
    if (!letters.empty()) letters += ", ";
    letters += entry->letter;
    bool first = true;
    for (const std::string& text : entry->lines) {
      constexpr int kMost = 4;
      const TextStyle& style = first ? kBold : kText;
      for (const std::string& line : wrapText(measurer, text, style, width, kMost).lines) {
        card.pairs.push_back({line, first, false});
      }
      first = false;
    }
  }
  const std::string name = context.word({"code.method." + std::string(apiary::code(method)), {}});
  card.heading = wrapText(measurer, context.word(message("sheet.card.heading", letters, name)),
                          kHeading, width, 1)
                     .lines.front();

  std::vector<Line> all;
  const double column = (width - kColumnGap * (kColumns - 1)) / kColumns;
  const auto paragraph = [&](const std::string& text, bool bold) {
    constexpr int kMost = 12;
    bool first = true;
    for (const std::string& line :
         wrapText(measurer, text, bold ? kBold : kText, column, kMost).lines) {
      all.push_back({line, bold, first});
      first = false;
    }
  };
  const planning::MethodGuide guide = planning::methodGuide(method);
  const auto part = [&](const base::Message& heading, const std::vector<base::Message>& items,
                        bool numbered) {
    std::vector<std::string> texts;
    for (const base::Message& item : items) {
      if (!inHead(item)) texts.push_back(context.word(item));
    }
    if (texts.empty()) return;
    paragraph(context.word(heading), true);
    int number = 0;
    for (const std::string& text : texts) {
      ++number;
      paragraph((numbered ? std::to_string(number) + ". " : std::string("\u2013 ")) + text, false);
    }
  };
  part(message("sheet.card.needs"), guide.needs, false);
  part(message("sheet.card.steps"), guide.steps, true);
  part(message("sheet.card.returns"), guide.returns, false);
  part(message("sheet.card.cautions"), guide.cautions, false);

  // Two columns of about the same height; a heading stays with what follows it.
  std::size_t cut = (all.size() + 1) / 2;
  while (cut < all.size() && !all[cut].starts) ++cut;
  if (cut > 0 && cut < all.size() && all[cut - 1].bold) --cut;
  const auto middle = all.begin() + static_cast<std::ptrdiff_t>(cut);
  card.columns = {{all.begin(), middle}, {middle, all.end()}};
  return card;
}

double CardsLayout::heightMm() const {
  double sum = 0;
  for (const Card& card : m_cards) sum += card.heightMm() + kCardGap;
  return sum;
}

void CardsLayout::draw(PageCanvas& canvas, double top) const {
  const double x = m_frame.left + kInset;
  const double width = m_frame.contentWidth() - 2 * kInset;
  for (const Card& card : m_cards) {
    top += kCardGap;
    canvas.box({m_frame.left, top}, m_frame.contentWidth(), card.heightMm(), 0.4, 1.2);
    canvas.text({x, top + 4}, card.heading, kHeading, width);
    double y = top + kHeadingMm + kLeading * 0.8;
    for (const Line& line : card.pairs) {
      canvas.text({x, y}, line.text, line.bold ? kBold : kText, width);
      y += kLeading;
    }
    const double column = (width - kColumnGap * (kColumns - 1)) / kColumns;
    for (std::size_t c = 0; c < card.columns.size(); ++c) {
      double at = y;
      for (const Line& line : card.columns[c]) {
        canvas.text({x + static_cast<double>(c) * (column + kColumnGap), at}, line.text,
                    line.bold ? kBold : kText, column);
        at += kLeading;
      }
    }
    top += card.heightMm();
  }
}

}  // namespace outyard::sheet
