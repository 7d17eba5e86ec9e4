// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "app/colony_choice.h"
#include "app/season_access.h"
#include "app/table_out.h"
#include "app/verb_list.h"
#include "app/verb_options.h"
#include "core/strength/estimate.h"
#include "ui/adapt/words.h"

namespace outyard::app {
namespace {

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
  const auto hives = chosenHives(parser, s, *date, streams);
  if (!hives) return kDataFault;
  TableOut table({"hive", "colony", "seen_on", "bees", "bees_low", "bees_high", "sealed_cells",
                  "sealed_low", "sealed_high", "open_cells", "honey_kg", "honey_low", "honey_high",
                  "basis"});
  for (const auto& hive : *hives) {
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
            describeColonyChoice(p);
            option(p, "date", "The day, YYYY-MM-DD; the working date when left out.", "D");
            jsonOption(p);
          },
          run};
}

}  // namespace outyard::app
