// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/find_everywhere.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <QTreeWidget>

#include "tests/ui/support/desk.h"

namespace outyard::main_window {
namespace {

struct FindEverywhereTest : testing::Test {
  tests::Desk m_desk{tests::smallSeason()};
};

TEST_F(FindEverywhereTest, TypedGoneThroughAndChosenByKeyboard) {
  FindEverywhere dialog(m_desk.hub);
  auto* line = dialog.findChild<QLineEdit*>(QStringLiteral("findLine"));
  auto* list = dialog.findChild<QTreeWidget*>(QStringLiteral("findList"));
  ASSERT_TRUE(line && list);
  EXPECT_EQ(dialog.chosen(), nullptr);
  EXPECT_EQ(list->topLevelItemCount(), 0);
  dialog.show();
  QTest::keyClicks(line, QStringLiteral("mb-0"));
  ASSERT_GT(list->topLevelItemCount(), 1);
  EXPECT_EQ(dialog.chosen()->hive, base::HiveId{"MB-01"});
  QTest::keyClick(line, Qt::Key_Down);
  ASSERT_NE(dialog.chosen(), nullptr);
  EXPECT_NE(dialog.chosen()->hive, base::HiveId{"MB-01"});
  QSignalSpy accepted(&dialog, &QDialog::accepted);
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_EQ(accepted.size(), 1);
}

TEST_F(FindEverywhereTest, NothingFoundSaysSoAndEnterStays) {
  FindEverywhere dialog(m_desk.hub);
  auto* line = dialog.findChild<QLineEdit*>(QStringLiteral("findLine"));
  dialog.show();
  QTest::keyClicks(line, QStringLiteral("zzqqzz"));
  QSignalSpy accepted(&dialog, &QDialog::accepted);
  QTest::keyClick(line, Qt::Key_Return);
  EXPECT_EQ(accepted.size(), 0);
  EXPECT_TRUE(dialog.findChild<QLabel*>(QStringLiteral("findCount"))
                  ->text()
                  .startsWith(QStringLiteral("Nothing found")));
}

}  // namespace
}  // namespace outyard::main_window
