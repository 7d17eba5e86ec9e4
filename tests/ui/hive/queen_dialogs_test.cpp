// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/queen_dialogs.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QTest>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/hive/hive_place.h"
#include "ui/hive/record_words.h"

namespace outyard::hive {
namespace {

using apiary::EventKind;
using tests::day;
using tests::Desk;
using tests::field;

class QueenDialogsTest : public testing::Test {
 protected:
  QueenDialogsTest() : m_desk(tests::smallSeason()), m_place(m_desk.hub) {
    m_place.resize(1280, 800);
    m_place.show();
    m_desk.hub.selectHive(base::HiveId{"TR-01"});
    QCoreApplication::processEvents();
  }
  QAction* action(const char* name) {
    for (auto* each : m_place.menuActions()) {
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
  [[nodiscard]] apiary::HiveState now(const char* hive) const {
    return apiary::hiveOn(season(), base::HiveId{hive}, day("2026-04-25"));
  }
  [[nodiscard]] const apiary::Event& last(const char* hive) const {
    return *season().journal<apiary::Event>(base::HiveId{hive}).back();
  }
  static QString caution(QDialog& d) { return field<QLabel>(d, "caution")->text(); }

  Desk m_desk;
  HivePlace m_place;
};

TEST_F(QueenDialogsTest, AQueenIsGivenByTheKeyboardAlone) {
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(caution(d).contains(QStringLiteral("earlier queen")));
    auto* name = field<QLineEdit>(d, "name");
    EXPECT_TRUE(name->hasFocus() || d.focusWidget() == name);
    const auto type = [&](QWidget* at, const QString& text) {
      EXPECT_EQ(d.focusWidget(), at) << at->objectName().toStdString();
      if (auto* edit = qobject_cast<QLineEdit*>(at)) edit->selectAll();
      QTest::keyClicks(at, text);
      QTest::keyClick(at, Qt::Key_Tab);
    };
    type(name, QStringLiteral("N-7"));
    type(field<QLineEdit>(d, "year"), QStringLiteral("2026"));
    type(field<QLineEdit>(d, "line"), QStringLiteral("North"));
    type(field<QLineEdit>(d, "mother"), QStringLiteral("Q2"));
    type(field<QLineEdit>(d, "origin"), QStringLiteral("own graft"));
    type(field<QComboBox>(d, "marked"), QStringLiteral("y"));
    type(field<QComboBox>(d, "clipped"), QStringLiteral("no"));
    EXPECT_TRUE(field<QPushButton>(d, "record")->isEnabled())
        << field<QLabel>(d, "whyNot")->text().toStdString();
    return true;
  };
  action("giveQueen")->trigger();
  const auto* queen = season().queen(base::QueenId{"N-7"});
  ASSERT_TRUE(queen);
  EXPECT_EQ(queen->year, 2026);
  EXPECT_EQ(queen->line, "North");
  EXPECT_EQ(queen->mother, "Q2");
  EXPECT_EQ(queen->marked, true);
  EXPECT_EQ(now("TR-01").colonies.at(0).queen, base::QueenId{"N-7"});
  const QString words = eventWords(last("TR-01"), base::HiveId{"TR-01"}, adapt::Units());
  EXPECT_TRUE(words.contains(QStringLiteral("in a cage"))) << words.toStdString();
  EXPECT_TRUE(words.contains(QStringLiteral("N-7"))) << words.toStdString();
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(now("TR-01").colonies.at(0).queen, base::QueenId{"Q1"});
  EXPECT_FALSE(season().queen(base::QueenId{"N-7"}));
}

TEST_F(QueenDialogsTest, AWrongQueenIsToldInWordsAndNotRecorded) {
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QLineEdit>(d, "name")->setText(QStringLiteral("Q2"));
    EXPECT_FALSE(field<QPushButton>(d, "record")->isEnabled());
    EXPECT_TRUE(field<QLabel>(d, "whyNot")->text().contains(QStringLiteral("lives in TR-02")));
    field<QLineEdit>(d, "name")->setText(QStringLiteral("N-1"));
    field<QLineEdit>(d, "year")->setText(QStringLiteral("2027"));
    EXPECT_TRUE(field<QLabel>(d, "whyNot")->text().contains(QStringLiteral("cannot be of 2027")))
        << field<QLabel>(d, "whyNot")->text().toStdString();
    return true;
  };
  action("giveQueen")->trigger();
  EXPECT_EQ(now("TR-01").colonies.at(0).queen, base::QueenId{"Q1"});
}

TEST_F(QueenDialogsTest, CellsMarkAndLoss) {
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QLineEdit>(d, "cells")->setText(QStringLiteral("2"));
    return true;
  };
  action("giveCells")->trigger();
  EXPECT_EQ(last("TR-01").kind, EventKind::QueenCellGiven);
  EXPECT_EQ(last("TR-01").amount, 2);
  m_desk.dialogs.onRun = [](QDialog& d) {
    // Queens of 2025 are marked blue.
    EXPECT_EQ(field<QLineEdit>(d, "detail")->text(), QStringLiteral("blue"));
    field<QComboBox>(d, "what")->setCurrentIndex(2);
    return true;
  };
  action("markQueen")->trigger();
  EXPECT_EQ(season().queen(base::QueenId{"Q1"})->clipped, true);
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(caution(d).contains(QStringLiteral("test comb")));
    field<QComboBox>(d, "how")->setCurrentIndex(1);
    return true;
  };
  action("queenGone")->trigger();
  EXPECT_EQ(last("TR-01").kind, EventKind::QueenRemoved);
  EXPECT_FALSE(now("TR-01").colonies.at(0).queen);
}

