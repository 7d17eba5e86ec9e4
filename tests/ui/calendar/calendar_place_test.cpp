// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/calendar/calendar_place.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QPdfWriter>
#include <QProcess>
#include <QPushButton>
#include <QSignalSpy>
#include <QSpinBox>
#include <QStandardPaths>
#include <QTableView>
#include <QTest>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/calendar/calendar_board.h"
#include "ui/calendar/calendar_words.h"

namespace outyard::calendar {
namespace {

using tests::day;
using tests::Desk;
using tests::field;

/// Read once: the import is the slow part.
const apiary::Season& sample() {
  static const apiary::Season season = tests::sampleSeason();
  return season;
}

QString run(const QString& name, const QStringList& arguments) {
  const QString program = QStandardPaths::findExecutable(name);
  if (program.isEmpty()) return {};
  QProcess process;
  process.start(program, arguments);
  process.waitForFinished(30000);
  return QString::fromUtf8(process.readAllStandardOutput());
}

class CalendarPlaceTest : public testing::Test {
 protected:
  explicit CalendarPlaceTest(apiary::Season season = sample())
      : m_desk(std::move(season)), m_place(m_desk.hub) {
    field<QSpinBox>(m_place, "weeks")->setValue(20);
    m_place.resize(1280, 800);
    m_place.show();
    wait();
  }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !m_place.busy(); }, 120000));
    QCoreApplication::processEvents();
  }
  CalendarBoard& board() { return *m_place.findChild<CalendarBoard*>(); }
  QString label(const char* name) { return field<QLabel>(m_place, name)->text(); }

  Desk m_desk;
  CalendarPlace m_place;
};

TEST_F(CalendarPlaceTest, ShowsTheSampleSeasonInBothThemes) {
  ASSERT_TRUE(m_place.shown());
  EXPECT_EQ(m_place.shown()->weeks.size(), 20u);
  EXPECT_EQ(m_place.shown()->yards.size(), sample().table<apiary::Yard>().size());
  for (const auto theme : {adapt::Theme::Light, adapt::Theme::Dark}) {
    widgets::applyTheme(theme);
    const QString name =
        theme == adapt::Theme::Light ? QStringLiteral("light") : QStringLiteral("dark");
    tests::picture(m_place, QStringLiteral("calendar-") + name);
    tests::expectNothingCut(m_place);
  }
  widgets::applyTheme(adapt::Theme::Light);
  const QFont plain = QApplication::font();
  QFont large = plain;
  large.setPointSizeF(plain.pointSizeF() * 1.5);
  QApplication::setFont(large);
  {
    CalendarPlace place(m_desk.hub);
    field<QSpinBox>(place, "weeks")->setValue(12);
    place.resize(1600, 1000);
    place.show();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !place.busy(); }, 120000));
    tests::picture(place, QStringLiteral("calendar-150"), {1600, 1000});
    tests::expectNothingCut(place);
  }
  QApplication::setFont(plain);
}

TEST_F(CalendarPlaceTest, TheCursorGoesByKeysAndSaysWhatIsThere) {
  board().setCursorCell({0, 0});
  const QString first = label("cellHead");
  EXPECT_TRUE(first.contains(weekText(m_place.shown()->weeks[0].monday)));
  QTest::keyClick(&board(), Qt::Key_Right);
  EXPECT_EQ(board().cursor(), CalendarBoard::Cell(0, 1));
  QTest::keyClick(&board(), Qt::Key_Down);
  EXPECT_EQ(board().cursor(), CalendarBoard::Cell(1, 1));
  EXPECT_NE(label("cellHead"), first);
  QTest::keyClick(&board(), Qt::Key_End);
  QTest::keyClick(&board(), Qt::Key_End, Qt::ControlModifier);
  EXPECT_EQ(board().cursor(), CalendarBoard::Cell(m_place.shown()->yards.size() - 1, 19));
  QTest::keyClick(&board(), Qt::Key_Right);
  EXPECT_EQ(board().cursor()->second, 19u) << "stays on the last week";
  EXPECT_TRUE(label("cellHead").contains(QStringLiteral("Expected")));
  EXPECT_FALSE(label("cellWords").isEmpty());
  EXPECT_FALSE(board().accessibleDescription().isEmpty());
  const QSignalSpy opened(&m_place, &widgets::Place::openPlace);
  QTest::keyClick(&board(), Qt::Key_Return);
  ASSERT_EQ(opened.count(), 1);
  EXPECT_EQ(opened[0][0].toString(), QStringLiteral("yards"));
  EXPECT_EQ(m_desk.hub.selection().yard, m_place.shown()->yards.back());
}

TEST_F(CalendarPlaceTest, AClickSetsTheCursorWhereItIsPainted) {
  board().setCursorCell({0, 0});
  const QRectF cell = board().measures().cell(0, 3);
  QTest::mouseClick(board().viewport(), Qt::LeftButton, Qt::NoModifier, cell.center().toPoint());
  EXPECT_EQ(board().cursor(), CalendarBoard::Cell(0, 3));
  EXPECT_FALSE(board().cellAt(QPoint(3, 3)).has_value());
}

