// SPDX-License-Identifier: GPL-3.0-or-later
// Lines of dead and empty hives, the blank lines, and boosts that were printed, by keys alone.
#include <QAccessible>
#include <QLineEdit>
#include <QPushButton>

#include "core/planning/printed_plan.h"
#include "core/session/printed_boosts.h"
#include "tests/ui/entry/typist.h"
#include "tests/ui/support/pictures.h"
#include "ui/entry/entry_words.h"
#include "ui/widgets/theme.h"

namespace outyard::entry {
namespace {

using session::EntryColumn;
using session::LineKind;
using tests::Desk;
using tests::field;

/// TR-03 died in March, TR-07 stands empty, TR-01 was to go over TR-05.
apiary::Season seasonWithDead() {
  apiary::Season season = tests::smallSeason();
  tests::MemoryStore* store = nullptr;
  auto made = std::make_unique<tests::MemoryStore>(std::move(season));
  store = made.get();
  base::SeededIds ids{3};
  const base::FixedClock clock{tests::day("2026-04-20"), "2026-04-20T07:00:00Z"};
  auto session = std::move(session::Session::open(std::move(made), ids, clock).value());
  EXPECT_TRUE(session
                  ->execute(*session::recordDeath(base::HiveId{"TR-03"}, base::ColonyId{"TR-03"},
                                                  tests::day("2026-03-10"), "cause not known"))
                  .ok());
  return store->kept();
}

class EntryLines : public testing::Test {
 protected:
  EntryLines() : m_desk(seasonWithDead()) {
    printSheet(m_desk);
    planning::AcceptedPlan printed;
    printed.plan.plan = base::PlanId{kNumber};
    printed.plan.yard = kYard;
    printed.plan.date = m_desk.hub.workingDate();
    apiary::PlanRow row;
    row.plan = printed.plan.plan;
    row.option = "stack:TR-01:TR-05:1";
    row.hive = base::HiveId{"TR-01"};
    row.colony = base::ColonyId{"TR-01"};
    row.method = apiary::Method::Stack;
    row.donorHive = base::HiveId{"TR-05"};
    row.donorColony = base::ColonyId{"TR-05"};
    row.why = "Small and sound";
    printed.rows.push_back(row);
    EXPECT_TRUE(m_desk.hub.execute(session::keepPrintedPlan(printed)));
  }
  static int rowOf(Typist& hand, const char* hive) {
    const auto& lines = hand.model().sheet().lines;
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (lines[i].hive.str() == hive) return static_cast<int>(i);
    }
    ADD_FAILURE() << hive;
    return 0;
  }
  static int firstBlank(Typist& hand) { return hand.model().rowCount() - session::kBlankLines; }
  const apiary::Event* last(const char* hive, apiary::EventKind kind) const {
    const apiary::Event* found = nullptr;
    for (const auto* e : m_desk.hub.season().journal<apiary::Event>(base::HiveId{hive})) {
      if (e->kind == kind) found = e;
    }
    return found;
  }
  apiary::HiveState state(const char* hive) const {
    return apiary::hiveOn(m_desk.hub.season(), base::HiveId{hive}, m_desk.hub.workingDate());
  }
  Desk m_desk;
};

TEST_F(EntryLines, ADeadHiveIsAskedForCauseCombsAndTheEntrance) {
  Typist hand(m_desk);
  hand.openSheet();
  const int row = rowOf(hand, "TR-03");
  EXPECT_EQ(hand.model().line(row).form(), LineKind::Dead);
  EXPECT_EQ(hand.cell(row, EntryColumn::Cause), QStringLiteral("cause: \u2026"));
  EXPECT_EQ(hand.table().columnSpan(row, EntryModel::columnOf(EntryColumn::Combs)), 3);
  hand.at(row, EntryColumn::Cause);
  EXPECT_TRUE(
      field<QLabel>(hand.dialog, "entryKeys")->text().contains(QStringLiteral("s starved")));
  hand.type("x");
  EXPECT_TRUE(hand.said().contains(QStringLiteral("means nothing here")))
      << hand.said().toStdString();
  hand.type("m");
  EXPECT_TRUE(hand.isAt(row, EntryColumn::Combs));
  hand.type("s");
  EXPECT_TRUE(hand.isAt(row, EntryColumn::Closed));
  hand.type("y");
  EXPECT_TRUE(hand.isAt(row, EntryColumn::Note));
  hand.type("moths");
  hand.key(Qt::Key_Return);
  EXPECT_EQ(hand.cell(row, EntryColumn::Cause), QStringLiteral("cause: mites"));
  EXPECT_EQ(hand.cell(row, EntryColumn::Combs), QStringLiteral("combs: stored"));
  EXPECT_EQ(hand.cell(row, EntryColumn::Closed), QStringLiteral("closed: yes"));
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  ASSERT_EQ(m_desk.dialogs.failures, QStringList());
  const auto* died = last("TR-03", apiary::EventKind::Died);
  ASSERT_NE(died, nullptr);
  EXPECT_TRUE(
      QString::fromStdString(died->detail).startsWith(QStringLiteral("mites; combs stored")))
      << died->detail;
  EXPECT_EQ(died->date, tests::day("2026-03-10"));
  EXPECT_EQ(last("TR-03", apiary::EventKind::Note)->detail, "entrance closed; moths");
  EXPECT_NE(last("TR-03", apiary::EventKind::FramesTaken), nullptr);
  EXPECT_EQ(state("TR-03").status, apiary::HiveStatus::Empty);
}

TEST_F(EntryLines, CombsOfAnUnknownCauseBringTheCaution) {
  Typist hand(m_desk);
  hand.openSheet();
  const int row = rowOf(hand, "TR-03");
  hand.at(row, EntryColumn::Cause);
  hand.type("us");
  EXPECT_TRUE(hand.said().contains(QStringLiteral("keep the stored combs apart")))
      << hand.said().toStdString();
  EXPECT_TRUE(hand.cell(row, EntryColumn::Combs).endsWith(u'!'));
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  ASSERT_EQ(m_desk.dialogs.informed.size(), 1);
  EXPECT_TRUE(m_desk.dialogs.informed.front().contains(QStringLiteral("Keep these combs apart")));
}

TEST_F(EntryLines, FoundDeadTurnsTheLineAndBackspaceTurnsItBack) {
  Typist hand(m_desk);
  hand.openSheet();
  const int row = rowOf(hand, "TR-02");
  hand.at(row, EntryColumn::Brood);
  hand.type("3");
  hand.at(row, EntryColumn::Seams);
  hand.type("x");
  EXPECT_TRUE(hand.said().contains(QStringLiteral("yet something was seen")));
  EXPECT_EQ(hand.model().line(row).form(), LineKind::Colony);
  hand.at(row, EntryColumn::Brood);
  hand.key(Qt::Key_Delete);
  hand.at(row, EntryColumn::Seams);
  hand.type("x");
  EXPECT_EQ(hand.model().line(row).form(), LineKind::Dead);
  EXPECT_TRUE(hand.isAt(row, EntryColumn::Cause));
  EXPECT_TRUE(hand.said().contains(QStringLiteral("close its entrance")))
      << hand.said().toStdString();
  EXPECT_TRUE(
      field<QLabel>(hand.dialog, "entryKeys")->text().contains(QStringLiteral("s starved")));
  EXPECT_EQ(hand.table().columnSpan(row, EntryModel::columnOf(EntryColumn::Cause)), 2);
  hand.key(Qt::Key_Backspace);
  EXPECT_EQ(hand.model().line(row).form(), LineKind::Colony);
  EXPECT_TRUE(hand.isAt(row, EntryColumn::Seams));
  EXPECT_EQ(hand.table().columnSpan(row, EntryModel::columnOf(EntryColumn::Cause)), 1);
  EXPECT_TRUE(hand.model().line(row).blank());
  hand.type("xsb");
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  ASSERT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_TRUE(state("TR-02").colonies.empty());
  EXPECT_TRUE(QString::fromStdString(last("TR-02", apiary::EventKind::Died)->detail)
                  .startsWith(QStringLiteral("starved; combs burnt")));
}

TEST_F(EntryLines, AnEmptyHiveIsAskedForBeesAlone) {
  Typist hand(m_desk);
  hand.openSheet();
  const int row = rowOf(hand, "TR-07");
  EXPECT_EQ(hand.model().line(row).form(), LineKind::Empty);
  hand.table().goTo(row, EntryModel::columnOf(EntryColumn::Queen));
  hand.type("m");
  EXPECT_TRUE(hand.said().contains(QStringLiteral("no colony lives there")))
      << hand.said().toStdString();
  hand.at(row, EntryColumn::BeesIn);
  hand.type("y");
  EXPECT_TRUE(hand.isAt(row, EntryColumn::Note));
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_EQ(state("TR-07").colonies.size(), 1u);
  EXPECT_TRUE(m_desk.dialogs.informed.front().contains(QStringLiteral("TR-07")));
}

TEST_F(EntryLines, ASwarmOnABlankLineIsAHiveAColonyAndALook) {
  const auto start = tests::allRows(m_desk.hub.season());
  Typist hand(m_desk);
  hand.openSheet();
  const int row = firstBlank(hand);
  hand.at(row, EntryColumn::Hive);
  hand.type("SW-1");
  hand.key(Qt::Key_Return);
  EXPECT_TRUE(hand.isAt(row, EntryColumn::Origin));
  EXPECT_TRUE(hand.said().contains(QStringLiteral("where its bees came from")))
      << hand.said().toStdString();
  hand.type("s4 n");
  EXPECT_TRUE(hand.isAt(row, EntryColumn::Queen));
  EXPECT_EQ(hand.cell(row, EntryColumn::Origin), QStringLiteral("came as: swarm"));
  EXPECT_EQ(hand.said(), QString());
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  ASSERT_EQ(m_desk.dialogs.failures, QStringList());
  ASSERT_FALSE(hand.dialog.isVisible()) << hand.said().toStdString();
  EXPECT_EQ(state("SW-1").colonies.size(), 1u);
  const auto looks = m_desk.hub.season().journal<apiary::Inspection>(base::HiveId{"SW-1"});
  ASSERT_EQ(looks.size(), 1u);
  EXPECT_EQ(looks[0]->seams, 4);
  EXPECT_EQ(looks[0]->eggsSeen, false);
  EXPECT_TRUE(m_desk.dialogs.informed.front().contains(QStringLiteral("SW-1")));
  {
    Typist after(m_desk);
    ASSERT_TRUE(after.dialog.openSheet(QLatin1String(kNumber)));
    EXPECT_FALSE(after.model().open(after.model().index(row, EntryModel::kHive)));
    EXPECT_EQ(after.model().index(row, EntryModel::kHive).data().toString(),
              QStringLiteral("SW-1"));
  }
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), start);
}

