// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/due.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "core/planning/due_rules.h"

namespace outyard::planning {
namespace {

using apiary::HiveStatus;
using apiary::Task;
using base::Date;
using base::message;

/// Rows of the forecast: close enough for straight lines between them.
constexpr int kStep = 3;
/// Least look ahead, so that what falls due soon after the last day shows in its window.
constexpr int kAhead = 14;

bool named(std::string_view list, std::string_view word) {
  std::size_t at = 0;
  while (at < list.size()) {
    const std::size_t end = std::min(list.find(' ', at), list.size());
    if (list.substr(at, end - at) == word) return true;
    at = end + 1;
  }
  return false;
}

/// A planned task stands for a rule when it is at the same hive and one of its kinds; tasks named
/// as a look stand only for what falls into the same weeks.
bool standsFor(const DueTask& planned, const DueTask& due) {
  if (planned.hive != due.hive || !due.hive) return false;
  const DueRule* rule = findDueRule(due.rule);
  if (!rule || !named(rule->sameAs, planned.kind)) return false;
  if (planned.kind != "look" && planned.kind != "open") return true;
  return planned.earliest <= due.latest.plusDays(7) && due.earliest <= planned.latest.plusDays(7);
}

class Lister {
 public:
  Lister(const apiary::Season& season, const DueAsk& ask, DueList& out)
      : m_season(season), m_ask(ask), m_out(out), m_figures(dueFigures(season, out.notes)) {
    for (const auto& [key, yard] : season.table<apiary::Yard>()) {
      const bool wanted = ask.yards.empty() || std::find(ask.yards.begin(), ask.yards.end(),
                                                         yard.yard) != ask.yards.end();
      if (wanted) m_yards.emplace(yard.yard, yardFacts(season, yard.yard, ask));
    }
  }

  bool run(int threads, base::Progress& progress) {
    gather();
    forecast::ForecastAsk ask;
    ask.from = m_ask.from;
    ask.to = std::max(m_ask.to, m_ask.from.plusDays(kAhead));
    ask.stepDays = kStep;
    ask.seed = m_ask.seed;
    ask.members = m_ask.members;
    ask.leftAlone = true;
    std::vector<base::ColonyId> colonies;
    for (const auto& f : m_facts) colonies.push_back(f.colony);
    m_out.forecasts = forecast::forecastColonies(m_season, colonies, ask, threads, progress);
    if (progress.cancelled()) return false;
    std::map<base::ColonyId, const forecast::ColonyForecast*> byColony;
    for (const auto& f : m_out.forecasts) byColony.emplace(f.colony, &f);
    planned();
    for (ColonyFacts& facts : m_facts) {
      if (const auto it = byColony.find(facts.colony); it != byColony.end()) {
        facts.days = it->second->days;
      }
      colony(facts);
    }
    thinWashes();
    for (const auto& [id, yard] : m_yards) yardRows(yard);
    finish();
    return true;
  }

 private:
  void gather() {
    for (auto& [id, yard] : m_yards) {
      for (const auto& hive : apiary::yardOn(m_season, id, m_ask.from)) {
        if (!hive.present) continue;
        if (hive.status == HiveStatus::Dead) m_dead.push_back(hive);
        for (const auto& colony : hive.colonies) {
          m_facts.push_back(colonyFacts(m_season, yard, hive, colony, m_figures));
        }
      }
    }
  }

  /// Not every hive is washed each month: of those that nothing points at, a few in each yard.
  void thinWashes() {
    std::map<base::YardId, std::vector<std::size_t>> byYard;
    for (std::size_t i = m_plannedCount; i < m_out.tasks.size(); ++i) {
      if (m_out.tasks[i].rule == "wash") byYard[m_out.tasks[i].yard].push_back(i);
    }
    std::set<std::size_t> gone;
    for (auto& [yard, list] : byYard) {
      std::stable_sort(list.begin(), list.end(), [&](std::size_t a, std::size_t b) {
        return m_out.tasks[a].chance > m_out.tasks[b].chance;
      });
      const auto sample = static_cast<std::size_t>(due::days(m_figures.washSample));
      for (std::size_t k = sample; k < list.size(); ++k) {
        if (m_out.tasks[list[k]].chance < m_figures.leastChance) gone.insert(list[k]);
      }
    }
    std::vector<DueTask> kept;
    for (std::size_t i = 0; i < m_out.tasks.size(); ++i) {
      if (!gone.contains(i)) kept.push_back(std::move(m_out.tasks[i]));
    }
    m_out.tasks = std::move(kept);
  }

