// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/sheet/yard_sheet.h"

/// Several sheets as one print, and part of a print.
namespace outyard::sheet {

/// All pages one after the other. The title is the first sheet's, the number too when there is
/// only one.
SheetDocument joined(const std::vector<YardSheet>& sheets);

/// "1-3, 5, 8-" of `pages` pages, as indexes from 0 in ascending order, each once; blank means all.
/// Fails for what is no range, and for pages that there are not.
base::Result<std::vector<std::size_t>> pageRange(std::string_view text, std::size_t pages);

/// The document with only these pages.
SheetDocument onlyPages(const SheetDocument& document, const std::vector<std::size_t>& pages);

}  // namespace outyard::sheet
