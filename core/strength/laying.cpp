// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/laying.h"

#include <cmath>

#include "core/strength/measures.h"

namespace outyard::strength {
namespace {

/// Eggs and larvae for each egg of constant laying with losses, 1 + 1.83.
constexpr double kOpenPerEgg = 2.83;
constexpr double kGrowing = 1.25;

std::optional<Estimate> perDay(const std::optional<Estimate>& cells, double days) {
  if (!cells) return std::nullopt;
  return Estimate::fromMedian(cells->median / days, cells->sigmaLog);
}

}  // namespace

LayingRates layingRates(const StrengthEstimate& seen) {
  LayingRates out;
  out.fromEggs = perDay(seen.eggCells, kEggDays);
  out.fromOpen = perDay(seen.openCells, kEggDays + kLarvaDays);
  out.fromSealed = perDay(seen.sealedCells, kSealedDays);
  if (!seen.sealedCells || seen.sealedCells->median <= 0) return out;
  const double sealed = seen.sealedCells->median;
  if (seen.eggCells && seen.eggCells->median > 0) {
    out.expansion =
        Estimate::fromMedian(expansionIndex(seen.eggCells->median, sealed),
                             std::hypot(seen.eggCells->sigmaLog, seen.sealedCells->sigmaLog));
  } else if (seen.openCells && seen.openCells->median > 0) {
    out.expansion =
        Estimate::fromMedian(expansionIndex(seen.openCells->median / kOpenPerEgg, sealed),
                             std::hypot(seen.openCells->sigmaLog, seen.sealedCells->sigmaLog));
  }
  return out;
}

NestTrend nestTrend(double expansion) {
  if (expansion >= kGrowing) return NestTrend::Growing;
  return expansion <= 1 / kGrowing ? NestTrend::Shrinking : NestTrend::Steady;
}

}  // namespace outyard::strength
