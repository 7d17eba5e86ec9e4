// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "core/apiary/comb_state.h"
#include "core/strength/frame_table.h"
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {

/// What a season's hives and heap hold in all.
struct Stock {
  int boxes = 0, frames = 0, knownSides = 0;
  double cells = 0, bees = 0, brood = 0, storesKg = 0, undrawn = 0;
};

inline Stock stockOn(const apiary::Season& season, Date day) {
  Stock out;
  const auto state = apiary::combsOn(season, day);
  const auto figures = [&](const std::string& type) {
    return strength::figuresFor(season, type).value();
  };
  const auto count = [&](const apiary::CombBox& box, bool wholeBox) {
    out.boxes += wholeBox ? 1 : 0;
    if (box.role == apiary::BoxRole::Feeder) return;
    const auto f = figures(box.frameType);
    for (const auto& frame : box.frames) {
      ++out.frames;
      out.cells += 2 * f.cellsPerSide();
      for (const auto& side : frame.sides) out.knownSides += side ? 1 : 0;
      const auto sides = [&](std::optional<double> apiary::CombSide::*share) {
        return frame.sum(share) / 100;
      };
      out.bees += sides(&apiary::CombSide::beesPct) * f.beesPerSide();
      out.brood += (sides(&apiary::CombSide::eggsPct) + sides(&apiary::CombSide::openPct) +
                    sides(&apiary::CombSide::sealedPct)) *
                   f.cellsPerSide();
      out.storesKg += (sides(&apiary::CombSide::honeyPct) + sides(&apiary::CombSide::nectarPct)) *
                      f.honeySideKg;
      out.undrawn += sides(&apiary::CombSide::undrawnPct);
    }
  };
  for (const auto& [id, hive] : state.hives) {
    for (const auto& box : hive.boxes) count(box, true);
    for (const auto& s : hive.shaken) {
      out.bees += s.sidesPct / 100 * figures(s.frameType).beesPerSide();
    }
  }
  for (const auto& item : state.heap) count(item.box, item.wholeBox);
  return out;
}

inline void expectSame(const Stock& a, const Stock& b) {
  EXPECT_EQ(a.boxes, b.boxes);
  EXPECT_EQ(a.frames, b.frames);
  EXPECT_EQ(a.knownSides, b.knownSides);
  EXPECT_NEAR(a.cells, b.cells, 1e-6);
  EXPECT_NEAR(a.bees, b.bees, 1e-6);
  EXPECT_NEAR(a.brood, b.brood, 1e-6);
  EXPECT_NEAR(a.storesKg, b.storesKg, 1e-9);
  EXPECT_NEAR(a.undrawn, b.undrawn, 1e-9);
}

/// A side that sums to 100; `mark` goes into the pollen share, so that a comb is known again.
inline apiary::CombSide sideOf(int box, int slot, apiary::FrameSide side, double sealed,
                               double honey, double mark, double bees) {
  apiary::CombSide s;
  s.box = box;
  s.slot = slot;
  s.side = side;
  s.beesPct = bees;
  s.eggsPct = 0;
  s.openPct = 0;
  s.sealedPct = sealed;
  s.honeyPct = honey;
  s.nectarPct = 0;
  s.pollenPct = mark;
  s.emptyPct = 100 - sealed - honey - mark;
  s.undrawnPct = 0;
  return s;
}

struct FramesTest : CommandsTest {
  /// Every comb of the box gets its own number, from `first` on, in the pollen share of side a.
  void look(const char* hive, int box, int first, const char* date = "2026-04-20",
            std::vector<int> brood = {}) {
    std::vector<apiary::CombSide> sides;
    for (int slot = 1; slot <= 10; ++slot) {
      const bool nest = std::find(brood.begin(), brood.end(), slot) != brood.end();
      const double mark = first + slot - 1;
      sides.push_back(sideOf(box, slot, apiary::FrameSide::A, nest ? 40 : 0, 10, mark, 25));
      sides.push_back(sideOf(box, slot, apiary::FrameSide::B, 0, 30, 0, 50));
    }
    mustDo(recordCombs(HiveId{hive}, std::nullopt, tests::day(date), sides));
  }
  /// The numbers of the combs as they stand; 0 = unknown.
  std::vector<int> marks(const char* hive, int box, std::optional<Date> on = std::nullopt) const {
    std::vector<int> out;
    const auto combs = apiary::combsOfHive(season(), HiveId{hive}, on.value_or(d));
    const auto* b = combs.box(box);
    if (!b) return out;
    for (const auto& frame : b->frames) {
      out.push_back(frame.sides[0]
                        ? static_cast<int>(std::lround(frame.sides[0]->holds.pollenPct.value_or(0)))
                        : 0);
    }
    return out;
  }
  CombMove combs(std::vector<CombSpot> from, std::optional<CombSpot> to) const {
    CombMove m;
    m.from = std::move(from);
    m.to = std::move(to);
    m.date = d;
    return m;
  }
  static CombSpot spot(const char* hive, int box, int slot) { return {HiveId{hive}, box, slot}; }
};

}  // namespace outyard::session
