// SPDX-License-Identifier: GPL-3.0-or-later
#include <QBuffer>
#include <QComboBox>
#include <QFile>
#include <QMenu>
#include <QPdfWriter>
#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>

#include "tests/ui/desk/desk_fixture.h"
#include "ui/desk/desk_tables.h"
#include "ui/widgets/list_file.h"

namespace outyard::desk {
namespace {

QString textOf(const QString& pdf) {
  const QString program = QStandardPaths::findExecutable(QStringLiteral("pdftotext"));
  if (program.isEmpty()) return {};
  QProcess process;
  process.start(program, {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
  return process.waitForFinished() ? QString::fromUtf8(process.readAllStandardOutput()) : QString();
}

class DeskLists : public DeskPlaceTest {
 protected:
  QMenu& menu() { return *field<QMenu>(m_place, "saveMenu"); }
  widgets::ListFile& file(const char* name) { return *field<widgets::ListFile>(m_place, name); }
  QByteArray csv(const char* name) {
    m_desk.dialogs.file = m_desk.folder.filePath(QLatin1String(name) + QStringLiteral(".csv"));
    file(name).csvAction()->trigger();
    QFile read(m_desk.dialogs.file);
    EXPECT_TRUE(read.open(QIODevice::ReadOnly)) << name;
    return read.readAll();
  }
  RowMaker maker() { return {m_desk.hub.season(), *m_place.facts(), adapt::Units()}; }
};

TEST_F(DeskLists, EveryListIsSavedAsCsvLineForLine) {
  const auto make = maker();
  std::size_t work = 0, risk = 0;
  for (const auto& yard : m_place.facts()->yards) work += yard.tasks.size();
  for (const auto& hive : m_place.facts()->risk) risk += hive.tasks.size();
  const auto sick = workTable(make, Show::All).lines.size() - work;
  EXPECT_LE(sick, m_place.facts()->yards.size());
  EXPECT_EQ(riskTable(make).lines.size(), risk);
  EXPECT_EQ(daysTable(make).lines.size(), 14 * m_place.facts()->yards.size());
  EXPECT_EQ(gearTable(make).lines.size(),
            m_place.facts()->gear.missing.size() + m_place.facts()->gear.uncounted.size());
  EXPECT_EQ(looksTable(make).lines.size(), m_place.facts()->looks.outside.size());
  for (const auto& table : everyTable(make, Show::All)) {
    EXPECT_EQ(static_cast<qsizetype>(table.right.size()), table.head.size());
    for (const auto& line : table.lines) {
      EXPECT_EQ(line.cells.size(), table.head.size()) << table.title.toStdString();
      EXPECT_EQ(line.values.size(), table.head.size()) << table.title.toStdString();
    }
  }
  const std::pair<const char*, std::size_t> files[] = {
      {"workFile", workTable(make, Show::All).lines.size()},
      {"riskFile", risk},
      {"daysFile", daysTable(make).lines.size()},
      {"gearFile", gearTable(make).lines.size()},
      {"looksFile", looksTable(make).lines.size()}};
  for (const auto& [name, lines] : files) {
    // None of the cells holds a line break of its own.
    EXPECT_EQ(csv(name).count("\r\n"), static_cast<qsizetype>(lines) + 1) << name;
  }
  EXPECT_TRUE(csv("daysFile").contains(",2026-04-25,")) << "days as a spreadsheet reads them";
}

TEST_F(DeskLists, TheListSavedIsTheOneShown) {
  auto* show = field<QComboBox>(m_place, "show");
  const auto all = csv("workFile");
  show->setCurrentIndex(1);
  const auto overdue = csv("workFile");
  EXPECT_LT(overdue.size(), all.size());
  EXPECT_FALSE(overdue.isEmpty());
}

TEST_F(DeskLists, MenuKeysAndEachListsOwnMenuLeadThere) {
  EXPECT_TRUE(m_place.menuActions().contains(menu().menuAction()));
  QStringList texts;
  for (auto* each : menu().actions()) {
    if (each->isSeparator()) continue;
    texts << each->text();
    EXPECT_TRUE(each->isEnabled()) << each->text().toStdString();
  }
  EXPECT_EQ(texts.size(), 13) << "five lists, the one with the keyboard, and all of them";
  EXPECT_EQ(texts.removeDuplicates(), 0);
  QApplication::setActiveWindow(&m_place);
  const std::pair<const char*, const char*> lists[] = {
      {"yards", "workFile"}, {"risk", "riskFile"}, {"gear", "gearFile"}, {"looks", "looksFile"}};
  for (const auto& [name, own] : lists) {
    EXPECT_TRUE(list(name).actions().contains(file(own).pdfAction())) << name;
    m_desk.dialogs.file = m_desk.folder.filePath(QLatin1String(name) + QStringLiteral("-key.csv"));
    list(name).setFocus();
    QTest::keyClick(&list(name), Qt::Key_V, Qt::ControlModifier | Qt::ShiftModifier);
    QFile read(m_desk.dialogs.file);
    ASSERT_TRUE(read.open(QIODevice::ReadOnly)) << name;
    EXPECT_EQ(read.readAll(), csv(own)) << name;
  }
}

TEST_F(DeskLists, PagesSayWhichOfHowMany) {
  m_desk.dialogs.file = m_desk.folder.filePath(QStringLiteral("all.pdf"));
  file("allFile").pdfAction()->trigger();
  const QString printed = m_desk.folder.filePath(QStringLiteral("printed.pdf"));
  {
    QPdfWriter writer(printed);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageMargins(QMarginsF());
    m_place.printTo(writer);
  }
  if (textOf(printed).isEmpty()) GTEST_SKIP() << "pdftotext is not installed";
  for (const auto& path : {m_desk.dialogs.file, printed}) {
    const QString text = textOf(path);
    const auto pages = text.count(u'\f');
    ASSERT_GE(pages, 2) << path.toStdString();
    for (qsizetype page = 1; page <= pages; ++page) {
      const QString said = QStringLiteral("Page %1 of %2").arg(page).arg(pages);
      EXPECT_EQ(text.count(said + u'\n') + text.count(said + u' '), 1) << said.toStdString();
    }
    EXPECT_TRUE(text.contains(QStringLiteral("Hives at risk")));
  }
  const QString folder = qEnvironmentVariable("OUTYARD_PICTURES");
  if (!folder.isEmpty()) {
    QFile::copy(m_desk.dialogs.file, folder + QStringLiteral("/desk-lists.pdf"));
    QFile::copy(printed, folder + QStringLiteral("/desk-printed.pdf"));
  }
}

TEST(DeskListsEmpty, ThereIsNothingToSave) {
  Desk desk(apiary::Season{});
  DeskPlace place(desk.hub);
  place.show();
  for (auto* each : field<QMenu>(place, "saveMenu")->actions()) {
    EXPECT_FALSE(each->isEnabled() && !each->isSeparator());
  }
}

}  // namespace
}  // namespace outyard::desk
