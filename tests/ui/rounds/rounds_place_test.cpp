// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rounds/rounds_place.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QBuffer>
#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QPdfWriter>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QTreeWidget>
#include <memory>

#include "core/session/commands.h"
#include "tests/ui/rounds/rounds_fixture.h"
#include "tests/ui/support/pictures.h"
#include "ui/adapt/system_clock.h"
#include "ui/rounds/rounds_words.h"

namespace outyard::rounds {
namespace {

using tests::day;
using tests::Desk;
using tests::field;

class RoundsPlaceTest : public testing::Test {
 protected:
  explicit RoundsPlaceTest(apiary::Season season = sample())
      : m_desk(std::move(season)), m_place(m_desk.hub) {
    m_place.resize(1200, 780);
    m_place.show();
    wait();
  }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !m_place.busy(); }, 120000));
    QCoreApplication::processEvents();
  }
  DayBoard& board() { return *field<DayBoard>(m_place, "board"); }
  QTreeWidget& work() { return *field<QTreeWidget>(m_place, "work"); }
  QTreeWidget& load() { return *field<QTreeWidget>(m_place, "load"); }
  QAction* action(const char* name) { return field<QAction>(m_place, name); }
  void trigger(const char* name) {
    auto* each = action(name);
    ASSERT_TRUE(each->isEnabled()) << name;
    each->trigger();
    QCoreApplication::processEvents();
  }
  void propose() {
    trigger("proposeAction");
    wait();
    ASSERT_NE(m_place.proposal(), nullptr);
    ASSERT_FALSE(m_place.proposal()->plan.days.empty());
  }
  QString note() { return field<QLabel>(m_place, "note")->text(); }
  const apiary::Season& season() { return m_desk.hub.season(); }
  std::size_t visits() { return season().table<apiary::Visit>().size(); }
  std::size_t tasks() { return season().table<apiary::Task>().size(); }
  /// The rows below the heading that begins so.
  QList<QTreeWidgetItem*> rows(const char* heading) {
    QList<QTreeWidgetItem*> out;
    for (int i = 0; i < work().topLevelItemCount(); ++i) {
      auto* head = work().topLevelItem(i);
      if (!head->text(0).startsWith(QLatin1String(heading))) continue;
      for (int k = 0; k < head->childCount(); ++k) out << head->child(k);
    }
    return out;
  }
  void key(QWidget* to, Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier) {
    ASSERT_NE(to, nullptr);
    QTest::keyClick(to, key, with);
    QCoreApplication::processEvents();
  }
  /// The sample's visit of 28 April.
  const StopKey m_stands{day("2026-04-28"), base::YardId{"AB"}};

  Desk m_desk;
  RoundsPlace m_place;
};

TEST_F(RoundsPlaceTest, ShowsTheVisitsAsTheyStand) {
  ASSERT_EQ(m_place.board().days.size(), 14U);
  EXPECT_EQ(m_place.board().days.front().date(), day("2026-04-25"));
  const auto* stop = m_place.board().stop(m_stands.date, m_stands.yard);
  ASSERT_NE(stop, nullptr);
  EXPECT_TRUE(stop->visit);
  EXPECT_FALSE(stop->proposed());
  auto* card = board().card(m_stands);
  ASSERT_NE(card, nullptr);
  EXPECT_TRUE(card->accessibleName().contains(QStringLiteral("Alder Bend")));
  EXPECT_TRUE(card->toolTip().contains(QStringLiteral("h there")));
  // Every visit of the season in these days has its card.
  std::size_t within = 0;
  for (const auto& [key, v] : season().table<apiary::Visit>()) {
    if (v.date < day("2026-04-25") || v.date > day("2026-05-08")) continue;
    ++within;
    EXPECT_NE(board().card({v.date, v.yard}), nullptr) << key;
  }
  EXPECT_EQ(m_place.board().visits(), within);
}

