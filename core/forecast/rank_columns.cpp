// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/rank_columns.h"

#include <algorithm>
#include <cstring>
#include <stdexcept>
#include <vector>

namespace outyard::forecast {
namespace {

// Four at a time: the width that every x86-64 processor has.
using Four = float __attribute__((vector_size(16)));
struct Line {
  Four a, b;
};

inline void order(Line& low, Line& high) {
  const Four a0 = low.a, a1 = high.a, b0 = low.b, b1 = high.b;
  low.a = a0 < a1 ? a0 : a1;
  high.a = a0 > a1 ? a0 : a1;
  low.b = b0 < b1 ? b0 : b1;
  high.b = b0 > b1 ? b0 : b1;
}

void sortLines(std::vector<Line>& v) {
  const std::size_t n = v.size();
  for (std::size_t p = 1; p < n; p *= 2) {
    for (std::size_t k = p; k >= 1; k /= 2) {
      for (std::size_t j = k % p; j + k < n; j += 2 * k) {
        // A run of pairs lies in one block of 2 p or crosses from one to the next as a whole.
        if (j / (2 * p) != (j + k) / (2 * p)) continue;
        const std::size_t many = std::min(k, n - j - k);
        for (std::size_t i = j; i < j + many; ++i) order(v[i], v[i + k]);
      }
    }
  }
}

}  // namespace

std::array<std::array<float, 3>, kColumns> ranked(std::span<const float* const> columns,
                                                  std::size_t n,
                                                  const std::array<std::size_t, 3>& ranks) {
  if (columns.size() > kColumns) throw std::logic_error("ranked: too many columns");
  std::vector<Line> lines(n, Line{});
  for (std::size_t c = 0; c < columns.size(); ++c) {
    for (std::size_t m = 0; m < n; ++m) {
      (c < 4 ? lines[m].a : lines[m].b)[static_cast<int>(c % 4)] = columns[c][m];
    }
  }
  sortLines(lines);
  std::array<std::array<float, 3>, kColumns> out{};
  for (std::size_t c = 0; c < columns.size(); ++c) {
    for (std::size_t q = 0; q < ranks.size(); ++q) {
      const Line& l = lines[ranks[q]];
      out[c][q] = (c < 4 ? l.a : l.b)[static_cast<int>(c % 4)];
    }
  }
  return out;
}

}  // namespace outyard::forecast
