// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/yards_place.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QBuffer>
#include <QDateEdit>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QPdfWriter>
#include <QRadioButton>
#include <QSlider>
#include <QTest>
#include <QTreeWidget>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/adapt/system_clock.h"
#include "ui/widgets/forecast_desk.h"
#include "ui/widgets/theme.h"
#include "ui/yards/date_bar.h"
#include "ui/yards/hive_table.h"
#include "ui/yards/move_caution.h"
#include "ui/yards/new_dialogs.h"
#include "ui/yards/yard_map.h"

namespace outyard::yards {
namespace {

using tests::day;
using tests::Desk;
using tests::field;

const base::YardId kTr{"TR"};

class YardsPlaceTest : public testing::Test {
 protected:
  YardsPlaceTest() : m_desk(tests::smallSeason()), m_place(m_desk.hub) {
    m_place.resize(1200, 740);
    m_place.show();
    m_desk.hub.selectYard(kTr);
    QCoreApplication::processEvents();
  }
  [[nodiscard]] YardMap& map() { return m_place.map(); }
  [[nodiscard]] QPoint at(const char* hive) { return map().markCentre(base::HiveId{hive}); }

  void drag(QPoint from, QPoint to) {
    press(from, to);
    QTest::mouseRelease(map().viewport(), Qt::LeftButton, Qt::NoModifier, to);
  }
  /// A drag still under way.
  void press(QPoint from, QPoint to) {
    QTest::mousePress(map().viewport(), Qt::LeftButton, Qt::NoModifier, from);
    const QPoint steps[] = {from + (to - from) / 2, to};
    for (const QPoint& point : steps) {
      QMouseEvent move(QEvent::MouseMove, point, map().viewport()->mapToGlobal(point), Qt::NoButton,
                       Qt::LeftButton, Qt::NoModifier);
      QCoreApplication::sendEvent(map().viewport(), &move);
    }
  }
  QAction* action(const QString& start) {
    for (auto* each : m_place.menuActions()) {
      if (QString(each->text()).remove(u'&').startsWith(start)) return each;
    }
    ADD_FAILURE() << "no action " << start.toStdString();
    return nullptr;
  }
  [[nodiscard]] const apiary::Place* lastPlace(const char* hive) const {
    const auto places = m_desk.hub.season().journal<apiary::Place>(base::HiveId{hive});
    return places.empty() ? nullptr : places.back();
  }

