// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "core/sheet/marks.h"

namespace outyard::sheet {

namespace {

constexpr double kEighths = 8;

struct Content {
  double CombFace::*eighths;
  Ink ink;
  Hatch hatch;
};

/// From the top bar downwards: food above, brood below, drone brood at the lower edge.
constexpr std::array<Content, 9> kContents{{
    {&CombFace::honey, Ink::Honey, Hatch::Diagonal},
    {&CombFace::nectar, Ink::Nectar, Hatch::None},
    {&CombFace::pollen, Ink::Pollen, Hatch::Horizontal},
    {&CombFace::empty, Ink::Comb, Hatch::None},
    {&CombFace::undrawn, Ink::Undrawn, Hatch::None},
    {&CombFace::sealed, Ink::SealedBrood, Hatch::None},
    {&CombFace::open, Ink::OpenBrood, Hatch::Dots},
    {&CombFace::eggs, Ink::Eggs, Hatch::Vertical},
    {&CombFace::drone, Ink::DroneBrood, Hatch::Dense},
}};

/// Whole cells for each content and, last, for what is not known: largest remainders.
std::vector<int> cellsFor(const CombFace& face, int cells) {
  std::vector<double> share;
  double known = 0;
  for (const Content& c : kContents) {
    share.push_back(face.*(c.eighths) / kEighths * cells);
    known += share.back();
  }
  share.push_back(std::max(0.0, cells - known));
  std::vector<int> whole;
  for (const double s : share) whole.push_back(static_cast<int>(std::floor(s + 1e-9)));
  int left = cells - std::accumulate(whole.begin(), whole.end(), 0);
  std::vector<std::size_t> order(share.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return share[a] - whole[a] > share[b] - whole[b] + 1e-9;
  });
  for (std::size_t i = 0; left > 0; i = (i + 1) % order.size(), --left) ++whole[order[i]];
  return whole;
}

}  // namespace

CombFace combFace(const apiary::CombSide& side) {
  CombFace face;
  double total = 0;
  const auto add = [&](double CombFace::*to, const std::optional<double>& pct) {
    if (!pct) return;
    face.known = true;
    face.*to = *pct * kEighths / 100;
    total += *pct;
  };
  add(&CombFace::eggs, side.eggsPct);
  add(&CombFace::open, side.openPct);
  add(&CombFace::sealed, side.sealedPct);
  add(&CombFace::drone, side.dronePct);
  add(&CombFace::pollen, side.pollenPct);
  add(&CombFace::nectar, side.nectarPct);
  add(&CombFace::honey, side.honeyPct);
  add(&CombFace::empty, side.emptyPct);
  add(&CombFace::undrawn, side.undrawnPct);
  face.mould = side.mould.value_or(false);
  // A face given in full adds up to 100 +- 1: it is whole. Less than that leaves the rest unknown.
  if (total >= 99) {
    for (const Content& c : kContents) face.*(c.eighths) *= 100 / total;
  }
  return face;
}

Shapes combFaceShapes(const CombFace& face, double widthMm, double heightMm, int columns,
                      int rows) {
  Shapes out;
  if (columns < 1 || rows < 1) return out;
  if (!face.known) {
    RectShape blank{{0, 0}, widthMm, heightMm};
    blank.fill = Ink::Paper;
    blank.stroke = {Ink::FaintLine, 0.15, true};
    out.emplace_back(blank);
    return out;
  }
  const std::vector<int> cells = cellsFor(face, columns * rows);
  const double w = widthMm / columns, h = heightMm / rows;
  int at = 0;
  for (std::size_t k = 0; k < cells.size(); ++k) {
    const bool unknown = k == kContents.size();
    for (int n = 0; n < cells[k]; ++n, ++at) {
      RectShape cell{{w * (at % columns), h * (at / columns)}, w, h};
      cell.fill = unknown ? Ink::Paper : kContents[k].ink;
      cell.hatch = unknown ? Hatch::None : kContents[k].hatch;
      cell.stroke = {Ink::FaintLine, 0.1, unknown || kContents[k].ink == Ink::Undrawn};
      out.emplace_back(cell);
    }
  }
  RectShape edge{{0, 0}, widthMm, heightMm};
  edge.stroke = {Ink::WoodEdge, 0.15};
  out.emplace_back(edge);
  if (face.mould) {
    // Mould lies over whatever the comb holds: a cross over its lower half.
    RectShape mould{{widthMm * 0.1, heightMm * 0.55}, widthMm * 0.8, heightMm * 0.4};
    mould.hatch = Hatch::Cross;
    mould.stroke = {Ink::Mould, 0.2};
    out.emplace_back(mould);
  }
  return out;
}

}  // namespace outyard::sheet
