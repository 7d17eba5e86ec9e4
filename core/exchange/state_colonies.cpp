// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/apiary/state.h"
#include "core/exchange/state_rows.h"

namespace outyard::exchange {
namespace {

using apiary::Beneath;
using apiary::Box;
using apiary::BoxState;
using apiary::ColonyId;
using apiary::ColonyOrigin;
using apiary::ColonyPlace;
using apiary::ColonyStay;
using apiary::Date;
using apiary::Event;
using apiary::EventKind;
using apiary::HiveId;
using apiary::HiveStatus;
using apiary::TableId;
using base::message;

constexpr std::size_t kMostBoxes = 12;  // of the exchange grammar

/// What happens to a hive with or without bees in it.
bool neutral(EventKind kind) {
  switch (kind) {
    case EventKind::BoxAdded:
    case EventKind::BoxRemoved:
    case EventKind::Moved:
    case EventKind::PlacesChanged:
    case EventKind::Sold:
    case EventKind::Lost:
    case EventKind::Bloom:
    case EventKind::Note:
      return true;
    default:
      return false;
  }
}

/// The event brings a colony into the hive that had none before.
bool arrivesIn(const Event& e, const HiveId& hive) {
  return e.hive == hive && (e.kind == EventKind::Split || e.kind == EventKind::Unstacked ||
                            e.kind == EventKind::Installed || e.kind == EventKind::Bought);
}

void keepEarlier(std::optional<Date>& best, Date day) {
  if (!best || day < *best) best = day;
}

bool standsOn(const ColonyStay& s, Date day) {
  return s.fromDate <= day && (!s.toDate || day < *s.toDate);
}

ColonyPlace placeOf(const ColonyStay& s) {
  return s.place.value_or(ColonyPlace::Main);
}

ColonyPlace placeOver(Beneath between) {
  switch (between) {
    case Beneath::DoubleScreen:
      return ColonyPlace::OverDoubleScreen;
    case Beneath::Board:
      return ColonyPlace::OverBoard;
    default:
      return ColonyPlace::OverExcluder;
  }
}

/// Works through the events in order of time.
class ColonyMaker {
 public:
  ColonyMaker(Draft& draft, FaultList& faults) : m_draft(draft), m_faults(faults) {}

  void take(const FileEvent& file) {
    const Event& e = *file.event;
    m_origin = file.origin;
    // Unknown hives are told by the check of the whole season.
    if (!season().hive(e.hive) || (e.otherHive && !season().hive(*e.otherHive))) return;
    switch (e.kind) {
      case EventKind::Died:
        leave(e, e.hive, e.colony, false);
        break;
      case EventKind::Stacked:
        stacked(e);
        break;
      case EventKind::Unstacked:
        unstacked(e);
        break;
      case EventKind::United:
        united(e);
        break;
      case EventKind::Split:
        arriveNew(e, ColonyOrigin::Split);
        break;
      case EventKind::Installed:
        arriveNew(e, apiary::parseCode<ColonyOrigin>(e.method));
        break;
      case EventKind::Bought:
        if (freeOn(e.hive, e.date)) arriveNew(e, ColonyOrigin::Bought);
        break;
      case EventKind::Sold:
      case EventKind::Lost:
        gone(e);
        break;
      case EventKind::QueenIntroduced:
        queenChanged(e, e.queen);
        break;
      case EventKind::QueenLost:
      case EventKind::QueenRemoved:
        queenChanged(e, std::nullopt);
        break;
      case EventKind::Swarmed:
        // With an after-swarm the old queen has long been gone.
        if (e.method != "after") queenChanged(e, std::nullopt);
        break;
      default:
        break;
    }
  }

 private:
  struct Leaving {
    std::optional<ColonyStay> stay;  ///< none: a fault was told
    bool endedHere = false;          ///< its end was made from the event
  };

  [[nodiscard]] const apiary::Season& season() const { return m_draft.next(); }

  void fault(const char* column, base::Message what) {
    m_faults.add(m_draft.fileName(TableId::Events), m_origin.line, column, std::move(what));
  }
  static std::string kindOf(const Event& e) { return std::string(apiary::code(e.kind)); }