TEST_F(RoundsPlaceTest, ProposesAndAcceptsAllAsOneStep) {
  const auto before = tests::allRows(season());
  const auto had = visits();
  propose();
  EXPECT_EQ(tests::allRows(season()), before) << "a proposal writes nothing";
  EXPECT_TRUE(field<QPushButton>(m_place, "acceptAll")->isVisible());
  std::size_t fresh = 0;
  for (const auto& d : m_place.board().days) {
    EXPECT_LE(d.stops.size(), 4U);
    for (const auto& s : d.stops) {
      fresh += s.visit ? 0 : 1;
      EXPECT_GT(s.visit ? 1 : s.fresh.size(), 0U);
    }
  }
  ASSERT_GT(fresh, 0U);
  EXPECT_TRUE(note().contains(QStringLiteral("Proposed"))) << note().toStdString();

  trigger("acceptAction");
  EXPECT_EQ(visits(), had + fresh);
  EXPECT_EQ(m_place.proposal(), nullptr);
  for (const auto& [key, t] : season().table<apiary::Task>()) {
    if (t.visit && t.state == apiary::TaskState::Planned) {
      EXPECT_EQ(t.plannedOn, season().find<apiary::Visit>(t.visit->str())->date);
    }
  }
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_EQ(tests::allRows(season()), before);
}

TEST_F(RoundsPlaceTest, AcceptsOneDayAndKeepsTheOthersProposed) {
  propose();
  const auto had = visits();
  const auto planned = m_place.proposal()->plan.days.size();
  ASSERT_GE(planned, 2U);
  const BoardDay* on = nullptr;
  for (const auto& d : m_place.board().days) {
    if (std::any_of(d.stops.begin(), d.stops.end(), [](const auto& s) { return !s.visit; })) {
      on = &d;
      break;
    }
  }
  ASSERT_NE(on, nullptr);
  const auto date = on->date();
  const auto work = on->stops.front().stop.tasks.size();
  const auto yard = on->stops.front().yard;
  board().choose(date, std::nullopt);
  trigger("acceptDayAction");
  EXPECT_GT(visits(), had);
  ASSERT_NE(m_place.proposal(), nullptr);
  EXPECT_EQ(m_place.proposal()->plan.days.size(), planned - 1);
  const auto* stop = m_place.board().stop(date, yard);
  ASSERT_NE(stop, nullptr);
  EXPECT_FALSE(stop->proposed());
  EXPECT_EQ(stop->stop.tasks.size(), work) << "what was accepted is the visit's work, once";
  trigger("discardAction");
  EXPECT_EQ(m_place.proposal(), nullptr);
  EXPECT_FALSE(field<QPushButton>(m_place, "acceptAll")->isVisible());
}

TEST_F(RoundsPlaceTest, MovesAVisitByTheKeyboardAndBackByUndo) {
  auto* card = board().card(m_stands);
  card->setFocus();
  key(card, Qt::Key_Right, Qt::AltModifier);
  const StopKey moved{day("2026-04-29"), m_stands.yard};
  EXPECT_EQ(board().card(m_stands), nullptr);
  ASSERT_NE(board().card(moved), nullptr);
  EXPECT_TRUE(board().card(moved)->hasFocus()) << "the keyboard goes with the card";
  EXPECT_TRUE(note().contains(QStringLiteral("moved to Wed 29 Apr"))) << note().toStdString();
  key(board().card(moved), Qt::Key_Left, Qt::AltModifier);
  EXPECT_NE(board().card(m_stands), nullptr);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_NE(board().card(moved), nullptr);
  ASSERT_TRUE(m_desk.hub.undo());
  EXPECT_NE(board().card(m_stands), nullptr);
}

TEST_F(RoundsPlaceTest, ADropMovesTheVisit) {
  auto* cell = board().cell(day("2026-04-30"));
  QMimeData data;
  data.setData(QStringLiteral("application/x-outyard-stop"), "2026-04-28\nAB");
  QDragEnterEvent enter(QPoint(5, 5), Qt::MoveAction, &data, Qt::LeftButton, Qt::NoModifier);
  QCoreApplication::sendEvent(cell, &enter);
  EXPECT_TRUE(enter.isAccepted());
  QDropEvent drop(QPointF(5, 5), Qt::MoveAction, &data, Qt::LeftButton, Qt::NoModifier);
  QCoreApplication::sendEvent(cell, &drop);
  ASSERT_TRUE(QTest::qWaitFor(
      [&] {
        return board().card({day("2026-04-30"), m_stands.yard}) != nullptr;
      },
      2000));
  EXPECT_EQ(board().card(m_stands), nullptr);
}

TEST_F(RoundsPlaceTest, MoveToDaySaysWhatTheDayDoesFor) {
  board().choose(m_stands.date, m_stands.yard);
  QString words;
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    field<QDateEdit>(dialog, "moveDay")->setDate(adapt::toQDate(day("2026-05-01")));
    words = field<QLabel>(dialog, "moveWords")->text();
    return true;
  };
  trigger("moveAction");
  EXPECT_TRUE(words.contains(QStringLiteral("Fri 1 May"))) << words.toStdString();
  EXPECT_NE(board().card({day("2026-05-01"), m_stands.yard}), nullptr);
}

