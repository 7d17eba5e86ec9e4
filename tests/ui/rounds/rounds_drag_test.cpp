// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QDrag>
#include <QDragEnterEvent>
#include <QMimeData>
#include <QScrollBar>
#include <QTest>
#include <QToolButton>

#include "tests/ui/rounds/rounds_fixture.h"
#include "tests/ui/support/pictures.h"
#include "ui/rounds/rounds_place.h"

/// The board under the mouse, and with large letters.
namespace outyard::rounds {
namespace {

using tests::day;
using tests::Desk;
using tests::field;

class RoundsDrag : public testing::Test {
 protected:
  RoundsDrag() : m_desk(sample()), m_place(std::make_unique<RoundsPlace>(m_desk.hub)) { show(); }
  void show() {
    m_place->resize(1200, 760);
    m_place->show();
    wait();
  }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !m_place->busy(); }, 120000));
    QCoreApplication::processEvents();
  }
  DayBoard& board() { return *field<DayBoard>(*m_place, "board"); }
  /// The button goes down on the card and moves so far; the drag that this starts, or null. The
  /// offscreen platform ends a drag at once, so that what is carried is delivered by hand below.
  QDrag* press(StopCard& card, QPoint way) {
    const QPoint at = card.rect().center();
    QTest::mousePress(&card, Qt::LeftButton, Qt::NoModifier, at);
    QTest::mouseMove(&card, at + way);
    return card.findChild<QDrag*>();
  }
  /// The sample's visit of 28 April.
  const StopKey m_stands{day("2026-04-28"), base::YardId{"AB"}};

  Desk m_desk;
  std::unique_ptr<RoundsPlace> m_place;
};

