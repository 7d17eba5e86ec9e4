// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/verb.h"

#include <algorithm>
#include <stdexcept>

#include "core/base/text.h"

namespace outyard::session {

using apiary::Beneath;
using apiary::BoxRole;
using apiary::BoxState;
using apiary::ColonyPlace;
using apiary::ColonyStay;
using apiary::EventKind;
using apiary::HiveState;
using base::message;

void Checker::fault(base::Message message) {
  auto& all = m_failure.messages;
  if (std::find(all.begin(), all.end(), message) == all.end()) all.push_back(std::move(message));
}

base::Result<void> Checker::result() const {
  if (ok()) return {};
  return m_failure;
}

bool Checker::name(const std::string& id) {
  const auto clean = base::normalised(id);
  const bool plain = std::none_of(id.begin(), id.end(), [](char c) { return c >= 0 && c < ' '; });
  if (id.empty()) {
    fault(message("session.name_blank"));
  } else if (!clean || *clean != id || !plain) {
    fault(message("session.name_untidy", id));
  } else if (base::codePoints(id) > 64) {
    fault(message("session.name_long", id));
  } else {
    return true;
  }
  return false;
}

bool Checker::yard(const base::YardId& id) {
  if (m_season.yard(id)) return true;
  fault(message("session.unknown_yard", id.str()));
  return false;
}

bool Checker::hive(const base::HiveId& id) {
  if (m_season.hive(id)) return true;
  fault(message("session.unknown_hive", id.str()));
  return false;
}

bool Checker::queen(const std::optional<base::QueenId>& id) {
  if (!id || m_season.queen(*id)) return true;
  fault(message("session.unknown_queen", id->str()));
  return false;
}

bool Checker::task(const std::optional<base::TaskId>& id) {
  if (!id) return true;
  const auto* task = m_season.find<apiary::Task>(id->str());
  if (!task) {
    fault(message("session.unknown_task", id->str()));
  } else if (task->state != apiary::TaskState::Planned) {
    fault(message("session.task_closed", id->str()));
  } else {
    return true;
  }
  return false;
}

bool Checker::sheet(const std::optional<base::SheetId>& id) {
  if (!id || m_season.find<apiary::SheetRow>(id->str())) return true;
  fault(message("session.unknown_sheet", id->str()));
  return false;
}

std::optional<HiveState> Checker::standing(const base::HiveId& id, base::Date date) {
  if (!hive(id)) return std::nullopt;
  const auto places = m_season.journal<apiary::Place>(id);
  if (places.empty()) {
    fault(message("session.no_place", id.str()));
    return std::nullopt;
  }
  if (date < places.front()->fromDate) {
    fault(message("session.before_first_place", id.str(), places.front()->fromDate.iso(),
                  date.iso()));
    return std::nullopt;
  }
  HiveState state = apiary::hiveOn(m_season, id, date);
  if (!state.present) {
    fault(message("session.hive_gone", id.str(), date.iso()));
    return std::nullopt;
  }
  return state;
}

std::optional<base::ColonyId> Checker::colony(const HiveState& state,
                                              const std::optional<base::ColonyId>& named,
                                              base::Date date) {
  std::vector<base::ColonyId> left;
  for (const ColonyStay* s : m_season.journal<ColonyStay>(state.hive)) {
    if (s->toDate && *s->toDate == date && s->fromDate <= date && !state.colony(s->colony)) {
      left.push_back(s->colony);
    }
  }
  if (named) {
    if (state.colony(*named) || std::find(left.begin(), left.end(), *named) != left.end()) {
      return named;
    }
    fault(message("session.colony_not_there", named->str(), state.hive.str(), date.iso()));
    return std::nullopt;
  }
  if (state.colonies.size() > 1) {
    fault(message("session.name_the_colony", state.hive.str(), state.colonies[0].colony.str(),
                  state.colonies[1].colony.str()));
    return std::nullopt;
  }
  if (!state.colonies.empty()) return state.colonies.front().colony;
  if (left.size() == 1) return left.front();
  if (state.status == apiary::HiveStatus::Dead) {
    fault(message("session.hive_dead", state.hive.str(), date.iso()));
  } else {
    fault(message("session.hive_empty", state.hive.str(), date.iso()));
  }
  return std::nullopt;
}

void Checker::healthy(const base::YardId& yard, base::Date date) {
  if (const auto sick = apiary::foulBroodIn(m_season, yard, date)) {
    fault(message("session.foul_brood", yard.str(), sick->str()));
  }
}

void Checker::noLaterPlace(const base::HiveId& hive, base::Date date) {
  const auto places = m_season.journal<apiary::Place>(hive);
  if (!places.empty() && places.back()->fromDate > date) {
    fault(message("session.later_place", hive.str(), places.back()->fromDate.iso(), date.iso()));
  }
}

void Checker::noLaterStack(const base::HiveId& hive, base::Date date) {
  const auto boxes = m_season.journal<apiary::Box>(hive);
  if (!boxes.empty() && boxes.back()->date > date) {
    fault(message("session.later_stack", hive.str(), boxes.back()->date.iso(), date.iso()));
  }
}

void Checker::nothingLater(const base::HiveId& hive, base::Date date) {
  std::optional<base::Date> latest;
  const auto see = [&](base::Date d) {
    if (d > date && (!latest || d > *latest)) latest = d;
  };
  for (const auto* r : m_season.journal<apiary::Inspection>(hive)) see(r->date);
  for (const auto* r : m_season.journal<apiary::Wash>(hive)) see(r->date);
  for (const auto* r : m_season.eventsTouching(hive)) {
    if (r->kind != EventKind::Note) see(r->date);
  }
  for (const auto* r : m_season.journal<ColonyStay>(hive)) {
    see(r->fromDate);
    if (r->toDate) see(*r->toDate);
  }
  for (const auto* r : m_season.journal<apiary::Box>(hive)) see(r->date);
  if (latest) fault(message("session.later_records", hive.str(), latest->iso(), date.iso()));
}

void Checker::stack(const HiveState& hive, const std::vector<BoxState>& boxes) {
  const std::string& id = hive.hive.str();
  std::vector<BoxState> sorted = boxes;
  std::sort(sorted.begin(), sorted.end(),
            [](const BoxState& a, const BoxState& b) { return a.position < b.position; });
  if (sorted.size() > 12) return fault(message("session.stack_too_high", id, 12));
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    const BoxState& box = sorted[i];
    if (box.position != static_cast<int>(i) + 1) {
      return fault(message("session.stack_positions", id));
    }
    const auto shipped = apiary::shippedFrameTypes();
    if (std::find(shipped.begin(), shipped.end(), box.frameType) == shipped.end() &&
        !m_season.find<apiary::FrameType>(box.frameType)) {
      fault(message("session.unknown_frame_type", id, box.position, box.frameType));
    }
    if (box.frames < 0 || box.frames > 60) {
      fault(message("session.box_frames", id, box.position));
    }
    if (hive.stacked() && box.colony && !hive.colony(*box.colony)) {
      fault(message("session.box_of_other", id, box.position, box.colony->str()));
    }
  }
  if (!sorted.empty() && sorted.front().beneath != Beneath::None) {
    fault(message("session.beneath_lowest", id));
  }
  if (hive.colonies.size() > 2) fault(message("session.too_many_colonies", id));
  HiveState after = hive;
  after.boxes = sorted;
  for (const auto& c : hive.colonies) {
    const bool beside = c.place == ColonyPlace::Left || c.place == ColonyPlace::Right;
    if (!beside && after.chambersOf(c.colony) == 0) {
      fault(message("session.no_chamber", id, c.colony.str()));
    }
    if (c.place == ColonyPlace::Main || beside || !hive.stacked()) continue;
    const auto own = after.boxesOf(c.colony);
    if (!own.empty() && (own.front().beneath == Beneath::None ||
                         own.front().beneath == Beneath::Paper || own.front().position == 1)) {
      fault(message("session.stack_needs_excluder", id, own.front().position));
    }
  }
}

