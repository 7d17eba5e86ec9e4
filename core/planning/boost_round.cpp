// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/planning/boost_programme.h"

namespace outyard::planning {
namespace {

/// Chosen columns with the sums of all rows.
class Choice {
 public:
  explicit Choice(const Programme& p)
      : m_p(p), m_chosen(p.net.size(), 0), m_sum(p.rows.size(), 0), m_terms(p.net.size()) {
    for (std::size_t r = 0; r < p.rows.size(); ++r) {
      for (const auto& [col, c] : p.rows[r].terms) {
        m_terms[static_cast<std::size_t>(col)].emplace_back(r, c);
      }
    }
  }
  void flip(std::size_t col) {
    const std::int64_t sign = m_chosen[col] ? -1 : 1;
    m_chosen[col] = m_chosen[col] ? 0 : 1;
    for (const auto& [r, c] : m_terms[col]) m_sum[r] += sign * c;
  }
  /// True when no row of the column is over its limit.
  [[nodiscard]] bool within(std::size_t col) const {
    return std::all_of(m_terms[col].begin(), m_terms[col].end(),
                       [&](const auto& t) { return m_sum[t.first] <= m_p.rows[t.first].atMost; });
  }
  /// Uses up no row but its colony's own.
  [[nodiscard]] bool idle(std::size_t col) const {
    return std::all_of(m_terms[col].begin(), m_terms[col].end(),
                       [&](const auto& t) { return m_p.rows[t.first].exactly || t.second <= 0; });
  }
  [[nodiscard]] const std::vector<char>& chosen() const { return m_chosen; }

 private:
  const Programme& m_p;
  std::vector<char> m_chosen;
  std::vector<std::int64_t> m_sum;
  std::vector<std::vector<std::pair<std::size_t, std::int64_t>>> m_terms;
};

}  // namespace

std::optional<std::vector<char>> rounded(const Programme& p, const std::vector<double>& shares) {
  const std::size_t n = p.net.size();
  Choice choice(p);
  int groups = 0;
  for (const int g : p.group) groups = std::max(groups, g + 1);
  std::vector<std::optional<std::size_t>> now(static_cast<std::size_t>(groups));
  for (std::size_t i = 0; i < n; ++i) {
    const int g = p.group[i];
    const bool take =
        p.fixed[i] == Fixed::In || (g < 0 && p.fixed[i] == Fixed::Free && shares[i] > 1e-6);
    if (take) choice.flip(i);
    if (take && g >= 0) now[static_cast<std::size_t>(g)] = i;
  }
  for (std::size_t i = 0; i < n; ++i) {
    if (p.group[i] < 0 || p.fixed[i] != Fixed::Free || !choice.idle(i)) continue;
    auto& at = now[static_cast<std::size_t>(p.group[i])];
    if (at) continue;
    choice.flip(i);
    at = i;
  }
  std::vector<std::size_t> order(n);
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    // Shares to hundredths, so that the last bits of a relaxed solution decide nothing.
    const auto sa = std::lround(shares[a] * 100), sb = std::lround(shares[b] * 100);
    return sa != sb ? sa > sb : p.net[a] > p.net[b];
  });
  for (const std::size_t i : order) {
    if (p.group[i] < 0 || p.fixed[i] != Fixed::Free || choice.chosen()[i]) continue;
    const auto& at = now[static_cast<std::size_t>(p.group[i])];
    if (!at) return std::nullopt;
    const std::size_t before = *at;
    if (p.fixed[before] == Fixed::In || p.net[i] <= p.net[before]) continue;
    choice.flip(before);
    choice.flip(i);
    if (choice.within(i) && choice.within(before)) {
      now[static_cast<std::size_t>(p.group[i])] = i;
    } else {
      choice.flip(i);
      choice.flip(before);
    }
  }
  for (std::size_t i = 0; i < n; ++i) {
    if (p.group[i] >= 0 || p.fixed[i] != Fixed::Free || !choice.chosen()[i] || p.net[i] >= 0) {
      continue;
    }
    choice.flip(i);  // a drive that nothing needs
    if (!choice.within(i)) choice.flip(i);
  }
  if (!holds(p, choice.chosen())) return std::nullopt;
  return choice.chosen();
}

}  // namespace outyard::planning
