// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/usable_purpose.h"

#include <gtest/gtest.h>

#include <string>

#include "core/planning/boost_figures.h"
#include "core/strength/expected_look.h"

namespace outyard::planning {
namespace {

TEST(UsablePurpose, TheFirstIsWhatIsShipped) {
  const BoostFigures shipped;
  const UsablePurpose* p = purposeOf(shipped.usableSeams, shipped.usableBroodCombs);
  ASSERT_NE(p, nullptr);
  EXPECT_EQ(p, &usablePurposes().front());
  EXPECT_EQ(purposeOf(3, 2), nullptr);
}

// Grade A of the US standards, restated by htfbw.com: 600 square inches of brood in an orchard
// colony and 1,000 in a field colony, at 23.6 cells a square inch.
TEST(UsablePurpose, HireGradesHoldTheBroodOfTheStandard) {
  const auto deep = *strength::shippedFigures("langstroth_deep");
  for (const UsablePurpose& p : usablePurposes()) {
    const double cells = strength::cellsOfCombs(p.broodCombs, deep);
    const double inches = p.key == "orchard" ? 600 : p.key == "field" ? 1000 : 0;
    if (inches > 0) {
      EXPECT_NEAR(cells, inches * 23.6, 0.03 * inches * 23.6) << p.key;
    }
  }
}

TEST(UsablePurpose, EachIsWithinWhatAFigureMayBeAndUnlikeTheOthers) {
  const auto limits = [](std::string_view name) {
    for (const auto& f : boostFigureTable()) {
      if (f.name == name) return f.max;
    }
    return 0.0;
  };
  for (const UsablePurpose& p : usablePurposes()) {
    EXPECT_LE(p.seams, limits("boost.usable_seams")) << p.key;
    EXPECT_LE(p.broodCombs, limits("boost.usable_brood_combs")) << p.key;
    EXPECT_EQ(purposeOf(p.seams, p.broodCombs), &p) << p.key;
    EXPECT_FALSE(p.source.empty());
  }
}

}  // namespace
}  // namespace outyard::planning