TEST_F(EntryLines, ANumberOfAnotherYardAsksWhetherItWasMoved) {
  Typist hand(m_desk);
  hand.openSheet();
  const int row = firstBlank(hand);
  hand.at(row, EntryColumn::Hive);
  hand.type("MB-01");
  hand.key(Qt::Key_Return);
  EXPECT_TRUE(hand.said().contains(QStringLiteral("stands in yard MB")))
      << hand.said().toStdString();
  hand.type("b");  // refused at once
  EXPECT_EQ(hand.cell(row, EntryColumn::Origin), QStringLiteral("came as: \u2026"));
  EXPECT_TRUE(hand.said().contains(QStringLiteral("type m")));
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_TRUE(hand.dialog.isVisible());
  EXPECT_TRUE(hand.isAt(row, EntryColumn::Origin));  // there it must be put right
  hand.type("m5");
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  EXPECT_FALSE(hand.dialog.isVisible()) << hand.said().toStdString();
  EXPECT_EQ(state("MB-01").yard, kYard);
}

TEST_F(EntryLines, ANumberThatIsPrintedIsSentToItsLine) {
  Typist hand(m_desk);
  hand.openSheet();
  const int row = firstBlank(hand);
  hand.at(row, EntryColumn::Hive);
  hand.type("tr-02");
  hand.key(Qt::Key_Return);
  const QString line = QString::number(hand.model().line(rowOf(hand, "TR-02")).line);
  EXPECT_TRUE(hand.said().contains(QStringLiteral("stands on line %1").arg(line)))
      << hand.said().toStdString();
  EXPECT_TRUE(hand.cell(row, EntryColumn::Hive).endsWith(u'?'));
}

