// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <vector>

#include "core/base/progress.h"
#include "core/planning/boost_programme.h"

/// One part of the programme, whose columns must be decided together, given to GLPK.
namespace outyard::planning {

/// Nodes of the search tree of one part, over all its re-solves. Ends the work at the same place
/// on every machine; a yard of 60 hives needs about ten.
inline constexpr int kMostNodes = 2000;
/// Parts with more columns are solved within a gap instead of to the proven optimum.
inline constexpr int kManyColumns = 10000;
inline constexpr double kManyGap = 0.002;

struct PartAnswer {
  enum class End { Optimal, Stopped, Infeasible, Cancelled };
  End end = End::Optimal;
  std::vector<char> chosen;  ///< empty when no choice was found
  std::int64_t bound = 0;    ///< no choice is worth more; set unless infeasible or cancelled
};

/// GLPK keeps one environment a thread, which goes with the thread: to be called first on each.
void readySolver();
/// Those columns with their rows; rows keep only the terms of these columns.
Programme partOf(const Programme& programme, const std::vector<int>& columns);
PartAnswer solvePart(Programme programme, base::Progress& progress, int nodes = kMostNodes);

}  // namespace outyard::planning
