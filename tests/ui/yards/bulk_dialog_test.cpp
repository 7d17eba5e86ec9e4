// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/bulk_dialog.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableWidget>
#include <QTest>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/widgets/theme.h"
#include "ui/yards/hive_table.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {
namespace {

using apiary::EventKind;
using session::BulkKind;
using tests::day;
using tests::Desk;
using tests::field;

class BulkDialogTest : public testing::Test {
 protected:
  BulkDialogTest() : m_desk(tests::smallSeason()), m_place(m_desk.hub) {
    m_desk.hub.selectYard(base::YardId{"TR"});
    m_place.resize(1280, 800);
    m_place.show();
    QCoreApplication::processEvents();
  }
  QAction* bulk() {
    for (auto* each : m_place.menuActions()) {
      if (each->objectName() == QStringLiteral("bulk")) return each;
    }
    ADD_FAILURE() << "no action";
    return nullptr;
  }
  static void choose(QDialog& d, BulkKind kind) {
    auto* box = field<QComboBox>(d, "bulkKind");
    box->setCurrentIndex(box->findData(static_cast<int>(kind)));
  }
  static QString reason(QDialog& d, const QString& hive) {
    auto* list = field<QTableWidget>(d, "bulkList");
    for (int row = 0; row < list->rowCount(); ++row) {
      if (list->item(row, 0)->text() == hive) return list->item(row, 1)->text();
    }
    return QStringLiteral("not in the list");
  }
  static bool mayRecord(QDialog& d) {
    return d.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->isEnabled();
  }
  [[nodiscard]] apiary::HiveState now(const char* hive) const {
    return apiary::hiveOn(m_desk.hub.season(), base::HiveId{hive}, day("2026-04-25"));
  }
  [[nodiscard]] std::size_t events(EventKind kind) const {
    std::size_t n = 0;
    for (const auto& [key, e] : m_desk.hub.season().table<apiary::Event>()) n += e.kind == kind;
    return n;
  }

  Desk m_desk;
  YardsPlace m_place;
};

TEST_F(BulkDialogTest, AllOfTheYardIsFedInOneStep) {
  const auto before = tests::allRows(m_desk.hub.season());
  m_desk.dialogs.onRun = [](QDialog& d) {
    choose(d, BulkKind::Feed);
    field<QLineEdit>(d, "bulkAmount")->setText(QStringLiteral("2,5"));
    EXPECT_EQ(reason(d, QStringLiteral("TR-01")), QStringLiteral("yes"));
    EXPECT_TRUE(reason(d, QStringLiteral("TR-07")).startsWith(QStringLiteral("no: ")))
        << reason(d, QStringLiteral("TR-07")).toStdString();
    EXPECT_TRUE(field<QLabel>(d, "bulkSummary")->text().contains(QStringLiteral("6 of 7")));
    EXPECT_TRUE(field<QLabel>(d, "bulkCaution")->text().contains(QStringLiteral("10 °C")));
    return true;
  };
  bulk()->trigger();
  EXPECT_EQ(events(EventKind::Fed), 6U);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(m_desk.hub.season()), before);
}

