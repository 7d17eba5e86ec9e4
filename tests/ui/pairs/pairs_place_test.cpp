// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pairs_place.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QBuffer>
#include <QComboBox>
#include <QFile>
#include <QGraphicsView>
#include <QLabel>
#include <QLineEdit>
#include <QPdfWriter>
#include <QPushButton>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTableView>
#include <QTest>
#include <QTextBrowser>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/adapt/words.h"
#include "ui/pairs/greedy.h"
#include "ui/pairs/pairs_map.h"
#include "ui/pairs/pairs_models.h"
#include "ui/pairs/pairs_words.h"

namespace outyard::pairs {
namespace {

using tests::day;
using tests::Desk;
using tests::field;

constexpr int kDo = 2, kHeld = 8;  // columns of the table of pairs

/// Read once: the import is the slow part.
const apiary::Season& sample() {
  static const apiary::Season season = tests::sampleSeason();
  return season;
}

class PairsPlaceTest : public testing::Test {
 protected:
  explicit PairsPlaceTest(apiary::Season season = sample())
      : m_desk(std::move(season)), m_place(m_desk.hub) {
    m_place.resize(1280, 800);
    m_place.show();
    chooseAll();
    field<QTabWidget>(m_place, "steps")->setCurrentIndex(2);
    wait();
  }
  void chooseAll() { field<QComboBox>(m_place, "yard")->setCurrentIndex(0); }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !m_place.busy(); }, 60000));
    QCoreApplication::processEvents();
  }
  QTableView& table() { return *field<QTableView>(m_place, "pairs"); }
  QAbstractItemModel& rows() { return *table().model(); }
  QString cell(int row, int column) { return rows().index(row, column).data().toString(); }
  /// First line that asks for work and has something else to choose; -1 when there is none.
  int lineWithChoice() {
    for (int row = 0; row < rows().rowCount(); ++row) {
      table().setCurrentIndex(rows().index(row, 0));
      if (action("second")->isEnabled() && cell(row, kDo) != methodText(apiary::Method::Leave)) {
        return row;
      }
    }
    return -1;
  }
  QAction* action(const char* name) {
    for (auto* each : m_place.menuActions()) {
      if (each->objectName() == QLatin1String(name)) return each;
    }
    ADD_FAILURE() << name;
    return nullptr;
  }
  const planning::BoostOption* chosenHere() {
    const auto* model = qobject_cast<TextTable*>(&rows());
    return m_place.plan()->chosenFor(*model->line(table().currentIndex().row()).colony);
  }

  Desk m_desk;
  PairsPlace m_place;
};

TEST_F(PairsPlaceTest, TheSampleHasAPlanThatSaysWhatItStandsOn) {
  const auto* plan = m_place.plan();
  ASSERT_NE(plan, nullptr);
  EXPECT_TRUE(plan->optimal);
  EXPECT_GT(rows().rowCount(), 0);
  const QString sum = field<QLabel>(m_place, "sum")->text();
  EXPECT_TRUE(sum.contains(QStringLiteral("By forecast to"))) << sum.toStdString();
  EXPECT_TRUE(sum.contains(QStringLiteral("usable colonies"))) << sum.toStdString();
  EXPECT_TRUE(sum.contains(QStringLiteral("one after the other")));
  EXPECT_EQ(field<QTableView>(m_place, "needs")->model()->rowCount(),
            static_cast<int>(plan->problem.judgements.size()));
}

