// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/strength/estimate.h"

namespace outyard::strength {

/// Eggs a day as each stage of the brood tells it, each for its own stretch of days back. Without
/// losses, so the older stages tell a little less than was laid.
struct LayingRates {
  std::optional<Estimate> fromEggs;    ///< the last 3 days
  std::optional<Estimate> fromOpen;    ///< the last 9 days, eggs and larvae
  std::optional<Estimate> fromSealed;  ///< 9 to 21 days ago
  /// Above 1 the nest grows, below 1 it shrinks: eggs (or, where they were not told apart, all
  /// open brood) against sealed, held against 1 : 1.83 : 3.52 of constant laying with losses.
  std::optional<Estimate> expansion;
};
LayingRates layingRates(const StrengthEstimate& seen);

enum class NestTrend { Growing, Steady, Shrinking };
/// Growing or shrinking only when the index is off 1 by a quarter or more: less cannot be told from
/// the reader's error in brood (13 to 19 %, Bartlett et al. 2024).
NestTrend nestTrend(double expansion);

}  // namespace outyard::strength
