// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/message.h"

namespace outyard::planning {

/// Every figure of the rules of what falls due. A Setting row of the name in dueFigureTable
/// replaces the shipped value. Days of the season are those of the northern hemisphere.
struct DueFigures {
  // What is listed.
  double leastChance = 0.2;
  // Weather of the day.
  double lidMinC = 10, combMinC = 14, dryMm = 1;
  // Open next.
  double openDays = 21, openSmallDays = 10, openUnsure = 0.5, openWindow = 7, openSoonest = 14;
  // Room.
  double combBees = 1400, roomShare = 0.8, roomAhead = 10, layingFull = 0.9;
  // Stores and feed.
  double emptyKg = 1, feedBelowKg = 5, feedToKg = 8, feedWindow = 7;
  double winterKgCold = 32, winterKgMild = 22, coldLatitude = 40;
  double winterFeedFrom = 232, winterFeedTo = 283;
  double sugarSyrup11 = 0.615, sugarSyrup21 = 0.885, sugarFondant = 0.78, storesPerSugar = 1.25;
  // After a stack.
  double paperFrom = 2, paperTo = 4, stackLookFrom = 7, stackLookTo = 9;
  double separateFrom = 21, separateTo = 28, ownStandFrom = 7, ownStandTo = 10;
  // Reversal.
  double reverseFrom = 14, reverseTo = 45, reverseMinSeams = 5, reverseUnknown = 0.5;
  // Splits.
  double splitCombsOfBees = 8, splitBroodCombs = 6, dronesAfterPollen = 35, splitLastDay = 196;
  double splitMinC = 16, splitWindow = 21;
  // Swarming.
  double swarmFromDay = 112, swarmToDay = 205, swarmHazard = 0.03, swarmNest = 0.45;
  double swarmLookFrom = 7, swarmLookTo = 9, swarmLeast = 0.1, swarmCells = 0.7;
  // Mites.
  double washFromDay = 105, washToDay = 300, washEvery = 30, washWindow = 14, washSample = 3,
         mitesOnBees = 0.35;
  double treatWindow = 14, treatmentDays = 42, treatmentMost = 56;
  // Queen, harvest, winter, dead hives.
  double queenWindow = 7, testCombDays = 7;
  double harvestKeepKg = 12, harvestWindow = 14, mainFlow = 1.5;
  double unwrapBefore = 7, unwrapAfter = 14, deadDays = 7;
  double wrapFrostC = 2, wrapColdC = -5, wrapBefore = 14, wrapAfter = 21;
};

struct DueFigure {
  std::string_view name;  ///< of the setting
  double DueFigures::*member;
  double min, max;
  std::string_view unit, source;
};
std::span<const DueFigure> dueFigureTable();
/// The shipped figures with the season's settings over them; a setting that is no number or out of
/// range is left out and named in the notes.
DueFigures dueFigures(const apiary::Season& season, std::vector<base::Message>& notes);

}  // namespace outyard::planning
