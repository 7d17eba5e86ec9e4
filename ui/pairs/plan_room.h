// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QStringList>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "core/planning/boost.h"

namespace outyard::pairs {

/// What a plan leaves room for beside its other pairs: why an option that would be better for a
/// colony was not chosen, and which one can step in on the day.
class PlanRoom {
 public:
  /// The plan must outlive it.
  explicit PlanRoom(const planning::BoostPlan& plan);
  /// What stands against the option in place of what its colony now has: gear in use, what donors
  /// have left, hours, rules. Empty when it would fit as it is.
  [[nodiscard]] QStringList against(const planning::BoostOption& other) const;
  /// The best other way for the colony that fits beside the rest and does without the donor that
  /// may fail on the day; null when it is best left as it is.
  [[nodiscard]] const planning::BoostOption* planB(const planning::BoostOption& chosen) const;

 private:
  struct Given {
    planning::Takes takes;
    std::vector<const planning::BoostOption*> to;
  };
  [[nodiscard]] QString whoHas(const Given& given, const planning::BoostOption* without) const;

  const planning::BoostPlan& m_plan;
  std::map<std::string, int> m_gear;  ///< in use, by item
  double m_hours = 0;
  std::map<std::string, Given> m_given;                                        ///< by donor colony
  std::vector<double> m_sums;                                                  ///< of each rule
  std::map<std::string, std::vector<std::pair<std::size_t, double>>> m_rules;  ///< by option id
};

}  // namespace outyard::pairs
