// SPDX-License-Identifier: GPL-3.0-or-later
#include <map>
#include <set>
#include <tuple>
#include <utility>

#include "core/planning/rounds.h"
#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Task;
using apiary::TaskState;
using apiary::Visit;
using base::message;
using base::TaskId;
using base::VisitId;

namespace {

/// Where the work of the task is to be done on the day: where its hive stands, else its yard.
std::optional<YardId> yardOf(const apiary::Season& season, const Task& task, Date date) {
  if (task.hive && season.hive(*task.hive)) {
    const auto state = apiary::hiveOn(season, *task.hive, date);
    if (state.present) return state.yard;
  }
  return task.yard;
}

const Visit* known(Checker& c, const VisitId& id) {
  const auto* visit = c.season().find<Visit>(id.str());
  if (!visit) c.fault(message("session.unknown_visit", id.str()));
  return visit;
}

/// One visit of a yard on a day: two cards of the same yard would part its work by chance.
void alone(Checker& c, const YardId& yard, Date date, const std::optional<VisitId>& self) {
  for (const auto& [key, other] : c.season().table<Visit>()) {
    if (other.yard == yard && other.date == date && other.visit != self) {
      c.fault(message("session.visit_that_day", yard.str(), date.iso()));
    }
  }
}

/// A planned task whose work is to be done in that yard.
void fits(Checker& c, const TaskId& id, const YardId& yard, Date date) {
  if (!c.task(id)) return;
  const Task& task = *c.season().find<Task>(id.str());
  const auto at = yardOf(c.season(), task, date);
  if (!at) {
    c.fault(message("session.task_without_yard", task.hive ? task.hive->str() : id.str()));
  } else if (*at != yard) {
    c.fault(message("session.task_of_other_yard", task.hive ? task.hive->str() : id.str(),
                    at->str(), yard.str()));
  }
}

void fitsNew(Checker& c, const Task& task, const YardId& yard, Date date) {
  const auto at = yardOf(c.season(), task, date);
  if (at && *at != yard) {
    c.fault(message("session.task_of_other_yard", task.hive ? task.hive->str() : task.kind,
                    at->str(), yard.str()));
  }
}

void putIn(ChangeBuilder& b, Task task, const Visit& visit) {
  task.visit = visit.visit;
  task.plannedOn = visit.date;
  b.put(task);
}

/// Its day goes with the visit: the task is planned, but for no day.
void takeOut(ChangeBuilder& b, Task task) {
  task.visit.reset();
  if (task.state == TaskState::Planned) task.plannedOn.reset();
  b.put(task);
}

std::vector<Task> tasksOf(const apiary::Season& season, const VisitId& visit) {
  std::vector<Task> out;
  for (const auto& [key, task] : season.table<Task>()) {
    if (task.visit == visit) out.push_back(task);
  }
  return out;
}

}  // namespace

CommandPtr addVisit(Visit visit, std::vector<TaskId> planned) {
  return acceptRounds({{std::move(visit), false, std::move(planned), {}}});
}

CommandPtr moveVisit(VisitId id, Date date) {
  return moveVisits({id}, date);
}

CommandPtr moveVisits(std::vector<VisitId> ids, Date date) {
  const auto count = static_cast<std::int64_t>(ids.size());
  return verb(
      count == 1 ? message("session.title.move_visit", date.iso())
                 : message("session.title.move_visits", count, date.iso()),
      std::nullopt,
      [=](Checker& c) {
        std::set<YardId> yards;
        for (const VisitId& id : ids) {
          const Visit* visit = known(c, id);
          if (!visit || visit->date == date) continue;
          alone(c, visit->yard, date, id);
          if (!yards.insert(visit->yard).second) {
            c.fault(message("session.visit_that_day", visit->yard.str(), date.iso()));
          }
          for (const Task& task : tasksOf(c.season(), id)) {
            if (task.state == TaskState::Done) {
              c.fault(message("session.visit_was_made", visit->yard.str(), visit->date.iso()));
            }
          }
        }
      },
      [=](ChangeBuilder& b) {
        for (const VisitId& id : ids) {
          Visit visit = b.find<Visit>(id.str()).value();
          visit.date = date;
          b.put(visit);
          for (const Task& task : tasksOf(b.before(), id)) {
            if (task.state == TaskState::Planned) putIn(b, task, visit);
          }
        }
      });
}

CommandPtr editVisit(VisitId id, std::optional<base::TimeOfDay> time, std::string notes) {
  return verb(
      message("session.title.edit_visit"), std::nullopt,
      [=](Checker& c) {
        const Visit* visit = known(c, id);
        if (!visit) return;
        Visit after = *visit;
        after.time = time;
        after.notes = notes;
        c.row(after);
      },
      [=](ChangeBuilder& b) {
        Visit visit = b.find<Visit>(id.str()).value();
        visit.time = time;
        visit.notes = notes;
        b.put(visit);
      });
}

CommandPtr removeVisits(std::vector<VisitId> ids) {
  const auto count = static_cast<std::int64_t>(ids.size());
  return verb(
      count == 1 ? message("session.title.remove_visit")
                 : message("session.title.remove_visits", count),
      std::nullopt,
      [=](Checker& c) {
        for (const VisitId& id : ids) known(c, id);
      },
      [=](ChangeBuilder& b) {
        for (const VisitId& id : ids) {
          for (const Task& task : tasksOf(b.before(), id)) takeOut(b, task);
          if (b.find<Visit>(id.str())) b.remove<Visit>(id.str());
        }
      });
}