  /// The colony's stay in the hive ends on the event's day: already said by a row, or made so.
  Leaving leave(const Event& e, const HiveId& hive, const std::optional<ColonyId>& colony,
                bool upper) {
    std::vector<ColonyStay> active;
    for (const ColonyStay* s : season().journal<ColonyStay>(hive)) {
      if (colony && s->colony != *colony) continue;
      if (s->toDate == e.date && (colony || (placeOf(*s) != ColonyPlace::Main) == upper)) {
        return {*s, false};
      }
      if (standsOn(*s, e.date)) active.push_back(*s);
    }
    if (!colony && upper) {
      std::erase_if(active, [](const auto& s) { return placeOf(s) == ColonyPlace::Main; });
    }
    if (active.empty()) {
      if (!colony) {
        fault(hive == e.hive ? "hive" : "other_hive",
              message("exchange.event_no_colony", kindOf(e), hive.str(), e.date.iso()));
      } else if (hive != e.hive || colony != e.colony) {
        // The hive's own colony is told by the check of the whole season.
        fault(colony == e.otherColony ? "other_colony" : "colony",
              message("exchange.event_colony_not_there", kindOf(e), colony->str(), hive.str(),
                      e.date.iso()));
      }
      return {};
    }
    if (active.size() > 1) {
      fault("colony", message("exchange.event_which_colony", kindOf(e), hive.str(), e.date.iso()));
      return {};
    }
    const ColonyStay& stay = active.front();
    if (stay.toDate) {
      fault("date", message("exchange.event_stay_goes_on", kindOf(e), stay.colony.str(), hive.str(),
                            stay.toDate->iso(), e.date.iso()));
      return {};
    }
    end(stay, e.date);
    return {stay, true};
  }

  void end(ColonyStay stay, Date day) {
    const base::RecordId record = stay.record;
    stay.toDate = day;
    if (m_draft.isMade(TableId::Colonies, record.str())) {
      m_draft.put(stay, m_origin);
      return;
    }
    static_cast<apiary::RecordHead&>(stay) = {};
    stay.supersedes = record;
    m_draft.make(stay, m_origin);
  }

  /// The colony lives in the hive from the event's day on. False when a row says otherwise.
  bool arrive(const Event& e, ColonyStay stay, const HiveId& hive, ColonyPlace place) {
    const ColonyStay* elsewhere = nullptr;
    for (const ColonyStay* s : season().stays(stay.colony)) {
      if (s->fromDate != e.date) continue;
      if (s->hive == hive) return true;
      elsewhere = s;
    }
    if (elsewhere) {
      fault("hive", message("exchange.event_arrived_elsewhere", kindOf(e), stay.colony.str(),
                            elsewhere->hive.str(), e.date.iso(), hive.str()));
      return false;
    }
    static_cast<apiary::RecordHead&>(stay) = {};
    stay.hive = hive;
    stay.place = place;
    stay.fromDate = e.date;
    stay.toDate.reset();
    m_draft.make(stay, m_origin);
    return true;
  }

  void arriveNew(const Event& e, std::optional<ColonyOrigin> origin) {
    for (const ColonyStay* s : season().journal<ColonyStay>(e.hive)) {
      const bool main = placeOf(*s) == ColonyPlace::Main;
      if (s->fromDate == e.date && main) {
        if (e.colony && s->colony != *e.colony) {
          fault("colony", message("exchange.event_other_colony", kindOf(e), e.colony->str(),
                                  s->colony.str(), e.hive.str(), e.date.iso()));
        }
        return;
      }
      if (main && standsOn(*s, e.date)) {
        fault("hive", message("exchange.event_hive_taken", kindOf(e), e.hive.str(), s->colony.str(),
                              e.date.iso()));
        return;
      }
    }
    ColonyStay stay;
    stay.colony = e.colony.value_or(ColonyId(e.hive.str()));
    stay.queen = e.queen;
    stay.origin = origin;
    if (e.kind == EventKind::Split) {
      stay.parentColony = e.otherColony;
      if (!stay.parentColony && e.otherHive) {
        for (const ColonyStay* s : season().journal<ColonyStay>(*e.otherHive)) {
          if (standsOn(*s, e.date) && placeOf(*s) == ColonyPlace::Main)
            stay.parentColony = s->colony;
        }
      }
    }
    arrive(e, stay, e.hive, ColonyPlace::Main);
  }

  /// Nobody lives on the hive's floor on the day or later.
  [[nodiscard]] bool freeOn(const HiveId& hive, Date day) const {
    const auto stays = season().journal<ColonyStay>(hive);
    return std::none_of(stays.begin(), stays.end(), [&](const ColonyStay* s) {
      return placeOf(*s) == ColonyPlace::Main && s->fromDate != day &&
             (!s->toDate || *s->toDate > day);
    });
  }

