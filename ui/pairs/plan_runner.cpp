// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/plan_runner.h"

#include <QPromise>
#include <algorithm>
#include <cmath>
#include <thread>

#include "ui/pairs/greedy.h"

namespace outyard::pairs {
namespace {

constexpr int kDaysAhead = 21;

/// Hands a promise's progress and cancellation to core.
template <class T>
class PromiseProgress : public base::Progress {
 public:
  explicit PromiseProgress(QPromise<T>& promise) : m_promise(promise) {}
  void report(double fraction) override {
    m_promise.setProgressValue(static_cast<int>(std::lround(fraction * 100)));
  }
  [[nodiscard]] bool cancelled() const override { return m_promise.isCanceled(); }

 private:
  QPromise<T>& m_promise;
};

std::vector<WorkWeather> weatherOf(const apiary::Season& season,
                                   const planning::BoostRequest& request) {
  std::vector<WorkWeather> out;
  std::vector<base::Message> notes;
  const auto figures = planning::boostFigures(season, notes);
  for (const auto& yard : request.yards) {
    const planning::YardWeather weather(season, yard);
    for (const auto method : {apiary::Method::Stack, apiary::Method::SealedFrames,
                              apiary::Method::NurseBees, apiary::Method::Room, apiary::Method::Feed,
                              apiary::Method::ChangePlaces, apiary::Method::Unite}) {
      WorkWeather w;
      w.yard = yard;
      w.method = method;
      w.day = weather.on(request.date);
      w.bar = planning::weatherBar(weather, method, request.date, figures);
      for (int n = 0; n <= kDaysAhead; ++n) {
        const auto day = request.date.plusDays(n);
        if (weather.on(day) && !planning::weatherBar(weather, method, day, figures)) {
          w.goodDays.push_back(day);
        }
      }
      out.push_back(std::move(w));
    }
  }
  return out;
}

}  // namespace

PlanOutcome workOutPlan(const apiary::Season& season, planning::BoostRequest request,
                        base::Progress& progress, KeptProblem* kept) {
  PlanOutcome outcome;
  outcome.revision = season.revision();
  const bool stillGood = kept && kept->problem && kept->revision == season.revision() &&
                         kept->yards == request.yards && kept->date == request.date &&
                         kept->target == request.target;
  const int threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
  auto problem = stillGood ? base::Result<planning::BoostProblem>(*kept->problem)
                           : planning::makeForecastProblem(season, request, threads, progress);
  if (!problem) {
    outcome.failure = problem.failure();
    return outcome;
  }
  if (kept && !stillGood) {
    *kept = {season.revision(), request.yards, request.date,
             request.target,    *problem,      weatherOf(season, request)};
  }
  problem->request.pins = request.pins;
  problem->request.forbids = request.forbids;
  // A look or a record since may have taken an option away that was pinned before.
  const auto stands = [&](const std::string& id) {
    return std::any_of(problem->options.begin(), problem->options.end(),
                       [&](const auto& o) { return o.id == id; });
  };
  auto& pins = problem->request.pins;
  for (const auto& pin : pins) {
    if (!stands(pin)) outcome.droppedPins.push_back(pin);
  }
  std::erase_if(pins, [&](const auto& id) { return !stands(id); });
  std::erase_if(problem->request.forbids, [&](const auto& id) { return !stands(id); });
  if (progress.cancelled()) return outcome;
  const planning::BoostProblem copy = *problem;
  auto plan = planning::solveBoost(std::move(*problem), progress);
  if (!plan) {
    outcome.failure = plan.failure();
    return outcome;
  }
  outcome.plan = std::move(*plan);
  if (progress.cancelled()) return outcome;
  if (const auto greedy = greedyChoice(copy)) outcome.greedy = greedy->objective;
  if (const auto thumb = weakestWithStrongest(copy)) outcome.thumb = thumb->objective;
  outcome.weather = kept ? kept->weather : weatherOf(season, request);
  return outcome;
}

PlanRunner::PlanRunner(QObject* parent) : QObject(parent) {
  m_pool.setMaxThreadCount(1);
}

PlanRunner::~PlanRunner() {
  letGo();
  m_pool.waitForDone();
}

void PlanRunner::letGo() {
  m_told = false;
  if (!m_watcher) return;
  m_watcher->disconnect(this);
  m_watcher->cancel();
  m_watcher->deleteLater();
  m_watcher = nullptr;
}

void PlanRunner::cancel() {
  if (!m_watcher) return;
  const bool wanted = !m_told;
  letGo();
  if (wanted) Q_EMIT cancelled();
}

void PlanRunner::tell(int index) {
  if (!m_watcher) return;
  const Told told = m_watcher->resultAt(index);
  if (told.outcome) {
    m_told = true;
    Q_EMIT finished(told.outcome);
  } else {
    Q_EMIT priced(told.prices);
  }
}

void PlanRunner::start(std::shared_ptr<const apiary::Season> season,
                       planning::BoostRequest request) {
  letGo();
  ++m_run;
  auto promise = std::make_shared<QPromise<Told>>();
  promise->setProgressRange(0, 100);
  m_watcher = new Watcher(this);
  connect(m_watcher, &Watcher::progressValueChanged, this, [this](int percent) {
    if (!m_told) Q_EMIT progressed(percent);
  });
  connect(m_watcher, &Watcher::resultReadyAt, this, &PlanRunner::tell);
  connect(m_watcher, &Watcher::finished, this, [this] {
    Watcher* done = m_watcher;
    const bool told = m_told;
    m_watcher = nullptr;
    m_told = false;
    done->deleteLater();
    done->waitForFinished();
    if (!told) Q_EMIT cancelled();
  });
  promise->start();
  m_watcher->setFuture(promise->future());
  m_pool.start([promise, run = m_run, season = std::move(season), request = std::move(request),
                kept = m_kept] {
    try {
      if (!promise->isCanceled()) {
        PromiseProgress<Told> progress(*promise);
        auto outcome =
            std::make_shared<PlanOutcome>(workOutPlan(*season, request, progress, kept.get()));
        outcome->run = run;
        const std::shared_ptr<const PlanOutcome> made = std::move(outcome);
        if (!promise->isCanceled()) promise->addResult(Told{made, {}});
        if (made->plan && !promise->isCanceled()) {
          auto prices = planning::worthOfOneMore(*made->plan, progress);
          if (!promise->isCanceled()) promise->addResult(Told{nullptr, std::move(prices)});
        }
      }
    } catch (...) {
      promise->setException(std::current_exception());  // a bug: thrown again in the window
    }
    promise->finish();
  });
  Q_EMIT started();
}

}  // namespace outyard::pairs
