// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/session/commands.h"
#include "core/strength/estimate.h"
#include "ui/adapt/units.h"

namespace outyard::hive {

/// "seams", "full frames": what a number was made from.
QString basisText(strength::Basis basis);
/// "seams say 9,000, full frames say 14,000"; empty when there was only one way of looking.
QString looksText(const strength::StrengthEstimate& estimate);
/// True when two ways of looking do not overlap in their central 80 %: look again.
bool looksDisagree(const strength::StrengthEstimate& estimate);
/// "12 kg (9–15)".
QString storesText(const strength::Estimate& honeyKg, const adapt::Units& units);

/// What stands behind the figures: laying by each stage and whether the nest grows, what of a
/// weighed hive is no stores, a reader's habit that was taken out, a count in flying hours.
/// Sentences with a space between; empty when there is nothing to say.
QString workingsText(const strength::StrengthEstimate& estimate, const adapt::Units& units);

/// Bees, brood and stores with their bands in one line; empty when nothing was measured.
QString amountsText(const strength::StrengthEstimate& estimate, const adapt::Units& units);

/// A season of its own with only what an estimate of one hive needs, so that a draft can be
/// estimated while it is typed without copying everything.
apiary::Season seasonOfHive(const apiary::Season& season, const base::HiveId& hive);
/// The estimate of an inspection that is not recorded yet, in a season made by seasonOfHive.
strength::StrengthEstimate estimateDraft(const apiary::Season& ofHive,
                                         const session::InspectionEntry& entry);

}  // namespace outyard::hive
