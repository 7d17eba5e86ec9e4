// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/session/commands.h"

/// What becomes of planned work: done, with the record that belongs to it, put off, or dropped. One
/// undo step each.
namespace outyard::session {

/// What must be known, besides the day, to mark a planned task as done.
enum class DoneNeeds {
  Day,     ///< nothing: it is ticked off, and its record says all
  Look,    ///< nothing; what was seen may be typed as an inspection
  Amount,  ///< how much, then its record says all
  Dialog,  ///< what moved, with what, who stayed: the dialog of that work asks
};
DoneNeeds doneNeeds(const apiary::Season& season, const apiary::Task& task, Date on);
/// True when a record is written besides the tick.
bool doneWrites(const apiary::Season& season, const apiary::Task& task, Date on);

/// The event that planned work is when it is done on that day as planned; the task is ticked off by
/// it. The task must name a hive.
apiary::Event eventOf(const apiary::Task& task, apiary::EventKind kind, Date on);
/// The combs that it gives; the task must name both hives, what and how many.
FrameGift giftOf(const apiary::Task& task, Date on);

/// Tasks done on that day. The rows are as planned, with an amount filled in where it was left out;
/// work whose own dialog was not asked is ticked off without a record.
CommandPtr finishTasks(const apiary::Season& season, std::vector<apiary::Task> tasks, Date on);
/// The work of a planned task, as its dialog made it: the record that `work` writes names the task,
/// and the task is done by it on that day.
CommandPtr forTask(base::TaskId task, Date on, CommandPtr work);
/// Not done: due on another day. Work in a visit goes into the visit of its yard on that day, where
/// one is planned, else it is in no visit.
CommandPtr moveTasks(std::vector<base::TaskId> tasks, Date to);
CommandPtr dropTasks(std::vector<base::TaskId> tasks);

}  // namespace outyard::session