TEST_F(QueenDialogsTest, ASwarmCaughtLivesInTheEmptyHive) {
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(caution(d).contains(QStringLiteral("power lines")));
    auto* caught = field<QComboBox>(d, "caught");
    EXPECT_EQ(caught->count(), 2);  // not caught, TR-07
    caught->setCurrentIndex(1);
    return true;
  };
  action("swarmed")->trigger();
  EXPECT_EQ(now("TR-07").colonies.at(0).queen, base::QueenId{"Q1"});
  EXPECT_EQ(now("TR-07").colonies.at(0).colony, base::ColonyId{"TR-07"});
}

TEST_F(QueenDialogsTest, TroubleSalesAndLosses) {
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(caution(d).contains(QStringLiteral("Close the entrance now")));
    return true;
  };
  action("robbed")->trigger();
  EXPECT_EQ(last("TR-01").kind, EventKind::Robbed);
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(caution(d).contains(QStringLiteral("authority")));
    return true;
  };
  action("poisoned")->trigger();
  EXPECT_EQ(last("TR-01").kind, EventKind::Poisoned);
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(caution(d).contains(QStringLiteral("Close the entrance now")));
    EXPECT_TRUE(caution(d).contains(QStringLiteral("bee inspector")));
    return true;
  };
  choose("TR-02");
  action("death")->trigger();
  EXPECT_EQ(now("TR-02").status, apiary::HiveStatus::Dead);
  choose("TR-03");
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QComboBox>(d, "what")->setCurrentIndex(1);
    return true;
  };
  action("sold")->trigger();
  EXPECT_TRUE(now("TR-03").present);
  EXPECT_TRUE(now("TR-03").colonies.empty());
  choose("TR-04");
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  action("lost")->trigger();
  EXPECT_FALSE(now("TR-04").present);
}

TEST_F(QueenDialogsTest, ABoughtColonyGoesIntoAnEmptyHiveOnly) {
  EXPECT_FALSE(action("bought")->isEnabled());
  EXPECT_TRUE(action("bought")->toolTip().contains(QStringLiteral("TR-01")));
  choose("TR-07");
  EXPECT_TRUE(action("bought")->isEnabled());
  EXPECT_FALSE(action("giveQueen")->isEnabled());
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QLineEdit>(d, "queen")->setText(QStringLiteral("B-1"));
    return true;
  };
  action("bought")->trigger();
  EXPECT_EQ(now("TR-07").colonies.at(0).queen, base::QueenId{"B-1"});
}

TEST_F(QueenDialogsTest, NothingIsCutInLightAndDark) {
  for (const char* name : {"giveQueen", "swarmed", "poisoned"}) {
    m_desk.dialogs.onRun = [&](QDialog& d) {
      tests::picture(d, QStringLiteral("queen_%1").arg(QLatin1String(name)), d.sizeHint());
      tests::expectNothingCut(d);
      return false;
    };
    action(name)->trigger();
  }
  tests::picture(m_place, QStringLiteral("hive_with_queen_menus"));
}

}  // namespace
}  // namespace outyard::hive