TEST_F(PairsPlaceTest, TheChosenPairShowsBothCourses) {
  auto* chart = field<QWidget>(m_place, "pairChart");
  for (int row = 0; row < rows().rowCount(); ++row) {
    table().setCurrentIndex(rows().index(row, 0));
    if (cell(row, kDo).contains(QStringLiteral("set over"))) break;
  }
  field<QTabWidget>(m_place, "pairViews")->setCurrentIndex(1);
  ASSERT_TRUE(QTest::qWaitFor(
      [&] { return chart->accessibleDescription().contains(QStringLiteral("with the plan")); },
      20000))
      << chart->accessibleDescription().toStdString();
  // Both colonies are told, each with its band.
  EXPECT_EQ(chart->accessibleDescription().count(QStringLiteral("as it is")), 2);
  EXPECT_EQ(chart->findChildren<QGraphicsView*>().size(), 2);
  for (const auto theme : {adapt::Theme::Light, adapt::Theme::Dark}) {
    widgets::applyTheme(theme);
    tests::picture(m_place, theme == adapt::Theme::Dark ? QStringLiteral("pairs-courses-dark")
                                                        : QStringLiteral("pairs-courses-light"));
  }
  widgets::applyTheme(adapt::Theme::Light);
}

TEST_F(PairsPlaceTest, ASecondBestPinnedIsHeldAndTheRestWorkedOutAgain) {
  const int row = lineWithChoice();
  ASSERT_GE(row, 0);
  const auto colony = chosenHere()->colony;
  const auto best = chosenHere()->id;
  const double objective = m_place.plan()->objective;
  const auto second = m_place.plan()->secondBest(colony)->id;
  QSignalSpy spy(&m_place, &PairsPlace::planChanged);
  table().setFocus();
  QTest::keyClick(&table(), Qt::Key_S);
  wait();
  ASSERT_NE(m_place.plan(), nullptr);
  EXPECT_GE(spy.count(), 1);
  EXPECT_EQ(m_place.plan()->chosenFor(colony)->id, second);
  EXPECT_LE(m_place.plan()->objective, objective + 1e-9);  // a pin never gains
  EXPECT_EQ(chosenHere()->colony, colony);                 // the line stays chosen
  EXPECT_TRUE(cell(table().currentIndex().row(), kHeld).contains(QStringLiteral("pinned")));
  QTest::keyClick(&table(), Qt::Key_P);  // let go
  wait();
  EXPECT_EQ(m_place.plan()->chosenFor(colony)->id, best);
  EXPECT_NEAR(m_place.plan()->objective, objective, 1e-9);
}

TEST_F(PairsPlaceTest, AForbiddenPairIsNotChosenUntilAllowedAgain) {
  ASSERT_GE(lineWithChoice(), 0);
  const auto colony = chosenHere()->colony;
  const auto best = chosenHere()->id;
  table().setFocus();
  QTest::keyClick(&table(), Qt::Key_F);
  wait();
  ASSERT_NE(m_place.plan()->chosenFor(colony), nullptr);
  EXPECT_NE(m_place.plan()->chosenFor(colony)->id, best);
  EXPECT_TRUE(cell(table().currentIndex().row(), kHeld).contains(QStringLiteral("forbidden")));
  QTest::keyClick(&table(), Qt::Key_A);
  wait();
  EXPECT_EQ(m_place.plan()->chosenFor(colony)->id, best);
}

TEST_F(PairsPlaceTest, AcceptedAndUndoneLeavesTheSeasonAsBefore) {
  const auto before = tests::allRows(m_desk.hub.season());
  const auto kept = tests::allRows(m_desk.store->kept());
  auto* accept = field<QPushButton>(m_place, "accept");
  ASSERT_TRUE(accept->isEnabled()) << accept->toolTip().toStdString();
  const auto plans = m_desk.hub.season().table<apiary::Plan>().size();
  accept->click();
  EXPECT_TRUE(m_desk.dialogs.failures.isEmpty());
  ASSERT_EQ(m_desk.hub.season().table<apiary::Plan>().size(), plans + 1);
  EXPECT_NE(tests::allRows(m_desk.store->kept()), kept);
  auto* said = field<QLabel>(m_place, "accepted");
  EXPECT_TRUE(said->isVisible());
  EXPECT_TRUE(said->text().contains(QStringLiteral("Accepted")));
  EXPECT_FALSE(accept->isEnabled());  // not twice
  EXPECT_FALSE(m_place.busy());       // its own tasks do not change the plan
  // Every pair that asks for work has a task that names it.
  std::set<std::string> withTask;
  for (const auto& [key, task] : m_desk.hub.season().table<apiary::Task>()) {
    if (task.plan && task.colony) withTask.insert(task.colony->str());
    if (task.plan && task.otherColony) withTask.insert(task.otherColony->str());
  }
  for (const auto& id : m_place.plan()->chosen) {
    const auto* o = m_place.plan()->option(id);
    if (planning::isVisit(*o) || o->method == apiary::Method::Leave) continue;
    EXPECT_EQ(withTask.count(o->colony.str()), 1u) << id;
  }
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
  EXPECT_EQ(tests::allRows(m_desk.store->kept()), kept);
  EXPECT_FALSE(said->isVisible());
  EXPECT_TRUE(accept->isEnabled());
}

