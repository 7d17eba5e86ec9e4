// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/result.h"

/// Checks of what is typed or read, from one value up to the whole season.
namespace outyard::apiary {

/// Something wrong with a row: which, in which column (may be empty), and what to do.
struct Fault {
  TableId table{};
  std::string key;
  std::string column;
  base::Message what;
};

/// Text of one cell to a value: type, range and code; empty text is "not recorded". Text is made
/// NFC, trimmed, and at most 4,000 characters.
base::Result<Value> parseValue(const ColumnSpec& column, std::string_view text);
/// The text of a value as the exchange tables write it; numbers in the shortest form.
std::string valueText(const Value& value);

/// Frame types that the program knows without a FrameType row.
std::span<const std::string_view> shippedFrameTypes();

/// Required columns, ranges, and sums within one row (comb contents sum to 100 +- 1, minimum not
/// over maximum temperature, to_date after from_date, ...).
std::vector<Fault> checkRow(const Row& row);

/// Everything between rows: references, supersede chains, stays that overlap, records of colonies
/// that were not there, comb sides against their inspection, positions of boxes. At most `most`.
std::vector<Fault> checkSeason(const Season& season, int most = 100);

}  // namespace outyard::apiary
