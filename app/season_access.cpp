// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/season_access.h"

#include <unistd.h>

#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <QFileInfo>
#include <filesystem>

#include "app/verb_options.h"
#include "core/exchange/tables.h"
#include "core/session/commands.h"
#include "core/storage/sqlite_store.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"

namespace outyard::app {
namespace {

base::IdSource& systemIds() {
  static base::SystemIds ids;
  return ids;
}
const base::Clock& systemClock() {
  static const adapt::SystemClock clock;
  return clock;
}

base::Result<OpenSeason> opened(std::unique_ptr<session::SeasonStore> store) {
  auto session = session::Session::open(std::move(store), systemIds(), systemClock());
  if (!session) return session.failure();
  return OpenSeason{std::move(*session)};
}

/// The faults in words, or what was done.
ImportSummary carriedOut(session::Session& session, exchange::ImportResult result) {
  ImportSummary out;
  for (const auto& f : result.faults) {
    out.faults << QString::fromStdString(exchange::placeText(f)) + QStringLiteral(": ") +
                      adapt::words(f.what);
  }
  if (const auto more = result.moreFaults()) out.faults << adapt::words(*more);
  if (!out.faults.isEmpty()) return out;
  if (result.cancelled) {
    out.faults << say("Stopped; nothing was imported.");
    return out;
  }
  for (const auto& note : result.notes) out.lines << adapt::words(note);
  for (const auto& r : result.report) out.lines << adapt::words(exchange::reportMessage(r));
  const auto done =
      session.execute(*session::applyChanges(exchange::importTitle(), std::move(result.changes)));
  if (!done) {
    out.lines.clear();
    out.faults = adapt::words(done.failure()).split(u'\n');
  }
  return out;
}

ImportSummary importFrom(session::Session& session, const exchange::FileSource& files,
                         base::Progress& progress) {
  return carriedOut(session,
                    exchange::planImport(session.season(), files, session.workingDate(), progress));
}

/// The sample season is compiled in as exchange tables.
exchange::MemorySource sampleTables() {
  std::map<std::string, std::string> files;
  QDirIterator it(QStringLiteral(":/sample"), {QStringLiteral("*.csv")}, QDir::Files);
  while (it.hasNext()) {
    QFile file(it.next());
    if (file.open(QIODevice::ReadOnly)) {
      files[QFileInfo(file).fileName().toStdString()] = file.readAll().toStdString();
    }
  }
  return exchange::MemorySource(std::move(files));
}

}  // namespace

base::Result<OpenSeason> openSeason(const QString& path) {
  auto store = storage::open(path.toStdString());
  if (!store) return store.failure();
  return opened(std::move(*store));
}

base::Result<OpenSeason> newSeason(const QString& path, bool sample) {
  auto store = storage::create(path.toStdString());
  if (!store) return store.failure();
  auto season = opened(std::move(*store));
  if (!season || !sample) return season;
  base::Progress quiet;
  const auto tables = sampleTables();
  const auto done = importFrom(*season->session, tables, quiet);
  if (!done.faults.isEmpty()) {
    throw std::logic_error("the sample season does not import: " +
                           done.faults.first().toStdString());
  }
  // What came with the file is its beginning, not a step to be undone: open it anew.
  season->session.reset();
  return openSeason(path);
}

ImportSummary importFolder(session::Session& session, const QString& folder,
                           base::Progress& progress) {
  return importFrom(session, exchange::FolderSource(std::filesystem::path(folder.toStdString())),
                    progress);
}

ImportSummary importWeather(session::Session& session, const QString& file,
                            const exchange::WeatherAsk& ask, base::Progress& progress) {
  const auto text = exchange::readFile(file.toStdString());
  if (!text) {
    ImportSummary out;
    out.faults = adapt::words(text.failure()).split(u'\n');
    return out;
  }
  return carriedOut(session, exchange::planWeatherImport(session.season(),
                                                         QFileInfo(file).fileName().toStdString(),
                                                         *text, ask, progress));
}

base::Result<void> exportFolder(const apiary::Season& season, const QString& folder) {
  exchange::FolderSink sink{std::filesystem::path(folder.toStdString())};
  base::Progress quiet;
  return exchange::exportTables(season, sink, quiet);
}

int complain(Streams streams, const base::Failure& failure) {
  streams.err << adapt::words(failure) << '\n';
  return kDataFault;
}

std::optional<base::Date> dateOption(const QCommandLineParser& parser, const QString& option,
                                     std::optional<base::Date> fallback, Streams streams) {
  if (!parser.isSet(option)) return fallback;
  const QString text = parser.value(option);
  const auto date = base::Date::parse(text.toStdString());
  if (!date) {
    streams.err << say("--%1: \"%2\" is no date; write it as 2026-04-25\n").arg(option, text);
  }
  return date;
}

void LineProgress::report(double fraction) {
  if (!isatty(STDERR_FILENO)) return;
  const int percent = static_cast<int>(fraction * 100);
  if (percent == m_shown) return;
  m_shown = percent;
  m_err << '\r' << percent << " %" << (percent >= 100 ? "\n" : "");
  m_err.flush();
}

}  // namespace outyard::app
