// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/apiary/season.h"
#include "core/base/result.h"

namespace outyard::session {

/// Where a season is kept. Implemented by core/storage; tests have one in memory that can refuse.
class SeasonStore {
 public:
  virtual ~SeasonStore() = default;
  /// Reads everything. Called once, when the season is opened.
  virtual base::Result<apiary::Season> load() = 0;
  /// Writes the changes as one transaction: all of them or, on failure, none.
  virtual base::Result<void> commit(const apiary::ChangeList& changes) = 0;
};

}  // namespace outyard::session
