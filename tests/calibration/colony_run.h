// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/forecast/assimilation.h"

/// Colonies of known start, run for a number of days.
namespace outyard::calibration {

/// Monthly means of temperature (January first) of a place, where the check names one.
struct Climate {
  std::vector<double> meanC;
  double halfRangeC = 4;
};

apiary::Season yardAt(double latitude, const std::optional<Climate>& climate = {});

struct Start {
  double latitude = 45;
  std::string date = "2026-05-01";
  double bees = 10000;  ///< living adults
  std::optional<double> sealed, open, eggs, honeyKg;
  std::optional<bool> eggsSeen;
  std::optional<apiary::ColonyOrigin> origin;
  double nestCells = 69000, superCells = 60000;
  std::optional<Climate> climate;
};

/// Medians and 80 % bands of each day, day 0 the start; eggs are eggs laid a day.
struct Run {
  std::vector<forecast::Band> bees, eggs, brood, sealed, honeyKg, mites;
};
/// Actions are dated by days after the start (their own date is not read).
struct Deed {
  int day = 0;
  forecast::Action::Kind kind = forecast::Action::Kind::Feed;
  double amount = 0, amount2 = 0;
};
Run run(const Start& start, int days, const std::vector<Deed>& deeds = {});

/// What a careful full count would read of that many living adults.
double seenOf(double bees);
forecast::Band bandOf(std::vector<double> values);

/// Rows of a CSV file of tests/data, by the names of the columns.
using CsvRow = std::vector<std::pair<std::string, std::string>>;
std::vector<CsvRow> csvRows(const std::string& file);
std::string cell(const CsvRow& row, const std::string& column);
std::optional<double> number(const CsvRow& row, const std::string& column);

}  // namespace outyard::calibration