TEST_F(EntryLines, APrintedBoostIsTickedOnEitherLineAndDone) {
  const auto start = tests::allRows(m_desk.hub.season());
  Typist hand(m_desk);
  hand.openSheet();
  const int weak = rowOf(hand, "TR-01"), donor = rowOf(hand, "TR-05");
  const auto tick = [&](int row) {
    return hand.model().index(row, EntryModel::kFirstTask).data(Qt::CheckStateRole).toInt();
  };
  const auto shown = [&](int row) {
    return hand.model().index(row, EntryModel::kFirstTask).data().toString();
  };
  EXPECT_TRUE(shown(weak).contains(QStringLiteral("TR-05"))) << shown(weak).toStdString();
  EXPECT_TRUE(shown(donor).contains(QStringLiteral("TR-01"))) << shown(donor).toStdString();
  hand.table().goTo(donor, EntryModel::kFirstTask);
  EXPECT_TRUE(field<QLabel>(hand.dialog, "entryKeys")->text().contains(QStringLiteral("as done")));
  hand.key(Qt::Key_Space);
  EXPECT_EQ(tick(donor), Qt::Checked);
  EXPECT_EQ(tick(weak), Qt::Checked);
  hand.table().goTo(weak, EntryModel::kFirstTask);
  hand.key(Qt::Key_Space);
  EXPECT_EQ(tick(donor), Qt::Unchecked);
  EXPECT_FALSE(field<QPushButton>(hand.dialog, "entryRecord")->isEnabled());
  hand.key(Qt::Key_Space);
  hand.key(Qt::Key_Return, Qt::ControlModifier);
  ASSERT_EQ(m_desk.dialogs.failures, QStringList());
  EXPECT_TRUE(state("TR-05").stacked());
  EXPECT_NE(last("TR-01", apiary::EventKind::Stacked), nullptr);
  EXPECT_TRUE(m_desk.dialogs.informed.front().contains(QStringLiteral("Boosts done as printed")));
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), start);
}

