// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/session/commands.h"

/// The same piece of work at several hives: what it means at each of them.
namespace outyard::session {

enum class BulkKind {
  AddBox,
  AddSuper,
  SupersOff,
  Feed,
  Treat,
  Wrap,
  Unwrap,
  ExcluderOn,
  ExcluderOff
};

struct BulkWork {
  BulkKind kind = BulkKind::Feed;
  Date date;
  /// Of a box or super; an empty type = as the hive has for that role.
  apiary::BoxRole role = apiary::BoxRole::Chamber;
  std::string frameType;
  int frames = 10;
  bool under = false;                 ///< an added box goes under the lowest one
  std::optional<apiary::Goods> fill;  ///< what its combs are, where that was said
  apiary::Goods feed = apiary::Goods::Syrup11;
  std::optional<double> amount;  ///< at each hive
  std::optional<apiary::Unit> unit;
  std::string product, dose, batch;
  std::optional<int> withdrawalDays;
  std::string detail;
};

/// The verbs for one hive, in their order: mostly one, one for each super that comes off, one for
/// each colony that is treated.
struct BulkSteps {
  std::vector<HiveStep> steps;
  /// Why there is nothing to do at this hive; then there are no steps.
  std::optional<base::Message> nothing;
};
BulkSteps bulkSteps(const apiary::Season& season, const HiveId& hive, const BulkWork& work);

/// Supers stand on the hive on the day.
bool hasSupers(const apiary::Season& season, const HiveId& hive, Date day);
/// The last day of a waiting period that runs on the day: no harvest before it is over.
std::optional<Date> waitingUntil(const apiary::Season& season, const HiveId& hive, Date day);

}  // namespace outyard::session
