// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/forecast/colony_forecast.h"
#include "core/planning/boost_weather.h"
#include "core/planning/due.h"
#include "core/planning/due_figures.h"
#include "core/strength/evidence.h"
#include "core/strength/verdict.h"

/// What the rules look at, as plain values: gathered once for each colony from records, judgement
/// and forecast, so that a rule can be tried with made-up facts.
namespace outyard::planning {

struct FlowTime {
  base::Date from, to;
  double nectar = 0;
};

struct YardFacts {
  base::YardId yard;
  double latitude = 45;
  base::Date from, to;  ///< the asked days
  base::Date firstPollen;
  std::vector<FlowTime> flows;  ///< of this year and the turn to the next, by date
  std::optional<base::HiveId> foulBrood;
  bool anyWrapped = false;
  std::function<std::optional<DayWeather>(base::Date)> weather;

  [[nodiscard]] int seasonDay(base::Date date) const;
  /// The date with that season day that is nearest to `from`.
  [[nodiscard]] base::Date seasonDate(double seasonDay) const;
  /// First and last day of the season's window that is open on `from` or opens next.
  [[nodiscard]] std::pair<base::Date, base::Date> seasonWindow(double fromDay, double toDay) const;
  [[nodiscard]] bool warm(base::Date day, double minC, double dryMm) const;
};

struct ColonyFacts {
  const YardFacts* yard = nullptr;
  base::HiveId hive;
  base::ColonyId colony;
  apiary::VerdictCode verdict = apiary::VerdictCode::NotEnoughSeen;
  std::optional<base::Message> healthBar;
  std::optional<base::Date> lastLook;  ///< any inspection
  std::optional<double> seams;
  // The stack. Cells of the chambers and of the supers; bees that all its combs hold in use.
  int chambers = 1, supers = 0;
  double chamberCells = 0, superCells = 0, combCells = 0, combsBees = 0;
  std::string chamberType, superType;
  std::optional<bool> nestAbove;  ///< of two chambers the bees sit in the upper one alone
  std::optional<base::Date> reversedOn;
  // Two in a stack.
  bool upper = false;
  std::optional<base::HiveId> partner;
  std::optional<base::Date> stackedOn, paperOpenOn, unstackedOn;
  // Mites and treatment.
  std::optional<base::Date> washedOn, treatedOn, treatmentOffOn, harvestFrom;
  std::optional<double> mitesPer100;
  double mitesThreshold = 3;
  std::string treatment;
  // Queen and swarming.
  std::optional<base::Date> queenSince, queenDue;
  std::optional<base::Date> cellsOn;  ///< charged or sealed cells were seen, nothing done since
  bool dronesSeen = false;
  bool wrapped = false;
  std::vector<forecast::ForecastDay> days;  ///< ascending; empty = no forecast

  /// The forecast on a day, between its rows by straight lines; nullopt outside of them.
  [[nodiscard]] std::optional<forecast::ForecastDay> on(base::Date day) const;
};

/// Chance that the figure is above a value, from its median and 80 % band: a normal curve whose two
/// halves have their own spread (logarithms when `onLogs`).
double chanceAbove(const forecast::Band& band, double value, bool onLogs);

YardFacts yardFacts(const apiary::Season& season, const base::YardId& yard, const DueAsk& ask);
/// Facts of a colony but for its forecast.
ColonyFacts colonyFacts(const apiary::Season& season, const YardFacts& yard,
                        const apiary::HiveState& hive, const apiary::ColonyState& colony,
                        const DueFigures& figures);

}  // namespace outyard::planning
