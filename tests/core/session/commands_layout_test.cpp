// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/session/commands.h"
#include "tests/support/season_builder.h"

namespace outyard::session {
namespace {

using apiary::Feature;
using apiary::Stand;

Stand pallet(const char* name, const char* yard, double x, double y) {
  Stand stand;
  stand.stand = name;
  stand.yard = YardId{yard};
  stand.xM = x;
  stand.yM = y;
  stand.kind = apiary::StandKind::PalletOfTwo;
  return stand;
}

class LayoutTest : public testing::Test {
 protected:
  LayoutTest() {
    auto opened =
        Session::open(std::make_unique<tests::MemoryStore>(tests::smallSeason()), m_ids, m_clock);
    m_session = std::move(opened.value());
  }
  bool run(const CommandPtr& command) { return m_session->execute(*command).ok(); }
  [[nodiscard]] const apiary::Season& season() const { return m_session->season(); }
  [[nodiscard]] const apiary::Hive& hive(const char* id) const {
    return *season().hive(HiveId{id});
  }
  [[nodiscard]] std::vector<std::string> standsOf(const char* yard) const {
    std::vector<std::string> names;
    for (const auto& [key, stand] : season().table<Stand>()) {
      if (stand.yard == YardId{yard}) names.push_back(stand.stand);
    }
    return names;
  }

  base::SeededIds m_ids{3};
  base::FixedClock m_clock{tests::day("2026-04-25"), "2026-04-25T07:00:00Z"};
  std::unique_ptr<Session> m_session;
};

TEST_F(LayoutTest, HivesGoAndTurnWithTheirStand) {
  ASSERT_TRUE(run(addStand(pallet("P1", "TR", 5, 5))));
  Spot left, right;
  left.hive = HiveId{"TR-01"};
  left.xM = 4.7;
  left.yM = 5;
  left.entranceDeg = 180;
  left.stand = "P1";
  right = left;
  right.hive = HiveId{"TR-02"};
  right.xM = 5.3;
  ASSERT_TRUE(run(arrange({left, right})));
  const auto before = tests::allRows(season());
  const auto other = hive("TR-03");
  Stand turned = pallet("P1", "TR", 8, 4);
  turned.angleDeg = 90;
  ASSERT_TRUE(run(arrangeStand(turned)));
  // A quarter turn clockwise seen from above: what stood to the left (west) stands behind (north).
  EXPECT_NEAR(hive("TR-01").xM.value(), 8, 1e-9);
  EXPECT_NEAR(hive("TR-01").yM.value(), 4.3, 1e-9);
  EXPECT_NEAR(hive("TR-02").yM.value(), 3.7, 1e-9);
  EXPECT_NEAR(hive("TR-01").entranceDeg.value(), 270, 1e-9);
  EXPECT_EQ(hive("TR-01").stand, "P1");
  EXPECT_EQ(hive("TR-03"), other);
  const auto places = season().journal<apiary::Place>(HiveId{"TR-01"});
  EXPECT_EQ(places.back()->how, apiary::PlaceHow::Drawn) << "nobody carried it";
  ASSERT_TRUE(m_session->undo().ok());
  EXPECT_EQ(tests::allRows(season()), before) << "one step";
}

TEST_F(LayoutTest, AFullTurnInStepsBringsHivesBack) {
  ASSERT_TRUE(run(addStand(pallet("P1", "TR", 5, 5))));
  Spot spot;
  spot.hive = HiveId{"TR-01"};
  spot.xM = 4.7;
  spot.yM = 5;
  spot.stand = "P1";
  ASSERT_TRUE(run(arrange({spot})));
  for (int step = 1; step <= 24; ++step) {
    Stand stand = pallet("P1", "TR", 5, 5);
    stand.angleDeg = (15 * step) % 360;
    ASSERT_TRUE(run(arrangeStand(stand)));
  }
  EXPECT_NEAR(hive("TR-01").xM.value(), 4.7, 0.01);
  EXPECT_NEAR(hive("TR-01").yM.value(), 5, 0.01);
}

TEST_F(LayoutTest, AnUnknownStandIsRefused) {
  EXPECT_FALSE(arrangeStand(pallet("nowhere", "TR", 1, 1))->check(season()).ok());
}

TEST_F(LayoutTest, ALayoutIsCopiedInOneStep) {
  ASSERT_TRUE(run(addStand(pallet("S1", "TR", 5, 5))));
  ASSERT_TRUE(run(addStand(pallet("S2", "TR", 7, 5))));
  ASSERT_TRUE(run(addStand(pallet("S1", "MB", 1, 1))));
  Feature fence;
  fence.feature = "TR-F1";
  fence.yard = YardId{"TR"};
  fence.kind = apiary::FeatureKind::Fence;
  fence.x2M = 10;
  fence.y2M = 0;
  ASSERT_TRUE(run(addFeature(fence)));
  const auto before = tests::allRows(season());
  LayoutCopy copy;
  copy.from = YardId{"TR"};
  copy.to = YardId{"MB"};
  ASSERT_TRUE(run(copyLayout(copy)));
  EXPECT_EQ(standsOf("MB"), (std::vector<std::string>{"S1", "S2", "S3"})) << "S1 was taken";
  const auto* copied = season().find<Feature>("MB-F1");
  ASSERT_TRUE(copied);
  EXPECT_EQ(copied->x2M, 10);
  EXPECT_EQ(copied->yard, YardId{"MB"});
  EXPECT_EQ(hive("TR-01").yard, YardId{"TR"}) << "hives stay";
  ASSERT_TRUE(m_session->undo().ok());
  EXPECT_EQ(tests::allRows(season()), before);
}

TEST_F(LayoutTest, ANewYardTakesTheSizeOfTheOld) {
  ASSERT_TRUE(run(addStand(pallet("S1", "TR", 5, 5))));
  LayoutCopy copy;
  copy.from = YardId{"TR"};
  copy.to = YardId{"NW"};
  copy.newYard.emplace();
  copy.newYard->name = "New wood";
  copy.features = false;
  ASSERT_TRUE(run(copyLayout(copy)));
  const auto* yard = season().yard(YardId{"NW"});
  ASSERT_TRUE(yard);
  EXPECT_EQ(yard->widthM, season().yard(YardId{"TR"})->widthM);
  EXPECT_EQ(yard->name, "New wood");
  EXPECT_FALSE(yard->latitude) << "it lies elsewhere";
  EXPECT_EQ(standsOf("NW"), std::vector<std::string>{"S1"});
  ASSERT_TRUE(m_session->undo().ok());
  EXPECT_FALSE(season().yard(YardId{"NW"}));
}

TEST_F(LayoutTest, NothingToCopyAndTheSameYardAreRefused) {
  LayoutCopy copy;
  copy.from = copy.to = YardId{"TR"};
  EXPECT_FALSE(copyLayout(copy)->check(season()).ok());
  copy.to = YardId{"MB"};
  EXPECT_FALSE(copyLayout(copy)->check(season()).ok()) << "no stand, no feature";
  copy.newYard.emplace();
  EXPECT_FALSE(copyLayout(copy)->check(season()).ok()) << "MB is there already";
}

}  // namespace
}  // namespace outyard::session
