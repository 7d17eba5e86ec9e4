// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::BoxRole;
using apiary::ColonyPlace;
using apiary::ColonyStay;
using apiary::Event;
using apiary::EventKind;
using apiary::HiveState;
using apiary::Unit;
using base::message;

namespace {

/// The state that a joint step starts from.
HiveState stateFor(const ChangeBuilder& b, const HiveId& hive, Date date) {
  return apiary::hiveOn(b.before(), hive, date);
}

/// The one colony of a hive that takes part; faults when there is none or are two.
std::optional<ColonyId> onlyColony(Checker& c, const HiveState& state, Date date) {
  if (state.colonies.size() > 1) {
    c.fault(message("session.already_stacked", state.hive.str()));
    return std::nullopt;
  }
  if (state.colonies.empty()) {
    c.fault(state.status == apiary::HiveStatus::Dead
                ? message("session.hive_dead", state.hive.str(), date.iso())
                : message("session.hive_empty", state.hive.str(), date.iso()));
    return std::nullopt;
  }
  if (state.colonies.front().place != ColonyPlace::Main) {
    c.fault(
        message("session.not_on_the_floor", state.colonies.front().colony.str(), state.hive.str()));
  }
  return state.colonies.front().colony;
}

/// A stay that goes on, so that it can be ended on the day.
bool staysOn(Checker& c, const HiveId& hive, const ColonyId& colony, Date date) {
  if (openStay(c.season(), hive, colony, date)) return true;
  c.fault(message("session.stay_ended_later", colony.str(), hive.str(), date.iso()));
  return false;
}

Event joint(ChangeBuilder& b, EventKind kind, const HiveId& hive, Date date) {
  Event e;
  static_cast<apiary::RecordHead&>(e) = b.leadHead();
  e.kind = kind;
  e.date = date;
  e.hive = hive;
  return e;
}

}  // namespace

CommandPtr stackOver(Stacking s) {
  return verb(
      message("session.title.stack", s.weakHive.str(), s.donorHive.str()), s.date,
      [=](Checker& c) {
        if (s.weakHive == s.donorHive) {
          return c.fault(message("session.same_hive", s.weakHive.str()));
        }
        const auto weak = c.standing(s.weakHive, s.date);
        const auto donor = c.standing(s.donorHive, s.date);
        if (!weak || !donor) return;
        c.task(s.task);
        if (s.between != Beneath::Excluder && s.between != Beneath::DoubleScreen &&
            s.between != Beneath::Board) {
          c.fault(
              message("session.set_over_without_excluder", s.weakHive.str(), s.donorHive.str()));
        }
        const auto up = onlyColony(c, *weak, s.date);
        const auto below = onlyColony(c, *donor, s.date);
        if (up) staysOn(c, s.weakHive, *up, s.date);
        if (below) staysOn(c, s.donorHive, *below, s.date);
        for (const auto* state : {&*weak, &*donor}) {
          if (state->boxes.empty()) {
            c.fault(message("session.boxes_not_recorded", state->hive.str()));
          }
          c.nothingLater(state->hive, s.date);
          c.healthy(state->yard, s.date);
        }
        const bool chambersOnly =
            std::all_of(weak->boxes.begin(), weak->boxes.end(),
                        [](const BoxState& b) { return b.role == BoxRole::Chamber; });
        if (!chambersOnly) c.fault(message("session.super_goes_first", s.weakHive.str()));
        if (weak->boxes.size() + donor->boxes.size() > 12) {
          c.fault(message("session.stack_too_high", s.donorHive.str(), 12));
        }
      },
      [=](ChangeBuilder& b) {
        const HiveState weak = stateFor(b, s.weakHive, s.date);
        const HiveState donor = stateFor(b, s.donorHive, s.date);
        const ColonyId up = weak.colonies.front().colony;
        const ColonyId below = donor.colonies.front().colony;
        Event e = joint(b, EventKind::Stacked, s.weakHive, s.date);
        e.colony = up;
        e.otherHive = s.donorHive;
        e.otherColony = below;
        e.method = std::string(apiary::code(s.between));
        e.detail = s.paper ? "paper" : "";
        e.amount = static_cast<double>(weak.boxes.size());
        e.unit = Unit::Boxes;
        e.task = s.task;
        b.put(e);
        const ColonyStay stay = *openStay(b.before(), s.weakHive, up, s.date);
        b.endStay(stay, s.date);
        b.startStay(stay, s.donorHive, placeOver(s.between), s.date);
        std::vector<BoxState> boxes = donor.boxes;
        for (BoxState& box : boxes) box.colony = below;
        for (std::size_t i = 0; i < weak.boxes.size(); ++i) {
          BoxState box = weak.boxes[i];
          box.colony = up;
          if (i == 0) box.beneath = s.between;
          boxes.push_back(box);
        }
        renumber(boxes);
        b.setStack(s.donorHive, s.date, boxes);
        b.setStack(s.weakHive, s.date, {});
        if (s.task) b.tickOff(*s.task, e.record, s.date);
      });
}