TEST_F(PairsPlaceTest, ARecordMadeMeanwhileMakesThePlanAnew) {
  const auto* sound = [&]() -> const strength::Judgement* {
    for (const auto& j : m_place.plan()->problem.judgements) {
      if (j.verdict == apiary::VerdictCode::SmallSound) return &j;
    }
    return nullptr;
  }();
  ASSERT_NE(sound, nullptr);
  const auto colony = sound->colony;
  ASSERT_TRUE(m_desk.hub.execute(session::overruleVerdict(
      sound->hive, colony, m_desk.hub.workingDate(), apiary::VerdictCode::TooSmall, "a fist")));
  EXPECT_TRUE(m_place.busy());
  EXPECT_FALSE(field<QPushButton>(m_place, "accept")->isEnabled());
  wait();
  EXPECT_EQ(judgementOf(m_place.plan()->problem, colony)->verdict, apiary::VerdictCode::TooSmall);
  EXPECT_EQ(m_place.plan()->chosenFor(colony), nullptr);
}

TEST_F(PairsPlaceTest, AJudgementIsOverruledFromTheFirstStep) {
  auto* needs = field<QTableView>(m_place, "needs");
  needs->setCurrentIndex(needs->model()->index(0, 0));
  const auto colony = *qobject_cast<TextTable*>(needs->model())->line(0).colony;
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QComboBox>(d, "verdict")->setCurrentIndex(static_cast<int>(apiary::VerdictCode::Fair));
    return true;  // without a reason
  };
  const auto before = tests::allRows(m_desk.hub.season());
  field<QPushButton>(m_place, "overrule")->click();
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QComboBox>(d, "verdict")->setCurrentIndex(static_cast<int>(apiary::VerdictCode::Fair));
    field<QLineEdit>(d, "reason")->setText(QStringLiteral("lifted the lid again"));
    return true;
  };
  field<QPushButton>(m_place, "overrule")->click();
  wait();
  EXPECT_EQ(judgementOf(m_place.plan()->problem, colony)->verdict, apiary::VerdictCode::Fair);
}

TEST_F(PairsPlaceTest, WhenAndWithWhatNamesWeatherGearStepsAndCautions) {
  const QString text = field<QTextBrowser>(m_place, "when")->toPlainText();
  for (const auto& id : m_place.plan()->chosen) {
    const auto* o = m_place.plan()->option(id);
    if (planning::isVisit(*o) || o->method == apiary::Method::Leave) continue;
    EXPECT_TRUE(text.contains(QString::fromStdString(o->hive.str()))) << id;
    for (const auto& [item, count] : o->gear) {
      EXPECT_TRUE(text.contains(gearText(item))) << item;
    }
    for (const auto& step : planning::methodGuide(o->method).cautions) {
      EXPECT_TRUE(text.contains(adapt::words(step))) << step.key;
    }
  }
  EXPECT_TRUE(text.contains(QStringLiteral("Weather on")));
}

