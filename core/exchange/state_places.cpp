// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>

#include "core/apiary/state.h"
#include "core/base/text.h"
#include "core/exchange/state_rows.h"

namespace outyard::exchange {
namespace {

using apiary::Date;
using apiary::Event;
using apiary::EventKind;
using apiary::Hive;
using apiary::HiveId;
using apiary::Place;
using apiary::PlaceHow;
using apiary::TableId;
using apiary::YardId;
using base::message;

struct Spot {
  YardId yard;
  std::optional<double> xM, yM, entranceDeg;
  std::string stand;
};

template <class T>
Spot spotOf(const T& from) {
  return {from.yard, from.xM, from.yM, from.entranceDeg, from.stand};
}

/// Works out places from what a folder without places.csv tells: hives.csv says where each hive
/// stands now, the events moved and places_changed how it came there.
class PlaceMaker {
 public:
  PlaceMaker(Draft& draft, const StateInput& input, FaultList& faults)
      : m_draft(draft), m_input(input), m_faults(faults) {
    for (const FileHive& h : input.hives) m_fileHives[h.given.hive] = &h;
    for (const FileEvent& e : input.events) {
      const bool known = season().hive(e.event->hive) &&
                         (!e.event->otherHive || season().hive(*e.event->otherHive));
      const bool matters =
          e.event->kind == EventKind::Moved || e.event->kind == EventKind::PlacesChanged;
      if (known && matters) m_events.push_back(e);
    }
  }

  void run() {
    unwind();
    makeFirstPlaces();
    for (std::size_t i = 0; i < m_events.size(); ++i) {
      const Event& e = *m_events[i].event;
      if (e.kind == EventKind::Moved) {
        moved(i, e);
      } else if (!e.otherHive) {
        fault(m_events[i], "other_hive",
              message("exchange.event_needs_other_hive", std::string(apiary::code(e.kind))));
      } else {
        swapped(i, e);
      }
    }
    settleHives();
  }

 private:
  using Known = std::map<HiveId, std::optional<Spot>>;

  [[nodiscard]] const apiary::Season& season() const { return m_draft.next(); }
  void fault(const FileEvent& e, const char* column, base::Message what) {
    m_faults.add(m_draft.fileName(TableId::Events), e.origin.line, column, std::move(what));
  }

  /// From where the placeless hives stand now, back through the events to where they began.
  void unwind() {
    for (const auto& [hive, file] : m_fileHives) {
      if (season().allOf<Place>(hive).empty()) m_spots[hive] = spotOf(file->given);
    }
    m_after.resize(m_events.size());
    for (std::size_t i = m_events.size(); i-- > 0;) {
      const Event& e = *m_events[i].event;
      const auto a = m_spots.find(e.hive);
      if (a != m_spots.end()) m_after[i][e.hive] = a->second;
      if (e.kind == EventKind::Moved) {
        if (a == m_spots.end() || !a->second) continue;
        // Within the yard the old spot is not told, to another yard not even the old yard.
        a->second = e.otherYard ? std::optional<Spot>{} : Spot{a->second->yard, {}, {}, {}, {}};
        continue;
      }
      if (!e.otherHive) continue;
      const auto b = m_spots.find(*e.otherHive);
      if (b != m_spots.end()) m_after[i][*e.otherHive] = b->second;
      if (a != m_spots.end() && b != m_spots.end()) {
        std::swap(a->second, b->second);
      } else if (a != m_spots.end()) {
        a->second = lastPlace(*e.otherHive, e.date);
      } else if (b != m_spots.end()) {
        b->second = lastPlace(e.hive, e.date);
      }
    }
  }

  void makeFirstPlaces() {
    for (const auto& [hive, spot] : m_spots) {
      if (!spot) continue;
      const Date from = apiary::firstRecordOf(season(), hive).value_or(m_input.today);
      const bool movedFirst =
          std::any_of(m_events.begin(), m_events.end(), [&, h = hive](const FileEvent& e) {
            return e.event->date <= from && (e.event->hive == h || e.event->otherHive == h);
          });
      if (movedFirst) continue;
      put(hive, *spot, from, PlaceHow::Placed, m_fileHives.at(hive)->origin);
    }
  }

