// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/expected_look.h"

#include <algorithm>
#include <cmath>

namespace outyard::strength {

WholeRange Spread::whole() const {
  return {static_cast<int>(std::lround(low)), static_cast<int>(std::lround(high))};
}

namespace {
/// Cells on a comb with any brood, as the estimate of a look reads such a comb.
double cellsOfComb(const FrameFigures& figures) {
  return 2 * figures.cellsPerSide() * kCombWithBroodCover * kFrameOfBroodFill;
}
}  // namespace

double combsWithBrood(double cells, const FrameFigures& figures) {
  const double comb = cellsOfComb(figures);
  if (cells <= 0 || comb <= 0) return 0;
  return std::max(1.0, cells / comb);
}

double cellsOfCombs(double combs, const FrameFigures& figures) {
  return std::max(0.0, combs) * cellsOfComb(figures);
}

ExpectedLook expectedLook(const Spread& bees, const Spread& broodCells, const FrameFigures& figures,
                          int frames) {
  const auto each = [&](const Spread& from, auto convert) {
    const auto one = [&](double value) {
      const double found = convert(value);
      return frames > 0 ? std::min(found, static_cast<double>(frames)) : found;
    };
    return Spread{one(from.median), one(from.low), one(from.high)};
  };
  ExpectedLook look;
  look.seams = each(bees, [&](double v) { return seamsFromBees(v, figures); });
  // Fewer cells than one in a hundred of a comb are a few scattered ones: none to look for.
  const double few = cellsOfCombs(0.01, figures);
  look.combs =
      each(broodCells, [&](double v) { return v < few ? 0.0 : combsWithBrood(v, figures); });
  // The box may hide how sure the bees are, so the width is taken before it cuts.
  const double middle = std::max(0.5, seamsFromBees(bees.median, figures));
  look.width = (seamsFromBees(bees.high, figures) - seamsFromBees(bees.low, figures)) / middle;
  return look;
}

int framesOf(const apiary::HiveState& hive, const base::ColonyId& colony) {
  int frames = 0;
  for (const auto& box : hive.boxesOf(colony)) {
    if (box.frames <= 0) return 0;
    frames += box.frames;
  }
  return frames;
}

}  // namespace outyard::strength
