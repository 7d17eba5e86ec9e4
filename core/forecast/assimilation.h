// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/base/random.h"
#include "core/forecast/colony_forecast.h"
#include "core/forecast/history.h"
#include "core/forecast/kernel.h"

namespace outyard::forecast {

/// The members of one colony with what only the reading of them needs: what a reader's count makes
/// of the bees at home and of sealed brood.
struct ColonyEnsemble {
  Ensemble e;
  std::vector<float> seenShare, sealedRead;
  /// What one named reader makes of bees and of brood beside a careful count, learnt along.
  struct Reader {
    std::string name;
    std::vector<float> bees, brood;
  };
  std::vector<Reader> readers;
  explicit ColonyEnsemble(int members = 0)
      : e(members),
        seenShare(static_cast<std::size_t>(members), 1.0F),
        sealedRead(static_cast<std::size_t>(members), 1.0F) {}
};

/// A wide ensemble for a colony of which only the day, the latitude and its origin are known:
/// parameters drawn from their distributions, sizes as usual for the season.
ColonyEnsemble startEnsemble(const Figures& figures, int members, double latitudeDeg, int dayOfYear,
                             std::optional<apiary::ColonyOrigin> origin, const Look* firstLook,
                             base::Random& random);

/// The same for an established colony (wintered, bought or of unknown origin) that was seen: its
/// members live through the six weeks before the look (as far as drivers reach, day being the
/// look's), then are brought to about the size that was seen. So the share of brood to bees, which
/// a look tells, speaks of how long bees live and how much is laid.
ColonyEnsemble settledEnsemble(const Figures& figures, int members, double latitudeDeg,
                               int dayOfYear, std::optional<apiary::ColonyOrigin> origin,
                               const Look* firstLook, const Drivers& drivers, int day,
                               base::Random& random);

/// Ensemble Kalman update on the logarithms of the age groups and of the parameters, one quantity
/// at a time with perturbed readings (Evensen 2003, Ocean Dynamics 53:343), small correlations cut.
/// Gives the surprises.
std::vector<Surprise> assimilate(ColonyEnsemble& ensemble, const Look& look, base::Random& random);

/// Does an action to every member.
void act(ColonyEnsemble& ensemble, const Action& action, base::Random& random);

/// What a careful count would read of each member's bees: the foragers away at the hour of the
/// count (two in five) are not on the combs.
double seenBees(const ColonyEnsemble& ensemble, int member, double bees, double foragers);

}  // namespace outyard::forecast