TEST_F(PairsPlaceTest, TheMapHasAnArrowForEveryPairOfItsYard) {
  auto* map = field<PairsMap>(m_place, "pairsMap");
  ASSERT_TRUE(map->yard());
  int pairs = 0;
  for (const auto& id : m_place.plan()->chosen) {
    const auto* o = m_place.plan()->option(id);
    if (planning::isVisit(*o) || !o->donorHive) continue;
    if (m_place.plan()->problem.yardOf.at(o->colony.str()) != *map->yard()) continue;
    ++pairs;
    EXPECT_TRUE(map->accessibleDescription().contains(QString::fromStdString(o->hive.str())));
  }
  ASSERT_GT(pairs, 0);
  int heads = 0;
  for (const auto& shape : map->shapesFor(180, 120)) {
    const auto* polygon = std::get_if<sheet::PolygonShape>(&shape);
    if (polygon && polygon->closed && polygon->fill == sheet::Ink::Arrow) ++heads;
  }
  EXPECT_GE(heads, pairs);
}

TEST_F(PairsPlaceTest, ExportsOneLineForEachColony) {
  const QString path = m_desk.folder.filePath(QStringLiteral("pairs.csv"));
  m_desk.dialogs.file = path;
  m_place.exportTable();
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QByteArray bytes = file.readAll();
  EXPECT_TRUE(bytes.startsWith("colony,hive,verdict,method,donor_colony,donor_hive,bees_moved,"));
  EXPECT_EQ(bytes.count('\n'),
            static_cast<qsizetype>(m_place.plan()->problem.judgements.size()) + 1);
  m_desk.dialogs.file = QStringLiteral("/no/such/folder/pairs.csv");
  m_place.exportTable();
  EXPECT_EQ(m_desk.dialogs.failures.size(), 1);
}

TEST_F(PairsPlaceTest, PairingOneAfterTheOtherNeverBeatsTheExactChoice) {
  const auto& problem = m_place.plan()->problem;
  const auto greedy = greedyChoice(problem);
  ASSERT_TRUE(greedy);
  EXPECT_LE(greedy->objective, m_place.plan()->objective + 1e-9);
  EXPECT_GE(greedy->objective, 0);
  // What it chose obeys the plan's own rules: each colony exactly once.
  std::map<std::string, int> count;
  for (const auto& id : greedy->chosen) {
    const auto* o = m_place.plan()->option(id);
    if (!planning::isVisit(*o)) ++count[o->colony.str()];
  }
  for (const auto& [colony, n] : count) EXPECT_EQ(n, 1) << colony;
}

TEST_F(PairsPlaceTest, AnotherSeasonForgetsPinsAndPlan) {
  ASSERT_GE(lineWithChoice(), 0);
  table().setFocus();
  QTest::keyClick(&table(), Qt::Key_S);
  wait();
  m_desk.hub.close();
  EXPECT_EQ(m_place.plan(), nullptr);
  EXPECT_TRUE(
      field<QLabel>(m_place, "emptySentence")->text().contains(QStringLiteral("No season")));
  EXPECT_FALSE(field<QPushButton>(m_place, "accept")->isEnabled());
}

TEST_F(PairsPlaceTest, PrintsOnPages) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    m_place.printTo(writer);
  }
  EXPECT_TRUE(buffer.data().startsWith("%PDF"));
  EXPECT_GT(buffer.size(), 5000);
}

/// A season as small as can be, and what the place says then.
QString sentenceFor(apiary::Season season) {
  Desk desk(std::move(season));
  PairsPlace place(desk.hub);
  place.resize(1000, 700);
  place.show();
  EXPECT_TRUE(QTest::qWaitFor([&] { return !place.busy(); }, 60000));
  auto* page = field<QLabel>(place, "emptySentence");
  if (page->isVisible()) return page->text();
  field<QTabWidget>(place, "steps")->setCurrentIndex(2);
  EXPECT_FALSE(field<QPushButton>(place, "accept")->isEnabled());
  return field<QLabel>(place, "noPairs")->text();
}

