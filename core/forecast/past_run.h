// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <deque>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "core/forecast/colony_run.h"
#include "core/forecast/pair_moves.h"

/// Colonies brought through what was seen of them and done to them. Those that stood in one stack
/// are brought together, day by day, by the model of two colonies in one stack.
namespace outyard::forecast {

/// One colony on its way from its start; at rest before the day it was brought to.
class PastRun {
 public:
  PastRun(const History& history, double latitudeDeg, const YardWeather& weather,
          const Figures& figures, const ForecastAsk& ask, ColonyForecast& said);
  [[nodiscard]] base::Date begin() const { return m_begin; }
  [[nodiscard]] const ColonyEnsemble& ensemble() const { return m_ce; }
  ColonyEnsemble& ensemble() { return m_ce; }
  [[nodiscard]] const base::ColonyId& colony() const { return m_history.colony; }
  /// Everything dated up to and including the day is taken in, then it lives up to the day.
  void to(base::Date day);

 private:
  void writePast(base::Date before);
  void takeIn(const Look& look);

  const History& m_history;
  const YardWeather& m_weather;
  const ForecastAsk& m_ask;
  ColonyForecast& m_said;
  base::Random m_random;
  base::Date m_begin, m_now;
  std::optional<base::Date> m_lastLook, m_pastDay;
  ColonyEnsemble m_ce;
  std::size_t m_nextLook = 0, m_nextAction = 0;
};

/// Colonies that stood in one stack, were united or changed stands, with each other's bees.
class PastGroup {
 public:
  /// runs and histories in the same order; stacks and meetings whose partner is not among them do
  /// nothing.
  PastGroup(std::span<PastRun* const> runs, std::span<const History> histories,
            const ForecastAsk& ask);
  /// Brings all to the day. Days may only grow; a stack that is not ended goes on.
  void to(base::Date day);

 private:
  struct Stack {
    PastRun *upper, *lower;
    base::Date from;
    std::optional<base::Date> until;
    bool takenOff;
    StackDraws draws;
  };
  struct Met {
    PastRun *one, *other;
    Meeting what;
    std::uint64_t stream;
  };
  void endAndBegin();
  void meet(const Met& met);
  /// The next day on which something begins; nothing is left when it is not given.
  [[nodiscard]] std::optional<base::Date> next() const;

  std::vector<PastRun*> m_runs;
  std::deque<Stack> m_waiting;
  std::deque<Met> m_meetings;
  std::vector<Stack> m_standing;
  base::Date m_day;
};

/// The history of a colony and of all that it shared bees with since the weather begins, in
/// order of colony; each with its yard. Empty when the colony has no stay by then.
std::vector<History> linkedHistories(const apiary::Season& season, const base::ColonyId& colony,
                                     base::Date asOf);

/// Histories that must be brought on together, with what they share.
struct LinkedJob {
  std::vector<History> histories;
  std::vector<double> latitudes;
  /// Where each one's result goes; none for one that only takes part.
  std::vector<std::optional<std::size_t>> slots;
};
/// One job for each colony, or for those that shared a stack. Colonies that do not live on
/// `ask.from` get no slot; hives are those on that day, in order of slot.
struct LinkedJobs {
  std::vector<LinkedJob> jobs;
  std::vector<base::ColonyId> colonies;  ///< of each slot
  std::vector<base::HiveId> hives;       ///< of each slot
  std::map<base::YardId, YardWeather> weather;
};
LinkedJobs linkedJobs(const apiary::Season& season, const std::vector<base::ColonyId>& colonies,
                      const ForecastAsk& ask, const Figures& figures);

/// The runs of a job, ready to be brought on; `said` must outlive them.
struct LinkedRuns {
  LinkedRuns(const LinkedJob& job, const std::map<base::YardId, YardWeather>& weather,
             const Figures& figures, const ForecastAsk& ask, std::vector<ColonyForecast>& said);
  std::deque<PastRun> runs;
  std::unique_ptr<PastGroup> group;
};

}  // namespace outyard::forecast
