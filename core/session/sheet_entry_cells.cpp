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
constexpr std::size_t kLongestNumber = 64;  ///< of a hive, as every name

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

/// Something besides the seams that can only be seen on a look.
bool seenMore(const EntryLine& line) {
  return std::any_of(kAllEntryColumns.begin() + 1, kAllEntryColumns.begin() + kColonyColumns,
                     [&](EntryColumn c) { return !takesWords(c) && !line.at(c).empty(); });
}

base::Result<void> checkSeams(const EntryLine& line, const std::string& text) {
  if (text == ".") {
    if (!seenMore(line)) return {};
    return base::fail(message("session.entry.not_opened_yet_seen", line.line, line.name()));
  }
  if (text == "x" && line.kind == LineKind::Colony) {
    if (!seenMore(line)) return {};
    return base::fail(message("session.entry.dead_yet_seen", line.line, line.name()));
  }
  if (text == "=") {
    if (readExpected(line.expected).seams) return {};
    return base::fail(message("session.entry.nothing_printed", line.line, line.name()));
  }
  const auto figure = typedFigure(text);
  if (figure && figure->value >= 0 && figure->value <= kMostSeams) return {};
  return base::fail(message("session.entry.bad_seams", line.line, line.name()));
}

/// A dead hive that was not looked at has nothing said of it.
base::Result<void> checkPassedBy(const EntryLine& line) {
  if (line.at(EntryColumn::Combs).empty() && line.at(EntryColumn::Closed).empty() &&
      !line.foundDead()) {
    return {};
  }
  return base::fail(message("session.entry.passed_by_yet_said", line.line, line.name()));
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
      return base::fail(message("session.entry.bad_brood", line.line, line.name()));
    }
    case EntryColumn::Eggs:
      if (oneOf(text, "yn")) return {};
      return base::fail(message("session.entry.bad_eggs", line.line, line.name()));
    case EntryColumn::Queen:
      if (oneOf(text, "muv") || isDash(text)) return {};
      return base::fail(message("session.entry.bad_queen", line.line, line.name()));
    case EntryColumn::Cells:
      if (oneOf(text, "0ucs")) return {};
      return base::fail(message("session.entry.bad_cells", line.line, line.name()));
    case EntryColumn::Stores:
      if (oneOf(text, "lmh")) return {};
      return base::fail(message("session.entry.bad_stores", line.line, line.name()));
    case EntryColumn::Weight: {
      const auto figure = typedFigure(text);
      if (figure && !figure->atLeast && figure->value >= 0 &&
          figure->value * head.kgPerUnit <= kMostKg) {
        return {};
      }
      return base::fail(message("session.entry.bad_weight", line.line, line.name(),
                                std::floor(kMostKg / head.kgPerUnit)));
    }
    case EntryColumn::Sick:
      if (oneOf(text, "yn")) return {};
      return base::fail(message("session.entry.bad_sick", line.line, line.name()));
    case EntryColumn::Temper:
      if (oneOf(text, "12345")) return {};
      return base::fail(message("session.entry.bad_temper", line.line, line.name()));
    case EntryColumn::Drones:
      if (oneOf(text, "yn")) return {};
      return base::fail(message("session.entry.bad_drones", line.line, line.name()));
    case EntryColumn::Cause:
      if (text == ".") return checkPassedBy(line);
      if (oneOf(text, "sqmu")) return {};
      return base::fail(message("session.entry.bad_cause", line.line, line.name()));
    case EntryColumn::Combs:
      if (oneOf(text, "smbl")) return {};
      return base::fail(message("session.entry.bad_combs", line.line, line.name()));
    case EntryColumn::Closed:
      if (oneOf(text, "yn")) return {};
      return base::fail(message("session.entry.bad_closed", line.line, line.name()));
    case EntryColumn::BeesIn:
      if (oneOf(text, "yn.")) return {};
      return base::fail(message("session.entry.bad_bees_in", line.line, line.name()));
    case EntryColumn::Origin:
      if (oneOf(text, "sbpm")) return {};
      return base::fail(message("session.entry.bad_origin", line.line, line.name()));
    case EntryColumn::Hive:
      if (text.size() <= 4 * kLongestNumber && base::codePoints(text) <= kLongestNumber &&
          base::normalised(text) == text &&
          std::none_of(text.begin(), text.end(), [](char c) { return c >= 0 && c < ' '; })) {
        return {};
      }
      return base::fail(message("session.entry.bad_number", line.line));
    case EntryColumn::NotDone:
    case EntryColumn::Note:
      break;
  }
  if (base::codePoints(text) <= 2000) return {};
  return base::fail(message("session.entry.long_note", line.line, line.name()));
}

/// Words are kept as written, answers to circle in small letters.
std::string cleaned(const EntryLine& line, EntryColumn column) {
  const std::string text = trimmed(line.at(column));
  return takesWords(column) ? text : lower(text);
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
    return base::fail(message("session.entry.entered_already", line.line, line.name()));
  }
  const EntryLine whole = cleaned(line);
  const auto& cells = columnsOf(whole.form());
  const bool mark = whole.foundDead() && column == EntryColumn::Seams;
  if (!mark && std::find(cells.begin(), cells.end(), column) == cells.end()) {
    // A line found dead hides what was typed before: the seams tell it.
    if (whole.foundDead()) return {};
    return base::fail(whole.kind == LineKind::Dead || whole.kind == LineKind::Empty
                          ? message("session.entry.no_bees", line.line, line.name())
                          : message("session.entry.not_on_line", line.line, line.name()));
  }
  return checkText(whole, column, text, head);
}

base::Result<void> checkCell(const apiary::Season& season, const EntrySheet& sheet,
                             const EntryLine& line, EntryColumn column) {
  if (auto may = checkCell(line, column, sheet.head); !may) return may;
  const bool ofNumber = column == EntryColumn::Hive || column == EntryColumn::Origin;
  if (line.kind != LineKind::Blank || !ofNumber || line.entered) return {};
  const EntryLine whole = cleaned(line);
  if (whole.at(column).empty()) return {};
  const NewcomerRead read = readNewcomer(season, sheet, whole);
  // What is still to be typed is no fault of what stands there.
  if (!read.fault || read.fault->column != column) return {};
  if (column == EntryColumn::Hive && read.fault->what.key == "session.entry.number_alone") {
    return {};
  }
  return base::fail(read.fault->what);
}

base::Result<void> checkNewcomer(const apiary::Season& season, const EntrySheet& sheet,
                                 const EntryLine& line) {
  const NewcomerRead read = readNewcomer(season, sheet, cleaned(line));
  if (!read.fault || read.fault->what.key == "session.entry.number_alone") return {};
  return base::fail(read.fault->what);
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
