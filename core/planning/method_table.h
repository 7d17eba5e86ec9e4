// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string_view>
#include <vector>

#include "core/apiary/codes.h"

namespace outyard::planning {

/// A task that goes with a method: what, counted in days from the day of the work.
struct Return {
  std::string_view kind;  ///< of the task: an event code, or "look"
  int fromDay = 0, toDay = 0;
  std::string_view why;  ///< key of the reason
  bool atDonor = false;
};

/// What one method asks for, in one place. Common practice, no source.
struct MethodFigures {
  apiary::Method method{};
  int minutes = 0;        ///< at the stop
  int returnMinutes = 0;  ///< of all return visits together
  int people = 1;
  int lifts = 0;  ///< of a whole chamber
  double liftKg = 0;
  std::string_view taskKind;  ///< an event code; empty for leave
  int excluders = 0, paper = 0, feeders = 0;
  bool combPerFrame = false;  ///< a drawn comb goes in for each comb that comes out
  std::vector<Return> returns;
};
const MethodFigures& methodFigures(apiary::Method method);

}  // namespace outyard::planning
