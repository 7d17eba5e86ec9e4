// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/main_window.h"

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QCheckBox>
#include <QDir>
#include <QFileInfo>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <QProgressBar>
#include <QPushButton>
#include <QTest>
#include <QToolBar>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "ui/widgets/theme.h"

namespace outyard::main_window {
namespace {

using tests::Desk;
using tests::field;

QList<QAction*> allActions(const QMenu& menu) {
  QList<QAction*> all;
  for (auto* action : menu.actions()) {
    if (action->menu()) {
      all += allActions(*action->menu());
    } else if (!action->isSeparator()) {
      all << action;
    }
  }
  return all;
}

QAction* actionOf(MainWindow& window, const QString& start) {
  for (auto* top : window.menuBar()->actions()) {
    if (!top->menu()) continue;
    for (auto* action : allActions(*top->menu())) {
      if (QString(action->text()).remove(u'&').startsWith(start)) return action;
    }
  }
  ADD_FAILURE() << "no action " << start.toStdString();
  return nullptr;
}

/// Every label and button that is seen is as large as its text asks for.
QStringList cutTexts(const QWidget& window) {
  QStringList cut;
  const auto say = [&](const QWidget& widget, const QString& text, QSize needs) {
    cut << QStringLiteral("%1 \"%2\" has %3x%4, needs %5x%6")
               .arg(QLatin1String(widget.metaObject()->className()), text.left(60))
               .arg(widget.width())
               .arg(widget.height())
               .arg(needs.width())
               .arg(needs.height());
  };
  for (const auto* label : window.findChildren<QLabel*>()) {
    if (!label->isVisible() || label->text().isEmpty()) continue;
    QSize needs = label->sizeHint();
    if (label->wordWrap()) needs = {0, label->heightForWidth(label->width())};
    if (label->width() < needs.width() || label->height() < needs.height()) {
      say(*label, label->text(), needs);
    }
  }
  for (const auto* button : window.findChildren<QAbstractButton*>()) {
    if (!button->isVisible() || button->text().isEmpty()) continue;
    if (button->width() < button->sizeHint().width() ||
        button->height() < button->sizeHint().height()) {
      say(*button, button->text(), button->sizeHint());
    }
  }
  return cut;
}

/// Keeps a picture when OUTYARD_LOOKS names a folder, for people who judge by eye.
void keep(QWidget& widget, const QString& name) {
  const QString folder = qEnvironmentVariable("OUTYARD_LOOKS");
  if (folder.isEmpty()) return;
  QDir().mkpath(folder);
  EXPECT_TRUE(widget.grab().save(folder + u'/' + name + QStringLiteral(".png")));
}

FileServices withServices(std::vector<std::string>& calls) {
  FileServices services;
  services.open = [&calls](const QString& file) -> FileServices::Opened {
    calls.push_back("open " + QFileInfo(file).fileName().toStdString());
    return base::fail(base::message("storage.test_refused"));
  };
  services.exportTables = [&calls](const apiary::Season&, const QString&) -> base::Result<void> {
    calls.push_back("export");
    return {};
  };
  services.makeSheets = [&calls](const session::Session&, const SheetAsk& ask,
                                 base::Progress&) -> base::Result<std::vector<sheet::YardSheet>> {
    std::vector<sheet::YardSheet> sheets;
    for (const auto& yard : ask.yards) {
      calls.push_back("make " + yard.str() + " " + ask.date.iso() +
                      (ask.letterPaper ? " letter" : " a4") + (ask.largeType ? " large" : ""));
      sheet::YardSheet made;
      made.document.pages.resize(2);
      sheets.push_back(made);
    }
    return sheets;
  };
  services.keepSheets = [&calls](
                            session::Session&, const SheetAsk&,
                            const std::vector<sheet::YardSheet>& sheets) -> base::Result<void> {
    calls.push_back("keep " + std::to_string(sheets.size()));
    return {};
  };
  return services;
}

class MainWindowTest : public testing::Test {
 protected:
  MainWindowTest() : m_desk(tests::smallSeason()), m_window(m_desk.hub, withServices(m_calls)) {
    m_window.show();
    QCoreApplication::processEvents();
  }
  std::vector<std::string> m_calls;
  Desk m_desk;
  MainWindow m_window;
};

TEST_F(MainWindowTest, UndoAndRedoCarryTheNameOfTheStep) {
  EXPECT_FALSE(actionOf(m_window, QStringLiteral("Undo"))->isEnabled());
  apiary::Yard yard;
  yard.yard = base::YardId{"HL"};
  ASSERT_TRUE(m_desk.hub.execute(session::addYard(yard)));
  auto* undo = actionOf(m_window, QStringLiteral("Undo"));
  EXPECT_TRUE(undo->isEnabled());
  EXPECT_TRUE(undo->text().contains(u':'));
  undo->trigger();
  EXPECT_EQ(m_desk.hub.season().yard(yard.yard), nullptr);
  actionOf(m_window, QStringLiteral("Redo"))->trigger();
  EXPECT_NE(m_desk.hub.season().yard(yard.yard), nullptr);
}

TEST_F(MainWindowTest, FindGoesToTheHive) {
  EXPECT_TRUE(m_window.findHive(QStringLiteral("mb-02")));
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId{"MB-02"});
  EXPECT_EQ(m_desk.hub.selection().yard, base::YardId{"MB"});
  EXPECT_TRUE(m_window.findHive(QStringLiteral("06"))) << "only one ends so";
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId{"TR-06"});
  EXPECT_FALSE(m_window.findHive(QStringLiteral("01"))) << "two end so";
  EXPECT_FALSE(m_window.findHive(QString()));
  m_desk.dialogs.onRun = [](QDialog& dialog) {
    field<QLineEdit>(dialog, "findNumber")->setText(QStringLiteral("XX-99"));
    return true;
  };
  actionOf(m_window, QStringLiteral("Find hive"))->trigger();
  ASSERT_EQ(m_desk.dialogs.informed.size(), 1);
  EXPECT_TRUE(m_desk.dialogs.informed.first().contains(QStringLiteral("XX-99")));
}

