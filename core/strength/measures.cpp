// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/measures.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace outyard::strength {
namespace {
constexpr double kKgPerLb = 0.45359237;
constexpr double kTwoOverSqrt3 = 2.0 * std::numbers::inv_sqrt3;
}  // namespace

double cellsPerDm2(double cellsAlong10Cm) {
  return kTwoOverSqrt3 * cellsAlong10Cm * cellsAlong10Cm;
}
double cellsPerDm2BothSides(double cellsAlong10Cm) {
  return 2 * cellsPerDm2(cellsAlong10Cm);
}
double cellsPerCm2OfWidth(double widthMm) {
  const double cm = widthMm / 10;
  return kTwoOverSqrt3 / (cm * cm);
}
double ellipseArea(double lengthCm, double heightCm) {
  return std::numbers::pi / 4 * lengthCm * heightCm;
}

double beesOnSide(const FrameFigures& figures, double share) {
  return share * figures.beesPerSide();
}
double cellsOnSide(const FrameFigures& figures, double share) {
  return share * figures.cellsPerSide();
}
double droneCellsOnSide(const FrameFigures& figures, double share) {
  return share * figures.cellsPerSide() * kDroneCellShare;
}
double storesOnSideKg(const FrameFigures& figures, double share) {
  return share * figures.honeySideKg;
}
double shareOfEighths(double eighths) {
  return eighths / 8;
}
double shareOfPercent(double percent) {
  return percent / 100;
}
double eighthsFor(double bees, double beesPerSide) {
  return bees / beesPerSide * 8;
}

double layingRateFromSealed(double sealedCells) {
  return sealedCells / kSealedDays;
}
double layingRateFromEggs(double eggCells) {
  return eggCells / kEggDays;
}
double layingRateFromTotal(double broodCells) {
  return broodCells / kBroodDays;
}
SteadyBrood steadyBroodFromSealed(double sealedCells) {
  return {sealedCells * kEggDays / kSealedDays, sealedCells * kLarvaDays / kSealedDays,
          sealedCells * kBroodDays / kSealedDays};
}
double expansionIndex(double eggCells, double sealedCells) {
  return 3.52 * eggCells / sealedCells;
}
double cellsForLaying(double eggsPerDay, double days) {
  return eggsPerDay * days;
}

double packageBees(double pounds, double beesPerLb) {
  return pounds * beesPerLb;
}
double packageBeesKg(double kilograms, double beesPerLb) {
  return kilograms / kKgPerLb * beesPerLb;
}
double milligramsPerBee(double beesPerLb) {
  return kKgPerLb * 1e6 / beesPerLb;
}
double clusterBees(double diameterCm, double beesPerCm2, double combSpacingCm) {
  const double volume = std::numbers::pi / 6 * diameterCm * diameterCm * diameterCm;
  return 2 * beesPerCm2 * volume / combSpacingCm;
}

double warmCells(double bees, double meanC, const FrameFigures& figures) {
  if (bees <= 0) return 0;
  constexpr double kSpacingCm = 3.5;
  constexpr double kFreeForBrood = 0.6;
  const double volume = bees * kSpacingCm / (2 * figures.beesPerCm2);
  const double radius = std::cbrt(volume * 3 / (4 * std::numbers::pi));
  const double shell = std::clamp(1.0 + 0.08 * (15 - meanC), 0.5, 3.0);
  const double core = std::max(0.0, radius - shell) / radius;
  const double allCells = bees / figures.beesPerCm2 * figures.cellsPerCm2;
  return kFreeForBrood * core * core * core * allCells;
}

Interval wilson(int hits, int of) {
  if (of <= 0) return {0, 1};
  constexpr double z = 1.959963984540054;  // 97.5 % point of the normal distribution
  const double n = of;
  const double p = hits / n;
  const double centre = (p + z * z / (2 * n)) / (1 + z * z / n);
  const double half = z / (1 + z * z / n) * std::sqrt(p * (1 - p) / n + z * z / (4 * n * n));
  // At the ends the interval touches them exactly; rounding must not say otherwise.
  return {hits <= 0 ? 0.0 : centre - half, hits >= of ? 1.0 : centre + half};
}

}  // namespace outyard::strength
