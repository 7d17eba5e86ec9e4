// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "app/verbs.h"
#include "core/apiary/state.h"

namespace outyard::app {

/// Adds --yard and --hive.
void describeColonyChoice(QCommandLineParser& parser);
/// The hives that --yard, --hive or neither means on the day; nullopt after saying on err that a
/// yard or hive is unknown.
std::optional<std::vector<apiary::HiveState>> chosenHives(const QCommandLineParser& parser,
                                                          const apiary::Season& season,
                                                          base::Date day, Streams streams);

}  // namespace outyard::app
