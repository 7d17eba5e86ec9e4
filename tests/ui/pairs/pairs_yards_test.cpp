// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QDateEdit>
#include <QElapsedTimer>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTabBar>
#include <QTabWidget>
#include <QTableView>
#include <QTest>
#include <QTextBrowser>
#include <cmath>

#include "core/session/commands.h"
#include "tests/ui/pairs/grown_yard.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/adapt/words.h"
#include "ui/pairs/greedy.h"
#include "ui/pairs/overrule_dialog.h"
#include "ui/pairs/pairs_map.h"
#include "ui/pairs/pairs_models.h"
#include "ui/pairs/pairs_place.h"
#include "ui/pairs/pairs_words.h"
#include "ui/pairs/review_dialog.h"
#include "ui/pairs/stacks_dialog.h"

namespace outyard::pairs {
namespace {

using tests::Desk;
using tests::field;
using tests::GrownYard;
using tests::YardWish;

constexpr int kSecond = 9;  // column of the table of pairs

/// A larger font for the time of a test, as in a window at 150 %.
class Letters {
 public:
  explicit Letters(double times) : m_plain(QApplication::font()) {
    QFont font = m_plain;
    font.setPointSizeF(m_plain.pointSizeF() * times);
    QApplication::setFont(font);
  }
  ~Letters() { QApplication::setFont(m_plain); }
  Letters(const Letters&) = delete;
  Letters& operator=(const Letters&) = delete;

 private:
  QFont m_plain;
};

/// Every cell can be read whole, but for the last column, which ends in words that stand below.
void expectCellsWhole(const QTableView& table) {
  const auto& model = *table.model();
  for (int row = 0; row < model.rowCount(); ++row) {
    for (int column = 0; column + 1 < model.columnCount(); ++column) {
      const auto index = model.index(row, column);
      const auto font = index.data(Qt::FontRole);
      QFont used = table.font();
      if (font.isValid()) used.setBold(font.value<QFont>().bold());
      const int wide = QFontMetrics(used).horizontalAdvance(index.data().toString()) + 6;
      EXPECT_LE(wide, table.columnWidth(column))
          << table.objectName().toStdString() << ": " << index.data().toString().toStdString();
    }
  }
}

class Yard {
 public:
  explicit Yard(const YardWish& wish) : desk(GrownYard(wish).take()), place(desk.hub) {
    place.resize(1280, 800);
    place.show();
    wait();
  }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !place.busy(); }, 60000));
    QCoreApplication::processEvents();
  }
  void step(int number) { field<QTabWidget>(place, "steps")->setCurrentIndex(number - 1); }
  QString notes() { return field<QLabel>(place, "noPairs")->text(); }
  QString when() { return field<QTextBrowser>(place, "when")->toPlainText(); }
  QString sum() { return field<QLabel>(place, "sum")->text(); }
  QTableView& pairs() { return *field<QTableView>(place, "pairs"); }

  Desk desk;
  PairsPlace place;
};

struct Case {
  const char* name;
  YardWish wish;
};
void PrintTo(const Case& c, std::ostream* out) {
  *out << c.name;
}

class PairsYards : public testing::TestWithParam<std::tuple<Case, int>> {};

