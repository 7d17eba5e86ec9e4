// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/weather_import.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QMenuBar>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/main_window/main_window.h"

namespace outyard::main_window {
namespace {

using tests::Desk;
using tests::field;

TEST(WeatherImport, AsksForYardUnitsAndDays) {
  Desk desk(tests::sampleSeason());
  desk.hub.selectYard(base::YardId{"SO"});
  WeatherImportDialog dialog(desk.hub, QStringLiteral("USW00014936.dly"));
  auto ask = dialog.ask();
  EXPECT_EQ(ask.yard, base::YardId{"SO"});
  EXPECT_FALSE(ask.units);
  EXPECT_FALSE(ask.normals);
  EXPECT_EQ(ask.from, tests::day("2025-01-01"));  // as far as the forecast looks back
  field<QComboBox>(dialog, "weatherUnits")->setCurrentIndex(3);
  field<QCheckBox>(dialog, "weatherSince")->setChecked(false);
  EXPECT_FALSE(field<QDateEdit>(dialog, "weatherFrom")->isEnabled());
  EXPECT_EQ(dialog.ask().units, exchange::WeatherUnits::Us);
  EXPECT_FALSE(dialog.ask().from);
  field<QCheckBox>(dialog, "weatherUsual")->setChecked(true);
  EXPECT_TRUE(dialog.ask().normals);
  tests::picture(dialog, QStringLiteral("weather_import"), {520, 330});
  tests::expectNothingCut(dialog);
}

TEST(WeatherImport, RunsFromTheFileMenuAndSaysWhatCameIn) {
  Desk desk(tests::smallSeason());
  FileServices services;
  std::vector<std::string> calls;
  bool good = true;
  services.importWeather = [&](session::Session&, const QString& file,
                               const exchange::WeatherAsk& ask) -> base::Result<base::Message> {
    calls.push_back(file.toStdString() + " " + ask.yard.str());
    if (!good) return base::fail(base::message("session.as_said", "w.csv:3: TMIN: too cold"));
    return base::message("session.as_said", "weather: 7 new");
  };
  MainWindow window(desk.hub, services);
  QAction* import = nullptr;
  for (auto* action : window.findChildren<QAction*>()) {
    if (action->text().remove(u'&').startsWith(QLatin1String("Import weather"))) import = action;
  }
  ASSERT_TRUE(import);
  EXPECT_TRUE(import->isEnabled());
  import->trigger();  // no file chosen
  EXPECT_TRUE(calls.empty());
  desk.dialogs.file = desk.folder.filePath(QStringLiteral("w.csv"));
  desk.dialogs.onRun = [](QDialog&) { return true; };
  import->trigger();
  ASSERT_EQ(calls.size(), 1U);
  EXPECT_NE(calls[0].find("w.csv "), std::string::npos);
  EXPECT_EQ(desk.dialogs.informed, QStringList{QStringLiteral("weather: 7 new")});
  good = false;
  import->trigger();
  EXPECT_EQ(desk.dialogs.failures, QStringList{QStringLiteral("w.csv:3: TMIN: too cold")});
}

}  // namespace
}  // namespace outyard::main_window
