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

Verb checkVerb() {
  return {"check", "integrity of the file and of the journal",
          [](QCommandLineParser& p) {
            fileArgument(p);
            jsonOption(p);
          },
          runCheck};
}

}  // namespace outyard::app
