// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/comb_state.h"
#include "core/apiary/state.h"
#include "tests/core/exchange/exchange_support.h"

namespace outyard::exchange::testing {
namespace {

TEST(SampleCombs, EveryBoxHoldsAsManyAsItsRowSays) {
  const auto season = imported(folder(std::filesystem::path(OUTYARD_SOURCE_DIR) / "sample"));
  ASSERT_FALSE(season.table<apiary::FrameMove>().empty());
  const auto on = day("2026-05-02");
  const auto combs = apiary::combsOn(season, on);
  int boxes = 0;
  for (const auto& [id, hive] : combs.hives) {
    const auto state = apiary::hiveOn(season, id, on);
    ASSERT_EQ(state.boxes.size(), hive.boxes.size()) << id.str();
    for (std::size_t b = 0; b < hive.boxes.size(); ++b) {
      if (!hive.boxes[b].countRecorded) continue;
      ++boxes;
      EXPECT_EQ(state.boxes[b].frames, static_cast<int>(hive.boxes[b].frames.size()))
          << id.str() << " box " << b + 1;
    }
  }
  EXPECT_GT(boxes, 100);
}

}  // namespace
}  // namespace outyard::exchange::testing