TEST(PairsEmpty, EachEmptyStateHasItsSentence) {
  EXPECT_TRUE(sentenceFor({}).contains(QStringLiteral("no yard yet")));
  tests::SeasonBuilder nobody;
  nobody.yard("TR").hive("TR-01", "TR");
  EXPECT_TRUE(sentenceFor(nobody.take()).contains(QStringLiteral("No colony lives here")));
  EXPECT_TRUE(sentenceFor(tests::smallSeason()).contains(QStringLiteral("Nothing has been seen")));
  tests::SeasonBuilder strong;
  strong.yard("TR").livingHive("TR-01", "TR", 2, 2, 2);
  strong.inspection("TR-01", "2026-04-24", [](apiary::Inspection& i) {
    i.seams = 9;
    i.framesWithBrood = 7;
    i.eggsSeen = true;
    i.pattern = 5;
    i.honeyKg = 12;
  });
  const QString said = sentenceFor(strong.take());
  EXPECT_TRUE(said.contains(QStringLiteral("No colony here is small"))) << said.toStdString();
}

TEST(PlanRunner, CancelledSaysSoAndGivesNothing) {
  PlanRunner runner;
  QSignalSpy done(&runner, &PlanRunner::finished), stopped(&runner, &PlanRunner::cancelled);
  const auto season = std::make_shared<const apiary::Season>(sample());
  planning::BoostRequest request;
  for (const auto& [key, yard] : season->table<apiary::Yard>()) request.yards.push_back(yard.yard);
  request.date = day("2026-04-25");
  runner.start(season, request);
  EXPECT_TRUE(runner.running());
  runner.cancel();
  EXPECT_FALSE(runner.running());
  EXPECT_EQ(stopped.count(), 1);
  QTest::qWait(300);
  EXPECT_EQ(done.count(), 0);
  // The next one is not harmed by it, and of two begun at once only the last is told.
  runner.start(season, request);
  request.forbids = {"no such option"};
  runner.start(season, request);
  ASSERT_TRUE(done.wait(60000));
  EXPECT_EQ(done.count(), 1);
}

TEST(PlanRunner, APinThatIsNoLongerPossibleIsLetGoAndSaid) {
  planning::BoostRequest request;
  const auto& season = sample();
  request.yards = {season.table<apiary::Yard>().begin()->second.yard};
  request.date = day("2026-04-25");
  request.pins = {"stack:XX:YY:1"};
  base::Progress quiet;
  const auto outcome = workOutPlan(season, request, quiet);
  ASSERT_TRUE(outcome.plan);
  EXPECT_EQ(outcome.droppedPins, request.pins);
}

class PairsPictures : public testing::TestWithParam<adapt::Theme> {};

TEST_P(PairsPictures, NothingIsCutOff) {
  widgets::applyTheme(GetParam());
  const QString shade =
      GetParam() == adapt::Theme::Dark ? QStringLiteral("dark") : QStringLiteral("light");
  Desk desk(sample());
  PairsPlace place(desk.hub);
  place.show();
  field<QComboBox>(place, "yard")->setCurrentIndex(0);
  ASSERT_TRUE(QTest::qWaitFor([&] { return !place.busy(); }, 60000));
  for (int step = 0; step < 4; ++step) {
    field<QTabWidget>(place, "steps")->setCurrentIndex(step);
    tests::picture(place, QStringLiteral("pairs-%1-").arg(step + 1) + shade);
    tests::expectNothingCut(place);
  }
  desk.dialogs.onRun = [&](QDialog& d) {
    tests::picture(d, QStringLiteral("pairs-overrule-") + shade, d.sizeHint().expandedTo({460, 0}));
    tests::expectNothingCut(d);
    return false;
  };
  field<QPushButton>(place, "overrule")->click();
  widgets::applyTheme(adapt::Theme::Light);
}

INSTANTIATE_TEST_SUITE_P(Themes, PairsPictures,
                         testing::Values(adapt::Theme::Light, adapt::Theme::Dark));

}  // namespace
}  // namespace outyard::pairs