TEST_F(RoundsDrag, TheMouseDragsAVisitToAnotherDay) {
  auto* card = board().card(m_stands);
  ASSERT_NE(card, nullptr);
  auto* drag = press(*card, {QApplication::startDragDistance() + 4, 2});
  ASSERT_NE(drag, nullptr);
  EXPECT_EQ(drag->source(), card);
  EXPECT_FALSE(drag->pixmap().isNull()) << "the card itself hangs at the mouse";
  EXPECT_EQ(drag->hotSpot(), card->rect().center());
  const QString format = QStringLiteral("application/x-outyard-stop");
  ASSERT_TRUE(drag->mimeData()->hasFormat(format));
  EXPECT_EQ(drag->mimeData()->data(format), QByteArray("2026-04-28\nAB"));
  EXPECT_FALSE(card->isDown());
  QMimeData carried;
  carried.setData(format, drag->mimeData()->data(format));

  // Over two days to a third.
  for (const char* over : {"2026-04-29", "2026-04-30"}) {
    auto* cell = board().cell(day(over));
    QDragEnterEvent enter(QPoint(5, 5), Qt::MoveAction, &carried, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(cell, &enter);
    EXPECT_TRUE(enter.isAccepted()) << over;
    QDragMoveEvent move(QPoint(9, 30), Qt::MoveAction, &carried, Qt::LeftButton, Qt::NoModifier);
    QCoreApplication::sendEvent(cell, &move);
    EXPECT_TRUE(move.isAccepted()) << over;
    QDragLeaveEvent leave;
    if (over != std::string("2026-04-30")) QCoreApplication::sendEvent(cell, &leave);
  }
  EXPECT_NE(board().card(m_stands), nullptr) << "nothing moves before it is let go";
  QDropEvent drop(QPointF(9, 30), Qt::MoveAction, &carried, Qt::LeftButton, Qt::NoModifier);
  QCoreApplication::sendEvent(board().cell(day("2026-04-30")), &drop);
  EXPECT_TRUE(drop.isAccepted());
  const StopKey moved{day("2026-04-30"), m_stands.yard};
  ASSERT_TRUE(QTest::qWaitFor([&] { return board().card(moved) != nullptr; }, 3000));
  EXPECT_EQ(board().card(m_stands), nullptr);
  EXPECT_TRUE(m_place->board().stop(moved.date, moved.yard)->visit);
  ASSERT_TRUE(m_desk.hub.undo());
  QCoreApplication::processEvents();
  EXPECT_NE(board().card(m_stands), nullptr) << "one step";
}

TEST_F(RoundsDrag, AShortWayIsAClickAndStartsNoDrag) {
  board().choose(day("2026-04-26"), std::nullopt);
  auto* card = board().card(m_stands);
  EXPECT_EQ(press(*card, {2, 1}), nullptr);
  QTest::mouseRelease(card, Qt::LeftButton, Qt::NoModifier, card->rect().center() + QPoint(2, 1));
  QCoreApplication::processEvents();
  EXPECT_EQ(board().day(), m_stands.date);
  EXPECT_EQ(board().yard(), m_stands.yard);
}

TEST_F(RoundsDrag, WhatIsNotAVisitIsNotTaken) {
  QMimeData text;
  text.setText(QStringLiteral("2026-04-28\nAB"));
  auto* cell = board().cell(day("2026-04-30"));
  QDragEnterEvent enter(QPoint(5, 5), Qt::MoveAction, &text, Qt::LeftButton, Qt::NoModifier);
  enter.ignore();
  QCoreApplication::sendEvent(cell, &enter);
  EXPECT_FALSE(enter.isAccepted());
}

TEST_F(RoundsDrag, BothWeeksAreInSightAsUsual) {
  EXPECT_FALSE(field<QToolButton>(board(), "otherWeek")->isVisible());
  EXPECT_EQ(board().verticalScrollBar()->maximum(), 0);
}

class RoundsLarge : public RoundsDrag {
 protected:
  RoundsLarge() {
    m_place.reset();
    QFont large = m_before;
    large.setPointSizeF(m_before.pointSizeF() * 1.5);
    QApplication::setFont(large);
    m_place = std::make_unique<RoundsPlace>(m_desk.hub);
    show();
  }
  ~RoundsLarge() override {
    m_place.reset();
    QApplication::setFont(m_before);
    widgets::applyTheme(adapt::Theme::Light);
  }
  bool seen(base::Date date) {
    auto* cell = board().cell(date);
    const QRect at(cell->mapTo(board().viewport(), QPoint()), cell->size());
    return board().viewport()->rect().contains(at);
  }
  const QFont m_before = QApplication::font();
};

TEST_F(RoundsLarge, BothWeeksAreInSight) {
  EXPECT_TRUE(seen(day("2026-04-26")));
  EXPECT_TRUE(seen(day("2026-05-06")));
  EXPECT_FALSE(field<QToolButton>(board(), "otherWeek")->isVisible());
}

TEST_F(RoundsLarge, AWeekOutOfSightIsSaidAndOneKeyAway) {
  DayBoard low(m_desk.hub);
  low.show(m_place->board());
  low.resize(1100, low.wholeHeight(true) * 3 / 4);
  static_cast<QWidget&>(low).show();
  QCoreApplication::processEvents();
  const auto visible = [&](const char* date) {
    auto* cell = low.cell(day(date));
    const QRect at(cell->mapTo(low.viewport(), QPoint()), cell->size());
    return low.viewport()->rect().contains(at);
  };
  auto* cue = field<QToolButton>(low, "otherWeek");
  ASSERT_TRUE(cue->isVisible());
  low.choose(day("2026-04-26"), std::nullopt);
  low.focusChosen();
  QCoreApplication::processEvents();
  EXPECT_TRUE(visible("2026-04-26"));
  EXPECT_FALSE(visible("2026-05-03"));
  EXPECT_TRUE(cue->text().contains(QStringLiteral("2 May – 8 May below, visits: 1")))
      << cue->text().toStdString();
  tests::picture(low, QStringLiteral("rounds-low"), low.size());
  tests::expectNothingCut(low);
  QTest::keyClick(&low.cell(day("2026-04-26"))->head(), Qt::Key_PageDown);
  QCoreApplication::processEvents();
  EXPECT_EQ(low.day(), day("2026-05-03"));
  EXPECT_TRUE(visible("2026-05-03"));
  EXPECT_TRUE(cue->text().contains(QStringLiteral("25 Apr – 1 May above, visits: 3")))
      << cue->text().toStdString();
  cue->click();
  QCoreApplication::processEvents();
  EXPECT_EQ(low.day(), day("2026-04-26"));
  EXPECT_TRUE(visible("2026-04-26"));
  // A card that is dragged to the edge scrolls on to the other week.
  QMimeData carried;
  carried.setData(QStringLiteral("application/x-outyard-stop"), "2026-04-28\nAB");
  auto* cell = low.cell(day("2026-04-29"));
  QDragEnterEvent enter(QPoint(5, 5), Qt::MoveAction, &carried, Qt::LeftButton, Qt::NoModifier);
  QCoreApplication::sendEvent(cell, &enter);
  for (int i = 0; i < 40 && !visible("2026-05-06"); ++i) {
    const QPoint edge = low.viewport()->mapToGlobal(QPoint(5, low.viewport()->height() - 3));
    QDragMoveEvent move(cell->mapFromGlobal(edge), Qt::MoveAction, &carried, Qt::LeftButton,
                        Qt::NoModifier);
    QCoreApplication::sendEvent(cell, &move);
  }
  QDragLeaveEvent leave;
  QCoreApplication::sendEvent(cell, &leave);
  EXPECT_TRUE(visible("2026-05-06"));
}

TEST_F(RoundsLarge, Pictures) {
  for (const bool dark : {false, true}) {
    widgets::applyTheme(dark ? adapt::Theme::Dark : adapt::Theme::Light);
    const QString theme = dark ? QStringLiteral("dark") : QStringLiteral("light");
    tests::picture(*m_place, QStringLiteral("rounds-large-") + theme, {1200, 760});
    tests::expectNothingCut(*m_place);
    tests::picture(*m_place, QStringLiteral("rounds-large-small-") + theme, {1000, 560});
    tests::picture(*m_place, QStringLiteral("rounds-large-") + theme, {1200, 760});
    field<QAction>(*m_place, "proposeAction")->trigger();
    wait();
    tests::picture(*m_place, QStringLiteral("rounds-large-proposed-") + theme, {1200, 760});
    tests::expectNothingCut(*m_place);
    field<QAction>(*m_place, "discardAction")->trigger();
  }
}

}  // namespace
}  // namespace outyard::rounds
