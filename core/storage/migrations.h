// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/storage/database.h"

namespace outyard::storage {

/// The migrations that the program carries, :/migrations/0001.sql and on; the schema version is
/// their number. A migration is never edited once released.
std::vector<QString> shippedMigrations();

/// The statements of a migration. A line that begins with -- is a comment; a statement ends with
/// a semicolon at the end of a line.
QStringList statementsOf(const QString& migration);

/// Brings the schema from the version that the file has to the last one, each step in its own
/// transaction together with its number.
base::Result<void> migrate(Database& database, int from, const std::vector<QString>& migrations);

}  // namespace outyard::storage
