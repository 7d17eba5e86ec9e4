// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/session/commands.h"
#include "ui/widgets/session_model.h"

namespace outyard::yards {

/// Straight distance in metres between two yards; nullopt when a place is not recorded.
std::optional<double> distanceBetween(const apiary::Yard& a, const apiary::Yard& b);

/// What the trade says about carrying these hives there on that day: load and lift always, flight
/// range where the way is known, heat where the day's weather is known to be warm or not known.
QString moveCaution(const widgets::SeasonHub& hub, const std::vector<session::Spot>& spots,
                    const base::YardId& to, base::Date day);

}  // namespace outyard::yards
