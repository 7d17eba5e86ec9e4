// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/dead_hives.h"

#include "core/apiary/comb_state.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Event;
using apiary::EventKind;
using apiary::HiveState;
using base::message;

namespace {

Event deathEvent(const DeathFound& f) {
  Event e;
  e.kind = EventKind::Died;
  e.date = f.date;
  e.hive = f.hive;
  e.colony = f.colony;
  e.method = f.cause;
  e.detail = f.detail;
  e.sheet = f.sheet;
  return e;
}

std::string fateCode(CombsFate fate) {
  switch (fate) {
    case CombsFate::Stored:
      return "stored";
    case CombsFate::Melted:
      return "melted";
    case CombsFate::Burnt:
      break;
  }
  return "burnt";
}

/// Combs that stand in the hive by the records.
int combsIn(const apiary::Season& season, const HiveId& hive, Date day) {
  int combs = 0;
  for (const auto& box : apiary::combsOfHive(season, hive, day).boxes) {
    combs += static_cast<int>(box.frames.size());
  }
  return combs;
}

/// Only combs that can be used again are combs taken: what was melted, burnt or set apart is said
/// in a note, so that neither gear nor forecast counts it.
EventKind kindOf(const CombsCleared& c) {
  const bool usable = c.fate == CombsFate::Stored && c.usable;
  return usable ? EventKind::FramesTaken : EventKind::Note;
}

Event clearedEvent(const apiary::Season& season, const CombsCleared& c) {
  Event e;
  e.kind = kindOf(c);
  e.date = c.date;
  e.hive = c.hive;
  if (e.kind == EventKind::FramesTaken) e.what = apiary::Goods::Drawn;
  if (const int combs = combsIn(season, c.hive, c.date); combs > 0) {
    e.amount = combs;
    e.unit = apiary::Unit::Frames;
  }
  e.method = fateCode(c.fate);
  e.detail = c.detail;
  e.sheet = c.sheet;
  return e;
}

}  // namespace

const Event* deathOf(const apiary::Season& season, const HiveId& hive, Date day) {
  const HiveState state = apiary::hiveOn(season, hive, day);
  if (state.status != apiary::HiveStatus::Dead) return nullptr;
  const Event* found = nullptr;
  for (const Event* e : season.journal<Event>(hive)) {
    if (e->kind == EventKind::Died && e->date <= day) found = e;
  }
  return found;
}

CommandPtr findDead(DeathFound f) {
  return verb(
      message("session.title.death", f.colony.str()), f.date,
      [=](Checker& c) {
        const auto death = recordDeath(f.hive, f.colony, f.date, f.detail)->check(c.season());
        if (!death) {
          for (const base::Message& why : death.failure().messages) c.fault(why);
        }
        c.sheet(f.sheet);
        c.row(deathEvent(f));
      },
      [=](ChangeBuilder& b) {
        Event e = deathEvent(f);
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        b.put(e);
        b.endStay(*openStay(b.before(), f.hive, f.colony, f.date), f.date);
      });
}

CommandPtr correctDeath(DeathSaid said) {
  const auto anew = [said](const Event& old) {
    Event e = old;
    if (!said.cause.empty()) e.method = said.cause;
    e.detail = said.detail;
    if (said.sheet) e.sheet = said.sheet;
    return e;
  };
  return verb(
      message("session.title.death_said", said.hive.str()), said.date,
      [=](Checker& c) {
        if (!c.standing(said.hive, said.date)) return;
        const Event* old = deathOf(c.season(), said.hive, said.date);
        if (!old) return c.fault(message("session.not_dead", said.hive.str(), said.date.iso()));
        if (said.detail.empty()) c.fault(message("session.cause_missing", said.hive.str()));
        c.sheet(said.sheet);
        c.row(anew(*old));
      },
      [=](ChangeBuilder& b) {
        const Event& old = *deathOf(b.before(), said.hive, said.date);
        Event e = anew(old);
        if (e == old) return;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        e.supersedes = old.record;
        b.put(e);
      });
}

CommandPtr clearCombs(CombsCleared cleared) {
  return verb(
      message("session.title.event", kindName(kindOf(cleared)), cleared.hive.str()), cleared.date,
      [=](Checker& c) {
        const auto state = c.standing(cleared.hive, cleared.date);
        if (!state) return;
        if (!state->colonies.empty()) {
          c.fault(message("session.combs_of_living", cleared.hive.str(),
                          state->colonies.front().colony.str()));
        }
        c.noLaterStack(cleared.hive, cleared.date);
        if (cleared.fate != CombsFate::Burnt) c.healthy(state->yard, cleared.date);
        c.sheet(cleared.sheet);
        c.row(clearedEvent(c.season(), cleared));
      },
      [=](ChangeBuilder& b) {
        const HiveState state = apiary::hiveOn(b.before(), cleared.hive, cleared.date);
        Event e = clearedEvent(b.before(), cleared);
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        b.put(e);
        // The same boxes from that day on, without their combs: the hive is cleared and stands
        // empty. How many frames are put in again nobody has said.
        auto boxes = state.boxes;
        for (BoxState& box : boxes) {
          box.frames = 0;
          box.colony.reset();
        }
        b.setStack(cleared.hive, cleared.date, boxes);
      });
}

}  // namespace outyard::session