  [[nodiscard]] bool within(const DueTask& t) const { return t.earliest <= m_ask.to; }

  /// The first day of the window that is warm and dry enough; without any, the first day.
  void setDate(DueTask& t, const YardFacts& yard, int weather) {
    const Date first = std::max(t.earliest, m_ask.from);
    t.date = first;
    if (weather == 0) return;
    const double minC = weather == 2 ? m_figures.combMinC : m_figures.lidMinC;
    bool known = false;
    for (Date d = first; d <= std::max(t.latest, first.plusDays(3)); d = d.plusDays(1)) {
      if (yard.warm(d, minC, m_figures.dryMm)) {
        if (d <= std::max(t.latest, first)) t.date = d;
        return;
      }
      known = known || (yard.weather && yard.weather(d));
    }
    if (known) t.cautions.push_back(message("planning.due.caution_no_day", minC));
  }

  void planned() {
    if (!m_ask.planned) return;
    for (const auto& [key, task] : m_season.table<Task>()) {
      if (task.state != apiary::TaskState::Planned) continue;
      std::optional<base::YardId> yard = task.yard;
      if (task.hive) yard = apiary::hiveOn(m_season, *task.hive, m_ask.from).yard;
      if (!yard || !m_yards.contains(*yard)) continue;
      const Date today = m_ask.from;
      const Date due = task.dueOn.value_or(
          task.plannedOn.value_or(task.earliest.value_or(task.latest.value_or(today))));
      DueTask t;
      t.rule = "planned";
      t.kind = task.kind;
      t.yard = *yard;
      t.hive = task.hive;
      t.colony = task.colony;
      t.otherHive = task.otherHive;
      t.earliest = task.earliest.value_or(due);
      t.latest = std::max(t.earliest, task.latest.value_or(due));
      t.amount = task.amount;
      t.unit = task.unit;
      t.what = task.what;
      t.task = task.task;
      t.visit = task.visit;
      t.plannedWhy = task.why;
      t.why = task.why.empty() ? message("planning.due.planned")
                               : message("planning.due.planned_why", task.why);
      for (const DueRule& r : dueRules()) {
        if (r.kind == task.kind) t.minutes = r.minutes;
      }
      t.gear = gearOf(t);
      setDate(t, m_yards.at(*yard), 1);
      if (task.plannedOn && *task.plannedOn >= today) t.date = *task.plannedOn;
      if (within(t)) m_out.tasks.push_back(std::move(t));
    }
    m_plannedCount = m_out.tasks.size();
  }

  [[nodiscard]] std::string gearOf(const DueTask& t) const {
    if (t.kind == "fed") return t.what == apiary::Goods::Fondant ? "" : "feeder";
    if (t.kind == "stacked") return "excluder";
    if (t.kind == "united") return "paper";
    if ((t.kind != "supered" && t.kind != "box_added") || !t.hive) return {};
    for (const ColonyFacts& f : m_facts) {
      if (f.hive != *t.hive) continue;
      const std::string& type = f.superType.empty() ? f.chamberType : f.superType;
      return type.empty() ? std::string() : "super:" + type;
    }
    return {};
  }

  void colony(const ColonyFacts& facts) {
    for (const DueRule& rule : dueRules()) {
      auto t = applyRule(rule, facts, m_figures);
      if (!t || !within(*t)) continue;
      // Swarms have a threshold of their own, washes are thinned by yard.
      const bool own = rule.code == "swarm" || rule.code == "wash";
      if (!own && t->chance < m_figures.leastChance) continue;
      if (rule.moves && facts.yard->foulBrood) continue;
      const bool known = std::any_of(
          m_out.tasks.begin(), m_out.tasks.begin() + static_cast<std::ptrdiff_t>(m_plannedCount),
          [&](const DueTask& p) { return standsFor(p, *t); });
      if (known) continue;
      setDate(*t, *facts.yard, rule.weather);
      m_out.tasks.push_back(std::move(*t));
    }
  }

