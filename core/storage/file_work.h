// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/message.h"
#include "core/base/result.h"
#include "core/storage/database.h"

/// Whole-file work on an open connection, on its thread.
namespace outyard::storage {

/// Copies the database to a path through a temporary file beside it.
base::Result<void> copyTo(Database& database, const std::string& to);
/// A dated copy beside the file, "name-before-v2-2026-04-25.outyard", and its SHA-256 in a file
/// of the same name with ".sha256" behind it. Gives the copy's path.
base::Result<std::string> copyBefore(Database& database, int newVersion, const std::string& date);
/// Every page and reference, and the tables and columns that the program expects.
std::vector<base::Message> inspect(Database& database);

}  // namespace outyard::storage
