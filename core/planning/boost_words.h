// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cmath>
#include <cstdint>

#include "core/apiary/codes.h"
#include "core/base/message.h"

namespace outyard::planning {

/// The name of a method for use in another message ("code.method.stack", in the code catalogue).
inline base::Message methodWord(apiary::Method method) {
  base::Message m;
  m.key = "code.method.";
  m.key += apiary::code(method);
  return m;
}

/// Two significant figures: more would claim more than a look from above can tell.
inline std::int64_t twoFigures(double value) {
  if (std::abs(value) < 1) return 0;
  const double step = std::pow(10.0, std::floor(std::log10(std::abs(value))) - 1);
  return std::llround(std::round(value / step) * step);
}

/// Hundredths, for differences in thousands of bees; quarters, for seams.
inline double hundredths(double value) {
  return std::round(value * 100) / 100;
}
inline double quarters(double value) {
  return std::round(value * 4) / 4;
}

}  // namespace outyard::planning
