// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QObject>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <vector>

#include "core/forecast/expected.h"
#include "core/session/session.h"
#include "core/sheet/marks.h"

namespace outyard::widgets {

class ForecastWorker;
class SeasonHub;

/// What work beside the window is given: the season as it stands, a way to stop, and it hands back
/// what is to be done in the window.
using SideResult = std::function<void()>;
using SideWork = std::function<SideResult(const apiary::Season&, base::Progress&)>;
/// How many threads such work may take: one core stays with the window.
int threadsBeside();

/// The forecasts of the open season, worked out beside the window and kept for each colony until
/// its yard changes. The worker holds a season of its own that follows every change, so that an
/// entry costs no copy of the season; what was begun before the change is dropped.
class ForecastDesk : public QObject {
  Q_OBJECT
 public:
  /// How far ahead of the working date the forecasts reach.
  static constexpr int kDaysAhead = 366;

  explicit ForecastDesk(SeasonHub& hub);
  ~ForecastDesk() override;

  /// Days from the working date on, a week apart; null while it is being worked out (then the
  /// yard is asked for) and for a colony that does not live.
  [[nodiscard]] const forecast::ColonyForecast* of(const base::YardId& yard,
                                                   const base::ColonyId& colony);
  /// All colonies of a yard that have a forecast; asks for it when there is none.
  [[nodiscard]] std::vector<const forecast::ColonyForecast*> ofYard(const base::YardId& yard);
  /// The figures of a day from the working date on.
  [[nodiscard]] std::optional<forecast::ForecastDay> on(const base::YardId& yard,
                                                        const base::ColonyId& colony,
                                                        base::Date day);
  /// What looks in the yard would find on a day from the working date on; empty before it and
  /// while it is being worked out.
  /// Good until the next call for the yard.
  [[nodiscard]] const sheet::ExpectedLooks& expectedIn(const base::YardId& yard, base::Date day);

  /// True when the yard's forecasts fit the season as it stands.
  [[nodiscard]] bool isFresh(const base::YardId& yard) const;
  /// Works this yard out before the others, unless it is fresh.
  void want(const base::YardId& yard);
  /// Works every yard out, one after the other.
  void wantAll();
  /// Stops; what is finished is kept, what is not is asked for again when it is wanted.
  void cancel();
  [[nodiscard]] bool running() const { return !m_pending.empty(); }
  /// Yards to be worked out in this go, and how many of them are ready.
  [[nodiscard]] int goal() const { return m_goal; }
  [[nodiscard]] int ready() const { return m_goal - static_cast<int>(m_pending.size()); }

  /// Other work on the worker's season (the course of one hive, a what-if run), before any yard.
  /// A new work under the same name, a change of the season or abandon() drops what came of the
  /// one before.
  void beside(const QString& name, SideWork work);
  void abandon(const QString& name);

 Q_SIGNALS:
  /// The forecasts of a yard are new, or gone.
  void updated(const outyard::base::YardId& yard);
  /// Of the yards that were asked for: how far it is, 0 to 100.
  void progressed(int percent);
  /// Nothing is left to do; after cancel() too.
  void settled();

 private:
  friend class ForecastWorker;
  struct YardResult {
    std::uint64_t serial = 0;
    std::vector<forecast::ColonyForecast> colonies;
    std::optional<base::Date> looksOn;  ///< the day of `looks`
    sheet::ExpectedLooks looks;
  };
  void takeYard(const base::YardId& yard, std::uint64_t serial, base::Date from,
                std::vector<forecast::ColonyForecast> colonies);
  void takeSide(const QString& name, std::uint64_t serial, const SideResult& result);
  void takeProgress(double ofYard);
  void seasonReplaced();
  void seasonChanged(const session::Notice& notice);
  void outdate(const base::YardId& yard, const std::vector<base::HiveId>* touched);
  [[nodiscard]] std::optional<std::set<base::ColonyId>> onlyOf(const base::YardId& yard) const;
  void ask(const base::YardId& yard, bool first);

  SeasonHub& m_hub;
  std::unique_ptr<ForecastWorker> m_worker;
  base::Date m_from;  ///< working date of what is kept
  std::map<base::YardId, std::uint64_t> m_serial;
  std::map<base::YardId, YardResult> m_results;
  std::map<QString, std::uint64_t> m_sides;
  std::set<base::YardId> m_pending;
  /// Colonies to be worked out anew in a yard whose others still fit.
  std::map<base::YardId, std::set<base::ColonyId>> m_touched;
  std::uint64_t m_next = 0;
  int m_goal = 0;
};

}  // namespace outyard::widgets
