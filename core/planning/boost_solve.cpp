// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>

#include "core/planning/boost.h"
#include "core/planning/boost_many.h"
#include "core/planning/boost_part.h"

namespace outyard::planning {
namespace {

using base::message;

struct Outcome {
  std::vector<char> chosen;
  std::int64_t bound = 0;
  bool optimal = true, infeasible = false, cancelled = false, nothingFound = false;
};

/// Many yards that only gear and hours hold together are solved by prices on these.
PartAnswer solved(Programme part, base::Progress& progress) {
  if (static_cast<int>(part.net.size()) > kPricedColumns) {
    if (auto priced = solveByPrices(part, progress)) return *std::move(priced);
  }
  return solvePart(std::move(part), progress);
}

Outcome solveAll(const Programme& whole, base::Progress& progress) {
  Outcome out;
  out.chosen.assign(whole.net.size(), 0);
  // The solver sees only the options that a best plan may hold.
  std::vector<int> kept;
  const Programme programme = without(whole, beaten(whole), kept);
  const auto parts = components(programme);
  std::size_t done = 0;
  for (const auto& columns : parts) {
    if (progress.cancelled()) {
      out.cancelled = true;
      return out;
    }
    const PartAnswer part = solved(partOf(programme, columns), progress);
    switch (part.end) {
      case PartAnswer::End::Infeasible:
        out.infeasible = true;
        return out;
      case PartAnswer::End::Cancelled:
        out.cancelled = true;
        return out;
      case PartAnswer::End::Stopped:
        out.optimal = false;
        break;
      case PartAnswer::End::Optimal:
        break;
    }
    if (part.chosen.empty()) {
      out.nothingFound = true;
      return out;
    }
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const auto column = static_cast<std::size_t>(columns[i]);
      out.chosen[static_cast<std::size_t>(kept[column])] = part.chosen[i];
    }
    out.bound += part.bound;
    progress.report(static_cast<double>(++done) / static_cast<double>(parts.size()));
  }
  return out;
}

/// Faults of pins and forbids that need no solving.
base::Failure plainFaults(const BoostProblem& problem) {
  base::Failure out;
  std::set<std::string> ids,
      forbids(problem.request.forbids.begin(), problem.request.forbids.end());
  std::set<std::string> free, colonies;
  for (const auto& o : problem.options) {
    ids.insert(o.id);
    if (isVisit(o)) continue;
    colonies.insert(o.colony.str());
    if (!forbids.contains(o.id)) free.insert(o.colony.str());
  }
  for (const auto& pin : problem.request.pins) {
    if (!ids.contains(pin)) {
      out.messages.push_back(message("planning.pin_unknown", pin));
    } else if (forbids.contains(pin)) {
      out.messages.push_back(message("planning.pin_forbidden", pin));
    }
  }
  for (const auto& c : colonies) {
    if (!free.contains(c)) out.messages.push_back(message("planning.all_forbidden", c));
  }
  return out;
}

/// The fewest pins, by leaving out one after another, that cannot hold together.
base::Failure conflict(const BoostProblem& problem, base::Progress& progress) {
  BoostProblem trial = problem;
  auto& pins = trial.request.pins;
  for (const auto& pin : problem.request.pins) {
    const auto before = pins;
    std::erase(pins, pin);
    if (!solveAll(programmeOf(trial), progress).infeasible) pins = before;
  }
  if (pins.empty()) return base::fail(message("planning.no_plan"));
  std::string names;
  for (const auto& pin : pins) names += (names.empty() ? "" : ", ") + pin;
  if (pins.size() == 1) return base::fail(message("planning.pin_breaks", names));
  return base::fail(message("planning.pins_clash", names));
}

}  // namespace

base::Result<BoostPlan> solveBoost(BoostProblem problem, base::Progress& progress) {
  std::sort(problem.options.begin(), problem.options.end(),
            [](const BoostOption& a, const BoostOption& b) { return a.id < b.id; });
  for (std::size_t i = 1; i < problem.options.size(); ++i) {
    if (problem.options[i].id == problem.options[i - 1].id) {
      throw std::logic_error("two options with the id " + problem.options[i].id);
    }
  }
  if (auto faults = plainFaults(problem); !faults.messages.empty()) return faults;
  readySolver();
  const Programme programme = programmeOf(problem);
  const Outcome solved = solveAll(programme, progress);
  if (solved.cancelled) return base::fail(message("planning.cancelled"));
  if (solved.nothingFound) return base::fail(message("planning.too_hard", kMostNodes));
  if (solved.infeasible) return conflict(problem, progress);
  if (!holds(programme, solved.chosen)) throw std::logic_error("the plan breaks its own rules");
  BoostPlan plan;
  const std::int64_t value = worth(programme, solved.chosen);
  for (std::size_t i = 0; i < solved.chosen.size(); ++i) {
    if (solved.chosen[i]) plan.chosen.push_back(problem.options[i].id);
  }
  plan.objective = static_cast<double>(value) / kUnits;
  plan.bound = static_cast<double>(solved.bound) / kUnits;
  plan.optimal = solved.optimal || solved.bound == value;
  const double size = std::max(std::abs(plan.bound), 1e-6);
  plan.gap = plan.optimal ? 0 : (plan.bound - plan.objective) / size;
  plan.problem = std::move(problem);
  return plan;
}

}  // namespace outyard::planning
