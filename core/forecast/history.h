// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/apiary/state.h"
#include "core/strength/estimate.h"

namespace outyard::forecast {

/// What was seen of a colony on one day, as estimates of what a careful full count would read.
struct Look {
  base::Date date;
  std::optional<strength::Estimate> bees, sealed, open, eggs, brood, honeyKg;
  std::optional<bool> eggsSeen;
  std::optional<double> mitesPer100;
  double washBees = 0;
  std::string reader;  ///< who looked; empty = not recorded
};

/// What was done to a colony, in the terms of the model.
struct Action {
  enum class Kind {
    Boxes,    ///< nest and super cells set to `cells` and `cells2`
    Feed,     ///< kg of stores added
    Pollen,   ///< kg of pollen added
    Harvest,  ///< kg of honey taken
    BroodIn,  ///< sealed cells added (negative: given away)
    OpenIn,   ///< open cells added
    BeesIn,   ///< bees added (negative: given away); half of shaken bees fly home
    QueenGone,
    QueenIn,
    CellIn,
    Swarmed,
    Treated,  ///< amount: the chance that its vapour set laying back
    KeepShare,
    Robbed,
    LosesFieldBees,
    Warmth,  ///< factor on the cold shell: under 1 over a strong colony's warmth
    RoomIn   ///< cells added to the nest
  };
  base::Date date;
  Kind kind = Kind::Feed;
  double amount = 0, amount2 = 0;
};

/// Time that a colony stood in one stack with another, an excluder between them: bees pass.
struct SharedStack {
  base::ColonyId other;
  bool upper = false;  ///< this one stood above
  base::Date from;
  std::optional<base::Date> until;  ///< not given: it still stands
  bool takenOff = false;            ///< the upper one went to a stand of its own
};

/// A day on which bees passed between two colonies at once; both know of it.
struct Meeting {
  base::Date date;
  base::ColonyId other;
  bool united = false;  ///< one joined the other; else their stands were changed
  bool leads = false;   ///< of the two the one that stays, or that is named first
};

/// Everything known of a colony up to a day, in order of time.
struct History {
  base::ColonyId colony;
  base::YardId yard;
  base::Date start;               ///< first day of its first stay or first look
  std::optional<base::Date> end;  ///< it died, was sold or was united away
  std::optional<apiary::ColonyOrigin> origin;
  std::vector<Look> looks;
  std::vector<Action> actions;
  std::vector<SharedStack> stacks;  ///< in order of their beginning
  std::vector<Meeting> meetings;
};

/// From the journal: records dated up to and including asOf. nullopt when the colony has no stay
/// by then.
std::optional<History> historyOf(const apiary::Season& season, const base::ColonyId& colony,
                                 base::Date asOf);

}  // namespace outyard::forecast