CommandPtr takeOff(TakingOff t) {
  return verb(
      message("session.title.take_off", t.colony.str(), t.toHive.str()), t.date,
      [=](Checker& c) {
        if (t.fromHive == t.toHive) return c.fault(message("session.same_hive", t.toHive.str()));
        const auto from = c.standing(t.fromHive, t.date);
        const auto to = c.standing(t.toHive, t.date);
        if (!from || !to) return;
        c.task(t.task);
        const auto* colony = from->colony(t.colony);
        const bool own = std::any_of(from->boxes.begin(), from->boxes.end(),
                                     [&](const BoxState& box) { return box.colony == t.colony; });
        if (!colony) {
          c.fault(
              message("session.colony_not_there", t.colony.str(), t.fromHive.str(), t.date.iso()));
        } else if (colony->place == ColonyPlace::Main) {
          c.fault(from->stacked() ? message("session.lower_stays", t.colony.str(), t.fromHive.str())
                                  : message("session.not_stacked", t.fromHive.str(), t.date.iso()));
        } else if (staysOn(c, t.fromHive, t.colony, t.date) && !own) {
          c.fault(message("session.boxes_not_recorded", t.fromHive.str()));
        }
        if (!to->colonies.empty()) {
          c.fault(message("session.target_not_empty", t.toHive.str(),
                          to->colonies.front().colony.str()));
        }
        for (const auto* state : {&*from, &*to}) {
          c.nothingLater(state->hive, t.date);
          c.healthy(state->yard, t.date);
        }
      },
      [=](ChangeBuilder& b) {
        const HiveState from = stateFor(b, t.fromHive, t.date);
        Event e = joint(b, EventKind::Unstacked, t.toHive, t.date);
        e.colony = t.colony;
        e.otherHive = t.fromHive;
        std::vector<BoxState> up, stay;
        for (const BoxState& box : from.boxes) {
          (box.colony == t.colony ? up : stay).push_back(box);
        }
        for (const auto& c : from.colonies) {
          if (c.colony != t.colony) e.otherColony = c.colony;
        }
        e.amount = static_cast<double>(up.size());
        e.unit = Unit::Boxes;
        e.task = t.task;
        b.put(e);
        if (t.task) b.tickOff(*t.task, e.record, t.date);
        const ColonyStay old = *openStay(b.before(), t.fromHive, t.colony, t.date);
        b.endStay(old, t.date);
        b.startStay(old, t.toHive, ColonyPlace::Main, t.date);
        for (auto* boxes : {&up, &stay}) {
          for (BoxState& box : *boxes) box.colony.reset();
          if (!boxes->empty()) boxes->front().beneath = Beneath::None;
          renumber(*boxes);
        }
        // Empty boxes that stood there give way to the colony's own.
        b.setStack(t.toHive, t.date, up);
        b.setStack(t.fromHive, t.date, stay);
      });
}

