// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "tests/ui/support/desk.h"

namespace outyard::rounds {

/// Read once: the import is the slow part.
inline const apiary::Season& sample() {
  static const apiary::Season season = tests::sampleSeason();
  return season;
}

}  // namespace outyard::rounds
