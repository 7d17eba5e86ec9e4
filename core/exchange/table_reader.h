// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/apiary/schema.h"
#include "core/exchange/fault_list.h"

namespace outyard::exchange {

struct FileRow {
  apiary::Row row;
  std::size_t line = 0;
};

/// One table file, cell by cell.
struct TableFile {
  std::vector<FileRow> rows;
  /// First key cell of rows that could not be read: what refers to them is not called unknown.
  std::set<std::string> brokenKeys;
  bool unreadable = false;  ///< nothing of it could be read
};

/// A column that is not in the file but has one value for all rows.
struct ImpliedColumn {
  std::string name, value;
  bool mayBeThere = false;  ///< then the file's own value counts
};

TableFile readTable(const apiary::TableSpec& spec, const std::string& fileName,
                    std::string_view text, FaultList& faults, Ticker& ticker,
                    const std::vector<ImpliedColumn>& implied = {});

}  // namespace outyard::exchange
