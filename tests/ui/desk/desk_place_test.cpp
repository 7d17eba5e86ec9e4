// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_place.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QBuffer>
#include <QComboBox>
#include <QDateEdit>
#include <QFile>
#include <QLabel>
#include <QPdfWriter>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QTreeWidget>
#include <algorithm>
#include <set>

#include "core/session/commands.h"
#include "tests/ui/desk/desk_fixture.h"
#include "tests/ui/support/pictures.h"
#include "ui/adapt/words.h"
#include "ui/desk/day_strip.h"
#include "ui/desk/desk_list.h"
#include "ui/desk/desk_words.h"

namespace outyard::desk {
namespace {

TEST_F(DeskPlaceTest, EveryPieceOfWorkStandsUnderItsYard) {
  ASSERT_NE(m_place.facts(), nullptr);
  ASSERT_GT(due().tasks.size(), 20U);
  std::set<std::size_t> seen;
  std::optional<base::YardId> yard;
  for (const auto& index : rowsOf(list("yards"))) {
    const Row& row = DeskList::rowOf(index);
    if (row.kind == Row::Kind::Yard) {
      yard = row.yard;
      EXPECT_TRUE(row.days);
      EXPECT_EQ(due().yards[*row.days].yard, *yard);
      continue;
    }
    ASSERT_EQ(row.kind, Row::Kind::Task);
    EXPECT_EQ(row.yard, yard);
    EXPECT_TRUE(seen.insert(row.tasks.front()).second);
    EXPECT_EQ(row.urgent, due().tasks[row.tasks.front()].overdue(due().ask.from));
    EXPECT_FALSE(row.right.isEmpty());
    EXPECT_FALSE(row.title.isEmpty());
  }
  EXPECT_EQ(seen.size(), due().tasks.size());
  EXPECT_EQ(list("yards").model()->rowCount(),
            static_cast<int>(m_desk.hub.season().table<apiary::Yard>().size()));
  EXPECT_EQ(field<QLabel>(m_place, "days")->text(), QStringLiteral("25 Apr – 8 May 2026"));
  const QString sum = field<QLabel>(m_place, "sum")->text();
  EXPECT_TRUE(sum.contains(QString::number(due().tasks.size()))) << sum.toStdString();
}

TEST_F(DeskPlaceTest, HivesAtRiskStandOnceTheMostPressingFirst) {
  const auto rows = rowsOf(list("risk"));
  ASSERT_EQ(rows.size(), m_place.facts()->risk.size());
  ASSERT_GT(rows.size(), 2U);
  std::set<base::HiveId> hives;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Row& row = DeskList::rowOf(rows[i]);
    ASSERT_TRUE(row.hive);
    EXPECT_TRUE(hives.insert(*row.hive).second) << row.lead.toStdString();
    EXPECT_EQ(row.lines.size(), row.badges.size());
    EXPECT_EQ(row.lines.size(), static_cast<qsizetype>(row.tasks.size()));
    for (const QChar letter : row.badges) EXPECT_FALSE(riskMeaning(letter).isEmpty());
  }
  // The suspected yard presses before everything else.
  EXPECT_EQ(DeskList::rowOf(rows.front()).badges.at(0), u'S');
}

TEST_F(DeskPlaceTest, AStepOfAStackOpensTheStacksMade) {
  QSignalSpy spy(&m_place, &widgets::Place::openPlace);
  auto& yards = list("yards");
  yards.expandAll();
  const auto off = rowWhere(yards, Row::Kind::Task, [&](const Row& row) {
    return row.hive == base::HiveId("TR-08") &&
           m_place.facts()->due.tasks.at(row.tasks.front()).kind == "unstacked";
  });
  ASSERT_TRUE(off.isValid());
  yards.setFocus();
  yards.setCurrentIndex(off);
  QTest::keyClick(&yards, Qt::Key_Return);
  ASSERT_EQ(spy.count(), 1);
  EXPECT_EQ(spy.last().at(0).toString(), QStringLiteral("pairs"));
  EXPECT_EQ(spy.last().at(1).toString(), QStringLiteral("stacks"));
  EXPECT_EQ(m_desk.hub.selection().hive, base::HiveId("TR-08"));
}

TEST_F(DeskPlaceTest, EveryLineLeadsToItsHiveOrYard) {
  QSignalSpy spy(&m_place, &widgets::Place::openPlace);
  auto& yards = list("yards");
  const auto yard = yards.model()->index(1, 0);
  yards.setFocus();
  yards.setCurrentIndex(yard);
  QTest::keyClick(&yards, Qt::Key_Return);
  ASSERT_EQ(spy.count(), 1);
  EXPECT_EQ(spy.last().at(0).toString(), QStringLiteral("yards"));
  EXPECT_EQ(m_desk.hub.selection().yard, DeskList::rowOf(yard).yard);
  QTest::keyClick(&yards, Qt::Key_Right);  // open it, then down to its first work
  EXPECT_TRUE(yards.isExpanded(yard));
  QTest::keyClick(&yards, Qt::Key_Down);
  const Row work = DeskList::rowOf(yards.currentIndex());
  ASSERT_EQ(work.kind, Row::Kind::Task);
  QTest::keyClick(&yards, Qt::Key_Return);
  ASSERT_EQ(spy.count(), 2);
  EXPECT_EQ(spy.last().at(0).toString(), QStringLiteral("hive"));
  EXPECT_EQ(m_desk.hub.selection().hive, work.hive);
  for (const char* name : {"risk", "looks"}) {
    auto& each = list(name);
    const auto index = rowWhere(
        each, QLatin1String(name) == QLatin1String("risk") ? Row::Kind::Risk : Row::Kind::Look,
        kAny);
    each.scrollTo(index);
    QTest::mouseClick(each.viewport(), Qt::LeftButton, {}, each.visualRect(index).center());
    QTest::mouseDClick(each.viewport(), Qt::LeftButton, {}, each.visualRect(index).center());
    EXPECT_EQ(spy.last().at(0).toString(), QStringLiteral("hive")) << name;
    EXPECT_EQ(m_desk.hub.selection().hive, DeskList::rowOf(index).hive) << name;
  }
  EXPECT_EQ(spy.count(), 4);
  // A sentence leads nowhere.
  const auto said = rowWhere(list("looks"), Row::Kind::Text, kAny);
  list("looks").setFocus();
  list("looks").setCurrentIndex(said);
  QTest::keyClick(&list("looks"), Qt::Key_Return);
  EXPECT_EQ(spy.count(), 4);
}

TEST_F(DeskPlaceTest, ChosenWorkIsPlannedAsOneStepWithItsCautions) {
  const auto before = tests::allRows(m_desk.hub.season());
  auto& yards = list("yards");
  const auto withCaution = [&](const Row& row) {
    return !row.planned && !due().tasks[row.tasks.front()].cautions.empty();
  };
  const auto first = rowWhere(yards, Row::Kind::Task, withCaution);
  const auto yardOfFirst = DeskList::rowOf(first).yard;
  const auto second = rowWhere(yards, Row::Kind::Task, [&](const Row& row) {
    return !row.planned && row.yard != yardOfFirst;
  });
  const Row a = DeskList::rowOf(first), b = DeskList::rowOf(second);
  const auto caution = adapt::words(due().tasks[a.tasks.front()].cautions.front());
  auto* button = field<QPushButton>(m_place, "plan");
  EXPECT_FALSE(button->isEnabled());
  yards.selectionModel()->select(first, QItemSelectionModel::ClearAndSelect);
  yards.selectionModel()->select(second, QItemSelectionModel::Select);
  ASSERT_TRUE(button->isEnabled());
  m_desk.dialogs.onRun = [&](QDialog& d) {
    EXPECT_EQ(field<QTreeWidget>(d, "planTasks")->topLevelItemCount(), 2);
    EXPECT_TRUE(field<QLabel>(d, "planCautions")->text().contains(caution));
    return false;
  };
  button->click();
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);  // changed their mind
  m_desk.dialogs.onRun = [&](QDialog& d) {
    field<QComboBox>(d, "planHow")->setCurrentIndex(1);
    field<QDateEdit>(d, "planDate")->setDate(QDate(2026, 4, 28));
    // The weather of that day is said for both yards.
    const QString weather = field<QLabel>(d, "planWeather")->text();
    EXPECT_TRUE(weather.contains(yardName(m_desk.hub.season(), *a.yard))) << weather.toStdString();
    EXPECT_TRUE(weather.contains(yardName(m_desk.hub.season(), *b.yard)));
    return true;
  };
  const auto count = m_desk.hub.season().table<apiary::Task>().size();
  button->click();
  EXPECT_TRUE(m_desk.dialogs.failures.isEmpty());
  ASSERT_EQ(m_desk.hub.season().table<apiary::Task>().size(), count + 2);
  EXPECT_FALSE(button->isEnabled());  // what is shown is planned already
  wait();
  const auto planned = rowWhere(list("yards"), Row::Kind::Task, [&](const Row& row) {
    return row.planned && row.hive == a.hive && row.right.contains(QStringLiteral("28 Apr"));
  });
  EXPECT_TRUE(planned.isValid());
  int tasks = 0;
  for (const auto& [key, task] : m_desk.hub.season().table<apiary::Task>()) {
    tasks += task.plannedOn == day("2026-04-28") && task.hive == a.hive ? 1 : 0;
  }
  EXPECT_EQ(tasks, 1);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
}

