// SPDX-License-Identifier: GPL-3.0-or-later
// What comes in from files and goes out to them.
#include <QSaveFile>

#include <algorithm>
#include <thread>

#include "app/season_access.h"
#include "app/verb_list.h"
#include "app/verb_options.h"
#include "core/exchange/calendar.h"
#include "core/exchange/file_source.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"

namespace outyard::app {
namespace {

constexpr int kCalendarDays = 28;

int told(const ImportSummary& done, Streams streams) {
  for (const QString& fault : done.faults) streams.err << fault << '\n';
  for (const QString& line : done.lines) streams.err << line << '\n';
  return done.faults.isEmpty() ? kDone : kDataFault;
}

std::optional<exchange::WeatherAsk> weatherAsk(const QCommandLineParser& parser, Streams streams) {
  exchange::WeatherAsk ask;
  if (!parser.isSet(QStringLiteral("yard"))) {
    streams.err << say("outyard import: say with --yard Y whose weather it is\n");
    return std::nullopt;
  }
  ask.yard = base::YardId(parser.value(QStringLiteral("yard")).toStdString());
  ask.normals = parser.isSet(QStringLiteral("usual"));
  if (parser.isSet(QStringLiteral("units"))) {
    const QString units = parser.value(QStringLiteral("units"));
    if (units == QLatin1String("tenths")) ask.units = exchange::WeatherUnits::Tenths;
    if (units == QLatin1String("metric")) ask.units = exchange::WeatherUnits::Metric;
    if (units == QLatin1String("us")) ask.units = exchange::WeatherUnits::Us;
    if (!ask.units) {
      streams.err
          << say("outyard import: --units is tenths, metric or us, not \"%1\"\n").arg(units);
      return std::nullopt;
    }
  }
  for (const auto& [name, member] : {std::pair{"from", &exchange::WeatherAsk::from},
                                     std::pair{"to", &exchange::WeatherAsk::to}}) {
    const QString option = QString::fromUtf8(name);
    if (!parser.isSet(option)) continue;
    ask.*member = dateOption(parser, option, std::nullopt, streams);
    if (!(ask.*member)) return std::nullopt;
  }
  return ask;
}

int runImport(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  const bool tables = parser.isSet(QStringLiteral("csv"));
  const bool weather = parser.isSet(QStringLiteral("weather"));
  if (tables == weather) {
    streams.err << say(
        "outyard import: give the folder of the tables with --csv FOLDER, or a "
        "weather file with --weather F --yard Y\n");
    return kUsage;
  }
  std::optional<exchange::WeatherAsk> ask;
  if (weather && !(ask = weatherAsk(parser, streams))) return kUsage;
  auto season = openSeason(arguments.first());
  if (!season) return complain(streams, season.failure());
  LineProgress progress(streams.err);
  if (tables) {
    return told(importFolder(*season->session, parser.value(QStringLiteral("csv")), progress),
                streams);
  }
  return told(
      importWeather(*season->session, parser.value(QStringLiteral("weather")), *ask, progress),
      streams);
}

/// Writes the text whole or not at all.
bool written(const QString& file, const std::string& text, Streams streams) {
  QSaveFile out(file);
  const bool done = out.open(QIODevice::WriteOnly) &&
                    out.write(text.data(), static_cast<qint64>(text.size())) ==
                        static_cast<qint64>(text.size()) &&
                    out.commit();
  if (!done) {
    streams.err
        << say("%1 was not written: %2. Choose another place.\n").arg(file, out.errorString());
  }
  return done;
}

int runExport(const QCommandLineParser& parser, const QStringList& arguments, Streams streams) {
  const bool tables = parser.isSet(QStringLiteral("csv"));
  const bool ics = parser.isSet(QStringLiteral("ics"));
  const bool geo = parser.isSet(QStringLiteral("geojson"));
  if (!tables && !ics && !geo) {
    streams.err << say(
        "outyard export: give the folder for the tables with --csv FOLDER, or a "
        "file with --ics F or --geojson F\n");
    return kUsage;
  }
  auto season = openSeason(arguments.first());
  if (!season) return complain(streams, season.failure());
  const apiary::Season& s = season->season();
  if (tables) {
    const auto done = exportFolder(s, parser.value(QStringLiteral("csv")));
    if (!done) return complain(streams, done.failure());
    streams.err << say("Tables written to %1\n").arg(parser.value(QStringLiteral("csv")));
  }
  if (ics) {
    planning::DueAsk ask;
    ask.from = season->session->workingDate();
    ask.to = ask.from.plusDays(kCalendarDays);
    LineProgress progress(streams.err);
    const int threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
    const auto due = planning::whatFallsDue(s, ask, threads, progress);
    const QString file = parser.value(QStringLiteral("ics"));
    const auto text =
        exchange::calendarText(s, due, ask.from, adapt::SystemClock().nowUtc(), adapt::wordsUtf8);
    if (!written(file, text, streams)) return kDataFault;
    streams.err << say("Visits and due dates written to %1\n").arg(file);
  }
  if (geo) {
    const QString file = parser.value(QStringLiteral("geojson"));
    if (!written(file, exchange::geoJsonText(s, season->session->workingDate()), streams)) {
      return kDataFault;
    }
    streams.err << say("Yards and hives written to %1\n").arg(file);
  }
  return kDone;
}

}  // namespace

Verb importVerb() {
  return {"import", "reads the exchange tables of a folder, or a weather file; all or nothing",
          [](QCommandLineParser& p) {
            fileArgument(p);
            option(p, "csv", "The folder with the tables.", "FOLDER");
            option(p, "weather",
                   "A weather file: our own columns, or a station of NOAA's GHCN-Daily as CSV or "
                   ".dly.",
                   "F");
            option(p, "yard", "The yard whose weather it is.", "Y");
            option(p, "units", "Of a station file that does not show them: tenths, metric or us.",
                   "U");
            option(p, "from", "Only days from this one on.", "D");
            option(p, "to", "Only days up to this one.", "D");
            option(p, "usual", "Makes the yard's usual weather of the file's years.");
          },
          runImport};
}

Verb exportVerb() {
  return {"export", "writes the exchange tables, a calendar or a map file",
          [](QCommandLineParser& p) {
            fileArgument(p);
            option(p, "csv", "The folder for the tables; made if missing.", "FOLDER");
            option(p, "ics", "Visits and due dates of four weeks as iCalendar (RFC 5545).", "F");
            option(p, "geojson", "Yards and hives as GeoJSON (RFC 7946).", "F");
          },
          runExport};
}

}  // namespace outyard::app
