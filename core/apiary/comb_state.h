// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/apiary/season.h"

/// What every comb of a hive holds on a day, as last seen: the comb sides of inspections, carried
/// on by moves of frames and boxes. A comb keeps what its sides hold when it moves, a box keeps its
/// combs; a side that nobody looked at stays unknown.
///
/// How a row of frame_moves is read (rows of one day in the order in which they were entered):
///  - with slots: the comb is taken out of (other_hive, other_box, other_slot), those behind it
///    slide together, and it is set in at (hive, box, slot), those behind it slide apart;
///  - without slots: the same for a whole box with all its combs, by position in the stack;
///  - without box: it went to the gear heap; hive and other_hive are then the same;
///  - without other_hive: it came from the gear heap; detail "heap:RECORD" names the row that put
///    it there, "drawn", "foundation" or "honey" says what fresh combs are, empty = not known.
namespace outyard::apiary {

/// What was seen on one side of a comb, and when.
struct SideSeen {
  CombSide holds;  ///< hive, box and slot are those at the time of the look
  Date seenOn;
  bool operator==(const SideSeen&) const = default;
};

struct CombFrame {
  std::array<std::optional<SideSeen>, 2> sides;  ///< a, b; nullopt = unknown, never empty
  [[nodiscard]] bool known() const { return sides[0].has_value() || sides[1].has_value(); }
  /// Brood of any age seen on it, either side.
  [[nodiscard]] bool hasBrood() const;
  /// Per cent of both faces (0 to 200) that the contents take; unknown sides count nothing.
  [[nodiscard]] double sum(Opt<double> CombSide::*share) const;
  bool operator==(const CombFrame&) const = default;
};

struct CombBox {
  int position = 1;       ///< 1 = bottom
  std::string frameType;  ///< empty only while a day is being folded
  BoxRole role = BoxRole::Chamber;
  std::optional<ColonyId> colony;
  Beneath beneath = Beneath::None;
  bool countRecorded = false;     ///< false = the number of combs is the usual one of the type
  std::vector<CombFrame> frames;  ///< slot 1 first; no gaps
  bool operator==(const CombBox&) const = default;
};

/// Bees shaken off combs, kept in the hive that gave the combs until its next look.
struct ShakenBees {
  std::string frameType;
  double sidesPct = 0;  ///< per cent of one covered side of that type
  bool operator==(const ShakenBees&) const = default;
};

struct HiveCombs {
  HiveId hive;
  std::vector<CombBox> boxes;  ///< bottom first
  std::vector<ShakenBees> shaken;
  /// Null when there is no such box or comb.
  [[nodiscard]] const CombBox* box(int position) const;
  [[nodiscard]] const CombFrame* frame(int position, int slot) const;
  bool operator==(const HiveCombs&) const = default;
};

/// A box or a comb that was taken off and not used again.
struct HeapItem {
  std::string key;  ///< what "heap:" in a later row names
  HiveId fromHive;
  Date since;
  bool wholeBox = false;
  CombBox box;  ///< a lone comb: its box's type and role, and one frame
  bool operator==(const HeapItem&) const = default;
};

struct CombsState {
  std::map<HiveId, HiveCombs> hives;
  std::vector<HeapItem> heap;  ///< oldest first
  [[nodiscard]] const HiveCombs* hive(const HiveId& id) const;
  [[nodiscard]] const HeapItem* onHeap(const std::string& key) const;
};

/// Every hive and the whole gear heap on the day.
CombsState combsOn(const Season& season, Date day);
/// These hives with all that their combs went through on the way, and what of it lies on the heap.
CombsState combsAround(const Season& season, const std::vector<HiveId>& hives, Date day);
/// The hive that a thing on the heap came off; nullopt for a key that no row gives.
std::optional<HiveId> heapOwner(const Season& season, const std::string& key);
/// One hive (and whatever its combs went through on the way, which is folded with it).
HiveCombs combsOfHive(const Season& season, const HiveId& hive, Date day);
/// The gear heap alone.
std::vector<HeapItem> gearHeapOn(const Season& season, Date day);

/// The look that a correction goes back to: its combs stood where they stood then.
const Inspection& firstLook(const Season& season, const Inspection& look);

/// Combs that a box of the type has when their number was not recorded.
int usualFrames(const Season& season, const std::string& frameType);
/// The number behind the last point of a record id that a verb made, 0 when there is none, and the
/// part before it: rows of one verb in their order.
std::pair<std::string, int> leadOf(const RecordId& record);

}  // namespace outyard::apiary
