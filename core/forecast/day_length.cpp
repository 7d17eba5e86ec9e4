// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/day_length.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/exact_math.h"

namespace outyard::forecast {
namespace {

constexpr double kPi = 3.14159265358979323846;

/// Arc cosine from the arc tangent series would be long; bisection on our own cosine is exact
/// enough (1e-12) and has the same bits everywhere.
double arcCos(double c) {
  double lo = 0, hi = kPi;
  for (int i = 0; i < 50; ++i) {
    const double mid = (lo + hi) / 2;
    (exactCos(mid) > c ? lo : hi) = mid;
  }
  return (lo + hi) / 2;
}

}  // namespace

double dayLengthHours(double latitudeDeg, int dayOfYear) {
  const double g = 2 * kPi * (dayOfYear - 1) / 365.0;
  const double declination = 0.006918 - 0.399912 * exactCos(g) + 0.070257 * exactSin(g) -
                             0.006758 * exactCos(2 * g) + 0.000907 * exactSin(2 * g) -
                             0.002697 * exactCos(3 * g) + 0.00148 * exactSin(3 * g);
  const double lat = std::clamp(latitudeDeg, -89.8, 89.8) * kPi / 180;
  const double horizon = exactSin(-0.833 * kPi / 180);
  const double c =
      (horizon - exactSin(lat) * exactSin(declination)) / (exactCos(lat) * exactCos(declination));
  if (c >= 1) return 0;
  if (c <= -1) return 24;
  return 24 / kPi * arcCos(c);
}

int northernDay(double latitudeDeg, int dayOfYear) {
  const int shifted = latitudeDeg < 0 ? dayOfYear + 182 : dayOfYear;
  return (shifted - 1) % 365 + 1;
}

}  // namespace outyard::forecast
