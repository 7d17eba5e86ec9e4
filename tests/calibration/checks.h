// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/forecast/colony_forecast.h"
#include "core/forecast/parameters.h"

/// The forecast held against published figures, common practice, counted colonies and synthetic
/// twins. The tests of core/forecast demand each check; the calibration report prints them.
namespace outyard::calibration {

/// One figure with the span it must lie in. place to start say the conditions in words.
struct Check {
  std::string what, place, weather, start, source, unit;
  double low = 0, high = 0, ours = 0;
  int digits = 0;
  /// Held-out and informative figures are printed but demand nothing.
  bool demanded = true;
  [[nodiscard]] bool holds() const { return ours >= low && ours <= high; }
};

/// A course to draw: median and 80 % band of one quantity on each day.
struct Course {
  std::string file, title, axis;
  base::Date from;
  std::vector<forecast::Band> days;
};

/// How forecasts compare with counts of one quantity at one lead.
struct Score {
  std::string set, quantity, lead;
  int n = 0;
  double bias = 0;   ///< mean logarithm of counted over median
  double cover = 0;  ///< share of counts inside the 80 % band
  bool demanded = true;
};
/// Limits of the cover are whole per cents, as the page prints them.
inline constexpr double kBiasMost = 0.25, kCoverLeast = 0.645, kCoverMost = 0.925;

std::vector<Check> publishedChecks();
std::vector<Check> practiceChecks();
std::vector<Course> practiceCourses();

/// Counted colonies of tests/data.
std::vector<Score> autumnScores(const forecast::Figures& = forecast::Figures::shipped());
std::vector<Score> splitScores(const forecast::Figures& = forecast::Figures::shipped());
std::vector<Score> urbanScores(const forecast::Figures& = forecast::Figures::shipped());

/// The spreads between colonies and the level of what a reader sees, fitted on two of the sets, and
/// what comes out on the third, pooled over its counts.
struct HeldOut {
  std::string set;
  double width = 1, seenShare = 0;  ///< as fitted on the other two
  int n = 0;
  double bias = 0, cover = 0;
};
std::vector<HeldOut> heldOutScores();

struct TwinScore {
  int lead = 0, n = 0;
  double ratio = 0;  ///< mean error of the median over that of persistence
  double cover = 0;
};
/// Synthetic colonies with other parameters and model error, seen eight times; noise multiplies
/// the model error of the truth.
std::vector<TwinScore> twinScores(int twins, double noise);

/// The report as Markdown. twins: how many of each kind.
struct Page {
  std::string text;
  std::vector<std::pair<std::string, std::string>> pictures;  ///< file name, SVG
};
Page page(int twins);
/// The part of the page between the twins' marks is left out of comparisons: it takes long.
std::string withoutTwins(const std::string& text);

}  // namespace outyard::calibration
