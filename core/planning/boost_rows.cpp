// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_rows.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/planning/boost_words.h"

namespace outyard::planning {
namespace {

using apiary::Method;
using base::Message;
using base::message;

bool contains(const std::vector<std::string>& sorted, const std::string& id) {
  return std::binary_search(sorted.begin(), sorted.end(), id);
}

/// The best option of the colony that stands and is not the given one.
template <class Accept>
const BoostOption* bestOther(const BoostPlan& plan, const BoostOption* chosen,
                             const base::ColonyId& colony, Accept&& accept) {
  const auto& forbids = plan.problem.request.forbids;
  const BoostOption* best = nullptr;
  for (const auto& o : plan.problem.options) {
    if (o.colony != colony || isVisit(o) || &o == chosen || !accept(o)) continue;
    if (std::find(forbids.begin(), forbids.end(), o.id) != forbids.end()) continue;
    if (!best || o.net > best->net || (o.net == best->net && o.id < best->id)) best = &o;
  }
  return best;
}

}  // namespace

const BoostOption* BoostPlan::option(const std::string& id) const {
  for (const auto& o : problem.options) {
    if (o.id == id) return &o;
  }
  return nullptr;
}

const BoostOption* BoostPlan::chosenFor(const base::ColonyId& colony) const {
  for (const auto& o : problem.options) {
    if (o.colony == colony && !isVisit(o) && contains(chosen, o.id)) return &o;
  }
  return nullptr;
}

const BoostOption* BoostPlan::secondBest(const base::ColonyId& colony) const {
  return bestOther(*this, chosenFor(colony), colony, [](const BoostOption&) { return true; });
}

Message optionWords(const BoostOption& o) {
  const std::string donor = o.donorHive ? o.donorHive->str() : std::string();
  const int combs = static_cast<int>(o.framesMoved);
  switch (o.method) {
    case Method::Leave:
      return message("planning.do.leave");
    case Method::Room:
      return message("planning.do.room");
    case Method::Feed:
      return message("planning.do.feed");
    case Method::SealedFrames:
      return combs == 1 ? message("planning.do.sealed_one", donor)
                        : message("planning.do.sealed", combs, donor);
    case Method::NurseBees:
      return message("planning.do.nurse", twoFigures(o.beesMoved), donor);
    case Method::Stack:
      return message("planning.do.stack", donor);
    case Method::ChangePlaces:
      return message("planning.do.swap", donor);
    case Method::Unite:
      return message("planning.do.unite", donor);
  }
  return message("planning.do.leave");
}

std::vector<Message> reasonsFor(const BoostPlan& plan, const BoostOption& chosen) {
  std::vector<Message> why = chosen.why;
  if (chosen.method != Method::Leave) {
    // What would be possible on a warmer day stands with the reasons for leaving it.
    for (const auto& o : plan.problem.options) {
      if (o.colony != chosen.colony || o.method != Method::Leave) continue;
      std::copy_if(o.why.begin(), o.why.end(), std::back_inserter(why),
                   [](const Message& m) { return m.key == "planning.weather.wait"; });
    }
  }
  const BoostOption* second = plan.secondBest(chosen.colony);
  if (!second) return why;
  const double less = hundredths(chosen.net - second->net);
  // By forecast the difference is in usable colonies, else in thousands of bees.
  const bool usable = plan.problem.basis == "forecast";
  if (less == 0) {
    why.push_back(message("planning.second_equal", optionWords(*second)));
  } else if (less > 0) {
    why.push_back(usable ? message("planning.second_usable", optionWords(*second), less)
                         : message("planning.second_best", optionWords(*second), less));
  } else if (usable) {
    why.push_back(message("planning.elsewhere_usable", optionWords(*second), -less));
  } else {
    // Better for this colony alone: the donor, the gear or the hours serve another one more.
    why.push_back(message("planning.better_elsewhere", optionWords(*second), -less));
  }
  const bool both = chosen.method != Method::Leave && second->method != Method::Leave;
  // Two options a fiftieth of a colony apart are one to the forecast.
  constexpr double kTellApart = 0.02;
  const bool equal =
      usable ? std::abs(chosen.net - second->net) < kTellApart
             : second->gain.median >= chosen.gain.low && second->gain.median <= chosen.gain.high;
  if (both && equal) {
    why.push_back(message("planning.about_equal", optionWords(*second)));
  }
  if (chosen.donorColony && second->donorColony == chosen.donorColony) {
    const BoostOption* other = bestOther(plan, &chosen, chosen.colony, [&](const BoostOption& o) {
      return o.donorColony && o.donorColony != chosen.donorColony && o.method == chosen.method;
    });
    if (other) {
      const double fewer = hundredths(chosen.net - other->net);
      const std::string& donor = other->donorHive->str();
      if (fewer <= 0) {
        why.push_back(message("planning.second_donor_equal", donor));
      } else {
        why.push_back(usable ? message("planning.second_donor_usable", donor, fewer)
                             : message("planning.second_donor", donor, fewer));
      }
    }
  }
  return why;
}

std::vector<BoostRow> boostRows(const BoostPlan& plan) {
  std::vector<BoostRow> rows;
  for (const auto& j : plan.problem.judgements) {
    BoostRow row{j.colony, j.hive, j.verdict, plan.chosenFor(j.colony), {}};
    if (row.option) row.why = reasonsFor(plan, *row.option);
    for (const auto* list : {&plan.problem.barred, &plan.problem.donorNotes}) {
      for (const auto& b : *list) {
        if (b.colony == j.colony) row.why.push_back(b.why);
      }
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace outyard::planning
