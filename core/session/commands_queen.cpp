// SPDX-License-Identifier: GPL-3.0-or-later
// Queens that come and go, swarms, and colonies that leave for good.
#include <algorithm>

#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::ColonyPlace;
using apiary::ColonyStay;
using apiary::Event;
using apiary::EventKind;
using apiary::HiveState;
using apiary::Queen;
using base::message;
using base::QueenId;

namespace {

Event lead(ChangeBuilder& b, EventKind kind, const HiveId& hive, Date date) {
  Event e;
  static_cast<apiary::RecordHead&>(e) = b.leadHead();
  e.kind = kind;
  e.date = date;
  e.hive = hive;
  return e;
}

/// Named in a record only where two share the hive.
std::optional<ColonyId> namedIn(const HiveState& state, const ColonyId& colony) {
  return state.stacked() ? std::optional(colony) : std::nullopt;
}

/// The colony lives there on the day and its stay goes on.
bool staysOn(Checker& c, const HiveState& state, const ColonyId& colony, Date date) {
  if (!state.colony(colony)) {
    c.fault(message("session.colony_not_there", colony.str(), state.hive.str(), date.iso()));
    return false;
  }
  if (openStay(c.season(), state.hive, colony, date)) return true;
  c.fault(message("session.stay_ended_later", colony.str(), state.hive.str(), date.iso()));
  return false;
}

/// Where the queen lives on the day or later; null when nowhere.
const ColonyStay* stayOfQueen(const apiary::Season& season, const QueenId& queen, Date date) {
  for (const auto& [key, stay] : season.table<ColonyStay>()) {
    if (season.counts(stay) && stay.queen == queen && (!stay.toDate || *stay.toDate > date)) {
      return &stay;
    }
  }
  return nullptr;
}

/// A new queen whose row can be written, or one that is known and lives nowhere else.
void checkQueen(Checker& c, const Queen& queen, Date date) {
  const std::string& id = queen.queen.str();
  if (const Queen* known = c.season().queen(queen.queen)) {
    if (!(queen == *known)) c.fault(message("session.queen_known", id));
    if (const auto* stay = stayOfQueen(c.season(), queen.queen, date)) {
      c.fault(message("session.queen_elsewhere", id, stay->hive.str()));
    }
    return;
  }
  c.name(id);
  c.row(queen);
  if (queen.year && *queen.year > date.year()) {
    c.fault(message("session.queen_year", id, std::to_string(*queen.year), date.iso()));
  }
}

/// The colony lives on where it is with another queen, or with none that is known. A new stay even
/// where nothing was known of the earlier one: what is said of her later means the new one.
void changeQueen(ChangeBuilder& b, const ColonyStay& now, Date date,
                 const std::optional<QueenId>& queen) {
  ColonyStay next = now;
  next.queen = queen;
  next.queenYear.reset();
  next.queenLine.clear();
  next.queenMarked.reset();
  if (now.fromDate == date) {
    if (next == now) return;
    static_cast<apiary::RecordHead&>(next) = b.stateHead();
    next.supersedes = now.record;
    b.put(next);
    return;
  }
  // Where the colony came from was said of its first days.
  next.origin.reset();
  next.parentColony.reset();
  b.endStay(now, date);
  b.startStay(next, now.hive, now.place.value_or(ColonyPlace::Main), date);
}

/// The stays of the hive that end when it goes, and what would speak against it.
std::vector<ColonyId> leaving(Checker& c, const HiveState& state,
                              const std::optional<ColonyId>& colony, Date date) {
  std::vector<ColonyId> out;
  if (colony) {
    if (staysOn(c, state, *colony, date)) out.push_back(*colony);
  } else {
    for (const auto& lives : state.colonies) {
      if (staysOn(c, state, lives.colony, date)) out.push_back(lives.colony);
    }
    c.noLaterPlace(state.hive, date);
  }
  c.nothingLater(state.hive, date);
  return out;
}

void checkText(Checker& c, const HiveId& hive, Date date, const std::string& detail) {
  Event probe;
  probe.hive = hive;
  probe.date = date;
  probe.detail = detail;
  c.row(probe);
}

CommandPtr leaves(base::Message title, EventKind kind, const Parting& p, bool carriedOff) {
  return verb(
      std::move(title), p.date,
      [=](Checker& c) {
        const auto state = c.standing(p.hive, p.date);
        if (!state) return;
        leaving(c, *state, p.colony, p.date);
        if (!p.colony && state->stacked()) {
          c.fault(message("session.take_off_first", p.hive.str()));
        }
        checkText(c, p.hive, p.date, p.detail);
        if (carriedOff) c.healthy(state->yard, p.date);
      },
      [=](ChangeBuilder& b) {
        const HiveState state = apiary::hiveOn(b.before(), p.hive, p.date);
        Event e = lead(b, kind, p.hive, p.date);
        e.colony = p.colony;
        e.detail = p.detail;
        b.put(e);
        for (const auto& lives : state.colonies) {
          if (p.colony && lives.colony != *p.colony) continue;
          b.endStay(*openStay(b.before(), p.hive, lives.colony, p.date), p.date);
        }
      });
}

/// A colony of a new name for an empty hive.
void checkNewcomer(Checker& c, const HiveState& state, const ColonyId& colony, Date date) {
  c.name(colony.str());
  if (!state.colonies.empty()) {
    c.fault(
        message("session.target_not_empty", state.hive.str(), state.colonies.front().colony.str()));
  }
  if (!c.season().stays(colony).empty()) {
    c.fault(message("session.colony_elsewhere", colony.str()));
  }
  for (const ColonyStay* s : c.season().journal<ColonyStay>(state.hive)) {
    if (s->fromDate > date) {
      c.fault(message("session.later_records", state.hive.str(), s->fromDate.iso(), date.iso()));
    }
  }
  if (state.boxes.empty()) c.fault(message("session.no_box_for_bees", state.hive.str()));
  c.healthy(state.yard, date);
}

}  // namespace

