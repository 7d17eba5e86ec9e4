// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/planning/boost_programme.h"

namespace outyard::planning {
namespace {

using Needs = std::vector<std::pair<std::size_t, std::int64_t>>;  // row and coefficient, rising

/// What each column takes of every row but its colony's own.
std::vector<Needs> needsOf(const Programme& p) {
  std::vector<Needs> needs(p.net.size());
  for (std::size_t r = 0; r < p.rows.size(); ++r) {
    if (p.rows[r].exactly) continue;
    for (const auto& [col, c] : p.rows[r].terms) {
      if (c != 0) needs[static_cast<std::size_t>(col)].emplace_back(r, c);
    }
  }
  return needs;
}

/// True when `a` takes no more of any row than `b`.
bool noMore(const Needs& a, const Needs& b) {
  auto i = a.begin();
  auto k = b.begin();
  while (i != a.end() || k != b.end()) {
    const bool mine = i != a.end() && (k == b.end() || i->first <= k->first);
    const bool theirs = k != b.end() && (i == a.end() || k->first <= i->first);
    if ((mine ? i->second : 0) > (theirs ? k->second : 0)) return false;
    if (mine) ++i;
    if (theirs) ++k;
  }
  return true;
}

}  // namespace

std::vector<char> beaten(const Programme& p) {
  const std::vector<Needs> needs = needsOf(p);
  int groups = 0;
  for (const int g : p.group) groups = std::max(groups, g + 1);
  std::vector<std::vector<std::size_t>> byColony(static_cast<std::size_t>(groups));
  for (std::size_t i = 0; i < p.net.size(); ++i) {
    if (p.group[i] >= 0) byColony[static_cast<std::size_t>(p.group[i])].push_back(i);
  }
  std::vector<char> out(p.net.size(), 0);
  for (auto& columns : byColony) {
    const bool pinned = std::any_of(columns.begin(), columns.end(),
                                    [&](std::size_t i) { return p.fixed[i] == Fixed::In; });
    if (pinned) continue;
    std::erase_if(columns, [&](std::size_t i) { return p.fixed[i] == Fixed::Out; });
    // The best first: what beats one of the beaten beats that one's losers too, so that only the
    // unbeaten need be compared with.
    std::stable_sort(columns.begin(), columns.end(),
                     [&](std::size_t a, std::size_t b) { return p.net[a] > p.net[b]; });
    std::vector<std::size_t> unbeaten;
    for (const std::size_t i : columns) {
      const bool lost = std::any_of(unbeaten.begin(), unbeaten.end(), [&](std::size_t k) {
        return p.net[k] > p.net[i] && noMore(needs[k], needs[i]);
      });
      if (lost) {
        out[i] = 1;
      } else {
        unbeaten.push_back(i);
      }
    }
  }
  return out;
}

Programme without(const Programme& p, const std::vector<char>& gone, std::vector<int>& kept) {
  Programme out;
  std::vector<int> at(p.net.size(), -1);
  kept.clear();
  for (std::size_t i = 0; i < p.net.size(); ++i) {
    if (gone[i]) continue;
    at[i] = static_cast<int>(kept.size());
    kept.push_back(static_cast<int>(i));
    out.net.push_back(p.net[i]);
    out.fixed.push_back(p.fixed[i]);
    out.group.push_back(p.group[i]);
  }
  for (const auto& row : p.rows) {
    ProgrammeRow left{{}, row.atMost, row.exactly, row.shared};
    for (const auto& [col, c] : row.terms) {
      if (const int now = at[static_cast<std::size_t>(col)]; now >= 0) {
        left.terms.emplace_back(now, c);
      }
    }
    if (!left.terms.empty()) out.rows.push_back(std::move(left));
  }
  return out;
}

}  // namespace outyard::planning
