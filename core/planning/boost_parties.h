// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "core/apiary/state.h"
#include "core/planning/boost.h"
#include "core/planning/boost_figures.h"
#include "core/planning/boost_weather.h"

/// Who may receive and who may give, before any pairing.
namespace outyard::planning {

/// A colony with all that the pairing asks about it.
struct Party {
  const strength::Judgement* judgement = nullptr;
  base::YardId yard;
  std::string frameType;  ///< of its lowest chamber; empty when not recorded
  int chambers = 0;       ///< 0 when its boxes are not recorded
  bool shares = false;    ///< lives in one hive with another colony
  bool early = false;     ///< up to the end of April; half a year later in the south
  const apiary::Inspection* look = nullptr;
  [[nodiscard]] const std::string& hive() const { return judgement->hive.str(); }
  [[nodiscard]] const strength::StrengthEstimate& seen() const { return *judgement->strength; }
  [[nodiscard]] double seams() const { return judgement->strength->seams.value_or(0); }
};

struct Donor {
  Party party;
  DonorLimit limit;
  bool givesShaken = false, unites = false;
};

struct Parties {
  std::vector<Party> receivers;  ///< small but sound
  std::vector<Party> queenAtFault;
  std::vector<Donor> donors;
  std::map<base::YardId, YardWeather> weather;
};

/// Judges every colony of the yards; fills judgements, barred, donorNotes, donors and yardOf of
/// the problem. The parties point into problem.judgements.
Parties findParties(const apiary::Season& season, BoostProblem& problem,
                    const BoostFigures& figures);

/// True when the boxes of both frame types stand on each other without a gap.
bool boxesFit(const std::string& a, const std::string& b);

}  // namespace outyard::planning