TEST_F(BulkDialogTest, TheHivesChosenInTheListGetASuperOneIsLeftOut) {
  m_place.showAsTable(true);
  auto& table = m_place.table();
  table.clearSelection();
  for (const int row : {0, 1, 2}) {
    table.selectionModel()->select(table.model()->index(row, 0),
                                   QItemSelectionModel::Select | QItemSelectionModel::Rows);
  }
  m_desk.dialogs.onRun = [](QDialog& d) {
    EXPECT_TRUE(field<QComboBox>(d, "bulkScope")->currentText().contains(QStringLiteral("3")));
    choose(d, BulkKind::AddSuper);
    auto* list = field<QTableWidget>(d, "bulkList");
    EXPECT_EQ(list->rowCount(), 3);
    // By the keyboard: the space bar leaves it out.
    list->setCurrentCell(1, 0);
    QTest::keyClick(list, Qt::Key_Space);
    EXPECT_EQ(reason(d, QStringLiteral("TR-02")), QStringLiteral("left out"));
    return true;
  };
  bulk()->trigger();
  EXPECT_EQ(now("TR-01").boxes.size(), 2U);
  EXPECT_EQ(now("TR-02").boxes.size(), 1U);
  EXPECT_EQ(now("TR-03").boxes.back().role, apiary::BoxRole::Super);
  EXPECT_EQ(now("TR-04").boxes.size(), 1U);
  // The excluder fits only where supers are.
  m_desk.dialogs.onRun = [](QDialog& d) {
    field<QComboBox>(d, "bulkScope")->setCurrentIndex(1);
    choose(d, BulkKind::ExcluderOn);
    EXPECT_TRUE(reason(d, QStringLiteral("TR-02")).contains(QStringLiteral("no super")));
    return true;
  };
  bulk()->trigger();
  EXPECT_EQ(now("TR-01").boxes.back().beneath, apiary::Beneath::Excluder);
}

TEST_F(BulkDialogTest, TreatmentAsksForTheLabelAndWarnsOfSupers) {
  m_desk.dialogs.onRun = [](QDialog& d) {
    choose(d, BulkKind::AddSuper);
    return true;
  };
  bulk()->trigger();
  m_desk.dialogs.onRun = [](QDialog& d) {
    choose(d, BulkKind::Treat);
    EXPECT_FALSE(mayRecord(d));
    EXPECT_TRUE(field<QLabel>(d, "bulkSummary")->text().contains(QStringLiteral("label")));
    field<QLineEdit>(d, "bulkProduct")->setText(QStringLiteral("strips"));
    field<QLineEdit>(d, "bulkWaiting")->setText(QStringLiteral("six"));
    EXPECT_FALSE(mayRecord(d));
    field<QLineEdit>(d, "bulkWaiting")->setText(QStringLiteral("42"));
    EXPECT_TRUE(mayRecord(d));
    const QString caution = field<QLabel>(d, "bulkCaution")->text();
    EXPECT_TRUE(caution.contains(QStringLiteral("acid-proof mask")));
    EXPECT_TRUE(caution.contains(QStringLiteral("Supers are on, most labels forbid that: TR-01")));
    tests::picture(d, QStringLiteral("bulk_treat"), {620, 620});
    return true;
  };
  bulk()->trigger();
  EXPECT_EQ(events(EventKind::Treated), 6U);
  m_desk.dialogs.onRun = [](QDialog& d) {
    choose(d, BulkKind::SupersOff);
    EXPECT_TRUE(field<QLabel>(d, "bulkCaution")->text().contains(QStringLiteral("No harvest yet")));
    return true;
  };
  bulk()->trigger();
  EXPECT_EQ(now("TR-01").boxes.size(), 1U);
}

TEST_F(BulkDialogTest, WrappedHivesAreNotWrappedAgain) {
  for (int round = 0; round < 2; ++round) {
    m_desk.dialogs.onRun = [round](QDialog& d) {
      choose(d, BulkKind::Wrap);
      EXPECT_EQ(mayRecord(d), round == 0);
      return true;
    };
    bulk()->trigger();
  }
  EXPECT_TRUE(now("TR-07").wrapped);
  EXPECT_EQ(events(EventKind::Wrapped), 7U);
}

TEST_F(BulkDialogTest, NothingIsCut) {
  for (const auto theme : {adapt::Theme::Light, adapt::Theme::Dark}) {
    widgets::applyTheme(theme);
    m_desk.dialogs.onRun = [theme](QDialog& d) {
      choose(d, BulkKind::AddBox);
      const bool light = theme == adapt::Theme::Light;
      tests::picture(d, light ? QStringLiteral("bulk-light") : QStringLiteral("bulk-dark"),
                     {620, 640});
      tests::expectNothingCut(d);
      return false;
    };
    bulk()->trigger();
  }
  widgets::applyTheme(adapt::Theme::Light);
}

}  // namespace
}  // namespace outyard::yards
