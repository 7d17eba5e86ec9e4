// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/strength/estimate.h"
#include "core/strength/measures.h"
#include "core/strength/verdict_rules.h"
#include "core/strength/yard_calendar.h"

/// What the records say about one colony up to a day, gathered for the judgement. Of each fact the
/// latest record counts; facts on eggs, brood and queen only while they are fresh.
namespace outyard::strength {

/// A wash within the days that count.
struct MitesSeen {
  base::Date date;
  double per100 = 0;
  Interval per100Range;
  double threshold = 0;
  bool treatedSince = false;
  [[nodiscard]] bool heavy() const { return per100 >= threshold && !treatedSince; }
};

/// A queen that may be there and had no time to show it: since when, and when eggs are due.
struct QueenDue {
  base::Date since, due;
};

struct Evidence {
  std::optional<base::HiveId> hive;  ///< where the colony lives on the day
  base::YardId yard;
  YardCalendar calendar;
  std::optional<base::Date> lastSeen;
  int daysSince = 0;
  bool fresh = false, forgotten = true;

  std::optional<StrengthEstimate> strength;  ///< latest look
  std::optional<double> seams;               ///< counted, or equivalent to the bees
  bool seamsCounted = false;                 ///< seams are as counted
  std::optional<double> seamsAtLeast;        ///< from the sides given, where not all were
  std::optional<Estimate> bees;

  std::optional<bool> eggs, queenSeen;
  std::optional<int> pattern, droneBrood, queenCells;
  std::optional<double> droneShare;
  std::optional<apiary::CellKind> cellKind;
  std::optional<double> broodCells, sealedCells, openCells;
  std::optional<bool> anyBrood;  ///< nullopt: nothing was noted on brood
  std::optional<double> cover;   ///< brood cells to the cells that the bees keep warm

  std::optional<base::Date> queenKnown;  ///< last day on which a laying queen was certain
  std::optional<base::Date> queenLost;   ///< recorded as lost or taken out, nothing since
  std::optional<QueenDue> queenDue;
  bool knownQueenless = false;  ///< an earlier look, long enough ago, was without eggs

  std::optional<apiary::Disease> disease;
  std::optional<base::Date> diseaseOn;
  std::optional<MitesSeen> mites;
};

Evidence gatherEvidence(const apiary::Season& season, const base::ColonyId& colony, base::Date day,
                        const VerdictRules& rules);

}  // namespace outyard::strength
