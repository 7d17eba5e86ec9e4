// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <gtest/gtest.h>

#include "core/planning/due_rules.h"

namespace outyard::planning::testing {

inline base::Date day(const char* iso) {
  return base::Date::parse(iso).value();
}

/// A sound colony in one Langstroth deep chamber on 25 April at 45 degrees north, four weeks ahead,
/// warm and dry every day; tests change what they are about.
struct DueFacts {
  YardFacts yard;
  ColonyFacts colony;
  DueFigures figures;

  DueFacts() {
    yard.yard = base::YardId("TR");
    yard.from = day("2026-04-25");
    yard.to = day("2026-05-23");
    yard.firstPollen = day("2026-04-05");
    yard.weather = [](base::Date) { return DayWeather{8, 19, 0.0, 2.0}; };
    colony.yard = &yard;
    colony.hive = base::HiveId("TR-01");
    colony.colony = base::ColonyId("TR-01");
    colony.verdict = apiary::VerdictCode::Fair;
    colony.lastLook = day("2026-04-23");
    colony.seams = 6;
    colony.combsBees = 14000;
    colony.chamberCells = 71200;
    colony.combCells = 7120;
    colony.chamberType = "langstroth_deep";
    days(8000, 8000);
  }
  DueFacts(const DueFacts&) = delete;
  DueFacts& operator=(const DueFacts&) = delete;

  static forecast::Band band(double median, double share = 0.25) {
    return {median, median * (1 - share), median / (1 - share)};
  }
  static forecast::Band kilos(double median, double spread = 1.5) {
    return {median, median - spread, median + spread};
  }
  /// Bees, brood and stores run straight from the first value to the last.
  void days(double bees0, double bees1, double honey0 = 12, double honey1 = 12,
            double brood0 = 9000, double brood1 = 9000) {
    colony.days.clear();
    const int n = yard.to - yard.from;
    for (int k = 0; k <= n; k += 4) {
      const double s = static_cast<double>(k) / n;
      const double bees = bees0 + (bees1 - bees0) * s;
      const double brood = brood0 + (brood1 - brood0) * s;
      forecast::ForecastDay d;
      d.date = yard.from.plusDays(k);
      d.bees = band(bees * 1.3);
      d.seen = band(bees);
      d.sealed = band(brood * 0.57);
      d.brood = band(brood);
      d.honeyKg = kilos(honey0 + (honey1 - honey0) * s);
      d.mites = band(60, 0.5);
      colony.days.push_back(d);
    }
  }
  [[nodiscard]] std::optional<DueTask> due(const char* code) const {
    const DueRule* rule = findDueRule(code);
    EXPECT_NE(rule, nullptr) << code;
    return rule ? applyRule(*rule, colony, figures) : std::nullopt;
  }
};

}  // namespace outyard::planning::testing
