// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QObject>
#include <map>
#include <memory>
#include <optional>
#include <set>

#include "core/session/session.h"
#include "ui/rounds/round_board.h"

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::rounds {

/// Works out what falls due in the days of the board, yard by yard beside the window, and the
/// rounds proposed for it. What a change did not touch is kept.
class RoundsRunner : public QObject {
  Q_OBJECT
 public:
  explicit RoundsRunner(widgets::SeasonHub& hub, QObject* parent = nullptr);
  ~RoundsRunner() override;
  /// Days before the working date are not asked for.
  void setDays(base::Date from, base::Date to);
  void refresh();
  /// Proposes rounds once everything due is worked out.
  void propose();
  void cancel();
  [[nodiscard]] bool running() const { return m_running; }
  [[nodiscard]] bool proposing() const { return m_propose; }
  [[nodiscard]] bool fresh() const { return m_due != nullptr && !m_stale; }
  /// The last one that was worked out for these days; null before the first.
  [[nodiscard]] const planning::DueList* due() const { return m_due.get(); }

 Q_SIGNALS:
  void progressed(int ready, int goal);
  void finished();
  void proposed(std::shared_ptr<outyard::rounds::Proposal> proposal);
  void cancelled();
  /// refresh() works the new facts out.
  void outdated();

 private:
  void next();
  void askYard(const base::YardId& yard);
  void askSum();
  void askProposal();
  void seasonChanged(const session::Notice& notice);
  void stop();

  widgets::SeasonHub& m_hub;
  std::optional<base::Date> m_from, m_to;
  std::map<base::YardId, Due> m_lists;
  std::set<base::YardId> m_missing;
  Due m_due;
  int m_goal = 0;
  bool m_running = false, m_stale = true, m_propose = false;
};

}  // namespace outyard::rounds
