// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <thread>

#include "app/season_access.h"
#include "app/table_out.h"
#include "app/verb_list.h"
#include "app/verb_options.h"
#include "core/planning/due.h"
#include "ui/adapt/words.h"

namespace outyard::app {
namespace {

int run(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  if (!parser.isSet(QStringLiteral("to"))) {
    streams.err << say("outyard season: give the last day with --to D\n");
    return kUsage;
  }
  const auto to = dateOption(parser, QStringLiteral("to"), std::nullopt, streams);
  if (!to) return kUsage;
  std::optional<base::Date> from;
  if (parser.isSet(QStringLiteral("from"))) {
    from = dateOption(parser, QStringLiteral("from"), std::nullopt, streams);
    if (!from) return kUsage;
  }
  auto season = openSeason(arguments.first());
  if (!season) return complain(streams, season.failure());
  const apiary::Season& s = season->season();
  planning::DueAsk ask;
  ask.from = from.value_or(season->session->workingDate());
  ask.to = *to;
  if (ask.to < ask.from) {
    streams.err << say("outyard season: --to %1 is before %2, the first day\n")
                       .arg(QString::fromStdString(ask.to.iso()),
                            QString::fromStdString(ask.from.iso()));
    return kUsage;
  }
  for (const QString& name : parser.values(QStringLiteral("yard"))) {
    const base::YardId yard(name.toStdString());
    if (!s.yard(yard)) {
      streams.err << say("There is no yard %1: check the name.\n").arg(name);
      return kDataFault;
    }
    ask.yards.push_back(yard);
  }
  LineProgress progress(streams.err);
  const int threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
  const auto list = planning::whatFallsDue(s, ask, threads, progress);
  for (const auto& note : list.notes) streams.err << adapt::words(note) << '\n';
  TableOut table({"date", "yard", "hive", "colony", "task", "earliest", "latest", "chance", "why"});
  for (const auto& t : list.tasks) {
    std::vector<Cell> row{t.date.iso(), t.yard.str()};
    row.push_back(t.hive ? Cell{t.hive->str()} : Cell{});
    row.push_back(t.colony ? Cell{t.colony->str()} : Cell{});
    row.push_back(t.rule == "planned" ? t.kind : t.rule);
    row.push_back(t.earliest.iso());
    row.push_back(t.latest.iso());
    row.push_back(std::round(t.chance * 100) / 100);
    row.push_back(t.task ? t.plannedWhy : adapt::wordsUtf8(t.why));
    table.add(std::move(row));
  }
  parser.isSet(QStringLiteral("json")) ? table.writeJson(streams.out) : table.writeCsv(streams.out);
  return kDone;
}

}  // namespace

Verb seasonVerb() {
  return {"season", "what falls due, with its window, chance and reason",
          [](QCommandLineParser& p) {
            fileArgument(p);
            option(p, "yard", "Only this yard; may be given several times.", "Y");
            option(p, "from",
                   "Records after this day are not used; the working date when left out.", "D");
            option(p, "to", "The last day.", "D");
            jsonOption(p);
          },
          run};
}

}  // namespace outyard::app
