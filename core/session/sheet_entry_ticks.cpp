// SPDX-License-Identifier: GPL-3.0-or-later
// What a task that was ticked on a sheet becomes.
#include "core/planning/method_table.h"
#include "core/session/printed_boosts.h"
#include "core/session/sheet_entry_parts.h"
#include "core/session/task_done.h"

namespace outyard::session {

using apiary::Event;
using apiary::EventKind;
using apiary::Task;

namespace {

TaskWay plainWay(const Task& task) {
  if (task.kind == "open" || task.kind == "look" || !task.hive) return TaskWay::Done;
  const auto kind = apiary::parseCode<EventKind>(task.kind);
  if (!kind) return TaskWay::Done;
  switch (*kind) {
    case EventKind::TreatmentOff:
    case EventKind::Note:
    case EventKind::QueenMarked:
    case EventKind::QueenSeenLaying:
    case EventKind::CellsRemoved:
    case EventKind::PaperOpen:
    case EventKind::Wrapped:
    case EventKind::Unwrapped:
    case EventKind::Robbed:
    case EventKind::Bloom:
    case EventKind::Poisoned:
    case EventKind::QueenCellGiven:
      return TaskWay::Event;
    case EventKind::Fed:
      return task.what && task.amount ? TaskWay::Event : TaskWay::Dialog;
    case EventKind::FramesGiven:
    case EventKind::FramesTaken:
    case EventKind::BeesShaken:
    case EventKind::Harvested:
      return task.amount ? TaskWay::Event : TaskWay::Dialog;
    case EventKind::FramesMoved:
      return task.what && task.amount && task.otherHive ? TaskWay::Gift : TaskWay::Dialog;
    default:
      // Boxes, stands, queens and whole colonies: each has a verb that must know more.
      return TaskWay::Dialog;
  }
}

}  // namespace

TaskWay wayOf(const apiary::Season& season, const Task& task, Date on) {
  const TaskWay plain = plainWay(task);
  // The stack, the union and the change of places of a plan: the card says how they are made. One
  // against which something speaks by now is set done, to be put right on the hive's own page.
  if (plain != TaskWay::Dialog || !task.plan || !task.method ||
      task.kind != planning::methodFigures(*task.method).taskKind) {
    return plain;
  }
  const CommandPtr work = boostWork(task, on);
  return work && work->check(season).ok() ? TaskWay::Boost : plain;
}

CommandPtr tickedTask(const TickedTask& ticked, const EntryHead& head) {
  const Task& task = ticked.task;
  switch (ticked.asPlanned ? TaskWay::Boost : plainWay(task)) {
    case TaskWay::Event: {
      Event e = eventOf(task, apiary::parseCode<EventKind>(task.kind).value(), head.date);
      e.time = head.from;
      if (!head.sheet.blank()) e.sheet = head.sheet;  // marked as done away from a sheet
      e.detail = task.why;
      return recordEvent(e);
    }
    case TaskWay::Gift:
      return giveFrames(giftOf(task, head.date));
    case TaskWay::Boost:
      return boostWork(task, head.date);
    case TaskWay::Done:
    case TaskWay::Dialog:
      break;
  }
  return setTaskState(task.task, apiary::TaskState::Done, head.date);
}

}  // namespace outyard::session
