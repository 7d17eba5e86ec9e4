// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/apiary/season.h"
#include "core/base/result.h"
#include "core/storage/database.h"

/// Rows of the season and rows of the database. There is one mapping for all tables: column i of
/// the table is column i of its description (apiary::tableSpecs), "not recorded" is NULL. The one
/// exception are key columns that may be missing (the day a forecast was issued): NULL values are
/// all distinct in a key, so that twin rows could creep in; there, not recorded is stored as ''.
namespace outyard::storage {

base::Result<apiary::Season> readSeason(Database& database);
/// Writes within the transaction that the caller has begun. A row that is not there as the change
/// says is a failure: somebody else changed the file.
base::Result<void> writeChanges(Database& database, const apiary::ChangeList& changes);

}  // namespace outyard::storage
