// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/inspection_form.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTabWidget>
#include <QTableView>
#include <QTest>

#include "tests/ui/support/desk.h"
#include "ui/hive/comb_face_edit.h"
#include "ui/hive/comb_model.h"

namespace outyard::hive {
namespace {

using tests::day;
using tests::Desk;
using tests::field;

const base::HiveId kHive{"TR-02"};

/// Types as at the desk: into whatever has the focus, never into a named field.
class Keys {
 public:
  explicit Keys(QWidget& window) : m_window(window) {}
  void type(const char* text) const {
    for (const char* c = text; *c; ++c) QTest::keyClick(focus(), *c);
  }
  void key(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) const {
    QTest::keyClick(focus(), key, with);
  }
  /// A value, then on to the next field.
  void fill(const char* text) const {
    type(text);
    key(Qt::Key_Tab);
  }
  [[nodiscard]] QWidget* focus() const {
    QWidget* at = m_window.focusWidget();
    return at ? at : &m_window;
  }

 private:
  QWidget& m_window;
};

class InspectionFormTest : public testing::Test {
 protected:
  InspectionFormTest()
      : m_desk(tests::smallSeason()), m_form(m_desk.hub, kHive, {}), m_keys(m_form) {
    m_form.show();
    m_form.activateWindow();
    QCoreApplication::processEvents();
  }
  [[nodiscard]] const apiary::Inspection* last() const {
    const auto looks = m_desk.hub.season().journal<apiary::Inspection>(kHive);
    return looks.empty() ? nullptr : looks.back();
  }
  void toFirstField() { field<QLineEdit>(m_form, "date")->setFocus(); }

