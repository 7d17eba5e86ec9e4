// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "core/session/commands.h"

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::hive {

/// What is held in the hand while it moves.
struct Lift {
  enum class What { Combs, Box, HeapComb, HeapBox, FreshComb, FreshBox };
  What what = What::Combs;
  base::HiveId hive;                     ///< from which
  std::vector<session::CombSpot> combs;  ///< in the order in which they stand
  int position = 1;                      ///< of the box
  std::string key;                       ///< on the heap
  apiary::Goods fresh = apiary::Goods::Drawn;
  apiary::BoxRole role = apiary::BoxRole::Super;
  [[nodiscard]] bool isBox() const {
    return what == What::Box || what == What::HeapBox || what == What::FreshBox;
  }
  [[nodiscard]] bool fromHive() const { return what == What::Combs || what == What::Box; }
};

/// Where it is set down.
struct Landing {
  std::optional<base::HiveId> hive;  ///< nullopt = the gear heap
  int box = 1;                       ///< combs: into this box; a box: its position afterwards
  int slot = 1;                      ///< combs: in front of the one that stands there
  bool exchange = false;
  bool withBees = true;
};

/// The verb for it; null when it makes no sense (fresh gear back to the heap).
session::CommandPtr commandFor(const widgets::SeasonHub& hub, const Lift& lift,
                               const Landing& landing, base::Date date);

/// The landing made good: with bees or shaken, and comb for comb where a box is full, whichever
/// can be done first. `why` is the first reason against it, empty when it can be done.
struct Tried {
  Landing landing;
  QString why;
};
Tried tryLanding(const widgets::SeasonHub& hub, const Lift& lift, Landing landing, base::Date date,
                 bool mayExchange);

/// The box of the hive that takes the combs, the first with room: for a drop on a hive's name.
Landing usualLanding(const widgets::SeasonHub& hub, const Lift& lift, const base::HiveId& hive,
                     base::Date date);

/// A fresh box as the hive has others, to be set in at the position.
apiary::BoxState freshBox(const apiary::HiveState& hive, apiary::BoxRole role, int position);

}  // namespace outyard::hive
