// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/comb_sums.h"

#include <set>
#include <utility>

#include "core/strength/measures.h"

namespace outyard::strength {
namespace {

using apiary::BoxRole;
using apiary::BoxState;
using apiary::CombSide;

/// Sum of the contents that were given on the side, per cent (drone brood is no part of sealed).
double givenContents(const CombSide& s) {
  double sum = 0;
  for (const auto& part : {s.eggsPct, s.openPct, s.sealedPct, s.dronePct, s.pollenPct, s.nectarPct,
                           s.honeyPct, s.emptyPct, s.undrawnPct}) {
    sum += part.value_or(0);
  }
  return sum;
}

struct Counter {
  int allSides = 0, broodSides = 0;  ///< sides that must be known

  void finish(SideSum& sum, int needed) const { sum.complete = needed > 0 && sum.given >= needed; }
};

const BoxState* boxAt(const std::vector<BoxState>& boxes, int position) {
  for (const BoxState& b : boxes) {
    if (b.position == position) return &b;
  }
  return nullptr;
}

}  // namespace

CombSums sumCombSides(const apiary::Season& season, const std::vector<const CombSide*>& sides,
                      const std::vector<BoxState>& boxes, const FrameFigures& fallback) {
  CombSums out;
  const auto figuresOfBox = [&](const BoxState* box) {
    if (!box) return fallback;
    return figuresFor(season, box->frameType).value_or(fallback);
  };

  Counter need;
  for (const BoxState& b : boxes) {
    if (b.role == BoxRole::Feeder) continue;
    const int frames = b.frames > 0 ? b.frames : figuresOfBox(&b).framesPerBox;
    need.allSides += 2 * frames;
    if (b.role == BoxRole::Chamber) need.broodSides += 2 * frames;
  }

  std::set<std::pair<int, int>> combsWithBrood;
  int broodInChambers[4] = {0, 0, 0, 0};
  for (const CombSide* s : sides) {
    const BoxState* box = boxAt(boxes, s->box);
    const FrameFigures f = figuresOfBox(box);
    const bool chamber = box && box->role == BoxRole::Chamber;
    const bool nothingLeft = givenContents(*s) >= 99;
    const auto read = [&](const std::optional<double>& pct) -> std::optional<double> {
      if (pct) return shareOfPercent(*pct);
      if (nothingLeft) return 0.0;
      return std::nullopt;
    };
    ++out.sides;
    if (s->beesPct) {
      out.bees.sum += beesOnSide(f, shareOfPercent(*s->beesPct));
      out.bees.given += box ? 1 : 0;
    }
    const std::optional<double> brood[4] = {read(s->eggsPct), read(s->openPct), read(s->sealedPct),
                                            read(s->dronePct)};
    SideSum* const sums[4] = {&out.eggs, &out.larvae, &out.sealed, &out.drone};
    for (int i = 0; i < 4; ++i) {
      if (!brood[i]) continue;
      sums[i]->sum += i == 3 ? droneCellsOnSide(f, *brood[i]) : cellsOnSide(f, *brood[i]);
      broodInChambers[i] += chamber ? 1 : 0;
      if (i < 3) out.broodSides += *brood[i];
      if (*brood[i] > 0) combsWithBrood.emplace(s->box, s->slot);
    }
    const auto honey = read(s->honeyPct);
    const auto nectar = read(s->nectarPct);
    if (honey || nectar) {
      out.storesKg.sum += storesOnSideKg(f, honey.value_or(0) + nectar.value_or(0));
    }
    // One of the two alone: the other is taken as none, since both were looked at together.
    out.storesKg.given += box && (honey || nectar) ? 1 : 0;
  }
  SideSum* const sums[4] = {&out.eggs, &out.larvae, &out.sealed, &out.drone};
  for (int i = 0; i < 4; ++i) {
    sums[i]->given = broodInChambers[i];
    need.finish(*sums[i], need.broodSides);
  }
  need.finish(out.bees, need.allSides);
  need.finish(out.storesKg, need.allSides);
  out.combsWithBrood = static_cast<int>(combsWithBrood.size());
  return out;
}

}  // namespace outyard::strength
