// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cmath>

#include "core/base/random.h"
#include "core/forecast/exact_math.h"
#include "core/forecast/kernel.h"

/// Small helpers that the assimilation, the start of an ensemble and the actions share.
namespace outyard::forecast {

/// Standard normal, polar method, in our own arithmetic.
inline double normalDraw(base::Random& random) {
  for (;;) {
    const double u = 2 * random.uniform() - 1, v = 2 * random.uniform() - 1;
    const double s = u * u + v * v;
    if (s > 0 && s < 1) return u * std::sqrt(-2 * exactLog(s) / s);
  }
}
inline double exponentialDraw(base::Random& random) {
  return -exactLog(1 - random.uniform());
}

/// Sum of n state variables of a member from the first one on.
inline double total(const Ensemble& e, int first, int n, int m) {
  double sum = 0;
  for (int i = 0; i < n; ++i) sum += static_cast<double>(e.value(first + i)[m]);
  return sum;
}
/// All living adults of a member.
inline double adults(const Ensemble& e, int m) {
  return total(e, state::kYoung, kYoungDays, m) + static_cast<double>(e.value(state::kOlder)[m]) +
         static_cast<double>(e.value(state::kForagers)[m]) +
         static_cast<double>(e.value(state::kWinter)[m]);
}

}  // namespace outyard::forecast
