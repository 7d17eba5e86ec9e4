// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/list_file.h"

#include <gtest/gtest.h>

#include <QBuffer>
#include <QFile>
#include <QFileInfo>
#include <QHeaderView>
#include <QMenu>
#include <QPdfWriter>
#include <QProcess>
#include <QSortFilterProxyModel>
#include <QStandardItemModel>
#include <QStandardPaths>
#include <QTableView>
#include <QTreeView>

#include "tests/ui/support/desk.h"
#include "ui/widgets/list_pages.h"

namespace outyard::widgets {
namespace {

using tests::Desk;

/// Reads RFC 4180 by its grammar, apart from the writer.
std::vector<QStringList> readCsv(QByteArray bytes) {
  EXPECT_TRUE(bytes.startsWith("\xef\xbb\xbf"));
  const QString text = QString::fromUtf8(bytes.mid(3));
  std::vector<QStringList> lines{{}};
  QString field;
  bool quoted = false;
  for (int i = 0; i < text.size(); ++i) {
    const QChar c = text[i];
    if (quoted) {
      if (c != u'"') {
        field += c;
      } else if (i + 1 < text.size() && text[i + 1] == u'"') {
        field += u'"';
        ++i;
      } else {
        quoted = false;
      }
    } else if (c == u'"') {
      quoted = true;
    } else if (c == u',') {
      lines.back() << field;
      field.clear();
    } else if (c == u'\r' && i + 1 < text.size() && text[i + 1] == u'\n') {
      lines.back() << field;
      field.clear();
      lines.emplace_back();
      ++i;
    } else {
      field += c;
    }
  }
  EXPECT_TRUE(lines.back().isEmpty()) << "the last line ends with CRLF too";
  lines.pop_back();
  return lines;
}

QString run(const QString& name, const QStringList& arguments) {
  const QString program = QStandardPaths::findExecutable(name);
  if (program.isEmpty()) return {};
  QProcess process;
  process.start(program, arguments);
  process.waitForFinished(30000);
  return QString::fromUtf8(process.readAllStandardOutput());
}
QString pdfText(const QString& path) {
  return run(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), path, QStringLiteral("-")});
}
int pdfPages(const QString& path) {
  const QString info = run(QStringLiteral("pdfinfo"), {path});
  const auto at = info.indexOf(QStringLiteral("Pages:"));
  return info.mid(at + 6, 12).trimmed().section(u'\n', 0, 0).trimmed().toInt();
}

ListTable table(const QStringList& head, std::vector<QStringList> lines) {
  ListTable list;
  list.title = QStringLiteral("Hives of North meadow");
  list.note = QStringLiteral("Only small colonies");
  list.date = QStringLiteral("25 Apr 2026");
  list.head = head;
  list.right.assign(static_cast<std::size_t>(head.size()), false);
  for (auto& line : lines) list.lines.push_back({line, line, false});
  return list;
}

class ListFileTest : public testing::Test {
 protected:
  QString file(const char* name) { return m_folder.filePath(QLatin1String(name)); }
  /// Kept to be looked at where OUTYARD_PICTURES says so.
  void keep(const QString& path) {
    const QString folder = qEnvironmentVariable("OUTYARD_PICTURES");
    if (!folder.isEmpty()) QFile::copy(path, folder + u'/' + QFileInfo(path).fileName());
  }
  QTemporaryDir m_folder;
};

TEST_F(ListFileTest, CsvReadsBackWhateverStandsInIt) {
  const std::vector<QStringList> lines{
      {QStringLiteral("TR-01"), QStringLiteral("12,5"), QStringLiteral("said \"small\"")},
      {QStringLiteral(" lead"), QString(), QStringLiteral("two\nlines")},
      {QString::fromUtf8("Søndre Håve"), QString::fromUtf8("מכוורת"), QStringLiteral("=1+1")}};
  const QStringList head{QStringLiteral("Hive"), QStringLiteral("Stores, kg"),
                         QStringLiteral("Note")};
  const QString path = file("list.csv");
  ASSERT_EQ(writeListCsv(table(head, lines), path), QString());
  QFile in(path);
  ASSERT_TRUE(in.open(QIODevice::ReadOnly));
  const auto read = readCsv(in.readAll());
  ASSERT_EQ(read.size(), 4u);
  EXPECT_EQ(read[0], head);
  for (std::size_t i = 0; i < lines.size(); ++i) EXPECT_EQ(read[i + 1], lines[i]) << i;
}