  Desk m_desk;
  YardsPlace m_place;
};

TEST_F(YardsPlaceTest, ArrangeDragCorrectsTheDrawingAndUndoRestoresIt) {
  const auto before = tests::allRows(m_desk.hub.season());
  const base::RecordId old = lastPlace("TR-01")->record;
  action(QStringLiteral("Arrange"))->trigger();
  const QPoint from = at("TR-01");
  drag(from, from + QPoint(0, 90));
  const auto* place = lastPlace("TR-01");
  EXPECT_EQ(place->how, apiary::PlaceHow::Drawn);
  EXPECT_EQ(place->supersedes, old);
  EXPECT_EQ(place->fromDate, day("2025-04-01")) << "no move: it always stood there";
  EXPECT_LT(*place->yM, 3.0);
  EXPECT_TRUE(m_desk.hub.season().journal<apiary::Event>(base::HiveId{"TR-01"}).empty());
  EXPECT_TRUE(m_desk.dialogs.titles.isEmpty()) << "nothing is asked";
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
  EXPECT_NEAR(at("TR-01").y(), from.y(), 1);
}

TEST_F(YardsPlaceTest, ArrangeSnapsToAStand) {
  apiary::Stand stand;
  stand.stand = "S1";
  stand.yard = kTr;
  stand.xM = 4;
  stand.yM = 8;
  stand.kind = apiary::StandKind::PalletOfTwo;
  ASSERT_TRUE(m_desk.hub.execute(session::addStand(stand)));
  map().setArranging(true);
  const double px = map().pxPerMetre();
  const QPoint from = at("TR-01");  // stands at 2, 3
  drag(from, from + QPointF((4.3 - 2) * px + 4, -(8 - 3) * px + 4).toPoint());
  EXPECT_EQ(lastPlace("TR-01")->stand, "S1");
  EXPECT_NEAR(*lastPlace("TR-01")->xM, 4.3, 1e-9);
  EXPECT_NEAR(*lastPlace("TR-01")->yM, 8, 1e-9);
}

TEST_F(YardsPlaceTest, EscapeDuringADragPutsTheHiveBack) {
  map().setArranging(true);
  const auto before = tests::allRows(m_desk.hub.season());
  const QPoint from = at("TR-02");
  press(from, from + QPoint(30, 80));
  EXPECT_NE(at("TR-02"), from);
  QTest::keyClick(&map(), Qt::Key_Escape);
  EXPECT_EQ(at("TR-02"), from);
  QTest::mouseRelease(map().viewport(), Qt::LeftButton, Qt::NoModifier, from + QPoint(30, 80));
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
}

TEST_F(YardsPlaceTest, ADragOutsideArrangeIsAMoveWithItsDate) {
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    field<QDateEdit>(dialog, "moveDate")->setDate(QDate(2026, 4, 20));
    EXPECT_FALSE(field<QLabel>(dialog, "moveCaution")->text().isEmpty());
    return true;
  };
  const QPoint from = at("TR-03");
  drag(from, from + QPoint(0, 120));
  ASSERT_EQ(m_desk.dialogs.titles.size(), 1);
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_EQ(lastPlace("TR-03")->how, apiary::PlaceHow::Moved);
  EXPECT_EQ(lastPlace("TR-03")->fromDate, day("2026-04-20"));
  const auto events = m_desk.hub.season().journal<apiary::Event>(base::HiveId{"TR-03"});
  ASSERT_EQ(events.size(), 1U);
  EXPECT_EQ(events.front()->kind, apiary::EventKind::Moved);
}

TEST_F(YardsPlaceTest, ADragThatIsCalledOffInItsDialogChangesNothing) {
  const auto before = tests::allRows(m_desk.hub.season());
  m_desk.dialogs.onRun = [](QDialog&) { return false; };
  const QPoint from = at("TR-03");
  drag(from, from + QPoint(0, 120));
  EXPECT_EQ(m_desk.dialogs.titles.size(), 1);
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
  EXPECT_EQ(at("TR-03"), from);
}

TEST_F(YardsPlaceTest, ADropOnAMarkSetsOverWithAnExcluder) {
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    EXPECT_TRUE(field<QRadioButton>(dialog, "jointSetOver")->isChecked());
    EXPECT_TRUE(field<QLabel>(dialog, "jointWhy")->text().isEmpty());
    EXPECT_FALSE(field<QLabel>(dialog, "jointGuide")->text().isEmpty()) << "cautions are shown";
    return true;
  };
  drag(at("TR-02"), at("TR-05"));
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  const auto* donor = m_desk.hub.hive(base::HiveId{"TR-05"});
  ASSERT_TRUE(donor->stacked());
  EXPECT_EQ(donor->colonies[1].colony, base::ColonyId{"TR-02"});
  EXPECT_EQ(donor->colonies[1].place, apiary::ColonyPlace::OverExcluder);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_FALSE(m_desk.hub.hive(base::HiveId{"TR-05"})->stacked());
}

TEST_F(YardsPlaceTest, TheDropDialogUnitesOrSwapsToo) {
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    field<QRadioButton>(dialog, "jointSwap")->setChecked(true);
    return true;
  };
  const double x1 = *lastPlace("TR-01")->xM, x2 = *lastPlace("TR-02")->xM;
  drag(at("TR-01"), at("TR-02"));
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_NEAR(*lastPlace("TR-01")->xM, x2, 1e-9);
  EXPECT_NEAR(*lastPlace("TR-02")->xM, x1, 1e-9);
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    field<QRadioButton>(dialog, "jointUnite")->setChecked(true);
    return true;
  };
  drag(at("TR-03"), at("TR-04"));
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_TRUE(m_desk.hub.hive(base::HiveId{"TR-03"})->colonies.empty());
}

TEST_F(YardsPlaceTest, ADayToComeIsPlannedNotRecorded) {
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    field<QDateEdit>(dialog, "jointDate")->setDate(QDate(2026, 5, 9));
    return true;
  };
  drag(at("TR-02"), at("TR-05"));
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_FALSE(m_desk.hub.hive(base::HiveId{"TR-05"})->stacked());
  const auto& tasks = m_desk.hub.season().table<apiary::Task>();
  ASSERT_EQ(tasks.size(), 1U);
  EXPECT_EQ(tasks.begin()->second.kind, "stacked");
  EXPECT_EQ(tasks.begin()->second.plannedOn, day("2026-05-09"));
}

