// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/task_done.h"

#include <algorithm>
#include <utility>

#include "core/session/sheet_entry_parts.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Event;
using apiary::Inspection;
using apiary::TableId;
using apiary::Task;
using apiary::TaskState;
using base::message;
using base::TaskId;

namespace {

/// Work of which a look is the record, if there is one at all.
bool isLook(const Task& task) {
  return task.kind == "open" || task.kind == "look";
}

/// The first new record of the hives of the task among the changes; `link` is called with it.
std::optional<base::RecordId> recordOf(apiary::ChangeList& changes, const Task& task) {
  const auto fits = [&](const HiveId& hive) {
    return !task.hive || hive == *task.hive || hive == task.otherHive;
  };
  for (apiary::Change& change : changes) {
    if (change.before || !change.after || change.table != TableId::Events) continue;
    auto event = apiary::fromRow<Event>(*change.after);
    if (!fits(event.hive) && !(event.otherHive && fits(*event.otherHive))) continue;
    event.task = task.task;
    change.after = apiary::toRow(event);
    return event.record;
  }
  for (const apiary::Change& change : changes) {
    if (change.before || !change.after || change.table != TableId::Inspections) continue;
    const auto seen = apiary::fromRow<Inspection>(*change.after);
    if (fits(seen.hive)) return seen.record;
  }
  return std::nullopt;
}

class ForTask final : public Command {
 public:
  ForTask(TaskId task, Date on, CommandPtr work)
      : m_task(std::move(task)), m_on(on), m_work(std::move(work)) {}

  [[nodiscard]] base::Message title() const override { return m_work->title(); }
  [[nodiscard]] std::optional<Date> doneOn() const override { return m_on; }

  [[nodiscard]] base::Result<void> check(const apiary::Season& season) const override {
    Checker c(season);
    c.task(m_task);
    if (!c.ok()) return c.result();
    return m_work->check(season);
  }

  [[nodiscard]] apiary::ChangeList changes(const apiary::Season& season,
                                           const Context& context) const override {
    apiary::ChangeList all = m_work->changes(season, context);
    const Task before = *season.find<Task>(m_task.str());
    Task after = before;
    after.state = TaskState::Done;
    after.doneOn = m_on;
    after.doneRecord = recordOf(all, before);
    // A verb that knows of the task has ticked it off itself.
    const bool ticked = std::any_of(all.begin(), all.end(), [&](const apiary::Change& c) {
      return c.table == TableId::Tasks && c.key == m_task.str();
    });
    if (!ticked) {
      all.push_back({TableId::Tasks, m_task.str(), apiary::toRow(before), apiary::toRow(after)});
    }
    return all;
  }

 private:
  TaskId m_task;
  Date m_on;
  CommandPtr m_work;
};

CommandPtr finish(const apiary::Season& season, const Task& task, Date on) {
  EntryHead head;
  head.date = on;
  TickedTask ticked{task};
  ticked.asPlanned = wayOf(season, task, on) == TaskWay::Boost;
  return tickedTask(ticked, head);
}

}  // namespace

DoneNeeds doneNeeds(const apiary::Season& season, const Task& task, Date on) {
  if (wayOf(season, task, on) != TaskWay::Dialog) {
    return isLook(task) && task.hive ? DoneNeeds::Look : DoneNeeds::Day;
  }
  Task told = task;
  told.amount = 1;
  return !task.amount && wayOf(season, told, on) != TaskWay::Dialog ? DoneNeeds::Amount
                                                                    : DoneNeeds::Dialog;
}

bool doneWrites(const apiary::Season& season, const Task& task, Date on) {
  const TaskWay way = wayOf(season, task, on);
  return way != TaskWay::Done && way != TaskWay::Dialog;
}

CommandPtr finishTasks(const apiary::Season& season, std::vector<Task> tasks, Date on) {
  if (tasks.size() == 1) return finish(season, tasks.front(), on);
  std::vector<HiveStep> steps;
  for (const Task& task : tasks) {
    steps.push_back({task.hive.value_or(HiveId{}), finish(season, task, on)});
  }
  return together(message("session.title.tasks_done", static_cast<std::int64_t>(tasks.size())),
                  std::move(steps));
}

apiary::Event eventOf(const Task& task, apiary::EventKind kind, Date on) {
  apiary::Event e;
  e.kind = kind;
  e.date = on;
  e.hive = task.hive.value();
  e.colony = task.colony;
  e.otherHive = task.otherHive;
  e.otherColony = task.otherColony;
  e.what = task.what;
  e.amount = task.amount;
  e.unit = task.unit;
  e.task = task.task;
  return e;
}

FrameGift giftOf(const Task& task, Date on) {
  FrameGift gift;
  gift.toHive = task.hive.value();
  gift.fromHive = task.otherHive.value();
  gift.toColony = task.colony;
  gift.fromColony = task.otherColony;
  gift.date = on;
  gift.what = task.what.value();
  gift.amount = task.amount.value();
  gift.task = task.task;
  return gift;
}

CommandPtr forTask(TaskId task, Date on, CommandPtr work) {
  return std::make_unique<ForTask>(std::move(task), on, std::move(work));
}

CommandPtr moveTasks(std::vector<TaskId> tasks, Date to) {
  const auto count = static_cast<std::int64_t>(tasks.size());
  return verb(
      count == 1 ? message("session.title.move_task", to.iso())
                 : message("session.title.move_tasks", count, to.iso()),
      std::nullopt,
      [=](Checker& c) {
        for (const TaskId& id : tasks) c.task(id);
      },
      [=](ChangeBuilder& b) {
        for (const TaskId& id : tasks) {
          Task task = b.find<Task>(id.str()).value();
          const auto* visit =
              task.visit ? b.before().find<apiary::Visit>(task.visit->str()) : nullptr;
          if (visit && visit->date != to) {
            task.visit.reset();
            for (const auto& [key, other] : b.before().table<apiary::Visit>()) {
              if (other.yard == visit->yard && other.date == to) task.visit = other.visit;
            }
          }
          task.dueOn = task.plannedOn = to;
          // The window opens to the day; what it said of the other days stays true.
          if (task.earliest) task.earliest = std::min(*task.earliest, to);
          if (task.latest) task.latest = std::max(*task.latest, to);
          b.put(task);
        }
      });
}

CommandPtr dropTasks(std::vector<TaskId> tasks) {
  if (tasks.size() == 1) return setTaskState(tasks.front(), TaskState::Dropped, std::nullopt);
  const auto count = static_cast<std::int64_t>(tasks.size());
  return verb(
      message("session.title.tasks_dropped", count), std::nullopt,
      [=](Checker& c) {
        for (const TaskId& id : tasks) c.task(id);
      },
      [=](ChangeBuilder& b) {
        for (const TaskId& id : tasks) {
          Task task = b.find<Task>(id.str()).value();
          task.state = TaskState::Dropped;
          b.put(task);
        }
      });
}

}  // namespace outyard::session
