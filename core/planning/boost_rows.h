// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/planning/boost.h"

namespace outyard::planning {

/// What an option does, in a few words: "set over TR-05".
base::Message optionWords(const BoostOption& option);
/// Why this option and no other: its own reasons, the second best with its distance, the donor to
/// ask if the first will not do, "about equal" where the estimates cannot tell two apart.
std::vector<base::Message> reasonsFor(const BoostPlan& plan, const BoostOption& option);

}  // namespace outyard::planning
