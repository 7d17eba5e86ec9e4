// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/comb_state.h"

#include <algorithm>
#include <charconv>
#include <set>
#include <tuple>

#include "core/apiary/comb_fold.h"

namespace outyard::apiary {

namespace {

/// Hives that the combs of `start` may have come from or gone to, with themselves.
std::set<HiveId> linkedTo(const Season& season, std::set<HiveId> start, Date day) {
  std::map<HiveId, std::set<HiveId>> edges;
  const auto link = [&](const HiveId& a, const HiveId& b) {
    if (a == b) return;
    edges[a].insert(b);
    edges[b].insert(a);
  };
  for (const auto& [key, move] : season.table<FrameMove>()) {
    if (move.date > day || !season.counts(move)) continue;
    if (move.otherHive) link(move.hive, *move.otherHive);
    if (const auto put = heapKeyOf(move)) {
      if (const auto owner = heapOwner(season, *put)) link(move.hive, *owner);
    }
  }
  std::vector<HiveId> open(start.begin(), start.end());
  while (!open.empty()) {
    const HiveId at = open.back();
    open.pop_back();
    const auto reach = [&](const HiveId& next) {
      if (start.insert(next).second) open.push_back(next);
    };
    if (const auto it = edges.find(at); it != edges.end()) {
      for (const HiveId& next : it->second) reach(next);
    }
    for (const Event* e : season.eventsTouching(at)) {
      if (e->date > day || !e->otherHive || !movesWholeStacks(e->kind)) continue;
      reach(e->hive == at ? *e->otherHive : e->hive);
    }
  }
  return start;
}

}  // namespace

bool CombFrame::hasBrood() const {
  return sum(&CombSide::eggsPct) + sum(&CombSide::openPct) + sum(&CombSide::sealedPct) > 0;
}

double CombFrame::sum(Opt<double> CombSide::*share) const {
  double total = 0;
  for (const auto& side : sides) {
    if (side) total += (side->holds.*share).value_or(0);
  }
  return total;
}

const CombBox* HiveCombs::box(int position) const {
  if (position < 1 || position > static_cast<int>(boxes.size())) return nullptr;
  return &boxes[static_cast<std::size_t>(position) - 1];
}

const CombFrame* HiveCombs::frame(int position, int slot) const {
  const CombBox* in = box(position);
  if (!in || slot < 1 || slot > static_cast<int>(in->frames.size())) return nullptr;
  return &in->frames[static_cast<std::size_t>(slot) - 1];
}

const HiveCombs* CombsState::hive(const HiveId& id) const {
  const auto it = hives.find(id);
  return it == hives.end() ? nullptr : &it->second;
}

const HeapItem* CombsState::onHeap(const std::string& key) const {
  for (const HeapItem& item : heap) {
    if (item.key == key) return &item;
  }
  return nullptr;
}

const Inspection& firstLook(const Season& season, const Inspection& look) {
  const Inspection* at = &look;
  while (at->supersedes) {
    const Inspection* older = season.find<Inspection>(at->supersedes->str());
    if (!older || older->date != look.date) break;
    at = older;
  }
  return *at;
}

int usualFrames(const Season& season, const std::string& frameType) {
  // As the stack is drawn and combs are entered when nobody said how many there are.
  constexpr int kUsual = 10;
  const auto* own = season.find<FrameType>(frameType);
  return own && own->framesPerBox ? *own->framesPerBox : kUsual;
}

std::pair<std::string, int> leadOf(const RecordId& record) {
  const std::string& text = record.str();
  const auto point = text.rfind('.');
  if (point == std::string::npos) return {text, 0};
  int n = 0;
  const char* const end = text.data() + text.size();
  const auto read = std::from_chars(text.data() + point + 1, end, n);
  if (read.ec != std::errc() || read.ptr != end) return {text, 0};
  return {text.substr(0, point), n};
}

CombsState combsOn(const Season& season, Date day) {
  std::set<HiveId> all;
  for (const auto& [key, hive] : season.table<Hive>()) all.insert(hive.hive);
  return foldCombs(season, all, day);
}

CombsState combsAround(const Season& season, const std::vector<HiveId>& hives, Date day) {
  return foldCombs(season, linkedTo(season, {hives.begin(), hives.end()}, day), day);
}

std::optional<HiveId> heapOwner(const Season& season, const std::string& key) {
  if (const auto* row = season.find<FrameMove>(key)) return row->hive;
  const auto owner = ownerOfLeftBox(key);
  return owner && season.hive(*owner) ? owner : std::nullopt;
}

HiveCombs combsOfHive(const Season& season, const HiveId& hive, Date day) {
  CombsState state = foldCombs(season, linkedTo(season, {hive}, day), day);
  return std::move(state.hives[hive]);
}

std::vector<HeapItem> gearHeapOn(const Season& season, Date day) {
  // Boxes may also be left over where only the new stack was recorded, so every hive counts.
  return combsOn(season, day).heap;
}

}  // namespace outyard::apiary