TEST_F(MainWindowTest, PlacesAreReachedByNameAndRemembered) {
  for (const char* name : {"desk", "yards", "hive", "rounds", "pairs"}) {
    m_window.showPlace(QLatin1String(name));
    EXPECT_EQ(m_window.placeName(), QLatin1String(name));
  }
  EXPECT_EQ(m_desk.settings.get(adapt::desk::kWindowPlace), QStringLiteral("pairs"));
  m_window.showPlace(QStringLiteral("nowhere"));
  EXPECT_EQ(m_window.placeName(), QStringLiteral("pairs"));
  for (const auto* action : field<QToolBar>(m_window, "placeBar")->actions()) {
    EXPECT_FALSE(action->text().isEmpty());
    EXPECT_FALSE(action->icon().isNull()) << action->text().toStdString();
    EXPECT_FALSE(action->shortcut().isEmpty());
  }
}

TEST_F(MainWindowTest, AFileThatWillNotOpenIsSaidAndTheSeasonStays) {
  EXPECT_FALSE(m_window.openSeason(QStringLiteral("/nowhere/x.outyard")));
  EXPECT_EQ(m_desk.dialogs.failures.size(), 1);
  EXPECT_TRUE(m_desk.hub.isOpen());
  EXPECT_TRUE(m_desk.settings.get(adapt::desk::kRecentSeasons).isEmpty());
}

TEST_F(MainWindowTest, ActionsWithoutTheirServiceAreNotOffered) {
  EXPECT_FALSE(actionOf(m_window, QStringLiteral("Import tables"))->isVisible());
  EXPECT_TRUE(actionOf(m_window, QStringLiteral("Export tables"))->isVisible());
  m_desk.hub.close();
  EXPECT_FALSE(actionOf(m_window, QStringLiteral("Export tables"))->isEnabled());
}

