// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/comb_steps.h"

#include <algorithm>
#include <set>
#include <stdexcept>

#include "core/strength/frame_table.h"

namespace outyard::session {

using apiary::EventKind;
using apiary::FrameMove;
using base::message;

int slotsOf(const apiary::Season& season, const apiary::CombBox& box) {
  const auto figures = strength::figuresFor(season, box.frameType);
  const int usual = figures ? figures->framesPerBox : apiary::usualFrames(season, box.frameType);
  return std::max(usual, static_cast<int>(box.frames.size()));
}

void noLaterMoves(Checker& c, const HiveId& hive, Date date) {
  std::optional<Date> latest;
  const auto see = [&](Date d) {
    if (d > date && (!latest || d > *latest)) latest = d;
  };
  for (const auto& [key, m] : c.season().table<FrameMove>()) {
    if ((m.hive == hive || m.otherHive == hive) && c.season().counts(m)) see(m.date);
  }
  for (const auto* e : c.season().eventsTouching(hive)) {
    if (e->kind == EventKind::Stacked || e->kind == EventKind::Unstacked ||
        e->kind == EventKind::United || e->kind == EventKind::Reversed) {
      see(e->date);
    }
  }
  if (latest) c.fault(message("session.later_moves", hive.str(), latest->iso(), date.iso()));
}

void notFromDead(Checker& c, const apiary::HiveState& state) {
  if (state.status == apiary::HiveStatus::Dead) {
    c.fault(message("session.from_dead_hive", state.hive.str()));
  }
}

void beesFindColony(Checker& c, const apiary::HiveState& to, bool withBees, Date date) {
  if (withBees && to.colonies.empty()) {
    c.fault(message("session.bees_need_colony", to.hive.str(), date.iso()));
  }
}

std::optional<ColonyId> colonyOfBox(const apiary::HiveState& state, int position) {
  if (!state.stacked()) return std::nullopt;
  for (const BoxState& box : state.boxes) {
    if (box.position == position && box.colony) return box.colony;
  }
  return state.colonies.front().colony;
}

CombSteps::CombSteps(const apiary::CombsState& state, const std::vector<HiveId>& hives) {
  int number = 0;
  for (const HiveId& id : std::set<HiveId>(hives.begin(), hives.end())) {
    const auto* hive = state.hive(id);
    if (!hive) continue;
    for (const auto& box : hive->boxes) {
      auto& combs = m_boxes[{id, box.position}];
      for (std::size_t i = 0; i < box.frames.size(); ++i) combs.push_back(++number);
    }
  }
}

std::optional<int> CombSteps::at(const CombSpot& spot) const {
  const auto it = m_boxes.find({spot.hive, spot.box});
  if (it == m_boxes.end() || spot.slot < 1) return std::nullopt;
  const auto slot = static_cast<std::size_t>(spot.slot);
  if (slot > it->second.size()) return std::nullopt;
  return it->second[slot - 1];
}

CombSpot CombSteps::takeOut(int comb) {
  for (auto& [spot, combs] : m_boxes) {
    const auto it = std::find(combs.begin(), combs.end(), comb);
    if (it == combs.end()) continue;
    const int slot = static_cast<int>(it - combs.begin()) + 1;
    combs.erase(it);
    return {spot.first, spot.second, slot};
  }
  throw std::logic_error("no such comb");
}

void CombSteps::moveToIndex(int comb, const Spot& to, std::size_t index) {
  const CombSpot from = takeOut(comb);
  auto& combs = m_boxes[to];
  index = std::min(index, combs.size());
  combs.insert(combs.begin() + static_cast<std::ptrdiff_t>(index), comb);
  const int slot = static_cast<int>(index) + 1;
  if (from.hive == to.first && from.box == to.second && from.slot == slot) return;
  FrameMove m;
  m.hive = to.first;
  m.box = to.second;
  m.slot = slot;
  m.otherHive = from.hive;
  m.otherBox = from.box;
  m.otherSlot = from.slot;
  m_rows.push_back(std::move(m));
}

void CombSteps::move(int comb, const Spot& to, std::optional<int> before) {
  // The place is counted without the comb itself.
  std::vector<int> rest = m_boxes[to];
  std::erase(rest, comb);
  const auto it = before ? std::find(rest.begin(), rest.end(), *before) : rest.end();
  moveToIndex(comb, to, static_cast<std::size_t>(it - rest.begin()));
}

void CombSteps::toHeap(int comb) {
  const CombSpot from = takeOut(comb);
  FrameMove m;
  m.hive = from.hive;
  m.otherHive = from.hive;
  m.otherBox = from.box;
  m.otherSlot = from.slot;
  m_rows.push_back(std::move(m));
}

void CombSteps::bring(std::string detail, const Spot& to, std::size_t index) {
  auto& combs = m_boxes[to];
  index = std::min(index, combs.size());
  combs.insert(combs.begin() + static_cast<std::ptrdiff_t>(index), 0);
  FrameMove m;
  m.hive = to.first;
  m.box = to.second;
  m.slot = static_cast<int>(index) + 1;
  m.detail = std::move(detail);
  m_rows.push_back(std::move(m));
}

void writeSteps(ChangeBuilder& b, const apiary::CombsState& state, const CombSteps& steps,
                Date date, std::optional<bool> withBees, std::optional<base::TaskId> task,
                const std::string& leadDetail, bool lead) {
  for (FrameMove m : steps.rows()) {
    static_cast<apiary::RecordHead&>(m) = lead ? b.stateHead() : b.leadHead();
    if (!lead) m.detail = leadDetail;
    lead = true;
    m.date = date;
    m.withBees = withBees;
    m.task = task;
    b.put(m);
  }
  std::set<HiveId> changed;
  for (const auto& [spot, combs] : steps.boxes()) {
    const auto* hive = state.hive(spot.first);
    const auto* box = hive ? hive->box(spot.second) : nullptr;
    if (box && box->countRecorded && box->frames.size() != combs.size()) changed.insert(spot.first);
  }
  for (const HiveId& id : changed) {
    auto boxes = apiary::hiveOn(b.before(), id, date).boxes;
    for (BoxState& box : boxes) {
      const auto it = steps.boxes().find({id, box.position});
      if (box.frames > 0 && it != steps.boxes().end()) {
        box.frames = static_cast<int>(it->second.size());
      }
    }
    b.setStack(id, date, boxes);
  }
}

}  // namespace outyard::session