  void put(const HiveId& hive, const Spot& spot, Date from, PlaceHow how, Origin origin) {
    Place p;
    p.hive = hive;
    p.yard = spot.yard;
    p.xM = spot.xM;
    p.yM = spot.yM;
    p.entranceDeg = spot.entranceDeg;
    p.stand = spot.stand;
    p.fromDate = from;
    p.how = how;
    m_draft.make(p, origin);
    m_placed.insert(hive);
  }

  [[nodiscard]] std::optional<Spot> lastPlace(const HiveId& hive, Date upTo) const {
    std::optional<Spot> out;
    for (const Place* p : season().journal<Place>(hive)) {
      if (p->fromDate <= upTo) out = spotOf(*p);
    }
    return out;
  }
  /// A place row of that hive and day, whether it still counts or not.
  [[nodiscard]] bool placeSaid(const HiveId& hive, Date day) const {
    const auto& all = season().allOf<Place>(hive);
    return std::any_of(all.begin(), all.end(), [&](const Place* p) { return p->fromDate == day; });
  }
  [[nodiscard]] bool lastEventOf(std::size_t i, const HiveId& hive) const {
    for (std::size_t k = i + 1; k < m_events.size(); ++k) {
      if (m_events[k].event->hive == hive || m_events[k].event->otherHive == hive) return false;
    }
    return true;
  }

  void moved(std::size_t i, const Event& e) {
    if (placeSaid(e.hive, e.date)) {
      if (e.otherYard) expectYards(i, e, e.hive, {*e.otherYard}, "other_yard");
      return;
    }
    std::optional<Spot> to;
    if (const auto known = m_after[i].find(e.hive); known != m_after[i].end()) to = known->second;
    if (to && e.otherYard && to->yard != *e.otherYard) {
      // hives.csv and the event speak of the same day when no later event carries it on.
      fault(m_events[i], "other_yard",
            message("exchange.moved_elsewhere", e.hive.str(), e.otherYard->str(), to->yard.str(),
                    e.date.iso()));
      return;
    }
    if (!to) {
      const auto before = lastPlace(e.hive, e.date);
      if (e.otherYard) {
        to = Spot{*e.otherYard, {}, {}, {}, {}};
      } else if (before) {
        to = Spot{before->yard, {}, {}, {}, {}};
      }
      const auto file = m_fileHives.find(e.hive);
      if (to && file != m_fileHives.end() && file->second->given.yard == to->yard &&
          lastEventOf(i, e.hive) && latestBy(e.hive, e.date)) {
        to = spotOf(file->second->given);
      }
    }
    if (!to) {
      fault(m_events[i], "other_yard", message("exchange.moved_where", e.hive.str()));
      return;
    }
    put(e.hive, *to, e.date, PlaceHow::Moved, m_events[i].origin);
  }

  /// True when no place row of the hive is later than the day.
  [[nodiscard]] bool latestBy(const HiveId& hive, Date day) const {
    const auto places = season().journal<Place>(hive);
    return places.empty() || places.back()->fromDate <= day;
  }

  void swapped(std::size_t i, const Event& e) {
    const auto beforeA = lastPlace(e.hive, e.date.plusDays(-1));
    const auto beforeB = lastPlace(*e.otherHive, e.date.plusDays(-1));
    // What else was moved on that day came before or after: its yards are as good.
    auto yardsA = yardsOn(e.hive, e.date), yardsB = yardsOn(*e.otherHive, e.date);
    if (beforeA) yardsA.insert(beforeA->yard);
    if (beforeB) yardsB.insert(beforeB->yard);
    swappedTo(i, e, e.hive, beforeB, beforeB ? yardsB : std::set<YardId>{}, "hive");
    swappedTo(i, e, *e.otherHive, beforeA, beforeA ? yardsA : std::set<YardId>{}, "other_hive");
  }

