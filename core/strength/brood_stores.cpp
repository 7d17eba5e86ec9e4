// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/brood_stores.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "core/strength/measures.h"

namespace outyard::strength {
namespace {

constexpr double kFrameBroodSigma = 0.20;    ///< reader 0.16 and the fill of a full frame
constexpr double kCombsBroodSigma = 0.40;    ///< half covered, more or less
constexpr double kFromSealedSigma = 0.40;    ///< stages not looked at
constexpr double kHeftedStoresSigma = 0.25;  ///< summary of stores, hefted or guessed
constexpr double kSidesStoresSigma = 0.15;   ///< 125 to 165 g a dm2
/// Boxes of one make from 2.4 kg to three times that, old combs half as heavy again as light ones
/// (Deutsches Bienen-Journal, "Liebefelder Schätzmethode für ausreichend Winterfutter"): nobody
/// knows an unweighed box better than by a fifth, our assumption.
constexpr double kBoxSigma = 0.20;
/// Open cells (eggs and larvae) to larvae alone when laying is constant: (3 + 6) / 6.
constexpr double kOpenToLarvae = 1.5;

void addOnce(std::vector<Basis>& list, Basis basis) {
  if (std::find(list.begin(), list.end(), basis) == list.end()) list.push_back(basis);
}

/// The sum of two stages, as wide as the wider of the two (one reader's error goes one way).
Estimate sumOf(const Estimate& a, const Estimate& b) {
  return Estimate::fromMedian(a.median + b.median, std::max(a.sigmaLog, b.sigmaLog));
}

void broodFromSides(const CombSums& sums, const MeantFrames& frames, StrengthEstimate& out) {
  if (sums.sealed.complete) {
    out.sealedCells = Estimate::fromMedian(sums.sealed.sum, kSidesBroodSigma);
  }
  if (sums.eggs.complete) out.eggCells = Estimate::fromMedian(sums.eggs.sum, kSidesEggsSigma);
  if (sums.larvae.complete) {
    out.openCells = sums.eggs.complete
                        ? Estimate::fromMedian(sums.larvae.sum + sums.eggs.sum, kSidesBroodSigma)
                        : Estimate::fromMedian(sums.larvae.sum * kOpenToLarvae, kCombsBroodSigma);
  }
  if (sums.sealed.complete && sums.larvae.complete) {
    out.broodCells = sumOf(*out.sealedCells, *out.openCells);
    out.framesWithBrood = sums.combsWithBrood;
    out.broodFrames = sums.eggs.complete
                          ? sums.broodSides / 2
                          : out.broodCells->median / (2 * frames.figures.cellsPerSide());
    addOnce(out.basis, Basis::CombSides);
  }
}

}  // namespace

void addBrood(const apiary::Inspection& i, const CombSums& sums, const MeantFrames& frames,
              StrengthEstimate& out) {
  const double atLeast = sums.eggs.sum + sums.larvae.sum + sums.sealed.sum;
  if (sums.drone.sum + sums.sealed.sum > 0) {
    out.droneShare = sums.drone.sum / (sums.drone.sum + sums.sealed.sum);
  }
  broodFromSides(sums, frames, out);
  if (!out.eggCells && sums.eggs.sum > 0) out.eggCellsAtLeast = sums.eggs.sum;
  if (!out.broodCells && atLeast > 0) out.broodCellsAtLeast = atLeast;

  const double cellsPerFrame = 2 * frames.figures.cellsPerSide() * kFrameOfBroodFill;
  const auto fromFrames = [&](double n) {
    return Estimate::fromMedian(n * cellsPerFrame, kFrameBroodSigma);
  };
  if (!out.sealedCells && i.sealedBroodFrames) out.sealedCells = fromFrames(*i.sealedBroodFrames);
  if (!out.openCells && i.openBroodFrames) out.openCells = fromFrames(*i.openBroodFrames);
  if (!out.framesWithBrood) out.framesWithBrood = i.framesWithBrood;
  if (out.broodCells) return;

  if (out.sealedCells && out.openCells) {
    out.broodCells = sumOf(*out.sealedCells, *out.openCells);
    out.broodFrames = i.sealedBroodFrames && i.openBroodFrames
                          ? *i.sealedBroodFrames + *i.openBroodFrames
                          : out.broodCells->median / cellsPerFrame;
  } else if (i.broodFrames) {
    out.broodCells = fromFrames(*i.broodFrames);
    out.broodFrames = i.broodFrames;
  } else if (i.framesWithBrood) {
    out.broodCells = Estimate::fromMedian(*i.framesWithBrood * 2 * frames.figures.cellsPerSide() *
                                              kCombWithBroodCover * kFrameOfBroodFill,
                                          kCombsBroodSigma);
    out.broodFrames = *i.framesWithBrood * kCombWithBroodCover;
  } else if (out.sealedCells) {
    // The younger stages were not noted: constant laying (21 days to 12), wide; without eggs the
    // sealed brood stands for itself.
    const bool noEggs = i.eggsSeen && !*i.eggsSeen;
    const double factor = noEggs ? 1 : kBroodDays / kSealedDays;
    out.broodCells = Estimate::fromMedian(out.sealedCells->median * factor, kFromSealedSigma);
    out.broodFrames = out.broodCells->median / cellsPerFrame;
  } else {
    return;
  }
  addOnce(out.basis, Basis::Summary);
}

std::optional<Tare> tareOf(const apiary::Season& season, const std::vector<apiary::BoxState>& boxes,
                           const std::optional<Estimate>& bees,
                           const std::optional<Estimate>& broodCells) {
  if (boxes.empty()) return std::nullopt;
  Tare t{6.0 + 1.0, 0};
  double variance = 1.5 * 1.5 + 0.7 * 0.7;  // floor and cover; pollen
  for (const apiary::BoxState& b : boxes) {
    if (b.role == apiary::BoxRole::Feeder) {
      t.kg += 2;
      variance += 1;
      continue;
    }
    const auto figures = figuresFor(season, b.frameType);
    if (!figures) return std::nullopt;
    t.kg += figures->boxKg;
    variance += kBoxSigma * figures->boxKg * kBoxSigma * figures->boxKg;
  }
  // Not counted: a middling colony, with an error that says so.
  const double beesKg = bees ? bees->median * 0.11e-3 : 1.5;
  const double broodKg = broodCells ? broodCells->median * 0.13e-3 : 1.0;
  t.kg += beesKg + broodKg;
  variance += bees ? std::pow(beesKg * bees->sigmaLog, 2) : 1.0;
  variance += broodCells ? std::pow(broodKg * broodCells->sigmaLog, 2) : 0.6;
  t.sd = std::sqrt(variance);
  return t;
}

Estimate storesOfLevel(apiary::StoresLevel level) {
  switch (level) {
    case apiary::StoresLevel::Low:
      return Estimate::fromMedian(3, 0.6);
    case apiary::StoresLevel::Medium:
      return Estimate::fromMedian(9, 0.4);
    case apiary::StoresLevel::Heavy:
      return Estimate::fromMedian(18, 0.4);
  }
  throw std::logic_error("unknown stores level");
}

void addStores(const apiary::Season& season, const apiary::Inspection& i, const CombSums& sums,
               const std::vector<apiary::BoxState>& boxes, StrengthEstimate& out) {
  const auto tare = i.weightKg ? tareOf(season, boxes, out.bees, out.broodCells) : std::nullopt;
  if (tare) {
    out.weighedKg = i.weightKg;
    out.tareKg = tare->kg;
    out.tareSdKg = tare->sd;
  }
  if (sums.storesKg.complete) {
    out.honeyKg = Estimate::fromMedian(sums.storesKg.sum, kSidesStoresSigma);
    addOnce(out.basis, Basis::CombSides);
    return;
  }
  std::vector<Estimate> looks;
  if (i.honeyKg) {
    looks.push_back(Estimate::fromMedian(*i.honeyKg, kHeftedStoresSigma));
    addOnce(out.basis, Basis::Summary);
  }
  if (looks.empty() && !tare && i.storesLevel) {
    out.honeyKg = storesOfLevel(*i.storesLevel);
    addOnce(out.basis, Basis::Summary);
    return;
  }
  if (tare) {
    // What is left may be less than the error of the tare: then half a kilogram, give or take.
    const double net = std::max(*i.weightKg - tare->kg, 0.5);
    looks.push_back(Estimate::fromMedian(net, std::clamp(tare->sd / net, 0.12, 1.0)));
    addOnce(out.basis, Basis::Weight);
  }
  if (!looks.empty()) out.honeyKg = combinedSameReader(looks, 1.0);
}

}  // namespace outyard::strength
