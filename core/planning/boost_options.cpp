// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <set>

#include "core/planning/boost.h"
#include "core/planning/boost_build.h"
#include "core/planning/boost_gear.h"

namespace outyard::planning {
namespace {

using apiary::Method;
using base::message;

constexpr int kTargetDays = 45;  // shipped default: about the May or June flow
constexpr std::size_t kElsewhere = 3;

/// Every yard asked costs a drive when there are several; nothing there is done without it.
void addVisits(BoostProblem& problem, const BoostFigures& f) {
  if (problem.request.yards.size() < 2) return;
  std::map<std::string, std::map<std::string, std::vector<std::string>>> work;  // yard, colony, ids
  for (const auto& o : problem.options) {
    if (o.method == Method::Leave) continue;
    work[problem.yardOf.at(o.colony.str()).str()][o.colony.str()].push_back(o.id);
    if (!o.donorColony) continue;
    const auto& there = problem.yardOf.at(o.donorColony->str());
    if (there != problem.yardOf.at(o.colony.str())) {
      work[there.str()][o.colony.str()].push_back(o.id);
    }
  }
  for (const auto& yard : problem.request.yards) {
    BoostOption visit;
    visit.id = "visit:" + idPart(yard.str());
    setNet(visit, 0, 0, f.driveCost);
    visit.why.push_back(message("planning.why.drive", yard.str()));
    for (auto& [colony, ids] : work[yard.str()]) {
      BoostRule rule{message("planning.rule.visit", colony, yard.str()), ids, {}, 0};
      rule.coefs.assign(ids.size(), 1);
      rule.ids.push_back(visit.id);
      rule.coefs.push_back(-1);
      problem.rules.push_back(std::move(rule));
    }
    problem.options.push_back(std::move(visit));
  }
}

void addRules(BoostProblem& problem, const BoostFigures& f) {
  std::map<std::string, std::vector<std::string>> own, given, joint;  // by colony
  std::map<std::string, std::vector<std::string>> stacks;             // by yard of the donor
  for (const auto& o : problem.options) {
    if (o.method == Method::Leave || isVisit(o)) continue;
    own[o.colony.str()].push_back(o.id);
    if (!o.donorColony) continue;
    const std::string& donor = o.donorColony->str();
    given[donor].push_back(o.id);
    if (o.method == Method::Stack || o.method == Method::Unite ||
        o.method == Method::ChangePlaces) {
      joint[donor].push_back(o.id);
    }
    if (o.method == Method::Stack) stacks[problem.yardOf.at(donor).str()].push_back(o.id);
  }
  for (auto& [donor, ids] : joint) {
    if (ids.size() > 1)
      problem.rules.push_back({message("planning.rule.joint", donor), ids, {}, 1});
  }
  for (auto& [yard, ids] : stacks) {
    const double most = std::floor(f.stacksPerStop);
    if (static_cast<double>(ids.size()) > most) {
      problem.rules.push_back({message("planning.rule.per_stop", yard, most), ids, {}, most});
    }
  }
  for (const auto& [colony, ids] : given) {
    const auto mine = own.find(colony);
    if (mine == own.end()) continue;
    for (const auto& id : ids) {
      BoostRule rule{message("planning.rule.donor_receiver", colony), mine->second, {}, 1};
      rule.ids.push_back(id);
      problem.rules.push_back(std::move(rule));
    }
  }
}

void addGear(const apiary::Season& season, BoostProblem& problem) {
  std::set<std::string> items;
  for (const auto& o : problem.options) {
    for (const auto& [item, n] : o.gear) items.insert(item);
  }
  for (const auto& item : items) {
    const auto n = gearAtHand(season, item, problem.request.yards, problem.request.date);
    if (!n) {
      problem.notes.push_back(message("planning.note.never_counted", item));
      continue;
    }
    problem.gear[item] = *n;
    if (*n == 0) problem.notes.push_back(message("planning.note.none_at_hand", item));
  }
}

base::Result<BoostProblem> checked(const apiary::Season& season, const BoostRequest& request) {
  BoostProblem problem;
  problem.request = request;
  auto& yards = problem.request.yards;
  yards.clear();
  base::Failure unknown;
  for (const auto& y : request.yards) {
    if (!season.yard(y)) unknown.messages.push_back(message("planning.unknown_yard", y.str()));
    if (std::find(yards.begin(), yards.end(), y) == yards.end()) yards.push_back(y);
  }
  if (!unknown.messages.empty()) return unknown;
  if (yards.empty()) return base::fail(message("planning.no_yard"));
  problem.target = request.target.value_or(request.date.plusDays(kTargetDays));
  if (problem.target < request.date) {
    return base::fail(message("planning.target_before", problem.target.iso(), request.date.iso()));
  }
  return problem;
}

}  // namespace

bool isVisit(const BoostOption& option) {
  return option.colony.blank();
}

base::Result<BoostProblem> makeBoostProblem(const apiary::Season& season,
                                            const BoostRequest& request) {
  auto made = checked(season, request);
  if (!made) return made;
  BoostProblem& problem = *made;
  const BoostFigures f = boostFigures(season, problem.notes);
  if (f.hours > 0) problem.hours = f.hours;
  problem.evidenceDays = static_cast<int>(f.evidenceDays);
  const Parties parties = findParties(season, problem, f);
  OptionMaker maker(season, problem, parties, f);

  const auto donorsFor = [&](const base::YardId& yard, bool here) {
    std::vector<const Donor*> out;
    for (const Donor& d : parties.donors) {
      if ((d.party.yard == yard) == here) out.push_back(&d);
    }
    if (!here && out.size() > kElsewhere) {
      std::stable_sort(out.begin(), out.end(), [](const Donor* a, const Donor* b) {
        return a->limit.bees > b->limit.bees;
      });
      out.resize(kElsewhere);
    }
    return out;
  };
  std::map<base::YardId, std::pair<std::vector<const Donor*>, std::vector<const Donor*>>> givers;
  for (const auto& y : problem.request.yards) {
    givers[y] = {donorsFor(y, true), donorsFor(y, false)};
  }
  for (const auto* group : {&parties.receivers, &parties.queenAtFault}) {
    const bool unite = group == &parties.queenAtFault;
    for (const Party& p : *group) {
      maker.begin(p);
      const auto& [home, away] = givers.at(p.yard);
      if (!unite) maker.alone(p);
      // The same yard goes first: others come in only where it has nobody to give.
      if (!maker.withDonors(p, home, unite)) maker.withDonors(p, away, unite);
      maker.leave(p, home.empty() && away.empty());
    }
  }
  addVisits(problem, f);
  addRules(problem, f);
  addGear(season, problem);
  std::sort(problem.options.begin(), problem.options.end(),
            [](const BoostOption& a, const BoostOption& b) { return a.id < b.id; });
  return made;
}

}  // namespace outyard::planning
