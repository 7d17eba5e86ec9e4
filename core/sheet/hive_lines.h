// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/sheet/yard_sheet.h"

/// What stands on the lines of the sheet, in words, before any of it has a place.
namespace outyard::sheet {

enum class RowKind { Colony, Dead, Empty, Blank };

/// One line: a colony, a dead or empty hive, or a blank line.
struct RowContent {
  RowKind kind = RowKind::Colony;
  int line = 0;
  std::string name, letters;
  std::optional<MarkInput> mark;  ///< on the first line of a hive
  std::string verdict, seenOn, details, expected;
  std::vector<std::string> tasks;  ///< each with a tick box
  std::string notes;
};

/// One boost as its card tells it.
struct CardEntry {
  std::string letter;
  const planning::BoostOption* option = nullptr;
  std::vector<std::string> lines;  ///< the pair, its gain, its own cautions, plan B
};

/// The lines of one hive with the cards of its boosts: kept on one page.
struct HiveBlock {
  const apiary::HiveState* hive = nullptr;
  std::vector<RowContent> rows;
  std::vector<CardEntry> cards;
};

/// Everything that the parts of one sheet share.
struct SheetContext {
  const YardSheetInput& in;
  const std::vector<strength::Judgement>& judgements;
  std::vector<apiary::HiveState> hives;
  std::map<base::HiveId, int> firstLine;
  std::vector<HiveBlock> blocks;  ///< in walking order
  std::vector<SheetLineInfo> lines;

  SheetContext(const YardSheetInput& input, const std::vector<strength::Judgement>& judged);
  [[nodiscard]] std::string word(const base::Message& message) const { return in.word(message); }
  [[nodiscard]] const apiary::Season& season() const { return *in.season; }
  [[nodiscard]] const strength::Judgement* judgementOf(const base::ColonyId& colony) const;
};

/// "TR-03 (line 3)"; a hive of another yard with the yard's name. Long names are shortened.
std::string hiveReference(const SheetContext& context, const base::HiveId& hive);
/// A name of at most `letters` letters, with an ellipsis where it was longer.
std::string shortened(const std::string& name, std::size_t letters);
/// A number with at most one decimal that says something, ready for a message.
double oneDecimal(double value);
/// "2 Jan"; with the year where it is not the sheet's own.
std::string shortDate(const SheetContext& context, base::Date date);
/// "9 kg" or "20 lb".
std::string massText(const SheetContext& context, double kg);

/// Planned tasks that fall on the day of the sheet.
std::vector<const apiary::Task*> tasksOn(const apiary::Season& season, base::Date day);
/// A planned task in words, with its amount and reason.
std::string taskText(const SheetContext& context, const apiary::Task& task);
/// What the option asks to be done at the hive that it helps.
std::string optionText(const SheetContext& context, const planning::BoostOption& option,
                       const std::string& card);

}  // namespace outyard::sheet
