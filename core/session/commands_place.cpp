// SPDX-License-Identifier: GPL-3.0-or-later
#include <set>

#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Event;
using apiary::EventKind;
using apiary::Hive;
using apiary::Place;
using apiary::PlaceHow;
using base::message;

namespace {

bool knownOnce(Checker& c, const std::vector<Spot>& spots) {
  std::set<HiveId> seen;
  bool all = true;
  for (const Spot& s : spots) {
    all = c.hive(s.hive) && all;
    if (!seen.insert(s.hive).second) {
      c.fault(message("session.hive_twice", s.hive.str()));
      all = false;
    }
  }
  return all;
}

Place placeOf(const Spot& spot, const YardId& yard, const std::optional<double>& entranceBefore) {
  Place p;
  p.hive = spot.hive;
  p.yard = yard;
  p.xM = spot.xM;
  p.yM = spot.yM;
  p.entranceDeg = spot.entranceDeg ? spot.entranceDeg : entranceBefore;
  p.stand = spot.stand;
  return p;
}

base::Message titleOf(const std::vector<Spot>& spots, base::Message one, base::Message many) {
  return spots.size() == 1 ? std::move(one) : std::move(many);
}

}  // namespace

CommandPtr addHive(Hive hive, Date from, std::vector<BoxState> boxes) {
  hive.status.reset();  // derived, never stored
  return verb(
      message("session.title.add_hive", hive.hive.str()), from,
      [=](Checker& c) {
        c.name(hive.hive.str());
        if (c.season().hive(hive.hive)) {
          return c.fault(message("session.hive_exists", hive.hive.str()));
        }
        if (!c.yard(hive.yard)) return;
        c.row(hive);
        c.healthy(hive.yard, from);
        apiary::HiveState empty;
        empty.hive = hive.hive;
        c.stack(empty, boxes);
      },
      [=](ChangeBuilder& b) {
        b.put(hive);
        Place p;
        p.hive = hive.hive;
        p.yard = hive.yard;
        p.xM = hive.xM;
        p.yM = hive.yM;
        p.entranceDeg = hive.entranceDeg;
        p.stand = hive.stand;
        p.fromDate = from;
        p.how = PlaceHow::Placed;
        b.setPlace(p);
        std::vector<BoxState> own = boxes;
        for (BoxState& box : own) box.colony.reset();
        b.setStack(hive.hive, from, own);
      });
}

CommandPtr arrange(std::vector<Spot> spots) {
  auto title =
      titleOf(spots, message("session.title.arrange_one", spots.empty() ? "" : spots[0].hive.str()),
              message("session.title.arrange", spots.size()));
  return verb(
      std::move(title), std::nullopt,
      [=](Checker& c) {
        if (!knownOnce(c, spots)) return;
        for (const Spot& s : spots) {
          const auto places = c.season().journal<Place>(s.hive);
          if (places.empty()) {
            c.fault(message("session.no_place", s.hive.str()));
            continue;
          }
          Place p = placeOf(s, places.back()->yard, places.back()->entranceDeg);
          p.fromDate = places.back()->fromDate;
          c.row(p);
        }
      },
      [=](ChangeBuilder& b) {
        for (const Spot& s : spots) {
          const Place old = b.journal<Place>(s.hive).back();
          Place p = placeOf(s, old.yard, old.entranceDeg);
          static_cast<apiary::RecordHead&>(p) = old;
          p.fromDate = old.fromDate;
          p.how = old.how;
          if (p == old) continue;  // dropped where it was
          p.how = PlaceHow::Drawn;
          static_cast<apiary::RecordHead&>(p) = {};
          b.setPlace(p);
        }
      });
}

CommandPtr moveHives(std::vector<Spot> spots, YardId to, Date date) {
  auto title = titleOf(
      spots, message("session.title.move_one", spots.empty() ? "" : spots[0].hive.str(), to.str()),
      message("session.title.move", spots.size(), to.str()));
  return verb(
      std::move(title), date,
      [=](Checker& c) {
        if (!c.yard(to) || !knownOnce(c, spots)) return;
        for (const Spot& s : spots) {
          const auto state = c.standing(s.hive, date);
          if (!state) continue;
          c.noLaterPlace(s.hive, date);
          if (state->yard != to) {
            c.healthy(state->yard, date);
            c.healthy(to, date);
          }
          Place p = placeOf(s, to, state->entranceDeg);
          p.fromDate = date;
          c.row(p);
        }
      },
      [=](ChangeBuilder& b) {
        for (const Spot& s : spots) {
          const Place old = b.journal<Place>(s.hive).back();
          Place p = placeOf(s, to, old.entranceDeg);
          if (old.yard == to && old.xM == p.xM && old.yM == p.yM &&
              old.entranceDeg == p.entranceDeg && old.stand == p.stand) {
            continue;  // set down where it stood
          }
          Event e;
          static_cast<apiary::RecordHead&>(e) = b.leadHead();
          e.kind = EventKind::Moved;
          e.date = date;
          e.hive = s.hive;
          e.otherYard = to;
          b.put(e);
          p.fromDate = date;
          p.how = PlaceHow::Moved;
          b.setPlace(p);
        }
      });
}

CommandPtr swapStands(HiveId a, HiveId b, Date date) {
  return verb(
      message("session.title.swap", a.str(), b.str()), date,
      [=](Checker& c) {
        if (a == b) return c.fault(message("session.same_hive", a.str()));
        for (const HiveId& hive : {a, b}) {
          const auto state = c.standing(hive, date);
          if (!state) continue;
          c.noLaterPlace(hive, date);
          c.healthy(state->yard, date);  // the field bees change hives
        }
      },
      [=](ChangeBuilder& builder) {
        const Place ofA = builder.journal<Place>(a).back();
        const Place ofB = builder.journal<Place>(b).back();
        Event e;
        static_cast<apiary::RecordHead&>(e) = builder.leadHead();
        e.kind = EventKind::PlacesChanged;
        e.date = date;
        e.hive = a;
        e.otherHive = b;
        builder.put(e);
        const auto put = [&](const HiveId& hive, Place spot) {
          static_cast<apiary::RecordHead&>(spot) = {};
          spot.hive = hive;
          spot.fromDate = date;
          spot.how = PlaceHow::Moved;
          builder.setPlace(spot);
        };
        put(a, ofB);
        put(b, ofA);
      });
}

}  // namespace outyard::session