TEST_F(ListFileTest, TakesRowsAndColumnsAsTheViewShowsThem) {
  QStandardItemModel model(0, 4);
  model.setHorizontalHeaderLabels({QStringLiteral("Hive"), QStringLiteral("Bees"),
                                   QStringLiteral("Hidden"), QStringLiteral("Done")});
  const auto add = [&](const char* hive, int bees, bool done) {
    auto* name = new QStandardItem(QLatin1String(hive));
    auto* figure = new QStandardItem;
    figure->setData(bees, Qt::DisplayRole);
    figure->setData(bees + 0.25, kListValueRole);
    figure->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    auto* tick = new QStandardItem;
    tick->setCheckable(true);
    tick->setCheckState(done ? Qt::Checked : Qt::Unchecked);
    model.appendRow({name, figure, new QStandardItem(QStringLiteral("secret")), tick});
  };
  add("TR-01", 9000, false);
  add("TR-02", 4000, true);
  add("MB-01", 7000, false);
  add("TR-03", 6000, false);
  QSortFilterProxyModel proxy;
  proxy.setSourceModel(&model);
  proxy.setFilterRegularExpression(QStringLiteral("^TR"));
  proxy.sort(1);
  QTableView view;
  view.setModel(&proxy);
  view.setColumnHidden(2, true);
  view.setRowHidden(1, true);  // TR-03
  view.horizontalHeader()->moveSection(3, 0);
  const ListTable list = listOf(view, QStringLiteral("Hives"));
  EXPECT_EQ(list.head,
            (QStringList{QStringLiteral("Done"), QStringLiteral("Hive"), QStringLiteral("Bees")}));
  ASSERT_EQ(list.lines.size(), 2u);
  EXPECT_EQ(list.lines[0].cells,
            (QStringList{QStringLiteral("yes"), QStringLiteral("TR-02"), QStringLiteral("4000")}));
  EXPECT_EQ(list.lines[1].cells[1], QStringLiteral("TR-01"));
  // The full figure goes to the spreadsheet, the rounded one to people.
  EXPECT_EQ(list.lines[1].values[2], QStringLiteral("9000.25"));
  EXPECT_EQ(list.right, (std::vector<bool>{false, false, true}));
}

TEST_F(ListFileTest, RowsBelowARowAreIndented) {
  QStandardItemModel model(0, 1);
  model.setHorizontalHeaderLabels({QStringLiteral("Work")});
  auto* yard = new QStandardItem(QStringLiteral("Trial yard"));
  yard->appendRow(new QStandardItem(QStringLiteral("Feed")));
  model.appendRow(yard);
  const ListTable list = listOf(model, QStringLiteral("Work"));
  ASSERT_EQ(list.lines.size(), 2u);
  EXPECT_EQ(list.lines[0].cells[0], QStringLiteral("Trial yard"));
  EXPECT_NE(list.lines[1].cells[0], QStringLiteral("Feed"));
  EXPECT_EQ(list.lines[1].cells[0].trimmed(), QStringLiteral("Feed"));
  EXPECT_EQ(list.lines[1].values[0], QStringLiteral("Feed"));
}

TEST_F(ListFileTest, PdfHasEveryRowOnceWithHeadAndNumberOnEachPage) {
  std::vector<QStringList> lines;
  for (int i = 0; i < 250; ++i) {
    lines.push_back({QStringLiteral("TR-%1").arg(i, 3, 10, QLatin1Char('0')),
                     QStringLiteral("%1").arg(i * 37), QStringLiteral("brood on 4 combs")});
  }
  const QString path = file("rows.pdf");
  ASSERT_EQ(
      writeListPdf(
          {table({QStringLiteral("Hive"), QStringLiteral("Bees"), QStringLiteral("Last look")},
                 lines)},
          false, path),
      QString());
  keep(path);
  const QString text = pdfText(path);
  if (text.isEmpty()) GTEST_SKIP() << "pdftotext is not installed";
  for (const auto& line : lines) EXPECT_EQ(text.count(line[0]), 1) << line[0].toStdString();
  const int pages = pdfPages(path);
  EXPECT_GT(pages, 3);
  EXPECT_EQ(text.count(QStringLiteral("Last look")), pages);
  EXPECT_EQ(text.count(QStringLiteral("Hives of North meadow")), pages);
  EXPECT_EQ(text.count(QStringLiteral("Only small colonies")), 1);
  for (int page = 1; page <= pages; ++page) {
    EXPECT_TRUE(text.contains(QStringLiteral("Page %1 of %2").arg(page).arg(pages)));
  }
}

