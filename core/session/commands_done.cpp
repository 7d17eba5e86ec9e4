// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::BoxRole;
using apiary::Event;
using apiary::EventKind;
using apiary::Goods;
using apiary::HiveState;
using apiary::Unit;
using base::message;

namespace {

bool plainKind(EventKind kind) {
  switch (kind) {
    case EventKind::Fed:
    case EventKind::Treated:
    case EventKind::TreatmentOff:
    case EventKind::Harvested:
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
    case EventKind::BeesShaken:
    case EventKind::FramesMoved:
    case EventKind::FramesGiven:
    case EventKind::FramesTaken:
    case EventKind::QueenCellGiven:
      return true;
    default:
      return false;
  }
}

base::Message useInstead(EventKind kind) {
  switch (kind) {
    case EventKind::BoxAdded:
    case EventKind::BoxRemoved:
    case EventKind::Reversed:
    case EventKind::Supered:
    case EventKind::ExcluderOn:
    case EventKind::ExcluderOff:
      return message("session.use_change_stack", kindName(kind));
    case EventKind::Stacked:
      return message("session.use_stack_over", kindName(kind));
    case EventKind::Unstacked:
      return message("session.use_take_off", kindName(kind));
    case EventKind::United:
      return message("session.use_unite", kindName(kind));
    case EventKind::PlacesChanged:
      return message("session.use_swap", kindName(kind));
    case EventKind::Moved:
      return message("session.use_move", kindName(kind));
    case EventKind::Installed:
    case EventKind::Split:
      return message("session.use_install", kindName(kind));
    case EventKind::Died:
      return message("session.use_death", kindName(kind));
    case EventKind::QueenIntroduced:
    case EventKind::QueenLost:
    case EventKind::QueenRemoved:
      return message("session.use_queen", kindName(kind));
    case EventKind::Swarmed:
    case EventKind::Sold:
    case EventKind::Bought:
    case EventKind::Lost:
      return message("session.use_colony", kindName(kind));
    case EventKind::Verdict:
      return message("session.use_verdict", kindName(kind));
    default:
      return message("session.use_tables", kindName(kind));
  }
}

/// Kinds that may be said of a hive in which no bees live.
bool withoutBees(EventKind kind) {
  switch (kind) {
    case EventKind::Note:
    case EventKind::Harvested:
    case EventKind::FramesTaken:
    case EventKind::Wrapped:
    case EventKind::Unwrapped:
    case EventKind::TreatmentOff:
    case EventKind::Robbed:
    case EventKind::Bloom:
    case EventKind::Poisoned:
      return true;
    default:
      return false;
  }
}

/// Kinds that carry bees, combs, honey or cells into or out of the hive.
bool carries(const Event& e) {
  switch (e.kind) {
    case EventKind::BeesShaken:
    case EventKind::FramesMoved:
    case EventKind::FramesGiven:
    case EventKind::FramesTaken:
    case EventKind::Harvested:
    case EventKind::QueenCellGiven:
      return true;
    case EventKind::Fed:
      return e.what == Goods::HoneyComb;
    default:
      return false;
  }
}

bool isFeed(const std::optional<Goods>& what) {
  return what && (*what == Goods::Syrup11 || *what == Goods::Syrup21 || *what == Goods::Fondant ||
                  *what == Goods::DrySugar || *what == Goods::HoneyComb ||
                  *what == Goods::PollenPatty || *what == Goods::PollenFeed);
}

int count(const std::vector<BoxState>& boxes, BoxRole role) {
  return static_cast<int>(std::count_if(boxes.begin(), boxes.end(),
                                        [role](const BoxState& b) { return b.role == role; }));
}
int excluders(const std::vector<BoxState>& boxes) {
  return static_cast<int>(std::count_if(boxes.begin(), boxes.end(), [](const BoxState& b) {
    return b.beneath == Beneath::Excluder;
  }));
}

bool stackKind(EventKind kind) {
  return kind == EventKind::BoxAdded || kind == EventKind::BoxRemoved ||
         kind == EventKind::Reversed || kind == EventKind::Supered ||
         kind == EventKind::ExcluderOn || kind == EventKind::ExcluderOff;
}

/// What the kind says must be what the boxes do; a hive without any boxes so far fits all kinds.
bool fits(EventKind kind, const std::vector<BoxState>& before, const std::vector<BoxState>& after) {
  if (before.empty()) return true;
  switch (kind) {
    case EventKind::BoxAdded:
      return after.size() > before.size();
    case EventKind::BoxRemoved:
      return after.size() < before.size();
    case EventKind::Reversed:
      return after.size() == before.size();
    case EventKind::Supered:
      return count(after, BoxRole::Super) > count(before, BoxRole::Super);
    case EventKind::ExcluderOn:
      return excluders(after) > excluders(before);
    case EventKind::ExcluderOff:
      return excluders(after) < excluders(before);
    default:
      return false;
  }
}

bool movesBoxes(const std::vector<BoxState>& before, const std::vector<BoxState>& after) {
  const auto types = [](const std::vector<BoxState>& boxes) {
    std::vector<std::pair<std::string, BoxRole>> out;
    for (const auto& b : boxes) out.emplace_back(b.frameType, b.role);
    std::sort(out.begin(), out.end());
    return out;
  };
  return types(before) != types(after);
}

void checkParty(Checker& c, const HiveState& state, const std::optional<ColonyId>& named,
                bool needsBees, Date date) {
  if (needsBees || named || state.colonies.size() > 1) {
    c.colony(state, named, date);
  } else if (state.status == apiary::HiveStatus::Dead) {
    // Combs of a dead colony go nowhere before the cause is known.
    c.fault(message("session.from_dead_hive", state.hive.str()));
  }
}

}  // namespace

