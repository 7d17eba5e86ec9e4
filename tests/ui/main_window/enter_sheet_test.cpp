// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAction>
#include <QMenu>
#include <QMenuBar>
#include <QTest>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "ui/entry/sheet_entry_dialog.h"
#include "ui/main_window/main_window.h"

namespace outyard::main_window {
namespace {

using tests::Desk;

QAction* enterAction(const MainWindow& window) {
  for (const auto* menu : window.menuBar()->actions()) {
    if (!menu->menu()) continue;
    for (auto* action : menu->menu()->actions()) {
      if (action->text() == QStringLiteral("&Enter a sheet…")) return action;
    }
  }
  return nullptr;
}

TEST(EnterSheetAction, OpensTheDialogAndWhatIsTypedCanBeUndoneInTheWindow) {
  Desk desk(tests::smallSeason());
  apiary::SheetRow sheet;
  sheet.sheet = base::SheetId{"26-0001"};
  sheet.yard = base::YardId{"TR"};
  sheet.date = desk.hub.workingDate();
  apiary::SheetLine line;
  line.hive = base::HiveId{"TR-01"};
  ASSERT_TRUE(desk.hub.execute(session::keepSheet(sheet, {line})));
  FileServices services;
  services.draftFolder = desk.folder.filePath(QStringLiteral("drafts"));
  MainWindow window(desk.hub, services);
  auto* action = enterAction(window);
  ASSERT_NE(action, nullptr);
  EXPECT_TRUE(action->isEnabled());
  EXPECT_FALSE(action->shortcut().isEmpty());
  desk.dialogs.onRun = [](QDialog& shown) {
    auto* dialog = qobject_cast<entry::SheetEntryDialog*>(&shown);
    EXPECT_NE(dialog, nullptr);
    EXPECT_TRUE(dialog->openSheet(QStringLiteral("26-0001")));
    auto* table = shown.findChild<QWidget*>(QStringLiteral("entryTable"));
    QTest::keyClick(table, '7');
    return dialog->commit();
  };
  action->trigger();
  const auto looks = [&] {
    return desk.hub.season().journal<apiary::Inspection>(base::HiveId{"TR-01"});
  };
  ASSERT_EQ(looks().size(), 1u);
  EXPECT_EQ(looks().front()->seams, 7);
  ASSERT_TRUE(desk.hub.undo());
  EXPECT_TRUE(looks().empty());
}

TEST(EnterSheetAction, IsGreyWithoutASeason) {
  Desk desk(tests::smallSeason());
  desk.hub.close();
  MainWindow window(desk.hub, {});
  EXPECT_FALSE(enterAction(window)->isEnabled());
}

}  // namespace
}  // namespace outyard::main_window
