// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/printed_boosts.h"

#include <memory>

#include "core/planning/printed_plan.h"
#include "core/session/task_done.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Event;
using apiary::EventKind;
using apiary::Goods;
using apiary::Method;
using apiary::Plan;
using apiary::PlanRow;
using apiary::Task;
using apiary::Unit;
using base::message;

CommandPtr keepPrintedPlan(planning::AcceptedPlan printed) {
  return verb(
      message("session.title.keep_sheet", printed.plan.yard.str()), std::nullopt,
      [=](Checker& c) {
        if (printed.rows.empty()) return;
        if (c.season().find<Plan>(printed.plan.plan.str())) {
          c.fault(message("session.plan_exists", printed.plan.plan.str()));
        }
        c.row(printed.plan);
        c.yard(printed.plan.yard);
        for (const PlanRow& row : printed.rows) {
          c.row(row);
          c.hive(row.hive);
          if (row.donorHive) c.hive(*row.donorHive);
        }
      },
      [=](ChangeBuilder& b) {
        if (printed.rows.empty()) return;
        b.put(printed.plan);
        for (const PlanRow& row : printed.rows) b.put(row);
      });
}

namespace {

/// The work, then its task set done where the verb does not tick it off by itself.
CommandPtr withTask(CommandPtr work, const Task& task, Date on) {
  base::Message title = work->title();
  std::vector<HiveStep> steps;
  const HiveId hive = task.hive.value();
  steps.push_back({hive, std::move(work)});
  steps.push_back({hive, setTaskState(task.task, apiary::TaskState::Done, on)});
  return together(std::move(title), std::move(steps));
}

}  // namespace

CommandPtr boostWork(const Task& task, Date on) {
  if (!task.method || !task.hive) return nullptr;
  const bool pair = task.otherHive.has_value();
  const bool some = task.what && task.amount && *task.amount > 0;
  switch (*task.method) {
    case Method::Room:
    case Method::NurseBees: {
      if (!some || (*task.method == Method::NurseBees && !pair)) return nullptr;
      const bool room = *task.method == Method::Room;
      return recordEvent(eventOf(task, room ? EventKind::FramesGiven : EventKind::BeesShaken, on));
    }
    case Method::SealedFrames:
      if (!some || !pair) return nullptr;
      return giveFrames(giftOf(task, on));
    case Method::Stack:
      if (!pair) return nullptr;
      return stackOver({*task.hive, *task.otherHive, on, Beneath::Excluder, true, task.task});
    case Method::ChangePlaces:
      if (!pair) return nullptr;
      return withTask(swapStands(*task.hive, *task.otherHive, on), task, on);
    case Method::Unite: {
      if (!pair) return nullptr;
      Uniting u;
      u.staysHive = *task.hive;
      u.goesHive = *task.otherHive;
      u.date = on;
      return withTask(unite(std::move(u)), task, on);
    }
    case Method::Feed:
    case Method::Leave:
      break;
  }
  return nullptr;
}

namespace {

/// Ids are made on each asking, so that the task that the plan brings can be ticked off at once.
class DoneAsPrinted final : public Command {
 public:
  explicit DoneAsPrinted(PrintedDone done) : m_done(std::move(done)) {}

  [[nodiscard]] base::Message title() const override {
    return message("session.title.done_as_printed", m_done.rows.size());
  }
  [[nodiscard]] base::Result<void> check(const apiary::Season& season) const override {
    base::SeededIds ids{~season.revision()};  // of a trial
    const base::FixedClock clock{base::Date{}, "9999-12-31T23:59:59Z"};
    return make(season, {ids, clock})->check(season);
  }
  [[nodiscard]] apiary::ChangeList changes(const apiary::Season& season,
                                           const Context& context) const override {
    return make(season, context)->changes(season, context);
  }
  [[nodiscard]] std::optional<Date> doneOn() const override { return m_done.date; }

 private:
  [[nodiscard]] CommandPtr make(const apiary::Season& season, const Context& context) const {
    const auto accepted = planning::acceptPrinted(season, m_done.printed, m_done.rows, m_done.date,
                                                  context.ids, context.clock.nowUtc(), m_done.word);
    std::vector<HiveStep> steps;
    steps.push_back({m_done.rows.empty() ? HiveId{} : m_done.rows.front().hive,
                     acceptPlan(accepted.plan, accepted.rows, accepted.tasks)});
    if (!m_done.printedAt.empty()) {
      // What was seen and done on the day, and is entered with it, was not known to the plan.
      const Plan plan = accepted.plan;
      steps.push_back({steps.back().hive, verb(
                                              title(), std::nullopt, [](Checker&) {},
                                              [plan, at = m_done.printedAt](ChangeBuilder& b) {
                                                Plan printed = plan;
                                                printed.acceptedAt = at;
                                                b.put(printed);
                                              })});
    }
    for (const PlanRow& row : m_done.rows) {
      for (const Task& task : accepted.tasks) {
        if (!planning::isWorkOf(task, row)) continue;
        CommandPtr work = boostWork(task, m_done.date);
        if (!work) work = setTaskState(task.task, apiary::TaskState::Done, m_done.date);
        steps.push_back({row.hive, std::move(work)});
      }
    }
    return together(title(), std::move(steps));
  }

  PrintedDone m_done;
};

}  // namespace

CommandPtr doneAsPrinted(PrintedDone done) {
  return std::make_unique<DoneAsPrinted>(std::move(done));
}

}  // namespace outyard::session
