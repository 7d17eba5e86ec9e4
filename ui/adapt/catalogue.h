// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string_view>
#include <vector>

namespace outyard::adapt {

/// A key of a core message and its English source text (translated through the context
/// "Messages"). %1 ... %9 are the arguments in order; %n with a plural uses the first whole number.
struct CatalogueEntry {
  std::string_view key;
  const char* text;
};
/// One list for each core room, in catalogue_<room>.cpp; words.cpp joins them.
std::span<const CatalogueEntry> apiaryWords();
std::span<const CatalogueEntry> sessionWords();
/// Names of the undo steps, of core/session.
std::span<const CatalogueEntry> titleWords();
/// A typed sheet, of core/session.
std::span<const CatalogueEntry> entryWords();
/// Visits and rounds, of core/session.
std::span<const CatalogueEntry> visitWords();
/// Queens, swarms and ends, of core/session.
std::span<const CatalogueEntry> queenWords();
std::span<const CatalogueEntry> storageWords();
std::span<const CatalogueEntry> exchangeWords();
std::span<const CatalogueEntry> strengthWords();
std::span<const CatalogueEntry> planningWords();
/// What falls due and the rounds, of core/planning.
std::span<const CatalogueEntry> dueWords();
/// What follows on a boost: stacks made, how plans turned out; of core/planning.
std::span<const CatalogueEntry> followWords();
/// Of the desk, of core/planning.
std::span<const CatalogueEntry> deskWords();
std::span<const CatalogueEntry> sheetWords();
/// Names of codes: "code.verdict.small_sound", "code.method.stack", ...
std::span<const CatalogueEntry> codeWords();

/// Every list above.
std::vector<std::span<const CatalogueEntry>> everyCatalogue();

}  // namespace outyard::adapt
