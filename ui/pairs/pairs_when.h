// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "ui/pairs/plan_runner.h"

namespace outyard::pairs {

/// Step 4 as HTML: days that are warm enough, what to load and what one more of it would bring, the
/// return visits with their days, and for each method of the plan its pairs with plan B, what it
/// needs, steps and cautions.
QString whenHtml(const PlanOutcome& outcome, const GearPrices& prices,
                 const apiary::Season& season);

}  // namespace outyard::pairs
