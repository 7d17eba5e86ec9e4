// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window.h"

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>

#include "app/season_access.h"
#include "app/sheet_file.h"
#include "core/storage/sqlite_store.h"
#include "ui/adapt/settings.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/main_window/main_window.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/session_model.h"
#include "ui/widgets/theme.h"

namespace outyard::app {
namespace {

using main_window::FileServices;

FileServices::Opened sessionOf(base::Result<OpenSeason> season) {
  if (!season) return season.failure();
  return std::move(season->session);
}

QString dataFolder() {
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
  QDir().mkpath(folder);
  return folder;
}

/// What an import says: its lines, or its faults as a failure.
base::Result<base::Message> said(const ImportSummary& done) {
  if (!done.faults.isEmpty()) {
    base::Failure failure;
    for (const QString& fault : done.faults) {
      failure.messages.push_back(base::message("session.as_said", fault.toStdString()));
    }
    return failure;
  }
  return base::message("session.as_said", done.lines.join(u'\n').toStdString());
}

}  // namespace

FileServices windowServices() {
  FileServices s;
  s.create = [](const QString& file) { return sessionOf(newSeason(file, false)); };
  s.open = [](const QString& file) { return sessionOf(openSeason(file)); };
  s.sampleFile = dataFolder() + QStringLiteral("/sample-season.outyard");
  s.draftFolder =
      QFileInfo(adapt::DeskSettings::usualFile()).absolutePath() + QStringLiteral("/drafts");
  s.loadSample = [](const QString& file) {
    return sessionOf(QFileInfo::exists(file) ? openSeason(file) : newSeason(file, true));
  };
  s.saveCopy = [](const QString& from, const QString& to) {
    return storage::saveCopy(from.toStdString(), to.toStdString());
  };
  s.importTables = [](session::Session& session,
                      const QString& folder) -> base::Result<base::Message> {
    base::Progress quiet;
    return said(importFolder(session, folder, quiet));
  };
  s.importWeather = [](session::Session& session, const QString& file,
                       const exchange::WeatherAsk& ask) -> base::Result<base::Message> {
    base::Progress quiet;
    return said(importWeather(session, file, ask, quiet));
  };
  s.exportTables = [](const apiary::Season& season, const QString& folder) {
    return exportFolder(season, folder);
  };
  const auto request = [](const main_window::SheetAsk& ask) {
    return SheetRequest{ask.yards, ask.date,
                        ask.letterPaper ? sheet::Paper::Letter : sheet::Paper::A4, ask.largeType};
  };
  s.makeSheets = [request](const session::Session& session, const main_window::SheetAsk& ask,
                           base::Progress& progress) {
    return makeYardSheets(session, request(ask), progress);
  };
  s.keepSheets = [request](session::Session& session, const main_window::SheetAsk& ask,
                           const std::vector<sheet::YardSheet>& sheets) {
    return keepSheets(session, request(ask), sheets);
  };
  return s;
}

int runWindow(const QString& file) {
  adapt::DeskSettings settings(adapt::DeskSettings::usualFile());
  const adapt::SystemClock clock;
  widgets::WindowDialogs dialogs;
  widgets::SeasonHub hub(dialogs, settings, clock);
  widgets::applyTheme(settings.get(adapt::desk::kTheme));
  main_window::MainWindow window(hub, windowServices());
  window.show();
  const QString last = settings.get(adapt::desk::kLastSeason);
  if (!file.isEmpty()) {
    window.openSeason(file);
  } else if (!last.isEmpty() && QFileInfo::exists(last)) {
    window.openSeason(last);
  } else {
    window.openSample();
  }
  return QApplication::exec();
}

}  // namespace outyard::app