TEST_F(ListFileTest, LongAndRightToLeftTextIsWrappedNotCut) {
  QString words;
  for (int i = 0; i < 900; ++i) words += QStringLiteral("word%1 ").arg(i);
  QString unbroken;
  for (int i = 0; i < 400; ++i) unbroken += QChar(u'a' + i % 26);
  const QString hebrew = QString::fromUtf8("מכוורת הצפון ליד הנהר");
  const QString path = file("long.pdf");
  const auto list =
      table({QStringLiteral("Hive"), QStringLiteral("Note"), QStringLiteral("Name")},
            {{QStringLiteral("TR-01"), words + words + words, QStringLiteral("short")},
             {QStringLiteral("TR-02"), unbroken, hebrew},
             {QStringLiteral("TR-03"), QString::fromUtf8("Žluťoučký úl\nsecond line"), hebrew}});
  ASSERT_EQ(writeListPdf({list}, true, path), QString());
  keep(path);
  const QString text = pdfText(path);
  if (text.isEmpty()) GTEST_SKIP() << "pdftotext is not installed";
  // A row longer than a page goes on over the next one; every word is there as often as written.
  for (int i = 0; i < 900; ++i) {
    const QRegularExpression whole(QStringLiteral("\\bword%1\\b").arg(i));
    EXPECT_EQ(text.count(whole), 3) << i;
  }
  // Of the word without a blank every letter is there (lines end where the column does).
  const QString raw =
      run(QStringLiteral("pdftotext"), {QStringLiteral("-raw"), path, QStringLiteral("-")});
  QString letters = raw.mid(raw.indexOf(QStringLiteral("TR-02")));
  letters = letters.left(letters.indexOf(QStringLiteral("TR-03")));
  letters.remove(QRegularExpression(QStringLiteral("[^a-z]")));
  EXPECT_GE(letters.size(), 400);
  EXPECT_TRUE(text.contains(QString::fromUtf8("Žluťoučký úl")));
  EXPECT_TRUE(text.contains(QStringLiteral("second line")));
  for (const QString& word : hebrew.split(u' ')) {
    QString back;
    for (const QChar c : word) back.prepend(c);
    EXPECT_TRUE(text.contains(word) || text.contains(back)) << word.toStdString();
  }
}

TEST_F(ListFileTest, ManyColumnsTurnThePageAndStayOnIt) {
  QStringList head, cells;
  for (int i = 0; i < 16; ++i) {
    head << QStringLiteral("Column %1").arg(i);
    cells << QStringLiteral("cell %1 of them").arg(i);
  }
  const auto list = table(head, {cells, cells});
  EXPECT_TRUE(wantsLandscape(list, false));
  EXPECT_FALSE(wantsLandscape(table({QStringLiteral("Hive")}, {{QStringLiteral("TR-01")}}), false));
  const QString path = file("wide.pdf");
  ASSERT_EQ(writeListPdf({list}, false, path), QString());
  keep(path);
  const QString text = pdfText(path);
  if (text.isEmpty()) GTEST_SKIP() << "pdftotext is not installed";
  EXPECT_EQ(pdfPages(path), 1);
  QString flat = text.simplified();
  EXPECT_EQ(flat.count(QStringLiteral("them")), 32);
}

TEST_F(ListFileTest, AnEmptyListSaysSo) {
  const QString path = file("empty.pdf");
  ASSERT_EQ(writeListPdf({table({QStringLiteral("Hive")}, {})}, false, path), QString());
  const QString text = pdfText(path);
  if (text.isEmpty()) GTEST_SKIP() << "pdftotext is not installed";
  EXPECT_TRUE(text.contains(QStringLiteral("Nothing in the list.")));
}

TEST_F(ListFileTest, PrintsOnTheDevicesOwnPaper) {
  QBuffer out;
  ASSERT_TRUE(out.open(QIODevice::WriteOnly));
  {
    QPdfWriter writer(&out);
    writer.setPageSize(QPageSize(QPageSize::A5));
    paintLists(writer, {table({QStringLiteral("Hive")}, {{QStringLiteral("TR-01")}}),
                        table({QStringLiteral("Yard")}, {{QStringLiteral("Trial")}})});
  }
  QFile file(m_folder.filePath(QStringLiteral("two.pdf")));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(out.data());
  file.close();
  const QString text = pdfText(file.fileName());
  if (text.isEmpty()) GTEST_SKIP() << "pdftotext is not installed";
  EXPECT_TRUE(text.contains(QStringLiteral("Page 2 of 2")));
  EXPECT_EQ(pdfPages(file.fileName()), 2);
}

TEST_F(ListFileTest, ActionsAskWhereToAndSayWhatFails) {
  Desk desk{apiary::Season{}};
  QStandardItemModel model(0, 1);
  model.setHorizontalHeaderLabels({QStringLiteral("Hive")});
  model.appendRow(new QStandardItem(QStringLiteral("TR-01")));
  QTableView view;
  view.setModel(&model);
  ListFile lists(desk.hub, &view, [] { return QStringLiteral("Hives"); });
  EXPECT_EQ(view.contextMenuPolicy(), Qt::ActionsContextMenu);
  EXPECT_TRUE(view.actions().contains(lists.pdfAction()));
  lists.csvAction()->trigger();  // no name given: nothing happens
  EXPECT_TRUE(desk.dialogs.failures.isEmpty());
  desk.dialogs.file = file("hives");
  lists.csvAction()->trigger();
  lists.pdfAction()->trigger();
  EXPECT_TRUE(QFile::exists(file("hives.csv")));
  EXPECT_TRUE(QFile::exists(file("hives.pdf")));
  EXPECT_TRUE(desk.dialogs.failures.isEmpty());
  desk.dialogs.file = file("no/such/folder/hives");
  lists.csvAction()->trigger();
  lists.pdfAction()->trigger();
  ASSERT_EQ(desk.dialogs.failures.size(), 2);
  EXPECT_TRUE(desk.dialogs.failures[0].contains(QStringLiteral("hives.csv")));
  EXPECT_FALSE(QFile::exists(file("no/such/folder/hives.csv")));
}

}  // namespace
}  // namespace outyard::widgets
