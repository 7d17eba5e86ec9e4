// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/verbs.h"

namespace outyard::app {

Verb newVerb();
Verb importVerb();
Verb exportVerb();
Verb estimateVerb();
Verb forecastVerb();
Verb boostVerb();
Verb seasonVerb();
Verb sheetVerb();
Verb checkVerb();

}  // namespace outyard::app
