// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"

namespace outyard::apiary {

enum class FoundKind { Hive, Yard, Queen, Colony, Note, Event };

/// One thing that holds every word of what was asked.
struct Found {
  FoundKind kind = FoundKind::Hive;
  std::string id;       ///< of the hive, yard, queen or colony; the record of a note or event
  std::string snippet;  ///< the words around the first hit, as they were written
  std::optional<YardId> yard;
  std::optional<HiveId> hive;  ///< of a queen or colony the one where she was last
  std::optional<ColonyId> colony;
  std::optional<Date> date;        ///< of notes and events in the journal
  std::optional<EventKind> event;  ///< of events
  int rank = 0;                    ///< 0 = the very id, more = farther
  bool operator==(const Found&) const = default;
};

/// Hives, yards, queens (id, line, year, mother, origin, "marked", "clipped"), colonies, notes and
/// what events say. Case and accents do not count; every word must be in the same thing. The
/// nearest first: the very id, an id that begins so, a word that begins so, anywhere; then those
/// of the journal, newest first. Withdrawn and corrected records are not found. A blank query
/// finds nothing.
std::vector<Found> find(const Season& season, std::string_view query, std::size_t limit = 60);

}  // namespace outyard::apiary