TEST_F(RoundsPlaceTest, WorkGoesInIsTickedOffAndTakenOut) {
  board().choose(m_stands.date, m_stands.yard);
  // Work that a day says all of; what moves boxes opens its own dialog.
  QTreeWidgetItem* plain = nullptr;
  for (const char* heading : {"Also due", "Due there"}) {
    for (auto* row : rows(heading)) {
      if (!plain && row->text(1).startsWith(QStringLiteral("Wash"))) plain = row;
    }
  }
  ASSERT_NE(plain, nullptr);
  const auto in = rows("In this visit").size();
  work().setCurrentItem(plain);
  const auto had = tasks();
  trigger("putInAction");
  EXPECT_GE(tasks(), had);
  ASSERT_EQ(rows("In this visit").size(), in + 1);
  wait();
  ASSERT_EQ(rows("In this visit").size(), in + 1);

  work().setCurrentItem(rows("In this visit").back());
  m_desk.dialogs.onRun = [](QDialog&) { return true; };
  trigger("doneAction");
  EXPECT_EQ(rows("Done").size(), 1);
  EXPECT_EQ(rows("In this visit").size(), in);
  wait();
  // What was done holds the visit on its day.
  trigger("moveLaterAction");
  ASSERT_EQ(m_desk.dialogs.failures.size(), 1);
  EXPECT_NE(board().card(m_stands), nullptr);
  work().setCurrentItem(rows("Done").front());
  trigger("notDoneAction");
  wait();
  work().setCurrentItem(rows("In this visit").back());
  trigger("takeOutAction");
  EXPECT_EQ(rows("In this visit").size(), in);
}

TEST_F(RoundsPlaceTest, ANewVisitItsNotesAndItsEnd) {
  const auto had = visits();
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    auto* yard = field<QComboBox>(dialog, "visitYard");
    yard->setCurrentIndex(yard->findData(QStringLiteral("TR")));
    field<QDateEdit>(dialog, "visitDay")->setDate(adapt::toQDate(day("2026-05-06")));
    field<QCheckBox>(dialog, "visitTimed")->setChecked(true);
    field<QLineEdit>(dialog, "visitNotes")->setText(QStringLiteral("bring the scale"));
    return true;
  };
  trigger("newVisitAction");
  EXPECT_EQ(visits(), had + 1);
  const StopKey made{day("2026-05-06"), base::YardId{"TR"}};
  ASSERT_NE(board().card(made), nullptr);
  EXPECT_TRUE(board().card(made)->isChecked());
  EXPECT_TRUE(field<QLabel>(m_place, "workHead")->text().contains(QStringLiteral("scale")));
  // A second one that day cannot be.
  QString fault;
  m_desk.dialogs.onRun = [&](QDialog& dialog) {
    auto* yard = field<QComboBox>(dialog, "visitYard");
    yard->setCurrentIndex(yard->findData(QStringLiteral("TR")));
    fault = field<QLabel>(dialog, "visitFault")->text();
    return true;
  };
  trigger("newVisitAction");
  EXPECT_EQ(visits(), had + 1);
  EXPECT_TRUE(fault.contains(QStringLiteral("planned already"))) << fault.toStdString();
  board().choose(made.date, made.yard);
  trigger("removeVisitAction");
  EXPECT_EQ(visits(), had);
}

TEST_F(RoundsPlaceTest, TheLoadOfADaySaysWhatIsShort) {
  propose();
  bool any = false, sugar = false;
  for (const auto& d : m_place.board().days) {
    if (d.day.load.items.empty()) continue;
    any = true;
    board().choose(d.date(), std::nullopt);
    ASSERT_EQ(load().topLevelItemCount(), static_cast<int>(d.day.load.items.size()));
    int row = 0;
    for (const auto& item : d.day.load.items) {
      const auto* shown = load().topLevelItem(row++);
      EXPECT_FALSE(shown->text(0).isEmpty());
      EXPECT_EQ(shown->text(3).isEmpty(), item.missing() <= 0) << item.item;
      if (item.sugarKg) {
        sugar = true;
        EXPECT_TRUE(shown->text(1).endsWith(QStringLiteral("l")) ||
                    shown->text(1).endsWith(QStringLiteral("kg")))
            << shown->text(1).toStdString();
        EXPECT_TRUE(field<QLabel>(m_place, "loadSum")->text().contains(QStringLiteral("sugar")));
      }
    }
    EXPECT_TRUE(field<QLabel>(m_place, "loadSum")->text().contains(QStringLiteral("kg")));
    if (d.day.load.kg > 0) {
      EXPECT_TRUE(field<QLabel>(m_place, "cautions")->text().contains(QStringLiteral("Tie")));
    }
  }
  EXPECT_TRUE(any);
  EXPECT_TRUE(sugar) << "the sample has hives to feed in these days";
}

