// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/strength/frame_table.h"

/// Plain conversions between what is seen on a comb and numbers. No error bands here: they are
/// added in estimate.cpp, where it is known how something was counted.
namespace outyard::strength {

// --- Geometry of comb -------------------------------------------------------------------------

/// Worker cells on one side of 1 dm2 when n cells are counted along 10 cm: 2/sqrt(3) n^2
/// (hexagonal packing; twice this is Justrich's table in Betts 1938, The Bee World, Sept.).
double cellsPerDm2(double cellsAlong10Cm);
double cellsPerDm2BothSides(double cellsAlong10Cm);
/// Cells per cm2 of one side from the width of a cell across its flats, in mm.
double cellsPerCm2OfWidth(double widthMm);
/// Area of a brood patch from its greatest length and height, in cm2: pi/4 L H.
double ellipseArea(double lengthCm, double heightCm);

inline constexpr double kCm2PerIn2 = 6.4516;  ///< exact
/// Worker cells in a square inch by the rule of thumb of the US strength standards (range 23.6
/// to 25.5).
inline constexpr double kCellsPerIn2Rule = 23.6;
/// Drone cells for each worker cell on the same area: 230 to 400 in an eighth of a Zander side
/// ("Das Schaetzraehmchen", bees-online.at, 2020).
inline constexpr double kDroneCellShare = 230.0 / 400.0;

// --- One side of a comb; share is the covered part of the face, 0 to 1 -------------------------

double beesOnSide(const FrameFigures& figures, double share);
double cellsOnSide(const FrameFigures& figures, double share);
double droneCellsOnSide(const FrameFigures& figures, double share);
double storesOnSideKg(const FrameFigures& figures, double share);
/// Eighths of the face, as the counting method divides it.
double shareOfEighths(double eighths);
double shareOfPercent(double percent);
/// Eighths that the bees fill when a full side holds beesPerSide.
double eighthsFor(double bees, double beesPerSide);

/// Bees of a comb in use, mean of colonies with room to spare (Simpson 1969, J. Apic. Res. 8:3),
/// and of a frame that a pollination grader calls full (E. Mussen, University of California).
inline constexpr double kBeesPerLangstrothInUse = 1400, kBeesPerBritishInUse = 1100;
inline constexpr double kBeesPerGradersFrame = 2000;

// --- Brood ------------------------------------------------------------------------------------

/// Days of a worker as egg, larva and sealed: 3, 6, 12, together 21.
inline constexpr double kEggDays = 3, kLarvaDays = 6, kSealedDays = 12, kBroodDays = 21;
/// Mean eggs a day over the last 12, 3 and 21 days, without losses.
double layingRateFromSealed(double sealedCells);
double layingRateFromEggs(double eggCells);
double layingRateFromTotal(double broodCells);
/// Stages beside so many sealed cells when laying is constant and nothing dies (3 : 6 : 12).
struct SteadyBrood {
  double eggs = 0, larvae = 0, total = 0;
};
SteadyBrood steadyBroodFromSealed(double sealedCells);
/// Above 1 the nest expands, below 1 it shrinks: eggs against sealed, held against the steady
/// ratio with losses 1 : 3.52 (survival of the stages about 0.85, Fukuda & Sakagami 1968).
double expansionIndex(double eggCells, double sealedCells);
/// Cells that laying so many eggs a day for the days takes.
double cellsForLaying(double eggsPerDay, double days = kBroodDays);

// --- Bees by weight and in a cluster -----------------------------------------------------------

/// Bees in a pound of fed package bees (range 3,000 to 5,000 are quoted).
inline constexpr double kPackageBeesPerLb = 3500;
double packageBees(double pounds, double beesPerLb = kPackageBeesPerLb);
double packageBeesKg(double kilograms, double beesPerLb = kPackageBeesPerLb);
double milligramsPerBee(double beesPerLb);
/// Bees of a round cluster: 2 rho V / s with comb spacing s (geometry).
double clusterBees(double diameterCm, double beesPerCm2, double combSpacingCm = 3.8);
/// Cells that so many bees can keep warm: the inside of a round cluster whose outer shell is 1 cm
/// deep at 15 C and 0.08 cm deeper for each degree colder, of which about 60 % is free for
/// brood, the rest holds stores and pollen. Our assumption; it puts the published small April
/// nest (2,000 bees, 1,300 cells) at two thirds and full summer colonies at one half.
double warmCells(double bees, double meanC, const FrameFigures& figures);

// --- Mite washes ------------------------------------------------------------------------------

struct Interval {
  double low = 0, high = 0;
};
/// Wilson's 95 % score interval for a share, as a share (Wilson 1927, J. Am. Stat. Assoc. 22:209).
Interval wilson(int hits, int of);

}  // namespace outyard::strength
