// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/state.h"

#include <algorithm>

namespace outyard::apiary {
namespace {

bool covers(const ColonyStay& s, Date day) {
  return s.fromDate <= day && (!s.toDate || day < *s.toDate);
}

void foldPlace(const Season& season, Date day, HiveState& out) {
  const Place* now = nullptr;
  for (const Place* p : season.journal<Place>(out.hive)) {
    if (p->fromDate <= day) now = p;
  }
  if (!now) {
    out.present = false;
    return;
  }
  out.yard = now->yard;
  out.xM = now->xM;
  out.yM = now->yM;
  out.entranceDeg = now->entranceDeg;
  out.stand = now->stand;
}

void foldBoxes(const Season& season, Date day, HiveState& out) {
  for (const Box* b : season.journal<Box>(out.hive)) {
    if (b->date > day) break;
    if (!out.boxesSince || *out.boxesSince != b->date) {
      out.boxes.clear();
      out.boxesSince = b->date;
    }
    out.boxes.push_back({b->position, b->frameType, b->frames.value_or(0),
                         b->role.value_or(BoxRole::Chamber), b->colony,
                         b->beneath.value_or(Beneath::None)});
  }
  // Set over another hive or united to it, a hive's boxes went along: its stand is bare.
  for (const Event* e : season.eventsTouching(out.hive)) {
    if (e->date > day) break;
    const bool carriedOff = (e->kind == EventKind::Stacked && e->hive == out.hive) ||
                            (e->kind == EventKind::United && e->otherHive == out.hive);
    if (carriedOff && (!out.boxesSince || *out.boxesSince < e->date)) {
      out.boxes.clear();
      out.boxesSince = e->date;
    }
  }
  std::sort(out.boxes.begin(), out.boxes.end(),
            [](const BoxState& a, const BoxState& b) { return a.position < b.position; });
}

void foldColonies(const Season& season, Date day, HiveState& out) {
  for (const ColonyStay* s : season.journal<ColonyStay>(out.hive)) {
    if (!covers(*s, day)) continue;
    ColonyState c;
    c.colony = s->colony;
    c.place = s->place.value_or(ColonyPlace::Main);
    c.queen = s->queen;
    c.queenYear = s->queenYear;
    c.queenLine = s->queenLine;
    c.queenMarked = s->queenMarked;
    if (s->queen) {
      if (const Queen* q = season.queen(*s->queen)) {
        if (!c.queenYear) c.queenYear = q->year;
        if (c.queenLine.empty()) c.queenLine = q->line;
        if (!c.queenMarked) c.queenMarked = q->marked;
      }
    }
    c.since = s->fromDate;
    out.colonies.push_back(std::move(c));
  }
  std::sort(out.colonies.begin(), out.colonies.end(), [](const auto& a, const auto& b) {
    return std::tuple(a.place, a.colony) < std::tuple(b.place, b.colony);
  });
}

/// The latest look at each colony, wherever it stood then.
void foldInspections(const Season& season, Date day, HiveState& out) {
  for (ColonyState& c : out.colonies) {
    std::vector<HiveId> hives;
    for (const ColonyStay* s : season.stays(c.colony)) {
      if (std::find(hives.begin(), hives.end(), s->hive) == hives.end()) hives.push_back(s->hive);
    }
    for (const HiveId& hive : hives) {
      for (const Inspection* i : season.journal<Inspection>(hive)) {
        if (i->date > day) break;
        bool hers = i->colony && *i->colony == c.colony;
        if (!i->colony) {
          // Unnamed: means the main colony that lived there on that day.
          for (const ColonyStay* s : season.stays(c.colony)) {
            if (s->hive == hive && covers(*s, i->date) &&
                s->place.value_or(ColonyPlace::Main) == ColonyPlace::Main) {
              hers = true;
            }
          }
        }
        if (hers && (!c.lastInspection || c.lastInspection->date <= i->date)) c.lastInspection = i;
      }
    }
  }
}

void foldEvents(const Season& season, Date day, HiveState& out) {
  for (const Event* e : season.journal<Event>(out.hive)) {
    if (e->date > day) break;
    switch (e->kind) {
      case EventKind::Wrapped:
        out.wrapped = true;
        break;
      case EventKind::Unwrapped:
        out.wrapped = false;
        break;
      case EventKind::Died:
        out.diedOn = e->date;
        break;
      case EventKind::Installed:
      case EventKind::Bought:
        out.diedOn.reset();
        out.present = out.present || e->kind == EventKind::Bought;
        break;
      case EventKind::Sold:
      case EventKind::Lost:
        if (!e->colony) out.present = false;
        break;
      default:
        break;
    }
  }
  if (!out.colonies.empty()) {
    out.status = HiveStatus::Live;
    out.diedOn.reset();
  } else if (out.diedOn && !(out.boxesSince && *out.boxesSince > *out.diedOn)) {
    out.status = HiveStatus::Dead;
  } else {
    out.status = HiveStatus::Empty;
    out.diedOn.reset();
  }
}

}  // namespace

const ColonyState* HiveState::colony(const ColonyId& id) const {
  for (const auto& c : colonies) {
    if (c.colony == id) return &c;
  }
  return nullptr;
}

std::vector<BoxState> HiveState::boxesOf(const ColonyId& id) const {
  if (colonies.size() < 2) return boxes;
  const ColonyState* c = colony(id);
  const bool isMain = c && c->place == ColonyPlace::Main;
  std::vector<BoxState> out;
  for (const auto& b : boxes) {
    if (b.colony ? *b.colony == id : isMain) out.push_back(b);
  }
  return out;
}

int HiveState::chambersOf(const ColonyId& id) const {
  int n = 0;
  for (const auto& b : boxesOf(id)) n += b.role == BoxRole::Chamber ? 1 : 0;
  return n;
}

HiveState hiveOn(const Season& season, const HiveId& hive, Date day) {
  HiveState out;
  out.hive = hive;
  foldPlace(season, day, out);
  foldBoxes(season, day, out);
  foldColonies(season, day, out);
  foldInspections(season, day, out);
  foldEvents(season, day, out);
  return out;
}

std::vector<HiveState> yardOn(const Season& season, const YardId& yard, Date day) {
  std::vector<HiveState> out;
  for (const auto& [key, hive] : season.table<Hive>()) {
    HiveState probe;
    probe.hive = hive.hive;
    foldPlace(season, day, probe);
    if (!probe.present || probe.yard != yard) continue;
    HiveState state = hiveOn(season, hive.hive, day);
    if (state.present) out.push_back(std::move(state));
  }
  return out;
}

std::optional<HiveId> hiveOfColony(const Season& season, const ColonyId& colony, Date day) {
  std::optional<HiveId> out;
  for (const ColonyStay* s : season.stays(colony)) {
    if (covers(*s, day)) out = s->hive;
  }
  return out;
}

std::optional<ColonyId> colonyMeant(const HiveState& state, const std::optional<ColonyId>& named) {
  if (named) return named;
  if (state.colonies.empty()) return std::nullopt;
  return state.colonies.front().colony;
}

std::optional<Date> firstRecordOf(const Season& season, const HiveId& hive) {
  std::optional<Date> first;
  const auto see = [&](Date d) {
    if (!first || d < *first) first = d;
  };
  for (const auto* r : season.allOf<Box>(hive)) see(r->date);
  for (const auto* r : season.allOf<ColonyStay>(hive)) see(r->fromDate);
  for (const auto* r : season.allOf<Inspection>(hive)) see(r->date);
  for (const auto* r : season.allOf<Wash>(hive)) see(r->date);
  for (const auto* r : season.allOf<Event>(hive)) see(r->date);
  for (const auto* r : season.allOf<Place>(hive)) see(r->fromDate);
  return first;
}

std::optional<HiveId> foulBroodIn(const Season& season, const YardId& yard, Date day) {
  // A later look without the finding does not clear a suspicion: only a withdrawn record or the
  // note "health_clear" (entered after the bee inspector has been) does.
  for (const auto& [key, hive] : season.table<Hive>()) {
    HiveState probe;
    probe.hive = hive.hive;
    foldPlace(season, day, probe);
    if (probe.yard != yard) continue;
    std::optional<Date> suspected;
    for (const Inspection* i : season.journal<Inspection>(hive.hive)) {
      if (i->date <= day &&
          (i->disease == Disease::SuspectAfb || i->disease == Disease::SuspectEfb)) {
        suspected = i->date;
      }
    }
    if (!suspected) continue;
    bool cleared = false;
    for (const Event* e : season.journal<Event>(hive.hive)) {
      cleared = cleared || (e->kind == EventKind::Note && e->method == "health_clear" &&
                            e->date >= *suspected && e->date <= day);
    }
    if (!cleared) return hive.hive;
  }
  return std::nullopt;
}

}  // namespace outyard::apiary
