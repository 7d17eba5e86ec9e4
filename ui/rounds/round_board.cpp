// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/round_board.h"

#include <algorithm>

namespace outyard::rounds {

using apiary::Task;
using apiary::TaskState;
using base::Date;

const planning::YardDay* dayOf(const planning::DueList& due, const base::YardId& yard, Date date) {
  for (const auto& y : due.yards) {
    if (y.yard != yard) continue;
    for (const auto& d : y.days) {
      if (d.date == date) return d.tmaxC ? &d : nullptr;
    }
  }
  return nullptr;
}

Warmth warmthOf(const planning::YardDay* day) {
  return day ? widgets::warmthOf(*day) : Warmth::Unknown;
}

bool BoardDay::proposed() const {
  return std::any_of(stops.begin(), stops.end(), [](const auto& s) { return s.proposed(); });
}

const BoardDay* RoundBoard::at(Date date) const {
  const auto it =
      std::find_if(days.begin(), days.end(), [&](const auto& d) { return d.date() == date; });
  return it == days.end() ? nullptr : &*it;
}

const BoardStop* RoundBoard::stop(Date date, const base::YardId& yard) const {
  const BoardDay* day = at(date);
  if (!day) return nullptr;
  for (const auto& s : day->stops) {
    if (s.yard == yard) return &s;
  }
  return nullptr;
}

std::size_t RoundBoard::visits() const {
  std::size_t out = 0;
  for (const auto& d : days) out += d.stops.size();
  return out;
}

planning::DueTask asDue(const apiary::Season& season, const Task& task, Date day) {
  planning::DueTask out;
  out.rule = "planned";
  out.kind = task.kind;
  if (task.hive) {
    const auto state = apiary::hiveOn(season, *task.hive, day);
    if (state.present) out.yard = state.yard;
  }
  if (out.yard.blank() && task.yard) out.yard = *task.yard;
  out.hive = task.hive;
  out.colony = task.colony;
  out.otherHive = task.otherHive;
  const Date due = task.dueOn.value_or(task.plannedOn.value_or(day));
  out.earliest = task.earliest.value_or(due);
  out.latest = std::max(out.earliest, task.latest.value_or(due));
  out.date = task.plannedOn.value_or(due);
  out.amount = task.amount;
  out.unit = task.unit;
  out.what = task.what;
  out.task = task.task;
  out.visit = task.visit;
  out.plannedWhy = task.why;
  out.why = task.why.empty() ? base::message("planning.due.planned")
                             : base::message("planning.due.planned_why", task.why);
  return out;
}

namespace {

struct Maker {
  const apiary::Season& season;
  const Proposal* proposal;
  RoundBoard& board;
  std::map<base::TaskId, std::size_t> index;  ///< planned tasks in board.due
  std::set<std::size_t> gone;                 ///< no work any more

  /// The list says which visit a task belonged to when it was worked out; the season says it now.
  void bringUpToDate() {
    auto& tasks = board.due.tasks;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      auto& t = tasks[i];
      if (!t.task) continue;
      const auto* row = season.find<Task>(t.task->str());
      if (!row || row->state != TaskState::Planned) {
        gone.insert(i);
        continue;
      }
      t.visit = row->visit;
      index[*t.task] = i;
    }
    // Work that became a task since the list was worked out is that task.
    for (const auto& [key, row] : season.table<Task>()) {
      if (row.state != TaskState::Planned || index.contains(row.task) || !row.yard) continue;
      for (std::size_t i = 0; i < tasks.size(); ++i) {
        auto& t = tasks[i];
        if (t.task || t.kind != row.kind || t.yard != *row.yard || t.hive != row.hive ||
            t.earliest != row.earliest || t.latest != row.latest) {
          continue;
        }
        t.task = row.task;
        t.visit = row.visit;
        index[row.task] = i;
        break;
      }
    }
  }

  std::size_t indexOf(const Task& task, Date day) {
    const auto [it, fresh] = index.try_emplace(task.task, board.due.tasks.size());
    if (fresh) board.due.tasks.push_back(asDue(season, task, day));
    return it->second;
  }

  BoardStop& stopAt(std::vector<BoardStop>& stops, const base::YardId& yard) {
    for (auto& s : stops) {
      if (s.yard == yard) return s;
    }
    stops.emplace_back();
    stops.back().yard = yard;
    return stops.back();
  }

