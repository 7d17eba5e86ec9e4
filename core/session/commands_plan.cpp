// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::GearCount;
using apiary::Plan;
using apiary::PlanRow;
using apiary::Setting;
using apiary::SheetLine;
using apiary::SheetRow;
using apiary::Task;
using apiary::TaskState;
using base::message;

void checkNewTask(Checker& c, const Task& task, bool ofNewPlan) {
  if (!task.task.blank()) {
    c.name(task.task.str());
    if (c.season().find<Task>(task.task.str())) {
      c.fault(message("session.task_exists", task.task.str()));
    }
  }
  c.row(task);
  if (task.yard) c.yard(*task.yard);
  if (task.hive) c.hive(*task.hive);
  if (task.otherHive) c.hive(*task.otherHive);
  if (task.plan && !ofNewPlan && !c.season().find<Plan>(task.plan->str())) {
    c.fault(message("session.unknown_plan", task.plan->str()));
  }
  if (task.visit && !c.season().find<apiary::Visit>(task.visit->str())) {
    c.fault(message("session.unknown_visit", task.visit->str()));
  }
  if (task.state != TaskState::Planned) c.fault(message("session.task_starts_planned"));
}

namespace {

Task withId(const ChangeBuilder& b, Task task) {
  if (task.task.blank()) task.task = base::TaskId{b.newId()};
  return task;
}

/// True when the record that ticked the task off still counts.
bool recordStands(const apiary::Season& season, const base::RecordId& record) {
  if (const auto* e = season.find<apiary::Event>(record.str())) return season.counts(*e);
  if (const auto* i = season.find<apiary::Inspection>(record.str())) return season.counts(*i);
  return false;
}

}  // namespace

CommandPtr acceptPlan(Plan plan, std::vector<PlanRow> rows, std::vector<Task> tasks) {
  for (Task& t : tasks) {
    // A return visit, or what is done the day before, is not planned for the day of the work: it
    // would stand on that day's list instead of in its own window.
    const bool outside = t.plannedOn && ((t.earliest && *t.plannedOn < *t.earliest) ||
                                         (t.latest && *t.plannedOn > *t.latest));
    if (outside) t.plannedOn.reset();
  }
  return verb(
      message("session.title.accept_plan", plan.yard.str()), std::nullopt,
      [=](Checker& c) {
        if (!plan.plan.blank()) {
          c.name(plan.plan.str());
          if (c.season().find<Plan>(plan.plan.str())) {
            c.fault(message("session.plan_exists", plan.plan.str()));
          }
        }
        c.row(plan);
        c.yard(plan.yard);
        std::set<std::string> options;
        for (const PlanRow& r : rows) {
          c.row(r);
          c.hive(r.hive);
          if (r.donorHive) c.hive(*r.donorHive);
          if (!options.insert(r.option).second) {
            c.fault(message("session.option_twice", r.option));
          }
        }
        std::set<base::TaskId> ids;
        for (const Task& t : tasks) {
          checkNewTask(c, t, true);
          if (!t.task.blank() && !ids.insert(t.task).second) {
            c.fault(message("session.task_exists", t.task.str()));
          }
        }
      },
      [=](ChangeBuilder& b) {
        Plan accepted = plan;
        if (accepted.plan.blank()) accepted.plan = base::PlanId{b.newId()};
        accepted.acceptedAt = b.nowUtc();
        b.put(accepted);
        for (PlanRow r : rows) {
          r.plan = accepted.plan;
          b.put(r);
        }
        for (const Task& t : tasks) {
          Task task = withId(b, t);
          task.plan = accepted.plan;
          b.put(task);
        }
      });
}

CommandPtr addTask(Task task) {
  return verb(
      message("session.title.add_task", task.hive ? task.hive->str() : std::string()), std::nullopt,
      [=](Checker& c) { checkNewTask(c, task, false); },
      [=](ChangeBuilder& b) { b.put(withId(b, task)); });
}

CommandPtr addTasks(std::vector<Task> tasks) {
  const auto count = static_cast<std::int64_t>(tasks.size());
  return verb(
      message("session.title.add_tasks", count), std::nullopt,
      [=](Checker& c) {
        std::set<base::TaskId> ids;
        for (const Task& t : tasks) {
          checkNewTask(c, t, false);
          if (!t.task.blank() && !ids.insert(t.task).second) {
            c.fault(message("session.task_exists", t.task.str()));
          }
        }
      },
      [=](ChangeBuilder& b) {
        for (const Task& t : tasks) b.put(withId(b, t));
      });
}

CommandPtr setTaskState(base::TaskId id, TaskState state, std::optional<Date> doneOn) {
  const auto title = [&] {
    switch (state) {
      case TaskState::Done:
        return message("session.title.task_done");
      case TaskState::Dropped:
        return message("session.title.task_dropped");
      case TaskState::Planned:
        break;
    }
    return message("session.title.task_planned");
  }();
  return verb(
      title, state == TaskState::Done ? doneOn : std::nullopt,
      [=](Checker& c) {
        const Task* task = c.season().find<Task>(id.str());
        if (!task) return c.fault(message("session.unknown_task", id.str()));
        if (state == TaskState::Done && !doneOn) c.fault(message("session.done_when"));
        if (state != TaskState::Done && task->doneRecord &&
            recordStands(c.season(), *task->doneRecord)) {
          c.fault(message("session.task_has_record", task->doneOn ? task->doneOn->iso() : ""));
        }
      },
      [=](ChangeBuilder& b) {
        Task task = b.find<Task>(id.str()).value();
        task.state = state;
        if (state == TaskState::Done) {
          task.doneOn = doneOn;
        } else {
          task.doneOn.reset();
          task.doneRecord.reset();
        }
        b.put(task);
      });
}

