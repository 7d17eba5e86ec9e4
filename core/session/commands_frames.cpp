// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>
#include <tuple>

#include "core/session/comb_steps.h"

namespace outyard::session {

using apiary::BoxRole;
using apiary::CombBox;
using apiary::CombFrame;
using apiary::CombSide;
using apiary::CombsState;
using apiary::Event;
using apiary::EventKind;
using apiary::FrameMove;
using apiary::Goods;
using apiary::HiveState;
using apiary::Inspection;
using apiary::Unit;
using base::message;

namespace {

/// The one thing that the combs are given for, as far as it was seen.
std::optional<Goods> goodsOf(const std::vector<const CombFrame*>& combs) {
  double sealed = 0, open = 0, food = 0, undrawn = 0, empty = 0;
  for (const CombFrame* f : combs) {
    sealed += f->sum(&CombSide::sealedPct);
    open += f->sum(&CombSide::openPct) + f->sum(&CombSide::eggsPct);
    food +=
        f->sum(&CombSide::honeyPct) + f->sum(&CombSide::nectarPct) + f->sum(&CombSide::pollenPct);
    undrawn += f->sum(&CombSide::undrawnPct);
    empty += f->sum(&CombSide::emptyPct);
  }
  if (sealed + open > 0) return sealed >= open ? Goods::SealedBrood : Goods::OpenBrood;
  if (food + undrawn + empty <= 0) return std::nullopt;
  if (food >= undrawn && food >= empty) return Goods::Stores;
  return undrawn > empty ? Goods::Foundation : Goods::Drawn;
}

std::string freshDetail(Goods what) {
  switch (what) {
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

std::vector<HiveId> hivesOf(const CombMove& m) {
  std::vector<HiveId> out;
  for (const CombSpot& s : m.from) out.push_back(s.hive);
  if (m.to) out.push_back(m.to->hive);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

/// The state of all hives that take part, and of those whose combs come from the heap.
CombsState stateFor(const apiary::Season& season, std::vector<HiveId> hives,
                    const std::vector<std::string>& heap, Date date) {
  for (const std::string& key : heap) {
    if (auto owner = apiary::heapOwner(season, key)) hives.push_back(std::move(*owner));
  }
  return apiary::combsAround(season, hives, date);
}

const CombBox* boxFor(Checker& c, const CombsState& state, const HiveId& hive, int position) {
  const auto* combs = state.hive(hive);
  const CombBox* box = combs ? combs->box(position) : nullptr;
  if (!box) {
    c.fault(message("session.no_such_box", hive.str(), position, combs ? combs->boxes.size() : 0));
  } else if (box->role == BoxRole::Feeder) {
    c.fault(message("session.box_without_combs", hive.str(), position));
    return nullptr;
  }
  return box;
}

const CombFrame* combFor(Checker& c, const CombsState& state, const CombSpot& spot) {
  const CombBox* box = boxFor(c, state, spot.hive, spot.box);
  if (!box) return nullptr;
  const auto* frame = state.hive(spot.hive)->frame(spot.box, spot.slot);
  if (!frame) {
    c.fault(
        message("session.no_such_comb", spot.hive.str(), spot.box, spot.slot, box->frames.size()));
  }
  return frame;
}

CombSteps stepsOf(const CombsState& state, const CombMove& m) {
  CombSteps steps(state, hivesOf(m));
  std::vector<int> combs;
  for (const CombSpot& s : m.from) combs.push_back(steps.at(s).value());
  if (!m.to) {
    for (const int comb : combs) steps.toHeap(comb);
    return steps;
  }
  const CombSteps::Spot to{m.to->hive, m.to->box};
  if (m.exchange) {
    const int there = steps.at(*m.to).value();
    const auto index = [](int slot) { return static_cast<std::size_t>(slot) - 1; };
    steps.moveToIndex(combs.front(), to, index(m.to->slot));
    steps.moveToIndex(there, {m.from.front().hive, m.from.front().box}, index(m.from.front().slot));
    return steps;
  }
  // In front of the first comb from that slot on which does not go along.
  std::optional<int> before;
  const auto& box = steps.box(to.first, to.second);
  for (std::size_t i = static_cast<std::size_t>(m.to->slot) - 1; i < box.size() && !before; ++i) {
    if (std::find(combs.begin(), combs.end(), box[i]) == combs.end()) before = box[i];
  }
  for (const int comb : combs) steps.move(comb, to, before);
  std::size_t index = static_cast<std::size_t>(m.to->slot) - 1;
  for (const std::string& key : m.heap) steps.bring("heap:" + key, to, index++);
  return steps;
}

/// Refuses what the boxes cannot take.
void checkRoom(Checker& c, const CombsState& state, const CombSteps& steps) {
  for (const auto& [spot, combs] : steps.boxes()) {
    const auto* hive = state.hive(spot.first);
    const CombBox* box = hive ? hive->box(spot.second) : nullptr;
    if (!box || combs.size() <= box->frames.size()) continue;
    const int slots = slotsOf(c.season(), *box);
    if (static_cast<int>(combs.size()) > slots) {
      c.fault(message("session.no_free_slot", spot.first.str(), spot.second, slots));
    }
  }
}

void checkMove(Checker& c, const CombMove& m) {
  if (m.from.empty() && m.heap.empty()) return c.fault(message("session.nothing_moves"));
  c.task(m.task);
  std::map<HiveId, HiveState> hives;
  for (const HiveId& id : hivesOf(m)) {
    auto state = c.standing(id, m.date);
    if (!state) return;
    c.noLaterStack(id, m.date);
    noLaterMoves(c, id, m.date);
    hives.emplace(id, std::move(*state));
  }
  const CombsState state = stateFor(c.season(), hivesOf(m), m.heap, m.date);
  std::set<std::string> types;
  std::set<std::pair<int, int>> seen;
  for (const CombSpot& s : m.from) {
    if (s.hive != m.from.front().hive) return c.fault(message("session.combs_of_one_hive"));
    if (!combFor(c, state, s) || !seen.insert({s.box, s.slot}).second) {
      if (c.ok()) c.fault(message("session.nothing_moves"));
      return;
    }
    types.insert(state.hive(s.hive)->box(s.box)->frameType);
  }
  for (const std::string& key : m.heap) {
    const auto* item = state.onHeap(key);
    if (!item || item->wholeBox) return c.fault(message("session.not_on_the_heap", m.date.iso()));
    types.insert(item->box.frameType);
  }
  const bool leaves = !m.from.empty() && (!m.to || m.to->hive != m.from.front().hive);
  const bool comes = m.to && (leaves || !m.heap.empty());
  if (leaves) {
    const HiveState& from = hives.at(m.from.front().hive);
    c.healthy(from.yard, m.date);
    notFromDead(c, from);
    if (!m.to && m.withBees && !from.colonies.empty()) c.fault(message("session.bees_on_the_heap"));
  }
  if (!m.to) return;
  const HiveState& to = hives.at(m.to->hive);
  if (comes) {
    c.healthy(to.yard, m.date);
    beesFindColony(c, to, leaves && m.withBees, m.date);
  }
  const CombBox* box = boxFor(c, state, m.to->hive, m.to->box);
  if (!box) return;
  for (const std::string& type : types) {
    if (type != box->frameType) {
      return c.fault(message("session.other_frame_type", m.to->hive.str(), m.to->box));
    }
  }
  const int most = static_cast<int>(box->frames.size()) + 1;
  if (m.to->slot < 1 || m.to->slot > most) {
    return c.fault(message("session.no_such_comb", m.to->hive.str(), m.to->box, m.to->slot,
                           box->frames.size()));
  }
  if (m.exchange) {
    if (m.from.size() != 1 || !m.heap.empty() || m.to->slot == most) {
      return c.fault(message("session.exchange_one_comb"));
    }
    if (m.from.front() == *m.to) return c.fault(message("session.stands_there"));
  }
  const CombSteps steps = stepsOf(state, m);
  if (steps.rows().empty()) return c.fault(message("session.stands_there"));
  checkRoom(c, state, steps);
}

void writeMove(ChangeBuilder& b, const CombMove& m) {
  const CombsState state = stateFor(b.before(), hivesOf(m), m.heap, m.date);
  const CombSteps steps = stepsOf(state, m);
  const bool within = m.to && !m.from.empty() && m.to->hive == m.from.front().hive;
  if (!within) {
    std::vector<const CombFrame*> combs;
    for (const CombSpot& s : m.from) combs.push_back(state.hive(s.hive)->frame(s.box, s.slot));
    for (const std::string& key : m.heap) combs.push_back(&state.onHeap(key)->box.frames.front());
    Event e;
    static_cast<apiary::RecordHead&>(e) = b.leadHead();
    e.date = m.date;
    e.what = goodsOf(combs);
    e.amount = static_cast<double>(combs.size());
    e.unit = Unit::Frames;
    e.task = m.task;
    if (m.to && !m.from.empty()) {
      const CombSpot& from = m.from.front();
      e.kind = EventKind::FramesMoved;
      e.hive = m.to->hive;
      e.colony = colonyOfBox(apiary::hiveOn(b.before(), e.hive, m.date), m.to->box);
      e.otherHive = from.hive;
      e.otherColony = colonyOfBox(apiary::hiveOn(b.before(), from.hive, m.date), from.box);
      e.withBees = m.withBees;
      if (m.exchange) e.method = "exchange";
    } else {
      e.kind = m.to ? EventKind::FramesGiven : EventKind::FramesTaken;
      e.hive = m.to ? m.to->hive : m.from.front().hive;
      const int box = m.to ? m.to->box : m.from.front().box;
      e.colony = colonyOfBox(apiary::hiveOn(b.before(), e.hive, m.date), box);
      e.withBees = false;
    }
    b.put(e);
    if (m.task) b.tickOff(*m.task, e.record, m.date);
  }
  std::optional<bool> bees;
  if (!m.from.empty()) bees = m.withBees;
  writeSteps(b, state, steps, m.date, bees, m.task, {}, !within);
  if (within && m.task) b.tickOff(*m.task, steps.rows().front().record, m.date);
}

}  // namespace

CommandPtr moveCombs(CombMove move) {
  const HiveId hive =
      move.to ? move.to->hive : (move.from.empty() ? HiveId{} : move.from.front().hive);
  const auto count = move.from.size() + move.heap.size();
  auto title =
      !move.to ? message("session.title.combs_off", count, hive.str())
      : move.from.empty() || move.from.front().hive == hive
          ? message("session.title.combs", count, hive.str())
          : message("session.title.combs_over", count, move.from.front().hive.str(), hive.str());
  return verb(
      std::move(title), move.date, [=](Checker& c) { checkMove(c, move); },
      [=](ChangeBuilder& b) { writeMove(b, move); });
}

CommandPtr setInCombs(CombSpot to, int count, Goods what, Date date) {
  const auto steps = [=](const CombsState& state) {
    CombSteps all(state, {to.hive});
    for (int i = 0; i < count; ++i) {
      all.bring(freshDetail(what), {to.hive, to.box}, static_cast<std::size_t>(to.slot - 1 + i));
    }
    return all;
  };
  return verb(
      message("session.title.combs", count, to.hive.str()), date,
      [=](Checker& c) {
        const auto hive = c.standing(to.hive, date);
        if (!hive) return;
        if (freshDetail(what).empty()) {
          c.fault(message("session.not_a_gift", std::string(apiary::code(what))));
        }
        if (count < 1 || count > 60) c.fault(message("session.gift_amount", to.hive.str()));
        c.healthy(hive->yard, date);
        c.noLaterStack(to.hive, date);
        noLaterMoves(c, to.hive, date);
        const CombsState state = stateFor(c.season(), {to.hive}, {}, date);
        const CombBox* box = boxFor(c, state, to.hive, to.box);
        if (!box || !c.ok()) return;
        if (to.slot < 1 || to.slot > static_cast<int>(box->frames.size()) + 1) {
          return c.fault(
              message("session.no_such_comb", to.hive.str(), to.box, to.slot, box->frames.size()));
        }
        checkRoom(c, state, steps(state));
      },
      [=](ChangeBuilder& b) {
        const CombsState state = stateFor(b.before(), {to.hive}, {}, date);
        Event e;
        static_cast<apiary::RecordHead&>(e) = b.leadHead();
        e.kind = EventKind::FramesGiven;
        e.date = date;
        e.hive = to.hive;
        e.colony = colonyOfBox(apiary::hiveOn(b.before(), to.hive, date), to.box);
        e.what = what;
        e.withBees = false;
        e.amount = count;
        e.unit = Unit::Frames;
        b.put(e);
        writeSteps(b, state, steps(state), date, std::nullopt, std::nullopt, {}, true);
      });
}

CommandPtr broodToMiddle(HiveId hive, std::optional<int> only, Date date) {
  const auto steps = [=](const CombsState& state) {
    CombSteps all(state, {hive});
    for (const CombBox& box : state.hive(hive)->boxes) {
      if (box.role != BoxRole::Chamber || (only && *only != box.position)) continue;
      std::vector<int> brood, rest;
      const auto now = all.box(hive, box.position);
      for (std::size_t i = 0; i < box.frames.size(); ++i) {
        (box.frames[i].hasBrood() ? brood : rest).push_back(now[i]);
      }
      if (brood.empty()) continue;
      // Everything else keeps its order and its side, so that food still touches the nest.
      std::vector<int> wanted(rest.begin(),
                              rest.begin() + static_cast<std::ptrdiff_t>(rest.size() / 2));
      wanted.insert(wanted.end(), brood.begin(), brood.end());
      wanted.insert(wanted.end(), rest.begin() + static_cast<std::ptrdiff_t>(rest.size() / 2),
                    rest.end());
      for (std::size_t i = 0; i < wanted.size(); ++i) {
        all.moveToIndex(wanted[i], {hive, box.position}, i);
      }
    }
    return all;
  };
  return verb(
      message("session.title.brood_middle", hive.str()), date,
      [=](Checker& c) {
        const auto state = c.standing(hive, date);
        if (!state) return;
        c.noLaterStack(hive, date);
        noLaterMoves(c, hive, date);
        const CombsState combs = stateFor(c.season(), {hive}, {}, date);
        if (only && !boxFor(c, combs, hive, *only)) return;
        if (c.ok() && steps(combs).rows().empty()) {
          c.fault(message("session.brood_in_the_middle", hive.str()));
        }
      },
      [=](ChangeBuilder& b) {
        const CombsState combs = stateFor(b.before(), {hive}, {}, date);
        writeSteps(b, combs, steps(combs), date, true, std::nullopt, "to_middle", false);
      });
}

std::vector<CombSide> filledBox(const apiary::Season& season, const HiveId& hive, int position,
                                Goods with, Date date) {
  std::vector<CombSide> out;
  const auto combs = apiary::combsOfHive(season, hive, date);
  const CombBox* box = combs.box(position);
  if (!box || box->role == BoxRole::Feeder) return out;
  for (std::size_t slot = 1; slot <= box->frames.size(); ++slot) {
    for (const auto side : {apiary::FrameSide::A, apiary::FrameSide::B}) {
      CombSide s;
      s.hive = hive;
      s.date = date;
      s.box = position;
      s.slot = static_cast<int>(slot);
      s.side = side;
      // The whole face is told, so what is not on it is known to be none.
      s.eggsPct = s.openPct = s.sealedPct = s.dronePct = s.pollenPct = s.nectarPct = 0;
      s.honeyPct = with == Goods::Stores || with == Goods::HoneyComb ? 100 : 0;
      s.emptyPct = with == Goods::Drawn ? 100 : 0;
      s.undrawnPct = with == Goods::Foundation ? 100 : 0;
      out.push_back(std::move(s));
    }
  }
  return out;
}

namespace {

/// Chooses on each asking whether the day's look is added to or a new one is made.
class RecordCombs final : public Command {
 public:
  RecordCombs(HiveId hive, std::optional<ColonyId> colony, Date date, std::vector<CombSide> sides)
      : m_hive(std::move(hive)),
        m_colony(std::move(colony)),
        m_date(date),
        m_sides(std::move(sides)) {
    // Whose combs they are says the look, not where they were seen before.
    for (CombSide& s : m_sides) s.colony.reset();
  }
  [[nodiscard]] base::Message title() const override {
    return message("session.title.combs_seen", m_hive.str());
  }
  [[nodiscard]] base::Result<void> check(const apiary::Season& season) const override {
    if (m_sides.empty()) return base::fail(message("session.nothing_seen", m_hive.str()));
    Checker c(season);
    const auto state = c.standing(m_hive, m_date);
    if (state) c.colony(*state, m_colony, m_date);
    if (!c.ok()) return c.result();
    const auto combs = apiary::combsOfHive(season, m_hive, m_date);
    for (const CombSide& s : m_sides) {
      if (const CombBox* box = combs.box(s.box); box && box->role == BoxRole::Feeder) {
        c.fault(message("session.box_without_combs", m_hive.str(), s.box));
      } else if (box && !combs.frame(s.box, s.slot)) {
        c.fault(message("session.no_such_comb", m_hive.str(), s.box, s.slot, box->frames.size()));
      }
    }
    if (!c.ok()) return c.result();
    return make(season)->check(season);
  }
  [[nodiscard]] apiary::ChangeList changes(const apiary::Season& season,
                                           const Context& context) const override {
    return make(season)->changes(season, context);
  }
  [[nodiscard]] std::optional<Date> doneOn() const override { return m_date; }

 private:
  [[nodiscard]] CommandPtr make(const apiary::Season& season) const {
    const Inspection* today = nullptr;
    for (const Inspection* i : season.journal<Inspection>(m_hive)) {
      if (i->date == m_date && (!m_colony || !i->colony || i->colony == m_colony)) today = i;
    }
    if (!today || movedSince(season, *today)) {
      Inspection fresh;
      fresh.hive = m_hive;
      fresh.colony = m_colony;
      fresh.date = m_date;
      return recordInspection(std::move(fresh), m_sides, {});
    }
    InspectionEntry entry;
    entry.inspection = *today;
    const auto spot = [](const CombSide& s) { return std::tuple(s.box, s.slot, s.side); };
    entry.sides = m_sides;
    for (const CombSide* old : season.combSides(today->record)) {
      const bool again = std::any_of(m_sides.begin(), m_sides.end(),
                                     [&](const CombSide& s) { return spot(s) == spot(*old); });
      if (!again) entry.sides.push_back(*old);
    }
    for (const auto* s : season.seamCounts(today->record)) entry.seams.push_back(*s);
    return correctInspection(today->record, std::move(entry));
  }
  /// Slots of the look are those before a move of the same day: they must not be mixed.
  [[nodiscard]] bool movedSince(const apiary::Season& season, const Inspection& now) const {
    const Inspection& look = apiary::firstLook(season, now);
    for (const auto& [key, m] : season.table<FrameMove>()) {
      if (m.date == m_date && (m.hive == m_hive || m.otherHive == m_hive) && season.counts(m) &&
          m.enteredAt >= look.enteredAt) {
        return true;
      }
    }
    for (const Event* e : season.eventsTouching(m_hive)) {
      const bool stack = e->kind == EventKind::Reversed || e->kind == EventKind::Stacked ||
                         e->kind == EventKind::Unstacked || e->kind == EventKind::United;
      if (stack && e->date == m_date && e->enteredAt >= look.enteredAt) return true;
    }
    return false;
  }

  HiveId m_hive;
  std::optional<ColonyId> m_colony;
  Date m_date;
  std::vector<CombSide> m_sides;
};

}  // namespace

CommandPtr recordCombs(HiveId hive, std::optional<ColonyId> colony, Date date,
                       std::vector<CombSide> sides) {
  return std::make_unique<RecordCombs>(std::move(hive), std::move(colony), date, std::move(sides));
}

}  // namespace outyard::session