TEST_P(PairsYards, EveryStepCanBeReadInLightAndDark) {
  const auto& [wanted, percent] = GetParam();
  const Letters letters(percent / 100.0);
  Yard yard(wanted.wish);
  for (const auto theme : {adapt::Theme::Light, adapt::Theme::Dark}) {
    widgets::applyTheme(theme);
    const QString shade =
        theme == adapt::Theme::Dark ? QStringLiteral("dark") : QStringLiteral("light");
    for (int step = 1; step <= 4; ++step) {
      yard.step(step);
      // The sum may have got another line that the window has yet to make room for.
      const auto* sum = field<QLabel>(yard.place, "sum");
      EXPECT_TRUE(QTest::qWaitFor(
          [&] { return sum->heightForWidth(sum->width()) <= sum->height() + 1; }, 5000));
      tests::picture(yard.place, QStringLiteral("yard-%1-%2-%3-%4")
                                     .arg(QLatin1String(wanted.name))
                                     .arg(step)
                                     .arg(shade)
                                     .arg(percent));
      tests::expectNothingCut(yard.place);
    }
  }
  widgets::applyTheme(adapt::Theme::Light);
  for (const auto* table : yard.place.findChildren<QTableView*>()) expectCellsWhole(*table);
  // The table of pairs keeps its head and four lines beside map and words.
  yard.step(3);
  QCoreApplication::processEvents();
  EXPECT_GE(yard.pairs().viewport()->height(),
            4 * yard.pairs().verticalHeader()->defaultSectionSize());
  EXPECT_GE(field<PairsMap>(yard.place, "pairsMap")->height(), 160);
}

INSTANTIATE_TEST_SUITE_P(
    All, PairsYards,
    testing::Combine(testing::Values(Case{"ten", {}}, Case{"sixty", {.hives = 60, .excluders = 3}},
                                     Case{"cold", {.cold = true}},
                                     Case{"nodonor", {.donors = false}},
                                     Case{"foul", {.foulBrood = true}},
                                     Case{"nogear", {.gear = false}}),
                     testing::Values(100, 150)),
    [](const auto& each) {
      return std::string(std::get<0>(each.param).name) + std::to_string(std::get<1>(each.param));
    });

TEST(PairsCases, FoulBroodIsSaidOnEveryStepAndNothingIsCalledWarmEnough) {
  Yard yard({.foulBrood = true});
  EXPECT_TRUE(yard.notes().contains(QStringLiteral("Foul brood suspected in hive TR-10")))
      << yard.notes().toStdString();
  EXPECT_FALSE(yard.notes().contains(QStringLiteral("worth a boost")));
  EXPECT_TRUE(yard.when().contains(QStringLiteral("Stop: foul brood suspected")));
  EXPECT_TRUE(yard.when().contains(QStringLiteral("call the bee inspector")));
  EXPECT_FALSE(yard.when().contains(QStringLiteral("Warm enough"))) << yard.when().toStdString();
  EXPECT_FALSE(field<QPushButton>(yard.place, "accept")->isEnabled());
  EXPECT_FALSE(field<QPushButton>(yard.place, "firstDay")->isVisibleTo(&yard.place));
  const auto* needs = qobject_cast<TextTable*>(field<QTableView>(yard.place, "needs")->model());
  for (int row = 0; row < needs->rowCount(); ++row) {
    EXPECT_FALSE(needs->line(row).strong) << row;  // none is held out as worth help
  }
  EXPECT_TRUE(field<QLabel>(yard.place, "needSum")->text().contains(QStringLiteral("Barred")));
}

// A stack's colonies are not held out as worth help a second time: the evidence begins with why.
TEST(PairsCases, AColonyThatIsBarredIsNotHeldOutAsWorthHelp) {
  Desk desk(tests::sampleSeason());
  PairsPlace place(desk.hub);
  place.show();
  field<QComboBox>(place, "yard")->setCurrentIndex(0);
  ASSERT_TRUE(QTest::qWaitFor([&] { return !place.busy(); }, 60000));
  const auto* needs = qobject_cast<TextTable*>(field<QTableView>(place, "needs")->model());
  int small = 0, barred = 0;
  for (int row = 0; row < needs->rowCount(); ++row) {
    const auto& line = needs->line(row);
    const auto* why = barOf(place.plan()->problem, *line.colony);
    if (why) {
      ++barred;
      EXPECT_FALSE(line.strong) << line.colony->str();
      EXPECT_TRUE(line.cells.last().startsWith(adapt::words(*why))) << line.colony->str();
    }
    small += line.strong ? 1 : 0;
  }
  EXPECT_GT(barred, 0);
  ASSERT_GE(needs->rowOf(base::ColonyId("TR-07")), 0);
  EXPECT_NE(barOf(place.plan()->problem, base::ColonyId("TR-07")), nullptr);
  EXPECT_TRUE(field<QLabel>(place, "needSum")->text().startsWith(QString::number(small) + u' '));
}

