// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <string>
#include <vector>

#include "core/base/random.h"
#include "core/session/commands.h"
#include "core/session/session.h"

/// Verbs with arguments drawn at random, some of them senseless: what the checks let through must
/// leave a season without faults.
namespace outyard::tests {

class RandomVerbs {
 public:
  explicit RandomVerbs(std::uint64_t seed) : m_random(seed) {}

  session::CommandPtr next(const apiary::Season& season) {
    using namespace session;
    using apiary::EventKind;
    // Time goes on, now and then a day back.
    m_day = std::min(m_day.plusDays(pick(8) == 0 ? -2 : static_cast<int>(pick(2))),
                     base::Date::fromYmd(2026, 9, 30).value());
    const HiveId a = anyHive(season), b = anyHive(season);
    const YardId yard = anyYard(season);
    const auto state = apiary::hiveOn(season, a, m_day);
    switch (pick(34)) {
      case 0:
      case 1:
      case 2: {
        apiary::Inspection i;
        i.hive = a;
        i.date = m_day;
        i.seams = 0.25 * static_cast<double>(pick(40));
        i.eggsSeen = pick(2) == 0;
        if (state.stacked()) i.colony = state.colonies[pick(2)].colony;
        apiary::CombSide side;
        side.slot = 3;
        side.sealedPct = 40;
        return recordInspection(i, {side}, {});
      }
      case 3: {
        apiary::Wash w;
        w.hive = a;
        w.date = m_day;
        w.bees = 300;
        w.mites = static_cast<int>(pick(20));
        if (state.stacked()) w.colony = state.colonies[0].colony;
        return recordWash(w);
      }
      case 4: {
        apiary::Event e;
        e.hive = a;
        e.date = m_day;
        e.kind = static_cast<EventKind>(pick(apiary::allCodes<EventKind>().size()));
        e.what = apiary::Goods::Syrup11;
        e.method = "label";
        e.amount = 2;
        if (state.stacked()) e.colony = state.colonies[1].colony;
        return recordEvent(e);
      }
      case 5: {
        HiveId id{"N-" + std::to_string(++m_made)};
        apiary::Hive h;
        h.hive = id;
        h.yard = yard;
        h.xM = m_random.uniform() * 30;
        h.yM = 2;
        return addHive(
            h, m_day,
            {{1, "langstroth_deep", 10, apiary::BoxRole::Chamber, std::nullopt, Beneath::None}});
      }
      case 6:
      case 7:
        return moveHives({{a, m_random.uniform() * 30, 4, std::nullopt, ""}}, yard, m_day);
      case 8:
        return arrange({{a, m_random.uniform() * 30, 5, std::nullopt, ""}});
      case 9:
        return swapStands(a, b, m_day);
      case 10:
      case 11:
      case 12:
        return stackOver({a, b, m_day, Beneath::Excluder, true, std::nullopt});
      case 13:
      case 14:
      case 15: {
        // Take apart what stands together, where there is such a hive.
        for (const auto& [key, hive] : season.table<apiary::Hive>()) {
          const auto s = apiary::hiveOn(season, hive.hive, m_day);
          if (s.stacked()) return takeOff({hive.hive, s.colonies[1].colony, b, m_day});
        }
        return takeOff({a, ColonyId{a.str()}, b, m_day});
      }
      case 16:
        return unite({a, b, m_day, std::nullopt, pick(2) == 0});
      case 17: {
        FrameGift g;
        g.toHive = a;
        g.fromHive = b;
        g.date = m_day;
        g.amount = 1 + static_cast<double>(pick(3));
        return giveFrames(g);
      }
      case 18:
      case 19:
        return installColony(a, ColonyId{"C-" + std::to_string(++m_made)}, m_day,
                             apiary::ColonyOrigin::Split, std::nullopt);
      case 20:
        return recordDeath(a, state.colonies.empty() ? ColonyId{"none"} : state.colonies[0].colony,
                           m_day, "starved; combs burnt");
      case 21:
      case 22: {
        auto boxes = state.boxes;
        const bool add = pick(2) == 0 && boxes.size() < 6;
        if (add) {
          boxes.push_back({static_cast<int>(boxes.size()) + 1, "langstroth_medium", 10,
                           apiary::BoxRole::Super, std::nullopt, Beneath::None});
          if (state.stacked()) boxes.back().colony = state.colonies.back().colony;
        } else if (!boxes.empty()) {
          boxes.pop_back();
        }
        return changeStack(a, m_day, boxes, add ? EventKind::BoxAdded : EventKind::BoxRemoved);
      }
      case 23:
      case 24:
        return withdraw(season);
      case 26:
      case 27:
        return introduceQueen({a, someColony(state), m_day, newQueen(), "cage", "", {}});
      case 28:
        return recordQueenGone({a, someColony(state), m_day, pick(2) == 0, "", {}});
      case 29:
        return markQueen({a, someColony(state), m_day, pick(2) == 0, true, "blue"});
      case 30: {
        const std::optional<HiveId> caught = pick(2) ? std::optional(b) : std::nullopt;
        return recordSwarm({a, someColony(state), m_day, pick(3) == 0, caught,
                            ColonyId{"S-" + std::to_string(++m_made)}, ""});
      }
      case 31:
        return recordPurchase(
            {a, ColonyId{"B-" + std::to_string(++m_made)}, m_day, newQueen(), "from a neighbour"});
      case 32: {
        const std::optional<ColonyId> only =
            pick(4) ? std::optional(someColony(state)) : std::nullopt;
        const Parting parting{a, only, m_day, "to a neighbour"};
        return pick(2) ? recordSale(parting) : recordLoss(parting);
      }
      case 33:
        return giveQueenCells({a, someColony(state), m_day, 2, "B", "", {}});
      default: {
        apiary::Task t;
        t.kind = "look";
        t.yard = yard;
        t.hive = a;
        return addTask(t);
      }
    }
  }