TEST_F(MainWindowTest, SheetsAreAskedForShownAndKeptOnceWritten) {
  m_desk.dialogs.file = m_desk.folder.filePath(QStringLiteral("sheet"));
  m_desk.hub.selectYard(base::YardId{"TR"});
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    if (auto* save = dialog.findChild<QPushButton*>(QStringLiteral("previewSave"))) {
      EXPECT_EQ(dialog.findChild<QListWidget*>(QStringLiteral("previewStrip"))->count(), 2);
      save->click();
      save->click();
    } else {
      field<QCheckBox>(dialog, "sheetLarge")->setChecked(true);
    }
    return true;
  };
  actionOf(m_window, QStringLiteral("Print yard sheet"))->trigger();
  EXPECT_EQ(m_calls, (std::vector<std::string>{"make TR 2026-04-25 a4 large", "keep 1"}));
  EXPECT_GT(QFileInfo(m_desk.dialogs.file + QStringLiteral(".pdf")).size(), 500);
}

TEST_F(MainWindowTest, ASheetThatIsOnlyLookedAtIsNotKept) {
  m_desk.hub.selectYard(base::YardId{"TR"});
  m_desk.dialogs.onRun = [&](QDialog&) { return true; };
  actionOf(m_window, QStringLiteral("Print yard sheet"))->trigger();
  EXPECT_EQ(m_calls, std::vector<std::string>{"make TR 2026-04-25 a4"});
}

TEST_F(MainWindowTest, EachPlaceIsSavedAsPdfAndPicture) {
  for (const char* name : {"desk", "yards", "hive", "pairs"}) {
    m_desk.hub.selectHive(base::HiveId{"TR-01"});
    m_window.showPlace(QLatin1String(name));
    m_desk.dialogs.file = m_desk.folder.filePath(QLatin1String(name));
    actionOf(m_window, QStringLiteral("Save this page as PDF"))->trigger();
    actionOf(m_window, QStringLiteral("Save this page as picture"))->trigger();
    EXPECT_GT(QFileInfo(m_desk.dialogs.file + QStringLiteral(".pdf")).size(), 500) << name;
    EXPECT_GT(QFileInfo(m_desk.dialogs.file + QStringLiteral(".png")).size(), 500) << name;
  }
  m_desk.dialogs.file = QStringLiteral("/nowhere/at/all.pdf");
  actionOf(m_window, QStringLiteral("Save this page as PDF"))->trigger();
  EXPECT_EQ(m_desk.dialogs.failures.size(), 1);
}

TEST_F(MainWindowTest, TheGuideIsPutAwayForGood) {
  auto* guide = field<QWidget>(m_window, "guide");
  EXPECT_TRUE(guide->isVisible());
  field<QPushButton>(*guide, "guideDone")->click();
  EXPECT_FALSE(guide->isVisible());
  EXPECT_TRUE(m_desk.settings.get(adapt::desk::kGuideDismissed));
}

TEST_F(MainWindowTest, StatusSaysDayFileAndCounts) {
  EXPECT_TRUE(field<QLabel>(m_window, "statusDate")->text().contains(QStringLiteral("2026")));
  EXPECT_EQ(field<QLabel>(m_window, "statusFile")->text(), QStringLiteral("test.outyard"));
  EXPECT_TRUE(field<QLabel>(m_window, "statusCounts")
                  ->text()
                  .startsWith(QStringLiteral("10 hives: 8 live")));
}

TEST_F(MainWindowTest, EveryActionHasItsOwnShortcut) {
  std::map<QString, QString> taken;
  for (auto* top : m_window.menuBar()->actions()) {
    for (auto* action : allActions(*top->menu())) {
      const QString keys = action->shortcut().toString();
      if (keys.isEmpty()) continue;
      EXPECT_EQ(taken.count(keys), 0U) << keys.toStdString() << ": " << action->text().toStdString()
                                       << " and " << taken[keys].toStdString();
      taken[keys] = action->text();
    }
  }
}