TEST_F(CalendarPlaceTest, OtherDatesAreTriedAndKeptAsOneStep) {
  const auto& yards = m_place.shown()->yards;
  const apiary::Flow* flow = nullptr;
  for (const auto& [key, each] : sample().table<apiary::Flow>()) {
    if (each.yard == yards[0] && each.nectar.value_or(0) > 2) flow = &each;
  }
  ASSERT_NE(flow, nullptr);
  board().setCursorCell({0, 0});
  auto* what = field<QComboBox>(m_place, "what");
  int at = -1;
  for (int i = 1; i < what->count(); ++i) {
    const auto* each =
        m_desk.hub.season().find<apiary::Flow>(what->itemData(i).toString().toStdString());
    if (each && *each == *flow) at = i;
  }
  ASSERT_GT(at, 0);
  what->setCurrentIndex(at);
  field<QSpinBox>(m_place, "days")->setValue(14);
  const auto before = m_place.shown();
  field<QPushButton>(m_place, "try")->click();
  wait();
  ASSERT_TRUE(m_place.showsTrial());
  EXPECT_FALSE(label("changeWords").isEmpty());
  EXPECT_EQ(m_desk.hub.season().table<apiary::Flow>(), sample().table<apiary::Flow>());
  bool other = false;
  for (std::size_t w = 0; w < before->weeks.size(); ++w) {
    other = other || before->cell(0, w).nectar != m_place.shown()->cell(0, w).nectar;
  }
  EXPECT_TRUE(other);
  field<QPushButton>(m_place, "letGo")->click();
  EXPECT_EQ(m_place.shown(), before);
  field<QPushButton>(m_place, "try")->click();
  wait();
  field<QPushButton>(m_place, "keep")->click();
  wait();
  EXPECT_FALSE(m_place.showsTrial());
  EXPECT_NE(m_desk.hub.season().table<apiary::Flow>(), sample().table<apiary::Flow>());
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(m_desk.hub.season().table<apiary::Flow>(), sample().table<apiary::Flow>());
  wait();
}

TEST_F(CalendarPlaceTest, StandsOnOnePageOfEachPaper) {
  for (const auto size : {QPageSize::A4, QPageSize::A3, QPageSize::Letter}) {
    const QString path = m_desk.folder.filePath(QStringLiteral("calendar.pdf"));
    {
      QPdfWriter writer(path);
      writer.setPageSize(QPageSize(size));
      m_place.printTo(writer);
    }
    const QString folder = qEnvironmentVariable("OUTYARD_PICTURES");
    if (!folder.isEmpty()) {
      QFile::copy(path, folder + QStringLiteral("/calendar-%1.pdf").arg(int(size)));
    }
    const QString text = run(QStringLiteral("pdftotext"), {path, QStringLiteral("-")});
    if (text.isEmpty()) GTEST_SKIP() << "pdftotext is not installed";
    EXPECT_EQ(text.count(QLatin1Char('\f')), 1);
    EXPECT_TRUE(text.contains(QStringLiteral("Hours a week")));
    for (const auto& yard : m_place.shown()->yards) {
      EXPECT_TRUE(text.contains(QString::fromStdString(yard.str()))) << yard.str();
    }
  }
  const QString svg = m_desk.folder.filePath(QStringLiteral("calendar.svg"));
  ASSERT_TRUE(m_place.writeSvg(svg));
  QFile file(svg);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  EXPECT_TRUE(file.readAll().contains("</svg>"));
  EXPECT_FALSE(m_place.writeSvg(m_desk.folder.filePath(QStringLiteral("no/calendar.svg"))));
  EXPECT_GT(m_place.picture().width(), 2000);
}

TEST_F(CalendarPlaceTest, TheTableTwinHoldsTheSameWeeks) {
  auto* table = field<QTableView>(m_place, "calendarTable");
  ASSERT_GT(table->model()->rowCount(), 10);
  m_place.menuActions().front()->trigger();
  EXPECT_TRUE(table->isVisible());
  EXPECT_FALSE(board().isVisible());
  table->selectRow(5);
  EXPECT_TRUE(label("cellHead").contains(table->model()->index(5, 1).data().toString()));
  tests::picture(m_place, QStringLiteral("calendar-table"));
}

TEST(CalendarPlaceEmpty, SaysWhatToDo) {
  Desk desk{apiary::Season{}};
  CalendarPlace place(desk.hub);
  place.resize(1000, 600);
  place.show();
  QCoreApplication::processEvents();
  EXPECT_FALSE(place.busy());
  EXPECT_TRUE(field<QLabel>(place, "emptySentence")->text().contains(QStringLiteral("no yard")));
  desk.hub.close();
  EXPECT_TRUE(field<QLabel>(place, "emptySentence")->text().contains(QStringLiteral("No season")));
  EXPECT_FALSE(place.writeSvg(desk.folder.filePath(QStringLiteral("x.svg"))));
}

}  // namespace
}  // namespace outyard::calendar
