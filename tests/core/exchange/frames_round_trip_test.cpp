// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/apiary/comb_state.h"
#include "core/session/session.h"
#include "tests/core/exchange/exchange_support.h"
#include "tests/core/session/frames_hands.h"
#include "tests/support/season_builder.h"

namespace outyard::exchange::testing {
namespace {

/// After any moves by hand the tables say all of it: read into an empty season, every comb stands
/// where it stood and holds what it held, on every day.
class FramesRoundTrip : public ::testing::TestWithParam<int> {};

TEST_P(FramesRoundTrip, EveryCombComesBackFromTheTables) {
  const auto seed = static_cast<std::uint64_t>(GetParam());
  SCOPED_TRACE("seed " + std::to_string(seed));
  const base::Date start = tests::day("2026-04-25");
  base::SeededIds ids(seed + 1000);  // the season has ids of its own
  const base::FixedClock clock(tests::day("2026-09-30"), "2026-09-30T18:00:00Z");
  auto opened = session::Session::open(std::make_unique<tests::MemoryStore>(tests::smallSeason()),
                                       ids, clock);
  ASSERT_TRUE(opened.ok());
  auto& open = *opened.value();
  session::Hands hands(open, seed);
  hands.lookAtAll(start.plusDays(-5));
  int steps = 0;
  for (int i = 0; i < 60; ++i) {
    const auto command = hands.anyMove(start.plusDays(i / 4));
    if (open.check(*command) && open.execute(*command).ok()) ++steps;
  }
  EXPECT_GT(steps, 15);
  const auto back = imported(exported(open.season()));
  for (const auto table : {apiary::TableId::FrameMoves, apiary::TableId::Boxes,
                           apiary::TableId::Frames, apiary::TableId::Events}) {
    EXPECT_TRUE(back.rows(table) == open.season().rows(table)) << apiary::tableSpec(table).name;
  }
  for (int i = 0; i <= 15; i += 5) {
    const auto then = apiary::combsOn(open.season(), start.plusDays(i));
    const auto now = apiary::combsOn(back, start.plusDays(i));
    EXPECT_TRUE(now.hives == then.hives) << i;
    EXPECT_TRUE(now.heap == then.heap) << i;
  }
}

INSTANTIATE_TEST_SUITE_P(Seeds, FramesRoundTrip, ::testing::Range(1, 6));

}  // namespace
}  // namespace outyard::exchange::testing
