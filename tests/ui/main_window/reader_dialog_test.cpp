// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/reader_dialog.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QTest>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"

namespace outyard::main_window {
namespace {

using tests::field;

class ReaderDialogTest : public testing::Test {
 protected:
  ReaderDialogTest() : m_desk(tests::smallSeason()), m_dialog(m_desk.hub) { m_dialog.show(); }
  void put(int row, const char* own, const char* known) {
    auto* table = field<QTableWidget>(m_dialog, "readerPairs");
    table->setItem(row, 0, new QTableWidgetItem(QLatin1String(own)));
    table->setItem(row, 1, new QTableWidgetItem(QLatin1String(known)));
  }
  QString says() { return field<QLabel>(m_dialog, "readerSays")->text(); }
  QString kept() { return field<QLabel>(m_dialog, "readerKept")->text(); }
  QPushButton* keep() { return field<QPushButton>(m_dialog, "readerKeep"); }

  tests::Desk m_desk;
  ReaderDialog m_dialog;
};

TEST_F(ReaderDialogTest, AsksForANameAndForPairs) {
  field<QComboBox>(m_dialog, "reader")->setEditText(QString());
  EXPECT_TRUE(says().contains(u"Name the reader"));
  field<QComboBox>(m_dialog, "reader")->setEditText(QStringLiteral("Ada"));
  EXPECT_TRUE(says().contains(u"0 of at least 3"));
  EXPECT_FALSE(keep()->isEnabled());
  put(0, "12", "");
  EXPECT_TRUE(says().contains(u"both counts"));
  put(0, "12", "ten");
  EXPECT_TRUE(says().contains(u"ten"));
}

TEST_F(ReaderDialogTest, KeepsTheHabitAsOneStepAndTakesItAway) {
  field<QComboBox>(m_dialog, "reader")->setEditText(QStringLiteral("Ada"));
  put(0, "12", "10");
  put(1, "6,0", "5");
  put(2, "18", "15");
  EXPECT_TRUE(says().contains(u"20 % too many")) << says().toStdString();
  tests::picture(m_dialog, QStringLiteral("reader_dialog"), {640, 600});
  tests::expectNothingCut(m_dialog);
  ASSERT_TRUE(keep()->isEnabled());
  QTest::mouseClick(keep(), Qt::LeftButton);
  const auto figures = strength::readerFigures(m_desk.hub.season(), "Ada");
  ASSERT_TRUE(figures);
  EXPECT_NEAR(figures->bias, 1.2, 1e-3);
  EXPECT_TRUE(kept().contains(u"20 % too many"));
  EXPECT_TRUE(m_desk.hub.undo());
  EXPECT_FALSE(strength::readerFigures(m_desk.hub.season(), "Ada"));
  EXPECT_TRUE(m_desk.hub.redo());
  QTest::mouseClick(field<QPushButton>(m_dialog, "readerTakeAway"), Qt::LeftButton);
  EXPECT_FALSE(strength::readerFigures(m_desk.hub.season(), "Ada"));
  EXPECT_TRUE(kept().contains(u"nothing"));
}

}  // namespace
}  // namespace outyard::main_window
