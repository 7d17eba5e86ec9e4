// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/message.h"
#include "core/base/progress.h"
#include "core/planning/boost.h"
#include "core/strength/expected_look.h"

/// How accepted plans turned out: what a plan promised against what was then seen. The promise is
/// worked out anew from what was known when the plan was accepted (records entered later are left
/// out, whatever they are dated), for the day of the look, so that no growth lies between the two.
namespace outyard::planning {

/// The season as it was known at that moment: without records entered after it, so that rows which
/// those corrected count again. A record without its time of entry is known when it is dated before
/// `day`, a look also on that day. Plans, tasks, weather and settings stay.
apiary::Season seasonKnown(const apiary::Season& season, const std::string& atUtc, base::Date day);

enum class PlanFate {
  Waiting,    ///< the target day is to come; what was seen so far is shown, not counted
  NotMade,    ///< the boost was not made
  Seen,       ///< made, and looked at near the target day
  Died,       ///< made, and the colony died before it
  NotLooked,  ///< made, and not looked at near the target day
  Unknown     ///< made and seen, but the promise cannot be worked out from these records
};

/// What was promised of one colony for a day: what a careful look would find.
struct Promised {
  strength::Spread bees;   ///< as a careful full count reads them
  strength::Spread seams;  ///< from above
  strength::Spread combs;  ///< with any brood
};
struct SeenThen {
  base::Date date;
  double seams = 0;  ///< as counted, or worked out from the bees
  strength::Spread bees;
  std::optional<int> combs;  ///< with any brood
};

struct ReviewedRow {
  base::PlanId plan;
  base::YardId yard;
  base::Date plannedOn, target;
  std::string option;
  apiary::Method method = apiary::Method::Leave;
  base::ColonyId colony;  ///< whose strength was promised; when united, the one that stays
  base::HiveId hive;
  std::optional<base::HiveId> otherHive;  ///< the other one of the pair
  PlanFate fate = PlanFate::Waiting;
  std::optional<base::Date> madeOn;
  std::optional<base::Date> diedOn;
  base::Date day;  ///< for which the promise is: that of the look, else the target day
  std::optional<Promised> with, without;
  std::optional<BoostChance> chance;  ///< to be usable on that day, as promised
  std::optional<SeenThen> seen;
  bool within = false;      ///< the look lies in what was promised, its own error allowed for
  bool nearerWith = false;  ///< nearer to the promise than to what was forecast without the boost
  /// Between plan and look, what no plan knows of: swarmed, split, another boost, queen lost.
  std::vector<apiary::EventKind> meanwhile;
  // The donor, for the same day.
  std::optional<base::ColonyId> donor;
  std::optional<Promised> donorWith;
  std::optional<SeenThen> donorSeen;
  bool donorWithin = false;
};

struct PlanReview {
  std::vector<ReviewedRow> rows;  ///< the newest plan first, then by hive
  int promises = 0, within = 0;   ///< over the rows that were made and seen (or died)
  int nearerWith = 0;
  int donors = 0, donorsWithin = 0;
};

/// Every accepted plan up to today. Cancelled: empty.
PlanReview reviewPlans(const apiary::Season& season, base::Date today, base::Progress& progress);

/// "Promised 8–9 seams on 10 May, seen 7", or why nothing can be said yet.
base::Message reviewText(const ReviewedRow& row);
/// "Of 12 promises 10 fell within."
base::Message reviewSum(const PlanReview& review);

}  // namespace outyard::planning
