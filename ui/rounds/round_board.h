// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <vector>

#include "core/apiary/season.h"
#include "core/planning/due.h"
#include "core/planning/rounds.h"
#include "ui/widgets/day_words.h"

/// The days of a fortnight with their visits, as plain values: what stands in the season, and over
/// it what is proposed.
namespace outyard::rounds {

using Due = std::shared_ptr<const planning::DueList>;

using widgets::Warmth;
/// Null when nothing is known of the day.
const planning::YardDay* dayOf(const planning::DueList& due, const base::YardId& yard,
                               base::Date date);
Warmth warmthOf(const planning::YardDay* day);

/// Visits that were proposed and are not accepted yet.
struct Proposal {
  Due due;                    ///< that the plan's indices mean
  planning::RoundsPlan plan;  ///< days that were accepted are taken out
};

struct BoardStop {
  base::YardId yard;
  std::optional<base::VisitId> visit;  ///< none: proposed as a whole
  std::optional<base::TimeOfDay> time;
  std::string notes;
  planning::RoundStop stop;           ///< work that is open, indices into RoundBoard::due
  std::set<std::size_t> fresh;        ///< those of them that are proposed
  std::vector<base::TaskId> done;     ///< ticked off at this visit
  std::vector<std::size_t> alsoDue;   ///< at the yard, in no visit, and the day fits its window
  std::vector<std::size_t> otherDue;  ///< at the yard, in no visit, on other days
  [[nodiscard]] bool proposed() const { return !visit || !fresh.empty(); }
};
struct BoardDay {
  planning::RoundDay day;        ///< order, drive, hours and load; its stops are in `stops`
  std::vector<BoardStop> stops;  ///< in the order of driving
  [[nodiscard]] base::Date date() const { return day.date; }
  [[nodiscard]] bool proposed() const;
};
struct RoundBoard {
  planning::DueList due;
  planning::RoundFigures figures;
  std::vector<BoardDay> days;
  [[nodiscard]] const BoardDay* at(base::Date date) const;
  [[nodiscard]] const BoardStop* stop(base::Date date, const base::YardId& yard) const;
  [[nodiscard]] std::size_t visits() const;
};

/// `due` may be null while it is being worked out; the visits of the season stand all the same.
RoundBoard makeBoard(const apiary::Season& season, const planning::DueList* due,
                     const Proposal* proposal, base::Date from, base::Date to);
/// Moves a proposed stop to another day of the plan, which is arranged anew.
void moveProposed(Proposal& proposal, const apiary::Season& season,
                  const planning::RoundFigures& figures, const base::YardId& yard, base::Date from,
                  base::Date to);
/// A planned task as work that falls due, where the list of what falls due does not reach.
planning::DueTask asDue(const apiary::Season& season, const apiary::Task& task, base::Date day);

}  // namespace outyard::rounds
