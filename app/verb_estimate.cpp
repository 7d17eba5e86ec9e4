// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "app/season_access.h"
#include "app/table_out.h"
#include "app/verb_list.h"
#include "app/verb_options.h"
#include "core/strength/estimate.h"
#include "ui/adapt/words.h"

namespace outyard::app {
namespace {

using apiary::HiveState;
using strength::Estimate;

void put(std::vector<Cell>& row, const std::optional<Estimate>& e) {
  row.push_back(e ? Cell{e->median} : Cell{});
  row.push_back(e ? Cell{e->low} : Cell{});
  row.push_back(e ? Cell{e->high} : Cell{});
}

std::string basisText(const std::vector<strength::Basis>& basis) {
  std::string out;
  for (const auto b : basis) {
    if (!out.empty()) out += ' ';
    out += apiary::code(b);
  }
  return out;
}

int run(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  auto season = openSeason(arguments.first());
  if (!season) return complain(streams, season.failure());
  const auto& s = season->season();
  const auto date =
      dateOption(parser, QStringLiteral("date"), season->session->workingDate(), streams);
  if (!date) return kUsage;
  std::vector<HiveState> hives;
  if (parser.isSet(QStringLiteral("hive"))) {
    const base::HiveId hive(parser.value(QStringLiteral("hive")).toStdString());
    if (!s.hive(hive)) {
      return complain(streams, base::fail(base::message("check.unknown_hive", hive.str())));
    }
    hives.push_back(apiary::hiveOn(s, hive, *date));
  } else {
    std::vector<base::YardId> yards;
    if (parser.isSet(QStringLiteral("yard"))) {
      yards.emplace_back(parser.value(QStringLiteral("yard")).toStdString());
      if (!s.yard(yards.back())) {
        return complain(streams,
                        base::fail(base::message("check.unknown_yard", yards.back().str())));
      }
    } else {
      for (const auto& [key, yard] : s.table<apiary::Yard>()) yards.push_back(yard.yard);
    }
    for (const auto& yard : yards) {
      for (auto& h : apiary::yardOn(s, yard, *date)) hives.push_back(std::move(h));
    }
  }
  TableOut table({"hive", "colony", "seen_on", "bees", "bees_low", "bees_high", "sealed_cells",
                  "sealed_low", "sealed_high", "open_cells", "honey_kg", "honey_low", "honey_high",
                  "basis"});
  for (const HiveState& hive : hives) {
    for (const auto& colony : hive.colonies) {
      const auto e = strength::estimateColony(s, colony.colony, *date);
      std::vector<Cell> row{hive.hive.str(), colony.colony.str()};
      row.push_back(e ? Cell{e->seenOn.iso()} : Cell{});
      put(row, e ? e->bees : std::nullopt);
      put(row, e ? e->sealedCells : std::nullopt);
      row.push_back(e && e->openCells ? Cell{e->openCells->median} : Cell{});
      put(row, e ? e->honeyKg : std::nullopt);
      row.push_back(e ? Cell{basisText(e->basis)} : Cell{});
      table.add(std::move(row));
    }
  }
  parser.isSet(QStringLiteral("json")) ? table.writeJson(streams.out) : table.writeCsv(streams.out);
  return kDone;
}

}  // namespace

Verb estimateVerb() {
  return {"estimate", "strength as seen at the last inspection up to a day",
          [](QCommandLineParser& p) {
            fileArgument(p);
            option(p, "yard", "Only the hives of this yard.", "Y");
            option(p, "hive", "Only this hive.", "H");
            option(p, "date", "The day, YYYY-MM-DD; the working date when left out.", "D");
            jsonOption(p);
          },
          run};
}

}  // namespace outyard::app
