// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QDir>
#include <QDoubleSpinBox>
#include <QFile>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QMouseEvent>
#include <QSvgRenderer>
#include <QTest>
#include <QTreeWidget>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/adapt/system_clock.h"
#include "ui/widgets/theme.h"
#include "ui/yards/move_caution.h"
#include "ui/yards/thing_dialogs.h"
#include "ui/yards/yard_map.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {
namespace {

using apiary::Feature;
using apiary::FeatureKind;
using apiary::Stand;
using base::HiveId;
using base::YardId;
using tests::Desk;
using tests::field;

const YardId kTr{"TR"}, kMb{"MB"};

class ToolsTest : public testing::Test {
 protected:
  ToolsTest() : m_desk(tests::smallSeason()), m_place(m_desk.hub) {
    m_place.resize(1200, 740);
    m_place.show();
    m_desk.hub.selectYard(kTr);
    QCoreApplication::processEvents();
  }
  [[nodiscard]] YardMap& map() { return m_place.map(); }
  QAction* twin(const char* name) { return field<QAction>(m_place, name); }
  /// With plain spaces before its units.
  QString hint() { return field<QLabel>(m_place, "mapHint")->text().simplified(); }
  [[nodiscard]] const apiary::Season& season() { return m_desk.hub.season(); }
  [[nodiscard]] const apiary::HiveState& hive(const char* id) {
    return *m_desk.hub.hive(HiveId{id});
  }
  [[nodiscard]] const Stand& stand() { return season().table<Stand>().begin()->second; }
  void moveMouse(QPoint to, Qt::MouseButtons held) {
    QMouseEvent move(QEvent::MouseMove, to, map().viewport()->mapToGlobal(to), Qt::NoButton, held,
                     Qt::NoModifier);
    QCoreApplication::sendEvent(map().viewport(), &move);
  }
  void drag(QPoint from, QPoint to, Qt::KeyboardModifiers keys = Qt::NoModifier) {
    QTest::mousePress(map().viewport(), Qt::LeftButton, keys, from);
    moveMouse(from + (to - from) / 2, Qt::LeftButton);
    moveMouse(to, Qt::LeftButton);
    m_whileDragging = hint();
    QTest::mouseRelease(map().viewport(), Qt::LeftButton, keys, to);
  }
  /// A pallet of two with TR-01 and TR-02 on it.
  void palletWithTwo() {
    Stand pallet;
    pallet.stand = "P1";
    pallet.yard = kTr;
    pallet.kind = apiary::StandKind::PalletOfTwo;
    pallet.xM = 5;
    pallet.yM = 8;
    ASSERT_TRUE(m_desk.hub.execute(session::addStand(pallet)));
    session::Spot left, right;
    left.hive = HiveId{"TR-01"};
    left.xM = 4.7;
    left.yM = right.yM = 8;
    left.stand = right.stand = "P1";
    right.hive = HiveId{"TR-02"};
    right.xM = 5.3;
    ASSERT_TRUE(m_desk.hub.execute(session::arrange({left, right})));
    map().setArranging(true);
    map().fit();
  }

  Desk m_desk;
  YardsPlace m_place;
  QString m_whileDragging;
};

TEST_F(ToolsTest, CtrlAndDragTakesThePalletWithItsHives) {
  palletWithTwo();
  const auto before = tests::allRows(season());
  const QPoint from = map().markCentre(HiveId{"TR-01"});
  drag(from, from + QPoint(40, 30), Qt::ControlModifier);
  const double x = 40 / map().pxPerMetre(), y = 30 / map().pxPerMetre();
  EXPECT_NEAR(stand().xM, 5 + x, 0.02);
  EXPECT_NEAR(stand().yM, 8 - y, 0.02);
  EXPECT_NEAR(*hive("TR-01").xM, 4.7 + x, 0.02);
  EXPECT_NEAR(*hive("TR-02").xM, 5.3 + x, 0.02);
  EXPECT_TRUE(m_whileDragging.contains(QStringLiteral("P1")));
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(season()), before) << "one step";
}

