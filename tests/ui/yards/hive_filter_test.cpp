// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/hive_filter.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QFile>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/widgets/list_file.h"
#include "ui/yards/hive_table.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {
namespace {

using tests::Desk;
using tests::field;

class HiveFilterTest : public testing::Test {
 protected:
  HiveFilterTest() : m_desk(tests::sampleSeason(), "2026-05-02"), m_place(m_desk.hub) {
    m_desk.hub.selectYard(m_desk.hub.season().table<apiary::Yard>().begin()->second.yard);
    m_place.resize(1280, 800);
    m_place.show();
    m_place.showAsTable(true);
    QCoreApplication::processEvents();
  }
  void type(const QString& words) {
    auto* line = field<QLineEdit>(m_place, "hiveFilter");
    line->clear();
    QTest::keyClicks(line, words);
  }
  [[nodiscard]] int rows() const { return m_place.table().model()->rowCount(); }
  [[nodiscard]] QString cell(int row, int column) const {
    return m_place.table().model()->index(row, column).data().toString();
  }

  Desk m_desk;
  YardsPlace m_place;
};

TEST_F(HiveFilterTest, WordsOfAnyColumnNarrowTheListDown) {
  const int all = rows();
  ASSERT_GT(all, 4);
  const QString first = cell(0, HiveTableModel::Number);
  type(first);
  ASSERT_GE(rows(), 1);
  EXPECT_LT(rows(), all);
  EXPECT_EQ(cell(0, HiveTableModel::Number), first);
  EXPECT_EQ(field<QLabel>(m_place, "hiveFilterCount")->text(),
            QStringLiteral("%1 of %2 hives").arg(rows()).arg(all));
  type(QStringLiteral("weak"));
  EXPECT_GT(rows(), 0);
  EXPECT_LT(rows(), all);
  for (int row = 0; row < rows(); ++row) {
    const QString words = cell(row, HiveTableModel::Judgement);
    EXPECT_TRUE(words.contains(QStringLiteral("small"))) << words.toStdString();
  }
  type(QStringLiteral("no such words"));
  EXPECT_EQ(rows(), 0);
  QTest::keyClick(field<QLineEdit>(m_place, "hiveFilter"), Qt::Key_Escape);
  EXPECT_EQ(rows(), all);
}

TEST_F(HiveFilterTest, TheChosenHiveStaysChosenWhileItIsHidden) {
  const QString second = cell(1, HiveTableModel::Number);
  m_desk.hub.selectHive(base::HiveId{second.toStdString()});
  type(QStringLiteral("no such words"));
  ASSERT_TRUE(m_desk.hub.selection().hive);
  EXPECT_EQ(m_desk.hub.selection().hive->str(), second.toStdString());
  type({});
  EXPECT_EQ(m_place.table().currentIndex().data().toString(), second);
}

TEST_F(HiveFilterTest, EveryColumnSorts) {
  auto& table = m_place.table();
  std::vector<QString> numbers;
  for (int row = 0; row < rows(); ++row) numbers.push_back(cell(row, 0));
  for (int column = 0; column < HiveTableModel::ColumnCount; ++column) {
    SCOPED_TRACE(column);
    table.sortByColumn(column, Qt::AscendingOrder);
    const auto first = table.model()->index(0, column).data(HiveTableModel::kSortRole);
    table.sortByColumn(column, Qt::DescendingOrder);
    const auto last = table.model()->index(rows() - 1, column).data(HiveTableModel::kSortRole);
    EXPECT_EQ(first, last) << first.toString().toStdString();
  }
  // Numbers of bees sort as numbers: 9,000 before 12,000.
  table.sortByColumn(HiveTableModel::Bees, Qt::AscendingOrder);
  double before = -1;
  for (int row = 0; row < rows(); ++row) {
    const double bees =
        table.model()->index(row, HiveTableModel::Bees).data(HiveTableModel::kSortRole).toDouble();
    EXPECT_GE(bees, before);
    before = bees;
  }
}

TEST_F(HiveFilterTest, HiveNumbersSortAsPeopleCount) {
  Desk desk([] {
    tests::SeasonBuilder b;
    b.yard("A");
    for (const char* id : {"A-10", "A-2", "A-1"}) b.livingHive(id, "A");
    return b.take();
  }());
  desk.hub.selectYard(base::YardId{"A"});
  HiveTable table(desk.hub);
  table.refresh();
  QStringList order;
  for (int row = 0; row < table.model()->rowCount(); ++row) {
    order << table.model()->index(row, 0).data().toString();
  }
  EXPECT_EQ(order,
            (QStringList{QStringLiteral("A-1"), QStringLiteral("A-2"), QStringLiteral("A-10")}));
}

TEST_F(HiveFilterTest, TheFilterIsKept) {
  type(QStringLiteral("weak"));
  const int shown = rows();
  YardsPlace again(m_desk.hub);
  EXPECT_EQ(field<QLineEdit>(again, "hiveFilter")->text(), QStringLiteral("weak"));
  EXPECT_EQ(again.table().model()->rowCount(), shown);
}

TEST_F(HiveFilterTest, TheListAsShownIsSaved) {
  type(QStringLiteral("weak"));
  m_desk.dialogs.file = m_desk.folder.filePath(QStringLiteral("hives.csv"));
  m_place.findChild<FilteredHives*>()->file().csvAction()->trigger();
  QFile file(m_desk.dialogs.file);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(file.readAll());
  EXPECT_TRUE(text.contains(cell(0, 0)));
  EXPECT_EQ(text.count(u'\n'), rows() + 1) << text.toStdString();
  tests::picture(m_place, QStringLiteral("hive_filter"));
}

}  // namespace
}  // namespace outyard::yards
