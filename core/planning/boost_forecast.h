// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/forecast/what_if.h"
#include "core/planning/boost.h"
#include "core/planning/boost_figures.h"

/// Benefits of a boost from paired what-if runs of both colonies to the target day.
namespace outyard::planning {

/// Bees (as a careful count reads them) and brood cells that make a colony usable in its frames.
struct Usable {
  double seenBees = 0, broodCells = 0;
};
Usable usableIn(const apiary::Season& season, const std::string& frameType,
                const BoostFigures& figures);

/// Chance that the colony is usable on that day: the share of the draws. A colony without brood
/// and bees never is.
double chanceOf(const forecast::MemberDay& day, const Usable& usable);

/// Puts the gain at the receiver on the target day (bees, paired, median and 80 %), the chances,
/// benefit, costs and net of every option in place of those of strength alone; problem.basis
/// becomes "forecast". An option whose colonies cannot be forecast keeps its gain in bees, worth
/// bees_weight a thousand, and a note says so. False when cancelled: the problem is then unchanged.
bool benefitsFromForecast(const apiary::Season& season, BoostProblem& problem,
                          const BoostFigures& figures, int threads, base::Progress& progress);

/// The bees of a pair to the target day, a week apart, without and with an option; the donor's are
/// empty for an option without one.
struct PairCourse {
  std::vector<base::Date> days;
  std::vector<forecast::Band> receiverWithout, receiverWith, donorWithout, donorWith;
};
/// nullopt when cancelled, or when one of the two cannot be forecast.
std::optional<PairCourse> pairCourse(const apiary::Season& season, const BoostProblem& problem,
                                     const BoostOption& option, const BoostFigures& figures,
                                     base::Progress& progress);

/// What the plan says of a pair on the last day: everything with and without the option; the
/// donor's are empty for an option without one.
struct PairPromise {
  forecast::ForecastDay receiverWithout, receiverWith;
  std::optional<forecast::ForecastDay> donorWithout, donorWith;
  BoostChance chance;
  Gain gain;
};
/// On problem.target. nullopt when cancelled, or when one of the two cannot be forecast.
std::optional<PairPromise> pairPromise(const apiary::Season& season, const BoostProblem& problem,
                                       const BoostOption& option, const BoostFigures& figures,
                                       base::Progress& progress);

}  // namespace outyard::planning
