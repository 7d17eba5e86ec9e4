// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/mark_layout.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/base/random.h"

namespace outyard::yards {
namespace {

std::vector<QSizeF> squares(std::size_t count) {
  return std::vector<QSizeF>(count, QSizeF(40, 40));
}

TEST(MarkLayoutTest, MarksWithRoomStayWhereTheyAre) {
  const auto layout = layoutMarks({{0, 0}, {100, 0}, {0, 100}}, squares(3), 30);
  for (const auto& nudge : layout.nudge) EXPECT_EQ(nudge, QPointF());
  EXPECT_TRUE(layout.groups.empty());
}

TEST(MarkLayoutTest, NeighboursArePushedApart) {
  const std::vector<QPointF> places{{0, 0}, {30, 0}};
  const auto layout = layoutMarks(places, squares(2), 30);
  EXPECT_TRUE(layout.groups.empty());
  const double apart = places[1].x() + layout.nudge[1].x() - layout.nudge[0].x();
  EXPECT_GE(apart, 39);
}

TEST(MarkLayoutTest, APalletStaysAPallet) {
  const std::vector<QPointF> places{{0, 0}, {20, 0}, {0, 20}, {20, 20}};
  const auto layout = layoutMarks(places, squares(4), 30);
  EXPECT_TRUE(layout.groups.empty());
  // Spread by one factor (40 / 20) about the middle at 10, 10.
  const QPointF corners[] = {{-10, -10}, {30, -10}, {-10, 30}, {30, 30}};
  for (std::size_t i = 0; i < 4; ++i) {
    const QPointF at = places[i] + layout.nudge[i];
    EXPECT_NEAR(at.x(), corners[i].x(), 1e-9);
    EXPECT_NEAR(at.y(), corners[i].y(), 1e-9);
  }
}

TEST(MarkLayoutTest, TheSamePlaceOrTooTightAPlaceGroups) {
  const auto same = layoutMarks({{5, 5}, {5, 5}, {5, 5}}, squares(3), 30);
  ASSERT_EQ(same.groups.size(), 1U);
  EXPECT_EQ(same.groups.front().size(), 3U);
  const auto tight = layoutMarks({{0, 0}, {4, 0}}, squares(2), 10);
  ASSERT_EQ(tight.groups.size(), 1U);
  EXPECT_EQ(tight.nudge[0], QPointF());
}

TEST(MarkLayoutTest, ALongTightRowMakesSeveralGroups) {
  std::vector<QPointF> row;
  for (int i = 0; i < 12; ++i) row.emplace_back(16 * i, 0);
  const auto layout = layoutMarks(row, squares(row.size()), 30);
  EXPECT_GT(layout.groups.size(), 2U);
}

TEST(MarkLayoutTest, NothingIsNoTrouble) {
  EXPECT_TRUE(layoutMarks({}, {}, 30).groups.empty());
}

TEST(MarkLayoutTest, RandomYardsNeverNudgeTooFarAndNeverHideAnOverlap) {
  constexpr std::uint64_t kSeed = 20260425;
  base::Random random(kSeed);
  for (int yard = 0; yard < 50; ++yard) {
    std::vector<QPointF> places;
    for (int i = 0; i < 30; ++i)
      places.emplace_back(random.uniform() * 400, random.uniform() * 300);
    const QSizeF cell(46, 45);
    const auto layout = layoutMarks(places, std::vector<QSizeF>(places.size(), cell), 34);
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
        EXPECT_TRUE(groupOf[i] >= 0 || groupOf[k] >= 0)
            << "two marks drawn over each other, seed " << kSeed << " yard " << yard;
      }
    }
  }
}

}  // namespace
}  // namespace outyard::yards
