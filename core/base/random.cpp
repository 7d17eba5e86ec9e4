// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/random.h"

#include <cmath>
#include <random>

namespace outyard::base {
namespace {

std::uint64_t splitmix(std::uint64_t& x) {
  x += 0x9e3779b97f4a7c15ULL;
  std::uint64_t z = x;
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}

std::uint64_t rotl(std::uint64_t x, int k) {
  return (x << k) | (x >> (64 - k));
}

void hex(std::string& out, std::uint64_t v) {
  static constexpr char kDigits[] = "0123456789abcdef";
  for (int shift = 60; shift >= 0; shift -= 4) out += kDigits[(v >> shift) & 0xF];
}

}  // namespace

Random::Random(std::uint64_t seed) {
  for (auto& s : m_s) s = splitmix(seed);
}

std::uint64_t Random::next() {
  const std::uint64_t result = rotl(m_s[0] + m_s[3], 23) + m_s[0];
  const std::uint64_t t = m_s[1] << 17;
  m_s[2] ^= m_s[0];
  m_s[3] ^= m_s[1];
  m_s[1] ^= m_s[2];
  m_s[0] ^= m_s[3];
  m_s[2] ^= t;
  m_s[3] = rotl(m_s[3], 45);
  return result;
}

double Random::uniform() {
  return static_cast<double>(next() >> 11) * 0x1.0p-53;
}

std::uint64_t Random::below(std::uint64_t n) {
  const std::uint64_t limit = UINT64_MAX - UINT64_MAX % n;
  std::uint64_t v = next();
  while (v >= limit) v = next();
  return v % n;
}

double Random::normal() {
  for (;;) {
    const double u = 2 * uniform() - 1;
    const double v = 2 * uniform() - 1;
    const double s = u * u + v * v;
    if (s > 0 && s < 1) return u * std::sqrt(-2 * std::log(s) / s);
  }
}

std::string SeededIds::next() {
  std::string out;
  out.reserve(32);
  hex(out, m_random.next());
  hex(out, m_random.next());
  return out;
}

std::string SystemIds::next() {
  std::random_device device;
  std::string out;
  out.reserve(32);
  for (int i = 0; i < 2; ++i) {
    hex(out, (static_cast<std::uint64_t>(device()) << 32) | device());
  }
  return out;
}

}  // namespace outyard::base
