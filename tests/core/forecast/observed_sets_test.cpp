// SPDX-License-Identifier: GPL-3.0-or-later
// Counted colonies against their forecasts: which, and how, stands in
// tests/calibration/observed_checks.cpp; sources and licences in tests/data/README.md.
#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "tests/calibration/checks.h"

namespace outyard::calibration {
namespace {

void demand(const std::vector<Score>& scores) {
  for (const Score& s : scores) {
    SCOPED_TRACE(s.set + ", " + s.quantity + ", " + s.lead);
    EXPECT_GE(s.n, 30);
    EXPECT_LE(std::abs(s.bias), kBiasMost);
    EXPECT_GE(s.cover, kCoverLeast);
    EXPECT_LE(s.cover, kCoverMost);
  }
}

TEST(ObservedSets, AutumnToFebruary) {
  const auto scores = autumnScores();
  std::set<std::string> seen;
  for (const Score& s : scores) seen.insert(s.quantity + " " + s.lead);
  for (const char* must : {"bees day 21", "bees day 42", "bees day 138", "sealed brood day 10",
                           "sealed brood day 138", "stores day 42"}) {
    EXPECT_TRUE(seen.contains(must)) << must;
  }
  demand(scores);
}

TEST(ObservedSets, SpringSplits) {
  demand(splitScores());
}

TEST(ObservedSets, CityHivesInSummerAndAutumn) {
  int counts = 0;
  for (const Score& s : urbanScores()) {
    SCOPED_TRACE(s.quantity + ", " + s.lead);
    EXPECT_LE(std::abs(s.bias), kBiasMost);
    if (s.lead == "all") {
      EXPECT_GE(s.n, 30);
      EXPECT_GE(s.cover, kCoverLeast);  // counts that say a number, not "ten or more"
      continue;
    }
    counts += s.n;
    if (!s.demanded) continue;
    EXPECT_GE(s.cover, kCoverLeast);
    EXPECT_LE(s.cover, kCoverMost);
  }
  EXPECT_EQ(counts, 80);
}

TEST(ObservedSets, EachSetHoldsWhenItsWidthIsFittedOnTheOthers) {
  std::set<std::string> sets;
  for (const HeldOut& h : heldOutScores()) {
    SCOPED_TRACE(h.set);
    sets.insert(h.set);
    EXPECT_GE(h.n, 80);
    EXPECT_LE(std::abs(h.bias), kBiasMost);
    EXPECT_GE(h.cover, kCoverLeast);
    EXPECT_LE(h.cover, kCoverMost);
  }
  EXPECT_EQ(sets.size(), 3U);
}

}  // namespace
}  // namespace outyard::calibration
