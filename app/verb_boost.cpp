// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <thread>

#include "app/season_access.h"
#include "app/table_out.h"
#include "app/verb_list.h"
#include "app/verb_options.h"
#include "core/planning/boost.h"
#include "core/planning/boost_json.h"
#include "core/planning/boost_worth.h"
#include "ui/adapt/words.h"

namespace outyard::app {
namespace {

std::string joined(const std::vector<base::Message>& messages) {
  std::string out;
  for (const auto& m : messages) {
    if (!out.empty()) out += ' ';
    out += adapt::wordsUtf8(m);
  }
  return out;
}

std::vector<std::string> values(const QCommandLineParser& parser, const char* name) {
  std::vector<std::string> out;
  for (const QString& v : parser.values(QString::fromUtf8(name))) out.push_back(v.toStdString());
  return out;
}

void writeTable(const planning::BoostPlan& plan, QTextStream& out) {
  TableOut table({"colony", "hive", "verdict", "method", "donor_colony", "donor_hive", "bees_moved",
                  "frames_moved", "gain", "gain_low", "gain_high", "donor_cost", "why"});
  for (const auto& r : planning::boostRows(plan)) {
    std::vector<Cell> row{r.colony.str(), r.hive.str(), std::string(apiary::code(r.verdict))};
    if (const auto* o = r.option) {
      row.emplace_back(std::string(apiary::code(o->method)));
      row.emplace_back(o->donorColony ? Cell{o->donorColony->str()} : Cell{});
      row.emplace_back(o->donorHive ? Cell{o->donorHive->str()} : Cell{});
      for (const double v : {o->beesMoved, o->framesMoved, o->gain.median, o->gain.low,
                             o->gain.high, o->donorCost}) {
        row.emplace_back(v);
      }
    } else {
      for (int i = 0; i < 9; ++i) row.emplace_back();
    }
    row.emplace_back(joined(r.why));
    table.add(std::move(row));
  }
  table.writeCsv(out);
}

int run(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  const bool all = parser.isSet(QStringLiteral("all"));
  if (all == parser.isSet(QStringLiteral("yard"))) {
    streams.err << say("outyard boost: give the yards with --yard Y, or --all for all of them\n");
    return kUsage;
  }
  auto season = openSeason(arguments.first());
  if (!season) return complain(streams, season.failure());
  const auto date =
      dateOption(parser, QStringLiteral("date"), season->session->workingDate(), streams);
  if (!date) return kUsage;
  planning::BoostRequest request;
  request.date = *date;
  if (parser.isSet(QStringLiteral("target"))) {
    request.target = dateOption(parser, QStringLiteral("target"), std::nullopt, streams);
    if (!request.target) return kUsage;
    if (*request.target <= *date) {
      streams.err << say("outyard boost: --target must be after the date\n");
      return kUsage;
    }
  }
  if (all) {
    for (const auto& [key, yard] : season->season().table<apiary::Yard>()) {
      request.yards.push_back(yard.yard);
    }
  } else {
    for (const auto& y : values(parser, "yard")) request.yards.emplace_back(y);
  }
  request.pins = values(parser, "pin");
  request.forbids = values(parser, "forbid");
  LineProgress progress(streams.err);
  const int threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
  auto problem = planning::makeForecastProblem(season->season(), request, threads, progress);
  if (!problem) return complain(streams, problem.failure());
  const auto plan = planning::solveBoost(std::move(*problem), progress);
  if (!plan) return complain(streams, plan.failure());
  for (const auto& note : plan->problem.notes) streams.err << adapt::words(note) << '\n';
  for (const auto& more : planning::worthOfOneMore(*plan, progress)) {
    streams.err << adapt::words(base::message("planning.one_more", more.item, more.worth)) << '\n';
  }
  if (parser.isSet(QStringLiteral("json"))) {
    streams.out << QString::fromStdString(planning::boostJson(*plan, adapt::wordsUtf8)) << '\n';
  } else {
    writeTable(*plan, streams.out);
  }
  return kDone;
}

}  // namespace

Verb boostVerb() {
  return {"boost", "the judgement on every colony and the best pairing of weak with strong",
          [](QCommandLineParser& p) {
            fileArgument(p);
            option(p, "yard", "A yard; may be given several times.", "Y");
            option(p, "all", "All yards together.");
            option(p, "date", "The day of the work, YYYY-MM-DD; the working date when left out.",
                   "D");
            option(p, "target", "The day by which the colonies shall be of use.", "D");
            option(p, "pin", "An option that must be chosen; may be given several times.", "ID");
            option(p, "forbid", "An option that must not be chosen.", "ID");
            option(p, "json", "Prints the whole problem and its solution as JSON.");
          },
          run};
}

}  // namespace outyard::app
