// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/yard_sheet.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>

#include "core/sheet/row_layout.h"
#include "core/sheet/text_layout.h"
#include "tests/core/sheet/sheet_checks.h"
#include "tests/core/sheet/sheet_fixture.h"

namespace outyard::sheet {
namespace {

using fixture::MadeYard;
using fixture::PlainMeasurer;
using fixture::plainWord;
using fixture::Wish;

const PlainMeasurer kMeasurer;

YardSheet laidOut(const MadeYard& y, Paper paper, bool large = false) {
  YardSheetInput input = y.input(paper, kMeasurer, plainWord);
  input.largeType = large;
  return layoutJudgedSheet(input, y.judgements);
}

bool hasText(const SheetPage& page, const std::string& part) {
  for (const Shape& shape : page.shapes) {
    const auto* t = std::get_if<TextShape>(&shape);
    if (t && t->text.find(part) != std::string::npos) return true;
  }
  return false;
}

int pagesWith(const SheetDocument& document, const std::string& text) {
  int n = 0;
  for (const SheetPage& page : document.pages) n += hasText(page, text) ? 1 : 0;
  return n;
}

TEST(WrapText, BreaksAtSpacesAndKeepsEveryWord) {
  const std::string text = "one two three four five six seven";
  const Wrapped w = wrapText(kMeasurer, text, {2, false}, 14, 100);
  std::string joined;
  for (const std::string& line : w.lines) {
    EXPECT_LE(kMeasurer.widthMm(line, 2, false), 14);
    joined += (joined.empty() ? "" : " ") + line;
  }
  EXPECT_EQ(joined, text);
  EXPECT_TRUE(w.rest.empty());
}

TEST(WrapText, CutsTheLastLineWithAnEllipsisAndGivesTheRest) {
  const Wrapped w = wrapText(kMeasurer, "one two three four five six", {2, false}, 14, 2);
  ASSERT_EQ(w.lines.size(), 2U);
  EXPECT_TRUE(w.lines.back().ends_with("\u2026"));
  EXPECT_LE(kMeasurer.widthMm(w.lines.back(), 2, false), 14);
  EXPECT_TRUE(w.rest.ends_with("five six"));
}

TEST(WrapText, BreaksAWordOnlyBetweenWholeLetters) {
  // e with an acute mark as two code points, six of them, where two and a half fit
  std::string word;
  for (int i = 0; i < 6; ++i) word += "e\u0301";
  const Wrapped w = wrapText(kMeasurer, word, {1, false}, 3.0, 100);
  std::string joined;
  for (const std::string& line : w.lines) {
    EXPECT_FALSE(line.starts_with("\u0301"));
    joined += line;
  }
  EXPECT_EQ(joined, word);
  EXPECT_GT(w.lines.size(), 1U);
}

TEST(WrapText, NothingGivesNoLine) {
  EXPECT_TRUE(wrapText(kMeasurer, " \n ", {2, false}, 10, 3).lines.empty());
}

TEST(PageCanvasTest, RefusesTextThatDoesNotFit) {
  SheetPage page;
  PageCanvas canvas(page, kMeasurer);
  EXPECT_THROW(canvas.text({10, 10}, "too wide for this", {3, false}, 5), std::logic_error);
  EXPECT_THROW(canvas.text({205, 10}, "leaves the page", {3, false}, 100), std::logic_error);
  EXPECT_THROW(canvas.text({10, 1}, "above", {3, false}, 100), std::logic_error);
  canvas.text({10, 10}, "fits", {3, false}, 20);
  EXPECT_EQ(page.shapes.size(), 1U);
}

struct Case {
  int hives, boosts;
  bool longText, rightToLeft;
  Paper paper;
  bool large = false;
};

class YardSheetCases : public testing::TestWithParam<Case> {};

TEST_P(YardSheetCases, NothingOverlapsAndNothingLeavesThePage) {
  const Case c = GetParam();
  Wish wish;
  wish.hives = c.hives;
  wish.boosts = c.boosts;
  wish.longText = c.longText;
  wish.rightToLeft = c.rightToLeft;
  const MadeYard y = fixture::makeYard(wish);
  const YardSheet sheet = laidOut(y, c.paper, c.large);
  for (std::size_t i = 0; i < sheet.document.pages.size(); ++i) {
    const SheetPage& page = sheet.document.pages[i];
    EXPECT_EQ(fixture::textFault(page, kMeasurer), "") << "page " << i + 1;
    EXPECT_EQ(fixture::shapeFault(page), "") << "page " << i + 1;
    EXPECT_TRUE(hasText(page, "26-0148")) << "page " << i + 1;
    EXPECT_TRUE(hasText(
        page, "page " + std::to_string(i + 1) + " " + std::to_string(sheet.document.pages.size())));
    EXPECT_GE(fixture::highest(page), 25 - 1e-6) << "clear at the top of page " << i + 1;
  }
}

TEST_P(YardSheetCases, EveryHiveHasItsLinesAndIsNotSplit) {
  const Case c = GetParam();
  Wish wish;
  wish.hives = c.hives;
  wish.boosts = c.boosts;
  wish.longText = c.longText;
  wish.rightToLeft = c.rightToLeft;
  const MadeYard y = fixture::makeYard(wish);
  const YardSheet sheet = laidOut(y, c.paper, c.large);
  std::set<base::HiveId> hives;
  for (std::size_t i = 0; i < sheet.lines.size(); ++i) {
    EXPECT_EQ(sheet.lines[i].line, static_cast<int>(i) + 1);
    hives.insert(sheet.lines[i].hive);
  }
  EXPECT_EQ(hives.size(), static_cast<std::size_t>(c.hives));
  // the big line number is drawn once; two lines of one hive stand on one page
  std::map<int, std::size_t> pageOf;
  for (std::size_t p = 0; p < sheet.document.pages.size(); ++p) {
    for (const Shape& shape : sheet.document.pages[p].shapes) {
      const auto* t = std::get_if<TextShape>(&shape);
      if (!t || std::abs(t->sizeMm - (c.large ? 4.2 * kLargeType : 4.2)) > 1e-9 || !t->bold)
        continue;
      EXPECT_TRUE(pageOf.emplace(std::stoi(t->text), p).second);
    }
  }
  ASSERT_EQ(pageOf.size(), sheet.lines.size());
  for (std::size_t i = 1; i < sheet.lines.size(); ++i) {
    const int line = sheet.lines[i].line;
    EXPECT_GE(pageOf[line], pageOf[line - 1]);
    if (sheet.lines[i].hive == sheet.lines[i - 1].hive) {
      EXPECT_EQ(pageOf[line], pageOf[line - 1]);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(
    Yards, YardSheetCases,
    testing::Values(
        Case{1, 0, false, false, Paper::A4}, Case{1, 0, true, false, Paper::Letter},
        Case{40, 3, false, false, Paper::A4}, Case{40, 4, true, false, Paper::Letter},
        Case{40, 2, true, true, Paper::A4}, Case{60, 5, true, false, Paper::A4},
        Case{60, 2, false, false, Paper::Letter}, Case{300, 8, true, false, Paper::A4},
        Case{300, 3, true, true, Paper::Letter}, Case{40, 3, false, false, Paper::A4, true},
        Case{40, 4, true, false, Paper::Letter, true}, Case{40, 2, true, true, Paper::A4, true},
        Case{1, 0, true, false, Paper::A4, true}, Case{300, 3, true, false, Paper::A4, true}));

TEST(YardSheetOf, LargeTypeIsAThirdLargerOnPaperLaidAcross) {
  Wish wish;
  wish.hives = 12;
  const MadeYard y = fixture::makeYard(wish);
  const YardSheet plain = laidOut(y, Paper::A4), large = laidOut(y, Paper::A4, true);
  EXPECT_NEAR(large.document.pages.front().widthMm, 297, 1e-9);
  EXPECT_NEAR(large.document.pages.front().heightMm, 210, 1e-9);
  const auto biggest = [](const YardSheet& s) {
    double size = 0;
    for (const Shape& shape : s.document.pages.front().shapes) {
      if (const auto* t = std::get_if<TextShape>(&shape)) size = std::max(size, t->sizeMm);
    }
    return size;
  };
  EXPECT_NEAR(biggest(large) / biggest(plain), kLargeType, 1e-9);
  EXPECT_EQ(large.lines.size(), plain.lines.size());
}

TEST(YardSheetOf, DeadHivesComeFirstSuspectsLast) {
  Wish wish;
  wish.dead = 2;
  const MadeYard y = fixture::makeYard(wish);
  const YardSheet sheet = laidOut(y, Paper::A4);
  const std::set<base::HiveId> first{sheet.lines[0].hive, sheet.lines[1].hive};
  EXPECT_EQ(first, std::set<base::HiveId>(y.dead.begin(), y.dead.end()));
  EXPECT_EQ(sheet.lines.back().hive, y.sick.front());
  EXPECT_TRUE(hasText(sheet.document.pages.front(), "close_entrance"));
}

TEST(YardSheetOf, TwoColoniesHaveTwoLinesOfOneHive) {
  const MadeYard y = fixture::makeYard({});
  const YardSheet sheet = laidOut(y, Paper::A4);
  std::vector<base::ColonyId> colonies;
  for (const SheetLineInfo& line : sheet.lines) {
    if (line.hive == base::HiveId("TR-10")) colonies.push_back(line.colony.value());
  }
  const std::vector<base::ColonyId> both{base::ColonyId("TR-10"), base::ColonyId("TR-10 up")};
  EXPECT_EQ(colonies, both);
}

TEST(YardSheetOf, ExpectsOnlyFromAFreshLook) {
  const MadeYard y = fixture::makeYard({});
  const YardSheet sheet = laidOut(y, Paper::A4);
  int fresh = 0, stale = 0;
  for (const SheetLineInfo& line : sheet.lines) {
    if (!line.colony) continue;
    const auto hive = apiary::hiveOn(y.season, line.hive, y.date);
    const int days = y.date - hive.colony(*line.colony)->lastInspection->date;
    EXPECT_EQ(line.expected.empty(), days > 10);
    (days > 10 ? stale : fresh) += 1;
  }
  EXPECT_GT(fresh, 0);
  EXPECT_GT(stale, 0);
}

TEST(YardSheetOf, BoostCardsStandOnTheirHivesPage) {
  Wish wish;
  wish.boosts = 5;
  const MadeYard y = fixture::makeYard(wish);
  ASSERT_EQ(y.plan.chosen.size(), 5U);
  const YardSheet sheet = laidOut(y, Paper::A4);
  int cards = 0;
  for (const SheetPage& page : sheet.document.pages) {
    std::set<std::string> asked, given;
    for (const Shape& shape : page.shapes) {
      const auto* t = std::get_if<TextShape>(&shape);
      if (!t) continue;
      // the test's words: "with_card stack TR-.. A" at the receiver, "pair A TR-.." on the card
      if (t->bold && t->text.starts_with("pair ")) given.insert(t->text.substr(5, 1));
      if (t->bold && t->text.starts_with("with_card stack")) asked.insert("row");
    }
    cards += static_cast<int>(given.size());
    EXPECT_EQ(asked.empty(), given.empty());
  }
  EXPECT_EQ(cards, 5);
  EXPECT_GE(pagesWith(sheet.document, "no_eggs"), 1);
  EXPECT_GE(pagesWith(sheet.document, "plan_b"), 1);
}

TEST(YardSheetOf, KeepsThePrintedBoostsToBeTickedAsDone) {
  Wish wish;
  wish.boosts = 5;
  const MadeYard y = fixture::makeYard(wish);
  const PlainMeasurer measurer;
  const auto printed = layoutYardSheet(y.input(Paper::A4, measurer, plainWord)).printed;
  EXPECT_EQ(printed.plan.plan, base::PlanId{"26-0148"});
  EXPECT_TRUE(printed.plan.acceptedAt.empty());
  EXPECT_TRUE(printed.tasks.empty());
  ASSERT_EQ(printed.rows.size(), 5U);
  for (const auto& row : printed.rows) {
    EXPECT_EQ(row.plan, printed.plan.plan);
    const auto* option = y.plan.option(row.option);
    ASSERT_NE(option, nullptr) << row.option;
    EXPECT_EQ(row.donorHive, option->donorHive);
  }
  YardSheetInput without = y.input(Paper::A4, measurer, plainWord);
  without.plan = nullptr;
  EXPECT_TRUE(layoutYardSheet(without).printed.rows.empty());
}

TEST(YardSheetOf, ThreeBlankLinesAndALooseLoadList) {
  Wish wish;
  wish.boosts = 2;
  MadeYard y = fixture::makeYard(wish);
  apiary::GearCount gear;
  gear.item = "excluder";
  gear.place = "truck";
  gear.date = fixture::day("2026-04-01");
  gear.count = 1;
  y.season.apply({fixture::added(gear)});
  const YardSheet sheet = laidOut(y, Paper::A4);
  int blanks = 0, origins = 0;
  for (const SheetPage& page : sheet.document.pages) {
    for (const Shape& shape : page.shapes) {
      const auto* t = std::get_if<TextShape>(&shape);
      blanks += t && t->text == "hive" ? 1 : 0;
      for (const char* origin : {"swarm", "bought", "split", "moved"}) {
        origins += t && t->text == origin ? 1 : 0;
      }
    }
  }
  EXPECT_EQ(blanks, 3);
  EXPECT_EQ(origins, 3 * 4);  // where it came from, to circle
  const SheetPage& last = sheet.document.pages.back();
  EXPECT_TRUE(hasText(last, "excluder"));
  EXPECT_TRUE(hasText(last, "never_"));    // paper
  EXPECT_TRUE(hasText(last, "number 1"));  // one excluder counted, one missing
  EXPECT_TRUE(hasText(last, "number 2"));
  EXPECT_EQ(pagesWith(sheet.document, "allergy"), 1);
  EXPECT_FALSE(hasText(last, "seams"));
}

TEST(YardSheetOf, HeadWarnsOfStingsLoadsSmokeAndFoulBrood) {
  MadeYard y = fixture::makeYard({});
  const YardSheet calm = laidOut(y, Paper::A4);
  const SheetPage& head = calm.document.pages.front();
  for (const char* caution : {"stings", "lift", "smoker", "health"}) {
    EXPECT_TRUE(hasText(head, caution)) << caution;
  }
  EXPECT_FALSE(hasText(head, "foul_brood"));
  apiary::Inspection seen;
  seen.record = base::RecordId("afb");
  seen.hive = base::HiveId("TR-04");
  seen.date = fixture::day("2026-04-28");
  seen.disease = apiary::Disease::SuspectAfb;
  y.season.apply({fixture::added(seen)});
  const YardSheet warned = laidOut(y, Paper::A4);
  EXPECT_TRUE(hasText(warned.document.pages.front(), "foul_brood"));
  EXPECT_TRUE(hasText(warned.document.pages.front(), "suspect") ||
              pagesWith(warned.document, "suspect") > 0);
}

TEST(YardSheetOf, SaysWhenThereIsNoForecast) {
  MadeYard y = fixture::makeYard({});
  EXPECT_TRUE(hasText(laidOut(y, Paper::A4).document.pages.front(), "range"));
  y.date = fixture::day("2026-05-09");
  const YardSheet sheet = laidOut(y, Paper::A4);
  EXPECT_TRUE(hasText(sheet.document.pages.front(), "none"));
  EXPECT_FALSE(hasText(sheet.document.pages.front(), "range"));
}

TEST(YardSheetOf, PoundsAndFahrenheitWhereAsked) {
  const MadeYard y = fixture::makeYard({});
  YardSheetInput in = y.input(Paper::Letter, kMeasurer, plainWord);
  in.usUnits = true;
  const YardSheet sheet = layoutJudgedSheet(in, y.judgements);
  EXPECT_TRUE(hasText(sheet.document.pages.front(), "pounds 88"));  // 40 kg
  EXPECT_TRUE(hasText(sheet.document.pages.front(), "f 63"));       // 17 degrees Celsius
  EXPECT_EQ(pagesWith(sheet.document, "kilograms"), 0);
}

TEST(YardSheetOf, WhatHasNoRoomIsPrintedInFullAtTheEnd) {
  Wish wish;
  wish.hives = 1;
  wish.dead = 0;
  wish.longText = true;
  const MadeYard y = fixture::makeYard(wish);
  const YardSheet sheet = laidOut(y, Paper::A4);
  std::string all;
  bool after = false;
  for (const SheetPage& page : sheet.document.pages) {
    for (const Shape& shape : page.shapes) {
      const auto* t = std::get_if<TextShape>(&shape);
      if (!t) continue;
      if (t->text == "heading") after = true;
      if (after && t->sizeMm == 2.6) all += t->text + " ";
    }
  }
  const std::string note = fixture::longNote(false);
  std::size_t found = 0;
  for (std::size_t at = 0; (at = all.find("\u00C5ngstr", at)) != std::string::npos; ++at) ++found;
  std::size_t wanted = 0;
  for (std::size_t at = 0; (at = note.find("\u00C5ngstr", at)) != std::string::npos; ++at) ++wanted;
  EXPECT_EQ(found, 3 * wanted);  // access, notes on the yard, note on the hive
}

TEST(YardSheetOf, TheSameInputGivesTheSameSheet) {
  Wish wish;
  wish.boosts = 3;
  const MadeYard y = fixture::makeYard(wish);
  const YardSheet a = laidOut(y, Paper::A4), b = laidOut(y, Paper::A4);
  ASSERT_EQ(a.document.pages.size(), b.document.pages.size());
  for (std::size_t i = 0; i < a.document.pages.size(); ++i) {
    EXPECT_EQ(fixture::textsOf(a.document.pages[i]), fixture::textsOf(b.document.pages[i]));
  }
}

TEST(YardSheetOf, JudgesForItselfWithoutAPlan) {
  const MadeYard y = fixture::makeYard({});
  const YardSheet sheet = layoutYardSheet(y.input(Paper::A4, kMeasurer, plainWord));
  EXPECT_EQ(sheet.lines.size(), laidOut(y, Paper::A4).lines.size());
  YardSheetInput bad = y.input(Paper::A4, kMeasurer, plainWord);
  bad.text = nullptr;
  EXPECT_THROW(layoutYardSheet(bad), std::logic_error);
}

}  // namespace
}  // namespace outyard::sheet
