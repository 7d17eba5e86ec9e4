// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QElapsedTimer>
#include <QObject>
#include <map>
#include <memory>
#include <optional>
#include <set>

#include "core/planning/desk_facts.h"
#include "core/session/session.h"

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::desk {

using Facts = std::shared_ptr<const planning::DeskFacts>;

/// Which yards a change of the season makes out of date for the desk.
struct Touched {
  bool all = false;
  bool sums = false;  ///< only what is summed over all yards (gear)
  std::set<base::YardId> yards;
  [[nodiscard]] bool any() const { return all || sums || !yards.empty(); }
};
Touched touchedBy(const apiary::Season& season, const session::Notice& notice);

/// Works out what the next days ask for, yard by yard beside the window. What a change did not
/// touch is kept, so that an entry costs the work of its own yard.
class DeskRunner : public QObject {
  Q_OBJECT
 public:
  static constexpr int kDays = 14;

  explicit DeskRunner(widgets::SeasonHub& hub, QObject* parent = nullptr);
  ~DeskRunner() override;
  /// Works out all that does not fit the season as it stands; nothing happens when all of it does.
  void refresh();
  /// Stops; yards that are ready are kept.
  void cancel();
  [[nodiscard]] bool running() const { return m_running; }
  /// True when the last facts handed out fit the season.
  [[nodiscard]] bool fresh() const { return m_fresh; }

 Q_SIGNALS:
  void progressed(int ready, int goal);
  /// All of it; on the first go of a large outfit also what is ready so far, before fresh().
  void finished(std::shared_ptr<const outyard::planning::DeskFacts> facts);
  void cancelled();
  /// The facts handed out no longer fit; refresh() works the new ones out.
  void outdated();

 private:
  void next();
  void askYard(const base::YardId& yard);
  void askSums(bool last);
  void seasonChanged(const session::Notice& notice);
  void stop();

  widgets::SeasonHub& m_hub;
  std::optional<base::Date> m_from;
  std::map<base::YardId, std::shared_ptr<const planning::DueList>> m_lists;
  std::set<base::YardId> m_missing;
  int m_goal = 0;
  bool m_first = false;  ///< nothing was ready before: what comes in is shown at once
  QElapsedTimer m_sinceShown;
  bool m_running = false, m_fresh = false;
};

}  // namespace outyard::desk
