// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/hive_place.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QBuffer>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPdfWriter>
#include <QPlainTextEdit>
#include <QTabBar>
#include <QTableView>
#include <QTest>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/hive/inspection_form.h"
#include "ui/hive/journal_model.h"
#include "ui/hive/stack_work.h"
#include "ui/hive/verb_dialog.h"

namespace outyard::hive {
namespace {

using tests::day;
using tests::Desk;
using tests::field;

class HivePlaceTest : public testing::Test {
 protected:
  explicit HivePlaceTest(apiary::Season season = tests::smallSeason())
      : m_desk(std::move(season)), m_place(m_desk.hub) {
    m_place.resize(1280, 800);
    m_place.show();
    QCoreApplication::processEvents();
  }
  QAction* action(const char* name) {
    for (auto* each : m_place.menuActions()) {
      if (each->objectName() == QLatin1String(name)) return each;
      if (!each->menu()) continue;
      for (auto* inner : each->menu()->actions()) {
        if (inner->objectName() == QLatin1String(name)) return inner;
      }
    }
    ADD_FAILURE() << name;
    return nullptr;
  }
  void choose(const char* hive) { m_desk.hub.selectHive(base::HiveId{hive}); }
  [[nodiscard]] const apiary::Season& season() const { return m_desk.hub.season(); }
  [[nodiscard]] std::vector<const apiary::Event*> events(const char* hive) const {
    return season().journal<apiary::Event>(base::HiveId{hive});
  }
  QString facts() { return field<QLabel>(m_place, "facts")->text(); }

  Desk m_desk;
  HivePlace m_place;
};

TEST_F(HivePlaceTest, WithoutAHiveItSaysWhatToDo) {
  EXPECT_TRUE(field<QLabel>(m_place, "emptySentence")->isVisible());
  EXPECT_FALSE(action("inspect")->isEnabled());
  EXPECT_TRUE(action("inspect")->toolTip().contains(QStringLiteral("Choose a hive")));
}

TEST_F(HivePlaceTest, ANumberTypedFindsTheHive) {
  auto* chooser = field<QComboBox>(m_place, "hiveChooser");
  chooser->lineEdit()->setFocus();
  QTest::keyClicks(chooser->lineEdit(), QStringLiteral("tr-03"));
  QTest::keyClick(chooser->lineEdit(), Qt::Key_Return);
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId{"TR-03"});
  EXPECT_EQ(field<QLabel>(m_place, "hiveTitle")->text(), QStringLiteral("TR-03"));
}

TEST_F(HivePlaceTest, NextGoesThroughEveryHiveOnceAndRound) {
  std::set<std::string> seen;
  const auto count = season().table<apiary::Hive>().size();
  for (std::size_t i = 0; i < count; ++i) {
    action("nextHive")->trigger();
    seen.insert(m_desk.hub.selection().hive->str());
  }
  EXPECT_EQ(seen.size(), count);
  const auto last = m_desk.hub.selection().hive;
  action("nextHive")->trigger();
  action("previousHive")->trigger();
  EXPECT_EQ(m_desk.hub.selection().hive, last);
}

TEST_F(HivePlaceTest, EachDialogRecordsWhatWasTyped) {
  choose("TR-02");
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(field<QLabel>(d, "caution")->text().contains(QStringLiteral("10 °C")));
    field<QComboBox>(d, "what")->setCurrentIndex(1);
    EXPECT_EQ(field<QComboBox>(d, "unit")->currentIndex(), 0);  // syrup is measured in litres
    field<QLineEdit>(d, "amount")->setText(QStringLiteral("2,5"));
    return true;
  };
  action("feed")->trigger();
  ASSERT_EQ(events("TR-02").size(), 1u);
  EXPECT_EQ(events("TR-02")[0]->what, apiary::Goods::Syrup21);
  EXPECT_EQ(events("TR-02")[0]->amount, 2.5);
  EXPECT_EQ(events("TR-02")[0]->unit, apiary::Unit::L);
  EXPECT_EQ(events("TR-02")[0]->colony, std::nullopt);

  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QLineEdit>(d, "product")->setText(QStringLiteral("strips"));
    field<QLineEdit>(d, "withdrawal")->setText(QStringLiteral("42"));
    return true;
  };
  action("treat")->trigger();
  ASSERT_EQ(events("TR-02").size(), 2u);
  EXPECT_EQ(events("TR-02")[1]->withdrawalDays, 42);

  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QLineEdit>(d, "mites")->setText(QStringLiteral("0"));
    return true;
  };
  action("wash")->trigger();
  const auto washes = season().journal<apiary::Wash>(base::HiveId{"TR-02"});
  ASSERT_EQ(washes.size(), 1u);
  EXPECT_EQ(washes[0]->mites, 0);
  EXPECT_EQ(washes[0]->bees, 300);

  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QComboBox>(d, "verdict")->setCurrentIndex(static_cast<int>(apiary::VerdictCode::Fair));
    field<QLineEdit>(d, "reason")->setText(QStringLiteral("brood on four combs"));
    return true;
  };
  action("overrule")->trigger();
  const auto judged = m_desk.hub.judgementsOf(base::HiveId{"TR-02"});
  ASSERT_EQ(judged.size(), 1u);
  EXPECT_EQ(judged[0].verdict, apiary::VerdictCode::Fair);
  EXPECT_TRUE(facts().contains(QStringLiteral("brood on four combs")));
  EXPECT_TRUE(m_desk.dialogs.failures.isEmpty());
}

