// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/message.h"

namespace outyard::planning {

/// Every threshold and weight of the boost plan. A Setting row of the name in boostFigureTable
/// replaces the shipped value. Temperatures in degrees Celsius, weights in thousands of bees.
struct BoostFigures {
  // Weather on the day and after it.
  double stackMinC = 12, broodMinC = 15, combMinC = 14, uniteMinC = 10, lidMinC = 8;
  double liquidFeedMinC = 10, dryMm = 1, broodWindMs = 5;
  double nightMinC = -3, coldDayC = 8, coldDays = 3, aheadDays = 7;
  // Evidence.
  double evidenceDays = 10;
  // Who may be set over whom.
  double stackWeakMinSeams = 1, stackWeakMaxSeams = 3;
  double stackDonorMinSeams = 7, stackDonorMinBroodCombs = 5;
  double stacksPerStop = 4;
  // What a donor keeps.
  double donorKeepBees = 6000, donorKeepBroodCombs = 5, donorKeepBroodCombsLater = 4;
  double donorMaxCombs = 3, donorMinKg = 2.5;
  // What a gift needs and does.
  double giftMinSeams = 3, giftTwoSeams = 6, shakeMinSeams = 2;
  double stackShare = 0.35, stackMaxBees = 6000, stackMinBees = 1000;
  double cellsPerBee = 2.4, emergence = 0.9, bestComb = 1.5, fullComb = 0.8;
  double beesOnComb = 800, beesShaken = 1200, shakenStay = 0.5;
  double fieldShare = 0.25, fieldLost = 0.25;
  double upperQueenLost = 0.10, donorQueenLost = 0.02, uniteKept = 0.85;
  double swapMinSeams = 4, swapMaxSeams = 6, swapMinFlow = 1;
  double roomMaxEmptyCombs = 1, roomCombBees = 1400;
  double feedBelowKg = 5, feedEmergencyKg = 2.5, feedKeeps = 0.08, feedKeepsEmergency = 0.2;
  // Weights.
  double spareWeight = 0.15, broodWeight = 0.3;
  double hourCost = 0.05, gearCost = 0.01, driveCost = 0.3;
  // What counts as usable, and the weights of a plan by forecast, in usable colonies.
  double usableSeams = 4.5, usableBroodCombs = 4;
  double takeOffSeams = 6, takeOffBroodCombs = 4;
  double stackDays = 24, planMembers = 128;
  double donorWeight = 1, beesWeight = 0.01;
  double queenlessDoubt = 0.1;
  double hourWeight = 0.02, gearWeight = 0.005, driveWeight = 0.1;
  double hours = 0;  ///< working hours of the day; 0 = no limit
};

struct BoostFigure {
  std::string_view name;  ///< of the setting
  double BoostFigures::*member;
  double min, max;  ///< what a setting may be
  std::string_view unit;
  std::string_view source;
};
std::span<const BoostFigure> boostFigureTable();

/// The shipped figures with the season's settings over them; a setting that is no number or out of
/// range is left out and named in the notes.
BoostFigures boostFigures(const apiary::Season& season, std::vector<base::Message>& notes);

}  // namespace outyard::planning
