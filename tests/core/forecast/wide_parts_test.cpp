// SPDX-License-Identifier: GPL-3.0-or-later
// The parts that work on several numbers at once give the very bits of the plain ones.
#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <vector>

#include "core/base/random.h"
#include "core/forecast/exact_math_wide.h"
#include "core/forecast/rank_columns.h"

namespace outyard::forecast {
namespace {

bool sameBits(double a, double b) {
  return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

TEST(WideParts, LogAndExpHaveTheBitsOfThePlainOnes) {
  base::Random random(11);
  int tried = 0;
  const auto both = [&](double x, double y) {
    const Pair e = exactExp(Pair{x, y});
    EXPECT_TRUE(sameBits(e[0], exactExp(x))) << x;
    EXPECT_TRUE(sameBits(e[1], exactExp(y))) << y;
    const double a = exactExp(x) + 1e-9, b = exactExp(y) + 1e-9;
    const Pair l = exactLog(Pair{a, b});
    EXPECT_TRUE(sameBits(l[0], exactLog(a))) << a;
    EXPECT_TRUE(sameBits(l[1], exactLog(b))) << b;
    ++tried;
  };
  for (int k = 0; k < 20000; ++k) both(-40 + 80 * random.uniform(), -3 + 6 * random.uniform());
  for (const double edge : {-800.0, -700.0, 0.0, 0.5, 1.0, 699.9, 800.0}) both(edge, -edge / 7);
  EXPECT_GT(tried, 20000);
}

TEST(WideParts, RanksAreThoseOfASortedColumn) {
  base::Random random(12);
  for (const std::size_t n : {1U, 2U, 3U, 32U, 96U, 160U, 256U, 1000U}) {
    for (const std::size_t columns : {1U, 3U, 6U, 8U}) {
      std::vector<std::vector<float>> values(columns);
      std::vector<const float*> pointers;
      for (auto& v : values) {
        for (std::size_t m = 0; m < n; ++m) {
          // Many alike among them, as dead members are.
          v.push_back(random.uniform() < 0.2 ? 0.0F : static_cast<float>(random.uniform() * 9e4));
        }
        pointers.push_back(v.data());
      }
      const std::array<std::size_t, 3> ranks{n / 2, n / 10, n - 1 - n / 10};
      const auto found = ranked(pointers, n, ranks);
      for (std::size_t c = 0; c < columns; ++c) {
        std::sort(values[c].begin(), values[c].end());
        for (std::size_t q = 0; q < 3; ++q) EXPECT_EQ(found[c][q], values[c][ranks[q]]);
      }
    }
  }
  const std::vector<float> one(4);
  const std::vector<const float*> many(kColumns + 1, one.data());
  EXPECT_THROW(ranked(many, 4, {0, 1, 2}), std::logic_error);
}

}  // namespace
}  // namespace outyard::forecast