CommandPtr introduceQueen(QueenGiven g) {
  return verb(
      message("session.title.queen_introduced", g.queen.queen.str(), g.hive.str()), g.date,
      [=](Checker& c) {
        const auto state = c.standing(g.hive, g.date);
        if (!state) return;
        staysOn(c, *state, g.colony, g.date);
        checkQueen(c, g.queen, g.date);
        checkText(c, g.hive, g.date, g.detail);
        c.task(g.task);
        c.healthy(state->yard, g.date);
      },
      [=](ChangeBuilder& b) {
        Event e = lead(b, EventKind::QueenIntroduced, g.hive, g.date);
        e.colony = namedIn(apiary::hiveOn(b.before(), g.hive, g.date), g.colony);
        e.queen = g.queen.queen;
        e.method = g.method;
        e.detail = g.detail;
        e.task = g.task;
        b.put(e);
        if (!b.before().queen(g.queen.queen)) b.put(g.queen);
        changeQueen(b, *openStay(b.before(), g.hive, g.colony, g.date), g.date, g.queen.queen);
        if (g.task) b.tickOff(*g.task, e.record, g.date);
      });
}

CommandPtr recordQueenGone(QueenGone g) {
  const auto kind = g.removed ? EventKind::QueenRemoved : EventKind::QueenLost;
  return verb(
      message("session.title.event", kindName(kind), g.hive.str()), g.date,
      [=](Checker& c) {
        const auto state = c.standing(g.hive, g.date);
        if (!state) return;
        staysOn(c, *state, g.colony, g.date);
        checkText(c, g.hive, g.date, g.detail);
        c.task(g.task);
      },
      [=](ChangeBuilder& b) {
        const ColonyStay now = *openStay(b.before(), g.hive, g.colony, g.date);
        Event e = lead(b, kind, g.hive, g.date);
        e.colony = namedIn(apiary::hiveOn(b.before(), g.hive, g.date), g.colony);
        e.queen = now.queen;
        e.detail = g.detail;
        e.task = g.task;
        b.put(e);
        changeQueen(b, now, g.date, std::nullopt);
        if (g.task) b.tickOff(*g.task, e.record, g.date);
      });
}

CommandPtr markQueen(QueenMarking m) {
  return verb(
      message("session.title.event", kindName(EventKind::QueenMarked), m.hive.str()), m.date,
      [=](Checker& c) {
        const auto state = c.standing(m.hive, m.date);
        if (!state) return;
        staysOn(c, *state, m.colony, m.date);
        if (!m.marked && !m.clipped) c.fault(message("session.marking_empty", m.hive.str()));
        checkText(c, m.hive, m.date, m.detail);
      },
      [=](ChangeBuilder& b) {
        const ColonyStay now = *openStay(b.before(), m.hive, m.colony, m.date);
        Event e = lead(b, EventKind::QueenMarked, m.hive, m.date);
        e.colony = namedIn(apiary::hiveOn(b.before(), m.hive, m.date), m.colony);
        e.queen = now.queen;
        e.method = m.marked && m.clipped ? "marked clipped" : m.clipped ? "clipped" : "marked";
        e.detail = m.detail;
        b.put(e);
        if (now.queen) {
          if (auto queen = b.find<Queen>(now.queen->str())) {
            if (m.marked) queen->marked = true;
            if (m.clipped) queen->clipped = true;
            b.put(*queen);
          }
        }
        // The short cut of the stay goes before the queen's own row: both must say the same.
        if (m.marked && now.queenMarked != true && (!now.queen || now.queenMarked)) {
          ColonyStay same = now;
          static_cast<apiary::RecordHead&>(same) = b.stateHead();
          same.supersedes = now.record;
          same.queenMarked = true;
          b.put(same);
        }
      });
}

