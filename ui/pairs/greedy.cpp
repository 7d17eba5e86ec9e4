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
  void set(std::size_t column, bool on) {
    if ((m_chosen[column] != 0) == on) return;
    m_chosen[column] = on ? 1 : 0;
    m_worth += on ? m_programme.net[column] : -m_programme.net[column];
    for (const auto& [row, coef] : m_rowsOf[column]) m_sums[row] += on ? coef : -coef;
  }
  /// What a colony has, by its group.
  [[nodiscard]] const std::map<int, std::size_t>& of() const { return m_of; }
  /// Begins with what is pinned; the others are left as they are, where that is allowed.
  void begin() {
    for (std::size_t i = 0; i < m_chosen.size(); ++i) {
      const int group = m_programme.group[i];
      const Fixed fixed = m_programme.fixed[i];
      if (group < 0) {
        if (fixed == Fixed::In) set(i, true);
      } else if (fixed == Fixed::In) {
        m_of[group] = i;
      } else if (m_problem.options[i].method == apiary::Method::Leave && fixed == Fixed::Free) {
        m_of.try_emplace(group, i);
      }
    }
    for (const auto& [group, column] : m_of) set(column, true);
    for (const auto& [group, column] : m_of) addVisits(column);
  }
  /// True when the colony of the column is left as it is, or has nothing yet.
  [[nodiscard]] bool open(std::size_t column) const {
    const auto has = m_of.find(m_programme.group[column]);
    return has == m_of.end() || (m_programme.fixed[has->second] != Fixed::In &&
                                 m_problem.options[has->second].method == apiary::Method::Leave);
  }
  /// Takes the column in place of what its colony has, if every limit holds with it and, where
  /// `gains` is asked for, the whole is worth more.
  bool take(std::size_t column, bool gains) {
    const auto has = m_of.find(m_programme.group[column]);
    const std::int64_t before = m_worth;
    if (has != m_of.end()) set(has->second, false);
    set(column, true);
    const auto visits = addVisits(column);
    // While other colonies are without a choice only the limits are looked at.
    const bool holds =
        holdsAt(column) && std::all_of(visits.begin(), visits.end(),
                                       [&](std::size_t visit) { return holdsAt(visit); });
    if (holds && (!gains || m_worth > before)) {
      m_of[m_programme.group[column]] = column;
      return true;
    }
    for (const auto visit : visits) set(visit, false);
    set(column, false);
    if (has != m_of.end()) set(has->second, true);
    return false;
  }
  [[nodiscard]] std::optional<GreedyChoice> end() const {
    if (!planning::holds(m_programme, m_chosen)) return std::nullopt;
    GreedyChoice out;
    out.objective = static_cast<double>(m_worth) / planning::kUnits;
    for (std::size_t i = 0; i < m_chosen.size(); ++i) {
      if (m_chosen[i]) out.chosen.push_back(m_problem.options[i].id);
    }
    std::sort(out.chosen.begin(), out.chosen.end());
    return out;
  }
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
  std::map<int, std::size_t> m_of;
  std::int64_t m_worth = 0;
};

}  // namespace

std::optional<GreedyChoice> greedyChoice(const planning::BoostProblem& problem) {
  const Programme programme = planning::programmeOf(problem);
  Choice choice(problem, programme);
  choice.begin();
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < problem.options.size(); ++i) {
    if (programme.group[i] >= 0 && programme.fixed[i] == Fixed::Free) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return programme.net[a] > programme.net[b];
  });
  // A colony whose "leave" was forbidden has nothing yet: it takes the best that is possible,
  // also at a loss.
  for (const bool mustHave : {true, false}) {
    for (const std::size_t i : order) {
      const bool nothing = choice.of().count(programme.group[i]) == 0;
      if (mustHave == nothing && choice.open(i)) choice.take(i, !nothing);
    }
  }
  return choice.end();
}

std::optional<GreedyChoice> weakestWithStrongest(const planning::BoostProblem& problem) {
  const Programme programme = planning::programmeOf(problem);
  Choice choice(problem, programme);
  choice.begin();
  const auto yardOf = [&](const std::string& colony) {
    const auto at = problem.yardOf.find(colony);
    return at == problem.yardOf.end() ? std::string() : at->second.str();
  };
  // Each yard for itself: by that rule nobody carries bees from one to the other.
  std::map<std::string, std::vector<std::pair<double, std::string>>> donors;
  std::vector<std::pair<double, std::string>> weak;
  const auto beesOf = [&](const base::ColonyId& colony) {
    for (const auto& j : problem.judgements) {
      if (j.colony == colony && j.strength && j.strength->bees) return j.strength->bees->median;
    }
    return 0.0;
  };
  for (const auto& [colony, limit] : problem.donors) {
    donors[yardOf(colony)].emplace_back(-beesOf(base::ColonyId(colony)), colony);
  }
  std::map<std::string, std::vector<std::size_t>> options;  // by colony
  for (std::size_t i = 0; i < problem.options.size(); ++i) {
    const auto& o = problem.options[i];
    const bool helps = o.donorColony && o.method != apiary::Method::Unite;
    if (helps && programme.fixed[i] == Fixed::Free) options[o.colony.str()].push_back(i);
  }
  for (const auto& [colony, list] : options) {
    weak.emplace_back(beesOf(base::ColonyId(colony)), colony);
  }
  for (auto& [yard, list] : donors) std::sort(list.begin(), list.end());
  std::sort(weak.begin(), weak.end());
  std::map<std::string, std::size_t> turn;
  for (const auto& [bees, colony] : weak) {
    const std::string yard = yardOf(colony);
    const auto& here = donors[yard];
    if (here.empty()) continue;
    const std::string& donor = here[turn[yard]++ % here.size()].second;
    std::vector<std::size_t> ways;
    for (const std::size_t i : options[colony]) {
      if (problem.options[i].donorColony->str() == donor && choice.open(i)) ways.push_back(i);
    }
    std::stable_sort(ways.begin(), ways.end(), [&](std::size_t a, std::size_t b) {
      return problem.options[a].takes.bees > problem.options[b].takes.bees;
    });
    for (const std::size_t i : ways) {
      if (choice.take(i, false)) break;
    }
  }
  return choice.end();
}

}  // namespace outyard::pairs
