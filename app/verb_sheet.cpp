// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/season_access.h"
#include "app/sheet_file.h"
#include "app/verb_list.h"
#include "app/verb_options.h"
#include "ui/adapt/words.h"

namespace outyard::app {
namespace {

int run(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  for (const char* needed : {"yard", "out"}) {
    if (!parser.isSet(QString::fromUtf8(needed))) {
      streams.err << say("outyard sheet: --%1 is missing; see outyard sheet --help\n")
                         .arg(QString::fromUtf8(needed));
      return kUsage;
    }
  }
  const QString paper = parser.value(QStringLiteral("paper"));
  if (!paper.isEmpty() && paper != QLatin1String("a4") && paper != QLatin1String("letter")) {
    streams.err << say("outyard sheet: --paper is a4 or letter\n");
    return kUsage;
  }
  auto season = openSeason(arguments.first());
  if (!season) return complain(streams, season.failure());
  const auto date =
      dateOption(parser, QStringLiteral("date"), season->session->workingDate(), streams);
  if (!date) return kUsage;
  SheetRequest request;
  request.yard = base::YardId(parser.value(QStringLiteral("yard")).toStdString());
  request.date = *date;
  request.paper = paper == QLatin1String("letter") ? sheet::Paper::Letter : sheet::Paper::A4;
  const auto done = writeSheetFile(*season->session, request, parser.value(QStringLiteral("out")));
  if (!done) return complain(streams, done.failure());
  streams.err << say("Yard sheet %1 written to %2, pages: %3")
                     .arg(QString::fromStdString(done->sheetNumber),
                          parser.value(QStringLiteral("out")))
                     .arg(done->pages)
              << '\n';
  return kDone;
}

}  // namespace

Verb sheetVerb() {
  return {"sheet",
          "writes the yard sheet as PDF",
          [](QCommandLineParser& p) {
            fileArgument(p);
            option(p, "yard", "The yard.", "Y");
            option(p, "date", "The day of the visit; the working date when left out.", "D");
            option(p, "out", "The PDF file.", "F.pdf");
            option(p, "paper", "a4 (default) or letter.", "PAPER");
          },
          run,
          1,
          true};
}

}  // namespace outyard::app