TEST_F(DeskPlaceTest, AYardStandsForAllItsWorkThatIsNotPlannedYet) {
  auto& yards = list("yards");
  const auto yard = yards.model()->index(0, 0);
  int open = 0;
  for (const std::size_t i : DeskList::rowOf(yard).tasks) {
    open += due().tasks[i].rule == "planned" ? 0 : 1;
  }
  ASSERT_GT(open, 0);
  yards.selectionModel()->select(yard, QItemSelectionModel::ClearAndSelect);
  m_desk.dialogs.onRun = [&](QDialog& d) {
    EXPECT_EQ(field<QTreeWidget>(d, "planTasks")->topLevelItemCount(), open);
    return true;
  };
  const auto count = m_desk.hub.season().table<apiary::Task>().size();
  action("planAction")->trigger();
  EXPECT_EQ(m_desk.hub.season().table<apiary::Task>().size(),
            count + static_cast<std::size_t>(open));
}

TEST_F(DeskPlaceTest, WorkIsChosenInOneListAtATime) {
  auto& yards = list("yards");
  yards.selectionModel()->select(yards.model()->index(0, 0), QItemSelectionModel::ClearAndSelect);
  const auto index = rowWhere(list("risk"), Row::Kind::Risk, [&](const Row& row) {
    return due().tasks[row.tasks.front()].rule != "planned";
  });
  list("risk").selectionModel()->select(index, QItemSelectionModel::ClearAndSelect);
  EXPECT_FALSE(yards.selectionModel()->hasSelection());
  m_desk.dialogs.onRun = [&](QDialog& d) {
    EXPECT_EQ(field<QTreeWidget>(d, "planTasks")->topLevelItemCount(),
              static_cast<int>(DeskList::rowOf(index).tasks.size()));
    return false;
  };
  field<QPushButton>(m_place, "plan")->click();
  EXPECT_EQ(m_desk.dialogs.titles.size(), 1);
}