TEST_F(ToolsTest, KeysChooseShiftTurnAndRemove) {
  palletWithTwo();
  QTest::keyClick(&map(), Qt::Key_S);
  ASSERT_TRUE(map().chosenThing());
  EXPECT_TRUE(hint().contains(QStringLiteral("P1")));
  QTest::keyClick(&map(), Qt::Key_Right, Qt::ShiftModifier);
  EXPECT_NEAR(stand().xM, 5.1, 1e-9);
  EXPECT_NEAR(*hive("TR-02").xM, 5.4, 1e-9);
  QTest::keyClick(&map(), Qt::Key_Up, Qt::ShiftModifier);
  EXPECT_NEAR(stand().yM, 8.1, 1e-9);
  QTest::keyClick(&map(), Qt::Key_BracketRight);
  EXPECT_NEAR(stand().angleDeg.value(), 15, 1e-9);
  EXPECT_NEAR(*hive("TR-01").entranceDeg, 195, 1e-9);
  EXPECT_GT(*hive("TR-01").yM, *hive("TR-02").yM) << "turned clockwise";
  QTest::keyClick(&map(), Qt::Key_BracketLeft);
  QTest::keyClick(&map(), Qt::Key_BracketLeft);
  EXPECT_NEAR(stand().angleDeg.value(), 345, 1e-9);
  QTest::keyClick(&map(), Qt::Key_Delete);
  EXPECT_EQ(season().table<Stand>().size(), 1U) << "hives stand on it";
  EXPECT_EQ(m_desk.dialogs.failures.size(), 1);
  QTest::keyClick(&map(), Qt::Key_S);
  EXPECT_FALSE(map().chosenThing()) << "after the last one none";
}

TEST_F(ToolsTest, DeleteTakesAFeatureAway) {
  Feature gate;
  gate.feature = "TR-F1";
  gate.yard = kTr;
  gate.xM = 3;
  gate.yM = 3;
  ASSERT_TRUE(m_desk.hub.execute(session::addFeature(gate)));
  map().setArranging(true);
  QTest::keyClick(&map(), Qt::Key_S);
  QTest::keyClick(&map(), Qt::Key_BracketRight);
  EXPECT_TRUE(hint().contains(QStringLiteral("turn")));
  QTest::keyClick(&map(), Qt::Key_Delete);
  EXPECT_FALSE(season().find<Feature>("TR-F1"));
  EXPECT_FALSE(map().chosenThing());
}

TEST_F(ToolsTest, TwoClicksMeasureBetweenHives) {
  twin("measure")->trigger();
  EXPECT_TRUE(map().ruler().active());
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::NoModifier,
                    map().markCentre(HiveId{"TR-01"}));
  moveMouse(map().markCentre(HiveId{"TR-03"}), Qt::NoButton);
  EXPECT_TRUE(hint().contains(QStringLiteral("4.0 m"))) << hint().toStdString();
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::NoModifier,
                    map().markCentre(HiveId{"TR-04"}));
  EXPECT_NEAR(map().ruler().metres(), 6, 1e-9) << "from true place to true place";
  EXPECT_TRUE(hint().contains(QStringLiteral("6.0 m")));
  EXPECT_FALSE(m_desk.hub.selection().hive) << "measuring chooses nothing";
  QTest::keyClick(&map(), Qt::Key_Escape);
  EXPECT_TRUE(map().ruler().active());
  QTest::keyClick(&map(), Qt::Key_Escape);
  EXPECT_FALSE(map().ruler().active());
  EXPECT_FALSE(twin("measure")->isChecked());
}

TEST_F(ToolsTest, KeysMeasureInFeetToo) {
  m_desk.settings.set(adapt::desk::kLengthUnit, adapt::LengthUnit::Foot);
  m_desk.hub.selectHive(HiveId{"TR-01"});
  twin("measure")->trigger();
  QTest::keyClick(&map(), Qt::Key_Return);
  for (int step = 0; step < 3; ++step) QTest::keyClick(&map(), Qt::Key_Right);
  for (int step = 0; step < 4; ++step) QTest::keyClick(&map(), Qt::Key_Up, Qt::ShiftModifier);
  QTest::keyClick(&map(), Qt::Key_Return);
  const double metres = std::hypot(30, 4) / map().pxPerMetre();
  EXPECT_NEAR(map().ruler().metres(), metres, 1e-6);
  // 1 ft = 0.3048 m exactly (international foot, 1959).
  EXPECT_TRUE(hint().contains(QString::number(metres / 0.3048, 'f', 1) + QStringLiteral(" ft")))
      << hint().toStdString();
}

