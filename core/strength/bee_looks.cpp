// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/bee_looks.h"

#include <algorithm>
#include <cmath>

namespace outyard::strength {

double fullFramesOfSeams(double seams) {
  if (seams <= 0) return 0;
  return seams * 0.80 * (1 - std::exp(-0.42 * std::pow(seams, 0.68)));
}

double seamsOfFullFrames(double fullFrames) {
  if (fullFrames <= 0) return 0;
  double low = 0, high = 1;
  while (fullFramesOfSeams(high) < fullFrames) high *= 2;
  for (int i = 0; i < 60; ++i) {
    const double mid = (low + high) / 2;
    (fullFramesOfSeams(mid) < fullFrames ? low : high) = mid;
  }
  return (low + high) / 2;
}

double seamTemperatureFactor(std::optional<double> airC, apiary::SeamsView view) {
  if (!airC || view == apiary::SeamsView::Below) return 1;
  const double t = std::clamp(*airC, 0.0, 25.0);
  const double above = t <= 13 ? 1.15 - 0.15 * t / 13 : 1 - 0.20 * (t - 13) / 12;
  return view == apiary::SeamsView::Both ? std::sqrt(above) : above;
}

double seamSigma(double seams, std::optional<double> airC, apiary::SeamsView view, bool atLeast) {
  double rest = 0.30;
  double few = kFewSeams / std::sqrt(std::max(0.0, seams) + 1.5);
  if (view == apiary::SeamsView::Both) {
    rest = 0.18;
    few /= std::sqrt(2.0);
  } else if (view == apiary::SeamsView::Below) {
    rest = 0.20;
  } else if (airC) {
    rest = 0.22 + 0.20 * std::clamp((*airC - 13) / 12, 0.0, 1.0);
  }
  const double sigma = std::hypot(rest, few);
  return atLeast ? sigma + 0.10 : sigma;
}

LineFit fitLine(const std::vector<std::pair<double, double>>& xy) {
  LineFit fit;
  fit.n = static_cast<int>(xy.size());
  if (fit.n < 3) return fit;
  double mx = 0, my = 0;
  for (const auto& [x, y] : xy) {
    mx += x / fit.n;
    my += y / fit.n;
  }
  double sxx = 0, sxy = 0, syy = 0;
  for (const auto& [x, y] : xy) {
    sxx += (x - mx) * (x - mx);
    sxy += (x - mx) * (y - my);
    syy += (y - my) * (y - my);
  }
  if (sxx <= 0 || syy <= 0) return fit;
  fit.slope = sxy / sxx;
  fit.intercept = my - fit.slope * mx;
  fit.r = sxy / std::sqrt(sxx * syy);
  fit.residual = std::sqrt(std::max(0.0, syy - fit.slope * sxy) / (fit.n - 2));
  return fit;
}

double fullFramesByLine(double framesWithBees, const QuickCountLine& line) {
  if (framesWithBees <= 0) return 0;
  // Mean of log full frames over a grid: normal error of the count around the line times the
  // wide log-normal range of colonies.
  constexpr int kSteps = 200;
  const double centre = std::log(line.typicalFull);
  double weight = 0, mean = 0;
  // The largest exponent is taken off first so that very high counts keep their weights.
  double best = -1e300;
  double logs[kSteps + 1];
  for (int i = 0; i <= kSteps; ++i) {
    const double u = centre + 8.0 * i / kSteps - 4;
    const double miss =
        (framesWithBees - line.intercept - line.slope * std::exp(u)) / line.residual;
    const double far = (u - centre) / line.spreadLog;
    logs[i] = -0.5 * (miss * miss + far * far);
    best = std::max(best, logs[i]);
  }
  for (int i = 0; i <= kSteps; ++i) {
    const double w = std::exp(logs[i] - best);
    weight += w;
    mean += w * (centre + 8.0 * i / kSteps - 4);
  }
  return std::min(std::exp(mean / weight), 0.9 * framesWithBees);
}

QuickCount fullFramesOfQuickCount(double framesWithBees, int seasonDay) {
  if (framesWithBees <= 0) return {};
  double summer = 1;
  if (seasonDay < 120) summer = std::max(0.0, (seasonDay - 60) / 60.0);
  if (seasonDay > 255) summer = std::max(0.0, 1 - (seasonDay - 255) / 50.0);
  const double boxes = std::max(1.0, framesWithBees / kQuickFramesPerBox);
  const double s = std::log(fullFramesByLine(framesWithBees / boxes, kQuickEarlySummer));
  const double w = std::log(fullFramesByLine(framesWithBees / boxes, kQuickFebruary));
  return {boxes * std::exp(summer * s + (1 - summer) * w),
          summer * kQuickEarlySummer.sigmaLog + (1 - summer) * kQuickFebruary.sigmaLog};
}

}  // namespace outyard::strength
