// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/sheet/yard_sheet.h"

namespace outyard::sheet {

/// The sheet from judgements that are already there (layoutYardSheet makes them where no plan
/// brings them).
YardSheet layoutJudgedSheet(const YardSheetInput& input,
                            const std::vector<strength::Judgement>& judgements);

}  // namespace outyard::sheet
