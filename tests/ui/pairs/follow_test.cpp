// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QTest>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/pairs/pairs_place.h"
#include "ui/pairs/review_dialog.h"
#include "ui/pairs/stack_step_dialog.h"
#include "ui/pairs/stacks_dialog.h"

namespace outyard::pairs {
namespace {

using planning::StackStepKind;
using tests::Desk;
using tests::field;

const apiary::Season& sample() {
  static const apiary::Season season = tests::sampleSeason();
  return season;
}

template <class D>
void settle(D& dialog) {
  ASSERT_TRUE(QTest::qWaitFor([&] { return !dialog.busy(); }, 60000));
  QCoreApplication::processEvents();
}

class StacksTest : public testing::Test {
 protected:
  Desk m_desk{sample()};

  const apiary::Task* offTask(const char* hive) const {
    for (const auto& [key, t] : m_desk.hub.season().table<apiary::Task>()) {
      if (t.kind == "unstacked" && t.hive && t.hive->str() == hive) return &t;
    }
    return nullptr;
  }
  QString text(StacksDialog& dialog, int column) {
    auto* table = field<QTableView>(dialog, "stacks");
    return table->model()->index(table->currentIndex().row(), column).data().toString();
  }
};

TEST_F(StacksTest, TheSamplesStacksStandThereWithTheirNextStep) {
  StacksDialog dialog(m_desk.hub);
  dialog.show();
  settle(dialog);
  ASSERT_GE(dialog.stacks().size(), 2U);
  for (const auto& s : dialog.stacks()) EXPECT_TRUE(s.next) << s.hive.str();
  dialog.choose(base::HiveId("TR-08"));
  const auto at = dialog.current();
  ASSERT_TRUE(at);
  const auto& stack = dialog.stacks()[at->stack];
  EXPECT_EQ(stack.hive.str(), "TR-08");
  EXPECT_EQ(at->step, *stack.next);
  // Its upper colony was looked at on 18 April: parting is next.
  EXPECT_EQ(stack.steps[at->step].kind, StackStepKind::Separate);
  EXPECT_TRUE(field<QLabel>(dialog, "stepDetail")->text().contains(QStringLiteral("Caution")));
  EXPECT_TRUE(field<QPushButton>(dialog, "recordStep")->isEnabled());
}

TEST_F(StacksTest, PartingIsRecordedTicksItsTaskAndIsTakenBack) {
  ASSERT_NE(offTask("TR-08"), nullptr);
  const auto before = tests::allRows(m_desk.hub.season());
  StacksDialog dialog(m_desk.hub);
  dialog.show();
  settle(dialog);
  dialog.choose(base::HiveId("TR-08"));
  m_desk.dialogs.onRun = [&](QDialog& d) {
    EXPECT_EQ(field<QComboBox>(d, "toHive")->currentData().toString(), QStringLiteral("TR-07"));
    EXPECT_TRUE(field<QLabel>(d, "whyNot")->text().isEmpty());
    return true;
  };
  field<QPushButton>(dialog, "recordStep")->click();
  EXPECT_TRUE(m_desk.dialogs.failures.isEmpty());
  EXPECT_EQ(offTask("TR-08")->state, apiary::TaskState::Done);
  EXPECT_EQ(
      apiary::hiveOfColony(m_desk.hub.season(), base::ColonyId("TR-07"), m_desk.hub.workingDate()),
      base::HiveId("TR-07"));
  settle(dialog);
  dialog.choose(base::HiveId("TR-07"));
  const auto at = dialog.current();
  ASSERT_TRUE(at);
  EXPECT_EQ(dialog.stacks()[at->stack].steps[at->step].kind, StackStepKind::OwnStand);
  EXPECT_EQ(text(dialog, 2), QStringLiteral("to come"));
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
}

TEST_F(StacksTest, PlanBMakesOneColonyOfBoth) {
  StacksDialog dialog(m_desk.hub);
  settle(dialog);
  dialog.choose(base::HiveId("TR-08"));
  m_desk.dialogs.onRun = [&](QDialog& d) {
    auto* to = field<QComboBox>(d, "toHive");
    to->setCurrentIndex(to->count() - 1);
    return true;
  };
  dialog.record();
  EXPECT_FALSE(
      apiary::hiveOfColony(m_desk.hub.season(), base::ColonyId("TR-07"), m_desk.hub.workingDate()));
}

TEST_F(StacksTest, ALookAsksForSomethingSeenAndForSoundFigures) {
  planning::MadeStack stack;
  stack.yard = base::YardId("TR");
  stack.hive = base::HiveId("TR-08");
  stack.oldStand = base::HiveId("TR-07");
  stack.upper = base::ColonyId("TR-07");
  stack.lower = base::ColonyId("TR-08");
  planning::StackStep step;
  step.kind = StackStepKind::UpperQueen;
  StackStepDialog dialog(m_desk.hub, stack, step);
  const auto why = [&] { return field<QLabel>(dialog, "whyNot")->text(); };
  EXPECT_FALSE(why().isEmpty());
  field<QComboBox>(dialog, "eggs")->setCurrentIndex(1);
  EXPECT_TRUE(why().isEmpty()) << why().toStdString();
  field<QLineEdit>(dialog, "seams")->setText(QStringLiteral("many"));
  EXPECT_TRUE(why().contains(QStringLiteral("Seams")));
  field<QLineEdit>(dialog, "seams")->setText(QStringLiteral("5"));
  ASSERT_TRUE(m_desk.hub.execute(dialog.command()));
  const auto* i = m_desk.hub.season().journal<apiary::Inspection>(base::HiveId("TR-08")).back();
  EXPECT_EQ(i->colony, base::ColonyId("TR-07"));
  EXPECT_EQ(i->eggsSeen, true);
  EXPECT_EQ(i->seams, 5);
}

TEST(StacksEmpty, WithoutAStackASentenceSaysWhatWillStandHere) {
  Desk desk(tests::smallSeason());
  StacksDialog dialog(desk.hub);
  dialog.show();
  settle(dialog);
  EXPECT_TRUE(field<QLabel>(dialog, "stacksSentence")->isVisible());
  EXPECT_FALSE(field<QPushButton>(dialog, "recordStep")->isEnabled());
}

TEST(Review, WithoutAPlanASentenceSaysWhatWillStandHere) {
  Desk desk(tests::smallSeason());
  ReviewDialog dialog(desk.hub);
  dialog.show();
  settle(dialog);
  EXPECT_TRUE(field<QLabel>(dialog, "reviewSentence")->isVisible());
}

/// The sample season in June: the stacks that were planned in April were looked at.
void seenInMay(Desk& desk) {
  ASSERT_TRUE(desk.hub.execute(session::changeSetting("working_date", "2026-06-05", "test")));
  for (const auto& [hive, colony, seams] :
       {std::tuple{"TR-08", "TR-07", 7.0}, std::tuple{"SO-12", "SO-11", 2.0}}) {
    apiary::Inspection i;
    i.hive = base::HiveId(hive);
    i.colony = base::ColonyId(colony);
    i.date = tests::day("2026-05-28");
    i.seams = seams;
    i.eggsSeen = true;
    ASSERT_TRUE(desk.hub.execute(session::recordInspection(i, {}, {})));
  }
}

TEST(Review, PromisesStandBesideWhatWasSeen) {
  Desk desk(sample());
  ReviewDialog dialog(desk.hub);
  dialog.show();
  settle(dialog);
  ASSERT_EQ(dialog.review().rows.size(), 2U);
  EXPECT_EQ(dialog.review().promises, 0);
  seenInMay(desk);
  settle(dialog);
  EXPECT_EQ(dialog.review().promises, 2);
  auto* table = field<QTableView>(dialog, "review");
  EXPECT_EQ(table->model()->rowCount(), 2);
  EXPECT_TRUE(
      field<QLabel>(dialog, "reviewSum")->text().startsWith(QStringLiteral("Of 2 promises")))
      << field<QLabel>(dialog, "reviewSum")->text().toStdString();
  QTemporaryDir folder;
  desk.dialogs.file = folder.filePath(QStringLiteral("review.csv"));
  for (auto* button : dialog.findChildren<QPushButton*>()) {
    if (button->text().contains(QStringLiteral("CSV"))) button->click();
  }
  QFile file(desk.dialogs.file);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  EXPECT_TRUE(file.readAll().contains("Promised"));
}

TEST(PairsMenu, BothAreReachedFromTheMenuAndFromOtherPlaces) {
  Desk desk(tests::smallSeason());
  PairsPlace place(desk.hub);
  int runs = 0;
  for (auto* action : place.menuActions()) {
    const QString name = action->objectName();
    if (name == QLatin1String("stacksAction") || name == QLatin1String("reviewAction")) {
      action->trigger();
      ++runs;
    }
  }
  EXPECT_EQ(runs, 2);
  place.begin(QStringLiteral("stacks"));
  place.begin(QStringLiteral("review"));
  EXPECT_EQ(desk.dialogs.titles,
            (QStringList{QStringLiteral("Stacks made"), QStringLiteral("How plans turned out"),
                         QStringLiteral("Stacks made"), QStringLiteral("How plans turned out")}));
}

class FollowPictures : public testing::TestWithParam<adapt::Theme> {};

TEST_P(FollowPictures, NothingIsCutOff) {
  widgets::applyTheme(GetParam());
  const QString shade =
      GetParam() == adapt::Theme::Dark ? QStringLiteral("dark") : QStringLiteral("light");
  Desk desk(sample());
  {
    StacksDialog dialog(desk.hub);
    dialog.show();
    settle(dialog);
    tests::picture(dialog, QStringLiteral("stacks-made-") + shade, dialog.size());
    tests::expectNothingCut(dialog);
    desk.dialogs.onRun = [&](QDialog& d) {
      tests::picture(d, QStringLiteral("stack-step-") + shade, d.sizeHint().expandedTo({520, 0}));
      tests::expectNothingCut(d);
      return false;
    };
    dialog.record();
  }
  seenInMay(desk);
  ReviewDialog dialog(desk.hub);
  dialog.show();
  settle(dialog);
  tests::picture(dialog, QStringLiteral("plan-review-") + shade, dialog.size());
  tests::expectNothingCut(dialog);
  widgets::applyTheme(adapt::Theme::Light);
}

INSTANTIATE_TEST_SUITE_P(Themes, FollowPictures,
                         testing::Values(adapt::Theme::Light, adapt::Theme::Dark));

}  // namespace
}  // namespace outyard::pairs