TEST_F(YardsPlaceTest, WhatCannotBeDoneIsGreyedAndSaysWhy) {
  // TR-07 is empty: nothing to set over.
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    EXPECT_FALSE(field<QLabel>(dialog, "jointWhy")->text().isEmpty());
    EXPECT_FALSE(dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->isEnabled());
    return true;
  };
  const auto before = tests::allRows(m_desk.hub.season());
  drag(at("TR-07"), at("TR-05"));
  EXPECT_EQ(m_desk.dialogs.titles.size(), 1);
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
}

TEST_F(YardsPlaceTest, EveryDragHasAMenuTwin) {
  m_desk.hub.selectHive(base::HiveId{"TR-02"});
  for (const char* text : {"Set over", "Unite", "Swap stands", "Move", "Correct"}) {
    m_desk.dialogs.titles.clear();
    action(QLatin1String(text))->trigger();
    EXPECT_EQ(m_desk.dialogs.titles.size(), 1) << text;
  }
}

TEST_F(YardsPlaceTest, AnEarlierDayIsForLookingOnly) {
  m_desk.hub.setShownDate(day("2026-04-01"));
  const auto before = tests::allRows(m_desk.hub.season());
  map().setArranging(true);
  drag(at("TR-01"), at("TR-01") + QPoint(0, 60));
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
  m_desk.hub.setShownDate(day("2025-03-01"));
  EXPECT_EQ(map().item(base::HiveId{"TR-01"}), nullptr) << "it had not come yet";
}

TEST_F(YardsPlaceTest, KeysGoFromHiveToHive) {
  map().setFocus();
  QTest::keyClick(&map(), Qt::Key_Tab);
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId{"TR-01"});
  QTest::keyClick(&map(), Qt::Key_Tab);
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId{"TR-02"});
  QTest::keyClick(&map(), Qt::Key_Right);
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId{"TR-03"});
  QTest::keyClick(&map(), Qt::Key_Left);
  QTest::keyClick(&map(), Qt::Key_Left);
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId{"TR-01"});
  QTest::keyClick(&map(), Qt::Key_Left);
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId{"TR-01"}) << "none lies further left";
}

TEST_F(YardsPlaceTest, WalkingByKeysKeepsTheYardInSight) {
  const QPoint before = at("TR-01");
  for (int i = 0; i < 3; ++i) QTest::keyClick(&map(), Qt::Key_Tab);
  ASSERT_TRUE(m_desk.hub.selection().hive);
  EXPECT_EQ(at("TR-01"), before) << "all marks were in sight: nothing scrolls";
  map().zoomBy(6);
  for (int i = 0; i < 6; ++i) {
    QTest::keyClick(&map(), Qt::Key_Tab);
    const auto hive = m_desk.hub.selection().hive;
    if (hive) {
      EXPECT_TRUE(map().viewport()->rect().contains(map().markCentre(*hive)));
    }
  }
}

TEST_F(YardsPlaceTest, ShiftedArrowsArrangeByKeyboard) {
  m_desk.hub.selectHive(base::HiveId{"TR-01"});
  QTest::keyClick(&map(), Qt::Key_Up, Qt::ShiftModifier);
  EXPECT_NEAR(*lastPlace("TR-01")->yM, 3, 1e-9) << "only in Arrange";
  map().setArranging(true);
  QTest::keyClick(&map(), Qt::Key_Up, Qt::ShiftModifier);
  EXPECT_NEAR(*lastPlace("TR-01")->yM, 3.1, 1e-9);
}

TEST_F(YardsPlaceTest, ZoomingOutGroupsMarksAndInOpensThem) {
  EXPECT_EQ(map().groupCount(), 0);
  for (int i = 0; i < 12; ++i) QTest::keyClick(&map(), Qt::Key_Minus);
  EXPECT_GT(map().groupCount(), 0);
  for (const auto& id : map().order()) {
    EXPECT_GE(map().item(id)->markRect().height(), 24) << "marks are never smaller";
  }
  QTest::keyClick(&map(), Qt::Key_0);
  EXPECT_EQ(map().groupCount(), 0);
}