TEST_F(RoundsPlaceTest, PrintsTheRoundAndSavesTheCalendar) {
  propose();
  trigger("acceptAction");
  wait();
  QBuffer pdf;
  pdf.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&pdf);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageMargins(QMarginsF());
    m_place.printTo(writer);
  }
  EXPECT_TRUE(pdf.data().startsWith("%PDF"));
  EXPECT_GT(pdf.data().size(), 5000);
  const QString folder = qEnvironmentVariable("OUTYARD_PICTURES");
  if (!folder.isEmpty()) {
    QFile file(folder + QStringLiteral("/rounds.pdf"));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(pdf.data());
  }
  m_desk.dialogs.file = m_desk.folder.filePath(QStringLiteral("day.ics"));
  trigger("calendarAction");
  QFile ics(m_desk.dialogs.file);
  ASSERT_TRUE(ics.open(QIODevice::ReadOnly));
  const QByteArray text = ics.readAll();
  const auto on = *board().day();
  EXPECT_EQ(text.count("BEGIN:VEVENT"),
            static_cast<qsizetype>(m_place.board().at(on)->stops.size()));
  QByteArray stamp = QByteArray::fromStdString(on.iso());
  stamp.replace("-", "");
  EXPECT_TRUE(text.contains(stamp));
}

TEST_F(RoundsPlaceTest, AsksTheWindowForSheets) {
  board().choose(m_stands.date, m_stands.yard);
  std::vector<base::YardId> yards;
  std::optional<base::Date> on;
  QObject::connect(&m_place, &RoundsPlace::sheetsAsked, &m_place,
                   [&](const std::vector<base::YardId>& which, base::Date date) {
                     yards = which;
                     on = date;
                   });
  QSignalSpy asked(&m_place, &RoundsPlace::asked);
  trigger("sheetsAction");
  EXPECT_EQ(yards, std::vector<base::YardId>{m_stands.yard});
  EXPECT_EQ(on, m_stands.date);
  trigger("enterAction");
  ASSERT_EQ(asked.size(), 1);
  EXPECT_EQ(asked.front().front().toString(), QStringLiteral("sheet"));
}

TEST_F(RoundsPlaceTest, AScreenReaderHearsCardsAndDays) {
  auto* card = QAccessible::queryAccessibleInterface(board().card(m_stands));
  ASSERT_NE(card, nullptr);
  EXPECT_EQ(card->role(), QAccessible::CheckBox);
  EXPECT_TRUE(card->text(QAccessible::Name).contains(QStringLiteral("Alder Bend, Tue 28 Apr")));
  EXPECT_TRUE(card->text(QAccessible::Description).contains(QStringLiteral("Alt")));
  auto* head = QAccessible::queryAccessibleInterface(&board().cell(m_stands.date)->head());
  ASSERT_NE(head, nullptr);
  EXPECT_TRUE(head->text(QAccessible::Name).contains(QStringLiteral("Alder Bend")));
  EXPECT_FALSE(work().accessibleName().isEmpty());
  EXPECT_FALSE(load().accessibleName().isEmpty());
}

TEST_F(RoundsPlaceTest, SaysWhatSpeaksAgainstADay) {
  // The first day on which the yard is too cold or wet.
  std::optional<base::Date> cold;
  for (const auto& d : m_place.board().days) {
    if (d.date() == m_stands.date || m_place.board().stop(d.date(), m_stands.yard)) continue;
    const auto* weather = dayOf(m_place.board().due, m_stands.yard, d.date());
    if (warmthOf(weather) == Warmth::Shut && !cold) cold = d.date();
  }
  ASSERT_TRUE(cold);
  Q_EMIT board().moveAsked(m_stands, *cold);
  QCoreApplication::processEvents();
  ASSERT_NE(board().card({*cold, m_stands.yard}), nullptr) << "a caution does not forbid";
  EXPECT_TRUE(note().contains(QStringLiteral("Caution, Alder Bend"))) << note().toStdString();
  EXPECT_TRUE(note().contains(QStringLiteral("too cold or wet")));
}