  /// Sold or lost: stays that nobody ended go with the day. Rows that say otherwise stand.
  void gone(const Event& e) {
    std::vector<ColonyStay> active;
    for (const ColonyStay* s : season().journal<ColonyStay>(e.hive)) {
      const bool meant = !e.colony || s->colony == *e.colony;
      if (meant && standsOn(*s, e.date) && !s->toDate && s->fromDate < e.date) active.push_back(*s);
    }
    for (const ColonyStay& s : active) end(s, e.date);
  }

  /// The colony lives on with another queen, or with none that is known. A row that begins on the
  /// day says it already; a stay whose end is told stands as it is.
  void queenChanged(const Event& e, const std::optional<apiary::QueenId>& queen) {
    std::optional<ColonyStay> now;
    for (const ColonyStay* s : season().journal<ColonyStay>(e.hive)) {
      if (e.colony ? s->colony != *e.colony : placeOf(*s) != ColonyPlace::Main) continue;
      const bool made = m_draft.isMade(TableId::Colonies, s->record.str());
      if (s->fromDate == e.date && !made) return;
      if (standsOn(*s, e.date)) now = *s;
    }
    if (!now || now->toDate) return;
    ColonyStay next = *now;
    next.queen = queen;
    next.queenYear.reset();
    next.queenLine.clear();
    next.queenMarked.reset();
    if (now->fromDate == e.date) {
      m_draft.put(next, m_origin);
      return;
    }
    end(*now, e.date);
    static_cast<apiary::RecordHead&>(next) = {};
    next.fromDate = e.date;
    next.origin.reset();
    next.parentColony.reset();
    m_draft.make(next, m_origin);
  }

  bool needsOther(const Event& e) {
    if (e.otherHive) return true;
    fault("other_hive", message("exchange.event_needs_other_hive", kindOf(e)));
    return false;
  }

  void stacked(const Event& e) {
    if (!needsOther(e)) return;
    const Leaving up = leave(e, e.hive, e.colony, false);
    if (!up.stay) return;
    const Beneath between = apiary::parseCode<Beneath>(e.method).value_or(Beneath::Excluder);
    if (!arrive(e, *up.stay, *e.otherHive, placeOver(between))) return;
    std::vector<BoxState> stack = stackOn(*e.otherHive, e.date);
    std::vector<BoxState> over = carriedFrom(e.hive, e.date);
    if (boxesSaid(*e.otherHive, e.date) || stack.empty() || over.empty()) return;
    std::optional<ColonyId> below = e.otherColony;
    for (const ColonyStay* s : season().journal<ColonyStay>(*e.otherHive)) {
      if (!below && standsOn(*s, e.date) && placeOf(*s) == ColonyPlace::Main) below = s->colony;
    }
    for (auto& b : stack) b.colony = below;
    for (auto& b : over) b.colony = up.stay->colony;
    over.front().beneath = between;
    stack.insert(stack.end(), over.begin(), over.end());
    setStack(*e.otherHive, e.date, stack);
  }

  void unstacked(const Event& e) {
    if (!needsOther(e)) return;
    const Leaving up = leave(e, *e.otherHive, e.colony, true);
    if (!up.stay || !arrive(e, *up.stay, e.hive, ColonyPlace::Main)) return;
    std::vector<BoxState> off, rest;
    for (auto b : stackOn(*e.otherHive, e.date)) {
      const bool hers = b.colony == up.stay->colony;
      b.colony.reset();
      (hers ? off : rest).push_back(b);
    }
    if (off.empty()) return;
    for (auto* boxes : {&off, &rest}) {
      if (!boxes->empty()) boxes->front().beneath = Beneath::None;
    }
    if (!boxesSaid(e.hive, e.date)) setStack(e.hive, e.date, off);
    if (!boxesSaid(*e.otherHive, e.date)) setStack(*e.otherHive, e.date, rest);
  }

  void united(const Event& e) {
    if (!e.otherColony && !needsOther(e)) return;
    const HiveId from = e.otherHive.value_or(e.hive);
    const Leaving gone = leave(e, from, e.otherColony, from == e.hive);
    // Rows that tell of the colonies but not of boxes say that the stack stayed as it was.
    if (!gone.stay || !gone.endedHere || from == e.hive || boxesSaid(e.hive, e.date)) return;
    std::vector<BoxState> stack = stackOn(e.hive, e.date);
    const std::vector<BoxState> over = carriedFrom(from, e.date);
    if (stack.empty() || over.empty()) return;
    stack.insert(stack.end(), over.begin(), over.end());
    for (auto& b : stack) b.colony.reset();
    setStack(e.hive, e.date, stack);
  }

