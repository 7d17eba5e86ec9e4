// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/greedy.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/ui/pairs/grown_yard.h"
#include "tests/ui/support/desk.h"

namespace outyard::pairs {
namespace {

// By that rule nobody carries bees from yard to yard, and every yard begins with its strongest.
TEST(Greedy, TheRuleOfThumbPairsNobodyAcrossYards) {
  const auto season = tests::sampleSeason();
  planning::BoostRequest request;
  request.date = tests::day(tests::kYardDay);
  for (const char* yard : {"AB", "SO"}) request.yards.emplace_back(yard);
  base::Progress quiet;
  const auto both = planning::makeForecastProblem(season, request, 2, quiet);
  ASSERT_TRUE(both);
  const auto thumb = weakestWithStrongest(*both);
  ASSERT_TRUE(thumb);
  int pairs = 0;
  for (const auto& id : thumb->chosen) {
    const auto at = std::find_if(both->options.begin(), both->options.end(),
                                 [&](const auto& o) { return o.id == id; });
    if (planning::isVisit(*at) || !at->donorColony) continue;
    ++pairs;
    EXPECT_EQ(both->yardOf.at(at->colony.str()), both->yardOf.at(at->donorColony->str())) << id;
  }
  EXPECT_GE(pairs, 4);
}

}  // namespace
}  // namespace outyard::pairs
