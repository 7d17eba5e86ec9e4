// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "app/season_access.h"
#include "app/sheet_file.h"
#include "app/verb_list.h"
#include "app/verb_options.h"
#include "ui/adapt/words.h"

namespace outyard::app {
namespace {

int run(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  const bool every = parser.isSet(QStringLiteral("all"));
  if (!parser.isSet(QStringLiteral("out")) || every == parser.isSet(QStringLiteral("yard"))) {
    streams.err << say(
        "outyard sheet: give --out and either --yard (again for more yards) or "
        "--all; see outyard sheet --help\n");
    return kUsage;
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
  for (const QString& yard : parser.values(QStringLiteral("yard"))) {
    const base::YardId id(yard.toStdString());
    if (std::find(request.yards.begin(), request.yards.end(), id) == request.yards.end()) {
      request.yards.push_back(id);
    }
  }
  if (every) {
    for (const auto& [key, yard] : season->session->season().table<apiary::Yard>()) {
      request.yards.push_back(yard.yard);
    }
    if (request.yards.empty()) {
      streams.err << say("outyard sheet: the season has no yard yet\n");
      return kDataFault;
    }
  }
  request.largeType = parser.isSet(QStringLiteral("large"));
  request.date = *date;
  request.paper = paper == QLatin1String("letter") ? sheet::Paper::Letter : sheet::Paper::A4;
  base::Progress quiet;
  const auto done =
      writeSheetFile(*season->session, request, parser.value(QStringLiteral("out")), quiet);
  if (!done) return complain(streams, done.failure());
  QStringList numbers;
  for (const auto& number : done->sheetNumbers) numbers << QString::fromStdString(number);
  streams.err << say("Yard sheet %1 written to %2, pages: %3")
                     .arg(numbers.join(QStringLiteral(", ")), parser.value(QStringLiteral("out")))
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
            option(p, "yard", "The yard; may be given again: one print of several sheets.", "Y");
            option(p, "all", "A sheet for every yard.");
            option(p, "date", "The day of the visit; the working date when left out.", "D");
            option(p, "out", "The PDF file.", "F.pdf");
            option(p, "paper", "a4 (default) or letter.", "PAPER");
            option(p, "large", "Large type, on paper laid across.");
          },
          run,
          1,
          true};
}

}  // namespace outyard::app
