// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/usable_purpose.h"

#include <array>
#include <cmath>

namespace outyard::planning {
namespace {

constexpr std::array kPurposes{
    UsablePurpose{"flow", 4.5, 4,
                  "our assumption: about the 12,000 living bees of a colony of use for a flow"},
    UsablePurpose{"supers", 7, 5, "common practice, no source: bees on 7 of 10 frames"},
    UsablePurpose{"divide", 8, 6, "common practice, no source"},
    UsablePurpose{"orchard", 4, 5,
                  "US grade A as restated by htfbw.com: 600 square inches of brood, 14,160 cells; "
                  "bees on four frames from memory"},
    UsablePurpose{"field", 6, 8.5,
                  "US grade A as restated by htfbw.com: 1,000 square inches of brood, 23,600 "
                  "cells; bees on six frames from memory"},
};

}  // namespace

std::span<const UsablePurpose> usablePurposes() {
  return kPurposes;
}

const UsablePurpose* purposeOf(double seams, double broodCombs) {
  for (const UsablePurpose& p : kPurposes) {
    if (std::abs(p.seams - seams) < 1e-9 && std::abs(p.broodCombs - broodCombs) < 1e-9) return &p;
  }
  return nullptr;
}

}  // namespace outyard::planning