CommandPtr keepSheet(SheetRow sheet, std::vector<SheetLine> lines) {
  return keepSheets({{std::move(sheet), std::move(lines)}});
}

CommandPtr keepSheets(std::vector<SheetToKeep> sheets) {
  const base::Message title =
      sheets.size() == 1
          ? message("session.title.keep_sheet", sheets.front().sheet.yard.str())
          : message("session.title.keep_sheets", static_cast<std::int64_t>(sheets.size()));
  return verb(
      title, std::nullopt,
      [=](Checker& c) {
        std::set<std::string> ids;
        for (const auto& [sheet, lines] : sheets) {
          if (!sheet.sheet.blank()) {
            c.name(sheet.sheet.str());
            if (c.season().find<SheetRow>(sheet.sheet.str()) ||
                !ids.insert(sheet.sheet.str()).second) {
              c.fault(message("session.sheet_exists", sheet.sheet.str()));
            }
          }
          c.row(sheet);
          c.yard(sheet.yard);
          std::set<int> numbers;
          for (const SheetLine& l : lines) {
            c.row(l);
            c.hive(l.hive);
            if (!numbers.insert(l.line).second) c.fault(message("session.line_twice", l.line));
          }
        }
      },
      [=](ChangeBuilder& b) {
        for (const auto& [sheet, lines] : sheets) {
          SheetRow kept = sheet;
          if (kept.sheet.blank()) kept.sheet = base::SheetId{b.newId()};
          if (kept.madeAt.empty()) kept.madeAt = b.nowUtc();
          b.put(kept);
          for (SheetLine l : lines) {
            l.sheet = kept.sheet;
            b.put(l);
          }
        }
      });
}

CommandPtr changeSetting(std::string name, std::string value, std::string source) {
  return verb(
      message("session.title.setting", name), std::nullopt,
      [=](Checker& c) {
        c.name(name);
        if (value.empty()) return;
        c.row(Setting{name, value, source});
        if (name == "working_date" && !Date::parse(value)) {
          c.fault(message("session.working_date", value));
        }
      },
      [=](ChangeBuilder& b) {
        if (!value.empty()) {
          b.put(Setting{name, value, source});
        } else if (b.find<Setting>(name)) {
          b.remove<Setting>(name);
        }
      });
}

CommandPtr nameUsable(double seams, double broodCombs, std::string source) {
  const std::array rows{Setting{"boost.usable_seams", base::shortest(seams), source},
                        Setting{"boost.usable_brood_combs", base::shortest(broodCombs), source}};
  return verb(
      message("session.title.usable"), std::nullopt,
      [=](Checker& c) {
        if (!(seams >= 0 && seams <= 30 && broodCombs >= 0 && broodCombs <= 30)) {
          c.fault(message("session.usable_range"));
          return;
        }
        for (const Setting& row : rows) c.row(row);
      },
      [=](ChangeBuilder& b) {
        for (const Setting& row : rows) b.put(row);
      });
}

CommandPtr countGear(GearCount count) {
  return verb(
      message("session.title.gear", count.item, count.place), count.date,
      [=](Checker& c) {
        c.row(count);
        if (count.place != "truck" && count.place != "shed" &&
            !c.season().yard(YardId{count.place})) {
          c.fault(message("session.gear_place", count.place));
        }
      },
      [=](ChangeBuilder& b) { b.put(count); });
}

namespace {

/// The maker's list as it is: checked only for standing on this very season.
class ReadyChanges final : public Command {
 public:
  ReadyChanges(base::Message title, apiary::ChangeList changes)
      : m_title(std::move(title)), m_changes(std::move(changes)) {}
  [[nodiscard]] base::Message title() const override { return m_title; }
  [[nodiscard]] base::Result<void> check(const apiary::Season& season) const override {
    std::map<std::pair<apiary::TableId, std::string>, std::optional<apiary::Row>> standing;
    for (const auto& c : m_changes) {
      const auto [it, fresh] = standing.try_emplace({c.table, c.key}, std::nullopt);
      if (fresh) it->second = season.row(c.table, c.key);
      if (it->second != c.before) {
        return base::fail(message("session.changed_meanwhile"));
      }
      it->second = c.after;
    }
    return {};
  }
  [[nodiscard]] apiary::ChangeList changes(const apiary::Season&, const Context&) const override {
    return m_changes;
  }

 private:
  base::Message m_title;
  apiary::ChangeList m_changes;
};

}  // namespace

CommandPtr applyChanges(base::Message title, apiary::ChangeList changes) {
  return std::make_unique<ReadyChanges>(std::move(title), std::move(changes));
}

}  // namespace outyard::session
