// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/sheet/row_layout.h"

/// The parts of the sheet that are not lines of hives.
namespace outyard::sheet {

/// Head and map of the first page; gives where the lines begin. What finds no room is appended to
/// `continued`.
double drawHead(PageCanvas& canvas, const PageFrame& frame, const SheetContext& context,
                std::vector<Continuation>& continued);

/// Yard, date, sheet number and page x of y at the foot of every page; the legend of what is
/// circled where there are lines of hives.
void drawFoot(PageCanvas& canvas, const PageFrame& frame, const SheetContext& context, int page,
              int pages, bool withLegend);

/// A thing to load.
struct LoadItem {
  std::string what;
  double needed = 0;
  std::optional<double> counted;  ///< not given = never counted
  std::optional<double> weightKg;
};
std::vector<LoadItem> loadItems(const SheetContext& context);
/// The load list; gives the number of items that were drawn, to go on with on another page.
std::size_t drawLoadList(PageCanvas& canvas, const PageFrame& frame, const SheetContext& context,
                         const std::vector<LoadItem>& items, std::size_t from);

/// "Sat 2 May 2026".
std::string longDate(const SheetContext& context, base::Date date);
/// Name of the yard, or its id where it has none.
std::string yardName(const SheetContext& context);

}  // namespace outyard::sheet
