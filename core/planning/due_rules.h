// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <span>
#include <string_view>

#include "core/planning/due_facts.h"

namespace outyard::planning {

/// One rule: what it looks for in a colony, as what it is planned, and what it does not go with.
struct DueRule {
  std::string_view code;  ///< column `task` of the command season
  std::string_view kind;  ///< EventKind code, or "open", "look"
  double minutes;         ///< of work for one person
  /// Weather of the proposed day: 0 any, 1 lid warm and dry enough, 2 combs out.
  int weather;
  bool moves;  ///< bees, combs or boxes come in or go out: barred where foul brood is suspected
  /// Kinds of planned tasks that stand for it already, parted by blanks.
  std::string_view sameAs;
  std::string_view source;
  std::optional<DueTask> (*apply)(const ColonyFacts&, const DueFigures&);
};
std::span<const DueRule> dueRules();
const DueRule* findDueRule(std::string_view code);

/// Applies one rule and dresses its task: kind, minutes, colony, cautions.
std::optional<DueTask> applyRule(const DueRule& rule, const ColonyFacts& facts,
                                 const DueFigures& figures);

// --- The rules, each alone, for tests ---------------------------------------------------------
std::optional<DueTask> dueOpen(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueAddBox(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueNoRoom(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueStoresOut(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueFeed(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> duePaper(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueStackLook(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueSeparate(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueOwnStand(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueReverse(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueSplit(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueSwarm(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueWash(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueTreat(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueTreatOff(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueQueenCheck(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueTakeOff(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueUnwrap(const ColonyFacts&, const DueFigures&);
std::optional<DueTask> dueWrap(const ColonyFacts&, const DueFigures&);

/// Chance that a colony can be divided on a day; 0 where dueSplit would not look at it at all, too
/// early for drones or too late in the year.
double splitChance(const ColonyFacts& facts, const DueFigures& figures, base::Date day);

/// Shared by the files of the rules.
namespace due {
/// A task with window, chance and reason.
DueTask task(base::Date earliest, base::Date latest, double chance, base::Message why);
int days(double figure);
/// First day from which the chance (a function of the day's forecast) is at least `chance`, within
/// the facts' days; nullopt when it never is.
std::optional<base::Date> firstDay(const ColonyFacts& facts, double chance,
                                   double (*of)(const ColonyFacts&, const DueFigures&,
                                                const forecast::ForecastDay&),
                                   const DueFigures& figures);
bool queenSound(const ColonyFacts& facts);
}  // namespace due

}  // namespace outyard::planning
