// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/desk/desk_place.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QBuffer>
#include <QComboBox>
#include <QDateEdit>
#include <QLabel>
#include <QPdfWriter>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QTreeWidget>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/adapt/words.h"
#include "ui/desk/day_strip.h"
#include "ui/desk/desk_list.h"
#include "ui/desk/desk_words.h"

namespace outyard::desk {
namespace {

using tests::day;
using tests::Desk;
using tests::field;

/// Read once: the import is the slow part.
const apiary::Season& sample() {
  static const apiary::Season season = tests::sampleSeason();
  return season;
}

class DeskPlaceTest : public testing::Test {
 protected:
  explicit DeskPlaceTest(apiary::Season season = sample())
      : m_desk(std::move(season)), m_place(m_desk.hub) {
    m_place.resize(1200, 780);
    m_place.show();
    wait();
  }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !m_place.busy(); }, 60000));
    QCoreApplication::processEvents();
  }
  DeskList& list(const char* name) { return *field<DeskList>(m_place, name); }
  QAction* action(const char* name) {
    for (auto* each : m_place.menuActions()) {
      if (each->objectName() == QLatin1String(name)) return each;
    }
    ADD_FAILURE() << name;
    return nullptr;
  }
  const planning::DueList& due() { return m_place.facts()->due; }

  Desk m_desk;
  DeskPlace m_place;
};

class Pictures : public DeskPlaceTest {};

TEST_F(Pictures, InLightAndDarkAndLarge) {
  const QFont before = QApplication::font();
  for (const bool dark : {false, true}) {
    widgets::applyTheme(dark ? adapt::Theme::Dark : adapt::Theme::Light);
    const QString theme = dark ? QStringLiteral("dark") : QStringLiteral("light");
    tests::picture(m_place, QStringLiteral("desk-") + theme, {1200, 740});
    tests::expectNothingCut(m_place);
  }
  widgets::applyTheme(adapt::Theme::Light);
  QFont large = before;
  large.setPointSizeF(before.pointSizeF() * 1.5);
  QApplication::setFont(large);
  {
    DeskPlace place(m_desk.hub);
    place.resize(1200, 740);
    place.show();
    ASSERT_TRUE(QTest::qWaitFor([&] { return place.facts() != nullptr; }, 60000));
    tests::picture(place, QStringLiteral("desk-large"), {1200, 740});
    tests::expectNothingCut(place);
  }
  QApplication::setFont(before);
}

}  // namespace
}  // namespace outyard::desk
