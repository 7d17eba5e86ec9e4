// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "core/forecast/assimilation.h"
#include "core/forecast/colony_run.h"

/// What would happen if: the same members run on with and without an action, with the same draws
/// and the same weather in both arms, so that a difference is the action's and not chance's.
namespace outyard::forecast {

/// The course of one colony from the day of its start on.
struct Course {
  base::ColonyId colony;
  std::vector<MemberDay> days;  ///< the asked days, ascending
  /// Medians and 80 % bands, as the forecast prints them.
  [[nodiscard]] std::vector<ForecastDay> bands() const;
};

/// Something that two colonies do together.
struct Joint {
  enum class Kind {
    Stack,         ///< the receiver over the donor, excluder between, until `until`
    SealedFrames,  ///< `combs` combs of sealed brood with `bees` clinging bees, donor to receiver
    NurseBees,     ///< `bees` bees shaken from the donor's brood combs before half fly home
    ChangePlaces,  ///< the field bees of both change over
    Unite  ///< the receiver's bees, brood and stores join the donor for good; its queen goes
  };
  Kind kind = Kind::Stack;
  base::Date date;                  ///< on or after the day of the start
  std::optional<base::Date> until;  ///< stacks: taken off on that day; without it, never
  double combs = 0, cells = 0;      ///< sealed frames: combs and sealed cells on them in all
  double bees = 0;
};

struct JointCourse {
  Course receiver, donor;
};

/// Colonies brought to one day by everything recorded up to it, with the weather of their yards.
/// Every run works on a copy: may be read by many threads at once.
class Starts {
 public:
  /// Colonies that do not live on ask.from are left out. Cancelled: empty.
  static Starts prepare(const apiary::Season& season, const std::vector<base::ColonyId>& colonies,
                        const ForecastAsk& ask, int threads, base::Progress& progress);
  [[nodiscard]] bool has(const base::ColonyId& colony) const;
  [[nodiscard]] base::Date from() const;  ///< the day of the start
  [[nodiscard]] base::Date to() const;    ///< the last day that a run may reach
  [[nodiscard]] bool empty() const;

  /// The colony left to itself but for these actions (dated from `from` on, in order of time).
  /// Throws std::out_of_range for a colony that it does not hold or a day outside from to to.
  [[nodiscard]] Course alone(const base::ColonyId& colony, std::span<const Action> actions,
                             std::span<const base::Date> days) const;
  /// Two colonies and what they do together; extra actions of each may be added.
  [[nodiscard]] JointCourse together(const base::ColonyId& receiver, const base::ColonyId& donor,
                                     const Joint& joint, std::span<const base::Date> days,
                                     std::span<const Action> receiverActions = {},
                                     std::span<const Action> donorActions = {}) const;

 private:
  struct Held;
  std::shared_ptr<const Held> m_held;
};

}  // namespace outyard::forecast
