// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/planning/due.h"
#include "core/planning/rounds.h"
#include "core/strength/expected_look.h"

/// What the desk says beside the list of what falls due: hives at risk, gear that is short, and how
/// the last looks stood to what was expected. Made from a DueList and records alone.
namespace outyard::planning {

/// Lists of different yards with one ask as a single list, in the order of whatFallsDue; a note
/// that several lists carry stands once.
DueList joined(const std::vector<const DueList*>& lists);

/// A hive at risk, with all that presses there.
struct RiskHive {
  base::YardId yard;
  std::optional<base::HiveId> hive;  ///< none: the whole yard
  std::vector<std::size_t> tasks;    ///< into DueList::tasks, the most pressing first
};
/// What atRisk names, gathered by hive; the order is that of each hive's most pressing task.
std::vector<RiskHive> hivesAtRisk(const DueList& due);

/// The work of one yard.
struct YardWork {
  base::YardId yard;
  std::vector<std::size_t> tasks;  ///< into DueList::tasks: overdue first, then by window and hive
  int overdue = 0;
  int pressing = 0;      ///< hives at risk
  std::size_t days = 0;  ///< into DueList::yards
};
/// Every yard that was asked for: foul brood first, then by how much presses there, then by how
/// much is due; without work last.
std::vector<YardWork> workByYard(const DueList& due, const std::vector<RiskHive>& risk);

/// Gear of which less is at hand than the work of the days asks for.
struct GearShort {
  RoundItem item;
  std::vector<std::size_t> tasks;  ///< that take it, by date
};
/// Everything that must be loaded in the days of the list, against shed, truck and yards.
struct GearNeed {
  std::vector<GearShort> missing;
  std::vector<RoundItem> uncounted;  ///< needed, but never counted: taken as enough
  bool anything = false;             ///< some gear is needed at all
};
GearNeed gearNeed(const apiary::Season& season, const DueList& due);

/// A look that fell outside what was expected of it.
struct LookOutside {
  base::YardId yard;
  base::HiveId hive;
  base::ColonyId colony;
  base::Date date;
  bool brood = false;         ///< about brood; bees where neither
  bool stores = false;        ///< about stores
  bool fewer = false;         ///< less than expected
  strength::Spread expected;  ///< bees: in seams
  double seen = 0;            ///< bees: in seams
  double share = 1;           ///< seen to the middle of what was expected
};
/// The latest look at every colony in the `days` up to the list's first day.
struct LastLooks {
  std::vector<LookOutside> outside;  ///< the newest first, then by hive
  int looks = 0;                     ///< that could be held against something expected
};
LastLooks lastLooks(const apiary::Season& season, const DueList& due, int days = 14);
/// What was seen and what was expected, in words.
base::Message lookText(const LookOutside& look);
/// What the trade would look for.
base::Message lookHint(const LookOutside& look);

/// "Of your last 40 looks 33 fell within."
struct Trust {
  int looks = 0, within = 0;
  bool operator==(const Trust&) const = default;
};
Trust trustOf(const DueList& due, int most = 40);

/// All of it.
struct DeskFacts {
  DueList due;
  std::vector<RiskHive> risk;
  std::vector<YardWork> yards;
  GearNeed gear;
  LastLooks looks;
  Trust trust;
};
DeskFacts deskFacts(const apiary::Season& season, DueList due);

}  // namespace outyard::planning