  [[nodiscard]] bool boxesSaid(const HiveId& hive, Date day) const {
    const auto& all = season().allOf<Box>(hive);
    return std::any_of(all.begin(), all.end(), [&](const Box* b) { return b->date == day; });
  }
  [[nodiscard]] std::vector<BoxState> stackOn(const HiveId& hive, Date day) const {
    return apiary::hiveOn(season(), hive, day).boxes;
  }
  /// The stand is bare from the event's day on: what went along is what stood there before.
  [[nodiscard]] std::vector<BoxState> carriedFrom(const HiveId& hive, Date day) const {
    std::vector<BoxState> before = stackOn(hive, day.plusDays(-1));
    return before.empty() ? stackOn(hive, day) : before;
  }
  void setStack(const HiveId& hive, Date day, const std::vector<BoxState>& boxes) {
    if (boxes.size() > kMostBoxes) return;  // too high to be told from the event alone
    int position = 0;
    for (const BoxState& state : boxes) {
      Box b;
      b.hive = hive;
      b.date = day;
      b.position = ++position;
      b.frameType = state.frameType;
      if (state.frames > 0) b.frames = state.frames;
      b.role = state.role;
      b.colony = state.colony;
      if (state.beneath != Beneath::None) b.beneath = state.beneath;
      m_draft.make(b, m_origin);
    }
  }

  Draft& m_draft;
  FaultList& m_faults;
  Origin m_origin;
};

struct FirstSight {
  std::optional<Date> record;   ///< of a colony that was there
  std::optional<Date> arrival;  ///< of an event that brings one
  bool looked = false;          ///< an inspection or a wash: there were bees
};

FirstSight firstSight(const apiary::Season& season, const HiveId& hive) {
  FirstSight out;
  for (const auto* r : season.journal<apiary::Inspection>(hive)) {
    keepEarlier(out.record, r->date);
    out.looked = true;
  }
  for (const auto* r : season.journal<apiary::Wash>(hive)) {
    keepEarlier(out.record, r->date);
    out.looked = true;
  }
  for (const Event* e : season.eventsTouching(hive)) {
    if (neutral(e->kind)) continue;
    keepEarlier(arrivesIn(*e, hive) ? out.arrival : out.record, e->date);
  }
  return out;
}

}  // namespace

void makeFirstColonies(Draft& draft, const StateInput& input) {
  std::map<std::string, Origin> hives = input.touched;
  std::map<std::string, HiveStatus> said;
  for (const FileHive& h : input.hives) {
    if (!h.given.status) continue;
    said[h.given.hive.str()] = *h.given.status;
    if (*h.given.status == HiveStatus::Live) hives.emplace(h.given.hive.str(), h.origin);
  }
  for (const auto& [name, origin] : hives) {
    const HiveId hive(name);
    const apiary::Season& season = draft.next();
    if (!season.hive(hive) || !season.allOf<ColonyStay>(hive).empty()) continue;
    const auto status = said.find(name);
    FirstSight first = firstSight(season, hive);
    if (first.arrival && (!first.record || *first.arrival <= *first.record)) continue;
    if (status != said.end() && status->second == HiveStatus::Empty && !first.looked) continue;
    if (!first.record && status != said.end() && status->second == HiveStatus::Live) {
      first.record = apiary::firstRecordOf(season, hive).value_or(input.today);
    }
    if (!first.record) continue;
    ColonyStay stay;
    stay.colony = ColonyId(name);
    stay.hive = hive;
    stay.place = ColonyPlace::Main;
    stay.fromDate = *first.record;
    draft.make(stay, origin);
  }
}

void makeColonyRows(Draft& draft, const StateInput& input, FaultList& faults) {
  ColonyMaker maker(draft, faults);
  for (const FileEvent& e : input.events) maker.take(e);
}

void checkStatus(const Draft& draft, const StateInput& input, FaultList& faults) {
  const Date day = statusDay(draft.next()).value_or(input.today);
  for (const FileHive& h : input.hives) {
    if (!h.given.status) continue;
    const HiveStatus now = apiary::hiveOn(draft.next(), h.given.hive, day).status;
    if (now == *h.given.status) continue;
    faults.add(draft.fileName(h.origin.table), h.origin.line, "status",
               message("exchange.status_disagrees", std::string(apiary::code(*h.given.status)),
                       h.given.hive.str(), day.iso(), std::string(apiary::code(now))));
  }
}

}  // namespace outyard::exchange