CommandPtr unite(Uniting u) {
  return verb(
      message("session.title.unite", u.goesHive.str(), u.staysHive.str()), u.date,
      [=](Checker& c) {
        if (u.staysHive == u.goesHive) {
          return c.fault(message("session.same_hive", u.staysHive.str()));
        }
        const auto stays = c.standing(u.staysHive, u.date);
        const auto goes = c.standing(u.goesHive, u.date);
        if (!stays || !goes) return;
        const auto staying = onlyColony(c, *stays, u.date);
        const auto going = onlyColony(c, *goes, u.date);
        if (staying) staysOn(c, u.staysHive, *staying, u.date);
        if (going) staysOn(c, u.goesHive, *going, u.date);
        if (c.queen(u.queenRemoved) && u.queenRemoved && staying && going) {
          const auto& kept =
              u.queenOfGoingStays ? goes->colonies.front().queen : stays->colonies.front().queen;
          if (kept && *kept == *u.queenRemoved) {
            c.fault(message("session.queen_stays_and_goes", u.queenRemoved->str()));
          }
        }
        for (const auto* state : {&*stays, &*goes}) {
          if (state->boxes.empty()) {
            c.fault(message("session.boxes_not_recorded", state->hive.str()));
          }
          c.nothingLater(state->hive, u.date);
          c.healthy(state->yard, u.date);
        }
        if (stays->boxes.size() + goes->boxes.size() > 12) {
          c.fault(message("session.stack_too_high", u.staysHive.str(), 12));
        }
      },
      [=](ChangeBuilder& b) {
        const HiveState stays = stateFor(b, u.staysHive, u.date);
        const HiveState goes = stateFor(b, u.goesHive, u.date);
        const ColonyId staying = stays.colonies.front().colony;
        const ColonyId going = goes.colonies.front().colony;
        Event e = joint(b, EventKind::United, u.staysHive, u.date);
        e.colony = staying;
        e.otherHive = u.goesHive;
        e.otherColony = going;
        e.queen = u.queenRemoved;
        e.amount = static_cast<double>(goes.boxes.size());
        e.unit = Unit::Boxes;
        b.put(e);
        const ColonyStay goingStay = *openStay(b.before(), u.goesHive, going, u.date);
        b.endStay(goingStay, u.date);
        if (u.queenOfGoingStays) {
          const ColonyStay old = *openStay(b.before(), u.staysHive, staying, u.date);
          b.endStay(old, u.date);
          ColonyStay next = old;
          next.queen = goingStay.queen;
          next.queenYear = goingStay.queenYear;
          next.queenLine = goingStay.queenLine;
          next.queenMarked = goingStay.queenMarked;
          b.startStay(next, u.staysHive, old.place.value_or(ColonyPlace::Main), u.date);
        }
        std::vector<BoxState> boxes = stays.boxes;
        boxes.insert(boxes.end(), goes.boxes.begin(), goes.boxes.end());
        for (BoxState& box : boxes) box.colony.reset();
        renumber(boxes);
        b.setStack(u.staysHive, u.date, boxes);
        b.setStack(u.goesHive, u.date, {});
      });
}

CommandPtr installColony(HiveId hive, ColonyId colony, Date date, apiary::ColonyOrigin origin,
                         std::optional<base::QueenId> queen) {
  return verb(
      message("session.title.install", colony.str(), hive.str()), date,
      [=](Checker& c) {
        const auto state = c.standing(hive, date);
        if (!state) return;
        c.name(colony.str());
        c.queen(queen);
        if (!state->colonies.empty()) {
          c.fault(message("session.target_not_empty", hive.str(),
                          state->colonies.front().colony.str()));
        }
        if (!c.season().stays(colony).empty()) {
          c.fault(message("session.colony_elsewhere", colony.str()));
        }
        for (const ColonyStay* s : c.season().journal<ColonyStay>(hive)) {
          if (s->fromDate > date) {
            c.fault(message("session.later_records", hive.str(), s->fromDate.iso(), date.iso()));
          }
        }
        c.healthy(state->yard, date);
      },
      [=](ChangeBuilder& b) {
        Event e = joint(b, EventKind::Installed, hive, date);
        e.colony = colony;
        e.queen = queen;
        e.method = std::string(apiary::code(origin));
        b.put(e);
        ColonyStay stay;
        stay.colony = colony;
        stay.queen = queen;
        stay.origin = origin;
        b.startStay(stay, hive, ColonyPlace::Main, date);
      });
}

CommandPtr recordDeath(HiveId hive, ColonyId colony, Date date, std::string cause) {
  return verb(
      message("session.title.death", colony.str()), date,
      [=](Checker& c) {
        const auto state = c.standing(hive, date);
        if (!state) return;
        if (!state->colony(colony)) {
          return c.fault(message("session.colony_not_there", colony.str(), hive.str(), date.iso()));
        }
        if (staysOn(c, hive, colony, date)) c.nothingLater(hive, date);
        if (cause.empty()) c.fault(message("session.cause_missing", colony.str()));
        Event e;
        e.date = date;
        e.hive = hive;
        e.kind = EventKind::Died;
        e.detail = cause;
        c.row(e);
      },
      [=](ChangeBuilder& b) {
        Event e = joint(b, EventKind::Died, hive, date);
        e.colony = colony;
        e.detail = cause;
        b.put(e);
        b.endStay(*openStay(b.before(), hive, colony, date), date);
      });
}

}  // namespace outyard::session
