// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/stack_lift.h"

#include <algorithm>

#include "core/apiary/comb_state.h"
#include "ui/hive/stack_work.h"
#include "ui/widgets/session_model.h"

namespace outyard::hive {

apiary::BoxState freshBox(const apiary::HiveState& hive, apiary::BoxRole role, int position) {
  apiary::BoxState box = usualBox(hive, role);
  box.position = position;
  return box;
}

session::CommandPtr commandFor(const widgets::SeasonHub& hub, const Lift& lift,
                               const Landing& landing, base::Date date) {
  switch (lift.what) {
    case Lift::What::Combs:
    case Lift::What::HeapComb: {
      session::CombMove move;
      move.from = lift.combs;
      if (lift.what == Lift::What::HeapComb) move.heap = {lift.key};
      if (landing.hive) move.to = session::CombSpot{*landing.hive, landing.box, landing.slot};
      if (!landing.hive && lift.what == Lift::What::HeapComb) return nullptr;
      move.exchange = landing.exchange;
      move.withBees = landing.withBees;
      move.date = date;
      return session::moveCombs(std::move(move));
    }
    case Lift::What::Box:
      return session::moveBox(
          {lift.hive, lift.position, landing.hive, landing.box, date, landing.withBees});
    case Lift::What::HeapBox:
      if (!landing.hive) return nullptr;
      return session::boxFromHeap(lift.key, *landing.hive, landing.box, date);
    case Lift::What::FreshComb:
      if (!landing.hive) return nullptr;
      return session::setInCombs({*landing.hive, landing.box, landing.slot}, 1, lift.fresh, date);
    case Lift::What::FreshBox: {
      if (!landing.hive) return nullptr;
      const auto state = apiary::hiveOn(hub.season(), *landing.hive, date);
      return session::setOnBox(*landing.hive, freshBox(state, lift.role, landing.box), lift.fresh,
                               date);
    }
  }
  return nullptr;
}

Tried tryLanding(const widgets::SeasonHub& hub, const Lift& lift, Landing landing, base::Date date,
                 bool mayExchange) {
  Tried first;
  bool tried = false;
  for (const bool exchange : {false, true}) {
    if (exchange && (!mayExchange || lift.what != Lift::What::Combs || lift.combs.size() != 1)) {
      continue;
    }
    for (const bool bees : {true, false}) {
      landing.exchange = exchange;
      landing.withBees = bees;
      const auto command = commandFor(hub, lift, landing, date);
      if (!command) return {landing, QString()};
      const QString why = hub.whyNot(*command);
      if (why.isEmpty()) return {landing, why};
      if (!tried) first = {landing, why};
      tried = true;
      if (!lift.fromHive()) break;
    }
  }
  return first;
}

Landing usualLanding(const widgets::SeasonHub& hub, const Lift& lift, const base::HiveId& hive,
                     base::Date date) {
  Landing landing;
  landing.hive = hive;
  const auto combs = apiary::combsOfHive(hub.season(), hive, date);
  if (lift.isBox()) {
    const bool own = lift.what == Lift::What::Box && lift.hive == hive;
    landing.box = static_cast<int>(combs.boxes.size()) + (own ? 0 : 1);
    return landing;
  }
  std::optional<Landing> fallback;
  for (const auto& box : combs.boxes) {
    if (box.role == apiary::BoxRole::Feeder) continue;
    landing.box = box.position;
    landing.slot = static_cast<int>(box.frames.size()) + 1;
    if (!fallback) fallback = landing;
    const Tried tried = tryLanding(hub, lift, landing, date, false);
    if (tried.why.isEmpty()) return tried.landing;
  }
  return fallback.value_or(landing);
}

}  // namespace outyard::hive
