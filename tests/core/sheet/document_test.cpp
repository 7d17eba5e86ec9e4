// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/document.h"

#include <gtest/gtest.h>

namespace outyard::sheet {
namespace {

using Pages = std::vector<std::size_t>;

TEST(PageRange, ReadsWhatPeopleType) {
  const struct {
    const char* text;
    Pages pages;
  } cases[] = {{"", {0, 1, 2, 3, 4}},       {"  ", {0, 1, 2, 3, 4}}, {"3", {2}},
               {"1-3", {0, 1, 2}},          {"4-", {3, 4}},          {"-2", {0, 1}},
               {"5, 1; 2-3", {0, 1, 2, 4}}, {"2,2,1-2", {0, 1}}};
  for (const auto& c : cases) {
    const auto got = pageRange(c.text, 5);
    ASSERT_TRUE(got) << c.text;
    EXPECT_EQ(*got, c.pages) << c.text;
  }
}

TEST(PageRange, RefusesPagesThatThereAreNotAndWhatIsNoRange) {
  for (const char* text :
       {"0", "6", "3-6", "3-1", "a", "1-b", "1--2", ",", "-", "99999999999999999999"}) {
    const auto got = pageRange(text, 5);
    ASSERT_FALSE(got) << text;
    EXPECT_EQ(got.failure().messages.front().key, "sheet.pages.bad");
  }
}

YardSheet sheetOf(const char* number, int pages) {
  YardSheet s;
  s.document.sheetNumber = number;
  s.document.title = std::string("sheet ") + number;
  for (int i = 0; i < pages; ++i) {
    SheetPage page;
    TextShape text;
    text.text = std::string(number) + "/" + std::to_string(i);
    page.shapes.emplace_back(text);
    s.document.pages.push_back(page);
  }
  return s;
}

TEST(Joined, KeepsEveryPageInOrder) {
  const SheetDocument one = joined({sheetOf("26-0001", 2)});
  EXPECT_EQ(one.sheetNumber, "26-0001");
  const SheetDocument all = joined({sheetOf("26-0001", 2), sheetOf("26-0002", 3)});
  EXPECT_EQ(all.sheetNumber, "");
  ASSERT_EQ(all.pages.size(), 5U);
  EXPECT_EQ(std::get<TextShape>(all.pages[2].shapes.front()).text, "26-0002/0");
  const SheetDocument part = onlyPages(all, {1, 4});
  ASSERT_EQ(part.pages.size(), 2U);
  EXPECT_EQ(std::get<TextShape>(part.pages[1].shapes.front()).text, "26-0002/2");
  EXPECT_TRUE(joined({}).pages.empty());
}

}  // namespace
}  // namespace outyard::sheet
