// SPDX-License-Identifier: GPL-3.0-or-later
// A look comb by comb without any quick facts is the latest look everywhere.
#include <gtest/gtest.h>

#include "core/session/commands.h"
#include "core/sheet/marks.h"
#include "core/sheet/yard_sheet.h"
#include "tests/core/sheet/sheet_fixture.h"
#include "tests/ui/support/desk.h"
#include "ui/adapt/words.h"
#include "ui/widgets/hive_facts.h"

namespace outyard::hive {
namespace {

using tests::Desk;

const base::HiveId kHive{"TR-01"};

/// An old look by seams, and one comb by comb, with nothing else, ten days later.
std::vector<apiary::CombSide> combs(const apiary::Season& season) {
  std::vector<apiary::CombSide> sides;
  const auto state = apiary::hiveOn(season, kHive, tests::day("2026-04-24"));
  for (int slot = 1; slot <= state.boxes.at(0).frames; ++slot) {
    for (const auto side : {apiary::FrameSide::A, apiary::FrameSide::B}) {
      apiary::CombSide s;
      s.hive = kHive;
      s.date = tests::day("2026-04-24");
      s.slot = slot;
      s.side = side;
      const bool nest = slot >= 3 && slot <= 7;
      s.beesPct = nest ? 90 : 0;
      s.eggsPct = nest ? 10 : 0;
      s.openPct = nest ? 20 : 0;
      s.sealedPct = nest ? 30 : 0;
      s.emptyPct = nest ? 40 : 100;
      sides.push_back(s);
    }
  }
  return sides;
}

struct CombLook : testing::Test {
  CombLook() : desk(tests::smallSeason()) {
    apiary::Inspection old;
    old.hive = kHive;
    old.date = tests::day("2026-04-14");
    old.seams = 9;
    old.eggsSeen = false;
    EXPECT_TRUE(desk.hub.execute(session::recordInspection(old, {}, {})));
    EXPECT_TRUE(desk.hub.execute(session::recordCombs(kHive, std::nullopt, tests::day("2026-04-24"),
                                                      combs(desk.hub.season()))));
  }
  Desk desk;
};

TEST_F(CombLook, IsTheLatestInTheList) {
  const auto facts = widgets::hiveFacts(desk.hub, *desk.hub.hive(kHive));
  ASSERT_EQ(facts.colonies.size(), 1U);
  const auto& colony = facts.colonies[0];
  EXPECT_TRUE(colony.lastLook.startsWith(QStringLiteral("24 Apr 2026")))
      << colony.lastLook.toStdString();
  EXPECT_NE(colony.seams, QStringLiteral("9"));
  EXPECT_FALSE(colony.seams.isEmpty());
  EXPECT_TRUE(colony.brood.contains(QStringLiteral("5 combs"))) << colony.brood.toStdString();
}

TEST_F(CombLook, IsTheLatestOnTheMap) {
  const auto& judgements = desk.hub.judgements(base::YardId{"TR"});
  const auto mark = sheet::markInput(desk.hub.season(), *desk.hub.hive(kHive), judgements,
                                     tests::day("2026-04-25"));
  ASSERT_TRUE(mark.seams);
  EXPECT_GT(*mark.seams, 2);
  EXPECT_LT(*mark.seams, 8);  // five combs at 90 per cent, not the nine seams of before
  EXPECT_NEAR(mark.clusterAt, 4.0 / 9, 0.02);
}

TEST_F(CombLook, IsTheLatestOnTheSheet) {
  const sheet::fixture::PlainMeasurer measurer;
  sheet::YardSheetInput input;
  input.season = &desk.hub.season();
  input.yard = base::YardId{"TR"};
  input.date = tests::day("2026-04-25");
  input.sheetNumber = "26-0001";
  input.word = adapt::wordsUtf8;
  input.text = &measurer;
  std::string all;
  for (const auto& page : sheet::layoutYardSheet(input).document.pages) {
    for (const auto& shape : page.shapes) {
      if (const auto* t = std::get_if<sheet::TextShape>(&shape)) all += t->text + "\n";
    }
  }
  EXPECT_NE(all.find("24 Apr"), std::string::npos);
  EXPECT_EQ(all.find("14 Apr"), std::string::npos);
  EXPECT_NE(all.find("brood 5"), std::string::npos) << all;
  // The old look found none.
  EXPECT_EQ(all.find("no eggs"), std::string::npos);
  EXPECT_NE(all.find("eggs"), std::string::npos);
}

TEST_F(CombLook, IsTheLatestInTheFold) {
  const auto state = apiary::hiveOn(desk.hub.season(), kHive, tests::day("2026-04-25"));
  ASSERT_TRUE(state.colonies.at(0).lastInspection);
  EXPECT_EQ(state.colonies[0].lastInspection->date, tests::day("2026-04-24"));
  EXPECT_FALSE(state.colonies[0].lastInspection->seams);
}

}  // namespace
}  // namespace outyard::hive
