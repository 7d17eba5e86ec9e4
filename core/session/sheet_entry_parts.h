// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "core/session/sheet_entry.h"

/// Shared by the files that implement sheet_entry.h; nobody else includes it.
namespace outyard::session {

/// A figure with point or comma; "10+" gives atLeast.
struct TypedFigure {
  double value = 0;
  bool atLeast = false;
};
std::optional<TypedFigure> typedFigure(std::string text);
bool isDash(const std::string& text);
/// The cells without white space around them; answers to circle in small letters, words as
/// written.
EntryLine cleaned(EntryLine line);
/// More of a note, behind a semicolon.
void append(std::string& text, const std::string& more);

/// Reads one line whose cells are without fault; `out` gets what it leads to. On a blank line hive
/// and colony are those of its newcomer.
void readLine(const apiary::Season& season, const EntryHead& head, const EntryLine& line,
              const Wording& word, EntryReading& out);
/// Who the hive on a blank line is; the reason why it cannot be taken, with its cell.
struct NewcomerRead {
  std::optional<Newcomer> who;
  std::optional<CellFault> fault;
};
NewcomerRead readNewcomer(const apiary::Season& season, const EntrySheet& sheet,
                          const EntryLine& line);
/// Places for the hives of the reading that came to the yard: beside those that stand there.
void placeNewcomers(const apiary::Season& season, const EntrySheet& sheet, EntryReading& out);
/// Bees in an empty hive: a colony of the hive's name, or the next one that is free.
Newcomer movedIn(const apiary::Season& season, const EntryLine& line);

/// How a ticked task is written down.
enum class TaskWay {
  Done,    ///< nothing more to say: looked, opened
  Event,   ///< a record of its kind says it all
  Gift,    ///< combs or bees from hive to hive
  Boost,   ///< of a boost plan: as its card tells it
  Dialog,  ///< set done; what moved must be said in its own dialog
};
TaskWay wayOf(const apiary::Season& season, const apiary::Task& task, Date on);
CommandPtr tickedTask(const TickedTask& ticked, const EntryHead& head);

}  // namespace outyard::session
