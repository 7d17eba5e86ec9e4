// SPDX-License-Identifier: GPL-3.0-or-later
// The steps after a stack was made.
#include <algorithm>

#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::ColonyPlace;
using apiary::ColonyStay;
using apiary::Event;
using apiary::EventKind;
using apiary::HiveState;
using base::message;

namespace {

bool sideBySide(ColonyPlace place) {
  return place == ColonyPlace::Left || place == ColonyPlace::Right;
}

/// The hive holds two colonies on the day, and this one is the upper.
std::optional<HiveState> stackWith(Checker& c, const HiveId& hive, const ColonyId& upper,
                                   Date date) {
  auto state = c.standing(hive, date);
  if (!state) return std::nullopt;
  const auto* colony = state->colony(upper);
  if (!colony) {
    c.fault(message("session.colony_not_there", upper.str(), hive.str(), date.iso()));
  } else if (!state->stacked()) {
    c.fault(message("session.not_stacked", hive.str(), date.iso()));
  } else if (colony->place == ColonyPlace::Main || sideBySide(colony->place)) {
    c.fault(message("session.not_the_upper", upper.str(), hive.str()));
  } else {
    return state;
  }
  return std::nullopt;
}

const apiary::ColonyState* lowerOf(const HiveState& state, const ColonyId& upper) {
  for (const auto& c : state.colonies) {
    if (c.colony != upper && c.place == ColonyPlace::Main) return &c;
  }
  return nullptr;
}

}  // namespace

CommandPtr recordStackLook(StackLook look) {
  std::vector<HiveStep> steps;
  // Says first what is wrong with the whole; it writes nothing.
  steps.push_back({look.hive, verb(
                                  message("session.title.stack_look", look.hive.str()), look.date,
                                  [=](Checker& c) {
                                    if (!stackWith(c, look.hive, look.upper, look.date)) return;
                                    const bool seen = look.paperOpen || look.eggs ||
                                                      look.queenSeen || look.queenCells ||
                                                      look.seams || !look.notes.empty();
                                    if (!seen)
                                      c.fault(message("session.stack_look_empty", look.hive.str()));
                                    for (const auto& t : look.tasks) c.task(t);
                                  },
                                  [](ChangeBuilder&) {})});
  if (look.paperOpen.value_or(false)) {
    Event e;
    e.kind = EventKind::PaperOpen;
    e.date = look.date;
    e.hive = look.hive;
    e.colony = look.upper;
    steps.push_back({look.hive, recordEvent(e)});
  }
  apiary::Inspection i;
  i.hive = look.hive;
  i.colony = look.upper;
  i.date = look.date;
  i.eggsSeen = look.eggs;
  i.queenSeen = look.queenSeen;
  i.queenCells = look.queenCells;
  if (look.seams) {
    i.seams = look.seams;
    i.seamsView = apiary::SeamsView::Above;
  }
  i.reader = look.reader;
  i.notes = look.notes;
  const bool nest =
      look.eggs || look.queenSeen || look.queenCells || look.seams || !look.notes.empty();
  if (nest) steps.push_back({look.hive, recordInspection(i, {}, {})});
  for (const auto& task : look.tasks) {
    steps.push_back({look.hive, setTaskState(task, apiary::TaskState::Done, look.date)});
  }
  return together(message("session.title.stack_look", look.hive.str()), std::move(steps));
}

CommandPtr joinStack(StackJoining j) {
  return verb(
      message("session.title.join_stack", j.upper.str(), j.hive.str()), j.date,
      [=](Checker& c) {
        const auto state = stackWith(c, j.hive, j.upper, j.date);
        if (!state) return;
        c.task(j.task);
        const auto* lower = lowerOf(*state, j.upper);
        if (!lower || !openStay(c.season(), j.hive, j.upper, j.date) ||
            !openStay(c.season(), j.hive, lower->colony, j.date)) {
          c.fault(message("session.stay_ended_later", j.upper.str(), j.hive.str(), j.date.iso()));
        }
        if (state->boxes.empty()) c.fault(message("session.boxes_not_recorded", j.hive.str()));
        c.nothingLater(j.hive, j.date);
        c.healthy(state->yard, j.date);
      },
      [=](ChangeBuilder& b) {
        const HiveState state = apiary::hiveOn(b.before(), j.hive, j.date);
        Event e;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        e.kind = EventKind::United;
        e.date = j.date;
        e.hive = j.hive;
        e.colony = lowerOf(state, j.upper)->colony;
        e.otherColony = j.upper;
        e.task = j.task;
        b.put(e);
        if (j.task) b.tickOff(*j.task, e.record, j.date);
        b.endStay(*openStay(b.before(), j.hive, j.upper, j.date), j.date);
        auto boxes = state.boxes;
        // What parted the two goes; an excluder under a super stays.
        const auto first = std::find_if(boxes.begin(), boxes.end(),
                                        [&](const BoxState& box) { return box.colony == j.upper; });
        if (first != boxes.end()) first->beneath = Beneath::None;
        for (BoxState& box : boxes) box.colony.reset();
        b.setStack(j.hive, j.date, boxes);
      });
}

}  // namespace outyard::session
