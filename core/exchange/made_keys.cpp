// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/made_keys.h"

#include <array>
#include <cstdint>
#include <initializer_list>
#include <stdexcept>
#include <string_view>

#include "core/apiary/validate.h"

namespace outyard::exchange {
namespace {

using apiary::TableId;

constexpr std::size_t kLongest = 120;

std::initializer_list<const char*> tellingColumns(TableId table) {
  static constexpr std::initializer_list<const char*> kColonies{"colony", "hive", "place",
                                                                "from_date", "supersedes"};
  static constexpr std::initializer_list<const char*> kBoxes{"hive", "date", "position",
                                                             "supersedes"};
  static constexpr std::initializer_list<const char*> kInspections{"hive", "colony", "date", "time",
                                                                   "supersedes"};
  static constexpr std::initializer_list<const char*> kWashes{"hive", "colony", "date", "method",
                                                              "supersedes"};
  static constexpr std::initializer_list<const char*> kEvents{
      "kind", "hive", "colony", "date", "time", "other_hive", "other_yard", "what", "supersedes"};
  static constexpr std::initializer_list<const char*> kPlaces{"hive", "from_date", "supersedes"};
  static constexpr std::initializer_list<const char*> kMoves{
      "hive", "date", "box", "slot", "other_hive", "other_box", "other_slot", "supersedes"};
  switch (table) {
    case TableId::Colonies:
      return kColonies;
    case TableId::Boxes:
      return kBoxes;
    case TableId::Inspections:
      return kInspections;
    case TableId::Washes:
      return kWashes;
    case TableId::Events:
      return kEvents;
    case TableId::Places:
      return kPlaces;
    case TableId::FrameMoves:
      return kMoves;
    default:
      throw std::logic_error("this table has no records");
  }
}

/// FNV-1a, 64 bits (Fowler, Noll and Vo): from different starting points for the two halves.
std::uint64_t fnv(std::string_view text, std::uint64_t start) {
  std::uint64_t h = start;
  for (const char c : text) {
    h ^= static_cast<unsigned char>(c);
    h *= 1099511628211ULL;
  }
  return h;
}

std::string hex(std::uint64_t v) {
  static constexpr char kDigits[] = "0123456789abcdef";
  std::string out(16, '0');
  for (std::size_t i = 16; i-- > 0; v >>= 4U) out[i] = kDigits[v & 15U];
  return out;
}

}  // namespace

std::string numbered(const std::string& key, int number) {
  return number < 2 ? key : key + '~' + std::to_string(number);
}

std::string madeKey(const apiary::Row& row) {
  const auto& spec = apiary::tableSpec(row.table);
  std::string key = spec.name;
  for (const char* name : tellingColumns(row.table)) {
    key += '/';
    const int column = spec.columnIndex(name);
    for (const char c : apiary::valueText(row.values.at(static_cast<std::size_t>(column)))) {
      // The separator within a name must not make two keys alike.
      if (c == '/' || c == '~') key += c;
      key += c;
    }
  }
  while (key.back() == '/') key.pop_back();
  if (key.size() <= kLongest) return key;
  return spec.name + '/' + hex(fnv(key, 14695981039346656037ULL)) +
         hex(fnv(key, 0x6F757479617264ULL));
}

std::string KeyCounter::next(const apiary::Row& row) {
  const std::string key = madeKey(row);
  int& n = m_count[key];
  do ++n;
  while (m_taken.contains(numbered(key, n)));
  return numbered(key, n);
}

}  // namespace outyard::exchange