TEST_F(DeskPlaceTest, PoundsAreShownWhenAskedFor) {
  const auto feeds = [&] {
    QString all;
    for (const auto& index : rowsOf(list("gear"))) all += index.data().toString();
    return all;
  };
  const QString litres = feeds();
  ASSERT_TRUE(litres.contains(QStringLiteral("\u00A0l"))) << litres.toStdString();
  m_desk.settings.set(adapt::desk::kMassUnit, adapt::MassUnit::Pound);
  EXPECT_TRUE(feeds().contains(QStringLiteral("\u00A0gal"))) << feeds().toStdString();
}

TEST_F(DeskPlaceTest, PlannedWorkIsDroppedAndComesBackWithUndo) {
  auto& yards = list("yards");
  const auto planned = rowWhere(yards, Row::Kind::Task, [](const Row& row) { return row.planned; });
  const auto id = *due().tasks[DeskList::rowOf(planned).tasks.front()].task;
  yards.setExpanded(planned.parent(), true);
  EXPECT_FALSE(action("dropAction")->isEnabled());
  yards.selectionModel()->select(planned, QItemSelectionModel::ClearAndSelect);
  ASSERT_TRUE(action("dropAction")->isEnabled());
  EXPECT_FALSE(action("planAction")->isEnabled());
  action("dropAction")->trigger();
  EXPECT_EQ(m_desk.hub.season().find<apiary::Task>(id.str())->state, apiary::TaskState::Dropped);
  wait();
  for (const auto& task : due().tasks) EXPECT_NE(task.task, id);
  ASSERT_TRUE(m_desk.hub.undo());
  wait();
  EXPECT_TRUE(std::any_of(due().tasks.begin(), due().tasks.end(),
                          [&](const auto& task) { return task.task == id; }));
}

