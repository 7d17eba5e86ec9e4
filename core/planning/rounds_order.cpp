// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <limits>
#include <numeric>

#include "core/planning/rounds.h"

namespace outyard::planning {
namespace {

using Table = std::vector<std::vector<double>>;
constexpr std::size_t kExact = 13;
constexpr double kNone = std::numeric_limits<double>::infinity();

/// Round trip from place 0 through all others by dynamic programming over sets (Held and Karp 1962,
/// J. SIAM 10:196): best[set][last] = shortest way from 0 through the set that ends in `last`.
std::vector<std::size_t> heldKarp(const Table& km) {
  const std::size_t n = km.size() - 1;  // without place 0
  if (n == 0) return {0};
  const std::size_t sets = std::size_t{1} << n;
  std::vector<double> best(sets * n, kNone);
  std::vector<std::size_t> before(sets * n, 0);
  for (std::size_t i = 0; i < n; ++i) best[(std::size_t{1} << i) * n + i] = km[0][i + 1];
  for (std::size_t set = 1; set < sets; ++set) {
    for (std::size_t last = 0; last < n; ++last) {
      const double here = best[set * n + last];
      if (here == kNone) continue;
      for (std::size_t next = 0; next < n; ++next) {
        if ((set >> next) & 1U) continue;
        const std::size_t to = (set | (std::size_t{1} << next)) * n + next;
        const double way = here + km[last + 1][next + 1];
        if (way < best[to] - 1e-9) {  // the first of equal ways stands
          best[to] = way;
          before[to] = last;
        }
      }
    }
  }
  std::size_t end = 0;
  double least = kNone;
  for (std::size_t i = 0; i < n; ++i) {
    const double way = best[(sets - 1) * n + i] + km[i + 1][0];
    if (way < least - 1e-9) {
      least = way;
      end = i;
    }
  }
  std::vector<std::size_t> order;
  std::size_t set = sets - 1;
  while (set != 0) {
    order.push_back(end + 1);
    const std::size_t from = before[set * n + end];
    set &= ~(std::size_t{1} << end);
    end = from;
  }
  order.push_back(0);
  std::reverse(order.begin(), order.end());
  return order;
}

double length(const Table& km, const std::vector<std::size_t>& order) {
  double sum = 0;
  for (std::size_t i = 0; i < order.size(); ++i) {
    sum += km[order[i]][order[(i + 1) % order.size()]];
  }
  return sum;
}

/// Nearest neighbour from every start, then turning stretches around as long as that shortens.
std::vector<std::size_t> byExchange(const Table& km) {
  const std::size_t n = km.size();
  std::vector<std::size_t> best;
  for (std::size_t start = 0; start < n; ++start) {
    std::vector<std::size_t> order{start};
    std::vector<bool> seen(n, false);
    seen[start] = true;
    while (order.size() < n) {
      std::size_t next = n;
      for (std::size_t i = 0; i < n; ++i) {
        if (!seen[i] && (next == n || km[order.back()][i] < km[order.back()][next])) next = i;
      }
      seen[next] = true;
      order.push_back(next);
    }
    for (bool better = true; better;) {
      better = false;
      for (std::size_t i = 0; i + 1 < n; ++i) {
        for (std::size_t j = i + 2; j < n; ++j) {
          const std::size_t a = order[i], b = order[i + 1], c = order[j], d = order[(j + 1) % n];
          if (a == d) continue;
          if (km[a][c] + km[b][d] + 1e-9 < km[a][b] + km[c][d]) {
            std::reverse(order.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                         order.begin() + static_cast<std::ptrdiff_t>(j) + 1);
            better = true;
          }
        }
      }
    }
    if (best.empty() || length(km, order) < length(km, best) - 1e-9) best = order;
  }
  std::rotate(best.begin(), std::find(best.begin(), best.end(), 0U), best.end());
  return best;
}

}  // namespace

Tour shortestTour(const Table& km, bool closed) {
  Tour out;
  const std::size_t n = km.size();
  if (n == 0) return out;
  // An open way is a round trip over a place that is nowhere: it costs nothing to go there.
  Table table = km;
  if (!closed) {
    table.assign(n + 1, std::vector<double>(n + 1, 0.0));
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = 0; j < n; ++j) table[i + 1][j + 1] = km[i][j];
    }
  }
  out.exact = n <= kExact;
  out.order = out.exact ? heldKarp(table) : byExchange(table);
  out.km = length(table, out.order);
  if (!closed) {
    out.order.erase(out.order.begin());
    for (std::size_t& place : out.order) --place;
    // Either end may be the first: the lower one, so that the same table gives the same way.
    if (out.order.front() > out.order.back()) std::reverse(out.order.begin(), out.order.end());
  }
  return out;
}

}  // namespace outyard::planning
