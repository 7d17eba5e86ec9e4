// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/greedy.h"

#include <algorithm>
#include <map>

#include "core/planning/boost_programme.h"

namespace outyard::pairs {
namespace {

using planning::Fixed;
using planning::Programme;

/// Takes up the drives that a choice cannot do without: rows that are broken by it and mended by
/// choosing a visit.
void addVisits(const planning::BoostProblem& problem, const Programme& programme,
               std::vector<char>& chosen) {
  for (const auto& row : programme.rows) {
    if (row.exactly) continue;
    std::int64_t used = 0;
    for (const auto& [column, coef] : row.terms) {
      if (chosen[static_cast<std::size_t>(column)]) used += coef;
    }
    if (used <= row.atMost) continue;
    for (const auto& [column, coef] : row.terms) {
      const auto at = static_cast<std::size_t>(column);
      if (coef < 0 && planning::isVisit(problem.options[at]) && programme.fixed[at] != Fixed::Out) {
        chosen[at] = 1;
      }
    }
  }
}

}  // namespace

std::optional<GreedyChoice> greedyChoice(const planning::BoostProblem& problem) {
  const Programme programme = planning::programmeOf(problem);
  const std::size_t n = problem.options.size();
  std::vector<char> chosen(n, 0);
  std::map<int, std::size_t> of;  // the column that each colony has, by group
  for (std::size_t i = 0; i < n; ++i) {
    const int group = programme.group[i];
    if (group < 0) {
      if (programme.fixed[i] == Fixed::In) chosen[i] = 1;
      continue;
    }
    const bool leave = problem.options[i].method == apiary::Method::Leave;
    const auto has = of.find(group);
    if (programme.fixed[i] == Fixed::In) {
      of[group] = i;
    } else if (leave && programme.fixed[i] == Fixed::Free && has == of.end()) {
      of[group] = i;
    }
  }
  for (const auto& [group, column] : of) chosen[column] = 1;
  addVisits(problem, programme, chosen);

  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < n; ++i) {
    if (programme.group[i] >= 0 && programme.fixed[i] == Fixed::Free) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return programme.net[a] > programme.net[b];
  });
  // A colony whose "leave" was forbidden has nothing yet: it takes the best that is possible,
  // also at a loss.
  for (const bool mustHave : {true, false}) {
    for (const std::size_t i : order) {
      const auto has = of.find(programme.group[i]);
      const bool open = has == of.end();
      if (mustHave != open) continue;
      if (!open && programme.fixed[has->second] == Fixed::In) continue;
      if (!open && problem.options[has->second].method != apiary::Method::Leave) continue;
      std::vector<char> next = chosen;
      if (!open) next[has->second] = 0;
      next[i] = 1;
      addVisits(problem, programme, next);
      if (!open && planning::worth(programme, next) <= planning::worth(programme, chosen)) continue;
      Programme rows = programme;
      if (open) {
        // Other colonies may still be without a choice: only the limits are looked at.
        std::erase_if(rows.rows, [](const auto& row) { return row.exactly; });
      }
      if (!planning::holds(rows, next)) continue;
      chosen = std::move(next);
      of[programme.group[i]] = i;
    }
  }
  if (!planning::holds(programme, chosen)) return std::nullopt;
  GreedyChoice out;
  out.objective = static_cast<double>(planning::worth(programme, chosen)) / planning::kUnits;
  for (std::size_t i = 0; i < n; ++i) {
    if (chosen[i]) out.chosen.push_back(problem.options[i].id);
  }
  std::sort(out.chosen.begin(), out.chosen.end());
  return out;
}

}  // namespace outyard::pairs
