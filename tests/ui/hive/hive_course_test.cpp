// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAction>
#include <QPdfWriter>
#include <QTabWidget>
#include <QTest>

#include "core/session/commands.h"
#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/charts/course_panel.h"
#include "ui/charts/course_view.h"
#include "ui/hive/hive_place.h"
#include "ui/widgets/theme.h"

namespace outyard::hive {
namespace {

using tests::day;

/// The hive of the sample with the most looks of this year.
base::HiveId busiest(const apiary::Season& season) {
  base::HiveId best;
  std::size_t most = 0;
  for (const auto& [key, hive] : season.table<apiary::Hive>()) {
    const auto state = apiary::hiveOn(season, hive.hive, day("2026-04-25"));
    if (state.status != apiary::HiveStatus::Live || state.stacked()) continue;
    const auto entries = season.journal<apiary::Inspection>(hive.hive).size() +
                         season.journal<apiary::Event>(hive.hive).size();
    if (entries > most) {
      most = entries;
      best = hive.hive;
    }
  }
  return best;
}

class HiveCourseTest : public ::testing::Test {
 protected:
  HiveCourseTest() : m_desk(tests::sampleSeason(), "2026-04-25"), m_place(m_desk.hub) {
    m_place.resize(1280, 800);
    m_place.show();
    m_desk.hub.selectHive(busiest(m_desk.hub.season()));
  }
  charts::CoursePanel& course() { return *m_place.findChild<charts::CoursePanel*>(); }
  QTabWidget& tabs() { return *m_place.findChild<QTabWidget*>(QStringLiteral("hiveTabs")); }
  void showCourse() {
    m_place.findChild<QAction*>(QStringLiteral("showCourse"))->trigger();
    EXPECT_EQ(tabs().currentIndex(), 1);
    EXPECT_TRUE(wait());
  }
  bool wait() {
    return QTest::qWaitFor([&] { return !course().working() && course().view().data(); }, 60000);
  }

  tests::Desk m_desk;
  HivePlace m_place;
};

TEST_F(HiveCourseTest, TakesTheJournalsLettersAndTheSeasonsLooks) {
  EXPECT_EQ(course().view().data(), nullptr);  // nothing is worked out that nobody sees
  showCourse();
  const auto* data = course().view().data();
  EXPECT_FALSE(data->ticks.empty());
  EXPECT_FALSE(data->looks.empty());
  for (const auto& tick : data->ticks) EXPECT_FALSE(tick.words.isEmpty());
  const QString words = charts::dayWords(*data, data->looks.back());
  EXPECT_TRUE(words.contains(QStringLiteral(" – "))) << words.toStdString();
  m_place.findChild<QAction*>(QStringLiteral("showCourse"))->trigger();
  EXPECT_EQ(tabs().currentIndex(), 0);
}

TEST_F(HiveCourseTest, AnEntryMovesIt) {
  showCourse();
  const auto before = course().view().data()->looks.size();
  const auto shown = course().view().from();
  session::InspectionEntry entry;
  entry.inspection.hive = *m_desk.hub.selection().hive;
  entry.inspection.date = day("2026-04-25");
  entry.inspection.seams = 9;
  ASSERT_TRUE(m_desk.hub.execute(session::recordInspections({entry})));
  ASSERT_TRUE(QTest::qWaitFor(
      [&] { return course().view().data() && course().view().data()->looks.size() == before + 1; },
      60000));
  EXPECT_EQ(course().view().from(), shown);  // the shown days stay
}

TEST_F(HiveCourseTest, PrintsWhatIsShown) {
  showCourse();
  const QString file = m_desk.folder.filePath(QStringLiteral("course.pdf"));
  {
    QPdfWriter pdf(file);
    m_place.printTo(pdf);
  }
  QFile written(file);
  ASSERT_TRUE(written.open(QIODevice::ReadOnly));
  EXPECT_GT(written.size(), 5000);
}

TEST_F(HiveCourseTest, Pictures) {
  for (const bool dark : {false, true}) {
    m_place.setPalette(dark ? widgets::darkPalette() : widgets::lightPalette());
    if (tabs().currentIndex() == 0) showCourse();
    ASSERT_TRUE(wait());
    const auto image =
        tests::picture(m_place, QStringLiteral("hive-course-") +
                                    (dark ? QStringLiteral("dark") : QStringLiteral("light")));
    EXPECT_FALSE(image.isNull());
    tests::expectNothingCut(course());
  }
}

}  // namespace
}  // namespace outyard::hive
