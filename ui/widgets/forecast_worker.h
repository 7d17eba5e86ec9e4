// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <atomic>
#include <condition_variable>
#include <deque>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <thread>
#include <variant>
#include <vector>

#include "ui/widgets/forecast_desk.h"

namespace outyard::widgets {

/// The thread behind the forecast desk. Its season is touched by nobody else: it gets the changes
/// of the window's season in order and applies them between two pieces of work.
class ForecastWorker {
 public:
  explicit ForecastWorker(ForecastDesk& desk) : m_desk(desk) {}
  ~ForecastWorker();
  ForecastWorker(const ForecastWorker&) = delete;
  ForecastWorker& operator=(const ForecastWorker&) = delete;

  [[nodiscard]] bool hasSeason() const { return m_hasSeason; }
  void replaceSeason(apiary::Season season);
  /// Lets the season go and everything that was to be worked out from it.
  void forgetSeason();
  void applyChanges(apiary::ChangeList changes);

  struct YardJob {
    base::YardId yard;
    std::uint64_t serial = 0;
    base::Date from;
    std::optional<std::set<base::ColonyId>> only;  ///< else all colonies of the yard
  };
  void addYard(YardJob job, bool first);
  /// Takes the yard's job out, also while it runs.
  void dropYard(const base::YardId& yard);
  void dropYards();
  void addSide(const QString& name, std::uint64_t serial, SideWork work);
  void dropSide(const QString& name);
  void dropSides();

 private:
  struct SideJob {
    QString name;
    std::uint64_t serial = 0;
    SideWork work;
  };
  using Inbox = std::variant<apiary::Season, apiary::ChangeList>;
  struct Current {
    std::optional<base::YardId> yard;
    QString side;
    std::shared_ptr<std::atomic<bool>> stop;
  };

  void start();
  void run();
  void takeIn(std::deque<Inbox> inbox);
  void work(const YardJob& job, const std::shared_ptr<std::atomic<bool>>& stop);
  void work(const SideJob& job, const std::shared_ptr<std::atomic<bool>>& stop);
  template <class F>
  void post(F inWindow);

  ForecastDesk& m_desk;
  apiary::Season m_season;  ///< the thread's own
  bool m_hasSeason = false;
  std::mutex m_mutex;
  std::condition_variable m_wake;
  std::deque<Inbox> m_inbox;
  std::deque<YardJob> m_yards;
  std::deque<SideJob> m_sides;
  Current m_current;
  bool m_stop = false;
  std::thread m_thread;
};

}  // namespace outyard::widgets
