// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/session/comb_steps.h"

namespace outyard::session {

using apiary::BoxRole;
using apiary::Event;
using apiary::EventKind;
using apiary::FrameMove;
using apiary::Goods;
using apiary::HiveState;
using apiary::Unit;
using base::message;

namespace {

std::size_t indexOf(int position) {
  return static_cast<std::size_t>(position) - 1;
}

BoxState asBox(const apiary::CombBox& combs) {
  BoxState box;
  box.frameType = combs.frameType;
  box.role = combs.role;
  if (combs.countRecorded) box.frames = static_cast<int>(combs.frames.size());
  return box;
}

/// The box taken out of the stack: an excluder beneath it serves the box above from then on.
BoxState takeBox(std::vector<BoxState>& boxes, int position) {
  const auto it = boxes.begin() + static_cast<std::ptrdiff_t>(indexOf(position));
  BoxState box = *it;
  if (it + 1 != boxes.end() && (it + 1)->beneath == Beneath::None) (it + 1)->beneath = box.beneath;
  boxes.erase(it);
  if (!boxes.empty()) boxes.front().beneath = Beneath::None;
  box.beneath = Beneath::None;
  box.colony.reset();
  renumber(boxes);
  return box;
}

/// The box set in so that it has that position. Where an excluder lies there, a chamber comes
/// beneath it and a super over it.
void setBox(std::vector<BoxState>& boxes, BoxState box, int position, bool shared) {
  const auto at = std::min(indexOf(position), boxes.size());
  const auto it = boxes.begin() + static_cast<std::ptrdiff_t>(at);
  if (it != boxes.end() && at > 0 && box.role == BoxRole::Super &&
      it->beneath == Beneath::Excluder && box.beneath == Beneath::None) {
    std::swap(box.beneath, it->beneath);
  }
  if (shared && !box.colony && !boxes.empty()) {
    box.colony = at > 0 ? boxes[at - 1].colony : boxes.front().colony;
  }
  boxes.insert(it, std::move(box));
  renumber(boxes);
}

/// Boxes change places within the stack; what lies between them, and to whom a place belongs,
/// stays where it is.
std::vector<BoxState> reordered(std::vector<BoxState> boxes, int from, int to) {
  std::vector<BoxState> order = boxes;
  const BoxState moved = order[indexOf(from)];
  order.erase(order.begin() + static_cast<std::ptrdiff_t>(indexOf(from)));
  order.insert(order.begin() + static_cast<std::ptrdiff_t>(indexOf(to)), moved);
  for (std::size_t i = 0; i < order.size(); ++i) {
    order[i].beneath = boxes[i].beneath;
    order[i].colony = boxes[i].colony;
  }
  renumber(order);
  return order;
}

/// True when two chambers come to stand the other way round.
bool chambersTurn(const std::vector<BoxState>& boxes, int from, int to) {
  if (boxes[indexOf(from)].role != BoxRole::Chamber) return false;
  const auto [low, high] = std::minmax(from, to);
  for (int p = low; p <= high; ++p) {
    if (p != from && boxes[indexOf(p)].role == BoxRole::Chamber) return true;
  }
  return false;
}

EventKind addKind(const BoxState& box) {
  return box.role == BoxRole::Super ? EventKind::Supered : EventKind::BoxAdded;
}

/// Writes the colony of each box only where two share the hive, or one is left above.
std::vector<BoxState> own(const HiveState& hive, std::vector<BoxState> boxes) {
  const bool alone = hive.colonies.empty() ||
                     (!hive.stacked() && hive.colonies.front().place == apiary::ColonyPlace::Main);
  if (alone) {
    for (BoxState& box : boxes) box.colony.reset();
  }
  return boxes;
}

void putRow(ChangeBuilder& b, FrameMove m, Date date) {
  static_cast<apiary::RecordHead&>(m) = b.stateHead();
  m.date = date;
  b.put(m);
}

std::string detailOf(const std::optional<Goods>& fill) {
  if (!fill) return {};
  switch (*fill) {
    case Goods::Drawn:
      return "drawn";
    case Goods::Foundation:
      return "foundation";
    case Goods::HoneyComb:
      return "honey";
    default:
      return {};
  }
}

apiary::CombsState withOwner(const apiary::Season& season, const HiveId& hive,
                             const std::string& key, Date date) {
  std::vector<HiveId> hives{hive};
  if (auto owner = apiary::heapOwner(season, key)) hives.push_back(std::move(*owner));
  return apiary::combsAround(season, hives, date);
}

bool known(Checker& c, const HiveState& hive, int position) {
  if (position >= 1 && position <= static_cast<int>(hive.boxes.size())) return true;
  c.fault(message("session.no_such_box", hive.hive.str(), position, hive.boxes.size()));
  return false;
}

bool placeIn(Checker& c, const HiveState& hive, int position) {
  const int most = static_cast<int>(hive.boxes.size()) + 1;
  if (position >= 1 && position <= most) return true;
  c.fault(message("session.no_such_place", hive.hive.str(), position, most));
  return false;
}

/// A hive whose boxes change on the day.
std::optional<HiveState> changing(Checker& c, const HiveId& hive, Date date) {
  auto state = c.standing(hive, date);
  if (!state) return std::nullopt;
  c.noLaterStack(hive, date);
  noLaterMoves(c, hive, date);
  return state;
}

void checkWithin(Checker& c, const BoxMove& m, const HiveState& hive) {
  const int count = static_cast<int>(hive.boxes.size());
  if (m.toPosition < 1 || m.toPosition > count) {
    return c.fault(message("session.no_such_place", m.hive.str(), m.toPosition, count));
  }
  if (m.toPosition == m.position) return c.fault(message("session.stands_there"));
  const auto [low, high] = std::minmax(m.position, m.toPosition);
  for (int p = low; p <= high && hive.stacked(); ++p) {
    if (hive.boxes[indexOf(p)].colony != hive.boxes[indexOf(m.position)].colony) {
      return c.fault(message("session.across_colonies", m.hive.str()));
    }
  }
  c.stack(hive, reordered(hive.boxes, m.position, m.toPosition));
}

void checkMove(Checker& c, const BoxMove& m) {
  const auto from = changing(c, m.hive, m.date);
  if (!from || !known(c, *from, m.position)) return;
  if (m.toHive == m.hive) return checkWithin(c, m, *from);
  auto left = from->boxes;
  const BoxState box = takeBox(left, m.position);
  if (left.empty()) c.fault(message("session.stack_without_box", m.hive.str()));
  c.stack(*from, left);
  c.healthy(from->yard, m.date);
  notFromDead(c, *from);
  if (!m.toHive) {
    if (m.withBees && !from->colonies.empty() && box.role != BoxRole::Feeder) {
      c.fault(message("session.bees_on_the_heap"));
    }
    return;
  }
  const auto to = changing(c, *m.toHive, m.date);
  if (!to || !placeIn(c, *to, m.toPosition)) return;
  c.healthy(to->yard, m.date);
  beesFindColony(c, *to, m.withBees && !from->colonies.empty(), m.date);
  auto stack = to->boxes;
  setBox(stack, box, m.toPosition, to->stacked());
  c.stack(*to, stack);
}

void writeMove(ChangeBuilder& b, const BoxMove& m) {
  const HiveState from = apiary::hiveOn(b.before(), m.hive, m.date);
  Event e;
  static_cast<apiary::RecordHead&>(e) = b.leadHead();
  e.date = m.date;
  FrameMove row;
  row.otherHive = m.hive;
  row.otherBox = m.position;
  if (m.toHive == m.hive) {
    const bool turned = chambersTurn(from.boxes, m.position, m.toPosition);
    e.kind = turned ? EventKind::Reversed : EventKind::Note;
    if (!turned) e.method = "boxes_reordered";
    e.hive = m.hive;
    e.colony = colonyOfBox(from, m.position);
    b.put(e);
    row.hive = m.hive;
    row.box = m.toPosition;
    putRow(b, row, m.date);
    b.setStack(m.hive, m.date, own(from, reordered(from.boxes, m.position, m.toPosition)));
    return;
  }
  auto left = from.boxes;
  const BoxState box = takeBox(left, m.position);
  e.amount = 1;
  e.unit = Unit::Boxes;
  e.withBees = m.withBees;
  row.withBees = m.withBees;
  if (!m.toHive) {
    e.kind = EventKind::BoxRemoved;
    e.hive = m.hive;
    e.colony = colonyOfBox(from, m.position);
    b.put(e);
    row.hive = m.hive;
    putRow(b, row, m.date);
    b.setStack(m.hive, m.date, own(from, left));
    return;
  }
  const HiveState to = apiary::hiveOn(b.before(), *m.toHive, m.date);
  auto stack = to.boxes;
  setBox(stack, box, m.toPosition, to.stacked());
  e.kind = addKind(box);
  e.hive = *m.toHive;
  HiveState after = to;
  after.boxes = stack;
  e.colony = colonyOfBox(after, m.toPosition);
  e.otherHive = m.hive;
  e.otherColony = colonyOfBox(from, m.position);
  b.put(e);
  row.hive = *m.toHive;
  row.box = m.toPosition;
  putRow(b, row, m.date);
  b.setStack(m.hive, m.date, own(from, left));
  b.setStack(*m.toHive, m.date, own(to, stack));
}

}  // namespace

CommandPtr moveBox(BoxMove move) {
  auto title = !move.toHive ? message("session.title.box_off", move.hive.str())
               : *move.toHive == move.hive
                   ? message("session.title.boxes", move.hive.str())
                   : message("session.title.box_over", move.hive.str(), move.toHive->str());
  return verb(
      std::move(title), move.date, [=](Checker& c) { checkMove(c, move); },
      [=](ChangeBuilder& b) { writeMove(b, move); });
}

CommandPtr boxFromHeap(std::string key, HiveId toHive, int toPosition, Date date) {
  return verb(
      message("session.title.box_on", toHive.str()), date,
      [=](Checker& c) {
        const auto to = changing(c, toHive, date);
        if (!to || !placeIn(c, *to, toPosition)) return;
        c.healthy(to->yard, date);
        const auto state = withOwner(c.season(), toHive, key, date);
        const auto* item = state.onHeap(key);
        if (!item || !item->wholeBox) {
          return c.fault(message("session.not_on_the_heap", date.iso()));
        }
        // What was taken off in a yard with foul brood stays there too.
        if (const auto from = c.standing(item->fromHive, date)) c.healthy(from->yard, date);
        auto stack = to->boxes;
        setBox(stack, asBox(item->box), toPosition, to->stacked());
        c.stack(*to, stack);
      },
      [=](ChangeBuilder& b) {
        const HiveState to = apiary::hiveOn(b.before(), toHive, date);
        const auto state = withOwner(b.before(), toHive, key, date);
        const auto* item = state.onHeap(key);
        auto stack = to.boxes;
        setBox(stack, asBox(item->box), toPosition, to.stacked());
        Event e;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        e.kind = addKind(stack[indexOf(toPosition)]);
        e.date = date;
        e.hive = toHive;
        HiveState after = to;
        after.boxes = stack;
        e.colony = colonyOfBox(after, toPosition);
        e.amount = 1;
        e.unit = Unit::Boxes;
        b.put(e);
        FrameMove row;
        row.hive = toHive;
        row.box = toPosition;
        row.detail = "heap:" + key;
        putRow(b, row, date);
        b.setStack(toHive, date, own(to, stack));
      });
}

CommandPtr setOnBox(HiveId hive, BoxState box, std::optional<Goods> fill, Date date) {
  return verb(
      message("session.title.box_on", hive.str()), date,
      [=](Checker& c) {
        const auto to = changing(c, hive, date);
        if (!to || !placeIn(c, *to, box.position)) return;
        if (fill && detailOf(fill).empty()) {
          c.fault(message("session.not_a_gift", std::string(apiary::code(*fill))));
        }
        c.healthy(to->yard, date);
        auto stack = to->boxes;
        setBox(stack, box, box.position, to->stacked());
        c.stack(*to, stack);
      },
      [=](ChangeBuilder& b) {
        const HiveState to = apiary::hiveOn(b.before(), hive, date);
        auto stack = to.boxes;
        setBox(stack, box, box.position, to.stacked());
        Event e;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        e.kind = addKind(box);
        e.date = date;
        e.hive = hive;
        HiveState after = to;
        after.boxes = stack;
        e.colony = colonyOfBox(after, box.position);
        e.amount = 1;
        e.unit = Unit::Boxes;
        b.put(e);
        FrameMove row;
        row.hive = hive;
        row.box = box.position;
        row.detail = detailOf(fill);
        putRow(b, row, date);
        b.setStack(hive, date, own(to, stack));
      });
}

}  // namespace outyard::session