TEST_F(HivePlaceTest, AnUnfinishedDialogCannotBeRecordedAndSaysWhy) {
  choose("TR-02");
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_FALSE(field<QLabel>(d, "whyNot")->text().isEmpty());
    field<QLineEdit>(d, "bees")->setText(QStringLiteral("many"));
    EXPECT_TRUE(field<QLabel>(d, "whyNot")->text().contains(QStringLiteral("number")));
    return true;
  };
  action("wash")->trigger();
  EXPECT_TRUE(season().table<apiary::Wash>().empty());
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  action("note")->trigger();
  action("treat")->trigger();
  EXPECT_TRUE(season().table<apiary::Event>().empty());
}

TEST_F(HivePlaceTest, ABoxGoesWhereItWasSaidAndUndoTakesItBack) {
  choose("TR-02");
  const auto before = tests::allRows(season());
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QComboBox>(d, "spot")->setCurrentIndex(2);
    return true;
  };
  action("addBox")->trigger();
  auto state = apiary::hiveOn(season(), base::HiveId{"TR-02"}, day("2026-04-25"));
  ASSERT_EQ(state.boxes.size(), 2u);
  EXPECT_EQ(state.boxes[0].role, apiary::BoxRole::Chamber);
  EXPECT_EQ(state.boxes[1].position, 2);
  EXPECT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(season()), before);
}

TEST_F(HivePlaceTest, ActionsThatCannotBeDoneAreGreyWithAReason) {
  choose("TR-02");  // one chamber, one colony
  EXPECT_FALSE(action("reverse")->isEnabled());
  EXPECT_TRUE(action("reverse")->toolTip().contains(QStringLiteral("two chambers")));
  EXPECT_FALSE(action("takeOff")->isEnabled());
  EXPECT_TRUE(action("feed")->isEnabled());
  choose("TR-05");  // two chambers
  EXPECT_TRUE(action("reverse")->isEnabled());
  choose("TR-07");  // empty
  EXPECT_FALSE(action("feed")->isEnabled());
  EXPECT_TRUE(action("note")->isEnabled());
}

TEST_F(HivePlaceTest, TwoColoniesHaveTabsAndTheUpperOneComesOff) {
  ASSERT_TRUE(m_desk.hub.execute(
      session::stackOver({base::HiveId{"TR-01"}, base::HiveId{"TR-05"}, day("2026-04-24"),
                          apiary::Beneath::Excluder, true, std::nullopt})));
  choose("TR-05");
  auto* tabs = field<QTabBar>(m_place, "colonies");
  ASSERT_EQ(tabs->count(), 2);
  EXPECT_TRUE(tabs->isVisible());
  tabs->setCurrentIndex(1);
  EXPECT_EQ(m_desk.hub.selection().colony, base::ColonyId{"TR-01"});
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QLineEdit>(d, "amount")->setText(QStringLiteral("1"));
    return true;
  };
  action("feed")->trigger();
  EXPECT_EQ(events("TR-05").back()->colony, base::ColonyId{"TR-01"});  // named where two share
  m_desk.dialogs.onRun = [](QDialog& d) {
    auto* to = field<QComboBox>(d, "toHive");
    to->setCurrentIndex(to->findText(QStringLiteral("TR-07")));
    return true;
  };
  action("takeOff")->trigger();
  ASSERT_TRUE(m_desk.dialogs.failures.isEmpty())
      << m_desk.dialogs.failures.join(u' ').toStdString();
  EXPECT_EQ(apiary::hiveOfColony(season(), base::ColonyId{"TR-01"}, day("2026-04-25")),
            base::HiveId{"TR-07"});
}

