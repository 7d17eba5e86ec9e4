// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/figures_dialog.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSortFilterProxyModel>
#include <QTableView>
#include <QTest>

#include "core/forecast/parameters.h"
#include "core/strength/frame_table.h"
#include "core/strength/rule_table.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/main_window/figures_model.h"

namespace outyard::main_window {
namespace {

using tests::field;

class FiguresTest : public testing::Test {
 protected:
  FiguresTest() : m_desk(tests::smallSeason()), m_dialog(m_desk.hub) {
    m_dialog.show();
    m_table = field<QTableView>(m_dialog, "figureTable");
  }
  /// The row of this name among those that hold its words, chosen.
  QModelIndex only(const char* name) {
    field<QLineEdit>(m_dialog, "figureFilter")->setText(QLatin1String(name));
    const auto* model = m_table->model();
    for (int row = 0; row < model->rowCount(); ++row) {
      if (model->index(row, FiguresModel::Name).data().toString() != QLatin1String(name)) continue;
      const auto index = model->index(row, FiguresModel::Value);
      m_table->setCurrentIndex(index);
      return index;
    }
    ADD_FAILURE() << name;
    return {};
  }
  QString say() { return field<QLabel>(m_dialog, "figureSay")->text(); }

  tests::Desk m_desk;
  FiguresDialog m_dialog;
  QTableView* m_table = nullptr;
};

TEST_F(FiguresTest, EveryFigureHasRangeAndSource) {
  FiguresModel model(m_desk.hub);
  EXPECT_GE(model.groups().size(), 6);
  for (int i = 0; i < model.rowCount(); ++i) {
    const FigureRow& row = model.row(i);
    EXPECT_FALSE(row.source.isEmpty()) << row.name.toStdString();
    EXPECT_LE(row.low, row.shipped) << row.name.toStdString();
    EXPECT_GE(row.high, row.shipped) << row.name.toStdString();
  }
}

TEST_F(FiguresTest, AChangedFigureIsCountedWithAndCanBeUndone) {
  const auto index = only("small seams");
  EXPECT_TRUE(m_table->model()->setData(index, QStringLiteral("4.5"), Qt::EditRole));
  EXPECT_EQ(strength::rulesFor(m_desk.hub.season()).smallSeams, 4.5);
  EXPECT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(strength::rulesFor(m_desk.hub.season()).smallSeams,
            strength::RuleTable::shipped().figures().smallSeams);
}

TEST_F(FiguresTest, AForecastFigureIsTakenBackToShipped) {
  const auto index = only("queen potential");
  EXPECT_TRUE(m_table->model()->setData(index, QStringLiteral("1600"), Qt::EditRole));
  EXPECT_EQ(forecast::Figures::of(m_desk.hub.season()).value("queen_potential"), 1600);
  only("queen potential");
  field<QPushButton>(m_dialog, "figureBack")->click();
  EXPECT_EQ(forecast::Figures::of(m_desk.hub.season()).value("queen_potential"),
            forecast::Figures::shipped().value("queen_potential"));
}

TEST_F(FiguresTest, OutOfRangeAndNoNumberAreRefusedInWords) {
  const auto index = only("queen potential");
  EXPECT_FALSE(m_table->model()->setData(index, QStringLiteral("99999"), Qt::EditRole));
  EXPECT_TRUE(say().contains(QStringLiteral("outside"))) << say().toStdString();
  EXPECT_FALSE(m_table->model()->setData(index, QStringLiteral("many"), Qt::EditRole));
  EXPECT_TRUE(say().contains(QStringLiteral("no number"))) << say().toStdString();
  EXPECT_TRUE(m_desk.hub.season().table<apiary::Setting>().empty());
}

TEST_F(FiguresTest, FramesOfTheOutfitsOwn) {
  m_desk.dialogs.onRun = [](QDialog& ask) {
    field<QLineEdit>(ask, "frameTypeName")->setText(QStringLiteral("Long hive"));
    return true;
  };
  field<QPushButton>(m_dialog, "figureAdd")->click();
  ASSERT_TRUE(strength::figuresFor(m_desk.hub.season(), "long_hive"));
  // Its rows stand under its name; the first of them is the comb's area.
  const auto* model = m_table->model();
  ASSERT_GT(model->rowCount(), 3);
  QModelIndex area;
  for (int row = 0; row < model->rowCount(); ++row) {
    if (model->index(row, FiguresModel::Name)
            .data()
            .toString()
            .endsWith(QLatin1String("comb cm2"))) {
      area = model->index(row, FiguresModel::Value);
    }
  }
  ASSERT_TRUE(area.isValid());
  EXPECT_TRUE(m_table->model()->setData(area, QStringLiteral("1200"), Qt::EditRole));
  EXPECT_EQ(strength::figuresFor(m_desk.hub.season(), "long_hive")->combCm2, 1200);
  // A shipped type with an own weight goes back when the weight does.
  field<QLineEdit>(m_dialog, "figureFilter")->setText(QStringLiteral("zander box kg"));
  const auto named = [&](const char* end) {
    for (int row = 0; row < model->rowCount(); ++row) {
      if (model->index(row, FiguresModel::Name).data().toString().endsWith(QLatin1String(end))) {
        return model->index(row, FiguresModel::Value);
      }
    }
    return QModelIndex();
  };
  const auto box = named("box kg");
  ASSERT_TRUE(box.isValid());
  EXPECT_TRUE(m_table->model()->setData(box, QStringLiteral("6.5"), Qt::EditRole));
  EXPECT_EQ(strength::figuresFor(m_desk.hub.season(), "zander")->boxKg, 6.5);
  m_table->setCurrentIndex(named("box kg"));
  field<QPushButton>(m_dialog, "figureBack")->click();
  EXPECT_EQ(m_desk.hub.season().find<apiary::FrameType>("zander"), nullptr);
}

TEST_F(FiguresTest, LooksRightInBothThemes) {
  for (const auto theme : {adapt::Theme::Light, adapt::Theme::Dark}) {
    widgets::applyTheme(theme);
    tests::picture(m_dialog,
                   theme == adapt::Theme::Dark ? QStringLiteral("figures-dark")
                                               : QStringLiteral("figures-light"),
                   {1080, 680});
  }
  widgets::applyTheme(adapt::Theme::Light);
  tests::expectNothingCut(m_dialog);
}

}  // namespace
}  // namespace outyard::main_window
