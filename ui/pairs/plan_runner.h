// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFutureWatcher>
#include <QObject>
#include <QThreadPool>
#include <memory>
#include <optional>
#include <vector>

#include "core/planning/boost.h"
#include "core/planning/boost_weather.h"
#include "core/planning/boost_worth.h"

namespace outyard::pairs {

/// What the weather of a yard says to one kind of work.
struct WorkWeather {
  base::YardId yard;
  apiary::Method method = apiary::Method::Leave;
  std::optional<planning::DayWeather> day;  ///< of the plan's date
  std::optional<base::Message> bar;         ///< why not on that day
  std::vector<base::Date> goodDays;         ///< that will do, from that day three weeks ahead
};

/// What came of one run, made from values alone.
struct PlanOutcome {
  std::uint64_t run = 0;
  std::uint64_t revision = 0;  ///< of the season that it was made from
  std::optional<planning::BoostPlan> plan;
  base::Failure failure;  ///< why there is no plan
  std::optional<double> greedy;
  std::optional<double> thumb;           ///< by the rule of thumb, weakest with strongest
  std::vector<std::string> droppedPins;  ///< pins that are no longer options
  std::vector<WorkWeather> weather;
};

using GearPrices = std::vector<planning::GearWorth>;

/// The last problem that was worked out: pins and forbids change only the choice, so a plan that is
/// solved again after a pin does not run the forecasts again. One thread at a time.
struct KeptProblem {
  std::uint64_t revision = 0;
  std::vector<base::YardId> yards;
  base::Date date;
  std::optional<base::Date> target;
  std::optional<planning::BoostProblem> problem;
  std::vector<WorkWeather> weather;
};

/// Works the boost plan out on a thread of its own. A new run cancels the one before; what comes of
/// a run that is no longer wanted is dropped.
class PlanRunner : public QObject {
  Q_OBJECT
 public:
  explicit PlanRunner(QObject* parent = nullptr);
  ~PlanRunner() override;
  void start(std::shared_ptr<const apiary::Season> season, planning::BoostRequest request);
  void cancel();
  /// True until the plan is there; what one more piece of gear is worth follows it.
  [[nodiscard]] bool running() const { return m_watcher != nullptr && !m_told; }

 Q_SIGNALS:
  void started();
  void progressed(int percent);
  void finished(std::shared_ptr<const outyard::pairs::PlanOutcome> outcome);
  /// After finished: gear of which one more would bring something to that plan.
  void priced(const outyard::pairs::GearPrices& prices);
  void cancelled();

 private:
  /// A run tells the plan first and then, with the plan left out, the prices.
  struct Told {
    std::shared_ptr<const PlanOutcome> outcome;
    GearPrices prices;
  };
  using Watcher = QFutureWatcher<Told>;
  void letGo();
  void tell(int index);

  QThreadPool m_pool;  ///< of one thread, which alone touches m_kept
  std::shared_ptr<KeptProblem> m_kept = std::make_shared<KeptProblem>();
  Watcher* m_watcher = nullptr;
  std::uint64_t m_run = 0;
  bool m_told = false;
};

/// The work itself, on any thread. What was kept of a run before is used where it still stands.
PlanOutcome workOutPlan(const apiary::Season& season, planning::BoostRequest request,
                        base::Progress& progress, KeptProblem* kept = nullptr);

}  // namespace outyard::pairs
