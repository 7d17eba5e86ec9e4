// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/planning/boost_part.h"

/// Many yards on one day that only gear and hours hold together: each yard is solved on its own
/// with a price on what is shared, the prices are raised until the yards ask for no more than
/// there is, and the best mix of the yards' plans so found is taken. Column generation (Dantzig
/// and Wolfe 1960, Oper. Res. 8:101); the bound is Lagrange's, which no plan can pass.
namespace outyard::planning {

/// Parts with more columns are tried this way before GLPK gets them whole.
inline constexpr int kPricedColumns = 4000;

/// The yards: columns that hang together by rows that are not shared.
std::vector<std::vector<int>> yardsOf(const Programme& part);

/// nullopt where it is of no use: one yard only, no first plan found, or a yard that is not proven.
/// End::Optimal where the plan reaches the bound, else End::Stopped.
std::optional<PartAnswer> solveByPrices(const Programme& part, base::Progress& progress);

}  // namespace outyard::planning
