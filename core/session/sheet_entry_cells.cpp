// SPDX-License-Identifier: GPL-3.0-or-later
// What may stand in one cell of a typed sheet.
#include <algorithm>
#include <cctype>
#include <cmath>

#include "core/base/text.h"
#include "core/session/sheet_entry_parts.h"

namespace outyard::session {

using base::message;

namespace {

constexpr double kMostSeams = 40;
constexpr double kMostBrood = 60;
constexpr double kMostKg = 300;
std::string lower(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

std::string trimmed(std::string_view text) {
  const auto blank = [](char c) { return std::isspace(static_cast<unsigned char>(c)) != 0; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return std::string(text);
}

bool oneOf(const std::string& text, std::string_view letters) {
  return text.size() == 1 && letters.find(text.front()) != std::string_view::npos;
}
base::Result<void> checkSeams(const EntryLine& line, const std::string& text) {
  if (text == ".") {
    for (const EntryColumn other : {EntryColumn::Brood, EntryColumn::Eggs, EntryColumn::Queen,
                                    EntryColumn::Cells, EntryColumn::Stores, EntryColumn::Weight,
                                    EntryColumn::Sick, EntryColumn::Temper, EntryColumn::Drones}) {
      if (line.at(other).empty()) continue;
      return base::fail(message("session.entry.not_opened_yet_seen", line.line, line.hive.str()));
    }
    return {};
  }
  if (text == "=") {
    if (readExpected(line.expected).seams) return {};
    return base::fail(message("session.entry.nothing_printed", line.line, line.hive.str()));
  }
  const auto figure = typedFigure(text);
  if (figure && figure->value >= 0 && figure->value <= kMostSeams) return {};
  return base::fail(message("session.entry.bad_seams", line.line, line.hive.str()));
}

base::Result<void> checkText(const EntryLine& line, EntryColumn column, const std::string& text,
                             const EntryHead& head) {
  switch (column) {
    case EntryColumn::Seams:
      return checkSeams(line, text);
    case EntryColumn::Brood: {
      const auto figure = typedFigure(text);
      if (figure && figure->value >= 0 && figure->value <= kMostBrood &&
          figure->value == std::floor(figure->value)) {
        return {};
      }
      return base::fail(message("session.entry.bad_brood", line.line, line.hive.str()));
    }
    case EntryColumn::Eggs:
      if (oneOf(text, "yn")) return {};
      return base::fail(message("session.entry.bad_eggs", line.line, line.hive.str()));
    case EntryColumn::Queen:
      if (oneOf(text, "muv") || isDash(text)) return {};
      return base::fail(message("session.entry.bad_queen", line.line, line.hive.str()));
    case EntryColumn::Cells:
      if (oneOf(text, "0ucs")) return {};
      return base::fail(message("session.entry.bad_cells", line.line, line.hive.str()));
    case EntryColumn::Stores:
      if (oneOf(text, "lmh")) return {};
      return base::fail(message("session.entry.bad_stores", line.line, line.hive.str()));
    case EntryColumn::Weight: {
      const auto figure = typedFigure(text);
      if (figure && !figure->atLeast && figure->value >= 0 &&
          figure->value * head.kgPerUnit <= kMostKg) {
        return {};
      }
      return base::fail(message("session.entry.bad_weight", line.line, line.hive.str(),
                                std::floor(kMostKg / head.kgPerUnit)));
    }
    case EntryColumn::Sick:
      if (oneOf(text, "yn")) return {};
      return base::fail(message("session.entry.bad_sick", line.line, line.hive.str()));
    case EntryColumn::Temper:
      if (oneOf(text, "12345")) return {};
      return base::fail(message("session.entry.bad_temper", line.line, line.hive.str()));
    case EntryColumn::Drones:
      if (oneOf(text, "yn")) return {};
      return base::fail(message("session.entry.bad_drones", line.line, line.hive.str()));
    case EntryColumn::NotDone:
    case EntryColumn::Note:
      break;
  }
  if (base::codePoints(text) <= 2000) return {};
  return base::fail(message("session.entry.long_note", line.line, line.hive.str()));
}

/// Words are kept as written, answers to circle in small letters.
std::string cleaned(const EntryLine& line, EntryColumn column) {
  const std::string text = trimmed(line.at(column));
  return column == EntryColumn::NotDone || column == EntryColumn::Note ? text : lower(text);
}

}  // namespace

std::optional<TypedFigure> typedFigure(std::string text) {
  TypedFigure out;
  if (!text.empty() && text.back() == '+') {
    out.atLeast = true;
    text.pop_back();
  }
  std::replace(text.begin(), text.end(), ',', '.');
  const auto number = base::parseNumber(text);
  if (!number) return std::nullopt;
  out.value = *number;
  return out;
}

bool isDash(const std::string& text) {
  return text == "-" || text == "\u2013" || text == "\u2212";
}

EntryLine cleaned(EntryLine line) {
  for (const EntryColumn column : kAllEntryColumns) line.at(column) = cleaned(line, column);
  return line;
}

PrintedExpectation readExpected(std::string_view printed) {
  const auto colon = printed.find(':');
  if (colon != std::string_view::npos) printed.remove_prefix(colon + 1);
  const auto digit = [&](std::size_t i) {
    return i < printed.size() && std::isdigit(static_cast<unsigned char>(printed[i])) != 0;
  };
  std::size_t at = 0;
  const auto number = [&] {
    int value = 0;
    while (digit(at)) value = std::min(value * 10 + (printed[at++] - '0'), 1000);
    return value;
  };
  std::vector<ExpectedRange> ranges;
  while (at < printed.size() && ranges.size() < 2) {
    if (!digit(at)) {
      ++at;
      continue;
    }
    ExpectedRange range;
    range.low = range.high = number();
    for (const std::string_view dash : {"\u2013", "-"}) {
      if (printed.substr(at).substr(0, dash.size()) != dash || !digit(at + dash.size())) continue;
      at += dash.size();
      range.high = number();
      break;
    }
    ranges.push_back(range);
  }
  PrintedExpectation out;
  if (!ranges.empty()) out.seams = ranges[0];
  if (ranges.size() > 1) out.combs = ranges[1];
  return out;
}

std::optional<base::TimeOfDay> readTime(std::string_view typed) {
  std::string text = trimmed(typed);
  std::replace(text.begin(), text.end(), '.', ':');
  const auto colon = text.find(':');
  std::string hours = text.substr(0, colon), minutes = "0";
  if (colon != std::string::npos) {
    minutes = text.substr(colon + 1);
    if (minutes.size() != 2) return std::nullopt;
  } else if (text.size() > 2) {
    hours = text.substr(0, text.size() - 2);
    minutes = text.substr(text.size() - 2);
  }
  if (hours.empty() || hours.size() > 2) return std::nullopt;
  const auto h = base::parseInteger(hours), m = base::parseInteger(minutes);
  if (!h || !m) return std::nullopt;
  return base::TimeOfDay::fromHm(static_cast<int>(*h), static_cast<int>(*m));
}

base::Result<void> checkCell(const EntryLine& line, EntryColumn column, const EntryHead& head) {
  const std::string text = cleaned(line, column);
  if (text.empty()) return {};
  if (line.entered) {
    return base::fail(message("session.entry.entered_already", line.line, line.hive.str()));
  }
  if (!line.hasBees && column != EntryColumn::NotDone && column != EntryColumn::Note &&
      !(column == EntryColumn::Seams && text == ".")) {
    return base::fail(message("session.entry.no_bees", line.line, line.hive.str()));
  }
  return checkText(cleaned(line), column, text, head);
}

bool surprises(const EntryLine& line, EntryColumn column) {
  const PrintedExpectation printed = readExpected(line.expected);
  const auto& range = column == EntryColumn::Seams   ? printed.seams
                      : column == EntryColumn::Brood ? printed.combs
                                                     : std::nullopt;
  const auto figure = typedFigure(cleaned(line, column));
  if (!range || !figure) return false;
  if (figure->atLeast) return figure->value > range->high;
  return figure->value < range->low || figure->value > range->high;
}

}  // namespace outyard::session
