// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/planning/boost.h"
#include "core/sheet/marks.h"

namespace outyard::sheet {

enum class Paper { A4, Letter };

struct SheetPage {
  double widthMm = 210, heightMm = 297;
  Shapes shapes;
};

struct SheetDocument {
  std::vector<SheetPage> pages;
  std::string sheetNumber;
  std::string title;
};

/// One line of the sheet, in walking order, as kept for typing it back in.
struct SheetLineInfo {
  int line = 1;
  base::HiveId hive;
  std::optional<base::ColonyId> colony;
  std::string expected;
};

struct YardSheetInput {
  const apiary::Season* season = nullptr;
  base::YardId yard;
  base::Date date;
  std::string sheetNumber;
  Paper paper = Paper::A4;
  const planning::BoostPlan* plan = nullptr;              ///< may be null: no boost cards then
  std::function<std::string(const base::Message&)> word;  ///< ui/adapt's catalogue
  const TextMeasurer* text = nullptr;
  /// Everything a third larger, on paper laid across.
  bool largeType = false;
  /// Pounds and Fahrenheit on the sheet instead of kilograms and Celsius.
  bool usUnits = false;
  /// What looks are expected to find on the day of the sheet; null without a forecast.
  const ExpectedLooks* expected = nullptr;
};

struct YardSheet {
  SheetDocument document;
  std::vector<SheetLineInfo> lines;
  /// The boosts as printed, kept with the lines so that they can be ticked as done; no rows
  /// without a plan.
  planning::AcceptedPlan printed;
};
/// Lays out the whole yard sheet: head with cautions, map with line numbers, a line for each hive,
/// boost cards on their hives' pages, three blank lines, load list on a loose page. No hive is
/// split over two pages; every page has yard, date, sheet number, page x of y.
YardSheet layoutYardSheet(const YardSheetInput& input);

}  // namespace outyard::sheet