TEST_F(DeskPlaceTest, TheListShowsWhatIsAskedFor) {
  auto* show = field<QComboBox>(m_place, "show");
  const auto count = [&](auto is) {
    int n = 0;
    for (const auto& task : due().tasks) n += is(task) ? 1 : 0;
    return n;
  };
  const auto tasksShown = [&] {
    return static_cast<int>(rowsOf(list("yards")).size()) - list("yards").model()->rowCount();
  };
  show->setCurrentIndex(1);
  EXPECT_EQ(tasksShown(), count([&](const auto& t) { return t.overdue(due().ask.from); }));
  show->setCurrentIndex(2);
  EXPECT_EQ(tasksShown(), count([](const auto& t) { return t.rule != "planned"; }));
  show->setCurrentIndex(0);
  EXPECT_EQ(tasksShown(), static_cast<int>(due().tasks.size()));
}

TEST_F(DeskPlaceTest, ARecordMadeMeanwhileIsFollowed) {
  const auto risk = m_place.facts()->risk;
  const auto treat = rowWhere(list("risk"), Row::Kind::Risk,
                              [](const Row& row) { return row.badges == QStringLiteral("Q"); });
  const Row row = DeskList::rowOf(treat);
  const auto colony = *due().tasks[row.tasks.front()].colony;
  ASSERT_TRUE(m_desk.hub.execute(session::overruleVerdict(
      *row.hive, colony, m_desk.hub.workingDate(), apiary::VerdictCode::Fair, "saw her")));
  EXPECT_TRUE(m_place.busy());
  EXPECT_FALSE(action("planAction")->isEnabled());
  wait();
  for (const auto& hive : m_place.facts()->risk) EXPECT_NE(hive.hive, row.hive);
  EXPECT_EQ(m_place.facts()->risk.size(), risk.size() - 1);
}

