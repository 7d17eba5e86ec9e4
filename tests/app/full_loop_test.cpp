// SPDX-License-Identifier: GPL-3.0-or-later
// The loop of the job on the real window: plan a round at the desk, print its sheets, type a sheet
// back in, see the forecasts move, plan the next round.
#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QElapsedTimer>
#include <QProcess>
#include <QPushButton>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTest>
#include <set>

#include "app/window.h"
#include "core/session/commands.h"
#include "core/session/sheet_entry.h"
#include "tests/ui/support/desk.h"
#include "ui/entry/entry_model.h"
#include "ui/entry/entry_table.h"
#include "ui/entry/sheet_entry_dialog.h"
#include "ui/rounds/day_board.h"
#include "ui/rounds/rounds_place.h"
#include "ui/widgets/forecast_desk.h"

namespace outyard::app {
namespace {

using rounds::RoundsPlace;
using tests::field;

bool waitFor(const std::function<bool()>& done, int ms = 120000) {
  QElapsedTimer timer;
  timer.start();
  while (!done()) {
    if (timer.elapsed() > ms) return false;
    QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
    QTest::qWait(2);
  }
  return true;
}

QString textOf(const QString& pdf) {
  QProcess reader;
  reader.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
  reader.waitForFinished(60000);
  return QString::fromUtf8(reader.readAllStandardOutput());
}

class FullLoopTest : public testing::Test {
 protected:
  FullLoopTest() : m_desk(tests::sampleSeason()) {
    QStandardPaths::setTestModeEnabled(true);
    auto services = windowServices();
    services.draftFolder = m_desk.folder.filePath(QStringLiteral("drafts"));
    const QString file = m_desk.folder.filePath(QStringLiteral("loop.outyard"));
    EXPECT_TRUE(services.loadSample(file));  // made, and closed again
    m_window = std::make_unique<main_window::MainWindow>(m_desk.hub, std::move(services));
    EXPECT_TRUE(m_window->openSeason(file));
    m_window->resize(1280, 800);
    m_window->show();
    QApplication::setActiveWindow(m_window.get());
    m_window->showPlace(QStringLiteral("rounds"));
    m_rounds = m_window->findChild<RoundsPlace*>();
  }
  ~FullLoopTest() override {
    m_window.reset();
    m_desk.hub.close();
  }
  void trigger(const char* action) {
    auto* found = m_rounds->findChild<QAction*>(QLatin1String(action));
    ASSERT_NE(found, nullptr) << action;
    ASSERT_TRUE(found->isEnabled()) << action << ": " << found->toolTip().toStdString();
    found->trigger();
    QCoreApplication::processEvents();
  }
  /// Waits for what falls due and asks for rounds.
  void propose() {
    ASSERT_TRUE(waitFor([&] { return !m_rounds->busy(); }));
    trigger("proposeAction");
    ASSERT_TRUE(waitFor([&] { return !m_rounds->busy() && m_rounds->proposal(); }))
        << m_desk.dialogs.failures.join(u' ').toStdString();
  }
  double beesAhead(const base::YardId& yard, const base::ColonyId& colony, base::Date day) {
    auto& forecasts = m_desk.hub.forecasts();
    forecasts.want(yard);
    EXPECT_TRUE(waitFor([&] { return forecasts.isFresh(yard); }));
    const auto on = forecasts.on(yard, colony, day);
    return on ? on->bees.median : -1;
  }

