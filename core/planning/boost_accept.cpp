// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/planning/boost.h"
#include "core/planning/boost_rows.h"
#include "core/planning/method_table.h"

namespace outyard::planning {
namespace {

using apiary::Goods;
using apiary::Method;
using apiary::Task;
using apiary::Unit;
using base::message;
using Word = std::function<std::string(const base::Message&)>;

constexpr double kFeedToKg = 8;  // stores after feeding, our assumption

std::string joined(const std::vector<base::Message>& messages, const Word& word) {
  std::string out;
  for (const auto& m : messages) {
    if (!out.empty()) out += ' ';
    out += word(m);
  }
  return out;
}

const strength::Judgement* judged(const BoostPlan& plan, const base::ColonyId& colony) {
  for (const auto& j : plan.problem.judgements) {
    if (j.colony == colony) return &j;
  }
  return nullptr;
}

class TaskMaker {
 public:
  TaskMaker(const BoostPlan& plan, const base::PlanId& id, base::IdSource& ids, const Word& word)
      : m_plan(plan), m_id(id), m_ids(ids), m_word(word) {}
  void tasksFor(const BoostOption& o, const std::string& why, std::vector<Task>& out);

 private:
  Task blank(const BoostOption& o);
  void amounts(const BoostOption& o, Task& t) const;
  [[nodiscard]] base::Date lastDay(const BoostOption& o) const;
  const BoostPlan& m_plan;
  const base::PlanId& m_id;
  base::IdSource& m_ids;
  const Word& m_word;
};

Task TaskMaker::blank(const BoostOption& o) {
  Task t;
  t.task = base::TaskId(m_ids.next());
  t.plan = m_id;
  t.method = o.method;
  const auto yard = m_plan.problem.yardOf.find(o.colony.str());
  if (yard != m_plan.problem.yardOf.end()) t.yard = yard->second;
  t.hive = o.hive;
  t.colony = o.colony;
  t.otherHive = o.donorHive;
  t.otherColony = o.donorColony;
  return t;
}

void TaskMaker::amounts(const BoostOption& o, Task& t) const {
  switch (o.method) {
    case Method::SealedFrames:
      t.what = Goods::SealedBrood;
      t.amount = o.framesMoved;
      t.unit = Unit::Frames;
      break;
    case Method::NurseBees:
      t.what = Goods::NurseBees;
      t.amount = o.beesMoved;
      t.unit = Unit::Bees;
      break;
    case Method::Room:
      t.what = Goods::Drawn;
      t.amount = o.framesMoved;
      t.unit = Unit::Frames;
      break;
    case Method::Feed: {
      const auto* j = judged(m_plan, o.colony);
      if (j && j->strength && j->strength->honeyKg) {
        // Fondant does in any weather; the wizard offers syrup on warm days.
        t.what = Goods::Fondant;
        t.amount = std::max(1.0, std::ceil(kFeedToKg - j->strength->honeyKg->median));
        t.unit = Unit::Kg;
      }
      break;
    }
    default:
      break;
  }
}

/// The plan holds while the looks at both colonies do.
base::Date TaskMaker::lastDay(const BoostOption& o) const {
  const int evidenceDays = m_plan.problem.evidenceDays;
  int left = evidenceDays;
  const auto age = [&](const base::ColonyId& c) {
    const auto* j = judged(m_plan, c);
    if (j && j->daysSinceSeen) left = std::min(left, evidenceDays - *j->daysSinceSeen);
  };
  age(o.colony);
  if (o.donorColony) age(*o.donorColony);
  return m_plan.problem.request.date.plusDays(std::max(0, left));
}

void TaskMaker::tasksFor(const BoostOption& o, const std::string& why, std::vector<Task>& out) {
  const MethodFigures& m = methodFigures(o.method);
  if (m.taskKind.empty()) return;
  const base::Date day = m_plan.problem.request.date;
  Task main = blank(o);
  main.kind = m.taskKind;
  main.earliest = day;
  main.dueOn = main.plannedOn = day;
  main.latest = lastDay(o);
  main.why = why;
  amounts(o, main);
  if (o.method == Method::Unite) {
    // The hive that stays is the one with the good queen.
    std::swap(main.hive, main.otherHive);
    std::swap(main.colony, main.otherColony);
    const auto yard = m_plan.problem.yardOf.find(o.donorColony->str());
    if (yard != m_plan.problem.yardOf.end()) main.yard = yard->second;
  }
  out.push_back(std::move(main));
  for (const Return& r : m.returns) {
    Task t = blank(o);
    t.kind = r.kind;
    t.earliest = day.plusDays(r.fromDay);
    t.latest = day.plusDays(r.toDay);
    t.dueOn = t.earliest;
    // After stacking and uniting the colony lives in the donor's hive.
    const bool joined = o.method == Method::Stack || (o.method == Method::Unite && r.atDonor);
    if (o.donorHive && (r.atDonor || joined)) {
      std::swap(t.hive, t.otherHive);
      if (r.atDonor) std::swap(t.colony, t.otherColony);
      const auto yard = m_plan.problem.yardOf.find(o.donorColony->str());
      if (yard != m_plan.problem.yardOf.end()) t.yard = yard->second;
    }
    t.why = m_word(base::message(std::string(r.why), o.hive.str(),
                                 o.donorHive ? o.donorHive->str() : std::string()));
    out.push_back(std::move(t));
  }
}

}  // namespace

BoostOption optionOf(const apiary::PlanRow& row) {
  BoostOption o;
  o.id = row.option;
  o.colony = row.colony;
  o.hive = row.hive;
  o.method = row.method.value_or(Method::Leave);
  o.donorColony = row.donorColony;
  o.donorHive = row.donorHive;
  o.beesMoved = row.beesMoved.value_or(0);
  o.framesMoved = row.framesMoved.value_or(0);
  o.gain = {row.gain.value_or(0), row.gainLow.value_or(0), row.gainHigh.value_or(0)};
  o.donorCost = row.donorCost.value_or(0);
  return o;
}

AcceptedPlan accept(const BoostPlan& plan, base::IdSource& ids, const std::string& nowUtc,
                    const Word& word) {
  const BoostProblem& problem = plan.problem;
  AcceptedPlan out;
  out.plan.plan = base::PlanId(ids.next());
  if (!problem.request.yards.empty()) out.plan.yard = problem.request.yards.front();
  out.plan.date = problem.request.date;
  out.plan.target = problem.target;
  out.plan.acceptedAt = nowUtc;
  out.plan.objective = plan.objective;
  out.plan.basis = problem.basis;
  if (problem.request.yards.size() > 1) {
    std::string names;
    for (const auto& y : problem.request.yards) names += (names.empty() ? "" : ", ") + y.str();
    out.plan.notes = word(message("planning.plan_yards", names));
  }
  TaskMaker maker(plan, out.plan.plan, ids, word);
  for (const auto& id : plan.chosen) {
    const BoostOption* o = plan.option(id);
    if (!o || isVisit(*o)) continue;
    const std::string why = joined(reasonsFor(plan, *o), word);
    apiary::PlanRow row;
    row.plan = out.plan.plan;
    row.option = o->id;
    row.colony = o->colony;
    row.hive = o->hive;
    if (const auto* j = judged(plan, o->colony)) row.verdict = j->verdict;
    row.method = o->method;
    row.donorColony = o->donorColony;
    row.donorHive = o->donorHive;
    row.beesMoved = o->beesMoved;
    row.framesMoved = o->framesMoved;
    row.gain = o->gain.median;
    row.gainLow = o->gain.low;
    row.gainHigh = o->gain.high;
    row.donorCost = o->donorCost;
    row.why = why;
    out.rows.push_back(std::move(row));
    maker.tasksFor(*o, why, out.tasks);
  }
  return out;
}

}  // namespace outyard::planning
