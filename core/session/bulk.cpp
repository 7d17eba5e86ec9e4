// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/bulk.h"

#include <algorithm>

#include "core/session/verb.h"

namespace outyard::session {

using apiary::BoxRole;
using apiary::Event;
using apiary::EventKind;
using apiary::HiveState;
using base::message;

namespace {

constexpr const char* kUsualType = "langstroth_deep";

bool isSuper(const BoxState& box) {
  return box.role == BoxRole::Super;
}

/// Frames like those that the hive has in such boxes, else in its other ones.
BoxState boxFor(const HiveState& hive, const BulkWork& work, BoxRole role) {
  BoxState box;
  box.role = role;
  box.frameType = work.frameType.empty() ? kUsualType : work.frameType;
  box.frames = work.frames;
  if (!work.frameType.empty()) return box;
  bool same = false;
  for (const BoxState& other : hive.boxes) {
    if (other.role == BoxRole::Feeder || (same && other.role != role)) continue;
    box.frameType = other.frameType;
    if (other.frames > 0) box.frames = other.frames;
    same = same || other.role == role;
  }
  return box;
}

Event eventFor(const BulkWork& work, const HiveId& hive, EventKind kind) {
  Event e;
  e.kind = kind;
  e.date = work.date;
  e.hive = hive;
  e.detail = work.detail;
  return e;
}

void setExcluder(BulkSteps& out, const HiveState& hive, const BulkWork& work, bool on) {
  auto boxes = hive.boxes;
  const auto lowest = std::find_if(boxes.begin(), boxes.end(), isSuper);
  const std::string& id = hive.hive.str();
  if (lowest == boxes.end() || lowest == boxes.begin()) {
    out.nothing = message("session.bulk_no_super", id);
    return;
  }
  const bool has = std::any_of(lowest, boxes.end(), [](const BoxState& box) {
    return isSuper(box) && box.beneath == Beneath::Excluder;
  });
  if (has == on) {
    out.nothing =
        on ? message("session.bulk_has_excluder", id) : message("session.bulk_no_excluder", id);
    return;
  }
  if (on) {
    lowest->beneath = Beneath::Excluder;
  } else {
    for (auto box = lowest; box != boxes.end(); ++box) {
      if (isSuper(*box) && box->beneath == Beneath::Excluder) box->beneath = Beneath::None;
    }
  }
  out.steps.push_back(
      {hive.hive, changeStack(hive.hive, work.date, std::move(boxes),
                              on ? EventKind::ExcluderOn : EventKind::ExcluderOff)});
}

void wrap(BulkSteps& out, const HiveState& hive, const BulkWork& work, bool on) {
  if (hive.wrapped == on) {
    out.nothing = on ? message("session.bulk_wrapped", hive.hive.str())
                     : message("session.bulk_not_wrapped", hive.hive.str());
    return;
  }
  out.steps.push_back(
      {hive.hive,
       recordEvent(eventFor(work, hive.hive, on ? EventKind::Wrapped : EventKind::Unwrapped))});
}

void addBox(BulkSteps& out, const HiveState& hive, const BulkWork& work, BoxRole role) {
  BoxState box = boxFor(hive, work, role);
  const int top = static_cast<int>(hive.boxes.size()) + 1;
  box.position = work.under ? 1 : top;
  // A chamber goes on the others, under the supers.
  if (!work.under && role == BoxRole::Chamber) {
    const auto lowest = std::find_if(hive.boxes.begin(), hive.boxes.end(), isSuper);
    if (lowest != hive.boxes.end()) box.position = lowest->position;
  }
  out.steps.push_back({hive.hive, setOnBox(hive.hive, box, work.fill, work.date)});
}

}  // namespace

BulkSteps bulkSteps(const apiary::Season& season, const HiveId& hive, const BulkWork& work) {
  BulkSteps out;
  const HiveState state = apiary::hiveOn(season, hive, work.date);
  // A record may still speak of a colony that left on the day; work is done to one that is there.
  const bool needsBees = work.kind == BulkKind::Feed || work.kind == BulkKind::Treat;
  if (needsBees && season.hive(hive) && state.present && state.colonies.empty()) {
    out.nothing = state.status == apiary::HiveStatus::Dead
                      ? message("session.hive_dead", hive.str(), work.date.iso())
                      : message("session.hive_empty", hive.str(), work.date.iso());
    return out;
  }
  switch (work.kind) {
    case BulkKind::AddBox:
      addBox(out, state, work, work.role);
      break;
    case BulkKind::AddSuper:
      addBox(out, state, work, BoxRole::Super);
      break;
    case BulkKind::SupersOff:
      for (auto box = state.boxes.rbegin(); box != state.boxes.rend(); ++box) {
        if (!isSuper(*box)) continue;
        BoxMove off;
        off.hive = hive;
        off.position = box->position;
        off.date = work.date;
        off.withBees = false;
        out.steps.push_back({hive, moveBox(off)});
      }
      if (out.steps.empty()) out.nothing = message("session.bulk_no_super", hive.str());
      break;
    case BulkKind::Feed: {
      Event e = eventFor(work, hive, EventKind::Fed);
      e.what = work.feed;
      e.amount = work.amount;
      if (work.amount) e.unit = work.unit;
      out.steps.push_back({hive, recordEvent(e)});
      break;
    }
    case BulkKind::Treat: {
      Event e = eventFor(work, hive, EventKind::Treated);
      e.method = work.product;
      e.dose = work.dose;
      e.batch = work.batch;
      e.withdrawalDays = work.withdrawalDays;
      if (!state.stacked()) {
        out.steps.push_back({hive, recordEvent(e)});
        break;
      }
      for (const auto& lives : state.colonies) {
        e.colony = lives.colony;
        out.steps.push_back({hive, recordEvent(e)});
      }
      break;
    }
    case BulkKind::Wrap:
      wrap(out, state, work, true);
      break;
    case BulkKind::Unwrap:
      wrap(out, state, work, false);
      break;
    case BulkKind::ExcluderOn:
      setExcluder(out, state, work, true);
      break;
    case BulkKind::ExcluderOff:
      setExcluder(out, state, work, false);
      break;
  }
  return out;
}

bool hasSupers(const apiary::Season& season, const HiveId& hive, Date day) {
  const auto state = apiary::hiveOn(season, hive, day);
  return std::any_of(state.boxes.begin(), state.boxes.end(), isSuper);
}

std::optional<Date> waitingUntil(const apiary::Season& season, const HiveId& hive, Date day) {
  std::optional<Date> until;
  for (const Event* e : season.journal<Event>(hive)) {
    if (e->date > day || e->kind != EventKind::Treated || !e->withdrawalDays) continue;
    const Date end = e->date.plusDays(*e->withdrawalDays);
    if (end > day && (!until || end > *until)) until = end;
  }
  return until;
}

}  // namespace outyard::session
