// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_programme.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <set>

namespace outyard::planning {
namespace {

using base::message;

/// The most that the row can come to when each colony takes exactly one option.
std::int64_t mostOf(const ProgrammeRow& row, const Programme& p,
                    const std::vector<int>& groupSize) {
  std::map<int, std::pair<std::int64_t, int>> best;  // by colony: largest coefficient, options met
  std::int64_t sum = 0;
  for (const auto& [col, coef] : row.terms) {
    const int g = p.group[static_cast<std::size_t>(col)];
    if (g < 0) {
      sum += std::max<std::int64_t>(0, coef);
      continue;
    }
    const auto [it, fresh] = best.try_emplace(g, coef, 1);
    if (!fresh) it->second = {std::max(it->second.first, coef), it->second.second + 1};
  }
  for (const auto& [g, b] : best) {
    const bool all = b.second == groupSize[static_cast<std::size_t>(g)];
    sum += all ? b.first : std::max<std::int64_t>(0, b.first);
  }
  return sum;
}

}  // namespace

std::int64_t inUnits(double value) {
  return std::llround(value * kUnits);
}

std::vector<BoostRule> standingRules(const BoostProblem& problem) {
  std::map<std::string, std::vector<std::string>> ids;
  for (const auto& o : problem.options) {
    if (!isVisit(o)) ids[o.colony.str()].push_back(o.id);
  }
  std::vector<BoostRule> out;
  for (auto& [colony, list] : ids) {
    out.push_back({message("planning.rule.one", colony), list, {}, 1});
    out.push_back(
        {message("planning.rule.some", colony), list, std::vector<double>(list.size(), -1), -1});
  }
  return out;
}

Programme programmeOf(const BoostProblem& problem) {
  Programme p;
  const std::size_t n = problem.options.size();
  p.net.resize(n);
  p.fixed.assign(n, Fixed::Free);
  p.group.assign(n, -1);
  std::map<std::string, int> column, groups;
  std::vector<int> groupSize;
  for (std::size_t i = 0; i < n; ++i) {
    const BoostOption& o = problem.options[i];
    column[o.id] = static_cast<int>(i);
    p.net[i] = inUnits(o.net);
    if (isVisit(o)) continue;
    const auto [it, fresh] = groups.try_emplace(o.colony.str(), static_cast<int>(groups.size()));
    if (fresh) groupSize.push_back(0);
    p.group[i] = it->second;
    ++groupSize[static_cast<std::size_t>(it->second)];
  }
  const auto& req = problem.request;
  for (const auto& id : req.pins) p.fixed[static_cast<std::size_t>(column.at(id))] = Fixed::In;
  for (const auto& id : req.forbids) {
    if (const auto it = column.find(id); it != column.end()) {
      p.fixed[static_cast<std::size_t>(it->second)] = Fixed::Out;
    }
  }
  p.rows.resize(groups.size());
  for (std::size_t i = 0; i < n; ++i) {
    if (p.group[i] >= 0) {
      p.rows[static_cast<std::size_t>(p.group[i])].terms.emplace_back(static_cast<int>(i),
                                                                      inUnits(1));
    }
  }
  for (auto& row : p.rows) {
    row.exactly = true;
    row.atMost = inUnits(1);
  }
  const auto limit = [&](double atMost, auto&& coefOf) {
    ProgrammeRow row;
    row.atMost = inUnits(atMost);
    row.shared = true;
    for (std::size_t i = 0; i < n; ++i) {
      const std::int64_t c = inUnits(coefOf(problem.options[i]));
      if (c != 0) row.terms.emplace_back(static_cast<int>(i), c);
    }
    if (mostOf(row, p, groupSize) > row.atMost) p.rows.push_back(std::move(row));
  };
  for (const auto& [item, count] : problem.gear) {
    limit(count, [&](const BoostOption& o) {
      const auto it = o.gear.find(item);
      return it == o.gear.end() ? 0.0 : static_cast<double>(it->second);
    });
  }
  if (problem.hours) limit(*problem.hours, [](const BoostOption& o) { return o.hours; });
  std::map<std::string, std::vector<std::size_t>> byDonor;
  for (std::size_t i = 0; i < n; ++i) {
    if (const auto& d = problem.options[i].donorColony) byDonor[d->str()].push_back(i);
  }
  for (const auto& [colony, cap] : problem.donors) {
    const auto mine = byDonor.find(colony);
    if (mine == byDonor.end()) continue;
    const auto part = [&](double atMost, auto&& take) {
      ProgrammeRow row;
      row.atMost = inUnits(atMost);
      for (const std::size_t i : mine->second) {
        const std::int64_t c = inUnits(take(problem.options[i].takes));
        if (c != 0) row.terms.emplace_back(static_cast<int>(i), c);
      }
      if (mostOf(row, p, groupSize) > row.atMost) p.rows.push_back(std::move(row));
    };
    part(cap.bees, [](const Takes& t) { return t.bees; });
    part(cap.broodFrames, [](const Takes& t) { return t.broodFrames; });
    part(cap.stack, [](const Takes& t) { return static_cast<double>(t.stack); });
  }
  for (const auto& rule : problem.rules) {
    ProgrammeRow row;
    row.atMost = inUnits(rule.atMost);
    std::map<int, std::int64_t> terms;
    for (std::size_t k = 0; k < rule.ids.size(); ++k) {
      terms[column.at(rule.ids[k])] += inUnits(rule.coefs.empty() ? 1 : rule.coefs.at(k));
    }
    for (const auto& [col, c] : terms) {
      if (c != 0) row.terms.emplace_back(col, c);
    }
    if (mostOf(row, p, groupSize) > row.atMost) p.rows.push_back(std::move(row));
  }
  return p;
}

bool holds(const Programme& p, const std::vector<char>& chosen) {
  for (std::size_t i = 0; i < chosen.size(); ++i) {
    if (p.fixed[i] == (chosen[i] ? Fixed::Out : Fixed::In)) return false;
  }
  for (const auto& row : p.rows) {
    std::int64_t sum = 0;
    for (const auto& [col, c] : row.terms) {
      if (chosen[static_cast<std::size_t>(col)]) sum += c;
    }
    if (sum > row.atMost || (row.exactly && sum != row.atMost)) return false;
  }
  return true;
}

std::int64_t worth(const Programme& p, const std::vector<char>& chosen) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < chosen.size(); ++i) {
    if (chosen[i]) sum += p.net[i];
  }
  return sum;
}

std::vector<std::vector<int>> components(const Programme& p) {
  std::vector<int> root(p.net.size());
  std::iota(root.begin(), root.end(), 0);
  const auto find = [&](int i) {
    while (root[static_cast<std::size_t>(i)] != i) {
      auto& r = root[static_cast<std::size_t>(i)];
      r = root[static_cast<std::size_t>(r)];
      i = r;
    }
    return i;
  };
  for (const auto& row : p.rows) {
    for (const auto& [col, c] : row.terms) {
      const int a = find(row.terms.front().first), b = find(col);
      // The smaller index leads, so that the order of the parts is fixed.
      root[static_cast<std::size_t>(std::max(a, b))] = std::min(a, b);
    }
  }
  std::map<int, std::vector<int>> parts;
  for (int i = 0; i < static_cast<int>(p.net.size()); ++i) parts[find(i)].push_back(i);
  std::vector<std::vector<int>> out;
  for (auto& [r, cols] : parts) out.push_back(std::move(cols));
  return out;
}

}  // namespace outyard::planning
