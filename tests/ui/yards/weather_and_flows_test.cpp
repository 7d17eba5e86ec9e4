// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAction>
#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QTableWidget>

#include "core/forecast/drivers.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/adapt/system_clock.h"
#include "ui/yards/flows_dialog.h"
#include "ui/yards/weather_dialog.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {
namespace {

using apiary::Flow;
using apiary::WeatherDay;
using tests::day;
using tests::Desk;
using tests::field;

const base::YardId kTr{"TR"};

std::size_t flowsOf(const apiary::Season& season, const base::YardId& yard) {
  std::size_t n = 0;
  for (const auto& [key, f] : season.table<Flow>()) n += f.yard == yard ? 1 : 0;
  return n;
}

TEST(FlowsDialog, KeepsACalendarForOneYardOrMany) {
  Desk desk(tests::sampleSeason());
  FlowsDialog dialog(desk.hub, kTr);
  auto* table = field<QTableWidget>(dialog, "flowTable");
  const int rows = table->rowCount();
  ASSERT_EQ(rows, static_cast<int>(flowsOf(desk.hub.season(), kTr)));
  field<QPushButton>(dialog, "flowAdd")->click();
  ASSERT_EQ(table->rowCount(), rows + 1);
  qobject_cast<QDateEdit*>(table->cellWidget(rows, 0))->setDate(QDate(2025, 4, 1));
  qobject_cast<QDateEdit*>(table->cellWidget(rows, 1))->setDate(QDate(2025, 4, 9));
  qobject_cast<QDoubleSpinBox*>(table->cellWidget(rows, 2))->setValue(2.5);
  field<QListWidget>(dialog, "flowOthers")->item(0)->setCheckState(Qt::Checked);
  const base::YardId other{field<QListWidget>(dialog, "flowOthers")
                               ->item(0)
                               ->data(Qt::UserRole)
                               .toString()
                               .toStdString()};
  const auto before = flowsOf(desk.hub.season(), other);
  ASSERT_TRUE(desk.hub.execute(dialog.command()));
  EXPECT_EQ(flowsOf(desk.hub.season(), kTr), static_cast<std::size_t>(rows) + 1);
  EXPECT_EQ(flowsOf(desk.hub.season(), other), static_cast<std::size_t>(rows) + 1);
  bool there = false;
  for (const auto& [key, f] : desk.hub.season().table<Flow>()) {
    there = there || (f.yard == other && f.fromDay == 91 && f.toDay == 99 && f.nectar == 2.5);
  }
  EXPECT_TRUE(there);
  ASSERT_TRUE(desk.hub.undo());
  EXPECT_EQ(flowsOf(desk.hub.season(), other), before);  // one step took both back
}

TEST(FlowsDialog, TwiceTheSameDaysIsSaidAndRowsGoOut) {
  Desk desk(tests::smallSeason());
  FlowsDialog dialog(desk.hub, kTr);
  auto* table = field<QTableWidget>(dialog, "flowTable");
  auto* ok = dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
  for (int i = 0; i < 2; ++i) {
    field<QPushButton>(dialog, "flowAdd")->click();
    qobject_cast<QDateEdit*>(table->cellWidget(i, 0))->setDate(QDate(2025, 5, 1));
    qobject_cast<QDateEdit*>(table->cellWidget(i, 1))->setDate(QDate(2025, 5, 20));
  }
  EXPECT_FALSE(ok->isEnabled());
  EXPECT_FALSE(field<QLabel>(dialog, "newWhy")->text().isEmpty());
  table->setCurrentCell(1, 0);
  field<QPushButton>(dialog, "flowRemove")->click();
  EXPECT_EQ(table->rowCount(), 1);
  EXPECT_TRUE(ok->isEnabled());
}

TEST(FlowsDialog, WhatIsUsualIsWhatTheForecastTakesWithoutACalendar) {
  for (const double latitude : {45.0, 52.0, -36.0}) {
    apiary::Season bare, own;
    for (const auto& f : usualFlows(kTr, latitude)) {
      const auto row = apiary::toRow(f);
      own.apply({{apiary::TableId::Flows, apiary::rowKey(row), std::nullopt, row}});
    }
    for (int d = 1; d <= 365; ++d) {
      const auto a = forecast::flowOn(bare, kTr, latitude, d);
      const auto b = forecast::flowOn(own, kTr, latitude, d);
      EXPECT_DOUBLE_EQ(a.nectar, b.nectar) << latitude << " " << d;
      EXPECT_DOUBLE_EQ(a.pollen, b.pollen) << latitude << " " << d;
    }
  }
  Desk desk(tests::smallSeason());
  FlowsDialog dialog(desk.hub, kTr);
  field<QPushButton>(dialog, "flowUsual")->click();
  EXPECT_GT(field<QTableWidget>(dialog, "flowTable")->rowCount(), 3);
}

TEST(WeatherDialog, ADayIsTypedChangedAndTakenOut) {
  Desk desk(tests::smallSeason());
  WeatherDialog dialog(desk.hub, kTr);
  EXPECT_FALSE(field<QLabel>(dialog, "weatherAbout")->text().isEmpty());  // nothing known yet
  field<QDateEdit>(dialog, "weatherDate")->setDate(QDate(2026, 4, 24));
  field<QDoubleSpinBox>(dialog, "weatherMin")->setValue(18);
  field<QDoubleSpinBox>(dialog, "weatherMax")->setValue(12);
  auto* enter = field<QPushButton>(dialog, "weatherEnter");
  EXPECT_FALSE(enter->isEnabled());  // the lowest above the highest
  EXPECT_FALSE(field<QLabel>(dialog, "weatherWhy")->text().isEmpty());
  field<QDoubleSpinBox>(dialog, "weatherMin")->setValue(4);
  field<QDoubleSpinBox>(dialog, "weatherRain")->setValue(0);
  ASSERT_TRUE(enter->isEnabled());
  enter->click();
  auto* table = field<QTableWidget>(dialog, "weatherTable");
  ASSERT_EQ(table->rowCount(), 1);
  const auto& row = desk.hub.season().table<WeatherDay>().begin()->second;
  EXPECT_EQ(row.date, day("2026-04-24"));
  EXPECT_EQ(row.rainMm, 0);
  EXPECT_FALSE(row.windMs);
  EXPECT_EQ(field<QDateEdit>(dialog, "weatherDate")->date(), QDate(2026, 4, 25));

  // A forecast names its day of issue.
  auto* kind = field<QComboBox>(dialog, "weatherKind");
  kind->setCurrentIndex(1);
  field<QDateEdit>(dialog, "weatherIssued")->setDate(QDate(2026, 4, 26));
  EXPECT_FALSE(enter->isEnabled());  // issued after its day
  field<QDateEdit>(dialog, "weatherIssued")->setDate(QDate(2026, 4, 25));
  ASSERT_TRUE(enter->isEnabled());
  enter->click();
  EXPECT_EQ(table->rowCount(), 2);
  table->selectRow(0);
  field<QPushButton>(dialog, "weatherTakeOut")->click();
  EXPECT_EQ(table->rowCount(), 1);
  ASSERT_TRUE(desk.hub.undo());
  EXPECT_EQ(desk.hub.season().table<WeatherDay>().size(), 2U);
}

TEST(WeatherDialog, AYardWithoutWeatherSaysWhoseServesIt) {
  auto season = tests::sampleSeason();
  apiary::ChangeList out;
  for (const auto& [key, w] : season.table<WeatherDay>()) {
    if (w.yard == kTr) {
      out.push_back({apiary::TableId::Weather, key, apiary::toRow(w), std::nullopt});
    }
  }
  season.apply(out);
  Desk desk(std::move(season));
  WeatherDialog dialog(desk.hub, kTr);
  const QString about = field<QLabel>(dialog, "weatherAbout")->text();
  EXPECT_TRUE(about.contains(QStringLiteral("SO")) || about.contains(QStringLiteral("AB")))
      << about.toStdString();
}

TEST(YardsPlaceWeather, BothAreReachedFromThePlacesMenu) {
  Desk desk(tests::sampleSeason());
  YardsPlace place(desk.hub);
  desk.hub.selectYard(kTr);
  int shown = 0;
  desk.dialogs.onRun = [&](QDialog&) {
    ++shown;
    return false;
  };
  for (auto* action : place.actions()) {
    const QString text = action->text().remove(u'&');
    if (text.startsWith(QLatin1String("Flows of")) ||
        text.startsWith(QLatin1String("Weather of"))) {
      EXPECT_TRUE(action->isEnabled());
      action->trigger();
    }
  }
  EXPECT_EQ(shown, 2);
}

TEST(WeatherPictures, NothingIsCut) {
  for (const auto theme : {adapt::Theme::Light, adapt::Theme::Dark}) {
    widgets::applyTheme(theme);
    const QString suffix =
        theme == adapt::Theme::Dark ? QStringLiteral("_dark") : QStringLiteral("_light");
    Desk desk(tests::sampleSeason());
    FlowsDialog flows(desk.hub, kTr);
    tests::picture(flows, QStringLiteral("flows") + suffix, {640, 620});
    tests::expectNothingCut(flows);
    WeatherDialog weather(desk.hub, kTr);
    tests::picture(weather, QStringLiteral("weather") + suffix, {980, 560});
    tests::expectNothingCut(weather);
  }
  widgets::applyTheme(adapt::Theme::Light);
}

}  // namespace
}  // namespace outyard::yards
