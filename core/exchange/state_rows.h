// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <string>
#include <vector>

#include "core/apiary/season.h"
#include "core/exchange/draft.h"

/// State rows (colonies, boxes, places) that a folder of tables leaves to be understood.
namespace outyard::exchange {

/// A row of hives.csv as the file gives it.
struct FileHive {
  apiary::Hive given;
  Origin origin;
};
/// An event that is new with this import and counts.
struct FileEvent {
  const apiary::Event* event = nullptr;
  Origin origin;
};

struct StateInput {
  std::vector<FileHive> hives;
  std::vector<FileEvent> events;          ///< oldest first
  std::map<std::string, Origin> touched;  ///< hives that new records speak of
  base::Date today;
};

/// A hive with records and no row in colonies.csv holds the colony of its own name, in the place
/// `main`, from its first record on.
void makeFirstColonies(Draft& draft, const StateInput& input);
/// What stacked, unstacked, united, split, installed and died do to colonies and boxes; and what
/// queens that come and go, swarms, sales and losses do to colonies where no row says otherwise.
void makeColonyRows(Draft& draft, const StateInput& input, FaultList& faults);
/// What moved and places_changed do to places, first places, and the place columns of hives.csv.
void makePlaceRows(Draft& draft, const StateInput& input, FaultList& faults);
/// The column status of hives.csv against what the records make of the hive.
void checkStatus(const Draft& draft, const StateInput& input, FaultList& faults);

}  // namespace outyard::exchange
