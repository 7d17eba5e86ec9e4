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
/// Standard deviation of the logarithm of the bees behind a seam count: a part that stays however
/// large the colony, and one that is the larger the fewer the seams,
/// hypot(rest, kFewSeams / sqrt(seams + 1.5)).
/// Fit: the 37 counts from the top of the box of February 2021 in Aurell et al. 2024, J. Insect
/// Sci. 24(3):12 (tests/data, trimmed). With rest = 0.30 maximum likelihood gives kFewSeams = 1.06;
/// the scatter is 0.61 on all, 0.69 below two seams and 0.53 at four to six. Leaving one colony out
/// at a time, the 80 % bands hold 84 % of them (84 % also with all of them); a scatter that is the
/// same for all sizes fits worse and holds 70 %. No count above six seams is in the set: there the
/// rest takes over, the 20 to 30 % of common practice. No temperature was noted in it either; that
/// one takes the weather out of the rest (0.30 to 0.22 in cool air), and that looking from below as
/// well halves the variance of the few seams, is our assumption.
double seamSigma(double seams, std::optional<double> airC, apiary::SeamsView view, bool atLeast);
inline constexpr double kFewSeams = 1.06;

/// Least squares y = intercept + slope x.
struct LineFit {
  int n = 0;
  double intercept = 0, slope = 0;
  double r = 0;         ///< correlation
  double residual = 0;  ///< standard deviation around the line, n - 2
};
LineFit fitLine(const std::vector<std::pair<double, double>>& xy);

/// "Frames with bees" against full frames, as observed: count = intercept + slope full.
///
/// Early summer: fitted on the two yards of Aurell et al. 2025, J. Econ. Entomol.,
/// doi 10.1093/jee/toaf126, that are in tests/data (day 72 against day 77): n 71, r 0.79,
/// 3.08 + 1.96 full, 2.40 frames around the line. The line of all yards of that trial, 4.15 + 1.63
/// full (n 138, r 0.80), reads a count back to within 8 % of ours from 4 to 16 frames, far inside
/// the band. A line from one yard alone reads the other back with a scatter of 0.28 and 0.26 and a
/// bias of -0.10 and +0.16; a colony left out: 0.24. The band takes 0.28 and holds 80 % of the
/// yards left out.
///
/// February: the 37 colonies of Aurell et al. 2024, J. Insect Sci. 24(3):12 (one yard, so no yard
/// can be left out): 2.83 + 1.08 full; a colony left out is read back with a scatter of 0.66, and
/// the band of 0.65 holds 81 %.
struct QuickCountLine {
  double intercept, slope, residual;
  double typicalFull, spreadLog;  ///< what such colonies hold, very wide: keeps a low count sane
  double sigmaLog;                ///< error of the full frames read back
};
inline constexpr QuickCountLine kQuickEarlySummer{3.08, 1.96, 2.4, 4.0, 0.7, 0.28};
inline constexpr QuickCountLine kQuickFebruary{2.83, 1.08, 1.34, 1.1, 1.0, 0.65};

struct QuickCount {
  double fullFrames = 0, sigmaLog = 0;
};
/// Full frames behind a quick count: the observed line read backwards, with the wide range of
/// real colonies as second thought so that counts below the intercept give few frames and not
/// less than none; never more than 0.9 of the count. One line for the winter cluster and one for
/// early summer; between them (season days 60 to 120 and 255 to 305) both count, on the log
/// scale. Autumn was not observed. The line is a box's: bees spread over all combs of a box before
/// they fill them, so a count of more than ten frames stands in several boxes and is read box by
/// box (the 2025 set holds 0.35 to 0.45 full frames for each frame counted from 5 to 21 frames; one
/// line for the whole hive reads a seventh too many above ten).
inline constexpr double kQuickFramesPerBox = 10;
QuickCount fullFramesOfQuickCount(double framesWithBees, int seasonDay);
/// By one line alone.
double fullFramesByLine(double framesWithBees, const QuickCountLine& line);

}  // namespace outyard::strength
