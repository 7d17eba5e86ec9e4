// SPDX-License-Identifier: GPL-3.0-or-later
// A full inspection of a hive of two boxes, quick facts and all 20 combs, by the keyboard alone.
// At three strokes a second (an unhurried typist; common practice, no source) a minute is 180.
#include <gtest/gtest.h>

#include <QApplication>
#include <QTabWidget>
#include <QTest>
#include <iostream>

#include "tests/ui/support/desk.h"
#include "ui/hive/comb_face_edit.h"
#include "ui/hive/inspection_form.h"

namespace outyard::hive {
namespace {

using tests::Desk;
using tests::field;

constexpr int kStrokesInAMinute = 180;
const base::HiveId kHive{"TR-05"};  // two chambers of ten combs

/// Types into whatever has the focus and counts: a key held down counts as one more.
class CountedKeys {
 public:
  explicit CountedKeys(QWidget& window) : m_window(window) {}
  void key(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
    QTest::keyClick(focus(), key, with);
    ++m_strokes;
    for (const auto held : {Qt::ShiftModifier, Qt::ControlModifier, Qt::AltModifier}) {
      if (with & held) ++m_strokes;
    }
  }
  void type(const char* text) {
    for (const char* c = text; *c; ++c) {
      QTest::keyClick(focus(), *c);
      ++m_strokes;
    }
  }
  /// A value, then on to the next field; an empty text passes the field over.
  void fill(const char* text) {
    type(text);
    key(Qt::Key_Tab);
  }
  /// One thing on a whole side.
  void whole(Qt::Key letter) { key(letter, Qt::ShiftModifier); }
  [[nodiscard]] QWidget* focus() const {
    QWidget* at = m_window.focusWidget();
    return at ? at : &m_window;
  }
  [[nodiscard]] int strokes() const { return m_strokes; }

 private:
  QWidget& m_window;
  int m_strokes = 0;
};

class InspectionKeyboardTest : public testing::Test {
 protected:
  InspectionKeyboardTest()
      : m_desk(tests::smallSeason()), m_form(m_desk.hub, kHive, {}), m_keys(m_form) {
    m_form.show();
    m_form.activateWindow();
    QCoreApplication::processEvents();
  }
  void quickFacts() {
    m_keys.fill("14");  // seams; the form begins there
    m_keys.fill("");
    m_keys.fill("15");  // frames with bees
    m_keys.fill("9");   // combs with brood
    m_keys.fill("");
    m_keys.fill("");
    m_keys.fill("y");  // eggs
    m_keys.fill("4");  // pattern
    m_keys.fill("1");  // drone brood: a little
    m_keys.fill("y");  // queen seen
    m_keys.fill("0");  // queen cells
    m_keys.fill("");
    m_keys.fill("");
    m_keys.fill("");
    m_keys.fill("");
    m_keys.fill("");
    m_keys.fill("2");  // temper
    m_keys.fill("");
    m_keys.fill("y");  // drones
    m_keys.type("Ann");
  }
  /// Ten combs: food and empty comb on the outside, the nest between.
  void box() {
    m_keys.whole(Qt::Key_C);
    m_keys.type("=");
    m_keys.whole(Qt::Key_H);
    m_keys.type("=");
    m_keys.type("hhppccoo=");
    m_keys.type("hpphssso=");
    m_keys.type("====");  // two more like it
    m_keys.type("hpphsoee=");
    m_keys.type("==");
    m_keys.whole(Qt::Key_H);
    m_keys.type("=");
    m_keys.whole(Qt::Key_C);
    m_keys.type("=");
  }

  Desk m_desk;
  InspectionForm m_form;
  CountedKeys m_keys;
};

TEST_F(InspectionKeyboardTest, AFullInspectionOfTwoBoxesTakesLessThanAMinute) {
  quickFacts();
  m_keys.key(Qt::Key_C, Qt::AltModifier);  // to the page "Comb by comb"
  ASSERT_EQ(field<QTabWidget>(m_form, "pages")->currentIndex(), 1);
  m_keys.key(Qt::Key_Tab);  // from the table to the face
  auto* face = field<CombFaceEdit>(m_form, "combFace");
  ASSERT_EQ(m_keys.focus(), face) << m_keys.focus()->objectName().toStdString();
  ASSERT_EQ(face->row(), 0);
  box();
  ASSERT_EQ(face->row(), 20) << "the first comb of the second box";
  box();
  m_keys.key(Qt::Key_Return, Qt::ControlModifier);

  ASSERT_EQ(m_form.result(), QDialog::Accepted);
  const auto looks = m_desk.hub.season().journal<apiary::Inspection>(kHive);
  ASSERT_EQ(looks.size(), 1U);
  const auto& i = *looks[0];
  EXPECT_EQ(i.seams, 14);
  EXPECT_EQ(i.framesWithBees, 15);
  EXPECT_EQ(i.framesWithBrood, 9);
  EXPECT_EQ(i.eggsSeen, true);
  EXPECT_EQ(i.pattern, 4);
  EXPECT_EQ(i.queenSeen, true);
  EXPECT_EQ(i.queenCells, 0);
  EXPECT_EQ(i.temper, 2);
  EXPECT_EQ(i.dronesSeen, true);
  EXPECT_EQ(i.reader, "Ann");
  const auto sides = m_desk.hub.season().combSides(i.record);
  ASSERT_EQ(sides.size(), 40U);
  double sealed = 0, honey = 0, eggs = 0;
  for (const auto* side : sides) {
    sealed += side->sealedPct.value_or(0);
    honey += side->honeyPct.value_or(0);
    eggs += side->eggsPct.value_or(0);
  }
  // In each box: three combs with three eighths sealed and two with one, both sides.
  EXPECT_EQ(sealed, 2 * 2 * (3 * 37.5 + 2 * 12.5));
  EXPECT_EQ(eggs, 2 * 2 * 2 * 25.0);
  EXPECT_EQ(honey, 2 * 2 * (2 * 100 + 25 + 3 * 25 + 2 * 25.0));

  RecordProperty("strokes", m_keys.strokes());
  std::cout << "full inspection of two boxes: " << m_keys.strokes() << " key strokes, "
            << m_keys.strokes() / 3 << " s at three a second\n";
  EXPECT_LT(m_keys.strokes(), kStrokesInAMinute);
}

TEST_F(InspectionKeyboardTest, TheFirstSideHasNoneBeforeIt) {
  m_keys.key(Qt::Key_C, Qt::AltModifier);
  m_keys.key(Qt::Key_Tab);
  auto* face = field<CombFaceEdit>(m_form, "combFace");
  ASSERT_EQ(m_keys.focus(), face);
  m_keys.type("=");
  EXPECT_EQ(face->row(), 0);
  EXPECT_FALSE(m_form.findChild<CombModel*>()->anyTyped());
}

}  // namespace
}  // namespace outyard::hive
