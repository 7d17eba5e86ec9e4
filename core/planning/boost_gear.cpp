// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_gear.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/apiary/state.h"

namespace outyard::planning {
namespace {

using apiary::Event;
using apiary::EventKind;
using apiary::Goods;
using base::Date;

constexpr std::string_view kChamber = "chamber:";
constexpr std::string_view kDrawn = "drawn_comb:";

int chambersOnHives(const apiary::Season& season, const std::string& type, Date day) {
  int n = 0;
  for (const auto& [key, hive] : season.table<apiary::Hive>()) {
    for (const auto& box : apiary::hiveOn(season, hive.hive, day).boxes) {
      n += box.frameType == type && box.role == apiary::BoxRole::Chamber ? 1 : 0;
    }
  }
  return n;
}

/// Pieces of the item that the event puts on a hive (minus: takes off).
double putOn(const Event& e, const std::string& item) {
  const double amount = e.amount.value_or(1);
  if (item == "excluder") {
    if (e.kind == EventKind::Stacked || e.kind == EventKind::ExcluderOn) return 1;
    if (e.kind == EventKind::Unstacked || e.kind == EventKind::ExcluderOff) return -1;
  } else if (item == "paper") {
    if (e.kind == EventKind::Stacked || e.kind == EventKind::United) return 1;
  } else if (item.starts_with(kDrawn) && e.what == Goods::Drawn) {
    if (e.kind == EventKind::FramesGiven) return amount;
    if (e.kind == EventKind::FramesTaken) return -amount;
  }
  return 0;
}

}  // namespace

std::optional<int> gearAtHand(const apiary::Season& season, const std::string& item,
                              const std::vector<base::YardId>& yards, Date day) {
  std::set<std::string> places{"truck", "shed"};
  for (const auto& y : yards) places.insert(y.str());
  std::map<std::string, const apiary::GearCount*> last;
  for (const auto& [key, g] : season.table<apiary::GearCount>()) {
    if (g.item != item || g.date > day || !places.contains(g.place)) continue;
    auto& at = last[g.place];
    if (!at || at->date < g.date) at = &g;
  }
  if (last.empty()) return std::nullopt;
  double stock = 0;
  Date since = day;
  for (const auto& [place, g] : last) {
    stock += g->count;
    since = std::min(since, g->date);
  }
  if (item.starts_with(kChamber)) {
    const std::string type = item.substr(kChamber.size());
    stock -= chambersOnHives(season, type, day) - chambersOnHives(season, type, since);
  } else {
    for (const auto& [key, e] : season.table<Event>()) {
      // What was done on the day of the count is in the count.
      if (season.counts(e) && e.date > since && e.date <= day) stock -= putOn(e, item);
    }
  }
  return static_cast<int>(std::floor(std::max(0.0, stock)));
}

}  // namespace outyard::planning
