// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/forecast_worker.h"

#include <QMetaObject>
#include <algorithm>
#include <chrono>
#include <exception>

namespace outyard::widgets {
namespace {

using Flag = std::shared_ptr<std::atomic<bool>>;

/// Stops when the flag is set; hands progress on a few times a second.
class WorkProgress : public base::Progress {
 public:
  WorkProgress(Flag stop, std::function<void(double)> tell)
      : m_stop(std::move(stop)), m_tell(std::move(tell)) {}
  void report(double fraction) override {
    const auto now = std::chrono::steady_clock::now();
    if (now - m_last < std::chrono::milliseconds(100)) return;
    m_last = now;
    m_tell(fraction);
  }
  [[nodiscard]] bool cancelled() const override { return m_stop->load(); }

 private:
  Flag m_stop;
  std::function<void(double)> m_tell;
  std::chrono::steady_clock::time_point m_last = std::chrono::steady_clock::now();
};

}  // namespace

int threadsBeside() {
  constexpr int kMost = 8;
  return std::clamp(static_cast<int>(std::thread::hardware_concurrency()) - 1, 1, kMost);
}

ForecastWorker::~ForecastWorker() {
  {
    const std::lock_guard lock(m_mutex);
    m_stop = true;
    if (m_current.stop) m_current.stop->store(true);
  }
  m_wake.notify_all();
  if (m_thread.joinable()) m_thread.join();
}

void ForecastWorker::start() {
  if (!m_thread.joinable()) m_thread = std::thread([this] { run(); });
  m_wake.notify_all();
}

void ForecastWorker::replaceSeason(apiary::Season season) {
  {
    const std::lock_guard lock(m_mutex);
    m_inbox.clear();
    m_inbox.emplace_back(std::move(season));
    m_hasSeason = true;
  }
  start();
}

void ForecastWorker::forgetSeason() {
  dropYards();
  dropSides();
  const std::lock_guard lock(m_mutex);
  m_inbox.clear();
  m_hasSeason = false;
}

void ForecastWorker::applyChanges(apiary::ChangeList changes) {
  const std::lock_guard lock(m_mutex);
  m_inbox.emplace_back(std::move(changes));
}

void ForecastWorker::addYard(YardJob job, bool first) {
  {
    const std::lock_guard lock(m_mutex);
    std::erase_if(m_yards, [&](const YardJob& j) { return j.yard == job.yard; });
    if (first) {
      m_yards.push_front(std::move(job));
    } else {
      m_yards.push_back(std::move(job));
    }
  }
  start();
}

void ForecastWorker::dropYard(const base::YardId& yard) {
  const std::lock_guard lock(m_mutex);
  std::erase_if(m_yards, [&](const YardJob& j) { return j.yard == yard; });
  if (m_current.yard == yard) m_current.stop->store(true);
}

void ForecastWorker::dropYards() {
  const std::lock_guard lock(m_mutex);
  m_yards.clear();
  if (m_current.yard) m_current.stop->store(true);
}

void ForecastWorker::addSide(const QString& name, std::uint64_t serial, SideWork work) {
  dropSide(name);
  {
    const std::lock_guard lock(m_mutex);
    m_sides.push_back({name, serial, std::move(work)});
  }
  start();
}

void ForecastWorker::dropSide(const QString& name) {
  const std::lock_guard lock(m_mutex);
  std::erase_if(m_sides, [&](const SideJob& j) { return j.name == name; });
  if (!m_current.side.isEmpty() && m_current.side == name) m_current.stop->store(true);
}

void ForecastWorker::dropSides() {
  const std::lock_guard lock(m_mutex);
  m_sides.clear();
  if (!m_current.side.isEmpty()) m_current.stop->store(true);
}

template <class F>
void ForecastWorker::post(F inWindow) {
  // The desk ends this thread before it goes; what is still on its way then is let go by Qt.
  QMetaObject::invokeMethod(&m_desk, std::move(inWindow), Qt::QueuedConnection);
}

void ForecastWorker::run() {
  for (;;) {
    std::deque<Inbox> inbox;
    std::optional<YardJob> yard;
    std::optional<SideJob> side;
    Flag stop;
    {
      std::unique_lock lock(m_mutex);
      m_wake.wait(lock, [this] { return m_stop || !m_yards.empty() || !m_sides.empty(); });
      if (m_stop) return;
      inbox.swap(m_inbox);
      stop = std::make_shared<std::atomic<bool>>(false);
      if (!m_sides.empty()) {
        side = std::move(m_sides.front());
        m_sides.pop_front();
        m_current = {std::nullopt, side->name, stop};
      } else {
        yard = std::move(m_yards.front());
        m_yards.pop_front();
        m_current = {yard->yard, {}, stop};
      }
    }
    try {
      takeIn(std::move(inbox));
      if (side) {
        work(*side, stop);
      } else {
        work(*yard, stop);
      }
    } catch (...) {
      // A bug: thrown again in the window.
      post([error = std::current_exception()] { std::rethrow_exception(error); });
    }
    const std::lock_guard lock(m_mutex);
    m_current = {};
  }
}

void ForecastWorker::takeIn(std::deque<Inbox> inbox) {
  for (Inbox& entry : inbox) {
    if (auto* season = std::get_if<apiary::Season>(&entry)) {
      m_season = std::move(*season);
    } else {
      m_season.apply(std::get<apiary::ChangeList>(entry));
    }
  }
}

void ForecastWorker::work(const YardJob& job, const Flag& stop) {
  WorkProgress progress(stop,
                        [this](double f) { post([desk = &m_desk, f] { desk->takeProgress(f); }); });
  forecast::ForecastAsk ask;
  ask.from = job.from;
  ask.to = job.from.plusDays(ForecastDesk::kDaysAhead);
  auto wanted = forecast::coloniesIn(m_season, job.yard, job.from);
  if (job.only) std::erase_if(wanted, [&](const auto& c) { return !job.only->contains(c); });
  auto colonies = forecast::forecastColonies(m_season, wanted, ask, threadsBeside(), progress);
  if (stop->load()) return;
  post([desk = &m_desk, job, found = std::move(colonies)]() mutable {
    desk->takeYard(job.yard, job.serial, job.from, std::move(found));
  });
}

void ForecastWorker::work(const SideJob& job, const Flag& stop) {
  WorkProgress progress(stop, [](double) {});
  auto result = job.work(m_season, progress);
  if (stop->load() || !result) return;
  post([desk = &m_desk, name = job.name, serial = job.serial, result = std::move(result)] {
    desk->takeSide(name, serial, result);
  });
}

}  // namespace outyard::widgets