TEST_F(EntryLines, ADraftKeepsAllOfIt) {
  const auto fill = [&](Typist& hand) {
    hand.openSheet();
    hand.at(rowOf(hand, "TR-03"), EntryColumn::Cause);
    hand.type("qb");
    hand.at(rowOf(hand, "TR-02"), EntryColumn::Seams);
    hand.type("xm");
    hand.at(rowOf(hand, "TR-07"), EntryColumn::BeesIn);
    hand.type("n");
    hand.at(firstBlank(hand), EntryColumn::Hive);
    hand.type("SW-1");
    hand.key(Qt::Key_Return);
    hand.type("s4");
    hand.table().goTo(rowOf(hand, "TR-01"), EntryModel::kFirstTask);
    hand.key(Qt::Key_Space);
  };
  session::EntrySheet typed;
  {
    Typist hand(m_desk);
    fill(hand);
    typed = hand.model().sheet();
    hand.key(Qt::Key_Escape);
    EXPECT_FALSE(hand.dialog.isVisible());
  }
  Typist hand(m_desk);
  ASSERT_TRUE(hand.dialog.openSheet(QLatin1String(kNumber)));
  const auto& again = hand.model().sheet();
  ASSERT_EQ(again.lines.size(), typed.lines.size());
  for (std::size_t i = 0; i < typed.lines.size(); ++i) {
    EXPECT_EQ(again.lines[i].typed, typed.lines[i].typed) << i;
    EXPECT_EQ(again.lines[i].ticked, typed.lines[i].ticked) << i;
  }
  ASSERT_EQ(again.boosts.size(), 1u);
  EXPECT_TRUE(again.boosts[0].done);
  const int found = rowOf(hand, "TR-02");
  EXPECT_EQ(hand.table().columnSpan(found, EntryModel::columnOf(EntryColumn::Cause)), 2);
  ASSERT_TRUE(hand.dialog.commit()) << hand.said().toStdString();
  EXPECT_EQ(m_desk.dialogs.failures, QStringList());
}

TEST_F(EntryLines, OnlyABoostTickedIsADraftToo) {
  {
    Typist hand(m_desk);
    hand.openSheet();
    hand.table().goTo(rowOf(hand, "TR-01"), EntryModel::kFirstTask);
    hand.key(Qt::Key_Space);
    hand.key(Qt::Key_Escape);
  }
  Typist hand(m_desk);
  ASSERT_TRUE(hand.dialog.openSheet(QLatin1String(kNumber)));
  EXPECT_TRUE(hand.model().sheet().boosts.at(0).done);
}