TEST_F(YardsPlaceTest, TheTableShowsTheSameHives) {
  m_place.showAsTable(true);
  const auto& model = m_place.table().hives();
  EXPECT_EQ(model.rowCount(), 7);
  EXPECT_GT(model.columnCount(), 0);
  m_desk.hub.selectHive(base::HiveId{"TR-04"});
  EXPECT_EQ(m_place.table().currentIndex().data().toString(), QStringLiteral("TR-04"));
  QTest::keyClick(&m_place.table(), Qt::Key_Down);
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId{"TR-05"});
}

TEST_F(YardsPlaceTest, TheListCountsAndFilters) {
  auto* list = field<QTreeWidget>(m_place, "yardList");
  ASSERT_EQ(list->topLevelItemCount(), 2);
  field<QLineEdit>(m_place, "yardFilter")->setText(QStringLiteral("tr"));
  EXPECT_TRUE(list->topLevelItem(0)->isHidden());
  EXPECT_FALSE(list->topLevelItem(1)->isHidden());
  EXPECT_EQ(list->topLevelItem(1)->text(1), QStringLiteral("6")) << "live hives";
}

TEST_F(YardsPlaceTest, TheSliderGoesBackInTime) {
  auto* slider = field<QSlider>(m_place, "dateSlider");
  const int today = slider->maximum() - DateBar::kDaysAhead;
  EXPECT_EQ(slider->value(), today);
  slider->setValue(today - 10);
  EXPECT_TRUE(QTest::qWaitFor([&] { return m_desk.hub.shownDate() == day("2026-04-15"); }));
  field<QAbstractButton>(m_place, "dateToday")->click();
  EXPECT_TRUE(m_desk.hub.showsToday());
}

TEST_F(YardsPlaceTest, TheSliderRunsAheadToWhatIsExpected) {
  auto* slider = field<QSlider>(m_place, "dateSlider");
  auto* hint = field<QLabel>(m_place, "mapHint");
  auto& desk = m_desk.hub.forecasts();
  m_desk.hub.selectYard(kTr);
  m_desk.hub.setShownDate(day("2026-06-06"));
  EXPECT_EQ(slider->value(), slider->maximum() - DateBar::kDaysAhead + 42);
  EXPECT_TRUE(m_desk.hub.showsFuture());
  EXPECT_TRUE(hint->text().contains(QStringLiteral("worked out"))) << hint->text().toStdString();
  ASSERT_TRUE(QTest::qWaitFor([&] { return desk.isFresh(kTr); }, 60000));
  EXPECT_TRUE(hint->text().contains(QStringLiteral("Outlines"))) << hint->text().toStdString();
  // The list says it in whole seams, and the map shows every hive's outline.
  auto& table = m_place.table();
  bool said = false;
  for (int row = 0; row < table.model()->rowCount(); ++row) {
    const auto text =
        table.model()->index(row, HiveTableModel::Expected).data(Qt::DisplayRole).toString();
    said = said || text.contains(QStringLiteral("seams"));
  }
  EXPECT_TRUE(said);
  EXPECT_EQ(desk.expectedIn(kTr, day("2026-06-06")).size(), 6u);
  // A week at a time ahead, back to today and not beyond the year.
  field<QAbstractButton>(m_place, "dateOn")->click();
  EXPECT_EQ(m_desk.hub.shownDate(), day("2026-06-13"));
  field<QAbstractButton>(m_place, "dateBack")->click();
  EXPECT_EQ(m_desk.hub.shownDate(), day("2026-06-06"));
  slider->setValue(slider->maximum());
  ASSERT_TRUE(QTest::qWaitFor([&] { return m_desk.hub.shownDate() == day("2027-04-25"); }));
  EXPECT_FALSE(field<QAbstractButton>(m_place, "dateOn")->isEnabled());
  // Judged by what is known today, whatever day is looked at.
  for (const auto& judgement : m_desk.hub.judgements(kTr)) {
    EXPECT_TRUE(!judgement.strength || judgement.strength->seenOn <= day("2026-04-25"));
  }
  field<QAbstractButton>(m_place, "dateToday")->click();
  EXPECT_TRUE(m_desk.hub.showsToday());
}

