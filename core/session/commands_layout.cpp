// SPDX-License-Identifier: GPL-3.0-or-later
// What is drawn in a yard besides its hives: a stand with what stands on it, a whole layout.
#include <cmath>
#include <numbers>
#include <set>

#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Feature;
using apiary::Hive;
using apiary::Place;
using apiary::PlaceHow;
using apiary::Stand;
using apiary::Yard;
using base::message;

namespace {

constexpr double kFullTurn = 360;

template <class T>
std::string keyOf(const T& row) {
  return apiary::rowKey(apiary::toRow(row));
}

/// Hives come to whole millimetres, so that a full turn in steps brings them back.
double wholeMm(double metres) {
  return std::round(metres * 1000) / 1000;
}

std::vector<HiveId> hivesOn(const apiary::Season& season, const Stand& stand) {
  std::vector<HiveId> hives;
  for (const auto& [key, hive] : season.table<Hive>()) {
    if (hive.yard == stand.yard && hive.stand == stand.stand) hives.push_back(hive.hive);
  }
  return hives;
}

/// The place of a hive on the stand after the stand has moved and turned clockwise.
Place carried(Place place, const Stand& before, const Stand& after) {
  if (!place.xM || !place.yM) return place;
  const double turnDeg = after.angleDeg.value_or(0) - before.angleDeg.value_or(0);
  const double turn = turnDeg * std::numbers::pi / 180;
  const double x = *place.xM - before.xM, y = *place.yM - before.yM;
  // y points up on the drawing: clockwise is the negative sense.
  place.xM = wholeMm(after.xM + x * std::cos(turn) + y * std::sin(turn));
  place.yM = wholeMm(after.yM - x * std::sin(turn) + y * std::cos(turn));
  if (place.entranceDeg) {
    const double facing = std::fmod(*place.entranceDeg + turnDeg, kFullTurn);
    place.entranceDeg = facing < 0 ? facing + kFullTurn : facing;
  }
  return place;
}

bool holds(const LayoutCopy& copy, const apiary::Season& season) {
  for (const auto& [key, stand] : season.table<Stand>()) {
    if (copy.stands && stand.yard == copy.from) return true;
  }
  for (const auto& [key, feature] : season.table<Feature>()) {
    if (copy.features && feature.yard == copy.from) return true;
  }
  return false;
}

/// "S1", or with the next free number in the place of its own: "S4".
std::string freeName(const std::string& wanted, const std::set<std::string>& taken) {
  if (!taken.contains(wanted)) return wanted;
  const auto end = wanted.find_last_not_of("0123456789");
  const std::string stem = end == std::string::npos ? std::string() : wanted.substr(0, end + 1);
  int number = 1;
  while (taken.contains(stem + std::to_string(number))) ++number;
  return stem + std::to_string(number);
}

}  // namespace

CommandPtr arrangeStand(Stand stand) {
  return verb(
      message("session.title.arrange_stand", stand.stand, stand.yard.str()), std::nullopt,
      [stand](Checker& c) {
        if (!c.yard(stand.yard)) return;
        const auto* before = c.season().find<Stand>(keyOf(stand));
        if (!before) {
          return c.fault(message("session.unknown_stand", stand.stand, stand.yard.str()));
        }
        c.row(stand);
        for (const HiveId& hive : hivesOn(c.season(), *before)) {
          const auto places = c.season().journal<Place>(hive);
          if (!places.empty()) c.row(carried(*places.back(), *before, stand));
        }
      },
      [stand](ChangeBuilder& b) {
        const Stand before = b.find<Stand>(keyOf(stand)).value();
        b.put(stand);
        for (const HiveId& hive : hivesOn(b.before(), before)) {
          const auto places = b.journal<Place>(hive);
          if (places.empty()) continue;
          Place place = carried(places.back(), before, stand);
          if (place == places.back()) continue;
          static_cast<apiary::RecordHead&>(place) = {};
          place.how = PlaceHow::Drawn;
          b.setPlace(place);
        }
      });
}

CommandPtr copyLayout(LayoutCopy copy) {
  return verb(
      message("session.title.copy_layout", copy.from.str(), copy.to.str()), std::nullopt,
      [copy](Checker& c) {
        if (!c.yard(copy.from)) return;
        if (copy.newYard) {
          c.name(copy.to.str());
          if (c.season().yard(copy.to)) {
            return c.fault(message("session.yard_exists", copy.to.str()));
          }
          Yard yard = *copy.newYard;
          yard.yard = copy.to;
          c.row(yard);
        } else if (copy.from == copy.to) {
          return c.fault(message("session.layout_same", copy.to.str()));
        } else if (!c.yard(copy.to)) {
          return;
        }
        if (!holds(copy, c.season())) c.fault(message("session.layout_empty", copy.from.str()));
      },
      [copy](ChangeBuilder& b) {
        const apiary::Season& season = b.before();
        if (copy.newYard) {
          const Yard& model = *season.yard(copy.from);
          Yard yard = *copy.newYard;
          yard.yard = copy.to;
          if (!yard.widthM) yard.widthM = model.widthM;
          if (!yard.lengthM) yard.lengthM = model.lengthM;
          if (!yard.northDeg) yard.northDeg = model.northDeg;
          b.put(yard);
        }
        std::set<std::string> stands, features;
        for (const auto& [key, stand] : season.table<Stand>()) {
          if (stand.yard == copy.to) stands.insert(stand.stand);
        }
        for (const auto& [key, feature] : season.table<Feature>()) {
          features.insert(feature.feature);
        }
        for (const auto& [key, each] : season.table<Stand>()) {
          if (!copy.stands || each.yard != copy.from) continue;
          Stand stand = each;
          stand.yard = copy.to;
          stand.stand = freeName(each.stand, stands);
          stands.insert(stand.stand);
          b.put(stand);
        }
        for (const auto& [key, each] : season.table<Feature>()) {
          if (!copy.features || each.yard != copy.from) continue;
          Feature feature = each;
          feature.yard = copy.to;
          feature.feature = freeName(copy.to.str() + "-F1", features);
          features.insert(feature.feature);
          b.put(feature);
        }
      });
}

}  // namespace outyard::session
