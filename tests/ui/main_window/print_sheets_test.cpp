// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/print_sheets.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTest>

#include "tests/ui/support/desk.h"

namespace outyard::main_window {
namespace {

using tests::Desk;
using tests::field;

sheet::SheetDocument pages(int count) {
  sheet::SheetDocument document;
  document.title = "Yard sheet 26-0148";
  for (int i = 0; i < count; ++i) {
    sheet::SheetPage page;
    sheet::RectShape box;
    box.corner = {20, 30};
    box.widthMm = 40.0 + i;
    box.heightMm = 20;
    box.fill = sheet::Ink::Text;
    page.shapes.emplace_back(box);
    document.pages.push_back(page);
  }
  return document;
}

class PreviewTest : public testing::Test {
 protected:
  PreviewTest()
      : m_desk(tests::smallSeason()),
        m_preview(pages(5), QStringLiteral("s.pdf"), m_desk.dialogs, [this] {
          ++m_kept;
          return base::Result<void>{};
        }) {
    m_preview.show();
    QCoreApplication::processEvents();
  }
  Desk m_desk;
  int m_kept = 0;
  SheetPreview m_preview;
};

TEST_F(PreviewTest, ShowsAllPagesAndThePageThatIsChosen) {
  auto* strip = field<QListWidget>(m_preview, "previewStrip");
  ASSERT_EQ(strip->count(), 5);
  auto* page = field<QLabel>(m_preview, "previewPage");
  EXPECT_EQ(page->accessibleName(), QStringLiteral("Page 1 of 5"));
  strip->setFocus();
  QTest::keyClick(strip, Qt::Key_Down);
  EXPECT_EQ(page->accessibleName(), QStringLiteral("Page 2 of 5"));
  const int before = page->pixmap().width();
  QTest::keySequence(&m_preview, QKeySequence(QKeySequence::ZoomIn));
  EXPECT_GT(page->pixmap().width(), before);
}

TEST_F(PreviewTest, SavesTheChosenPagesAndKeepsTheNumberOnce) {
  m_desk.dialogs.file = m_desk.folder.filePath(QStringLiteral("all"));
  auto* save = field<QPushButton>(m_preview, "previewSave");
  save->click();
  m_desk.dialogs.file = m_desk.folder.filePath(QStringLiteral("two"));
  field<QLineEdit>(m_preview, "previewRange")->setText(QStringLiteral("2, 4"));
  save->click();
  EXPECT_EQ(m_kept, 1);
  EXPECT_TRUE(m_preview.wasWritten());
  const auto pagesIn = [&](const char* name) {
    QFile file(m_desk.folder.filePath(QLatin1String(name)));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll().count("/Type /Page\n");
  };
  EXPECT_EQ(pagesIn("all.pdf"), 5);
  EXPECT_EQ(pagesIn("two.pdf"), 2);
}

TEST_F(PreviewTest, AChoiceThatIsNoneSaysSoAndCannotBePrinted) {
  field<QLineEdit>(m_preview, "previewRange")->setText(QStringLiteral("4-9"));
  EXPECT_FALSE(field<QPushButton>(m_preview, "previewSave")->isEnabled());
  EXPECT_FALSE(field<QPushButton>(m_preview, "previewPrint")->isEnabled());
  EXPECT_TRUE(field<QLabel>(m_preview, "previewSay")->text().contains(QStringLiteral("4-9")));
  field<QLineEdit>(m_preview, "previewRange")->clear();
  EXPECT_TRUE(field<QPushButton>(m_preview, "previewSave")->isEnabled());
}

TEST_F(PreviewTest, AFileThatCannotBeWrittenKeepsNothing) {
  m_desk.dialogs.file = QStringLiteral("/nowhere/at/all.pdf");
  field<QPushButton>(m_preview, "previewSave")->click();
  EXPECT_EQ(m_desk.dialogs.failures.size(), 1);
  EXPECT_EQ(m_kept, 0);
}

TEST(PrintSheetsDialogTest, TicksTheSelectedYardAndNeedsOne) {
  Desk desk(tests::smallSeason());
  desk.hub.selectYard(base::YardId{"TR"});
  PrintSheetsDialog dialog(desk.hub);
  ASSERT_EQ(dialog.ask().yards, std::vector<base::YardId>{base::YardId{"TR"}});
  EXPECT_EQ(dialog.ask().date.iso(), "2026-04-25");
  auto* list = field<QListWidget>(dialog, "sheetYards");
  auto* ok = dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
  EXPECT_TRUE(ok->isEnabled());
  for (int i = 0; i < list->count(); ++i) list->item(i)->setCheckState(Qt::Unchecked);
  EXPECT_FALSE(ok->isEnabled());
  dialog.choose({base::YardId{"MB"}}, tests::day("2026-05-02"));
  EXPECT_EQ(dialog.ask().yards, std::vector<base::YardId>{base::YardId{"MB"}});
  EXPECT_EQ(dialog.ask().date.iso(), "2026-05-02");
}

}  // namespace
}  // namespace outyard::main_window
