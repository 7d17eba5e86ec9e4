// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <bit>
#include <cmath>
#include <cstdint>

/// exp, log, sine and cosine in plain arithmetic. The C library's own give other last bits on
/// processors with fused multiply-add; a forecast must have the same bits everywhere, so this room
/// uses these and only sqrt (exact by IEEE 754) from the library. Compiled without contraction.
/// Errors are below 2e-15 relative (exp, log) and 2e-13 absolute (sine, cosine of moderate
/// arguments); tests compare with the library.
namespace outyard::forecast {

/// e to the x; 0 below -700, capped at e^700 above.
inline double exactExp(double x) {
  if (x < -700) return 0;
  if (x > 700) x = 700;
  constexpr double kLn2Hi = 6.93147180369123816490e-01, kLn2Lo = 1.90821492927058770002e-10;
  const double k = std::floor(x * 1.44269504088896338700 + 0.5);
  const double r = (x - k * kLn2Hi) - k * kLn2Lo;
  // Taylor series; |r| <= 0.347, so the term after r^13/13! is below 1e-17. In two halves of even
  // and odd powers, which do not wait for each other.
  const double r2 = r * r;
  const double even =
      1 + r2 * (1.0 / 2 +
                r2 * (1.0 / 24 +
                      r2 * (1.0 / 720 +
                            r2 * (1.0 / 40320 + r2 * (1.0 / 3628800 + r2 * (1.0 / 479001600))))));
  const double odd =
      1 + r2 * (1.0 / 6 +
                r2 * (1.0 / 120 +
                      r2 * (1.0 / 5040 + r2 * (1.0 / 362880 + r2 * (1.0 / 39916800 +
                                                                    r2 * (1.0 / 6227020800.0))))));
  const double sum = even + r * odd;
  const auto bits = static_cast<std::uint64_t>(static_cast<std::int64_t>(k) + 1023) << 52;
  return sum * std::bit_cast<double>(bits);
}

/// Natural logarithm of x > 0 (normal numbers).
inline double exactLog(double x) {
  auto bits = std::bit_cast<std::uint64_t>(x);
  auto e = static_cast<int>((bits >> 52) & 0x7FF) - 1023;
  bits = (bits & 0x000FFFFFFFFFFFFFULL) | 0x3FF0000000000000ULL;
  double m = std::bit_cast<double>(bits);
  if (m > 1.41421356237309504880) {
    m *= 0.5;
    ++e;
  }
  // ln m = 2 artanh((m - 1) / (m + 1)), |z| <= 0.1716
  const double z = (m - 1) / (m + 1), z2 = z * z;
  constexpr double kOdd[] = {1.0 / 21, 1.0 / 19, 1.0 / 17, 1.0 / 15, 1.0 / 13, 1.0 / 11,
                             1.0 / 9,  1.0 / 7,  1.0 / 5,  1.0 / 3,  1.0};
  double sum = 0;
  for (const double c : kOdd) sum = sum * z2 + c;
  return 2 * z * sum + e * 6.93147180559945286227e-01;
}

inline double exactPow(double x, double y) {
  return exactExp(y * exactLog(x));
}

inline double exactSin(double x) {
  constexpr double kPi = 3.14159265358979323846;
  const double k = std::floor(x / kPi + 0.5);
  const double r = x - k * kPi, r2 = r * r;
  double sum = 1;
  for (int i = 10; i >= 1; --i) sum = 1 - r2 * sum / ((2 * i) * (2 * i + 1));
  const auto half = static_cast<std::int64_t>(k);
  return (half % 2 == 0 ? 1.0 : -1.0) * r * sum;
}
inline double exactCos(double x) {
  return exactSin(x + 1.57079632679489661923);
}

}  // namespace outyard::forecast
