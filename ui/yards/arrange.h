// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/session/commands.h"
#include "ui/widgets/session_model.h"

/// Where several hives of a drawing come to stand: turned, put in a row, spread. Whole spots for
/// one session::arrange each.
namespace outyard::yards {

/// The hives' spots as they are drawn now; hives whose place is not recorded are left out.
std::vector<session::Spot> spotsOf(const widgets::SeasonHub& hub,
                                   const std::vector<base::HiveId>& hives);
/// Entrances turned clockwise. Hives whose entrance is not recorded are left out: not recorded is
/// not north.
std::vector<session::Spot> turnedBy(std::vector<session::Spot> spots, double degrees);
/// All entrances to one direction, clockwise from north.
std::vector<session::Spot> facing(std::vector<session::Spot> spots, double degrees);

enum class RowAlong { X, Y };
/// A straight row along the drawing's x or y, through the middle of the hives.
std::vector<session::Spot> inRow(std::vector<session::Spot> spots, RowAlong along);
/// Equal gaps between the outermost two, along the side on which they lie further apart.
std::vector<session::Spot> spreadEvenly(std::vector<session::Spot> spots);

/// Takes a hive's stand away when its new place is not on that stand any more.
std::vector<session::Spot> offTheirStands(const apiary::Season& season, const base::YardId& yard,
                                          std::vector<session::Spot> spots);

}  // namespace outyard::yards
