// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string_view>

/// What a colony is to be of use for on the target day, in what is looked at in the yard.
namespace outyard::planning {

struct UsablePurpose {
  std::string_view key;  ///< flow supers divide orchard field
  double seams = 0;
  double broodCombs = 0;  ///< combs with any brood
  std::string_view source;
};

/// The usual ones, the shipped one first.
std::span<const UsablePurpose> usablePurposes();
/// The one with just these numbers; nullptr where the outfit has its own.
const UsablePurpose* purposeOf(double seams, double broodCombs);

}  // namespace outyard::planning