TEST_F(HivePlaceTest, DeathEndsTheColony) {
  choose("TR-03");
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QComboBox>(d, "cause")->setCurrentIndex(1);
    return true;
  };
  action("death")->trigger();
  const auto state = apiary::hiveOn(season(), base::HiveId{"TR-03"}, day("2026-04-25"));
  EXPECT_EQ(state.status, apiary::HiveStatus::Dead);
  EXPECT_NE(events("TR-03").back()->detail.find("starved"), std::string::npos);
}

TEST_F(HivePlaceTest, AWithdrawnRecordIsHiddenAndCanBeShownStruckThrough) {
  choose("TR-02");
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QPlainTextEdit>(d, "text")->setPlainText(QStringLiteral("lid cracked"));
    return true;
  };
  action("note")->trigger();
  auto* table = field<QTableView>(m_place, "journal");
  auto* model = table->model();
  ASSERT_EQ(model->rowCount(), 1);
  EXPECT_EQ(model->index(0, JournalModel::kKind).data().toString(), QStringLiteral("N"));
  table->setCurrentIndex(model->index(0, 0));
  action("withdraw")->trigger();
  ASSERT_EQ(m_desk.dialogs.asked.size(), 1);
  EXPECT_EQ(model->rowCount(), 0);
  field<QCheckBox>(m_place, "journalAll")->setChecked(true);
  ASSERT_EQ(model->rowCount(), 1);
  const auto words = model->index(0, JournalModel::kWords);
  EXPECT_TRUE(words.data().toString().startsWith(QStringLiteral("Withdrawn")));
  EXPECT_TRUE(words.data(Qt::FontRole).value<QFont>().strikeOut());
  table->setCurrentIndex(model->index(0, 0));
  EXPECT_FALSE(action("withdraw")->isEnabled());
  EXPECT_TRUE(m_desk.hub.undo());
  EXPECT_FALSE(model->index(0, JournalModel::kWords).data(Qt::FontRole).value<QFont>().strikeOut());
}

TEST_F(HivePlaceTest, TheJournalIsFilteredByKind) {
  choose("TR-02");
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QLineEdit>(d, "amount")->setText(QStringLiteral("1"));
    return true;
  };
  action("feed")->trigger();
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QLineEdit>(d, "mites")->setText(QStringLiteral("6"));
    return true;
  };
  action("wash")->trigger();
  auto* model = field<QTableView>(m_place, "journal")->model();
  EXPECT_EQ(model->rowCount(), 2);
  auto* kinds = field<QComboBox>(m_place, "journalKind");
  kinds->setCurrentIndex(kinds->findData(static_cast<int>(JournalKind::Wash)));
  ASSERT_EQ(model->rowCount(), 1);
  // 6 in 300 are 2 in 100.
  EXPECT_TRUE(model->index(0, JournalModel::kWords)
                  .data()
                  .toString()
                  .startsWith(QLocale().toString(2.0, 'f', 1)));
}

TEST_F(HivePlaceTest, TheInspectionFormOpensForTheChosenHive) {
  choose("TR-04");
  m_desk.dialogs.onRun = [](QDialog& d) {
    auto* form = qobject_cast<InspectionForm*>(&d);
    if (!form) return false;
    field<QLineEdit>(d, "seams")->setText(QStringLiteral("7"));
    form->accept();
    return true;
  };
  m_place.begin(QStringLiteral("inspection"));
  const auto looks = season().journal<apiary::Inspection>(base::HiveId{"TR-04"});
  ASSERT_EQ(looks.size(), 1u);
  EXPECT_EQ(looks[0]->seams, 7);
  EXPECT_TRUE(facts().contains(QStringLiteral("Seams")));
}

TEST_F(HivePlaceTest, PrintsOnPages) {
  choose("TR-05");
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    m_place.printTo(writer);
  }
  EXPECT_TRUE(buffer.data().startsWith("%PDF"));
  EXPECT_GT(buffer.size(), 3000);
}

