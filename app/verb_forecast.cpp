// SPDX-License-Identifier: GPL-3.0-or-later
#include <thread>

#include "app/colony_choice.h"
#include "app/season_access.h"
#include "app/table_out.h"
#include "app/verb_list.h"
#include "app/verb_options.h"
#include "core/forecast/colony_forecast.h"

namespace outyard::app {
namespace {

void put(std::vector<Cell>& row, const forecast::Band& band) {
  row.emplace_back(band.median);
  row.emplace_back(band.low);
  row.emplace_back(band.high);
}

int run(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  auto season = openSeason(arguments.first());
  if (!season) return complain(streams, season.failure());
  const auto& s = season->season();
  const auto from =
      dateOption(parser, QStringLiteral("from"), season->session->workingDate(), streams);
  if (!from) return kUsage;
  const auto to = dateOption(parser, QStringLiteral("to"), std::nullopt, streams);
  if (!to || *to < *from || *to - *from > 800) {
    streams.err << say("outyard forecast: --to is a day from --from up to 800 days later\n");
    return kUsage;
  }
  forecast::ForecastAsk ask;
  ask.from = *from;
  ask.to = *to;
  if (parser.isSet(QStringLiteral("step"))) {
    bool ok = false;
    ask.stepDays = parser.value(QStringLiteral("step")).toInt(&ok);
    if (!ok || ask.stepDays < 1 || ask.stepDays > 366) {
      streams.err << say("outyard forecast: --step is a whole number of days, 1 to 366\n");
      return kUsage;
    }
  }
  if (parser.isSet(QStringLiteral("known"))) {
    if (parser.value(QStringLiteral("known")) != QLatin1String("weather")) {
      streams.err << say("outyard forecast: --known takes \"weather\"\n");
      return kUsage;
    }
    ask.knownWeather = true;
  }
  const auto hives = chosenHives(parser, s, *from, streams);
  if (!hives) return kDataFault;
  std::vector<base::ColonyId> colonies;
  for (const auto& h : *hives) {
    for (const auto& c : h.colonies) colonies.push_back(c.colony);
  }
  LineProgress progress(streams.err);
  const int threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
  TableOut table({"hive", "colony", "date", "bees", "bees_low", "bees_high", "sealed_cells",
                  "sealed_low", "sealed_high", "brood_cells", "brood_low", "brood_high", "honey_kg",
                  "honey_low", "honey_high", "seen_bees", "seen_low", "seen_high"});
  for (const auto& f : forecast::forecastColonies(s, colonies, ask, threads, progress)) {
    for (const auto& day : f.days) {
      std::vector<Cell> row{f.hive.str(), f.colony.str(), day.date.iso()};
      put(row, day.bees);
      put(row, day.sealed);
      put(row, day.brood);
      put(row, day.honeyKg);
      put(row, day.seen);
      table.add(std::move(row));
    }
  }
  parser.isSet(QStringLiteral("json")) ? table.writeJson(streams.out) : table.writeCsv(streams.out);
  return kDone;
}

}  // namespace

Verb forecastVerb() {
  return {"forecast", "bees, brood and stores of every colony in the days ahead",
          [](QCommandLineParser& p) {
            fileArgument(p);
            describeColonyChoice(p);
            option(p, "from",
                   "Records after this day are not used; the working date when left out.", "D");
            option(p, "to", "The last day.", "D");
            option(p, "step", "Days between rows (7).", "DAYS");
            option(p, "known", "\"weather\" lets later observed weather in.", "WHAT");
            jsonOption(p);
          },
          run};
}

}  // namespace outyard::app
