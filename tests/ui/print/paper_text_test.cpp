// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper_text.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QPdfWriter>
#include <vector>

namespace outyard::print {
namespace {

/// Numbers of the pages that were drawn on.
std::vector<int> pagesOf(const QString& html) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  std::vector<int> pages;
  {
    QPdfWriter writer(&buffer);
    PaperText paper(writer, 10);
    EXPECT_GT(paper.page().height(), 600);  // A4 in points, less its margins
    EXPECT_LT(paper.page().height(), 850);
    paper.print(html, [&](QPainter&, int page) { pages.push_back(page); });
  }
  EXPECT_TRUE(buffer.data().startsWith("%PDF"));
  EXPECT_EQ(static_cast<std::size_t>(buffer.data().count("/Type /Page\n")), pages.size());
  return pages;
}

TEST(PaperText, ALineIsOnePage) {
  EXPECT_EQ(pagesOf(QStringLiteral("<p>One line</p>")), (std::vector<int>{0}));
}

TEST(PaperText, LongTextGoesOnOverTheNextPages) {
  QString html;
  for (int i = 0; i < 150; ++i) html += QStringLiteral("<p>Line %1</p>").arg(i);
  const auto pages = pagesOf(html);
  ASSERT_GE(pages.size(), 3U);
  for (std::size_t i = 0; i < pages.size(); ++i) EXPECT_EQ(pages[i], static_cast<int>(i));
}

}  // namespace
}  // namespace outyard::print