  void fill(Date from, Date to) {
    std::map<Date, std::vector<BoardStop>> days;
    for (Date d = from; d <= to; d = d.plusDays(1)) days[d];
    std::map<base::VisitId, std::vector<const Task*>> byVisit;
    for (const auto& [key, task] : season.table<Task>()) {
      if (task.visit) byVisit[*task.visit].push_back(&task);
    }
    std::set<std::size_t> taken;  // by the proposal
    if (proposal) {
      for (const auto& day : proposal->plan.days) {
        for (const auto& s : day.stops) taken.insert(s.tasks.begin(), s.tasks.end());
      }
    }
    for (const auto& [key, visit] : season.table<apiary::Visit>()) {
      const auto at = days.find(visit.date);
      if (at == days.end()) continue;
      BoardStop& stop = stopAt(at->second, visit.yard);
      stop.visit = visit.visit;
      stop.time = visit.time;
      stop.notes = visit.notes;
      for (const Task* task : byVisit[visit.visit]) {
        if (task->state == TaskState::Done) stop.done.push_back(task->task);
        if (task->state != TaskState::Planned) continue;
        const std::size_t i = indexOf(*task, visit.date);
        if (!taken.contains(i)) stop.stop.tasks.push_back(i);
      }
    }
    if (proposal) {
      for (const auto& day : proposal->plan.days) {
        const auto at = days.find(day.date);
        if (at == days.end()) continue;
        for (const auto& s : day.stops) {
          BoardStop& stop = stopAt(at->second, s.yard);
          for (const std::size_t i : s.tasks) {
            if (gone.contains(i)) continue;
            stop.stop.tasks.push_back(i);
            const auto& visit = board.due.tasks[i].visit;
            if (!stop.visit || visit != stop.visit) stop.fresh.insert(i);
          }
        }
      }
    }
    for (auto& [date, stops] : days) board.days.push_back(arranged(date, std::move(stops)));
    alsoDue(taken);
  }

  BoardDay arranged(Date date, std::vector<BoardStop> stops) {
    BoardDay out;
    std::vector<planning::RoundStop> plain;
    for (auto& s : stops) {
      s.stop.yard = s.yard;
      std::sort(s.stop.tasks.begin(), s.stop.tasks.end());
      plain.push_back(s.stop);
    }
    out.day = planning::arrangedDay(season, board.due, date, std::move(plain), board.figures);
    for (const auto& planned : out.day.stops) {
      const auto it = std::find_if(stops.begin(), stops.end(),
                                   [&](const auto& s) { return s.yard == planned.yard; });
      out.stops.push_back(*it);
      out.stops.back().stop = planned;
    }
    return out;
  }

  void alsoDue(const std::set<std::size_t>& taken) {
    for (auto& day : board.days) {
      for (auto& stop : day.stops) {
        for (std::size_t i = 0; i < board.due.tasks.size(); ++i) {
          const auto& t = board.due.tasks[i];
          if (t.yard != stop.yard || t.visit || taken.contains(i) || gone.contains(i)) continue;
          const bool now =
              t.overdue(board.due.ask.from) || (t.earliest <= day.date() && day.date() <= t.latest);
          (now ? stop.alsoDue : stop.otherDue).push_back(i);
        }
      }
    }
  }
};

}  // namespace

RoundBoard makeBoard(const apiary::Season& season, const planning::DueList* due,
                     const Proposal* proposal, Date from, Date to) {
  RoundBoard board;
  if (proposal) {
    board.due = *proposal->due;
  } else if (due) {
    board.due = *due;
  } else {
    board.due.ask.from = from;
    board.due.ask.to = to;
  }
  std::vector<base::Message> notes;
  board.figures = planning::roundFigures(season, notes);
  Maker maker{season, proposal, board, {}, {}};
  maker.bringUpToDate();
  maker.fill(from, to);
  return board;
}

void moveProposed(Proposal& proposal, const apiary::Season& season,
                  const planning::RoundFigures& figures, const base::YardId& yard, Date from,
                  Date to) {
  auto& days = proposal.plan.days;
  std::optional<planning::RoundStop> moved;
  for (auto& day : days) {
    if (day.date != from) continue;
    const auto it = std::find_if(day.stops.begin(), day.stops.end(),
                                 [&](const auto& s) { return s.yard == yard; });
    if (it == day.stops.end()) continue;
    moved = *it;
    day.stops.erase(it);
  }
  if (!moved) return;
  auto target = std::find_if(days.begin(), days.end(), [&](const auto& d) { return d.date == to; });
  if (target == days.end()) {
    target = days.insert(
        std::find_if(days.begin(), days.end(), [&](const auto& d) { return d.date > to; }), {});
    target->date = to;
  }
  const auto same = std::find_if(target->stops.begin(), target->stops.end(),
                                 [&](const auto& s) { return s.yard == yard; });
  if (same == target->stops.end()) {
    target->stops.push_back(*moved);
  } else {
    same->tasks.insert(same->tasks.end(), moved->tasks.begin(), moved->tasks.end());
  }
  std::erase_if(days, [](const auto& d) { return d.stops.empty(); });
  for (auto& day : days) {
    if (day.date == from || day.date == to) {
      day = planning::arrangedDay(season, *proposal.due, day.date, day.stops, figures);
    }
  }
}

}  // namespace outyard::rounds
