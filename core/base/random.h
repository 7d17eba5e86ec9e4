// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>
#include <cstdint>
#include <string>

namespace outyard::base {

/// xoshiro256++ 1.0 (Blackman and Vigna 2019, public domain algorithm), seeded by splitmix64.
/// The same numbers on every machine; the standard library's distributions are not used because
/// they differ between platforms.
class Random {
 public:
  explicit Random(std::uint64_t seed);
  std::uint64_t next();
  /// Uniform in [0, 1) with 53 bits.
  double uniform();
  /// Uniform whole number in [0, n); n > 0.
  std::uint64_t below(std::uint64_t n);
  /// Standard normal (Marsaglia polar method).
  double normal();

 private:
  std::array<std::uint64_t, 4> m_s{};
};

/// Where new record ids come from: handed in, so that tests and the sample are repeatable.
class IdSource {
 public:
  virtual ~IdSource() = default;
  /// 128 random bits as 32 lower-case hex digits.
  virtual std::string next() = 0;
};

/// Ids from a seed (tests, sample).
class SeededIds : public IdSource {
 public:
  explicit SeededIds(std::uint64_t seed) : m_random(seed) {}
  std::string next() override;

 private:
  Random m_random;
};

/// Ids from the system's entropy.
class SystemIds : public IdSource {
 public:
  std::string next() override;
};

}  // namespace outyard::base
