// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <stdexcept>

#include "core/planning/boost.h"

// Written from the terms of the problem alone, without the rows that solveBoost works with: two
// roads to one number.
namespace outyard::planning {
namespace {

constexpr double kMostCombinations = 1 << 26;

long long whole(double value) {
  return std::llround(value * 1e6);
}

bool allowed(const BoostProblem& p, const std::vector<const BoostOption*>& taken) {
  std::set<std::string> ids;
  std::map<std::string, long long> gear, bees, combs, stacks;
  long long hours = 0;
  for (const auto* o : taken) {
    ids.insert(o->id);
    hours += whole(o->hours);
    for (const auto& [item, n] : o->gear) gear[item] += n;
    if (!o->donorColony) continue;
    bees[o->donorColony->str()] += whole(o->takes.bees);
    combs[o->donorColony->str()] += whole(o->takes.broodFrames);
    stacks[o->donorColony->str()] += o->takes.stack;
  }
  for (const auto& pin : p.request.pins) {
    if (!ids.contains(pin)) return false;
  }
  for (const auto& forbidden : p.request.forbids) {
    if (ids.contains(forbidden)) return false;
  }
  if (p.hours && hours > whole(*p.hours)) return false;
  for (const auto& [item, most] : p.gear) {
    if (gear[item] > most) return false;
  }
  for (const auto& [colony, cap] : p.donors) {
    if (bees[colony] > whole(cap.bees) || combs[colony] > whole(cap.broodFrames) ||
        stacks[colony] > cap.stack) {
      return false;
    }
  }
  for (const auto& rule : p.rules) {
    long long sum = 0;
    for (std::size_t i = 0; i < rule.ids.size(); ++i) {
      if (ids.contains(rule.ids[i])) sum += whole(rule.coefs.empty() ? 1 : rule.coefs[i]);
    }
    if (sum > whole(rule.atMost)) return false;
  }
  return true;
}

}  // namespace

BoostPlan solveBoostByTrying(BoostProblem problem) {
  std::sort(problem.options.begin(), problem.options.end(),
            [](const BoostOption& a, const BoostOption& b) { return a.id < b.id; });
  // One choice per colony; a visit is a choice of its own between going and not.
  std::map<std::string, std::vector<const BoostOption*>> byColony;
  std::vector<std::vector<const BoostOption*>> choices;
  for (const auto& o : problem.options) {
    if (isVisit(o)) {
      choices.push_back({nullptr, &o});
    } else {
      byColony[o.colony.str()].push_back(&o);
    }
  }
  for (auto& [colony, list] : byColony) choices.push_back(list);
  double combinations = 1;
  for (const auto& c : choices) combinations *= static_cast<double>(c.size());
  if (combinations > kMostCombinations) throw std::length_error("too many combinations to try");

  bool found = false;
  long long best = 0;
  std::vector<const BoostOption*> bestTaken;
  std::vector<std::size_t> at(choices.size(), 0);
  for (bool more = true; more;) {
    std::vector<const BoostOption*> taken;
    long long sum = 0;
    for (std::size_t i = 0; i < choices.size(); ++i) {
      if (const auto* o = choices[i][at[i]]) {
        taken.push_back(o);
        sum += whole(o->net);
      }
    }
    if ((!found || sum > best) && allowed(problem, taken)) {
      found = true;
      best = sum;
      bestTaken = taken;
    }
    more = false;
    for (std::size_t i = 0; i < at.size() && !more; ++i) {
      more = ++at[i] < choices[i].size();
      if (!more) at[i] = 0;
    }
  }
  BoostPlan plan;
  for (const auto* o : bestTaken) plan.chosen.push_back(o->id);
  std::sort(plan.chosen.begin(), plan.chosen.end());
  plan.objective = static_cast<double>(best) / 1e6;
  plan.bound = plan.objective;
  plan.optimal = found;
  plan.problem = std::move(problem);
  return plan;
}

}  // namespace outyard::planning