TEST(PairsCases, InAColdSpellTheFirstWarmDayIsNamedAndOneKeyAway) {
  Yard yard({.cold = true});
  yard.step(3);
  // One line for all kinds of work, not one for each.
  EXPECT_EQ(yard.notes().count(QStringLiteral("1 May 2026")), 1) << yard.notes().toStdString();
  EXPECT_TRUE(yard.sum().contains(QStringLiteral("leaving all as it is")))
      << yard.sum().toStdString();
  EXPECT_FALSE(yard.sum().contains(QStringLiteral("0.00")));
  EXPECT_TRUE(yard.when().contains(QStringLiteral("1–11 May 2026")) ||
              yard.when().contains(QStringLiteral("1–10 May 2026")))
      << yard.when().toStdString();
  EXPECT_FALSE(yard.when().contains(QStringLiteral("-4 to")));  // a minus, not a hyphen
  auto* button = field<QPushButton>(yard.place, "firstDay");
  ASSERT_TRUE(button->isVisibleTo(&yard.place));
  button->setFocus();
  QTest::keyClick(button, Qt::Key_Space);
  EXPECT_EQ(field<QDateEdit>(yard.place, "date")->date(), QDate(2026, 5, 1));
  yard.wait();
  EXPECT_TRUE(field<QPushButton>(yard.place, "accept")->isEnabled());
  EXPECT_FALSE(button->isVisibleTo(&yard.place));
}

TEST(PairsCases, WithNoDonorStrongEnoughItSaysToWaitAndWhatEachLacks) {
  Yard yard({.donors = false});
  EXPECT_TRUE(yard.notes().contains(QStringLiteral("Nobody here is strong enough to give")))
      << yard.notes().toStdString();
  const auto* barred = qobject_cast<TextTable*>(field<QTableView>(yard.place, "barred")->model());
  std::map<std::string, int> lines;
  QString all;
  for (int row = 0; row < barred->rowCount(); ++row) {
    ++lines[barred->line(row).colony->str()];
    all += barred->line(row).cells.last();
  }
  for (const auto& [colony, count] : lines) EXPECT_EQ(count, 1) << colony;
  EXPECT_TRUE(all.contains(QStringLiteral("carries no stack")));
  // The queenless one stands there too, with its reason.
  EXPECT_EQ(lines.count("TR-05"), 1u);
}

TEST(PairsCases, GearIsNamedInWordsAndTheFirstMissingPieceIsPriced) {
  Yard bare({.gear = false});
  EXPECT_FALSE(bare.notes().contains(u'_')) << bare.notes().toStdString();
  EXPECT_FALSE(bare.notes().contains(QStringLiteral("drawn_comb:")));
  EXPECT_TRUE(bare.notes().contains(QStringLiteral("None at hand by the last count")));
  Yard few({.hives = 20, .excluders = 1});
  ASSERT_TRUE(
      QTest::qWaitFor([&] { return few.when().contains(QStringLiteral("all in use")); }, 20000));
  EXPECT_TRUE(few.sum().contains(QStringLiteral("One more excluder would add")))
      << few.sum().toStdString();
  EXPECT_TRUE(few.when().contains(QStringLiteral("One more would add")));
  EXPECT_TRUE(few.when().contains(QStringLiteral("all in use"))) << few.when().toStdString();
}

