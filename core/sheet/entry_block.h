// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <string>

#include "core/sheet/hive_lines.h"
#include "core/sheet/text_layout.h"

namespace outyard::sheet {

/// The width of the part of a line that is filled in by hand.
inline constexpr double kEntryWidthMm = 95;

/// What is circled and written at the hive: four lines in at least 20 mm; a dead or an empty hive
/// has its own questions.
void drawEntry(PageCanvas& canvas, const std::function<std::string(const base::Message&)>& word,
               RowKind kind, Point corner, double heightMm);

/// What the letters of the entry mean, for the foot of each page.
std::string entryLegend(const std::function<std::string(const base::Message&)>& word);

}  // namespace outyard::sheet
