// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adapt/settings.h"

#include <QStandardPaths>

namespace outyard::adapt {

DeskSettings::DeskSettings(const QString& iniFile)
    : m_settings(std::make_unique<QSettings>(iniFile, QSettings::IniFormat)) {}

QString DeskSettings::usualFile() {
  return QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation) +
         QStringLiteral("/desk.ini");
}

void DeskSettings::noteSeason(const QString& file) {
  QStringList recent = get(desk::kRecentSeasons);
  recent.removeAll(file);
  recent.prepend(file);
  while (recent.size() > desk::kMostRecent) recent.removeLast();
  set(desk::kRecentSeasons, recent);
  set(desk::kLastSeason, file);
}

}  // namespace outyard::adapt
