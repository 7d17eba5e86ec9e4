// SPDX-License-Identifier: GPL-3.0-or-later
// Synthetic twins (tests/calibration/twins.cpp): a seeded tenth here, all 300 with OUTYARD_LONG=1.
#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>

#include "tests/calibration/checks.h"

namespace outyard::calibration {
namespace {

bool all() {
  return std::getenv("OUTYARD_LONG") != nullptr;
}

TEST(Twins, ErrorAndCover) {
  for (const TwinScore& s : twinScores(all() ? 300 : 30, 1)) {
    std::printf("lead %d days: error against persistence %.3f, cover %.1f %%\n", s.lead, s.ratio,
                100 * s.cover);
    // At most 0.40 and 75 to 90 %; thirty twins leave a chance error of about 0.05 and 4 %.
    EXPECT_LE(s.ratio, all() ? 0.40 : 0.45) << s.lead;
    EXPECT_GE(s.cover, all() ? 0.75 : 0.71) << s.lead;
    EXPECT_LE(s.cover, all() ? 0.90 : 0.94) << s.lead;
  }
}

TEST(Twins, CoverUnderDoubledModelError) {
  for (const TwinScore& s : twinScores(all() ? 300 : 30, 2)) {
    std::printf("lead %d days, doubled model error: cover %.1f %%\n", s.lead, 100 * s.cover);
    EXPECT_GE(s.cover, 0.72) << s.lead;
  }
}

}  // namespace
}  // namespace outyard::calibration