TEST(StackWork, ReversingKeepsTheExcluderInItsPlace) {
  apiary::HiveState hive;
  for (int i = 1; i <= 3; ++i) {
    apiary::BoxState box;
    box.position = i;
    box.frameType = i == 1 ? "langstroth_deep" : "langstroth_medium";
    box.role = i == 3 ? apiary::BoxRole::Super : apiary::BoxRole::Chamber;
    box.beneath = i == 3 ? apiary::Beneath::Excluder : apiary::Beneath::None;
    hive.boxes.push_back(box);
  }
  const auto turned = reversedChambers(hive, std::nullopt);
  ASSERT_TRUE(turned);
  EXPECT_EQ((*turned)[0].frameType, "langstroth_medium");
  EXPECT_EQ((*turned)[1].frameType, "langstroth_deep");
  EXPECT_EQ((*turned)[1].position, 2);
  EXPECT_EQ((*turned)[2].beneath, apiary::Beneath::Excluder);
  EXPECT_EQ((*turned)[2].role, apiary::BoxRole::Super);
  hive.boxes.erase(hive.boxes.begin());
  EXPECT_FALSE(reversedChambers(hive, std::nullopt));
}

/// The sample at the size of a small screen, light and dark: nothing is cut off.
class HivePictures : public testing::TestWithParam<adapt::Theme> {};

TEST_P(HivePictures, NothingIsCutOff) {
  widgets::applyTheme(GetParam());
  const QString shade =
      GetParam() == adapt::Theme::Dark ? QStringLiteral("dark") : QStringLiteral("light");
  Desk desk(tests::sampleSeason());
  HivePlace place(desk.hub);
  tests::picture(place, QStringLiteral("hive-empty-") + shade);
  // The hive with most comb sides recorded, and one that two colonies share.
  std::map<std::string, int> sides;
  for (const auto& [key, side] : desk.hub.season().table<apiary::CombSide>())
    ++sides[side.hive.str()];
  ASSERT_FALSE(sides.empty());
  const auto most = std::max_element(
      sides.begin(), sides.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
  desk.hub.selectHive(base::HiveId{most->first});
  EXPECT_FALSE(tests::picture(place, QStringLiteral("hive-") + shade).isNull());
  tests::expectNothingCut(place);
  for (const auto& [key, hive] : desk.hub.season().table<apiary::Hive>()) {
    const auto* state = desk.hub.hive(hive.hive);
    if (!state || !state->stacked()) continue;
    desk.hub.selectHive(hive.hive);
    tests::picture(place, QStringLiteral("hive-two-") + shade);
    tests::expectNothingCut(place);
    break;
  }
  InspectionForm form(desk.hub, base::HiveId{most->first}, {});
  field<QLineEdit>(form, "seams")->setText(QStringLiteral("6"));
  field<QLineEdit>(form, "bee_frames")->setText(QStringLiteral("9"));
  field<QLineEdit>(form, "honey_kg")->setText(QStringLiteral("301"));
  QTest::qWait(200);
  tests::picture(form, QStringLiteral("form-") + shade, {1040, 720});
  tests::expectNothingCut(form);
  field<QTabWidget>(form, "pages")->setCurrentIndex(1);
  const auto* look = apiary::hiveOn(desk.hub.season(), base::HiveId{most->first}, day("2026-04-25"))
                         .colonies.front()
                         .lastInspection;
  ASSERT_NE(look, nullptr);
  form.correct(look->record);
  tests::picture(form, QStringLiteral("combs-") + shade, {1040, 720});
  tests::expectNothingCut(form);
  desk.dialogs.onRun = [&](QDialog& d) {
    tests::picture(d, QStringLiteral("dialog-") + d.objectName() + u'-' + shade,
                   d.sizeHint().expandedTo({460, 0}));
    tests::expectNothingCut(d);
    return false;
  };
  for (auto* action : place.menuActions()) {
    if (action->isEnabled() && action->objectName() != QStringLiteral("inspect") &&
        action->objectName() != QStringLiteral("correct") &&
        action->objectName() != QStringLiteral("withdraw") &&
        !action->objectName().endsWith(QStringLiteral("Hive"))) {
      action->trigger();
    }
  }
  widgets::applyTheme(adapt::Theme::Light);
}

INSTANTIATE_TEST_SUITE_P(Themes, HivePictures,
                         testing::Values(adapt::Theme::Light, adapt::Theme::Dark));

}  // namespace
}  // namespace outyard::hive
