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

TEST(ObservedSets, HeldOutSetIsReportedNotDemanded) {
  int counts = 0;
  for (const Score& s : urbanScores()) {
    EXPECT_FALSE(s.demanded);
    EXPECT_TRUE(std::isfinite(s.bias));
    // Not tuned on, yet no gross error: within a factor of 1.5.
    EXPECT_LE(std::abs(s.bias), std::log(1.5)) << s.lead;
    counts += s.n;
  }
  EXPECT_EQ(counts, 80);
}

}  // namespace
}  // namespace outyard::calibration
