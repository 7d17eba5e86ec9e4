// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/season_access.h"
#include "app/table_out.h"
#include "app/verb_list.h"
#include "app/verb_options.h"
#include "core/apiary/validate.h"
#include "core/storage/sqlite_store.h"
#include "ui/adapt/words.h"

namespace outyard::app {
namespace {

int runNew(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  const auto season = newSeason(arguments.first(), parser.isSet(QStringLiteral("sample")));
  if (!season) return complain(streams, season.failure());
  streams.err << say("Made %1\n").arg(arguments.first());
  return kDone;
}

int runImport(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  if (!parser.isSet(QStringLiteral("csv"))) {
    streams.err << say("outyard import: give the folder of the tables with --csv FOLDER\n");
    return kUsage;
  }
  auto season = openSeason(arguments.first());
  if (!season) return complain(streams, season.failure());
  LineProgress progress(streams.err);
  const auto done = importFolder(*season->session, parser.value(QStringLiteral("csv")), progress);
  for (const QString& fault : done.faults) streams.err << fault << '\n';
  for (const QString& line : done.lines) streams.err << line << '\n';
  return done.faults.isEmpty() ? kDone : kDataFault;
}

int runExport(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  if (!parser.isSet(QStringLiteral("csv"))) {
    streams.err << say("outyard export: give the folder for the tables with --csv FOLDER\n");
    return kUsage;
  }
  auto season = openSeason(arguments.first());
  if (!season) return complain(streams, season.failure());
  const auto done = exportFolder(season->season(), parser.value(QStringLiteral("csv")));
  if (!done) return complain(streams, done.failure());
  streams.err << say("Tables written to %1\n").arg(parser.value(QStringLiteral("csv")));
  return kDone;
}

int runCheck(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  TableOut table({"table", "row", "column", "what"});
  bool sound = true;
  for (const auto& m : storage::checkFile(arguments.first().toStdString())) {
    table.add({Cell{}, Cell{}, Cell{}, Cell{adapt::wordsUtf8(m)}});
    sound = false;
  }
  if (sound) {
    const auto season = openSeason(arguments.first());
    if (!season) return complain(streams, season.failure());
    for (const auto& f : apiary::checkSeason(season->season())) {
      std::string key = f.key;
      for (char& c : key) c = c == '\x1F' ? '/' : c;
      table.add({Cell{apiary::tableSpec(f.table).name}, Cell{key}, Cell{f.column},
                 Cell{adapt::wordsUtf8(f.what)}});
      sound = false;
    }
  }
  parser.isSet(QStringLiteral("json")) ? table.writeJson(streams.out) : table.writeCsv(streams.out);
  streams.err << (sound ? say("The file and its journal are sound.\n")
                        : say("Correct the rows above in the window (Hive, Journal), or export the "
                              "tables, mend them and import them into a new season file.\n"));
  return sound ? kDone : kDataFault;
}

}  // namespace

Verb newVerb() {
  return {"new", "makes a season file, empty or with the sample season",
          [](QCommandLineParser& p) {
            fileArgument(p);
            option(p, "sample", "Fills it with the sample season.");
          },
          runNew};
}

Verb importVerb() {
  return {"import", "reads the exchange tables of a folder, all or nothing",
          [](QCommandLineParser& p) {
            fileArgument(p);
            option(p, "csv", "The folder with the tables.", "FOLDER");
          },
          runImport};
}

Verb exportVerb() {
  return {"export", "writes the exchange tables to a folder",
          [](QCommandLineParser& p) {
            fileArgument(p);
            option(p, "csv", "The folder for the tables; made if missing.", "FOLDER");
          },
          runExport};
}

Verb checkVerb() {
  return {"check", "integrity of the file and of the journal",
          [](QCommandLineParser& p) {
            fileArgument(p);
            jsonOption(p);
          },
          runCheck};
}

}  // namespace outyard::app