TEST_F(ToolsTest, TheDistanceIsShownWhileDragging) {
  map().setArranging(true);
  const QPoint from = map().markCentre(HiveId{"TR-07"});
  const double way = 60 / map().pxPerMetre();
  drag(from, from - QPoint(0, 60));
  EXPECT_TRUE(m_whileDragging.contains(QString::number(way, 'f', 1) + QStringLiteral(" m from")))
      << m_whileDragging.toStdString();
  EXPECT_TRUE(m_whileDragging.contains(QStringLiteral("TR-06"))) << "the nearest one";
}

TEST_F(ToolsTest, APictureIsScaledByTwoPointsAndFaded) {
  EXPECT_FALSE(twin("scalePicture")->isEnabled());
  Feature picture;
  picture.feature = "TR-F1";
  picture.yard = kTr;
  picture.kind = FeatureKind::Picture;
  picture.file = "ground.png";
  picture.x2M = 20;
  picture.y2M = 10;
  ASSERT_TRUE(m_desk.hub.execute(session::addFeature(picture)));
  ASSERT_TRUE(twin("scalePicture")->isEnabled());
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    field<QDoubleSpinBox>(dialog, "scaleTrue")->setValue(12);
    return true;
  };
  twin("scalePicture")->trigger();
  // TR-01 and TR-04 are 6 m apart: 12 m means twice the size about TR-01 (2 m, 3 m).
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::NoModifier,
                    map().markCentre(HiveId{"TR-01"}));
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::NoModifier,
                    map().markCentre(HiveId{"TR-04"}));
  const auto* scaled = season().find<Feature>("TR-F1");
  EXPECT_NEAR(scaled->xM, -2, 1e-6);
  EXPECT_NEAR(scaled->yM, -3, 1e-6);
  EXPECT_NEAR(*scaled->x2M, 38, 1e-6);
  EXPECT_NEAR(*scaled->y2M, 17, 1e-6);
  EXPECT_FALSE(map().ruler().active());
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_NEAR(*season().find<Feature>("TR-F1")->x2M, 20, 1e-9);
  twin("picture30")->trigger();
  EXPECT_EQ(m_desk.settings.get(adapt::desk::kGroundPicturePercent), 30);
}

TEST_F(ToolsTest, SeveralHivesGoToAnotherYardInOneDialog) {
  // Chosen outside Arrange mode.
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::NoModifier,
                    map().markCentre(HiveId{"TR-01"}));
  QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::ShiftModifier,
                    map().markCentre(HiveId{"TR-03"}));
  ASSERT_EQ(map().marked().size(), 2U);
  const auto before = tests::allRows(season());
  auto* list = field<QTreeWidget>(m_place, "yardList");
  QTreeWidgetItem* other = nullptr;
  for (int i = 0; i < list->topLevelItemCount(); ++i) {
    if (list->topLevelItem(i)->text(0).contains(QStringLiteral("MB"))) {
      other = list->topLevelItem(i);
    }
  }
  ASSERT_TRUE(other);
  const QPoint on = list->viewport()->mapToGlobal(list->visualItemRect(other).center());
  QString caution;
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    EXPECT_TRUE(field<QLabel>(dialog, "severalHives")->text().contains(QStringLiteral("TR-03")));
    caution = field<QLabel>(dialog, "severalCaution")->text();
    return true;
  };
  drag(map().markCentre(HiveId{"TR-01"}), map().viewport()->mapFromGlobal(on));
  ASSERT_EQ(m_desk.dialogs.titles, QStringList(QStringLiteral("Move 2 hives")));
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_EQ(hive("TR-01").yard, kMb);
  EXPECT_EQ(hive("TR-03").yard, kMb);
  EXPECT_NEAR(*hive("TR-03").xM - *hive("TR-01").xM, 4, 1e-9) << "places to each other are kept";
  EXPECT_EQ(hive("TR-02").yard, kTr);
  EXPECT_TRUE(caution.contains(QStringLiteral("lift for two")));
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(season()), before) << "one step";
}