CommandPtr putIntoVisit(VisitId id, std::vector<TaskId> planned, std::vector<Task> fresh) {
  const auto count = static_cast<std::int64_t>(planned.size() + fresh.size());
  return verb(
      count == 1 ? message("session.title.put_into_visit")
                 : message("session.title.put_several_into_visit", count),
      std::nullopt,
      [=](Checker& c) {
        const Visit* visit = known(c, id);
        if (!visit) return;
        for (const TaskId& task : planned) fits(c, task, visit->yard, visit->date);
        for (const Task& task : fresh) {
          checkNewTask(c, task, false);
          fitsNew(c, task, visit->yard, visit->date);
        }
      },
      [=](ChangeBuilder& b) {
        const Visit visit = b.find<Visit>(id.str()).value();
        for (const TaskId& task : planned) putIn(b, b.find<Task>(task.str()).value(), visit);
        for (Task task : fresh) {
          if (task.task.blank()) task.task = TaskId{b.newId()};
          putIn(b, task, visit);
        }
      });
}

CommandPtr takeOutOfVisit(std::vector<TaskId> tasks) {
  const auto count = static_cast<std::int64_t>(tasks.size());
  return verb(
      count == 1 ? message("session.title.take_out_of_visit")
                 : message("session.title.take_several_out_of_visit", count),
      std::nullopt,
      [=](Checker& c) {
        for (const TaskId& id : tasks) {
          if (!c.task(id)) continue;
          const Task& task = *c.season().find<Task>(id.str());
          if (!task.visit) {
            c.fault(message("session.task_in_no_visit", task.hive ? task.hive->str() : id.str()));
          }
        }
      },
      [=](ChangeBuilder& b) {
        for (const TaskId& id : tasks) takeOut(b, b.find<Task>(id.str()).value());
      });
}

CommandPtr acceptRounds(std::vector<RoundVisit> visits) {
  std::int64_t tasks = 0;
  for (const RoundVisit& v : visits) {
    tasks += static_cast<std::int64_t>(v.planned.size() + v.fresh.size());
  }
  const base::Message title =
      visits.size() == 1
          ? message("session.title.add_visit", visits.front().visit.yard.str(),
                    visits.front().visit.date.iso())
          : message("session.title.accept_rounds", static_cast<std::int64_t>(visits.size()), tasks);
  return verb(
      title, std::nullopt,
      [=](Checker& c) {
        std::set<std::pair<YardId, Date>> days;
        std::set<std::string> ids;
        std::set<TaskId> taken;
        for (const RoundVisit& v : visits) {
          if (v.stands) {
            const Visit* standing = known(c, v.visit.visit);
            if (!standing) continue;
            if (standing->yard != v.visit.yard || standing->date != v.visit.date) {
              c.fault(message("session.visit_changed", v.visit.yard.str(), v.visit.date.iso()));
            }
          } else {
            if (!v.visit.visit.blank()) {
              c.name(v.visit.visit.str());
              if (c.season().find<Visit>(v.visit.visit.str()) ||
                  !ids.insert(v.visit.visit.str()).second) {
                c.fault(message("session.visit_exists", v.visit.visit.str()));
              }
            }
            c.row(v.visit);
            if (c.yard(v.visit.yard)) alone(c, v.visit.yard, v.visit.date, std::nullopt);
          }
          if (!days.insert({v.visit.yard, v.visit.date}).second) {
            c.fault(message("session.visit_that_day", v.visit.yard.str(), v.visit.date.iso()));
          }
          for (const TaskId& task : v.planned) {
            fits(c, task, v.visit.yard, v.visit.date);
            if (!taken.insert(task).second) c.fault(message("session.task_twice", task.str()));
          }
          for (const Task& task : v.fresh) {
            checkNewTask(c, task, false);
            fitsNew(c, task, v.visit.yard, v.visit.date);
            if (!task.task.blank() && !taken.insert(task.task).second) {
              c.fault(message("session.task_exists", task.task.str()));
            }
          }
        }
      },
      [=](ChangeBuilder& b) {
        for (const RoundVisit& v : visits) {
          Visit visit = v.visit;
          if (!v.stands) {
            if (visit.visit.blank()) visit.visit = VisitId{b.newId()};
            b.put(visit);
          }
          for (const TaskId& task : v.planned) putIn(b, b.find<Task>(task.str()).value(), visit);
          for (Task task : v.fresh) {
            if (task.task.blank()) task.task = TaskId{b.newId()};
            putIn(b, task, visit);
          }
        }
      });
}

std::vector<RoundVisit> roundVisits(const apiary::Season& season, const planning::RoundsPlan& plan,
                                    const planning::DueList& due,
                                    const std::function<std::string(const base::Message&)>& word,
                                    std::optional<Date> only) {
  std::map<std::pair<YardId, Date>, const Visit*> standing;
  for (const auto& [key, visit] : season.table<Visit>()) {
    standing.try_emplace({visit.yard, visit.date}, &visit);
  }
  std::vector<RoundVisit> out;
  for (const planning::RoundDay& day : plan.days) {
    if (only && day.date != *only) continue;
    for (const planning::RoundStop& stop : day.stops) {
      RoundVisit visit;
      if (const auto it = standing.find({stop.yard, day.date}); it != standing.end()) {
        visit.visit = *it->second;
        visit.stands = true;
      } else {
        visit.visit.yard = stop.yard;
        visit.visit.date = day.date;
      }
      for (const std::size_t i : stop.tasks) {
        const planning::DueTask& task = due.tasks.at(i);
        if (!task.task) {
          visit.fresh.push_back(planning::taskOf(task, TaskId{}, word));
        } else if (!visit.stands || task.visit != visit.visit.visit) {
          visit.planned.push_back(*task.task);
        }
      }
      if (!visit.stands || !visit.planned.empty() || !visit.fresh.empty()) {
        out.push_back(std::move(visit));
      }
    }
  }
  return out;
}

}  // namespace outyard::session
