// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/apiary/season.h"

/// The state of a hive on a date: a fold over its records up to and including that day.
namespace outyard::apiary {

struct BoxState {
  int position = 1;  ///< 1 = bottom
  std::string frameType;
  int frames = 0;  ///< 0 when not recorded
  BoxRole role = BoxRole::Chamber;
  std::optional<ColonyId> colony;  ///< only where two share the hive
  Beneath beneath = Beneath::None;
};

struct ColonyState {
  ColonyId colony;
  ColonyPlace place = ColonyPlace::Main;
  std::optional<QueenId> queen;
  std::optional<int> queenYear;
  std::string queenLine;
  std::optional<bool> queenMarked;
  Date since;  ///< start of the stay
  /// Latest inspection of this colony up to the day; null when it was never looked at.
  const Inspection* lastInspection = nullptr;
};

struct HiveState {
  HiveId hive;
  YardId yard;
  std::optional<double> xM, yM, entranceDeg;
  std::string stand;
  HiveStatus status = HiveStatus::Empty;
  std::optional<Date> diedOn;
  std::vector<BoxState> boxes;  ///< bottom first
  std::optional<Date> boxesSince;
  std::vector<ColonyState> colonies;  ///< the main one first
  bool wrapped = false;
  bool present = true;  ///< false before its first place, and after sold or lost

  [[nodiscard]] const ColonyState* colony(const ColonyId& id) const;
  /// Number of chambers that belong to the colony (all of them when it lives alone).
  [[nodiscard]] int chambersOf(const ColonyId& id) const;
  /// Boxes that belong to the colony, bottom first.
  [[nodiscard]] std::vector<BoxState> boxesOf(const ColonyId& id) const;
  /// True when two colonies stand one above the other.
  [[nodiscard]] bool stacked() const { return colonies.size() > 1; }
};

HiveState hiveOn(const Season& season, const HiveId& hive, Date day);
/// Hives that stand in the yard on the day (dead and empty ones too), by hive id.
std::vector<HiveState> yardOn(const Season& season, const YardId& yard, Date day);
/// Where a colony lives on the day.
std::optional<HiveId> hiveOfColony(const Season& season, const ColonyId& colony, Date day);
/// The colony that a record of the hive means: the one it names, else the only one there (the main
/// one where two share). nullopt for an empty hive.
std::optional<ColonyId> colonyMeant(const HiveState& state, const std::optional<ColonyId>& named);

/// First and last date of any record of the hive.
std::optional<Date> firstRecordOf(const Season& season, const HiveId& hive);

/// Foul brood suspected anywhere in the yard up to the day: nothing goes in or out of that yard. A
/// later look without the finding does not clear it; only withdrawing the record does, or a note
/// with method "health_clear" (after the bee inspector has been). Gives the hive where it was seen.
std::optional<HiveId> foulBroodIn(const Season& season, const YardId& yard, Date day);

}  // namespace outyard::apiary
