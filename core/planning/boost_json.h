// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <string>

#include "core/planning/boost.h"

namespace outyard::planning {

/// The plan as one JSON object with everything that another solver needs to find the same optimum:
/// maximise the sum of net over 0/1 variables subject to limits, rules, pins and forbids. A gear
/// item or donor that the limits do not name is unlimited. `word` makes sentences of reasons.
std::string boostJson(const BoostPlan& plan,
                      const std::function<std::string(const base::Message&)>& word);

}  // namespace outyard::planning
