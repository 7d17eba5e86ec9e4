// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QObject>
#include <QString>
#include <map>
#include <memory>
#include <optional>
#include <set>

#include "core/planning/due.h"
#include "core/session/session.h"

namespace outyard::widgets {

class SeasonHub;

/// What a change of the season makes out of date of what falls due.
struct Touched {
  bool all = false;   ///< every yard
  bool gear = false;  ///< what is at hand
  std::set<base::YardId> yards;
};
/// `visits`: it matters too in which visit planned work is done.
Touched touchedBy(const apiary::Season& season, const session::Notice& notice, bool visits);

/// Works out what falls due, yard by yard beside the window. What a change did not touch is kept,
/// so that an entry costs the work of its own yard. A room says which days, and what it makes of
/// the lists.
class DueRunner : public QObject {
  Q_OBJECT
 public:
  ~DueRunner() override;
  /// Works out all that does not fit the season as it stands; nothing happens when all of it does.
  void refresh();
  /// Stops; yards that are ready are kept.
  void cancel();
  [[nodiscard]] bool running() const { return m_running; }

 Q_SIGNALS:
  void progressed(int ready, int goal);
  void cancelled();
  /// What was handed out no longer fits; refresh() works it out anew.
  void outdated();

 protected:
  using List = std::shared_ptr<const planning::DueList>;
  struct Minds {
    bool visits = false;  ///< in which visit planned work is done
    bool gear = false;    ///< what is at hand
    bool forecasts =
        false;  ///< the lists keep the forecasts that they stand on: most of their size
  };

  /// `work` names what is worked out beside the window.
  DueRunner(SeasonHub& hub, QString work, Minds minds, QObject* parent);
  [[nodiscard]] SeasonHub& hub() const { return m_hub; }
  [[nodiscard]] const QString& work() const { return m_work; }
  [[nodiscard]] const std::map<base::YardId, List>& lists() const { return m_lists; }
  [[nodiscard]] int goal() const { return m_goal; }
  [[nodiscard]] base::Date from() const { return m_from.value(); }
  [[nodiscard]] base::Date to() const { return m_to.value(); }
  /// False when what was handed out does not fit the season, or nothing was.
  [[nodiscard]] bool fits() const { return m_fits; }
  void setRunning(bool running) { m_running = running; }
  void setFits(bool fits) { m_fits = fits; }
  /// Lists of other days are let go; true when there were others before.
  bool setDays(base::Date from, base::Date to);
  /// Asks for the next yard, or hands on to allReady().
  void next();

  /// Before yards are asked for: calls setDays(); false when there are no days to ask for.
  virtual bool begins() = 0;
  /// A list is there; goes on with next() unless there is something to do first.
  virtual void yardReady() { next(); }
  /// Every yard has its list; ends with setRunning(false) and setFits(true).
  virtual void allReady() = 0;
  /// Another season: what was handed out is of no use.
  virtual void forget() {}
  /// Lets go of what is worked out.
  virtual void stop();

 private:
  void askYard(const base::YardId& yard);
  void seasonChanged(const session::Notice& notice);

  SeasonHub& m_hub;
  QString m_work;
  Minds m_minds;
  std::optional<base::Date> m_from, m_to;
  std::map<base::YardId, List> m_lists;
  std::set<base::YardId> m_missing;
  int m_goal = 0;
  bool m_running = false, m_fits = false;
};

}  // namespace outyard::widgets