void Checker::row(const apiary::Row& row) {
  const auto& spec = apiary::tableSpec(row.table);
  // Ids that are made on execution must not hide what else is wrong with the row.
  apiary::Row whole = row;
  for (const char* made : {"record", "inspection", "task", "plan", "sheet", "visit"}) {
    const int i = spec.columnIndex(made);
    if (i < 0 || !spec.columns[static_cast<std::size_t>(i)].required) continue;
    auto& value = whole.values[static_cast<std::size_t>(i)];
    if (std::holds_alternative<std::monostate>(value)) value = std::string("-");
  }
  for (const auto& f : apiary::checkRow(whole)) {
    fault(f.column.empty() ? f.what : message("session.bad_value", f.column, f.what));
  }
}

base::Result<void> Verb::check(const apiary::Season& season) const {
  Checker checker(season);
  m_check(checker);
  return checker.result();
}

apiary::ChangeList Verb::changes(const apiary::Season& season, const Context& context) const {
  ChangeBuilder builder(season, context);
  m_write(builder);
  return builder.take();
}

CommandPtr verb(base::Message title, std::optional<base::Date> doneOn, Verb::Check check,
                Verb::Write write) {
  return std::make_unique<Verb>(std::move(title), doneOn, std::move(check), std::move(write));
}