TEST(PairsCases, TheSecondBestStandsWithItsDifferenceAndWhatHoldsItBack) {
  Yard yard({.hives = 20, .excluders = 1});
  yard.step(3);
  const auto* model = qobject_cast<TextTable*>(yard.pairs().model());
  bool better = false;
  for (int row = 0; row < model->rowCount(); ++row) {
    const auto& line = model->line(row);
    const auto* second = yard.place.plan()->secondBest(*line.colony);
    if (!second) continue;
    const auto* chosen = yard.place.plan()->chosenFor(*line.colony);
    EXPECT_TRUE(line.cells[kSecond].startsWith(signedText(second->net - chosen->net)))
        << line.cells[kSecond].toStdString();
    if (second->net < chosen->net + 0.05 || second->method != apiary::Method::Stack) continue;
    better = true;
    yard.pairs().setCurrentIndex(model->index(row, 0));
    const QString said = field<QTextBrowser>(yard.place, "pairDetail")->toPlainText();
    EXPECT_TRUE(said.contains(QStringLiteral("Against it stands"))) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("excluder: 1 at hand, all in use")))
        << said.toStdString();
  }
  EXPECT_TRUE(better);
}

TEST(PairsCases, StepFourHasTheDaysOfTheReturnAndAPlanB) {
  Yard yard({});
  const QString text = yard.when();
  EXPECT_TRUE(text.contains(QStringLiteral("2–4 May 2026"))) << text.toStdString();  // 7 to 9 days
  EXPECT_TRUE(text.contains(QStringLiteral("25 Apr–10 May 2026")));  // all the days that will do
  int pairs = 0;
  for (const auto& id : yard.place.plan()->chosen) {
    const auto* o = yard.place.plan()->option(id);
    if (planning::isVisit(*o) || !o->donorColony) continue;
    ++pairs;
    if (o->method != apiary::Method::Stack) continue;
    EXPECT_TRUE(text.contains(QStringLiteral("If you see no eggs in %1: do not set it over.")
                                  .arg(QString::fromStdString(o->hive.str()))));
  }
  EXPECT_GT(pairs, 0);
  EXPECT_EQ(text.count(QStringLiteral("Plan B, if")) + text.count(QStringLiteral("No plan B")),
            pairs);
}

TEST(PairsCases, DonorsSayWhatTheyKeepOfBeesAndBrood) {
  Yard yard({});
  const auto* gives = field<QTableView>(yard.place, "gives")->model();
  const auto column = [&](const QString& head) {
    for (int c = 0; c < gives->columnCount(); ++c) {
      if (gives->headerData(c, Qt::Horizontal).toString() == head) return c;
    }
    ADD_FAILURE() << head.toStdString();
    return 0;
  };
  const int spares = column(QStringLiteral("Spares brood combs"));
  const int keeps = column(QStringLiteral("Keeps brood combs"));
  ASSERT_GT(gives->rowCount(), 0);
  for (int row = 0; row < gives->rowCount(); ++row) {
    // Every donor of this yard was seen with brood on 6 to 8 combs; in April it keeps 5 at least.
    const int kept = gives->index(row, keeps).data().toInt();
    const int spared = gives->index(row, spares).data().toInt();
    EXPECT_GE(kept, 5);
    EXPECT_GE(kept + spared, 6);
    EXPECT_LE(kept + spared, 8);
  }
}

// The rule of thumb obeys the same limits, so it can be no better; on a yard with few excluders it
// is worse, and the sum says by how much.
TEST(PairsCases, TheGainOverTheRuleOfThumbIsSaid) {
  Yard yard({.hives = 20, .excluders = 1});
  const auto& plan = *yard.place.plan();
  const auto thumb = weakestWithStrongest(plan.problem);
  ASSERT_TRUE(thumb);
  EXPECT_LT(thumb->objective, plan.objective - 0.01);
  std::map<std::string, int> count;
  double net = 0;
  for (const auto& id : thumb->chosen) {
    net += plan.option(id)->net;
    if (!planning::isVisit(*plan.option(id))) ++count[plan.option(id)->colony.str()];
  }
  EXPECT_NEAR(net, thumb->objective, 1e-6);
  for (const auto& [colony, n] : count) EXPECT_EQ(n, 1) << colony;
  base::Progress quiet;
  EXPECT_TRUE(
      planning::solveBoost(planning::repinned(plan.problem, thumb->chosen, {}), quiet).ok());
  EXPECT_TRUE(
      yard.sum().contains(QStringLiteral("The weakest with the strongest would gain %1")
                              .arg(worthText(plan.objective - thumb->objective, plan.problem))))
      << yard.sum().toStdString();
}

