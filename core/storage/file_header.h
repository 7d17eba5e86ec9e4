// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>

#include "core/base/result.h"

namespace outyard::storage {

/// Marks a season file ("OYRD") in the database header.
inline constexpr std::uint32_t kApplicationId = 0x4F595244;

struct FileHeader {
  std::uint32_t applicationId = 0;
  int userVersion = 0;
};

/// Reads the first hundred bytes of the file and tells a season file from everything else:
/// opening a database also succeeds on text files, on files cut short and on mistyped paths.
/// Must not be called for a file that this process has open: closing any handle of a file drops
/// the process's locks on it (POSIX).
base::Result<FileHeader> readHeader(const std::string& path);

}  // namespace outyard::storage
