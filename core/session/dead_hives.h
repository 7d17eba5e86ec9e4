// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>

#include "core/session/commands.h"

/// What is done about a hive whose colony died: verbs beside recordDeath for the sheet that is
/// typed back in.
namespace outyard::session {

/// Found dead on the day: as recordDeath, with the cause by itself and the sheet it stood on.
struct DeathFound {
  HiveId hive;
  ColonyId colony;
  Date date;
  std::string cause;   ///< in words, may be empty
  std::string detail;  ///< all that is said of it; may not be empty
  std::optional<base::SheetId> sheet;
};
CommandPtr findDead(DeathFound found);

/// Cause and what became of the combs of a death that is recorded already: a record of the same day
/// that supersedes it.
struct DeathSaid {
  HiveId hive;
  Date date;  ///< on which it is said
  std::string cause, detail;
  std::optional<base::SheetId> sheet;
};
CommandPtr correctDeath(DeathSaid said);

enum class CombsFate { Stored, Melted, Burnt };
/// All combs come out of a hive in which nobody lives any more; its boxes stay where they stand.
/// Only burning is free while foul brood is suspected in the yard.
struct CombsCleared {
  HiveId hive;
  Date date;
  CombsFate fate = CombsFate::Stored;
  bool usable = false;  ///< stored, and of a known cause: they count as drawn comb again
  std::string detail;
  std::optional<base::SheetId> sheet;
};
CommandPtr clearCombs(CombsCleared cleared);

/// The record of the death that the hive is dead by on the day; null when it is not dead.
const apiary::Event* deathOf(const apiary::Season& season, const HiveId& hive, Date day);

}  // namespace outyard::session
