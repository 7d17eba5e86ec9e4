// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/plan_room.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/adapt/words.h"
#include "ui/pairs/pairs_words.h"

namespace outyard::pairs {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Pairs)
};

constexpr double kSlack = 1e-6;  // the step in which limits are counted

int countOf(const planning::BoostOption* o, const std::string& item) {
  if (!o) return 0;
  const auto it = o->gear.find(item);
  return it == o->gear.end() ? 0 : it->second;
}

}  // namespace

PlanRoom::PlanRoom(const planning::BoostPlan& plan) : m_plan(plan) {
  const auto& rules = plan.problem.rules;
  m_sums.assign(rules.size(), 0);
  for (std::size_t r = 0; r < rules.size(); ++r) {
    for (std::size_t k = 0; k < rules[r].ids.size(); ++k) {
      m_rules[rules[r].ids[k]].emplace_back(r, rules[r].coefs.empty() ? 1 : rules[r].coefs[k]);
    }
  }
  for (const auto& id : plan.chosen) {
    const auto* o = plan.option(id);
    if (!o) continue;
    for (const auto& [item, count] : o->gear) m_gear[item] += count;
    m_hours += o->hours;
    if (o->donorColony) {
      Given& given = m_given[o->donorColony->str()];
      given.takes.bees += o->takes.bees;
      given.takes.broodFrames += o->takes.broodFrames;
      given.takes.stack += o->takes.stack;
      given.to.push_back(o);
    }
    if (const auto of = m_rules.find(id); of != m_rules.end()) {
      for (const auto& [rule, coef] : of->second) m_sums[rule] += coef;
    }
  }
}

QString PlanRoom::whoHas(const Given& given, const planning::BoostOption* without) const {
  QStringList names;
  for (const auto* o : given.to) {
    if (o != without) names << colonyText(o->colony, o->hive);
  }
  return names.join(QStringLiteral(", "));
}

QStringList PlanRoom::against(const planning::BoostOption& other) const {
  QStringList out;
  const auto& problem = m_plan.problem;
  const auto* now = m_plan.chosenFor(other.colony);
  for (const auto& [item, count] : other.gear) {
    const auto limit = problem.gear.find(item);
    if (limit == problem.gear.end()) continue;
    const auto used = m_gear.find(item);
    const int others = (used == m_gear.end() ? 0 : used->second) - countOf(now, item);
    if (others + count <= limit->second) continue;
    out << (limit->second == 0
                ? Words::tr("none at hand: %1").arg(gearText(item))
                : Words::tr("%1: %2 at hand, all in use").arg(gearText(item)).arg(limit->second));
  }
  if (problem.hours && m_hours - (now ? now->hours : 0) + other.hours > *problem.hours + kSlack) {
    out << Words::tr("the working hours of the day are used up");
  }
  if (other.donorColony) {
    const std::string& donor = other.donorColony->str();
    const auto cap = problem.donors.find(donor);
    const auto at = m_given.find(donor);
    if (cap != problem.donors.end() && at != m_given.end()) {
      planning::Takes left = at->second.takes;
      if (now && now->donorColony == other.donorColony) {
        left.bees -= now->takes.bees;
        left.broodFrames -= now->takes.broodFrames;
        left.stack -= now->takes.stack;
      }
      if (left.bees + other.takes.bees > cap->second.bees + kSlack ||
          left.broodFrames + other.takes.broodFrames > cap->second.broodFrames + kSlack ||
          left.stack + other.takes.stack > cap->second.stack) {
        out << Words::tr("%1 has no more to spare beside what it gives to %2")
                   .arg(colonyText(*other.donorColony, *other.donorHive), whoHas(at->second, now));
      }
    }
  }
  const auto mine = m_rules.find(other.id);
  if (mine == m_rules.end()) return out;
  const auto* had = now ? &now->id : nullptr;
  for (const auto& [rule, coef] : mine->second) {
    double sum = m_sums[rule] + coef;
    if (had) {
      if (const auto of = m_rules.find(*had); of != m_rules.end()) {
        for (const auto& [r, c] : of->second) sum -= r == rule ? c : 0;
      }
    }
    const auto& why = problem.rules[rule].why;
    // A drive that is not planned can be made; its cost is in the difference.
    if (why.key == "planning.rule.visit" || sum <= problem.rules[rule].atMost + kSlack) continue;
    // The donor's limit has said that it carries one already.
    if (!out.isEmpty() && why.key == "planning.rule.joint") continue;
    QString text = adapt::words(why);
    if (text.endsWith(u'.')) text.chop(1);  // it stands in a list
    if (!out.contains(text)) out << text;
  }
  return out;
}

const planning::BoostOption* PlanRoom::planB(const planning::BoostOption& chosen) const {
  const auto& forbids = m_plan.problem.request.forbids;
  std::vector<const planning::BoostOption*> others;
  for (const auto& o : m_plan.problem.options) {
    if (o.colony != chosen.colony || o.id == chosen.id || planning::isVisit(o)) continue;
    if (o.method == apiary::Method::Leave || o.net <= 0) continue;
    if (chosen.donorColony && o.donorColony == chosen.donorColony) continue;
    if (std::find(forbids.begin(), forbids.end(), o.id) != forbids.end()) continue;
    others.push_back(&o);
  }
  std::stable_sort(others.begin(), others.end(),
                   [](const auto* a, const auto* b) { return a->net > b->net; });
  for (const auto* o : others) {
    if (against(*o).isEmpty()) return o;
  }
  return nullptr;
}

}  // namespace outyard::pairs