// What is accepted stands on its own days: the return visit not on the list of the day of the work.
TEST(PairsCases, AcceptedReturnVisitsKeepToTheirWindow) {
  Yard yard({});
  field<QPushButton>(yard.place, "accept")->click();
  int work = 0, returns = 0;
  for (const auto& [key, task] : yard.desk.hub.season().table<apiary::Task>()) {
    if (!task.plan) continue;
    if (task.earliest == tests::day(tests::kYardDay)) {
      ++work;
      EXPECT_EQ(task.plannedOn, tests::day(tests::kYardDay));
    } else {
      ++returns;
      EXPECT_FALSE(task.plannedOn) << task.kind;
    }
  }
  EXPECT_GT(work, 0);
  EXPECT_GT(returns, 0);
  ASSERT_TRUE(yard.desk.hub.undo());
  EXPECT_TRUE(yard.desk.hub.season().table<apiary::Task>().empty());
}

// A pin is felt at once: under 100 ms where the machine has a processor free (94 ms were seen with
// nine others at work on two of them). Best of six; a build without optimisation, or a machine that
// works for others, has ten times as long.
TEST(PairsCases, APinInAYardOfSixtyHivesIsSolvedAgainAtOnce) {
  Yard yard({.hives = 60, .excluders = 3});
  yard.step(3);
  yard.pairs().setCurrentIndex(yard.pairs().model()->index(0, 0));
  yard.pairs().setFocus();
  QSignalSpy planned(&yard.place, &PairsPlace::planChanged);
  qint64 best = 1000000;
  for (int n = 0; n < 6; ++n) {
    planned.clear();
    QElapsedTimer timer;
    timer.start();
    QTest::keyClick(&yard.pairs(), n % 2 == 0 ? Qt::Key_S : Qt::Key_P);
    ASSERT_TRUE(QTest::qWaitFor([&] { return planned.count() > 0; }, 20000));
    best = std::min(best, timer.elapsed());
    yard.wait();
  }
  RecordProperty("milliseconds", static_cast<int>(best));
  std::printf("solved again after a pin, 60 hives: %d ms\n", static_cast<int>(best));
  // Far from working it all out anew; how fast it is stands in the benchmark (boost/after_a_pin).
  EXPECT_LT(best, 5000);
}

TEST(PairsCases, ArrowsInARowOfHivesRunPastTheOthers) {
  Yard yard({});
  const auto* map = field<PairsMap>(yard.place, "pairsMap");
  const auto shapes = map->shapesFor(180, 90);
  int arrows = 0;
  std::vector<sheet::Point> ends;
  std::vector<const sheet::PolygonShape*> lines;
  for (const auto& shape : shapes) {
    const auto* polygon = std::get_if<sheet::PolygonShape>(&shape);
    if (!polygon || polygon->closed || polygon->stroke.ink != sheet::Ink::Arrow) continue;
    ++arrows;
    lines.push_back(polygon);
    ends.push_back(polygon->points.front());
    ends.push_back(polygon->points.back());
  }
  ASSERT_GE(arrows, 3);
  // All stand in one row: no arrow runs over a mark (8 mm high) between its ends.
  double row = 0;
  for (const auto& end : ends) row += end.y / static_cast<double>(ends.size());
  int near = 0, far = 0;
  for (const auto* line : lines) {
    const auto& p = line->points;
    const auto [left, right] = std::minmax(p.front().x, p.back().x);
    // Only an arrow that has another hive between its ends must go around.
    const bool past =
        std::any_of(ends.begin(), ends.end(),
                    [&, l = left, r = right](const auto& e) { return e.x > l + 8 && e.x < r - 8; });
    if (past) ++(std::abs(p[p.size() / 2].y - row) < 4 ? near : far);
  }
  EXPECT_EQ(near, 0);
  EXPECT_GT(far, 0);
}

