// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <utility>
#include <vector>

#include "core/apiary/codes.h"

/// From seams and from quick counts to full frames of bees, both sides.
namespace outyard::strength {

/// Full frames behind so many seams seen in cool air. A seam is one frame of bees (two facing
/// sides) only when it is full; a cluster is round, so the seams of a small one are not filled:
/// share of a full frame = 0.80 (1 - exp(-0.42 s^0.68)): 0.27 at one seam, 0.47 at three, 0.64 at
/// seven, 0.77 at twenty. Our assumption, shaped to the counts from the top of February 2021 in
/// Aurell et al. 2024 (tests/data) and to the 1,400 bees that a Langstroth frame in use averages
/// (Simpson 1969). That the relation is no straight line: Chabert et al. 2021.
double fullFramesOfSeams(double seams);
/// The inverse, for drawing marks: seams that so many full frames would show.
double seamsOfFullFrames(double fullFrames);

/// A count from above against the temperature: a tight cluster holds more bees a seam, in warm
/// air the bees rise and spread and the count reads too many. 1.15 at 0 C or less, 1 at 13,
/// 0.80 at 25 or more; 1 when no temperature was noted. Our assumption, kept moderate: the trade
/// says up to twice the bees in winter (from memory). Counts from below do not depend on the
/// weather (Chabert et al. 2021).
double seamTemperatureFactor(std::optional<double> airC, apiary::SeamsView view);
/// Standard deviation of the logarithm of a seam count's bees.
double seamSigma(std::optional<double> airC, apiary::SeamsView view, bool atLeast);

/// Least squares y = intercept + slope x.
struct LineFit {
  int n = 0;
  double intercept = 0, slope = 0;
  double r = 0;         ///< correlation
  double residual = 0;  ///< standard deviation around the line, n - 2
};
LineFit fitLine(const std::vector<std::pair<double, double>>& xy);

/// "Frames with bees" against full frames, as observed: count = intercept + slope full. Early
/// summer: Aurell et al. 2025, four yards, n 138, r 0.80; February: Aurell et al. 2024, n 37.
struct QuickCountLine {
  double intercept, slope, residual;
  double typicalFull, spreadLog;  ///< what such colonies hold, very wide: keeps a low count sane
  double sigmaLog;                ///< error of the full frames read back
};
inline constexpr QuickCountLine kQuickEarlySummer{4.15, 1.63, 2.4, 4.0, 0.7, 0.30};
inline constexpr QuickCountLine kQuickFebruary{2.83, 1.08, 1.34, 1.1, 1.0, 0.60};

struct QuickCount {
  double fullFrames = 0, sigmaLog = 0;
};
/// Full frames behind a quick count: the observed line read backwards, with the wide range of
/// real colonies as second thought so that counts below the intercept give few frames and not
/// less than none; never more than 0.9 of the count. One line for the winter cluster and one for
/// early summer; between them (season days 60 to 120 and 255 to 305) both count, on the log
/// scale. Autumn was not observed.
QuickCount fullFramesOfQuickCount(double framesWithBees, int seasonDay);
/// By one line alone.
double fullFramesByLine(double framesWithBees, const QuickCountLine& line);

}  // namespace outyard::strength
