// SPDX-License-Identifier: GPL-3.0-or-later
// Published figures and facts of the trade. The one table with place, weather, start, tolerance and
// source of each is tests/calibration/published_checks.cpp and practice_checks.cpp.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/calibration/checks.h"

namespace outyard::calibration {
namespace {

void demand(const std::vector<Check>& checks) {
  for (const Check& c : checks) {
    SCOPED_TRACE(c.what + " | " + c.place + " | " + c.weather + " | " + c.start);
    EXPECT_FALSE(c.source.empty());
    if (!c.demanded) continue;
    EXPECT_GE(c.ours, c.low);
    EXPECT_LE(c.ours, c.high);
  }
}

TEST(PracticeCases, PublishedFigures) {
  demand(publishedChecks());
}

TEST(PracticeCases, FactsOfTheTrade) {
  demand(practiceChecks());
}

// What cannot be known must not be said: the bands widen with the lead.
TEST(PracticeCases, BandsWidenWithTheLead) {
  for (const Course& c : practiceCourses()) {
    const auto width = [&](std::size_t d) {
      return std::log((c.days[d].high + 200) / (c.days[d].low + 200));
    };
    EXPECT_LT(width(8), width(90)) << c.title;
    EXPECT_LT(width(28), width(90)) << c.title;
  }
}

// Moving brood or bees over is paired: with more bees from below the small colony is never behind.
TEST(PracticeCases, HelpHelps) {
  const auto courses = practiceCourses();
  for (std::size_t d = 6; d < courses[0].days.size(); ++d) {
    EXPECT_GT(courses[1].days[d].median, courses[0].days[d].median) << d;
  }
}

}  // namespace
}  // namespace outyard::calibration
