// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/base/random.h"
#include "tests/core/session/frames_fixture.h"
#include "tests/core/session/frames_hands.h"

// Whatever is moved by hand, in whatever order: nothing is made and nothing is lost.
namespace outyard::session {
namespace {

struct FramesPropertyTest : FramesTest, testing::WithParamInterface<int> {};

TEST_P(FramesPropertyTest, MovesConserveCombsCellsBeesBroodAndStores) {
  const auto seed = static_cast<std::uint64_t>(GetParam());
  SCOPED_TRACE("seed " + std::to_string(seed));
  Hands hands(*session, seed);
  hands.lookAtAll(d.plusDays(-5));
  const Date last = d.plusDays(30);
  const Stock before = stockOn(season(), d);
  // Sides without a row are unknown, all the others were seen.
  ASSERT_GT(before.knownSides, 100);
  const auto rows = tests::allRows(season());
  const auto combs = apiary::combsOn(season(), last);
  int steps = 0;
  Date day = d;
  for (int i = 0; i < 60; ++i) {
    day = day.plusDays(hands.below(4) == 0 ? 1 : 0);
    const auto command = hands.anyMove(day);
    if (!session->check(*command)) continue;
    ASSERT_TRUE(session->execute(*command).ok());
    ++steps;
    expectSame(stockOn(season(), day), before);
    if (HasFailure()) FAIL() << "after step " << steps;
  }
  EXPECT_GT(steps, 15);
  const auto faults = apiary::checkSeason(season());
  EXPECT_TRUE(faults.empty()) << (faults.empty() ? "" : faults[0].what.key);
  // The number of combs that the stacks say is the one that stands there.
  const auto now = apiary::combsOn(season(), day);
  for (const auto& [id, hive] : now.hives) {
    const auto state = apiary::hiveOn(season(), id, day);
    ASSERT_EQ(state.boxes.size(), hive.boxes.size()) << id.str();
    for (std::size_t b = 0; b < hive.boxes.size(); ++b) {
      EXPECT_EQ(state.boxes[b].frameType, hive.boxes[b].frameType) << id.str();
      if (hive.boxes[b].countRecorded) {
        EXPECT_EQ(state.boxes[b].frames, static_cast<int>(hive.boxes[b].frames.size()));
      }
    }
    // Folded alone it is the same hive.
    EXPECT_EQ(apiary::combsOfHive(season(), id, day), hive) << id.str();
  }
  const auto done = tests::allRows(season());
  for (int i = 0; i < steps; ++i) ASSERT_TRUE(session->undo().ok());
  EXPECT_TRUE(tests::allRows(season()) == rows);
  EXPECT_TRUE(apiary::combsOn(season(), last).hives == combs.hives);
  EXPECT_TRUE(apiary::combsOn(season(), last).heap == combs.heap);
  for (int i = 0; i < steps; ++i) ASSERT_TRUE(session->redo().ok());
  EXPECT_TRUE(tests::allRows(season()) == done);
  EXPECT_TRUE(apiary::combsOn(season(), day).hives == now.hives);
}

INSTANTIATE_TEST_SUITE_P(Seeds, FramesPropertyTest, testing::Range(1, 13));

}  // namespace
}  // namespace outyard::session
