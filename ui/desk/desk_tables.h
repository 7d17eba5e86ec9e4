// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "ui/desk/desk_rows.h"
#include "ui/widgets/list_table.h"

/// The lists of the desk as tables of plain text, to be saved as PDF or CSV.
namespace outyard::desk {

/// Which day it was worked out for stands beside each title.
widgets::ListTable workTable(const RowMaker& make, Show show);
widgets::ListTable riskTable(const RowMaker& make);
/// Every day of every yard, with what it is good for.
widgets::ListTable daysTable(const RowMaker& make);
widgets::ListTable gearTable(const RowMaker& make);
widgets::ListTable looksTable(const RowMaker& make);
std::vector<widgets::ListTable> everyTable(const RowMaker& make, Show show);

}  // namespace outyard::desk
