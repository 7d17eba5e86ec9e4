// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAction>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFileInfo>
#include <QImage>
#include <QMouseEvent>
#include <QPushButton>
#include <QTest>

#include "tests/ui/support/desk.h"
#include "ui/yards/thing_dialogs.h"
#include "ui/yards/yard_map.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {
namespace {

using apiary::Feature;
using apiary::FeatureKind;
using apiary::Stand;
using tests::Desk;
using tests::field;

const base::YardId kTr{"TR"};

class ThingsTest : public testing::Test {
 protected:
  ThingsTest() : m_desk(tests::smallSeason()), m_place(m_desk.hub) {
    m_place.resize(1200, 740);
    m_place.show();
    m_desk.hub.selectYard(kTr);
    QCoreApplication::processEvents();
  }
  [[nodiscard]] YardMap& map() { return m_place.map(); }
  QAction* twin(const char* name) { return field<QAction>(m_place, name); }
  static void choose(QDialog& dialog, const char* combo, FeatureKind kind) {
    auto* box = field<QComboBox>(dialog, combo);
    box->setCurrentIndex(box->findData(static_cast<int>(kind)));
  }
  void add(FeatureKind kind, double x, double y, double x2 = 0, double y2 = 0) {
    m_desk.dialogs.onRun = [=](QDialog& dialog) {
      choose(dialog, "featureKind", kind);
      field<QDoubleSpinBox>(dialog, "featureX")->setValue(x);
      field<QDoubleSpinBox>(dialog, "featureY")->setValue(y);
      field<QDoubleSpinBox>(dialog, "featureX2")->setValue(x2);
      field<QDoubleSpinBox>(dialog, "featureY2")->setValue(y2);
      if (kind == FeatureKind::Picture) field<QPushButton>(dialog, "featureChoose")->click();
      return true;
    };
    twin("addFeature")->trigger();
  }
  [[nodiscard]] const std::map<std::string, Feature>& features() {
    return m_desk.hub.season().table<Feature>();
  }
  void drag(QPoint from, QPoint to, bool release = true) {
    QTest::mousePress(map().viewport(), Qt::LeftButton, Qt::NoModifier, from);
    for (const QPoint& point : {from + (to - from) / 2, to}) {
      QMouseEvent move(QEvent::MouseMove, point, map().viewport()->mapToGlobal(point), Qt::NoButton,
                       Qt::LeftButton, Qt::NoModifier);
      QCoreApplication::sendEvent(map().viewport(), &move);
    }
    if (release) QTest::mouseRelease(map().viewport(), Qt::LeftButton, Qt::NoModifier, to);
  }

  Desk m_desk;
  YardsPlace m_place;
};

TEST_F(ThingsTest, AFenceHasTwoEndsAndIsTakenAwayAgain) {
  const auto before = tests::allRows(m_desk.hub.season());
  EXPECT_EQ(twin("removeThing")->isEnabled(), !thingsOf(m_desk.hub.season(), kTr).empty());
  const auto had = features().size();
  add(FeatureKind::Fence, 1, 1, 1, 1);
  EXPECT_EQ(features().size(), had) << "both ends the same: the button is greyed";
  add(FeatureKind::Fence, 0, 1, 12, 1.5);
  ASSERT_EQ(features().size(), had + 1);
  ASSERT_EQ(m_desk.dialogs.failures, QStringList());
  const auto things = thingsOf(m_desk.hub.season(), kTr);
  const auto& fence = std::get<Feature>(things.back());
  EXPECT_EQ(fence.kind, FeatureKind::Fence);
  EXPECT_NEAR(*fence.x2M, 12, 1e-9);
  EXPECT_NEAR(*fence.y2M, 1.5, 1e-9);
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    auto* which = field<QComboBox>(dialog, "thingWhich");
    which->setCurrentIndex(which->count() - 1);
    return true;
  };
  twin("removeThing")->trigger();
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
}

