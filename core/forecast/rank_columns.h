// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>
#include <cstddef>
#include <span>

namespace outyard::forecast {

/// Up to this many columns are put in order side by side.
inline constexpr std::size_t kColumns = 8;

/// For each column of n values: the ones that stand at the places `ranks` of the ordered column.
/// A sorting network (Batcher 1968: odd-even merge) runs over all columns at once; smaller and
/// larger of two is all it does, so the result is exact.
std::array<std::array<float, 3>, kColumns> ranked(std::span<const float* const> columns,
                                                  std::size_t n,
                                                  const std::array<std::size_t, 3>& ranks);

}  // namespace outyard::forecast