TEST_F(MainWindowTest, WidgetsThatTakeInputHaveNames) {
  for (const char* name : {"desk", "yards", "hive", "pairs"}) {
    m_window.showPlace(QLatin1String(name));
    for (const auto* edit : m_window.findChildren<QLineEdit*>()) {
      if (!edit->isVisible() || edit->parentWidget()->inherits("QAbstractSpinBox") ||
          edit->parentWidget()->inherits("QComboBox")) {
        continue;
      }
      EXPECT_FALSE(edit->accessibleName().isEmpty()) << edit->objectName().toStdString();
    }
  }
}

/// The sample season at the smallest size that the window is laid out for.
class LooksTest : public testing::TestWithParam<adapt::Theme> {};

TEST_P(LooksTest, NothingIsCutAt1280By800) {
  const QPalette before = QApplication::palette();
  widgets::applyTheme(GetParam());
  const QString theme =
      GetParam() == adapt::Theme::Dark ? QStringLiteral("dark") : QStringLiteral("light");
  {
    Desk desk(tests::sampleSeason());
    MainWindow window(desk.hub, {});
    window.resize(1280, 800);
    window.show();
    for (const bool guide : {true, false}) {
      field<QWidget>(window, "guide")->setVisible(guide);
      for (const char* name : {"desk", "yards", "hive", "pairs"}) {
        window.showPlace(QLatin1String(name));
        const auto& hives = desk.hub.season().table<apiary::Hive>();
        ASSERT_FALSE(hives.empty());
        desk.hub.selectHive(std::next(hives.begin(), 1)->second.hive);
        QTest::qWait(400);
        if (QLatin1String(name) == QLatin1String("desk")) {
          EXPECT_TRUE(QTest::qWaitFor(
              [&] { return !field<QProgressBar>(window, "progress")->isVisible(); }, 30000));
        }
        EXPECT_EQ(cutTexts(window), QStringList()) << name;
        EXPECT_LE(window.width(), 1280) << name;
        EXPECT_LE(window.height(), 800) << name;
        if (QLatin1String(name) == QLatin1String("yards") && !guide) {
          actionOf(window, QStringLiteral("Legend"))->trigger();
          QTest::qWait(50);
          EXPECT_EQ(cutTexts(window), QStringList()) << "legend";
          keep(window, QStringLiteral("legend-") + theme);
          actionOf(window, QStringLiteral("Legend"))->trigger();
          actionOf(window, QStringLiteral("Table"))->trigger();
          EXPECT_EQ(cutTexts(window), QStringList()) << "table";
          keep(window, QStringLiteral("table-") + theme);
          actionOf(window, QStringLiteral("Map"))->trigger();
          desk.dialogs.onRun = [&](QDialog& dialog) {
            EXPECT_EQ(cutTexts(dialog), QStringList()) << dialog.windowTitle().toStdString();
            keep(dialog, QStringLiteral("dialog-%1-%2").arg(dialog.windowTitle(), theme));
            return false;
          };
          for (const char* asks : {"Set over", "Unite", "Swap", "Move", "Correct", "Add hive",
                                   "Add stand", "Add yard", "Find hive"}) {
            actionOf(window, QLatin1String(asks))->trigger();
          }
          EXPECT_EQ(desk.dialogs.titles.size(), 9);
        }
        keep(window, QStringLiteral("%1-%2%3").arg(QLatin1String(name), theme,
                                                   guide ? QStringLiteral("-guide") : QString()));
      }
    }
  }
  QApplication::setPalette(before);
}

INSTANTIATE_TEST_SUITE_P(Themes, LooksTest,
                         testing::Values(adapt::Theme::Light, adapt::Theme::Dark));

}  // namespace
}  // namespace outyard::main_window
