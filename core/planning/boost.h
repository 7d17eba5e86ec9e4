// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/base/random.h"
#include "core/base/result.h"
#include "core/strength/verdict.h"

/// Which small colonies to help, by whom, how: eligible options as data, the exact choice among
/// them, and the reasons.
namespace outyard::planning {

/// Median with central 80 % band of bees covering brood that an option gains at the receiver.
struct Gain {
  double median = 0, low = 0, high = 0;
};

struct Takes {
  double bees = 0;
  double broodFrames = 0;
  int stack = 0;  ///< 1 when the donor carries the small colony
};

/// Chances to be usable on the target day, from paired runs without and with the option.
struct BoostChance {
  double receiverWithout = 0, receiverWith = 0;
  double donorWithout = 0, donorWith = 0;  ///< both 0 without a donor
  double better = 0;     ///< share of the draws in which the receiver then has more bees
  double donorBees = 0;  ///< bees that the donor then has more (fewer: negative), on the median
};

struct BoostOption {
  std::string id;  ///< method:colony:donor:k, stable between runs
  base::ColonyId colony;
  base::HiveId hive;
  apiary::Method method = apiary::Method::Leave;
  std::optional<base::ColonyId> donorColony;
  std::optional<base::HiveId> donorHive;
  double beesMoved = 0, framesMoved = 0;
  /// In 1e-6 steps; expected usable colonies, or thousands of bees with basis "strength_now".
  double benefit = 0, donorCost = 0, otherCost = 0, net = 0;
  Gain gain;                          ///< bees
  double sealedCells = 0;             ///< on the combs that are given
  std::optional<BoostChance> chance;  ///< with basis "forecast"
  std::map<std::string, int> gear;    ///< uses, by gear item
  double hours = 0;
  Takes takes;
  std::vector<base::Message> why;
  std::vector<base::Message> cautions;
};

struct DonorLimit {
  double bees = 0, broodFrames = 0;
  int stack = 0;
};

/// A further constraint: sum of coefs over ids is at most atMost.
struct BoostRule {
  base::Message why;
  std::vector<std::string> ids;
  std::vector<double> coefs;  ///< empty = all 1
  double atMost = 1;
};

struct Barred {
  base::ColonyId colony;
  base::HiveId hive;
  base::Message why;
};

struct BoostRequest {
  std::vector<base::YardId> yards;
  base::Date date;
  std::optional<base::Date> target;  ///< default: 45 days later
  std::vector<std::string> pins;     ///< option ids that must be chosen
  std::vector<std::string> forbids;  ///< option ids that must not
};

/// The plan as an integer programme in the terms of commands.md.
struct BoostProblem {
  BoostRequest request;
  base::Date target;
  std::vector<strength::Judgement> judgements;  ///< every colony of the yards
  std::vector<BoostOption> options;
  std::map<std::string, int> gear;   ///< limits; an item without entry is unlimited
  std::vector<base::Message> notes;  ///< gear never counted, forecast not entered, ...
  std::optional<double> hours;
  std::map<std::string, DonorLimit> donors;  ///< by colony
  std::vector<BoostRule> rules;
  std::vector<Barred> barred;
  std::map<std::string, base::YardId> yardOf;  ///< where each colony stands, by colony
  /// Colonies strong enough to be asked that cannot give (or not everything), and why.
  std::vector<Barred> donorNotes;
  /// What the benefits were worked out from. "strength_now": bees covering brood after the move,
  /// from the estimates of the last looks alone; nothing about growth until the target date.
  /// "forecast": gain in the expected number of usable colonies on the target day (boost_forecast).
  std::string basis = "strength_now";
  /// What counted as usable, with basis "forecast".
  double usableSeams = 0, usableBroodCombs = 0;
  int evidenceDays = 10;  ///< how old a look may be; a plan holds as long as its looks do
};

/// The drive to a yard (id "visit:YARD"); these options have a blank colony and hive.
[[nodiscard]] bool isVisit(const BoostOption& option);

struct BoostPlan {
  BoostProblem problem;
  std::vector<std::string> chosen;  ///< option ids, sorted
  double objective = 0;             ///< sum of net over chosen
  double bound = 0, gap = 0;        ///< proven upper bound and relative gap (0 = proven optimal)
  bool optimal = false;
  [[nodiscard]] const BoostOption* option(const std::string& id) const;
  /// The chosen option of the colony, or nullptr.
  [[nodiscard]] const BoostOption* chosenFor(const base::ColonyId& colony) const;
  /// Best other option of the colony by net, or nullptr.
  [[nodiscard]] const BoostOption* secondBest(const base::ColonyId& colony) const;
};

/// Judgements, bars and every eligible option. Fails for an unknown yard.
base::Result<BoostProblem> makeBoostProblem(const apiary::Season& season,
                                            const BoostRequest& request);
/// The same with benefits from paired what-if runs of every option, on as many threads as given:
/// the answer does not depend on their number. Cancelled: fails with "planning.cancelled".
base::Result<BoostProblem> makeForecastProblem(const apiary::Season& season,
                                               const BoostRequest& request, int threads,
                                               base::Progress& progress);
/// The problem with other pins and forbids, for another solving; ids that it does not have are
/// left out.
BoostProblem repinned(BoostProblem problem, std::vector<std::string> pins,
                      std::vector<std::string> forbids);
/// Rules that hold in every problem: each colony gets exactly one of its options. Part of the
/// JSON; solveBoost adds them itself, a maker of problems need not.
std::vector<BoostRule> standingRules(const BoostProblem& problem);
/// The exact choice, with the bound that proves it; work is limited by nodes, never by the clock,
/// so that the same problem gives the same plan everywhere. Fails when the pins cannot all hold,
/// and names them. May run on any thread: GLPK keeps its environment per thread.
base::Result<BoostPlan> solveBoost(BoostProblem problem, base::Progress& progress);
/// The slow plain twin for tests: tries all combinations (at most about 25 options; throws
/// std::length_error when there are too many to try). Nothing chosen and not optimal when no
/// combination obeys pins, forbids, limits and rules.
BoostPlan solveBoostByTrying(BoostProblem problem);

/// One row of the plan as the table of commands.md prints it.
struct BoostRow {
  base::ColonyId colony;
  base::HiveId hive;
  apiary::VerdictCode verdict{};
  const BoostOption* option = nullptr;  ///< null where nothing was to be decided
  std::vector<base::Message> why;
};
std::vector<BoostRow> boostRows(const BoostPlan& plan);

/// Steps, preconditions, return visit and cautions of a method, for the wizard and the cards.
struct MethodGuide {
  std::vector<base::Message> needs, steps, returns, cautions;
};
MethodGuide methodGuide(apiary::Method method);

/// The stored form of an accepted plan: plan row, rows and the planned tasks that they ask for
/// (ids from the source).
struct AcceptedPlan {
  apiary::Plan plan;
  std::vector<apiary::PlanRow> rows;
  std::vector<apiary::Task> tasks;
};
/// The option that a row tells of, as far as the row keeps it: no gear, hours, chances or cells.
BoostOption optionOf(const apiary::PlanRow& row);
/// `word` turns a message into the sentence that is kept as the reason (core makes no sentences).
AcceptedPlan accept(const BoostPlan& plan, base::IdSource& ids, const std::string& nowUtc,
                    const std::function<std::string(const base::Message&)>& word);

}  // namespace outyard::planning
