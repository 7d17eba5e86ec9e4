// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/colony_choice.h"

#include "app/season_access.h"
#include "app/verb_options.h"

namespace outyard::app {

void describeColonyChoice(QCommandLineParser& parser) {
  option(parser, "yard", "Only the hives of this yard.", "Y");
  option(parser, "hive", "Only this hive.", "H");
}

std::optional<std::vector<apiary::HiveState>> chosenHives(const QCommandLineParser& parser,
                                                          const apiary::Season& season,
                                                          base::Date day, Streams streams) {
  std::optional<base::YardId> yard;
  if (parser.isSet(QStringLiteral("yard"))) {
    yard = base::YardId(parser.value(QStringLiteral("yard")).toStdString());
    if (!season.yard(*yard)) {
      complain(streams, base::fail(base::message("check.unknown_yard", yard->str())));
      return std::nullopt;
    }
  }
  std::vector<apiary::HiveState> hives;
  if (parser.isSet(QStringLiteral("hive"))) {
    const base::HiveId hive(parser.value(QStringLiteral("hive")).toStdString());
    if (!season.hive(hive)) {
      complain(streams, base::fail(base::message("check.unknown_hive", hive.str())));
      return std::nullopt;
    }
    auto state = apiary::hiveOn(season, hive, day);
    if (!yard || state.yard == *yard) hives.push_back(std::move(state));
    return hives;
  }
  for (const auto& [key, y] : season.table<apiary::Yard>()) {
    if (yard && y.yard != *yard) continue;
    for (auto& h : apiary::yardOn(season, y.yard, day)) hives.push_back(std::move(h));
  }
  return hives;
}

}  // namespace outyard::app