  /// Yards of all place rows of that hive and day.
  [[nodiscard]] std::set<YardId> yardsOn(const HiveId& hive, Date day) const {
    std::set<YardId> out;
    for (const Place* p : season().allOf<Place>(hive)) {
      if (p->fromDate == day) out.insert(p->yard);
    }
    return out;
  }
  /// The hive's place rows of the day must not all say another yard than the event.
  void expectYards(std::size_t i, const Event& e, const HiveId& hive, const std::set<YardId>& told,
                   const char* column) {
    const auto said = yardsOn(hive, e.date);
    const bool fits = std::any_of(said.begin(), said.end(),
                                  [&](const YardId& yard) { return told.contains(yard); });
    if (told.empty() || said.empty() || fits) return;
    fault(m_events[i], column,
          message("exchange.moved_elsewhere", hive.str(), told.begin()->str(), said.begin()->str(),
                  e.date.iso()));
  }

  void swappedTo(std::size_t i, const Event& e, const HiveId& hive, std::optional<Spot> to,
                 const std::set<YardId>& told, const char* column) {
    if (placeSaid(hive, e.date)) return expectYards(i, e, hive, told, column);
    if (const auto known = m_after[i].find(hive); known != m_after[i].end() && known->second) {
      to = known->second;
    }
    if (!to) {
      fault(m_events[i], column, message("exchange.swap_unknown", hive.str(), e.date.iso()));
      return;
    }
    put(hive, *to, e.date, PlaceHow::Moved, m_events[i].origin);
  }

  /// Hive rows say the latest place; a file's own columns must not say another.
  void settleHives() {
    std::set<HiveId> hives = m_placed;
    for (const auto& [hive, file] : m_fileHives) hives.insert(hive);
    for (const auto& [key, place] : season().table<Place>()) {
      if (m_draft.origin(TableId::Places, key)) hives.insert(place.hive);
    }
    for (const HiveId& id : hives) {
      const Hive* hive = season().hive(id);
      const auto places = season().journal<Place>(id);
      if (!hive || places.empty()) continue;
      const Spot now = spotOf(*places.back());
      const auto file = m_fileHives.find(id);
      if (file != m_fileHives.end() && !agrees(*file->second, now)) continue;
      Hive next = *hive;
      next.yard = now.yard;
      next.xM = now.xM;
      next.yM = now.yM;
      next.entranceDeg = now.entranceDeg;
      next.stand = now.stand;
      if (next == *hive) continue;
      const auto origin = m_draft.origin(TableId::Hives, id.str());
      m_draft.put(next, origin.value_or(Origin{TableId::Hives, 0}), !origin);
    }
  }

  bool agrees(const FileHive& file, const Spot& now) {
    bool good = true;
    const auto differs = [&](const char* column, const std::string& said,
                             const std::string& stands) {
      good = false;
      m_faults.add(m_draft.fileName(TableId::Hives), file.origin.line, column,
                   message("exchange.place_disagrees", file.given.hive.str(), said, stands));
    };
    const auto number = [&](const char* column, const std::optional<double>& said,
                            const std::optional<double>& stands) {
      if (said && said != stands) {
        differs(column, base::shortest(*said), stands ? base::shortest(*stands) : "-");
      }
    };
    const Hive& given = file.given;
    if (given.yard != now.yard) differs("yard", given.yard.str(), now.yard.str());
    number("x_m", given.xM, now.xM);
    number("y_m", given.yM, now.yM);
    number("entrance_deg", given.entranceDeg, now.entranceDeg);
    if (!given.stand.empty() && given.stand != now.stand) {
      differs("stand", given.stand, now.stand.empty() ? "-" : now.stand);
    }
    return good;
  }

  Draft& m_draft;
  const StateInput& m_input;
  FaultList& m_faults;
  std::map<HiveId, const FileHive*> m_fileHives;
  std::vector<FileEvent> m_events;
  Known m_spots;               ///< of hives that have no place row, while unwinding
  std::vector<Known> m_after;  ///< where such hives stood after each event
  std::set<HiveId> m_placed;
};

}  // namespace

void makePlaceRows(Draft& draft, const StateInput& input, FaultList& faults) {
  PlaceMaker(draft, input, faults).run();
}

}  // namespace outyard::exchange
