// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adapt/settings.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QLocale>
#include <QTemporaryDir>

#include "ui/adapt/system_clock.h"
#include "ui/adapt/units.h"

namespace outyard::adapt {
namespace {

class SettingsTest : public testing::Test {
 protected:
  [[nodiscard]] QString file() const { return m_folder.filePath(QStringLiteral("desk.ini")); }
  QTemporaryDir m_folder;
};

TEST_F(SettingsTest, ShippedValuesHoldUntilSet) {
  DeskSettings settings(file());
  EXPECT_EQ(settings.get(desk::kTheme), Theme::System);
  EXPECT_FALSE(settings.get(desk::kGuideDismissed));
  EXPECT_TRUE(settings.get(desk::kRecentSeasons).isEmpty());
}

TEST_F(SettingsTest, ValuesAreThereNextTime) {
  {
    DeskSettings settings(file());
    settings.set(desk::kTheme, Theme::Dark);
    settings.set(desk::kGuideDismissed, true);
    settings.set(desk::kWindowGeometry, QByteArray("\x01\x00\x02", 3));
    settings.set(desk::kLastSeason, QStringLiteral("a, b.outyard"));
  }
  DeskSettings settings(file());
  EXPECT_EQ(settings.get(desk::kTheme), Theme::Dark);
  EXPECT_TRUE(settings.get(desk::kGuideDismissed));
  EXPECT_EQ(settings.get(desk::kWindowGeometry), QByteArray("\x01\x00\x02", 3));
  EXPECT_EQ(settings.get(desk::kLastSeason), QStringLiteral("a, b.outyard"));
}

TEST_F(SettingsTest, WhatCannotBeReadIsAsShipped) {
  for (const char* value : {"purple", "17", "-1"}) {
    QFile written(file());
    ASSERT_TRUE(written.open(QIODevice::WriteOnly | QIODevice::Truncate));
    written.write(QByteArray("[window]\ntheme=") + value + "\n");
    written.close();
    EXPECT_EQ(DeskSettings(file()).get(desk::kTheme), Theme::System) << value;
  }
}

TEST_F(SettingsTest, RecentSeasonsAreFewAndEachOnce) {
  DeskSettings settings(file());
  for (int i = 0; i < 12; ++i) settings.noteSeason(QStringLiteral("/s/%1").arg(i));
  settings.noteSeason(QStringLiteral("/s/9"));
  const QStringList recent = settings.get(desk::kRecentSeasons);
  EXPECT_EQ(recent.size(), desk::kMostRecent);
  EXPECT_EQ(recent.first(), QStringLiteral("/s/9"));
  EXPECT_EQ(recent.count(QStringLiteral("/s/9")), 1);
  EXPECT_EQ(settings.get(desk::kLastSeason), QStringLiteral("/s/9"));
}

TEST_F(SettingsTest, ListenersHearOfEveryChange) {
  DeskSettings settings(file());
  int heard = 0;
  settings.onChange([&] { ++heard; });
  settings.set(desk::kLetterPaper, true);
  settings.set(desk::kLetterPaper, false);
  EXPECT_EQ(heard, 2);
}

TEST(UnitsTest, EachUnitThereAndBack) {
  const Units us(MassUnit::Pound, TemperatureUnit::Fahrenheit, LengthUnit::Foot);
  // Exact by definition: pound 0.45359237 kg, foot 0.3048 m (international yard and pound
  // agreement, 1959); 0 degrees C = 32 degrees F.
  EXPECT_NEAR(us.shown(base::Mass{0.45359237}), 1, 1e-12);
  EXPECT_NEAR(us.lengthFrom(1).value, 0.3048, 1e-12);
  EXPECT_NEAR(us.shown(base::Temperature{0}), 32, 1e-12);
  for (const double x : {-40.0, 0.0, 12.0, 37.5}) {
    EXPECT_NEAR(us.massFrom(us.shown(base::Mass{x})).value, x, 1e-12);
    EXPECT_NEAR(us.lengthFrom(us.shown(base::Length{x})).value, x, 1e-12);
    EXPECT_NEAR(us.temperatureFrom(us.shown(base::Temperature{x})).value, x, 1e-12);
  }
  QLocale::setDefault(QLocale::c());
  EXPECT_EQ(us.text(base::Mass{20}), QStringLiteral("44\u00A0lb"));
  EXPECT_EQ(Units().text(base::Mass{20.4}, 1), QStringLiteral("20.4\u00A0kg"));
  QLocale::setDefault(QLocale::system());
}

TEST(SystemClockTest, CivilDatesStayTheDayTheyAre) {
  for (const int days : {-3000, 0, 59, 20000, 20568}) {
    const auto date = base::Date::fromDays(days);
    EXPECT_EQ(fromQDate(toQDate(date)), date);
    EXPECT_EQ(toQDate(date).toString(Qt::ISODate).toStdString(), date.iso());
  }
}

TEST(SystemClockTest, UtcIsWrittenAsTheRecordsWantIt) {
  const std::string now = SystemClock().nowUtc();
  ASSERT_EQ(now.size(), 20U) << now;
  EXPECT_EQ(now[10], 'T');
  EXPECT_EQ(now.back(), 'Z');
  EXPECT_TRUE(base::Date::parse(now.substr(0, 10)).has_value());
}

}  // namespace
}  // namespace outyard::adapt
