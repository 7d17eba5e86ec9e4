// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/desk_facts.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <set>
#include <tuple>

#include "core/strength/estimate.h"

namespace outyard::planning {
namespace {

using base::message;

/// What loadOf counts for a piece of work.
bool takes(const DueTask& t, const std::string& item) {
  if (t.gear == item) return true;
  if (t.kind == "fed" && t.amount) {
    return apiary::code(t.what.value_or(apiary::Goods::Syrup11)) == item;
  }
  if (item == "treatment") return t.kind == "treated";
  if (item == "queen") return t.kind == "queen_introduced" || t.kind == "queen_cell_given";
  if (item == "paper") return t.kind == "stacked";
  return false;
}

/// Where the colony was looked at: it may live elsewhere by now.
std::optional<apiary::HiveState> hiveThen(const apiary::Season& season,
                                          const base::ColonyId& colony, base::Date date) {
  const auto hive = apiary::hiveOfColony(season, colony, date);
  if (!hive) return std::nullopt;
  return apiary::hiveOn(season, *hive, date);
}

/// Seams as they were counted that day, else as the counted bees come to.
double seamsSeen(const apiary::HiveState& hive, const base::ColonyId& colony, base::Date date,
                 double bees, const strength::FrameFigures& figures) {
  const auto* state = hive.colony(colony);
  const auto* look = state ? state->lastInspection : nullptr;
  if (look && look->date == date && look->seams) return *look->seams;
  return strength::seamsFromBees(bees, figures);
}

}  // namespace

DueList joined(const std::vector<const DueList*>& lists) {
  DueList all;
  if (!lists.empty()) all.ask = lists.front()->ask;
  all.ask.yards.clear();
  for (const DueList* list : lists) {
    all.tasks.insert(all.tasks.end(), list->tasks.begin(), list->tasks.end());
    all.yards.insert(all.yards.end(), list->yards.begin(), list->yards.end());
    all.forecasts.insert(all.forecasts.end(), list->forecasts.begin(), list->forecasts.end());
    for (const auto& note : list->notes) {
      if (std::find(all.notes.begin(), all.notes.end(), note) == all.notes.end()) {
        all.notes.push_back(note);
      }
    }
  }
  std::stable_sort(all.tasks.begin(), all.tasks.end(), [](const auto& a, const auto& b) {
    return std::tie(a.date, a.yard, a.hive, a.rule, a.kind) <
           std::tie(b.date, b.yard, b.hive, b.rule, b.kind);
  });
  std::stable_sort(all.yards.begin(), all.yards.end(),
                   [](const auto& a, const auto& b) { return a.yard < b.yard; });
  for (const auto& yard : all.yards) all.ask.yards.push_back(yard.yard);
  return all;
}

std::vector<RiskHive> hivesAtRisk(const DueList& due) {
  std::vector<RiskHive> out;
  std::map<std::pair<base::YardId, std::optional<base::HiveId>>, std::size_t> at;
  for (const std::size_t i : atRisk(due)) {
    const DueTask& t = due.tasks[i];
    const auto [it, fresh] = at.emplace(std::pair(t.yard, t.hive), out.size());
    if (fresh) out.push_back({t.yard, t.hive, {}});
    out[it->second].tasks.push_back(i);
  }
  return out;
}

std::vector<YardWork> workByYard(const DueList& due, const std::vector<RiskHive>& risk) {
  std::vector<YardWork> out;
  std::map<base::YardId, std::size_t> at;
  for (std::size_t i = 0; i < due.yards.size(); ++i) {
    at.emplace(due.yards[i].yard, out.size());
    out.push_back({due.yards[i].yard, {}, 0, 0, i});
  }
  for (std::size_t i = 0; i < due.tasks.size(); ++i) {
    const auto it = at.find(due.tasks[i].yard);
    if (it == at.end()) continue;
    out[it->second].tasks.push_back(i);
    out[it->second].overdue += due.tasks[i].overdue(due.ask.from) ? 1 : 0;
  }
  for (const RiskHive& r : risk) {
    if (const auto it = at.find(r.yard); it != at.end()) ++out[it->second].pressing;
  }
  for (YardWork& y : out) {
    std::stable_sort(y.tasks.begin(), y.tasks.end(), [&](std::size_t a, std::size_t b) {
      const DueTask &x = due.tasks[a], &z = due.tasks[b];
      const auto key = [&](const DueTask& t) {
        return std::tuple(!t.overdue(due.ask.from), t.overdue(due.ask.from) ? t.latest : t.date);
      };
      const auto p = key(x), q = key(z);
      return p != q ? p < q
                    : std::tie(x.hive, x.latest, x.rule) < std::tie(z.hive, z.latest, z.rule);
    });
  }
  std::stable_sort(out.begin(), out.end(), [&](const YardWork& a, const YardWork& b) {
    const auto key = [&](const YardWork& y) {
      return std::tuple(!due.yards[y.days].foulBrood.has_value(), -(y.pressing + y.overdue),
                        -static_cast<int>(y.tasks.size()));
    };
    return key(a) < key(b);
  });
  return out;
}

GearNeed gearNeed(const apiary::Season& season, const DueList& due) {
  std::vector<base::Message> notes;
  std::vector<std::size_t> all(due.tasks.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  const RoundLoad load = loadOf(season, due, all, due.ask.from, roundFigures(season, notes));
  GearNeed out;
  out.anything = !load.items.empty();
  for (const RoundItem& item : load.items) {
    if (!item.atHand) out.uncounted.push_back(item);
    if (item.missing() <= 0) continue;
    GearShort missing{item, {}};
    for (const std::size_t i : all) {
      if (takes(due.tasks[i], item.item)) missing.tasks.push_back(i);
    }
    out.missing.push_back(std::move(missing));
  }
  return out;
}

LastLooks lastLooks(const apiary::Season& season, const DueList& due, int days) {
  LastLooks out;
  const base::Date first = due.ask.from.plusDays(-days);
  for (const auto& f : due.forecasts) {
    const auto recent = [&](base::Date d) { return d > first && d <= due.ask.from; };
    std::optional<base::Date> last;
    if (!f.checks.empty()) last = f.checks.back().date;
    for (const auto& s : f.surprises) {
      if (!s.bees && (!last || s.date > *last)) last = s.date;
    }
    if (!last || !recent(*last)) continue;
    const auto hive = hiveThen(season, f.colony, *last);
    if (!hive) continue;
    ++out.looks;
    const auto now = hiveThen(season, f.colony, due.ask.from);
    LookOutside look;
    look.yard = now ? now->yard : hive->yard;
    look.hive = now ? now->hive : hive->hive;
    look.colony = f.colony;
    look.date = *last;
    if (!f.checks.empty() && f.checks.back().date == *last && !f.checks.back().within()) {
      const auto& check = f.checks.back();
      const auto figures = strength::framesMeant(season, *hive, f.colony).figures;
      const auto seams = [&](double bees) { return strength::seamsFromBees(bees, figures); };
      look.expected = {seams(check.expected.median), seams(check.expected.low),
                       seams(check.expected.high)};
      look.seen = seamsSeen(*hive, f.colony, *last, check.seen, figures);
      look.fewer = check.seen < check.expected.low;
      look.share = check.expected.median > 0 ? check.seen / check.expected.median : 1;
      // People read whole seams: what they cannot show is no surprise.
      const auto whole = look.expected.whole();
      const auto seen = static_cast<int>(std::lround(look.seen));
      if (look.fewer ? seen < whole.low : seen > whole.high) out.outside.push_back(look);
    }
    look.expected = {};
    look.seen = 0;
    // One line on brood, whatever kinds of it were counted, and one on stores.
    for (const bool stores : {false, true}) {
      const auto s = std::find_if(f.surprises.begin(), f.surprises.end(), [&](const auto& one) {
        return !one.bees && one.stores == stores && one.date == *last && one.expected > 0;
      });
      if (s == f.surprises.end()) continue;
      look.brood = !stores;
      look.stores = stores;
      look.fewer = s->fewer;
      look.share = s->seen / s->expected;
      out.outside.push_back(look);
    }
  }
  std::stable_sort(out.outside.begin(), out.outside.end(), [](const auto& a, const auto& b) {
    return std::tuple(b.date, a.yard, a.hive, a.stores, a.brood) <
           std::tuple(a.date, b.yard, b.hive, b.stores, b.brood);
  });
  return out;
}

base::Message lookText(const LookOutside& look) {
  if (look.brood || look.stores) {
    const auto percent = static_cast<std::int64_t>(std::lround(look.share * 100));
    // Of next to nothing a share says nothing.
    if (percent > 1000) {
      return look.stores ? message("planning.desk.far_more_stores")
                         : message("planning.desk.far_more_brood");
    }
    if (look.stores) {
      return look.fewer ? message("planning.desk.less_stores", percent)
                        : message("planning.desk.more_stores", percent);
    }
    return look.fewer ? message("planning.desk.less_brood", percent)
                      : message("planning.desk.more_brood", percent);
  }
  const auto whole = look.expected.whole();
  const double seen = std::round(look.seen * 4) / 4;
  if (whole.low == whole.high) return message("planning.desk.seams_one", seen, whole.low);
  return message("planning.desk.seams", seen, whole.low, whole.high);
}

base::Message lookHint(const LookOutside& look) {
  if (look.stores) {
    return look.fewer ? message("planning.desk.hint_less_stores")
                      : message("planning.desk.hint_more_stores");
  }
  if (look.brood) {
    return look.fewer ? message("planning.desk.hint_less_brood")
                      : message("planning.desk.hint_more_brood");
  }
  return look.fewer ? message("planning.desk.hint_fewer") : message("planning.desk.hint_more");
}

Trust trustOf(const DueList& due, int most) {
  std::vector<std::tuple<base::Date, base::ColonyId, bool>> looks;
  for (const auto& f : due.forecasts) {
    for (const auto& c : f.checks) looks.emplace_back(c.date, f.colony, c.within());
  }
  std::sort(looks.begin(), looks.end());
  Trust out;
  const auto wanted = static_cast<std::size_t>(std::max(0, most));
  const auto skip = looks.size() > wanted ? looks.size() - wanted : 0;
  for (std::size_t i = skip; i < looks.size(); ++i) {
    ++out.looks;
    out.within += std::get<2>(looks[i]) ? 1 : 0;
  }
  return out;
}

DeskFacts deskFacts(const apiary::Season& season, DueList due) {
  DeskFacts out;
  out.due = std::move(due);
  out.risk = hivesAtRisk(out.due);
  out.yards = workByYard(out.due, out.risk);
  out.gear = gearNeed(season, out.due);
  out.looks = lastLooks(season, out.due);
  out.trust = trustOf(out.due);
  return out;
}

}  // namespace outyard::planning
