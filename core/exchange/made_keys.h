// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <unordered_map>
#include <unordered_set>

#include "core/apiary/schema.h"

namespace outyard::exchange {

/// The id of a record that brings none: made from what tells it apart (table, hive, date, ...), so
/// that the same file gives the same ids again. Short enough to be read and typed; very long ones
/// are replaced by a hash of themselves.
std::string madeKey(const apiary::Row& row);

/// Made keys within one file: like rows are told apart by a counter, and ids that the file itself
/// uses are left alone.
class KeyCounter {
 public:
  void taken(const std::string& key) { m_taken.insert(key); }
  std::string next(const apiary::Row& row);

 private:
  std::unordered_set<std::string> m_taken;
  std::unordered_map<std::string, int> m_count;
};

/// "key" for the first, "key~2" for the second.
std::string numbered(const std::string& key, int number);

}  // namespace outyard::exchange
