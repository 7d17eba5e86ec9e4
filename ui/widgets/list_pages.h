// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <vector>

#include "ui/widgets/list_table.h"

class QPagedPaintDevice;

namespace outyard::widgets {

/// Paints lists on pages, each list from a new page on: title, note and date, the names of the
/// columns on every page, "Page x of y" at the foot. A row stands whole on one page unless it is
/// longer than a page; long text is wrapped, never cut. Black on white.
void paintLists(QPagedPaintDevice& device, const std::vector<ListTable>& lists);

/// True when the columns are too many or too wide for the page upright.
bool wantsLandscape(const ListTable& list, bool letter);

/// Writes lists to a PDF on A4 or Letter, upright or across as their columns ask for. Through a
/// temporary file. Empty, or the reason why it was not written.
QString writeListPdf(const std::vector<ListTable>& lists, bool letter, const QString& path);
/// The same for CSV.
QString writeListCsv(const ListTable& list, const QString& path);

}  // namespace outyard::widgets