TEST_F(ToolsTest, ALaterDayPlansATaskForEachHive) {
  map().markAll();
  const auto hives = map().marked().size();
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    field<QDateEdit>(dialog, "severalDate")->setDate(QDate(2026, 5, 3));
    auto* to = field<QComboBox>(dialog, "severalYard");
    to->setCurrentIndex(to->findData(QStringLiteral("MB")));
    return true;
  };
  for (auto* each : m_place.menuActions()) {
    if (each->text() == QStringLiteral("Mo&ve…")) each->trigger();
  }
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_EQ(season().table<apiary::Task>().size(), hives);
  EXPECT_EQ(hive("TR-01").yard, kTr);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_TRUE(season().table<apiary::Task>().empty()) << "one step";
}

TEST_F(ToolsTest, HeatIsCautionedByTheDaysWeather) {
  session::Spot spot;
  spot.hive = HiveId{"TR-01"};
  const auto day = tests::day("2026-04-25");
  const auto said = [&](const YardId& to) {
    return moveCaution(m_desk.hub, {spot}, to, day).simplified();
  };
  EXPECT_TRUE(said(kMb).contains(QStringLiteral("No weather is entered")));
  EXPECT_FALSE(said(kTr).contains(QStringLiteral("overheat"))) << "it leaves no yard";
  apiary::WeatherDay weather;
  weather.yard = kTr;
  weather.date = day;
  weather.tminC = 8;
  weather.tmaxC = 18;
  ASSERT_TRUE(m_desk.hub.execute(session::recordWeather({weather})));
  EXPECT_FALSE(said(kMb).contains(QStringLiteral("overheat")));
  weather.tmaxC = 29;
  ASSERT_TRUE(m_desk.hub.execute(session::recordWeather({weather})));
  EXPECT_TRUE(said(kMb).startsWith(QStringLiteral("Move at night"))) << said(kMb).toStdString();
  EXPECT_TRUE(said(kMb).contains(QStringLiteral("29 °C on that day: closed colonies overheat")));
}

TEST_F(ToolsTest, ALayoutIsCopiedToANewYard) {
  palletWithTwo();
  map().setArranging(false);
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    auto* to = field<QComboBox>(dialog, "layoutTo");
    to->setCurrentIndex(to->findData(QString()));
    EXPECT_TRUE(field<QCheckBox>(dialog, "layoutStands")->isChecked());
    field<QLineEdit>(dialog, "layoutId")->setText(QStringLiteral("NW"));
    field<QLineEdit>(dialog, "layoutName")->setText(QStringLiteral("New wood"));
    return true;
  };
  twin("copyLayout")->trigger();
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_EQ(m_desk.hub.selection().yard, YardId{"NW"});
  EXPECT_EQ(thingsOf(season(), YardId{"NW"}).size(), 1U);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_FALSE(season().yard(YardId{"NW"}));
}

TEST_F(ToolsTest, TheMapAloneIsWrittenAsPdfSvgAndPng) {
  const auto save = [&](const char* name) {
    m_desk.dialogs.file = m_desk.folder.filePath(QLatin1String(name));
    twin("saveMap")->trigger();
    QFile file(m_desk.dialogs.file);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  };
  EXPECT_TRUE(save("map.pdf").startsWith("%PDF"));
  QSvgRenderer svg(save("map.svg"));
  EXPECT_TRUE(svg.isValid());
  EXPECT_NEAR(svg.viewBoxF().width() / svg.viewBoxF().height(), 297.0 / 210, 0.01);
  const QImage png = QImage::fromData(save("map.png"));
  ASSERT_FALSE(png.isNull());
  int dark = 0;
  for (int y = 0; y < png.height(); y += 2) {
    for (int x = 0; x < png.width(); x += 2) dark += qGray(png.pixel(x, y)) < 100 ? 1 : 0;
  }
  EXPECT_GT(dark, 2000) << "marks, numbers and title are on it";
  EXPECT_EQ(qGray(png.pixel(3, 3)), 255) << "white paper";
  EXPECT_TRUE(save("map.bmp").isEmpty());
  ASSERT_EQ(m_desk.dialogs.failures.size(), 1);
  EXPECT_TRUE(m_desk.dialogs.failures[0].contains(QStringLiteral(".svg")));
}

