// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/planning/boost.h"

/// The plan as rows of an integer programme. Every number is held in whole millionths, so that
/// objectives compare and a solution is checked without rounding.
namespace outyard::planning {

inline constexpr double kUnits = 1e6;
std::int64_t inUnits(double value);

struct ProgrammeRow {
  std::vector<std::pair<int, std::int64_t>> terms;  ///< column and coefficient
  std::int64_t atMost = 0;
  bool exactly = false;
  bool shared = false;  ///< gear and hours, which hold different yards together
};

enum class Fixed : std::uint8_t { Free, In, Out };

struct Programme {
  std::vector<std::int64_t> net;  ///< by column = by option
  std::vector<Fixed> fixed;
  std::vector<int> group;  ///< of one colony's options; -1 for a visit
  std::vector<ProgrammeRow> rows;
};

/// Columns are the options in their order. Rows that no choice can break are left out.
Programme programmeOf(const BoostProblem& problem);
/// True when every row and every fixed column is kept.
bool holds(const Programme& programme, const std::vector<char>& chosen);
std::int64_t worth(const Programme& programme, const std::vector<char>& chosen);
/// Columns that must be decided together, each list in rising order.
std::vector<std::vector<int>> components(const Programme& programme);
/// 1 for the columns that no best plan can hold: another free option of the same colony is worth
/// more and takes no more of any row, so that any plan with the one is bettered by the other. All
/// columns stay of a colony that has a pin.
std::vector<char> beaten(const Programme& programme);
/// The programme without the columns that are marked, and without rows that have none left; kept:
/// the numbers that the others had.
Programme without(const Programme& programme, const std::vector<char>& gone,
                  std::vector<int>& kept);
/// A choice that holds, near the shares of a relaxed solution: each colony in the order of the
/// shares, as long as every row still holds; the others take the option that uses nothing.
/// nullopt when a colony has no such option or no choice was found.
std::optional<std::vector<char>> rounded(const Programme& programme,
                                         const std::vector<double>& shares);

}  // namespace outyard::planning
