// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/apiary/comb_state.h"
#include "core/session/commands.h"
#include "core/session/verb.h"

/// Shared by the verbs that move combs and boxes by hand; nobody else includes it.
namespace outyard::session {

/// Combs that a box of the type takes; at least as many as stand in it.
int slotsOf(const apiary::Season& season, const apiary::CombBox& box);
/// Refuses when combs or boxes of the hive were moved after the day: their places would be wrong.
void noLaterMoves(Checker& c, const HiveId& hive, Date date);
/// Combs of a dead colony go nowhere before the cause is known.
void notFromDead(Checker& c, const apiary::HiveState& state);
/// Bees that come into the hive need a colony there.
void beesFindColony(Checker& c, const apiary::HiveState& to, bool withBees, Date date);
/// The colony of a box, named only where two share the hive.
std::optional<ColonyId> colonyOfBox(const apiary::HiveState& state, int position);

/// Arranges combs by their numbers and writes down each step as a row of frame_moves.
class CombSteps {
 public:
  using Spot = std::pair<HiveId, int>;  ///< hive and box
  /// The combs as they stand, each with a number of its own.
  CombSteps(const apiary::CombsState& state, const std::vector<HiveId>& hives);

  /// Number of the comb; nullopt when there is none.
  [[nodiscard]] std::optional<int> at(const CombSpot& spot) const;
  [[nodiscard]] std::vector<int>& box(const HiveId& hive, int position) {
    return m_boxes[{hive, position}];
  }
  /// Takes the comb out and sets it in front of `before`, behind the last without one.
  void move(int comb, const Spot& to, std::optional<int> before);
  /// Takes it out and sets it in so that it is the index-th (from 0) of the box.
  void moveToIndex(int comb, const Spot& to, std::size_t index);
  void toHeap(int comb);
  void bring(std::string detail, const Spot& to, std::size_t index);

  [[nodiscard]] const std::vector<apiary::FrameMove>& rows() const { return m_rows; }
  [[nodiscard]] const std::map<Spot, std::vector<int>>& boxes() const { return m_boxes; }

 private:
  CombSpot takeOut(int comb);

  std::map<Spot, std::vector<int>> m_boxes;
  std::vector<apiary::FrameMove> m_rows;
};

/// Writes the rows, and the new number of combs of each box whose number is recorded. `lead` tells
/// whether an event that leads the rows was put already.
void writeSteps(ChangeBuilder& b, const apiary::CombsState& state, const CombSteps& steps,
                Date date, std::optional<bool> withBees, std::optional<base::TaskId> task,
                const std::string& leadDetail, bool lead);

}  // namespace outyard::session