TEST(YardsPictures, WhatIsExpectedStandsInOutline) {
  tests::Desk desk(tests::sampleSeason(), "2026-04-25");
  const auto yard = desk.hub.season().table<apiary::Yard>().begin()->second.yard;
  for (const bool dark : {false, true}) {
    YardsPlace place(desk.hub);
    place.setPalette(dark ? widgets::darkPalette() : widgets::lightPalette());
    place.showAsTable(false);
    desk.hub.selectYard(yard);
    desk.hub.setShownDate(day("2026-05-23"));
    desk.hub.forecasts().want(yard);
    ASSERT_TRUE(QTest::qWaitFor([&] { return desk.hub.forecasts().isFresh(yard); }, 60000));
    const QString name =
        QStringLiteral("yard-ahead-") + (dark ? QStringLiteral("dark") : QStringLiteral("light"));
    EXPECT_FALSE(tests::picture(place, name).isNull());
    place.showAsTable(true);
    tests::picture(place, name + QStringLiteral("-table"));
  }
}

TEST_F(YardsPlaceTest, NewYardHiveAndStandAreMade) {
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    auto* ok = dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
    EXPECT_FALSE(ok->isEnabled()) << "a yard without a name is refused";
    field<QLineEdit>(dialog, "yardId")->setText(QStringLiteral("HL"));
    field<QLineEdit>(dialog, "yardLatitude")->setText(QStringLiteral("fortyfour"));
    EXPECT_FALSE(ok->isEnabled()) << "not a number";
    field<QLineEdit>(dialog, "yardLatitude")->setText(QStringLiteral("44.1"));
    return true;
  };
  action(QStringLiteral("Add yard"))->trigger();
  ASSERT_NE(m_desk.hub.season().yard(base::YardId{"HL"}), nullptr);
  EXPECT_NEAR(*m_desk.hub.season().yard(base::YardId{"HL"})->latitude, 44.1, 1e-9);

  m_desk.hub.selectYard(kTr);
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    EXPECT_EQ(field<QLineEdit>(dialog, "hiveNumber")->text(), QStringLiteral("TR-08"));
    return true;
  };
  action(QStringLiteral("Add hive"))->trigger();
  EXPECT_NE(map().item(base::HiveId{"TR-08"}), nullptr);
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  action(QStringLiteral("Add stand"))->trigger();
  EXPECT_EQ(m_desk.hub.season().table<apiary::Stand>().size(), 1U);
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
}

TEST_F(YardsPlaceTest, ThePageIsPrinted) {
  QBuffer out;
  ASSERT_TRUE(out.open(QIODevice::WriteOnly));
  {
    QPdfWriter writer(&out);
    m_place.printTo(writer);
  }
  EXPECT_TRUE(out.data().startsWith("%PDF"));
  EXPECT_GT(out.data().size(), 3000);
}

TEST(PairArrowsTest, ASmallColonyGoesToItsDonorAndTheGainStandsAtIt) {
  planning::BoostPlan plan;
  planning::BoostOption stack;
  stack.id = "stack:A:B:1";
  stack.hive = base::HiveId{"A"};
  stack.method = apiary::Method::Stack;
  stack.donorHive = base::HiveId{"B"};
  stack.gain = {4000, 3000, 5000};
  planning::BoostOption frames = stack;
  frames.id = "sealed_frames:C:B:1";
  frames.hive = base::HiveId{"C"};
  frames.method = apiary::Method::SealedFrames;
  planning::BoostOption feed = stack;
  feed.id = "feed:D::1";
  feed.donorHive.reset();
  plan.problem.options = {stack, frames, feed};
  plan.chosen = {stack.id, frames.id, feed.id};
  const auto arrows = pairArrows(plan);
  ASSERT_EQ(arrows.size(), 2U) << "feeding needs no arrow";
  EXPECT_EQ(arrows[0].from, stack.hive);
  EXPECT_EQ(arrows[0].labelAt, stack.hive);
  EXPECT_EQ(arrows[1].from, *frames.donorHive);
  EXPECT_EQ(arrows[1].to, frames.hive);
  EXPECT_TRUE(arrows[0].label.startsWith(QStringLiteral("A gains")));
}

TEST(DistanceTest, KnownDistances) {
  apiary::Yard a, b;
  a.latitude = 44.0;
  a.longitude = -72.0;
  b.latitude = 45.0;
  b.longitude = -72.0;
  // A degree of a meridian on a sphere of 6,371 km: pi * 6371 / 180 = 111.195 km.
  EXPECT_NEAR(*distanceBetween(a, b), 111195, 1);
  b.latitude.reset();
  EXPECT_FALSE(distanceBetween(a, b).has_value());
}

}  // namespace
}  // namespace outyard::yards
