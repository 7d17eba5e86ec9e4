// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/planning/boost.h"
#include "core/planning/boost_gain.h"
#include "core/planning/boost_parties.h"
#include "core/planning/method_table.h"

namespace outyard::planning {

/// A name as part of an option id: the colon that parts the fields is written %3A.
std::string idPart(const std::string& name);
/// Sets benefit, costs (thousands of bees, to 1e-6) and net so that the sum is exact.
void setNet(BoostOption& option, double benefit, double donorCost, double otherCost);

/// Makes the options of one colony after another, with the reasons why others are not there.
class OptionMaker {
 public:
  OptionMaker(const apiary::Season& season, BoostProblem& problem, const Parties& parties,
              const BoostFigures& figures);
  void begin(const Party& p);
  /// Room and feed.
  void alone(const Party& p);
  /// True when at least one option came of it.
  bool withDonors(const Party& p, const std::vector<const Donor*>& donors, bool unite);
  void leave(const Party& p, bool nobodyGives);

 private:
  using Method = apiary::Method;
  void add(const Party& p, Method method, const Donor* donor, int k, const Move& move,
           std::vector<base::Message> extra);
  void stack(const Party& p, const Donor& d);
  void sealed(const Party& p, const Donor& d);
  void nurse(const Party& p, const Donor& d);
  void swap(const Party& p, const Donor& d);
  void uniteWith(const Party& p, const Donor& d);
  /// False when the weather stands against it (the reason is kept).
  bool weatherAllows(const Party& p, Method method);
  void because(base::Message why);
  [[nodiscard]] bool layingSeen(const Party& p) const;
  [[nodiscard]] bool flowOn(const Party& p) const;
  [[nodiscard]] double cellsPerSide(const std::string& frameType) const;
  void cautions(BoostOption& o, const Party& p, const Donor* d) const;

  const apiary::Season& m_season;
  BoostProblem& m_problem;
  const Parties& m_parties;
  const BoostFigures& m_figures;
  std::vector<base::Message> m_because;  ///< for the colony begun last
  std::map<std::pair<base::YardId, Method>, std::optional<base::Message>> m_weather;
};

}  // namespace outyard::planning