CommandPtr giveQueenCells(CellsGiven g) {
  Event event;
  event.kind = EventKind::QueenCellGiven;
  event.hive = g.hive;
  event.colony = g.colony;
  event.date = g.date;
  event.amount = g.cells;
  event.method = g.line;
  event.detail = g.detail;
  event.task = g.task;
  return verb(
      message("session.title.event", kindName(event.kind), g.hive.str()), g.date,
      [=](Checker& c) {
        const auto state = c.standing(g.hive, g.date);
        if (!state) return;
        c.colony(*state, g.colony, g.date);
        if (g.cells < 1 || g.cells > 10) c.fault(message("session.cells_amount", g.hive.str()));
        c.row(event);
        c.task(g.task);
        c.healthy(state->yard, g.date);
      },
      [=](ChangeBuilder& b) {
        Event e = event;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        b.put(e);
        if (e.task) b.tickOff(*e.task, e.record, e.date);
      });
}

CommandPtr recordSwarm(Swarm s) {
  return verb(
      message("session.title.event", kindName(EventKind::Swarmed), s.hive.str()), s.date,
      [=](Checker& c) {
        const auto state = c.standing(s.hive, s.date);
        if (!state) return;
        staysOn(c, *state, s.colony, s.date);
        checkText(c, s.hive, s.date, s.detail);
        if (!s.caughtIn) return;
        if (*s.caughtIn == s.hive) return c.fault(message("session.same_hive", s.hive.str()));
        const auto into = c.standing(*s.caughtIn, s.date);
        if (!into) return;
        checkNewcomer(c, *into, s.swarmColony.value_or(ColonyId{s.caughtIn->str()}), s.date);
        c.healthy(state->yard, s.date);
      },
      [=](ChangeBuilder& b) {
        const ColonyStay now = *openStay(b.before(), s.hive, s.colony, s.date);
        Event e = lead(b, EventKind::Swarmed, s.hive, s.date);
        e.colony = namedIn(apiary::hiveOn(b.before(), s.hive, s.date), s.colony);
        e.method = s.after ? "after" : "prime";
        e.otherHive = s.caughtIn;
        e.detail = s.detail;
        if (!s.after) e.queen = now.queen;
        b.put(e);
        // With a prime swarm the old queen goes; who follows her is not known yet.
        if (!s.after) changeQueen(b, now, s.date, std::nullopt);
        if (!s.caughtIn) return;
        Event hived = lead(b, EventKind::Installed, *s.caughtIn, s.date);
        ColonyStay stay;
        stay.colony = s.swarmColony.value_or(ColonyId{s.caughtIn->str()});
        stay.origin = apiary::ColonyOrigin::Swarm;
        stay.parentColony = s.colony;
        if (!s.after) stay.queen = now.queen;
        hived.colony = stay.colony;
        hived.queen = stay.queen;
        hived.method = std::string(apiary::code(apiary::ColonyOrigin::Swarm));
        b.put(hived);
        b.startStay(stay, *s.caughtIn, ColonyPlace::Main, s.date);
      });
}

CommandPtr recordPurchase(Purchase p) {
  return verb(
      message("session.title.bought", p.colony.str(), p.hive.str()), p.date,
      [=](Checker& c) {
        const auto state = c.standing(p.hive, p.date);
        if (!state) return;
        checkNewcomer(c, *state, p.colony, p.date);
        if (p.queen) checkQueen(c, *p.queen, p.date);
        checkText(c, p.hive, p.date, p.detail);
      },
      [=](ChangeBuilder& b) {
        Event e = lead(b, EventKind::Bought, p.hive, p.date);
        e.colony = p.colony;
        if (p.queen) e.queen = p.queen->queen;
        e.detail = p.detail;
        b.put(e);
        if (p.queen && !b.before().queen(p.queen->queen)) b.put(*p.queen);
        ColonyStay stay;
        stay.colony = p.colony;
        stay.queen = e.queen;
        stay.origin = apiary::ColonyOrigin::Bought;
        b.startStay(stay, p.hive, ColonyPlace::Main, p.date);
      });
}

CommandPtr recordSale(Parting p) {
  const auto title = message("session.title.event", kindName(EventKind::Sold), p.hive.str());
  return leaves(title, EventKind::Sold, p, true);
}

CommandPtr recordLoss(Parting p) {
  const auto title = message("session.title.event", kindName(EventKind::Lost), p.hive.str());
  return leaves(title, EventKind::Lost, p, false);
}

}  // namespace outyard::session