  Desk m_desk;
  InspectionForm m_form;
  Keys m_keys;
};

TEST_F(InspectionFormTest, BeginsAtTheSeams) {
  EXPECT_EQ(m_keys.focus()->objectName(), QStringLiteral("seams"));
}

TEST_F(InspectionFormTest, EveryValueTypedByKeyboardLandsInTheSeason) {
  toFirstField();
  m_keys.key(Qt::Key_A, Qt::ControlModifier);
  m_keys.fill("2026-04-24");
  m_keys.fill("10:45");
  m_keys.fill("13.5");
  m_keys.fill("3.25");  // seams
  m_keys.fill("2.5");   // full frames of bees
  m_keys.fill("4");     // frames with bees
  m_keys.fill("3");     // combs with brood
  m_keys.fill("1.25");  // sealed
  m_keys.fill("0.75");  // open
  m_keys.fill("y");     // eggs: yes
  m_keys.fill("4");     // pattern
  m_keys.fill("2");     // drone brood: some
  m_keys.fill("n");     // queen: the first of "not looked" and "no"
  m_keys.fill("2");     // queen cells
  m_keys.fill("s");     // sealed
  m_keys.fill("6,5");   // stores, with a decimal comma
  m_keys.fill("1");     // pollen
  m_keys.fill("2");     // empty comb
  m_keys.fill("31.2");  // weight
  m_keys.fill("2");     // temper
  m_keys.fill("c");     // chalkbrood
  m_keys.fill("y");     // drones seen
  m_keys.fill("Ann");   // who
  m_keys.type("queen on comb 4");
  m_keys.key(Qt::Key_Return, Qt::ControlModifier);

  ASSERT_EQ(m_form.result(), QDialog::Accepted);
  ASSERT_TRUE(m_desk.dialogs.failures.isEmpty())
      << m_desk.dialogs.failures.join(u' ').toStdString();
  const auto* i = last();
  ASSERT_NE(i, nullptr);
  EXPECT_EQ(i->date, day("2026-04-24"));
  EXPECT_EQ(i->time, base::TimeOfDay::fromHm(10, 45));
  EXPECT_EQ(i->airC, 13.5);
  EXPECT_EQ(i->seams, 3.25);
  EXPECT_EQ(i->seamsView, apiary::SeamsView::Above);
  EXPECT_EQ(i->beeFrames, 2.5);
  EXPECT_EQ(i->framesWithBees, 4);
  EXPECT_EQ(i->framesWithBrood, 3);
  EXPECT_EQ(i->sealedBroodFrames, 1.25);
  EXPECT_EQ(i->openBroodFrames, 0.75);
  EXPECT_EQ(i->eggsSeen, true);
  EXPECT_EQ(i->pattern, 4);
  EXPECT_EQ(i->droneBrood, 2);
  EXPECT_EQ(i->queenSeen, false);
  EXPECT_EQ(i->queenCells, 2);
  EXPECT_EQ(i->cellKind, apiary::CellKind::Sealed);
  EXPECT_EQ(i->honeyKg, 6.5);
  EXPECT_EQ(i->pollenFrames, 1);
  EXPECT_EQ(i->emptyCombFrames, 2);
  EXPECT_EQ(i->weightKg, 31.2);
  EXPECT_EQ(i->temper, 2);
  EXPECT_EQ(i->disease, apiary::Disease::Chalkbrood);
  EXPECT_EQ(i->dronesSeen, true);
  EXPECT_EQ(i->reader, "Ann");
  EXPECT_EQ(i->notes, "queen on comb 4");
  EXPECT_EQ(i->broodFrames, std::nullopt);
  // One undo step takes all of it back.
  EXPECT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(last(), nullptr);
}

TEST_F(InspectionFormTest, WhatIsLeftEmptyIsNotRecorded) {
  m_keys.type("5");
  m_keys.key(Qt::Key_Return, Qt::ControlModifier);
  const auto* i = last();
  ASSERT_NE(i, nullptr);
  apiary::Inspection expected;
  static_cast<apiary::RecordHead&>(expected) = *i;
  expected.hive = kHive;
  expected.date = day("2026-04-25");
  expected.seams = 5;
  expected.seamsView = apiary::SeamsView::Above;
  EXPECT_EQ(*i, expected);
}

TEST_F(InspectionFormTest, EnterGoesOnAndDoesNotRecord) {
  m_keys.type("5");
  m_keys.key(Qt::Key_Return);
  EXPECT_EQ(m_keys.focus()->objectName(), QStringLiteral("bee_frames"));
  EXPECT_TRUE(m_form.isVisible());
  EXPECT_EQ(last(), nullptr);
}

struct Bad {
  const char* field;
  const char* text;
};
class BadValue : public InspectionFormTest, public testing::WithParamInterface<Bad> {};

TEST_P(BadValue, ShowsASentenceAndIsNotRecorded) {
  auto* line = field<QLineEdit>(m_form, GetParam().field);
  line->setFocus();
  m_keys.key(Qt::Key_A, Qt::ControlModifier);
  m_keys.key(Qt::Key_Delete);
  m_keys.type(GetParam().text);
  auto* fault =
      m_form.findChild<QLabel*>(QLatin1String(GetParam().field) + QStringLiteral("_fault"));
  ASSERT_NE(fault, nullptr);
  EXPECT_TRUE(fault->isVisible());
  EXPECT_GT(fault->text().size(), 12);
  // A screen reader is told the same sentence.
  EXPECT_TRUE(fault->text().contains(line->accessibleDescription()));
  m_keys.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_TRUE(m_form.isVisible());
  EXPECT_EQ(last(), nullptr);
  EXPECT_EQ(m_keys.focus(), line);
  EXPECT_TRUE(field<QLabel>(m_form, "status")->text().startsWith(QStringLiteral("Not recorded")));
  // Mended, the sentence goes and the form can be recorded.
  line->clear();
  if (qstrcmp(GetParam().field, "date") == 0) line->setText(QStringLiteral("2026-04-25"));
  EXPECT_FALSE(fault->isVisible());
}

INSTANTIATE_TEST_SUITE_P(Values, BadValue,
                         testing::Values(Bad{"seams", "41"}, Bad{"seams", "five"},
                                         Bad{"bee_frames", "-1"}, Bad{"frames_with_brood", "2.5"},
                                         Bad{"pattern", "6"}, Bad{"temper", "0"},
                                         Bad{"honey_kg", "301"}, Bad{"air_c", "99"},
                                         Bad{"date", "2026-02-30"}, Bad{"time", "25:00"},
                                         Bad{"date", ""}));

TEST_F(InspectionFormTest, NothingTypedIsNotRecorded) {
  m_keys.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_TRUE(m_form.isVisible());
  EXPECT_EQ(last(), nullptr);
  EXPECT_FALSE(field<QLabel>(m_form, "status")->text().isEmpty());
}

TEST_F(InspectionFormTest, ADayBeforeTheHiveStoodIsRefusedInTheForm) {
  m_keys.type("5");
  field<QLineEdit>(m_form, "date")->setText(QStringLiteral("2024-04-25"));
  m_keys.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_TRUE(m_form.isVisible());
  EXPECT_EQ(last(), nullptr);
  EXPECT_TRUE(field<QLabel>(m_form, "status")->text().contains(QStringLiteral("TR-02")));
}

TEST_F(InspectionFormTest, EscapeAsksOnlyWhenSomethingWouldBeLost) {
  m_keys.type("5");
  m_desk.dialogs.yes = false;
  m_keys.key(Qt::Key_Escape);
  EXPECT_EQ(m_desk.dialogs.asked.size(), 1);
  EXPECT_TRUE(m_form.isVisible());
  m_desk.dialogs.yes = true;
  m_keys.key(Qt::Key_Escape);
  EXPECT_FALSE(m_form.isVisible());
  EXPECT_EQ(last(), nullptr);

  InspectionForm untouched(m_desk.hub, kHive, {});
  untouched.show();
  m_desk.dialogs.asked.clear();
  QTest::keyClick(&untouched, Qt::Key_Escape);
  EXPECT_FALSE(untouched.isVisible());
  EXPECT_TRUE(m_desk.dialogs.asked.isEmpty());
}

TEST_F(InspectionFormTest, TheEstimateFollowsWhatIsTyped) {
  auto* estimate = field<QLabel>(m_form, "estimate");
  EXPECT_FALSE(estimate->text().contains(QStringLiteral("Bees")));
  m_keys.type("6");
  EXPECT_TRUE(QTest::qWaitFor([&] { return estimate->text().contains(QStringLiteral("Bees")); }));
  const QString one = estimate->text();
  EXPECT_FALSE(one.contains(QStringLiteral("way")));
  m_keys.key(Qt::Key_Tab);
  m_keys.type("9");  // nine full frames against six seams
  EXPECT_TRUE(QTest::qWaitFor([&] { return estimate->text() != one; }));
  EXPECT_TRUE(estimate->text().contains(QStringLiteral("ways of looking")))
      << estimate->text().toStdString();
}

TEST_F(InspectionFormTest, CombsAreFilledInByLetters) {
  m_keys.type("3");
  auto* pages = field<QTabWidget>(m_form, "pages");
  pages->setCurrentIndex(1);
  auto* face = field<CombFaceEdit>(m_form, "combFace");
  face->setFocus();
  ASSERT_EQ(face->row(), 0);
  m_keys.type("hhppssee");
  EXPECT_EQ(face->row(), 1);  // the whole side was told: on to side b
  QTest::keyClick(face, Qt::Key_U, Qt::ShiftModifier);
  EXPECT_EQ(face->row(), 2);
  m_keys.type("o");  // one eighth of the next comb, the rest not looked at
  m_keys.key(Qt::Key_Return, Qt::ControlModifier);
  ASSERT_EQ(m_form.result(), QDialog::Accepted);

  const auto sides = m_desk.hub.season().combSides(last()->record);
  ASSERT_EQ(sides.size(), 3u);
  const auto& a = *sides[0];
  EXPECT_EQ(a.slot, 1);
  EXPECT_EQ(a.side, apiary::FrameSide::A);
  EXPECT_EQ(a.honeyPct, 25);
  EXPECT_EQ(a.pollenPct, 25);
  EXPECT_EQ(a.sealedPct, 25);
  EXPECT_EQ(a.eggsPct, 25);
  EXPECT_EQ(a.openPct, 0);  // all eighths were told, so there is none
  EXPECT_EQ(sides[1]->undrawnPct, 100);
  EXPECT_EQ(sides[2]->openPct, 12.5);
  EXPECT_EQ(sides[2]->honeyPct, std::nullopt);  // the rest was not looked at
}

// pi/4 of 30 by 15 cm is 353 cm2: 40 % of a Langstroth deep face of 880 cm2 (geometry).
TEST_F(InspectionFormTest, AnOvalPatchFillsItsShareOfTheSide) {
  field<QTabWidget>(m_form, "pages")->setCurrentIndex(1);
  auto* length = field<QLineEdit>(m_form, "ovalLength");
  length->setFocus();
  m_keys.fill("30");
  m_keys.fill("15");
  EXPECT_TRUE(field<QLabel>(m_form, "ovalGives")->text().contains(u"40 %"));
  QTest::mouseClick(field<QPushButton>(m_form, "fillOval"), Qt::LeftButton);
  auto* table = field<QTableView>(m_form, "combs");
  const int sealed = [&] {
    for (int k = 0; k < kContentCount; ++k) {
      if (combContents()[static_cast<std::size_t>(k)].share == &apiary::CombSide::sealedPct) {
        return CombModel::kFirstContent + k;
      }
    }
    return -1;
  }();
  EXPECT_EQ(table->model()->index(0, sealed).data().toString(), QStringLiteral("40"));
  EXPECT_TRUE(length->text().isEmpty());
  // Larger than the comb: refused in words, nothing changes.
  length->setFocus();
  m_keys.fill("60");
  m_keys.fill("60");
  QTest::mouseClick(field<QPushButton>(m_form, "fillOval"), Qt::LeftButton);
  EXPECT_EQ(table->model()->index(0, sealed).data().toString(), QStringLiteral("40"));
  EXPECT_FALSE(length->text().isEmpty());
}

TEST_F(InspectionFormTest, ACombThatDoesNotAddUpIsNotRecorded) {
  auto* combs = m_form.findChild<CombModel*>();
  ASSERT_NE(combs, nullptr);
  const int honey = CombModel::kFirstContent, sealed = CombModel::kFirstContent + 5;
  combs->setData(combs->index(4, honey), QStringLiteral("80"), Qt::EditRole);
  combs->setData(combs->index(4, sealed), QStringLiteral("40"), Qt::EditRole);
  m_keys.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_TRUE(m_form.isVisible());
  EXPECT_EQ(last(), nullptr);
  EXPECT_TRUE(field<QLabel>(m_form, "status")->text().contains(QStringLiteral("comb 3")));
  combs->setData(combs->index(4, sealed), QStringLiteral("20"), Qt::EditRole);
  m_keys.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_NE(last(), nullptr);
}

TEST_F(InspectionFormTest, ABoxIsFilledInLikeOneSideAndSideALikeB) {
  auto* combs = m_form.findChild<CombModel*>();
  ASSERT_NE(combs, nullptr);
  ASSERT_EQ(combs->rowCount(), 20);  // ten frames of one chamber, both sides
  combs->fillSide(0, 0);
  combs->copyToOtherSide(0);
  EXPECT_EQ(combs->side(1).honeyPct, 100);
  EXPECT_EQ(combs->typedSides().size(), 2u);
  combs->fillSide(5, 3);
  EXPECT_EQ(combs->fillBox(5), 17);
  EXPECT_EQ(combs->side(0).honeyPct, 100);  // what was typed stays
  EXPECT_EQ(combs->side(19).emptyPct, 100);
  combs->clearSide(19);
  EXPECT_EQ(combs->typedSides().size(), 19u);
}

TEST_F(InspectionFormTest, ACorrectionSupersedesAndKeepsWhatTheFormDoesNotShow) {
  apiary::Inspection first;
  first.hive = kHive;
  first.date = day("2026-04-20");
  first.seams = 4;
  first.seamsView = apiary::SeamsView::Both;
  first.broodFrames = 2.5;
  first.sealedBroodFrames = 1;
  ASSERT_TRUE(m_desk.hub.execute(session::recordInspection(first, {}, {})));
  const auto old = last()->record;
  InspectionForm form(m_desk.hub, kHive, {});
  form.correct(old);
  EXPECT_EQ(field<QLineEdit>(form, "seams")->text(), QStringLiteral("4"));
  field<QLineEdit>(form, "sealed_brood_frames")->setText(QStringLiteral("1.5"));
  form.accept();
  const auto* now = last();
  ASSERT_NE(now, nullptr);
  EXPECT_EQ(now->supersedes, old);
  EXPECT_EQ(now->sealedBroodFrames, 1.5);
  EXPECT_EQ(now->seams, 4);
  EXPECT_EQ(now->seamsView, apiary::SeamsView::Both);
  EXPECT_EQ(now->broodFrames, 2.5);
  EXPECT_EQ(m_desk.hub.season().journal<apiary::Inspection>(kHive).size(), 1u);
}

TEST(InspectionFormUnits, PoundsAndFahrenheitAreStoredInSi) {
  Desk desk(tests::smallSeason());
  desk.settings.set(adapt::desk::kMassUnit, adapt::MassUnit::Pound);
  desk.settings.set(adapt::desk::kTemperatureUnit, adapt::TemperatureUnit::Fahrenheit);
  InspectionForm form(desk.hub, kHive, {});
  field<QLineEdit>(form, "honey_kg")->setText(QStringLiteral("20"));
  field<QLineEdit>(form, "air_c")->setText(QStringLiteral("59"));
  // 600 lb are within the table's 300 kg, 700 lb are not.
  field<QLineEdit>(form, "weight_kg")->setText(QStringLiteral("700"));
  EXPECT_FALSE(form.firstFault().isEmpty());
  field<QLineEdit>(form, "weight_kg")->setText(QStringLiteral("600"));
  EXPECT_TRUE(form.firstFault().isEmpty()) << form.firstFault().toStdString();
  const auto entry = form.entry();
  EXPECT_NEAR(*entry.inspection.honeyKg, 20 * 0.45359237, 1e-9);  // pound: exact, 1959 agreement
  EXPECT_NEAR(*entry.inspection.airC, 15, 1e-9);
}

}  // namespace
}  // namespace outyard::hive
