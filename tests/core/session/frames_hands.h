// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/apiary/comb_state.h"
#include "core/base/random.h"
#include "core/session/commands.h"

namespace outyard::session {

/// Hands that do anything at all: moves of chance, sound or not.
class Hands {
 public:
  Hands(Session& session, std::uint64_t seed) : m_session(session), m_random(seed) {}
  int below(int n) { return static_cast<int>(m_random.below(static_cast<std::uint64_t>(n))); }

  /// About two thirds of all sides of the living hives are seen.
  void lookAtAll(Date date) {
    for (const auto& [key, hive] : season().table<apiary::Hive>()) {
      const auto state = apiary::hiveOn(season(), hive.hive, date);
      if (state.colonies.empty()) continue;
      std::vector<apiary::CombSide> sides;
      const auto combs = apiary::combsOfHive(season(), hive.hive, date);
      for (const auto& box : combs.boxes) {
        for (std::size_t slot = 1; slot <= box.frames.size(); ++slot) {
          for (const auto side : {apiary::FrameSide::A, apiary::FrameSide::B}) {
            if (below(3) == 0) continue;
            apiary::CombSide s;
            s.box = box.position;
            s.slot = static_cast<int>(slot);
            s.side = side;
            s.beesPct = below(101);
            s.eggsPct = below(20);
            s.openPct = below(20);
            s.sealedPct = below(40);
            s.honeyPct = below(20);
            s.emptyPct = 100 - *s.eggsPct - *s.openPct - *s.sealedPct - *s.honeyPct;
            sides.push_back(s);
          }
        }
      }
      const auto done =
          m_session.execute(*recordCombs(hive.hive, std::nullopt, date, std::move(sides)));
      if (!done.ok()) throw std::logic_error("the look was refused");
    }
  }

  CommandPtr anyMove(Date date) {
    const HiveId a = anyHive(), b = below(3) == 0 ? a : anyHive();
    const auto heap = apiary::gearHeapOn(season(), date);
    switch (below(7)) {
      case 0:
      case 1: {
        CombMove m;
        const CombSpot from = anyComb(a, date);
        m.from = {from};
        if (below(4) == 0) {
          CombSpot next = from;
          next.slot = from.slot % 10 + 1;
          m.from.push_back(next);
        }
        m.to = anyComb(b, date);
        m.exchange = below(3) == 0 && m.from.size() == 1;
        m.withBees = below(2) == 0;
        m.date = date;
        return moveCombs(std::move(m));
      }
      case 2: {
        CombMove m;
        m.from = {anyComb(a, date)};
        m.withBees = false;
        m.date = date;
        return moveCombs(std::move(m));
      }
      case 3: {
        if (heap.empty()) return broodToMiddle(a, std::nullopt, date);
        const auto& item = heap[static_cast<std::size_t>(below(static_cast<int>(heap.size())))];
        if (item.wholeBox) return boxFromHeap(item.key, b, 1 + below(3), date);
        CombMove m;
        m.heap = {item.key};
        m.to = anyComb(b, date);
        m.date = date;
        return moveCombs(std::move(m));
      }
      case 4: {
        BoxMove m{a, 1 + below(3), b, 1 + below(3), date, below(2) == 0};
        return moveBox(std::move(m));
      }
      case 5: {
        BoxMove m{a, 1 + below(3), std::nullopt, 1, date, false};
        return moveBox(std::move(m));
      }
      default:
        return broodToMiddle(a, std::nullopt, date);
    }
  }

 private:
  [[nodiscard]] const apiary::Season& season() const { return m_session.season(); }
  HiveId anyHive() {
    const auto& hives = season().table<apiary::Hive>();
    auto it = hives.begin();
    std::advance(it, below(static_cast<int>(hives.size())));
    return it->second.hive;
  }
  CombSpot anyComb(const HiveId& hive, Date date) {
    const auto combs = apiary::combsOfHive(season(), hive, date);
    if (combs.boxes.empty()) return {hive, 1, 1};
    const auto& box =
        combs.boxes[static_cast<std::size_t>(below(static_cast<int>(combs.boxes.size())))];
    return {hive, box.position, 1 + below(static_cast<int>(box.frames.size()) + 1)};
  }

  Session& m_session;
  base::Random m_random;
};

}  // namespace outyard::session