TEST_F(ThingsTest, AGateIsDraggedInArrangeModeOnly) {
  add(FeatureKind::Gate, 4, 6);
  const auto key = std::get<Feature>(thingsOf(m_desk.hub.season(), kTr).back()).feature;
  const QPoint from = map().mapFromScene(4, -6);
  ASSERT_TRUE(map().thingAt(from));
  drag(from, from + QPoint(60, 0));
  EXPECT_NEAR(features().at(key).xM, 4, 1e-9) << "outside Arrange mode the ground is panned";
  map().setArranging(true);
  map().fit();
  const QPoint now = map().mapFromScene(4, -6);
  drag(now, now + QPoint(60, 30), false);
  QTest::keyClick(&map(), Qt::Key_Escape);
  QTest::mouseRelease(map().viewport(), Qt::LeftButton, Qt::NoModifier, now + QPoint(60, 30));
  EXPECT_NEAR(features().at(key).xM, 4, 1e-9) << "called off";
  drag(now, now + QPoint(60, 30));
  EXPECT_NEAR(features().at(key).xM, 4 + 60 / map().pxPerMetre(), 0.05);
  EXPECT_NEAR(features().at(key).yM, 6 - 30 / map().pxPerMetre(), 0.05);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_NEAR(features().at(key).yM, 6, 1e-9);
}

TEST_F(ThingsTest, APictureIsCopiedBesideTheSeason) {
  const auto had = features().size();
  add(FeatureKind::Picture, 0, 0, 20, 15);
  EXPECT_EQ(features().size(), had) << "no file chosen";
  m_desk.dialogs.file = m_desk.folder.filePath(QStringLiteral("ground.png"));
  QImage image(40, 30, QImage::Format_RGB32);
  image.fill(Qt::green);
  ASSERT_TRUE(image.save(m_desk.dialogs.file));
  add(FeatureKind::Picture, 0, 0, 20, 15);
  ASSERT_EQ(features().size(), had + 1);
  const auto& picture = std::get<Feature>(thingsOf(m_desk.hub.season(), kTr).back());
  EXPECT_EQ(picture.file, "ground.png");
  EXPECT_TRUE(QFileInfo::exists(picturesFolder(m_desk.hub) + QStringLiteral("/ground.png")));
  // Another picture of the same name does not take the first one's place.
  image.fill(Qt::red);
  ASSERT_TRUE(image.save(m_desk.dialogs.file));
  add(FeatureKind::Picture, 0, 0, 20, 15);
  EXPECT_EQ(std::get<Feature>(thingsOf(m_desk.hub.season(), kTr).back()).file, "ground-2.png");
}

TEST_F(ThingsTest, AStandIsChangedAndOneInUseStays) {
  Stand stand;
  stand.stand = "S9";
  stand.yard = kTr;
  stand.notes = "oak";
  ASSERT_TRUE(m_desk.hub.execute(session::addStand(stand)));
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    if (auto* which = dialog.findChild<QComboBox*>(QStringLiteral("thingWhich"))) {
      which->setCurrentIndex(which->findText(QStringLiteral("stand S9")));
      return true;
    }
    auto* kind = field<QComboBox>(dialog, "standKind");
    kind->setCurrentIndex(kind->findData(static_cast<int>(apiary::StandKind::PalletOfFour)));
    field<QDoubleSpinBox>(dialog, "standX")->setValue(7.5);
    return true;
  };
  twin("changeThing")->trigger();
  const auto find = [&]() -> const Stand* {
    for (const auto& [key, each] : m_desk.hub.season().table<Stand>()) {
      if (each.stand == "S9") return &each;
    }
    return nullptr;
  };
  ASSERT_TRUE(find());
  EXPECT_EQ(find()->kind, apiary::StandKind::PalletOfFour);
  EXPECT_NEAR(find()->xM, 7.5, 1e-9);
  EXPECT_EQ(find()->notes, "oak");
  session::Spot spot;
  spot.hive = base::HiveId{"TR-01"};
  spot.xM = 7.5;
  spot.stand = "S9";
  ASSERT_TRUE(m_desk.hub.execute(session::arrange({spot})));
  twin("removeThing")->trigger();
  EXPECT_TRUE(find()) << "a hive stands on it";
  ASSERT_TRUE(m_desk.hub.undo());
  twin("removeThing")->trigger();
  EXPECT_FALSE(find());
}

}  // namespace
}  // namespace outyard::yards
