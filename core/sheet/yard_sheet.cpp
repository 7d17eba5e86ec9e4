// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/yard_sheet.h"

#include <algorithm>
#include <stdexcept>

#include "core/planning/printed_plan.h"
#include "core/sheet/yard_layout.h"

namespace outyard::sheet {

YardSheet layoutYardSheet(const YardSheetInput& input) {
  if (!input.season || !input.text || !input.word) {
    throw std::logic_error("yard sheet without season, words or text measurer");
  }
  YardSheet made;
  bool laid = false;
  if (input.plan) {
    // A plan for other yards knows nothing of this one's colonies.
    const auto& judged = input.plan->problem.judgements;
    const auto& yards = input.plan->problem.request.yards;
    const bool covers = std::find(yards.begin(), yards.end(), input.yard) != yards.end();
    laid = covers && !judged.empty();
    if (laid) made = layoutJudgedSheet(input, judged);
  }
  if (!laid) {
    made = layoutJudgedSheet(input, strength::judgeYard(*input.season, input.yard, input.date));
  }
  if (input.plan) made.printed = planning::printedPlan(*input.plan, input.sheetNumber, input.word);
  return made;
}

}  // namespace outyard::sheet