  tests::Desk m_desk;
  std::unique_ptr<main_window::MainWindow> m_window;
  RoundsPlace* m_rounds = nullptr;
};

TEST_F(FullLoopTest, PlanARoundPrintItTypeItInAndPlanTheNext) {
  auto& hub = m_desk.hub;
  ASSERT_NE(m_rounds, nullptr);

  // The round: proposed, looked at, accepted as it stands.
  propose();
  ASSERT_FALSE(m_rounds->proposal()->plan.days.empty());
  const auto first = m_rounds->proposal()->plan.days.front();
  trigger("acceptAction");
  ASSERT_EQ(m_desk.dialogs.failures, QStringList());
  ASSERT_FALSE(hub.season().table<apiary::Visit>().empty());
  const base::Date day = first.date;
  const base::YardId yard = first.stops.front().yard;
  std::vector<const apiary::Task*> planned;
  for (const auto& [key, task] : hub.season().table<apiary::Task>()) {
    if (!task.visit || task.state != apiary::TaskState::Planned) continue;
    const auto* visit = hub.season().find<apiary::Visit>(task.visit->str());
    if (visit && visit->yard == yard && visit->date == day) planned.push_back(&task);
  }
  EXPECT_FALSE(planned.empty());

  // The day comes; its sheets are printed to a file.
  ASSERT_TRUE(hub.execute(session::changeSetting("working_date", day.iso(), {})));
  ASSERT_TRUE(waitFor([&] { return !m_rounds->busy(); }));
  auto* board = m_rounds->findChild<rounds::DayBoard*>();
  ASSERT_NE(board, nullptr);
  board->choose(day, yard);
  const QString pdf = m_desk.folder.filePath(QStringLiteral("round.pdf"));
  m_desk.dialogs.file = pdf;
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    if (auto* save = dialog.findChild<QPushButton*>(QStringLiteral("previewSave"))) {
      QTest::mouseClick(save, Qt::LeftButton);
    }
    return true;
  };
  trigger("sheetsAction");
  ASSERT_EQ(m_desk.dialogs.failures, QStringList());
  const apiary::SheetRow* sheet = nullptr;
  for (const auto& [key, row] : hub.season().table<apiary::SheetRow>()) {
    if (row.yard == yard && row.date == day) sheet = &row;
  }
  ASSERT_NE(sheet, nullptr);
  const std::string number = sheet->sheet.str();
  std::vector<const apiary::SheetLine*> lines;
  for (const auto& [key, line] : hub.season().table<apiary::SheetLine>()) {
    if (line.sheet == sheet->sheet) lines.push_back(&line);
  }
  ASSERT_FALSE(lines.empty());
  const QString paper = textOf(pdf);
  EXPECT_TRUE(paper.contains(QString::fromStdString(number)));
  for (const auto* line : lines) {
    EXPECT_TRUE(paper.contains(QString::fromStdString(line->hive.str()))) << line->hive.str();
  }

  // Back at the desk: every colony had one seam of bees less than was expected.
  const base::Date ahead = day.plusDays(21);
  std::optional<base::ColonyId> touched;
  double before = 0;
  for (const auto* line : lines) {
    if (!line->colony || !session::readExpected(line->expected).seams) continue;
    touched = line->colony;
    before = beesAhead(yard, *touched, ahead);
    break;
  }
  ASSERT_TRUE(touched);
  ASSERT_GT(before, 0);
  const auto beforeRows = tests::allRows(hub.season());
  int keys = 0;
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    QApplication::setActiveWindow(&dialog);
    auto* model = dialog.findChild<entry::EntryModel*>();
    auto* table = dialog.findChild<entry::EntryTable*>();
    const auto press = [&](Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
      QTest::keyClick(dialog.focusWidget(), key, with);
      QCoreApplication::processEvents();
      ++keys;
    };
    const auto type = [&](const QString& text) {
      for (const QChar c : text) {
        QTest::keyClick(dialog.focusWidget(), c.toLatin1());
        QCoreApplication::processEvents();
        ++keys;
      }
    };
    for (const QString& head : {QString::fromStdString(number), QStringLiteral("Ida"),
                                QStringLiteral("930"), QStringLiteral("14")}) {
      type(head);
      press(Qt::Key_Return);
    }
    const auto typed = model->sheet().lines;
    for (std::size_t row = 0; row < typed.size(); ++row) {
      if (typed[row].kind == session::LineKind::Blank) break;  // nothing was written on those
      table->goTo(static_cast<int>(row), entry::EntryModel::columnOf(session::EntryColumn::Seams));
      if (typed[row].colony == touched) {
        type(QStringLiteral("3"));
        press(Qt::Key_Return);
      } else {
        type(QStringLiteral("."));
      }
      if (!typed[row].tasks.empty()) {
        table->goTo(static_cast<int>(row), entry::EntryModel::kFirstTask);
        press(Qt::Key_Space);
      }
    }
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_FALSE(dialog.isVisible());
    return true;
  };
  trigger("enterAction");
  ASSERT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_GT(keys, 0);
  const auto afterRows = tests::allRows(hub.season());
  EXPECT_NE(afterRows, beforeRows);

  // The forecast of the colony moved, and the work that was ticked is not asked for again.
  const double after = beesAhead(yard, *touched, ahead);
  EXPECT_GT(after, 0);
  EXPECT_GT(std::abs(after / before - 1), 0.02);
  std::set<std::string> done;
  for (const auto& [key, task] : hub.season().table<apiary::Task>()) {
    if (task.state == apiary::TaskState::Done && task.visit) done.insert(task.task.str());
  }
  EXPECT_FALSE(done.empty());
  propose();
  ASSERT_TRUE(m_rounds->proposal());
  for (const auto& d : m_rounds->proposal()->plan.days) {
    for (const auto& stop : d.stops) {
      for (const std::size_t t : stop.tasks) {
        const auto& due = m_rounds->proposal()->due->tasks[t];
        if (!due.task) continue;
        EXPECT_FALSE(done.contains(due.task->str())) << due.task->str();
      }
    }
  }

  // The whole sheet is one step.
  ASSERT_TRUE(hub.undo());
  EXPECT_EQ(tests::allRows(hub.season()), beforeRows);
}

}  // namespace
}  // namespace outyard::app