TEST_F(RoundsPlaceTest, AProposedVisitIsMovedBeforeItIsAccepted) {
  propose();
  const auto before = tests::allRows(season());
  std::optional<StopKey> from;
  for (const auto& d : m_place.board().days) {
    for (const auto& s : d.stops) {
      if (!s.visit && !from) from = StopKey{d.date(), s.yard};
    }
  }
  ASSERT_TRUE(from);
  std::optional<base::Date> to;
  for (const auto& d : m_place.board().days) {
    if (!m_place.board().stop(d.date(), from->yard)) to = d.date();
  }
  ASSERT_TRUE(to);
  const auto work = m_place.board().stop(from->date, from->yard)->stop.tasks.size();
  Q_EMIT board().moveAsked(*from, *to);
  QCoreApplication::processEvents();
  EXPECT_EQ(tests::allRows(season()), before);
  EXPECT_EQ(m_place.board().stop(from->date, from->yard), nullptr);
  const auto* moved = m_place.board().stop(*to, from->yard);
  ASSERT_NE(moved, nullptr);
  EXPECT_EQ(moved->stop.tasks.size(), work);
  trigger("acceptAction");
  bool found = false;
  for (const auto& [key, v] : season().table<apiary::Visit>()) {
    found = found || (v.yard == from->yard && v.date == *to);
  }
  EXPECT_TRUE(found);
}

TEST_F(RoundsPlaceTest, ArrowsWalkTheBoard) {
  board().choose(day("2026-04-26"), std::nullopt);
  board().focusChosen();
  auto* at = QApplication::focusWidget();
  key(at, Qt::Key_Right);
  EXPECT_EQ(board().day(), day("2026-04-27"));
  trigger("laterAction");
  wait();
  EXPECT_EQ(m_place.board().days.front().date(), day("2026-05-02"));
  trigger("toTodayAction");
  wait();
  EXPECT_EQ(m_place.board().days.front().date(), day("2026-04-25"));
}

TEST(RoundsPlaceEmpty, SaysWhatToDoFirst) {
  apiary::Season none;
  Desk desk(none);
  RoundsPlace place(desk.hub);
  place.resize(1000, 700);
  place.show();
  EXPECT_TRUE(field<QLabel>(place, "emptySentence")->text().contains(QStringLiteral("no yard")));
  EXPECT_NE(place.findChild<QPushButton*>(QStringLiteral("first_yards")), nullptr);
  desk.hub.close();
  QCoreApplication::processEvents();
  EXPECT_TRUE(field<QLabel>(place, "emptySentence")->text().contains(QStringLiteral("No season")));
}

TEST(RoundsPlaceEmpty, SaysThatWeatherIsMissing) {
  Desk desk(tests::smallSeason());
  RoundsPlace place(desk.hub);
  place.resize(1000, 700);
  place.show();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !place.busy(); }, 60000));
  const auto note = field<QLabel>(place, "note")->text();
  EXPECT_TRUE(note.contains(QStringLiteral("No visit is planned")) ||
              note.contains(QStringLiteral("Nothing falls due")))
      << note.toStdString();
}

class RoundsPictures : public RoundsPlaceTest {};

TEST_F(RoundsPictures, InLightAndDarkAndLarge) {
  for (const bool dark : {false, true}) {
    widgets::applyTheme(dark ? adapt::Theme::Dark : adapt::Theme::Light);
    const QString theme = dark ? QStringLiteral("dark") : QStringLiteral("light");
    board().choose(m_stands.date, m_stands.yard);
    tests::picture(m_place, QStringLiteral("rounds-") + theme, {1200, 760});
    tests::expectNothingCut(m_place);
    propose();
    tests::picture(m_place, QStringLiteral("rounds-proposed-") + theme, {1200, 760});
    tests::expectNothingCut(m_place);
    trigger("discardAction");
  }
  widgets::applyTheme(adapt::Theme::Light);
  propose();
  trigger("acceptAction");
  wait();
  tests::picture(m_place, QStringLiteral("rounds-accepted-light"), {1280, 800});
  const QFont before = QApplication::font();
  QFont large = before;
  large.setPointSizeF(before.pointSizeF() * 1.5);
  QApplication::setFont(large);
  auto place = std::make_unique<RoundsPlace>(m_desk.hub);
  place->show();
  EXPECT_TRUE(QTest::qWaitFor([&] { return !place->busy(); }, 120000));
  tests::picture(*place, QStringLiteral("rounds-large"), {1200, 760});
  place.reset();
  QApplication::setFont(before);
}

}  // namespace
}  // namespace outyard::rounds