  void yardRows(const YardFacts& yard) {
    YardDays days;
    days.yard = yard.yard;
    days.foulBrood = yard.foulBrood;
    bool any = false;
    for (Date d = m_ask.from; d <= m_ask.to; d = d.plusDays(1)) {
      YardDay day;
      day.date = d;
      if (const auto w = yard.weather(d)) {
        any = true;
        day.tmaxC = w->tmaxC;
        day.rainMm = w->rainMm;
        day.lidWarm = yard.warm(d, m_figures.lidMinC, m_figures.dryMm);
        day.combWarm = yard.warm(d, m_figures.combMinC, m_figures.dryMm);
      }
      days.days.push_back(day);
    }
    if (!any) m_out.notes.push_back(message("planning.due.no_weather", yard.yard.str()));
    m_out.yards.push_back(std::move(days));
    if (yard.foulBrood) {
      DueTask t = due::task(m_ask.from, m_ask.from, 1,
                            message("planning.due.inspector", yard.foulBrood->str()));
      t.rule = "inspector";
      t.kind = "note";
      t.yard = yard.yard;
      t.hive = yard.foulBrood;
      t.date = m_ask.from;
      t.minutes = 0;
      t.cautions = {message("planning.caution.foul_brood")};
      m_out.tasks.push_back(std::move(t));
    }
  }

  void deadHives() {
    for (const auto& hive : m_dead) {
      if (hive.boxes.empty()) continue;
      const Date since = hive.diedOn.value_or(m_ask.from);
      DueTask t = due::task(since, since.plusDays(due::days(m_figures.deadDays)), 1,
                            message("planning.due.clear_dead", since.iso()));
      t.rule = "clear_dead";
      t.kind = "box_removed";
      t.yard = hive.yard;
      t.hive = hive.hive;
      t.date = std::max(since, m_ask.from);
      t.minutes = 10;
      t.cautions = {message("planning.due.caution_dead"), message("planning.caution.foul_brood")};
      m_out.tasks.push_back(std::move(t));
    }
  }

  void finish() {
    deadHives();
    std::stable_sort(m_out.tasks.begin(), m_out.tasks.end(), [](const auto& a, const auto& b) {
      return std::tie(a.date, a.yard, a.hive, a.rule, a.kind) <
             std::tie(b.date, b.yard, b.hive, b.rule, b.kind);
    });
  }

  const apiary::Season& m_season;
  const DueAsk& m_ask;
  DueList& m_out;
  DueFigures m_figures;
  std::map<base::YardId, YardFacts> m_yards;
  std::vector<ColonyFacts> m_facts;
  std::vector<apiary::HiveState> m_dead;
  std::size_t m_plannedCount = 0;
};

}  // namespace

DueList whatFallsDue(const apiary::Season& season, const DueAsk& ask, int threads,
                     base::Progress& progress) {
  DueList out;
  out.ask = ask;
  if (ask.to < ask.from) return out;
  Lister lister(season, ask, out);
  if (!lister.run(threads, progress)) return DueList{ask, {}, {}, {}, {}};
  return out;
}

Task taskOf(const DueTask& due, base::TaskId id,
            const std::function<std::string(const base::Message&)>& word) {
  Task t;
  t.task = std::move(id);
  t.kind = due.kind;
  t.yard = due.yard;
  t.hive = due.hive;
  t.colony = due.colony;
  t.otherHive = due.otherHive;
  t.what = due.what;
  t.amount = due.amount;
  t.unit = due.unit;
  t.earliest = due.earliest;
  t.latest = due.latest;
  t.dueOn = due.date;
  // A task holds the kind of work alone; where the rule has a name of its own, the reason keeps it.
  DueTask plain = due;
  plain.rule = "planned";
  const base::Message name = dueName(due);
  const std::string why = word(due.why);
  t.why = due.rule == "planned" || due.rule == due.kind || name.key == dueName(plain).key
              ? why
              : word(name) + ": " + why;
  return t;
}

std::vector<std::size_t> atRisk(const DueList& list) {
  // The order says what presses most; chances of less than one in three do not press.
  static constexpr std::array<std::string_view, 8> kPress{"inspector", "queen_check", "stores_out",
                                                          "treat",     "swarm",       "no_room",
                                                          "add_box",   "treat_off"};
  const auto rank = [](const DueTask& t) {
    return std::find(kPress.begin(), kPress.end(), t.rule) - kPress.begin();
  };
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < list.tasks.size(); ++i) {
    const DueTask& t = list.tasks[i];
    if (rank(t) < static_cast<std::ptrdiff_t>(kPress.size()) && t.chance >= 1.0 / 3) {
      out.push_back(i);
    }
  }
  std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) {
    const DueTask &x = list.tasks[a], &y = list.tasks[b];
    return std::tuple(rank(x), x.latest, -x.chance) < std::tuple(rank(y), y.latest, -y.chance);
  });
  return out;
}

}  // namespace outyard::planning
