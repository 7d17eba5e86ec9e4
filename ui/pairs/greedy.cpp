// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/greedy.h"

#include <algorithm>
#include <map>
#include <utility>

#include "core/planning/boost_programme.h"

namespace outyard::pairs {
namespace {

using planning::Fixed;
using planning::Programme;

/// A choice with what each row comes to by it, so that a change costs the rows that it touches and
/// no others: a plan is worked out again at every pin.
class Choice {
 public:
  explicit Choice(const planning::BoostProblem& problem, const Programme& programme)
      : m_problem(problem),
        m_programme(programme),
        m_chosen(programme.net.size(), 0),
        m_sums(programme.rows.size(), 0),
        m_rowsOf(programme.net.size()) {
    for (std::size_t r = 0; r < programme.rows.size(); ++r) {
      for (const auto& [column, coef] : programme.rows[r].terms) {
        m_rowsOf[static_cast<std::size_t>(column)].emplace_back(r, coef);
      }
    }
  }
  [[nodiscard]] const std::vector<char>& chosen() const { return m_chosen; }
  void set(std::size_t column, bool on) {
    if ((m_chosen[column] != 0) == on) return;
    m_chosen[column] = on ? 1 : 0;
    m_worth += on ? m_programme.net[column] : -m_programme.net[column];
    for (const auto& [row, coef] : m_rowsOf[column]) m_sums[row] += on ? coef : -coef;
  }
  [[nodiscard]] std::int64_t worth() const { return m_worth; }
  /// Takes up the drives that the column cannot do without: rows that are broken by it and mended
  /// by choosing a visit. Returns them.
  std::vector<std::size_t> addVisits(std::size_t column) {
    std::vector<std::size_t> added;
    for (const auto& [row, coef] : m_rowsOf[column]) {
      if (m_programme.rows[row].exactly || m_sums[row] <= m_programme.rows[row].atMost) continue;
      for (const auto& [other, share] : m_programme.rows[row].terms) {
        const auto at = static_cast<std::size_t>(other);
        if (share >= 0 || m_chosen[at] || !planning::isVisit(m_problem.options[at]) ||
            m_programme.fixed[at] == Fixed::Out) {
          continue;
        }
        added.push_back(at);
      }
    }
    for (const auto at : added) set(at, true);
    return added;
  }
  /// True when no limit is broken in the rows of the column.
  [[nodiscard]] bool holdsAt(std::size_t column) const {
    return std::all_of(m_rowsOf[column].begin(), m_rowsOf[column].end(), [&](const auto& of) {
      const auto& row = m_programme.rows[of.first];
      return row.exactly || m_sums[of.first] <= row.atMost;
    });
  }

 private:
  const planning::BoostProblem& m_problem;
  const Programme& m_programme;
  std::vector<char> m_chosen;
  std::vector<std::int64_t> m_sums;
  std::vector<std::vector<std::pair<std::size_t, std::int64_t>>> m_rowsOf;
  std::int64_t m_worth = 0;
};

}  // namespace

std::optional<GreedyChoice> greedyChoice(const planning::BoostProblem& problem) {
  const Programme programme = planning::programmeOf(problem);
  const std::size_t n = problem.options.size();
  Choice choice(problem, programme);
  std::map<int, std::size_t> of;  // the column that each colony has, by group
  for (std::size_t i = 0; i < n; ++i) {
    const int group = programme.group[i];
    if (group < 0) {
      if (programme.fixed[i] == Fixed::In) choice.set(i, true);
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
  for (const auto& [group, column] : of) choice.set(column, true);
  for (const auto& [group, column] : of) choice.addVisits(column);

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
      const std::int64_t before = choice.worth();
      if (!open) choice.set(has->second, false);
      choice.set(i, true);
      const auto visits = choice.addVisits(i);
      // While other colonies are without a choice only the limits are looked at.
      const bool holds = choice.holdsAt(i) &&
                         std::all_of(visits.begin(), visits.end(),
                                     [&](std::size_t visit) { return choice.holdsAt(visit); });
      if (holds && (open || choice.worth() > before)) {
        of[programme.group[i]] = i;
        continue;
      }
      for (const auto visit : visits) choice.set(visit, false);
      choice.set(i, false);
      if (!open) choice.set(has->second, true);
    }
  }
  if (!planning::holds(programme, choice.chosen())) return std::nullopt;
  GreedyChoice out;
  out.objective = static_cast<double>(choice.worth()) / planning::kUnits;
  for (std::size_t i = 0; i < n; ++i) {
    if (choice.chosen()[i]) out.chosen.push_back(problem.options[i].id);
  }
  std::sort(out.chosen.begin(), out.chosen.end());
  return out;
}

}  // namespace outyard::pairs