TEST_F(ToolsTest, GroundAndToolsReadInLightAndDark) {
  const auto put = [&](const char* key, FeatureKind kind, double x, double y, double x2 = 0,
                       double y2 = 0) {
    Feature feature;
    feature.feature = key;
    feature.yard = kTr;
    feature.kind = kind;
    feature.xM = x;
    feature.yM = y;
    if (x2 != 0) {
      feature.x2M = x2;
      feature.y2M = y2;
    }
    if (kind == FeatureKind::Picture) feature.file = "ground.png";
    ASSERT_TRUE(m_desk.hub.execute(session::addFeature(feature)));
  };
  QImage ground(200, 100, QImage::Format_RGB32);
  ground.fill(QColor(120, 150, 80));
  ASSERT_TRUE(QDir(m_desk.folder.path()).mkpath(QStringLiteral("pictures")));
  ASSERT_TRUE(ground.save(picturesFolder(m_desk.hub) + QStringLiteral("/ground.png")));
  palletWithTwo();
  put("TR-F1", FeatureKind::Gate, 1, 9);
  put("TR-F2", FeatureKind::Truck, 9, 9.5);
  put("TR-F3", FeatureKind::Water, 13, 6);
  put("TR-F4", FeatureKind::Fence, 1, 1, 17, 1.5);
  put("TR-F5", FeatureKind::Picture, 2, 2, 14, 7.5);
  map().fit();
  const QPoint onPicture = map().mapFromScene(12.9, -6.9);
  ASSERT_TRUE(map().viewport()->rect().contains(onPicture));
  const auto colourThere = [&] { return map().grab().toImage().pixelColor(onPicture); };
  for (const auto theme : {adapt::Theme::Light, adapt::Theme::Dark}) {
    widgets::applyTheme(theme);
    const QString name =
        theme == adapt::Theme::Light ? QStringLiteral("light") : QStringLiteral("dark");
    twin("picture0")->trigger();
    const QColor bare = colourThere();
    twin("picture30")->trigger();
    const QColor faint = colourThere();
    twin("picture100")->trigger();
    const QColor full = colourThere();
    EXPECT_NEAR(full.green(), 150, 3);
    EXPECT_GT(std::abs(full.blue() - bare.blue()), std::abs(faint.blue() - bare.blue()) + 10);
    twin("picture60")->trigger();
    map().chooseThing(ThingId{true, season().table<Stand>().begin()->first});
    tests::picture(m_place, QStringLiteral("yard_things_") + name);
    tests::expectNothingCut(m_place);
    twin("measure")->trigger();
    QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::NoModifier,
                      map().markCentre(HiveId{"TR-03"}));
    QTest::mouseClick(map().viewport(), Qt::LeftButton, Qt::NoModifier,
                      map().markCentre(HiveId{"TR-07"}) + QPoint(0, -90));
    tests::picture(m_place, QStringLiteral("yard_measure_") + name);
    tests::expectNothingCut(m_place);
    twin("measure")->trigger();
    EXPECT_FALSE(map().ruler().active());
    map().chooseThing(std::nullopt);
    tests::picture(m_place, QStringLiteral("yard_arrange_") + name);
    m_desk.dialogs.onRun = [&](QDialog& dialog) {
      tests::picture(dialog, QStringLiteral("dialog_%1_").arg(m_desk.dialogs.titles.size()) + name,
                     dialog.size());
      tests::expectNothingCut(dialog);
      return false;
    };
    m_desk.dialogs.titles.clear();
    twin("addFeature")->trigger();
    twin("changeThing")->trigger();
    twin("copyLayout")->trigger();
    map().setMarked({HiveId{"TR-01"}, HiveId{"TR-03"}, HiveId{"TR-05"}});
    for (auto* each : m_place.menuActions()) {
      if (each->text() == QStringLiteral("Mo&ve…")) each->trigger();
    }
    EXPECT_EQ(m_desk.dialogs.titles.size(), 4);
    map().setMarked({});
  }
  widgets::applyTheme(adapt::Theme::Light);
}

}  // namespace
}  // namespace outyard::yards
