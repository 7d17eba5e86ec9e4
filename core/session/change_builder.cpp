// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/change_builder.h"

#include <stdexcept>

namespace outyard::session {

using apiary::Box;
using apiary::BoxState;
using apiary::ColonyStay;
using apiary::Hive;
using apiary::Place;
using apiary::RecordHead;

RecordHead ChangeBuilder::leadHead() {
  m_lead = newId();
  m_stateRows = 0;
  RecordHead head;
  head.record = base::RecordId{m_lead};
  head.enteredAt = nowUtc();
  return head;
}

RecordHead ChangeBuilder::stateHead() {
  RecordHead head;
  head.record =
      base::RecordId{m_lead.empty() ? newId() : m_lead + '.' + std::to_string(++m_stateRows)};
  head.enteredAt = nowUtc();
  return head;
}

void ChangeBuilder::set(apiary::TableId table, const std::string& key,
                        std::optional<apiary::Row> after) {
  const auto [it, fresh] = m_pending.try_emplace({table, key}, m_changes.size());
  if (fresh) {
    m_changes.push_back({table, key, m_season.row(table, key), std::move(after)});
  } else {
    m_changes[it->second].after = std::move(after);
  }
}

void ChangeBuilder::endStay(const ColonyStay& stay, base::Date date) {
  ColonyStay ended = stay;
  static_cast<RecordHead&>(ended) = stateHead();
  ended.supersedes = stay.record;
  ended.toDate = date;
  put(ended);
}

void ChangeBuilder::startStay(ColonyStay stay, const base::HiveId& hive, apiary::ColonyPlace place,
                              base::Date date) {
  static_cast<RecordHead&>(stay) = stateHead();
  stay.hive = hive;
  stay.place = place;
  stay.fromDate = date;
  stay.toDate.reset();
  put(stay);
}

void ChangeBuilder::setStack(const base::HiveId& hive, base::Date date,
                             const std::vector<BoxState>& boxes) {
  std::map<int, Box> standing;
  for (const Box& box : journal<Box>(hive)) {
    if (box.date == date) standing.emplace(box.position, box);
  }
  for (const BoxState& state : boxes) {
    Box box;
    box.hive = hive;
    box.date = date;
    box.position = state.position;
    box.frameType = state.frameType;
    if (state.frames > 0) box.frames = state.frames;
    box.role = state.role;
    box.colony = state.colony;
    if (state.beneath != apiary::Beneath::None) box.beneath = state.beneath;
    if (const auto node = standing.extract(state.position)) {
      Box same = box;
      static_cast<RecordHead&>(same) = node.mapped();
      if (same == node.mapped()) continue;
      static_cast<RecordHead&>(box) = stateHead();
      box.supersedes = node.mapped().record;
    } else {
      static_cast<RecordHead&>(box) = stateHead();
    }
    put(box);
  }
  for (auto& [position, surplus] : standing) {
    const base::RecordId old = surplus.record;
    static_cast<RecordHead&>(surplus) = stateHead();
    surplus.supersedes = old;
    surplus.isVoid = true;
    put(surplus);
  }
}

void ChangeBuilder::setPlace(Place place) {
  static_cast<RecordHead&>(place) = stateHead();
  for (const Place& standing : journal<Place>(place.hive)) {
    if (standing.fromDate == place.fromDate) place.supersedes = standing.record;
  }
  put(place);
  mirrorHive(place.hive);
}

void ChangeBuilder::mirrorHive(const base::HiveId& id) {
  auto hive = find<Hive>(id.str());
  const auto places = journal<Place>(id);
  if (!hive || places.empty()) throw std::logic_error("a hive without a place cannot be mirrored");
  const Place& now = places.back();
  hive->yard = now.yard;
  hive->xM = now.xM;
  hive->yM = now.yM;
  hive->entranceDeg = now.entranceDeg;
  hive->stand = now.stand;
  put(*hive);
}

void ChangeBuilder::tickOff(const base::TaskId& id, const base::RecordId& record, base::Date date) {
  auto task = find<apiary::Task>(id.str());
  if (!task) throw std::logic_error("the task to tick off is not there");
  task->state = apiary::TaskState::Done;
  task->doneOn = date;
  task->doneRecord = record;
  put(*task);
}

apiary::ChangeList ChangeBuilder::take() {
  std::erase_if(m_changes, [](const apiary::Change& c) { return c.before == c.after; });
  m_pending.clear();
  return std::exchange(m_changes, {});
}

}  // namespace outyard::session