const ColonyStay* openStay(const apiary::Season& season, const base::HiveId& hive,
                           const base::ColonyId& colony, base::Date date) {
  const ColonyStay* found = nullptr;
  for (const ColonyStay* s : season.stays(colony)) {
    if (s->hive == hive && s->fromDate <= date && !s->toDate) found = s;
  }
  return found;
}

void renumber(std::vector<BoxState>& boxes) {
  int position = 0;
  for (BoxState& box : boxes) box.position = ++position;
}

ColonyPlace placeOver(Beneath between) {
  switch (between) {
    case Beneath::Excluder:
      return ColonyPlace::OverExcluder;
    case Beneath::DoubleScreen:
      return ColonyPlace::OverDoubleScreen;
    case Beneath::Board:
      return ColonyPlace::OverBoard;
    default:
      throw std::logic_error("no colony lives over nothing");
  }
}

base::Message kindName(EventKind kind) {
  switch (kind) {
    case EventKind::BoxAdded:
      return message("session.kind.box_added");
    case EventKind::BoxRemoved:
      return message("session.kind.box_removed");
    case EventKind::Reversed:
      return message("session.kind.reversed");
    case EventKind::FramesMoved:
      return message("session.kind.frames_moved");
    case EventKind::FramesGiven:
      return message("session.kind.frames_given");
    case EventKind::FramesTaken:
      return message("session.kind.frames_taken");
    case EventKind::BeesShaken:
      return message("session.kind.bees_shaken");
    case EventKind::Stacked:
      return message("session.kind.stacked");
    case EventKind::Unstacked:
      return message("session.kind.unstacked");
    case EventKind::United:
      return message("session.kind.united");
    case EventKind::Split:
      return message("session.kind.split");
    case EventKind::PlacesChanged:
      return message("session.kind.places_changed");
    case EventKind::QueenIntroduced:
      return message("session.kind.queen_introduced");
    case EventKind::QueenLost:
      return message("session.kind.queen_lost");
    case EventKind::QueenCellGiven:
      return message("session.kind.queen_cell_given");
    case EventKind::QueenMarked:
      return message("session.kind.queen_marked");
    case EventKind::QueenRemoved:
      return message("session.kind.queen_removed");
    case EventKind::QueenSeenLaying:
      return message("session.kind.queen_seen_laying");
    case EventKind::CellsRemoved:
      return message("session.kind.cells_removed");
    case EventKind::Installed:
      return message("session.kind.installed");
    case EventKind::ExcluderOn:
      return message("session.kind.excluder_on");
    case EventKind::ExcluderOff:
      return message("session.kind.excluder_off");
    case EventKind::PaperOpen:
      return message("session.kind.paper_open");
    case EventKind::Fed:
      return message("session.kind.fed");
    case EventKind::Treated:
      return message("session.kind.treated");
    case EventKind::TreatmentOff:
      return message("session.kind.treatment_off");
    case EventKind::Supered:
      return message("session.kind.supered");
    case EventKind::Harvested:
      return message("session.kind.harvested");
    case EventKind::Wrapped:
      return message("session.kind.wrapped");
    case EventKind::Unwrapped:
      return message("session.kind.unwrapped");
    case EventKind::Moved:
      return message("session.kind.moved");
    case EventKind::Swarmed:
      return message("session.kind.swarmed");
    case EventKind::Robbed:
      return message("session.kind.robbed");
    case EventKind::Poisoned:
      return message("session.kind.poisoned");
    case EventKind::Sold:
      return message("session.kind.sold");
    case EventKind::Bought:
      return message("session.kind.bought");
    case EventKind::Lost:
      return message("session.kind.lost");
    case EventKind::Bloom:
      return message("session.kind.bloom");
    case EventKind::Died:
      return message("session.kind.died");
    case EventKind::Verdict:
      return message("session.kind.verdict");
    case EventKind::Note:
      return message("session.kind.note");
  }
  throw std::logic_error("unknown kind of event");
}

}  // namespace outyard::session