TEST(PairsCases, NoTwoKeysOfAStepAreTheSame) {
  Yard yard({.cold = true});
  for (int step = 1; step <= 4; ++step) {
    yard.step(step);
    QCoreApplication::processEvents();
    QStringList keys;
    const auto add = [&](const QString& text) {
      const auto at = text.indexOf(u'&');
      if (at >= 0 && at + 1 < text.size()) keys << text.mid(at + 1, 1).toLower();
    };
    for (const auto* label : yard.place.findChildren<QLabel*>()) {
      if (label->isVisible() && label->buddy()) add(label->text());
    }
    for (const auto* button : yard.place.findChildren<QAbstractButton*>()) {
      if (button->isVisible()) add(button->text());
    }
    for (const auto* tabs : yard.place.findChildren<QTabWidget*>()) {
      for (int i = 0; tabs->isVisible() && i < tabs->count(); ++i) add(tabs->tabText(i));
    }
    EXPECT_EQ(QSet<QString>(keys.begin(), keys.end()).size(), keys.size())
        << step << ": " << keys.join(u' ').toStdString();
  }
}

TEST(PairsCases, OverrulingBeginsWithAnotherJudgementThanTheRules) {
  Yard yard({});
  for (const auto& j : yard.place.plan()->problem.judgements) {
    OverruleDialog dialog(yard.desk.hub, j, yard.desk.hub.workingDate(), nullptr);
    EXPECT_NE(field<QComboBox>(dialog, "verdict")->currentData().toInt(),
              static_cast<int>(j.verdict))
        << j.hive.str();
  }
}

class FollowLetters : public testing::TestWithParam<int> {};

TEST_P(FollowLetters, DatesAndNamesStandWholeInBothDialogs) {
  const Letters letters(GetParam() / 100.0);
  Desk desk(tests::sampleSeason());
  ASSERT_TRUE(desk.hub.execute(session::changeSetting("working_date", "2026-06-05", "test")));
  for (const auto& [hive, colony] : {std::pair{"TR-08", "TR-07"}, std::pair{"SO-12", "SO-11"}}) {
    apiary::Inspection i;
    i.hive = base::HiveId(hive);
    i.colony = base::ColonyId(colony);
    i.date = tests::day("2026-05-28");
    i.seams = 7;
    ASSERT_TRUE(desk.hub.execute(session::recordInspection(i, {}, {})));
  }
  ReviewDialog review(desk.hub);
  StacksDialog stacks(desk.hub);
  for (QDialog* dialog : {static_cast<QDialog*>(&review), static_cast<QDialog*>(&stacks)}) {
    dialog->show();
    const auto busy = [&] { return review.busy() || stacks.busy(); };
    ASSERT_TRUE(QTest::qWaitFor([&] { return !busy(); }, 60000));
    tests::picture(*dialog, dialog->objectName() + QStringLiteral("-%1").arg(GetParam()),
                   dialog->size());
    const auto* table = dialog->findChild<QTableView*>();
    ASSERT_GT(table->model()->rowCount(), 0);
    expectCellsWhole(*table);
    tests::expectNothingCut(*dialog);
  }
  const auto* seen = field<QTableView>(review, "review")->model();
  EXPECT_EQ(seen->index(0, 4).data().toString(), QStringLiteral("28 May 2026"));
}

INSTANTIATE_TEST_SUITE_P(Sizes, FollowLetters, testing::Values(100, 150));

}  // namespace
}  // namespace outyard::pairs
