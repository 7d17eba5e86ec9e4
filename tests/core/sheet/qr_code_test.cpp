// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/qr_code.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>
#include <vector>

namespace outyard::sheet {
namespace {

/// Module grid as a scanner would sample it: the middle of each module of a code of `modules`.
std::vector<std::vector<bool>> sampled(const Shapes& shapes, double sizeMm, int modules) {
  const double m = sizeMm / (modules + 8);
  std::vector<std::vector<bool>> dark(static_cast<std::size_t>(modules),
                                      std::vector<bool>(static_cast<std::size_t>(modules)));
  for (int y = 0; y < modules; ++y) {
    for (int x = 0; x < modules; ++x) {
      const double px = (4 + x + 0.5) * m, py = (4 + y + 0.5) * m;
      for (const Shape& s : shapes) {
        const auto& r = std::get<RectShape>(s);
        if (px > r.corner.x && px < r.corner.x + r.widthMm && py > r.corner.y &&
            py < r.corner.y + r.heightMm) {
          dark[static_cast<std::size_t>(y)][static_cast<std::size_t>(x)] = true;
        }
      }
    }
  }
  return dark;
}

// ISO/IEC 18004: version 1 has 21 modules; three finder patterns of 7; timing patterns on row and
// column 6; the module above the lower left finder is always dark.
TEST(QrCode, HasThePatternsOfTheStandard) {
  constexpr double kSize = 15;
  const Shapes shapes = qrCode("26-0148", {0, 0}, kSize);
  const auto dark = sampled(shapes, kSize, 21);
  const auto at = [&](int x, int y) {
    return dark[static_cast<std::size_t>(y)][static_cast<std::size_t>(x)];
  };
  for (const auto& [cx, cy] : {std::pair{3, 3}, {17, 3}, {3, 17}}) {
    for (int dy = -3; dy <= 3; ++dy) {
      for (int dx = -3; dx <= 3; ++dx) {
        const int ring = std::max(std::abs(dx), std::abs(dy));
        EXPECT_EQ(at(cx + dx, cy + dy), ring != 2) << cx + dx << ", " << cy + dy;
      }
    }
  }
  for (int i = 8; i <= 12; ++i) {
    EXPECT_EQ(at(i, 6), i % 2 == 0);
    EXPECT_EQ(at(6, i), i % 2 == 0);
  }
  EXPECT_TRUE(at(8, 13));
}

TEST(QrCode, KeepsItsQuietZoneInside) {
  const double m = 15.0 / 29;
  for (const Shape& s : qrCode("26-0148", {10, 20}, 15)) {
    const auto& r = std::get<RectShape>(s);
    EXPECT_GE(r.corner.x, 10 + 4 * m - 1e-9);
    EXPECT_LE(r.corner.x + r.widthMm, 25 - 4 * m + 1e-9);
    EXPECT_GE(r.corner.y, 20 + 4 * m - 1e-9);
    EXPECT_LE(r.corner.y + r.heightMm, 35 - 3.9 * m);
  }
}

TEST(QrCode, OtherNumbersGiveOtherCodes) {
  EXPECT_NE(qrCode("26-0148", {0, 0}, 15).size(), 0U);
  EXPECT_NE(sampled(qrCode("26-0148", {0, 0}, 15), 15, 21),
            sampled(qrCode("26-0149", {0, 0}, 15), 15, 21));
}

TEST(QrCode, RefusesWhatNoCodeHolds) {
  EXPECT_THROW(qrCode(std::string(5000, 'x'), {0, 0}, 15), std::length_error);
}

}  // namespace
}  // namespace outyard::sheet
