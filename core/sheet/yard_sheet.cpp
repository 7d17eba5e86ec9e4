// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/yard_sheet.h"

#include <algorithm>
#include <stdexcept>

#include "core/sheet/yard_layout.h"

namespace outyard::sheet {

YardSheet layoutYardSheet(const YardSheetInput& input) {
  if (!input.season || !input.text || !input.word) {
    throw std::logic_error("yard sheet without season, words or text measurer");
  }
  if (input.plan) {
    // A plan for other yards knows nothing of this one's colonies.
    const auto& judged = input.plan->problem.judgements;
    const auto& yards = input.plan->problem.request.yards;
    const bool covers = std::find(yards.begin(), yards.end(), input.yard) != yards.end();
    if (covers && !judged.empty()) return layoutJudgedSheet(input, judged);
  }
  return layoutJudgedSheet(input, strength::judgeYard(*input.season, input.yard, input.date));
}

}  // namespace outyard::sheet
