// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <set>
#include <string>

#include "core/apiary/comb_state.h"

/// The walk through the days behind comb_state.h; nobody else includes it.
namespace outyard::apiary {

/// Folds the records of these hives; moves from or to a hive outside the set bring unknown combs.
CombsState foldCombs(const Season& season, const std::set<HiveId>& hives, Date day);

/// The heap item that the row takes, when it takes one.
std::optional<std::string> heapKeyOf(const FrameMove& move);
/// Kinds that carry all boxes of a colony from one hive to another.
bool movesWholeStacks(EventKind kind);
/// Key of a box that vanished from a stack without a row that says where to.
std::string leftBoxKey(const HiveId& hive, Date date, int number);
/// The hive in such a key.
std::optional<HiveId> ownerOfLeftBox(const std::string& key);

}  // namespace outyard::apiary
