// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <cstring>

#include "core/forecast/exact_math.h"

/// Two numbers at a time, with the very bits of exact_math.h: every x86-64 processor has this
/// width, so there is one path.
namespace outyard::forecast {

using Pair = double __attribute__((vector_size(16)));
using PairBits = std::int64_t __attribute__((vector_size(16)));

inline Pair loadPair(const double* p) {
  Pair v;
  std::memcpy(&v, p, sizeof v);
  return v;
}
inline void storePair(double* p, Pair v) {
  std::memcpy(p, &v, sizeof v);
}
inline Pair bothOf(double x) {
  return Pair{x, x};
}

/// As exactLog, of each.
inline Pair exactLog(Pair x) {
  const auto bits = __builtin_bit_cast(PairBits, x);
  // The exponent becomes a number by way of the digits of 2^52.
  const auto raised = ((bits >> 52) & 0x7FF) | 0x4330000000000000LL;
  Pair e = __builtin_bit_cast(Pair, raised) - (4503599627370496.0 + 1023.0);
  Pair m = __builtin_bit_cast(Pair, (bits & 0x000FFFFFFFFFFFFFLL) | 0x3FF0000000000000LL);
  const PairBits large = m > 1.41421356237309504880;
  m = large ? m * 0.5 : m;
  e = large ? e + 1.0 : e;
  const Pair z = (m - 1.0) / (m + 1.0), z2 = z * z;
  constexpr double kOdd[] = {1.0 / 21, 1.0 / 19, 1.0 / 17, 1.0 / 15, 1.0 / 13, 1.0 / 11,
                             1.0 / 9,  1.0 / 7,  1.0 / 5,  1.0 / 3,  1.0};
  Pair sum{};
  for (const double c : kOdd) sum = sum * z2 + c;
  return 2.0 * z * sum + e * 6.93147180559945286227e-01;
}

/// As exactExp, of each.
inline Pair exactExp(Pair x) {
  constexpr double kLn2Hi = 6.93147180369123816490e-01, kLn2Lo = 1.90821492927058770002e-10;
  constexpr double kRound = 6755399441055744.0;  // 1.5 times 2^52: adding it rounds
  const PairBits tiny = x<-700.0, huge = x> 700.0;
  x = huge ? bothOf(700.0) : x;
  x = tiny ? bothOf(0.0) : x;
  const Pair t = x * 1.44269504088896338700 + 0.5;
  Pair k = (t + kRound) - kRound;
  k = k > t ? k - 1.0 : k;
  const Pair r = (x - k * kLn2Hi) - k * kLn2Lo;
  const Pair r2 = r * r;
  const Pair even =
      1.0 + r2 * (1.0 / 2 +
                  r2 * (1.0 / 24 +
                        r2 * (1.0 / 720 +
                              r2 * (1.0 / 40320 + r2 * (1.0 / 3628800 + r2 * (1.0 / 479001600))))));
  const Pair odd =
      1.0 +
      r2 * (1.0 / 6 +
            r2 * (1.0 / 120 +
                  r2 * (1.0 / 5040 +
                        r2 * (1.0 / 362880 + r2 * (1.0 / 39916800 + r2 * (1.0 / 6227020800.0))))));
  const Pair sum = even + r * odd;
  const auto whole =
      __builtin_bit_cast(PairBits, k + kRound) - __builtin_bit_cast(PairBits, bothOf(kRound));
  const Pair out = sum * __builtin_bit_cast(Pair, (whole + 1023) << 52);
  return tiny ? Pair{} : out;
}

}  // namespace outyard::forecast
