// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>
#include <tuple>

#include "core/apiary/comb_state.h"
#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Box;
using apiary::ColonyStay;
using apiary::Event;
using apiary::EventKind;
using apiary::FrameMove;
using apiary::Inspection;
using apiary::Place;
using apiary::RecordHead;
using apiary::TableId;
using apiary::Wash;
using base::message;
using base::RecordId;

namespace {

template <class T>
concept Journal = std::is_base_of_v<RecordHead, T>;
template <class T>
concept StateRow =
    std::is_same_v<T, Place> || std::is_same_v<T, Box> || std::is_same_v<T, ColonyStay>;

template <class T>
Date dateOf(const T& r) {
  if constexpr (requires { r.fromDate; }) {
    return r.fromDate;
  } else {
    return r.date;
  }
}

/// The state rows that one withdrawal takes back.
struct StateRows {
  std::vector<const Place*> places;
  std::vector<const Box*> boxes;
  std::vector<const ColonyStay*> stays;
  std::vector<const FrameMove*> moves;  ///< of combs and boxes, the record itself left out
};

template <class T>
std::vector<const T*> rowsOfLead(const apiary::Season& season, const RecordId& lead) {
  std::vector<const T*> out;
  const std::string prefix = lead.str() + '.';
  const auto& table = season.table<T>();
  for (auto it = table.lower_bound(prefix); it != table.end(); ++it) {
    if (it->first.compare(0, prefix.size(), prefix) != 0) break;
    out.push_back(&it->second);
  }
  return out;
}

/// True when a row of the hive that counts begins or ends on the day and belongs to no verb: such
/// rows came with the event from the exchange tables.
template <class T>
bool looseRows(const apiary::Season& season, const HiveId& hive, Date date) {
  for (const T* r : season.journal<T>(hive)) {
    bool sameDay = dateOf(*r) == date;
    if constexpr (std::is_same_v<T, ColonyStay>) sameDay = sameDay || r->toDate == date;
    if (sameDay && r->record.str().find('.') == std::string::npos) return true;
  }
  return false;
}

bool changesState(EventKind kind) {
  switch (kind) {
    case EventKind::BoxAdded:
    case EventKind::BoxRemoved:
    case EventKind::Reversed:
    case EventKind::Supered:
    case EventKind::ExcluderOn:
    case EventKind::ExcluderOff:
    case EventKind::Stacked:
    case EventKind::Unstacked:
    case EventKind::United:
    case EventKind::Split:
    case EventKind::PlacesChanged:
    case EventKind::Moved:
    case EventKind::Installed:
    case EventKind::Died:
    case EventKind::QueenIntroduced:
    case EventKind::Bought:
    case EventKind::Sold:
    case EventKind::Lost:
      return true;
    default:
      return false;
  }
}

template <Journal T>
StateRows stateRowsOf(const apiary::Season& season, const T& record) {
  StateRows rows;
  if constexpr (std::is_same_v<T, Event> || std::is_same_v<T, Inspection>) {
    // An event said anew (the cause of a death) still leads what it wrote when first said.
    const T* first = &record;
    if constexpr (std::is_same_v<T, Event>) {
      while (first->supersedes) {
        const Event* before = season.find<Event>(first->supersedes->str());
        if (!before) break;
        first = before;
      }
    }
    const RecordId* lead = &first->record;
    rows.places = rowsOfLead<Place>(season, *lead);
    rows.boxes = rowsOfLead<Box>(season, *lead);
    rows.stays = rowsOfLead<ColonyStay>(season, *lead);
    rows.moves = rowsOfLead<FrameMove>(season, *lead);
  } else if constexpr (std::is_same_v<T, FrameMove>) {
    rows.boxes = rowsOfLead<Box>(season, record.record);
    rows.moves = rowsOfLead<FrameMove>(season, record.record);
  } else if constexpr (std::is_same_v<T, Place>) {
    rows.places.push_back(&record);
  } else if constexpr (std::is_same_v<T, ColonyStay>) {
    rows.stays.push_back(&record);
  } else if constexpr (std::is_same_v<T, Box>) {
    // One box alone would leave a gap: the stack of that day goes as a whole.
    for (const Box* b : season.journal<Box>(record.hive)) {
      if (b->date == record.date) rows.boxes.push_back(b);
    }
  }
  return rows;
}

/// Records of the hive that speak of the colony on or after the day that its stay began.
void checkStayUnused(Checker& c, const ColonyStay& stay, Date date, const RecordId& own) {
  const auto built = [&](Date day) {
    c.fault(message("session.built_upon", stay.hive.str(), day.iso()));
  };
  const auto see = [&](const auto& r, bool mayStandUnnamed) {
    if (r.record == own || r.isVoid) return;
    const bool names = r.colony && *r.colony == stay.colony;
    const bool unnamed = !r.colony && !mayStandUnnamed;
    if (r.date > date ? (names || unnamed) : (r.date == date && names)) built(r.date);
    if (r.date == date && unnamed) built(r.date);
  };
  const auto& season = c.season();
  for (const auto* r : season.journal<Inspection>(stay.hive)) see(*r, false);
  for (const auto* r : season.journal<Wash>(stay.hive)) see(*r, false);
  for (const auto* r : season.eventsTouching(stay.hive)) {
    if (r->record == own || r->kind == EventKind::Note) continue;
    if (r->date > date ||
        (r->date == date && (r->colony == stay.colony || r->otherColony == stay.colony))) {
      built(r->date);
    }
  }
  for (const ColonyStay* s : season.stays(stay.colony)) {
    if (s->fromDate > date && s->record != stay.record) built(s->fromDate);
  }
}

/// Combs lie where the moves after this one put them: those go first.
void checkMoves(Checker& c, const std::vector<const FrameMove*>& moves) {
  const auto& season = c.season();
  for (const FrameMove* m : moves) {
    if (season.isSuperseded(TableId::FrameMoves, m->record)) {
      c.fault(message("session.built_upon", m->hive.str(), m->date.iso()));
    }
    const auto lead = apiary::leadOf(m->record).first;
    const auto touches = [&](const HiveId& hive) {
      return hive == m->hive || (m->otherHive && hive == *m->otherHive);
    };
    const auto later = [&](const auto& r) {
      return std::tie(r.date, r.enteredAt) > std::tie(m->date, m->enteredAt);
    };
    for (const auto& [key, other] : season.table<FrameMove>()) {
      if (!season.counts(other) || apiary::leadOf(other.record).first == lead) continue;
      const bool takesIt = other.detail == "heap:" + m->record.str();
      const bool same = touches(other.hive) || (other.otherHive && touches(*other.otherHive));
      if (takesIt || (same && later(other))) {
        c.fault(message("session.built_upon", other.hive.str(), other.date.iso()));
      }
    }
    for (const HiveId& hive : {m->hive, m->otherHive.value_or(m->hive)}) {
      for (const Event* e : season.eventsTouching(hive)) {
        const bool stack = e->kind == EventKind::Reversed || e->kind == EventKind::Stacked ||
                           e->kind == EventKind::Unstacked || e->kind == EventKind::United;
        if (stack && e->record.str() != lead && later(*e)) {
          c.fault(message("session.built_upon", hive.str(), e->date.iso()));
        }
      }
    }
  }
}

void checkRows(Checker& c, const StateRows& rows, Date date, const RecordId& own) {
  const auto& season = c.season();
  const auto superseded = [&](const auto& r) {
    using T = std::remove_cvref_t<decltype(r)>;
    if (season.isSuperseded(apiary::TableOf<T>::kId, r.record)) {
      c.fault(message("session.built_upon", r.hive.str(), dateOf(r).iso()));
    }
  };
  for (const Place* p : rows.places) {
    superseded(*p);
    const auto places = season.journal<Place>(p->hive);
    if (!places.empty() && places.back()->fromDate > p->fromDate) {
      c.fault(message("session.built_upon", p->hive.str(), places.back()->fromDate.iso()));
    }
    if (!p->supersedes && !places.empty() && places.front()->record == p->record) {
      c.fault(message("session.first_place_stays", p->hive.str()));
    }
  }
  for (const Box* b : rows.boxes) {
    superseded(*b);
    const auto boxes = season.journal<Box>(b->hive);
    if (!boxes.empty() && boxes.back()->date > b->date) {
      c.fault(message("session.built_upon", b->hive.str(), boxes.back()->date.iso()));
    }
  }
  // After a change of queens taken back the colony still lives there, with the earlier one.
  const auto livesOn = [&](const ColonyStay& s) {
    if (const auto* old = s.supersedes ? season.find<ColonyStay>(s.supersedes->str()) : nullptr) {
      if (!old->isVoid && old->hive == s.hive && old->colony == s.colony) return true;
    }
    return std::any_of(rows.stays.begin(), rows.stays.end(), [&](const ColonyStay* other) {
      return other->hive == s.hive && other->colony == s.colony && other->toDate == s.fromDate;
    });
  };
  for (const ColonyStay* s : rows.stays) {
    superseded(*s);
    if (!s->toDate) {
      if (!livesOn(*s)) checkStayUnused(c, *s, date, own);
      continue;
    }
    // An ended stay begins to run again: nobody else may have come into its place.
    for (const ColonyStay* other : season.journal<ColonyStay>(s->hive)) {
      const bool mine = std::find(rows.stays.begin(), rows.stays.end(), other) != rows.stays.end();
      if (!mine && other->fromDate >= *s->toDate &&
          other->place.value_or(apiary::ColonyPlace::Main) ==
              s->place.value_or(apiary::ColonyPlace::Main)) {
        c.fault(message("session.built_upon", s->hive.str(), other->fromDate.iso()));
      }
    }
    for (const ColonyStay* other : season.stays(s->colony)) {
      const bool mine = std::find(rows.stays.begin(), rows.stays.end(), other) != rows.stays.end();
      if (!mine && other->fromDate >= *s->toDate) {
        c.fault(message("session.built_upon", other->hive.str(), other->fromDate.iso()));
      }
    }
  }
}

/// What stood before the row stands again; a row that replaced nothing becomes void.
template <StateRow T>
void takeBack(ChangeBuilder& b, const T& row) {
  T next = row;
  bool isVoid = true;
  if (row.supersedes) {
    if (const auto old = b.find<T>(row.supersedes->str())) {
      next = *old;
      isVoid = old->isVoid;
    }
  }
  static_cast<RecordHead&>(next) = b.stateHead();
  next.supersedes = row.record;
  next.isVoid = isVoid;
  b.put(next);
}

template <Journal T>
void checkWithdrawal(Checker& c, const RecordId& id) {
  const auto& season = c.season();
  const T* record = season.find<T>(id.str());
  if (!record) return c.fault(message("session.unknown_record", id.str()));
  if (!season.counts(*record)) {
    return c.fault(message("session.record_withdrawn", record->hive.str(), dateOf(*record).iso()));
  }
  if constexpr (StateRow<T> || std::is_same_v<T, FrameMove>) {
    const auto point = id.str().find('.');
    if (point != std::string::npos) {
      const std::string lead = id.str().substr(0, point);
      if (season.find<Event>(lead) || season.find<Inspection>(lead) ||
          season.find<FrameMove>(lead)) {
        return c.fault(
            message("session.withdraw_the_event", record->hive.str(), dateOf(*record).iso()));
      }
    }
  }
  const StateRows rows = stateRowsOf(season, *record);
  if constexpr (std::is_same_v<T, Event>) {
    const bool none = rows.places.empty() && rows.boxes.empty() && rows.stays.empty();
    std::vector<HiveId> hives{record->hive};
    if (record->otherHive) hives.push_back(*record->otherHive);
    for (const HiveId& hive : hives) {
      if (none && changesState(record->kind) &&
          (looseRows<Place>(season, hive, record->date) ||
           looseRows<Box>(season, hive, record->date) ||
           looseRows<ColonyStay>(season, hive, record->date))) {
        c.fault(message("session.loose_state_rows", hive.str(), record->date.iso()));
      }
    }
  }
  checkRows(c, rows, dateOf(*record), id);
  auto moves = rows.moves;
  if constexpr (std::is_same_v<T, FrameMove>) moves.push_back(record);
  checkMoves(c, moves);
}

template <Journal T>
void writeWithdrawal(ChangeBuilder& b, const RecordId& id) {
  const T& record = *b.before().find<T>(id.str());
  const StateRows rows = stateRowsOf(b.before(), record);
  if constexpr (!StateRow<T>) {
    T gone = record;
    static_cast<RecordHead&>(gone) = b.leadHead();
    gone.supersedes = record.record;
    gone.isVoid = true;
    b.put(gone);
  }
  std::set<HiveId> moved;
  for (const Place* p : rows.places) {
    takeBack(b, *p);
    moved.insert(p->hive);
  }
  for (const Box* box : rows.boxes) takeBack(b, *box);
  for (const FrameMove* m : rows.moves) {
    FrameMove gone = *m;
    static_cast<RecordHead&>(gone) = b.stateHead();
    gone.supersedes = m->record;
    gone.isVoid = true;
    b.put(gone);
  }
  for (const ColonyStay* s : rows.stays) takeBack(b, *s);
  for (const HiveId& hive : moved) b.mirrorHive(hive);
  for (const auto& [key, task] : b.before().table<apiary::Task>()) {
    if (task.doneRecord != id) continue;
    apiary::Task open = task;
    open.state = apiary::TaskState::Planned;
    open.doneOn.reset();
    open.doneRecord.reset();
    b.put(open);
  }
}

}  // namespace

CommandPtr withdrawRecord(TableId table, RecordId record) {
  return verb(
      message("session.title.withdraw"), std::nullopt,
      [=](Checker& c) {
        apiary::withTable(table, [&]<class T>(std::type_identity<T>) {
          if constexpr (Journal<T>) {
            checkWithdrawal<T>(c, record);
          } else {
            c.fault(message("session.not_a_record", apiary::tableSpec(table).name));
          }
        });
      },
      [=](ChangeBuilder& b) {
        apiary::withTable(table, [&]<class T>(std::type_identity<T>) {
          if constexpr (Journal<T>) writeWithdrawal<T>(b, record);
        });
      });
}

}  // namespace outyard::session