CommandPtr recordEvent(Event event) {
  return verb(
      message("session.title.event", kindName(event.kind), event.hive.str()), event.date,
      [=](Checker& c) {
        if (!plainKind(event.kind)) return c.fault(useInstead(event.kind));
        const auto state = c.standing(event.hive, event.date);
        if (!state) return;
        c.row(event);
        c.queen(event.queen);
        c.task(event.task);
        c.sheet(event.sheet);
        if (event.otherYard) c.yard(*event.otherYard);
        if (event.colony || !withoutBees(event.kind)) c.colony(*state, event.colony, event.date);
        std::optional<HiveState> other;
        if (event.otherHive) {
          if (*event.otherHive == event.hive) {
            return c.fault(message("session.same_hive", event.hive.str()));
          }
          other = c.standing(*event.otherHive, event.date);
          if (other && event.otherColony) c.colony(*other, event.otherColony, event.date);
        } else if (event.kind == EventKind::FramesMoved) {
          c.fault(message("session.giver_missing", event.hive.str()));
        }
        if (carries(event)) {
          c.healthy(state->yard, event.date);
          if (other) c.healthy(other->yard, event.date);
        }
        if (event.kind == EventKind::Fed && !isFeed(event.what)) {
          c.fault(message("session.feed_missing", event.hive.str()));
        }
        if (event.kind == EventKind::Treated && event.method.empty()) {
          c.fault(message("session.product_missing", event.hive.str()));
        }
      },
      [=](ChangeBuilder& b) {
        Event e = event;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        b.put(e);
        if (e.task) b.tickOff(*e.task, e.record, e.date);
      });
}

CommandPtr changeStack(HiveId hive, Date date, std::vector<BoxState> boxes, EventKind kind) {
  std::sort(boxes.begin(), boxes.end(),
            [](const BoxState& a, const BoxState& b) { return a.position < b.position; });
  return verb(
      message("session.title.event", kindName(kind), hive.str()), date,
      [=](Checker& c) {
        const auto state = c.standing(hive, date);
        if (!state) return;
        if (!stackKind(kind)) return c.fault(message("session.not_a_stack_kind", kindName(kind)));
        if (boxes.empty()) return c.fault(message("session.stack_without_box", hive.str()));
        c.noLaterStack(hive, date);
        c.stack(*state, boxes);
        if (!fits(kind, state->boxes, boxes)) {
          c.fault(message("session.stack_not_as_said", hive.str(), kindName(kind),
                          state->boxes.size(), boxes.size()));
        }
        if (movesBoxes(state->boxes, boxes)) c.healthy(state->yard, date);
      },
      [=](ChangeBuilder& b) {
        HiveState state = apiary::hiveOn(b.before(), hive, date);
        const auto before = state.boxes;
        Event e;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        e.kind = kind;
        e.date = date;
        e.hive = hive;
        const std::size_t more = std::max(before.size(), boxes.size());
        const std::size_t less = std::min(before.size(), boxes.size());
        if (more != less) {
          e.amount = static_cast<double>(more - less);
          e.unit = Unit::Boxes;
        }
        b.put(e);
        std::vector<BoxState> own = boxes;
        // The colony is named only where two share the hive, or one is left above.
        if (state.colonies.empty() ||
            (!state.stacked() && state.colonies.front().place == apiary::ColonyPlace::Main)) {
          for (BoxState& box : own) box.colony.reset();
        }
        b.setStack(hive, date, own);
      });
}

CommandPtr giveFrames(FrameGift gift) {
  const bool bees = gift.what == Goods::NurseBees;
  const bool living =
      bees || gift.what == Goods::SealedBrood || gift.what == Goods::OpenBrood || gift.withBees;
  Event event;
  event.kind = EventKind::FramesMoved;
  event.date = gift.date;
  event.hive = gift.toHive;
  event.colony = gift.toColony;
  event.otherHive = gift.fromHive;
  event.otherColony = gift.fromColony;
  event.what = gift.what;
  event.withBees = bees || gift.withBees;
  event.amount = gift.amount;
  event.unit = bees ? Unit::Bees : Unit::Frames;
  event.task = gift.task;
  return verb(
      message("session.title.give", gift.fromHive.str(), gift.toHive.str()), gift.date,
      [=](Checker& c) {
        if (gift.toHive == gift.fromHive) {
          return c.fault(message("session.same_hive", gift.toHive.str()));
        }
        if (gift.what != Goods::HoneyComb && isFeed(gift.what)) {
          c.fault(message("session.not_a_gift", std::string(apiary::code(gift.what))));
        }
        if (!(gift.amount > 0) || (!bees && gift.amount > 60)) {
          c.fault(message("session.gift_amount", gift.toHive.str()));
        }
        c.row(event);
        c.task(gift.task);
        const auto to = c.standing(gift.toHive, gift.date);
        const auto from = c.standing(gift.fromHive, gift.date);
        if (!to || !from) return;
        checkParty(c, *to, gift.toColony, true, gift.date);
        checkParty(c, *from, gift.fromColony, living, gift.date);
        c.healthy(to->yard, gift.date);
        c.healthy(from->yard, gift.date);
      },
      [=](ChangeBuilder& b) {
        Event e = event;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        b.put(e);
        if (e.task) b.tickOff(*e.task, e.record, e.date);
      });
}

}  // namespace outyard::session
