// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/mark_layout.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/base/random.h"

namespace outyard::yards {
namespace {

TEST(MarkLayoutTest, MarksWithRoomStayWhereTheyAre) {
  const auto layout = layoutMarks({{0, 0}, {100, 0}, {0, 100}}, {40, 40}, 30);
  for (const auto& nudge : layout.nudge) EXPECT_EQ(nudge, QPointF());
  EXPECT_TRUE(layout.groups.empty());
}

TEST(MarkLayoutTest, NeighboursArePushedApart) {
  const std::vector<QPointF> places{{0, 0}, {30, 0}};
  const auto layout = layoutMarks(places, {40, 40}, 30);
  EXPECT_TRUE(layout.groups.empty());
  const double apart = places[1].x() + layout.nudge[1].x() - layout.nudge[0].x();
  EXPECT_GE(apart, 39);
}

TEST(MarkLayoutTest, TheSamePlaceSplitsOrGroupsByTheRoomAllowed) {
  EXPECT_TRUE(layoutMarks({{5, 5}, {5, 5}}, {40, 40}, 30).groups.empty());
  const auto tight = layoutMarks({{5, 5}, {5, 5}, {5, 5}}, {40, 40}, 2);
  ASSERT_EQ(tight.groups.size(), 1U);
  EXPECT_EQ(tight.groups.front().size(), 3U);
}

TEST(MarkLayoutTest, NothingIsNoTrouble) {
  EXPECT_TRUE(layoutMarks({}, {40, 40}, 30).groups.empty());
}

TEST(MarkLayoutTest, RandomYardsNeverNudgeTooFarAndNeverHideAnOverlap) {
  constexpr std::uint64_t kSeed = 20260425;
  base::Random random(kSeed);
  for (int yard = 0; yard < 50; ++yard) {
    std::vector<QPointF> places;
    for (int i = 0; i < 30; ++i)
      places.emplace_back(random.uniform() * 400, random.uniform() * 300);
    const QSizeF cell(46, 45);
    const auto layout = layoutMarks(places, cell, 34);
    std::vector<int> groupOf(places.size(), -1);
    for (std::size_t g = 0; g < layout.groups.size(); ++g) {
      for (const int member : layout.groups[g]) {
        groupOf[static_cast<std::size_t>(member)] = static_cast<int>(g);
      }
    }
    for (std::size_t i = 0; i < places.size(); ++i) {
      EXPECT_LE(std::hypot(layout.nudge[i].x(), layout.nudge[i].y()), 34.001) << "seed " << kSeed;
      for (std::size_t k = i + 1; k < places.size(); ++k) {
        const QPointF d = places[k] + layout.nudge[k] - places[i] - layout.nudge[i];
        const bool covers =
            cell.width() - std::abs(d.x()) > 3 && cell.height() - std::abs(d.y()) > 3;
        if (!covers) continue;
        EXPECT_EQ(groupOf[i], groupOf[k]) << "seed " << kSeed << " yard " << yard;
        EXPECT_GE(groupOf[i], 0) << "seed " << kSeed << " yard " << yard;
      }
    }
  }
}

}  // namespace
}  // namespace outyard::yards