TEST_F(EntryLines, CellsOfTheirOwnSayWhatTheyAreForToAScreenReader) {
  Typist hand(m_desk);
  hand.openSheet();
  const int dead = rowOf(hand, "TR-03"), blank = firstBlank(hand);
  const auto spoken = [&](int row, EntryColumn column) {
    return hand.cell(row, column, Qt::AccessibleTextRole);
  };
  EXPECT_TRUE(spoken(dead, EntryColumn::Cause).contains(QStringLiteral("cause")));
  EXPECT_TRUE(spoken(dead, EntryColumn::Closed).contains(QStringLiteral("closed")));
  EXPECT_TRUE(spoken(blank, EntryColumn::Hive).contains(QStringLiteral("new hive")));
  for (int row = 0; row < hand.model().rowCount(); ++row) {
    for (int column = 0; column < hand.model().columnCount(); ++column) {
      const QModelIndex index = hand.model().index(row, column);
      if (!hand.model().open(index)) continue;
      EXPECT_FALSE(index.data(Qt::ToolTipRole).toString().isEmpty()) << row << ' ' << column;
    }
  }
}

TEST_F(EntryLines, NothingIsCutInLightAndDarkAlsoInLargerType) {
  const QFont usual = QApplication::font();
  for (const auto theme : {adapt::Theme::Light, adapt::Theme::Dark}) {
    for (const double larger : {1.0, 1.5}) {
      widgets::applyTheme(theme);
      QFont font = usual;
      font.setPointSizeF(usual.pointSizeF() * larger);
      QApplication::setFont(font);
      const QString name = QStringLiteral("entry_kinds_%1_%2")
                               .arg(theme == adapt::Theme::Dark ? u"dark" : u"light")
                               .arg(larger * 100);
      QDir(QDir(m_desk.folder.path()).filePath(QStringLiteral("drafts"))).removeRecursively();
      Typist hand(m_desk);
      hand.openSheet();
      const auto at = [&](const char* hive, EntryColumn column, const char* keys) {
        hand.at(rowOf(hand, hive), column);
        hand.type(keys);
      };
      tests::picture(hand.dialog, name + QStringLiteral("_blank"), {1280, 760});
      at("TR-03", EntryColumn::Cause, "usy");
      at("TR-02", EntryColumn::Seams, "xqm");
      at("TR-04", EntryColumn::Seams, "x");
      at("TR-07", EntryColumn::BeesIn, "y");
      hand.at(firstBlank(hand), EntryColumn::Hive);
      hand.type("SW-1");
      hand.key(Qt::Key_Return);
      hand.type("s42");
      hand.at(firstBlank(hand) + 1, EntryColumn::Hive);
      hand.type("MB-01");
      hand.key(Qt::Key_Return);
      hand.type("m6");
      hand.at(firstBlank(hand) + 2, EntryColumn::Hive);
      hand.type("TR-02");
      hand.key(Qt::Key_Return);
      hand.table().goTo(rowOf(hand, "TR-05"), EntryModel::kFirstTask);
      hand.key(Qt::Key_Space);
      hand.at(rowOf(hand, "TR-06"), EntryColumn::Seams);
      EXPECT_GE(hand.table().columnViewportPosition(EntryModel::kHive), 0);  // in sight again
      tests::picture(hand.dialog, name, {1280, 760});
      tests::expectNothingCut(hand.dialog);
      // Every cell that says itself what it is for has room for its longest answer.
      const QFontMetrics metrics = hand.table().fontMetrics();
      for (const EntryColumn column :
           {EntryColumn::Cause, EntryColumn::Combs, EntryColumn::Closed, EntryColumn::BeesIn}) {
        int room = 0;
        for (int i = 0; i < EntryModel::spanOf(column); ++i) {
          room += hand.table().columnWidth(EntryModel::columnOf(column) + i);
        }
        for (const char* key : {"s", "q", "m", "u", "b", "l", "y", "n"}) {
          const QString answer = cellText(column, QLatin1String(key));
          const QString shown = QStringLiteral("%1: %2 !").arg(cellLabel(column), answer);
          EXPECT_LE(metrics.horizontalAdvance(shown), room - 6) << shown.toStdString() << larger;
        }
      }
    }
  }
  QApplication::setFont(usual);
  widgets::applyTheme(adapt::Theme::Light);
}

}  // namespace
}  // namespace outyard::entry