 private:
  std::uint64_t pick(std::uint64_t n) { return m_random.below(n); }
  base::ColonyId someColony(const apiary::HiveState& state) {
    if (state.colonies.empty()) return base::ColonyId{"none"};
    return state.colonies[pick(state.colonies.size())].colony;
  }
  apiary::Queen newQueen() {
    apiary::Queen q;
    q.queen = base::QueenId{"QN-" + std::to_string(++m_made)};
    q.year = 2026;
    q.line = "C";
    return q;
  }
  base::HiveId anyHive(const apiary::Season& season) {
    const auto& t = season.table<apiary::Hive>();
    return std::next(t.begin(), static_cast<std::ptrdiff_t>(pick(t.size())))->second.hive;
  }
  base::YardId anyYard(const apiary::Season& season) {
    const auto& t = season.table<apiary::Yard>();
    return std::next(t.begin(), static_cast<std::ptrdiff_t>(pick(t.size())))->second.yard;
  }
  session::CommandPtr withdraw(const apiary::Season& season) {
    const auto some = [&](const auto& table) {
      if (table.empty()) return base::RecordId{"none"};
      const auto at = static_cast<std::ptrdiff_t>(pick(table.size()));
      return std::next(table.begin(), at)->second.record;
    };
    switch (pick(6)) {
      case 0:
        return session::withdrawRecord(apiary::TableId::Inspections,
                                       some(season.table<apiary::Inspection>()));
      case 1:
        return session::withdrawRecord(apiary::TableId::Places,
                                       some(season.table<apiary::Place>()));
      case 2:
        return session::withdrawRecord(apiary::TableId::Boxes, some(season.table<apiary::Box>()));
      default:
        return session::withdrawRecord(apiary::TableId::Events,
                                       some(season.table<apiary::Event>()));
    }
  }

  base::Random m_random;
  base::Date m_day = base::Date::fromYmd(2026, 4, 1).value();
  int m_made = 0;
};

}  // namespace outyard::tests