TEST_F(DeskPlaceTest, StoppedItSaysSoAndGoesOnWhenAsked) {
  DeskPlace place(m_desk.hub);
  place.show();
  ASSERT_TRUE(place.busy());
  field<QPushButton>(place, "stop")->click();
  EXPECT_FALSE(place.busy());
  EXPECT_TRUE(field<QLabel>(place, "emptySentence")->text().startsWith(QStringLiteral("Stopped")));
  field<QPushButton>(place, "first_again")->click();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !place.busy(); }, 60000));
  EXPECT_EQ(place.facts()->due.tasks.size(), due().tasks.size());
  // Stopped after a change, what is shown is said to be old.
  apiary::Flow flow;
  flow.yard = due().yards.front().yard;
  flow.fromDay = 120;
  flow.toDay = 140;
  flow.nectar = 2;
  ASSERT_TRUE(m_desk.hub.execute(session::editFlow(std::nullopt, flow)));
  ASSERT_TRUE(place.busy());
  field<QPushButton>(place, "stop")->click();
  EXPECT_TRUE(field<QLabel>(place, "sum")->text().startsWith(QStringLiteral("Stopped")));
}

TEST_F(DeskPlaceTest, PrintsBlackOnWhiteOverAsManyPagesAsItTakes) {
  widgets::applyTheme(adapt::Theme::Dark);
  const auto printed = [&] {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter pdf(&buffer);
    pdf.setPageSize(QPageSize(QPageSize::A4));
    m_place.printTo(pdf);
    return bytes;
  };
  const QByteArray all = printed();
  widgets::applyTheme(adapt::Theme::Light);
  const auto pages = [](const QByteArray& pdf) { return pdf.count("/Type /Page\n"); };
  EXPECT_GT(pages(all), 3);
  field<QComboBox>(m_place, "show")->setCurrentIndex(1);
  const QByteArray overdue = printed();
  EXPECT_LT(pages(overdue), pages(all));
  EXPECT_GE(pages(overdue), 1);
  const QString folder = qEnvironmentVariable("OUTYARD_PICTURES");
  if (!folder.isEmpty()) {
    QFile file(folder + QStringLiteral("/desk.pdf"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(all);
  }
  EXPECT_FALSE(m_place.picture().isNull());
}

TEST_F(DeskPlaceTest, AScreenReaderHearsEveryRow) {
  for (const char* name : {"yards", "risk", "gear", "looks"}) {
    EXPECT_FALSE(list(name).accessibleName().isEmpty()) << name;
    for (const auto& index : rowsOf(list(name))) {
      const Row& row = DeskList::rowOf(index);
      const QString spoken = index.data(Qt::DisplayRole).toString();
      EXPECT_TRUE(spoken.contains(row.lead)) << spoken.toStdString();
      for (const QString& line : row.lines) {
        EXPECT_TRUE(spoken.contains(line)) << spoken.toStdString();
      }
      if (row.kind == Row::Kind::Yard) {
        EXPECT_TRUE(spoken.contains(stripWords(due().yards[*row.days], adapt::Units())));
      }
    }
  }
  auto* tree = QAccessible::queryAccessibleInterface(&list("risk"));
  ASSERT_NE(tree, nullptr);
  EXPECT_EQ(tree->text(QAccessible::Name), list("risk").accessibleName());
}

// --- without a season, yards, hives, weather -----------------------------------------------------

class NothingYet : public DeskPlaceTest {
 protected:
  NothingYet() : DeskPlaceTest(apiary::Season{}) {}
};

TEST_F(NothingYet, WithoutAYardItSaysWhereToAddOne) {
  const QString said = field<QLabel>(m_place, "emptySentence")->text();
  EXPECT_TRUE(said.contains(QStringLiteral("no yard"))) << said.toStdString();
  QSignalSpy opened(&m_place, &widgets::Place::openPlace);
  QSignalSpy asked(&m_place, &DeskPlace::asked);
  field<QPushButton>(m_place, "first_yards")->click();
  EXPECT_EQ(opened.last().at(0).toString(), QStringLiteral("yards"));
  field<QPushButton>(m_place, "first_tables")->click();
  EXPECT_EQ(asked.last().at(0).toString(), QStringLiteral("tables"));
  // A yard alone has nothing to open either.
  apiary::Yard yard;
  yard.yard = base::YardId{"HL"};
  ASSERT_TRUE(m_desk.hub.execute(session::addYard(yard)));
  EXPECT_TRUE(field<QLabel>(m_place, "emptySentence")->text().contains(QStringLiteral("No hive")));
}

TEST_F(NothingYet, WithoutASeasonItOffersOne) {
  m_desk.hub.close();
  EXPECT_TRUE(field<QLabel>(m_place, "emptySentence")
                  ->text()
                  .startsWith(QStringLiteral("No season is open")));
  QSignalSpy asked(&m_place, &DeskPlace::asked);
  for (const char* what : {"sample", "new", "open"}) {
    field<QPushButton>(m_place, QByteArray("first_").append(what).constData())->click();
    EXPECT_EQ(asked.last().at(0).toString(), QLatin1String(what));
  }
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter pdf(&buffer);
  m_place.printTo(pdf);  // says the same on paper
  EXPECT_TRUE(m_place.menuActions().contains(action("planAction")));
  EXPECT_FALSE(action("planAction")->isEnabled());
}

class NoWeather : public DeskPlaceTest {
 protected:
  NoWeather() : DeskPlaceTest(tests::smallSeason()) {}
};

TEST_F(NoWeather, ItIsSaidWithAWayToImportIt) {
  auto* note = field<QLabel>(m_place, "note");
  ASSERT_TRUE(note->isVisible());
  EXPECT_TRUE(note->text().contains(QStringLiteral("weather"))) << note->text().toStdString();
  QSignalSpy asked(&m_place, &DeskPlace::asked);
  field<QPushButton>(m_place, "importWeather")->click();
  EXPECT_EQ(asked.last().at(0).toString(), QStringLiteral("weather"));
  const auto index = list("yards").model()->index(0, 0);
  EXPECT_TRUE(index.data().toString().contains(QStringLiteral("No weather is known")));
  EXPECT_TRUE(DeskList::rowOf(list("looks").model()->index(0, 0))
                  .lines.first()
                  .startsWith(QStringLiteral("No hive was looked at twice")));
}

class Pictures : public DeskPlaceTest {};

TEST_F(Pictures, InLightAndDarkAndLarge) {
  const QFont before = QApplication::font();
  for (const bool dark : {false, true}) {
    widgets::applyTheme(dark ? adapt::Theme::Dark : adapt::Theme::Light);
    const QString theme = dark ? QStringLiteral("dark") : QStringLiteral("light");
    tests::picture(m_place, QStringLiteral("desk-") + theme, {1200, 740});
    tests::expectNothingCut(m_place);
    list("yards").setExpanded(list("yards").model()->index(1, 0), true);
    tests::picture(m_place, QStringLiteral("desk-open-") + theme, {1200, 740});
    auto& yards = list("yards");
    yards.selectionModel()->select(yards.model()->index(2, 0, yards.model()->index(1, 0)),
                                   QItemSelectionModel::ClearAndSelect);
    yards.selectionModel()->select(yards.model()->index(3, 0), QItemSelectionModel::Select);
    m_desk.dialogs.onRun = [&](QDialog& d) {
      tests::picture(d, QStringLiteral("desk-plan-") + theme, d.size());
      tests::expectNothingCut(d);
      return false;
    };
    action("planAction")->trigger();
    tests::picture(m_place, QStringLiteral("desk-chosen-") + theme, {1200, 740});
    yards.collapseAll();
  }
  widgets::applyTheme(adapt::Theme::Light);
  QFont large = before;
  large.setPointSizeF(before.pointSizeF() * 1.5);
  QApplication::setFont(large);
  {
    DeskPlace place(m_desk.hub);
    place.resize(1200, 740);
    place.show();
    ASSERT_TRUE(QTest::qWaitFor([&] { return !place.busy(); }, 60000));
    tests::picture(place, QStringLiteral("desk-large"), {1200, 740});
    tests::expectNothingCut(place);
  }
  QApplication::setFont(before);
}

}  // namespace
}  // namespace outyard::desk
