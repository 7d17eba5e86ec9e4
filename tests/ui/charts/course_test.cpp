// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAction>
#include <QBuffer>
#include <QComboBox>
#include <QFile>
#include <QImage>
#include <QLabel>
#include <QSignalSpy>
#include <QSvgRenderer>
#include <QTableView>
#include <QTest>
#include <QWheelEvent>

#include "tests/ui/support/desk.h"
#include "tests/ui/support/pictures.h"
#include "ui/charts/course_files.h"
#include "ui/charts/course_panel.h"
#include "ui/charts/course_table.h"
#include "ui/charts/course_view.h"
#include "ui/widgets/theme.h"

namespace outyard::charts {
namespace {

using base::Date;
using tests::day;

/// A course made by hand, so that what is drawn and said is known.
std::shared_ptr<CourseData> handMade() {
  auto data = std::make_shared<CourseData>();
  data->title = QStringLiteral("TR-01");
  data->today = day("2026-05-02");
  data->first = day("2026-03-01");
  data->last = day("2026-12-31");
  data->lanes = emptyLanes({});
  data->temperatureUnit = QStringLiteral("°C");
  for (auto& lane : data->lanes) {
    for (auto& s : lane.series) {
      for (Date d = data->first; d <= data->today; d = d.plusDays(1)) {
        const double v = 100.0 * (d - data->first + 10);
        s.past.push_back({d, 0.8 * v, v, 1.2 * v});
      }
      const BandPoint start = s.past.back();
      for (Date d = data->today; d <= data->last; d = d.plusDays(1)) {
        const double wide = 1 + 0.01 * (d - data->today);
        s.ahead.push_back(
            {d, start.median / (1.2 * wide), start.median, start.median * 1.2 * wide});
      }
    }
  }
  auto& bees = data->lanes[0].series[0];
  bees.seen = {{day("2026-03-20"), 2000, 2500, 3100, false, {}},
               {day("2026-04-18"), 1500, 2000, 2600, true, QStringLiteral("far fewer bees")}};
  data->looks = {day("2026-03-20"), day("2026-04-18")};
  data->ticks = {{day("2026-04-18"), u'L', QStringLiteral("looked: 4 seams")},
                 {day("2026-04-25"), u'F', QStringLiteral("fed 2 kg")}};
  for (Date d = data->first; d <= data->last; d = d.plusDays(1)) {
    WeatherPoint w;
    w.date = d;
    w.tmin = 4;
    w.tmax = d.day() % 2 == 0 ? 16 : 9;
    w.rainMm = d.day() == 5 ? 12 : 0;
    w.opens = w.flight = d.day() % 2 == 0;
    w.kind = d <= data->today ? WeatherPoint::Kind::Observed : WeatherPoint::Kind::Usual;
    data->weather.push_back(w);
  }
  return data;
}

struct Shown {
  Shown() {
    view.resize(900, 480);
    view.setData(handMade());
    view.show();
    QTest::qWait(10);
  }
  void moveTo(const Date date, double y) {
    const auto layout = view.layoutNow();
    QMouseEvent move(QEvent::MouseMove, QPointF(layout.xOf(date), y),
                     view.mapToGlobal(QPointF(layout.xOf(date), y)), Qt::NoButton, Qt::NoButton,
                     Qt::NoModifier);
    QCoreApplication::sendEvent(&view, &move);
  }
  CourseView view;
};

TEST(CourseData, BandsAreReadBetweenTheirDays) {
  const Band band{{day("2026-05-01"), 1, 2, 3}, {day("2026-05-11"), 11, 22, 33}};
  EXPECT_FALSE(at(band, day("2026-04-30")));
  EXPECT_FALSE(at(band, day("2026-05-12")));
  EXPECT_DOUBLE_EQ(at(band, day("2026-05-06"))->median, 12);
  EXPECT_DOUBLE_EQ(at(band, day("2026-05-11"))->high, 33);
}

TEST(CourseData, DottedAfterFiveWeeksWithoutALook) {
  const auto data = handMade();
  EXPECT_TRUE(unseen(*data, day("2026-03-19")));
  EXPECT_FALSE(unseen(*data, day("2026-03-20")));
  EXPECT_FALSE(unseen(*data, day("2026-05-23")));  // 35 days
  EXPECT_TRUE(unseen(*data, day("2026-05-24")));
}

TEST(CourseData, SaysWhatWasSeenAndWhatIsExpected) {
  const auto data = handMade();
  const QString look = dayWords(*data, day("2026-04-18"));
  EXPECT_TRUE(look.contains(QStringLiteral("bees seen: 2,000 (1,500–2,600)")))
      << look.toStdString();
  EXPECT_TRUE(look.contains(QStringLiteral("far fewer bees")));
  EXPECT_TRUE(look.contains(QStringLiteral("L – looked: 4 seams")));
  EXPECT_TRUE(look.contains(QStringLiteral("lift combs"))) << look.toStdString();
  const QString ahead = dayWords(*data, day("2026-06-01"), 0);
  EXPECT_TRUE(ahead.contains(QStringLiteral("bees expected"))) << ahead.toStdString();
  EXPECT_TRUE(ahead.contains(QStringLiteral("five weeks")));
  EXPECT_FALSE(ahead.contains(QStringLiteral("brood")));  // only the lane that is pointed at
  EXPECT_TRUE(dayWords(*data, data->today).contains(QStringLiteral("today")));
}

TEST(CourseLayout, BandsAreNeverCut) {
  auto data = handMade();
  data->lanes[0].series[0].other = {{data->today, 1000, 50000, 123456}, {data->last, 1, 2, 3}};
  const QRectF area(0, 0, 900, 480);
  const CourseLayout layout(*data, area, data->first, data->last, QFont());
  for (std::size_t i = 0; i < data->lanes.size(); ++i) {
    const auto& box = layout.lanes()[i];
    for (const auto& s : data->lanes[i].series) {
      for (const auto* band : {&s.past, &s.ahead, &s.other}) {
        for (const auto& p : *band) {
          EXPECT_GE(box.yOf(p.high), box.rect.top() - 1e-6);
          EXPECT_LE(box.yOf(p.low), box.rect.bottom() + 1e-6);
        }
      }
    }
  }
  // Lanes stand one under the other inside the drawing.
  double bottom = 0;
  for (const auto& box : layout.lanes()) {
    EXPECT_GE(box.rect.top(), bottom);
    bottom = box.rect.bottom();
  }
  EXPECT_LE(layout.axis().bottom(), area.bottom() + 1);
}

TEST(CourseLayout, StepsAreRound) {
  std::vector<double> grid;
  EXPECT_DOUBLE_EQ(roundTop(0, grid), 1);
  EXPECT_GE(roundTop(23456, grid), 23456);
  EXPECT_GE(grid.size(), 3u);
  EXPECT_LE(grid.size(), 6u);
  EXPECT_DOUBLE_EQ(grid.front(), 0);
}

TEST(CourseView, PointingReadsInWords) {
  Shown s;
  QSignalSpy words(&s.view, &CourseView::wordsChanged);
  s.moveTo(day("2026-04-18"), s.view.layoutNow().lanes()[0].rect.center().y());
  ASSERT_EQ(s.view.reading(), day("2026-04-18"));
  EXPECT_TRUE(s.view.words().contains(QStringLiteral("bees seen"))) << s.view.words().toStdString();
  EXPECT_EQ(s.view.accessibleDescription(), s.view.words());
  s.moveTo(day("2026-04-18"), s.view.layoutNow().weather().center().y());
  EXPECT_TRUE(s.view.words().contains(QStringLiteral("Weather")));
  EXPECT_FALSE(s.view.words().contains(QStringLiteral("bees")));
  // Beside a journal letter the letter's day is meant.
  const auto layout = s.view.layoutNow();
  const double x = layout.xOf(day("2026-04-25")) + 4;
  QMouseEvent move(QEvent::MouseMove, QPointF(x, layout.journal().center().y()),
                   s.view.mapToGlobal(QPointF(x, 5)), Qt::NoButton, Qt::NoButton, Qt::NoModifier);
  QCoreApplication::sendEvent(&s.view, &move);
  EXPECT_TRUE(s.view.words().contains(QStringLiteral("fed 2 kg"))) << s.view.words().toStdString();
  EXPECT_GE(words.count(), 3);
}

TEST(CourseView, KeysZoomPanAndGoHome) {
  Shown s;
  const auto home = seasonDays(*s.view.data());
  EXPECT_EQ(s.view.from(), home.first);
  EXPECT_EQ(s.view.to(), home.second);
  const int wide = s.view.to() - s.view.from();
  QTest::keyClick(&s.view, Qt::Key_Plus);
  const int near = s.view.to() - s.view.from();
  EXPECT_LT(near, wide);
  const auto from = s.view.from();
  QTest::keyClick(&s.view, Qt::Key_Right);
  EXPECT_GT(s.view.from(), from);
  EXPECT_EQ(s.view.to() - s.view.from(), near);  // moving along does not zoom
  QTest::keyClick(&s.view, Qt::Key_Left);
  EXPECT_EQ(s.view.from(), from);
  QTest::keyClick(&s.view, Qt::Key_Minus);
  QTest::keyClick(&s.view, Qt::Key_Minus);
  EXPECT_GE(s.view.to() - s.view.from(), wide - 1);
  for (int i = 0; i < 40; ++i) QTest::keyClick(&s.view, Qt::Key_Plus);
  EXPECT_EQ(s.view.to() - s.view.from(), 14);  // not nearer than two weeks
  QTest::keyClick(&s.view, Qt::Key_Home);
  EXPECT_EQ(s.view.from(), home.first);
  EXPECT_EQ(s.view.to(), home.second);
  // Never beyond what is known.
  for (int i = 0; i < 40; ++i) QTest::keyClick(&s.view, Qt::Key_Right);
  EXPECT_LE(s.view.to(), s.view.data()->last);
}

TEST(CourseView, CtrlAndArrowsReadDayByDay) {
  Shown s;
  QTest::keyClick(&s.view, Qt::Key_Right, Qt::ControlModifier);
  EXPECT_EQ(s.view.reading(), s.view.data()->today);
  QTest::keyClick(&s.view, Qt::Key_Right, Qt::ControlModifier);
  EXPECT_EQ(s.view.reading(), s.view.data()->today.plusDays(1));
  EXPECT_TRUE(s.view.words().contains(QStringLiteral("bees expected")));
  QTest::keyClick(&s.view, Qt::Key_Escape);
  EXPECT_FALSE(s.view.reading());
  EXPECT_TRUE(s.view.words().isEmpty());
}

TEST(CourseView, TheWheelZoomsAboutThePointerAndDraggingMoves) {
  Shown s;
  const auto pointed = day("2026-05-02");
  const QPointF at(s.view.layoutNow().xOf(pointed), 100);
  const int wide = s.view.to() - s.view.from();
  QWheelEvent wheel(at, s.view.mapToGlobal(at), {}, {0, 240}, Qt::NoButton, Qt::NoModifier,
                    Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(&s.view, &wheel);
  EXPECT_LT(s.view.to() - s.view.from(), wide);
  EXPECT_NEAR(s.view.layoutNow().xOf(pointed), at.x(), 8);  // the day stays under the pointer
  const auto from = s.view.from();
  QTest::mousePress(&s.view, Qt::LeftButton, Qt::NoModifier, QPoint(400, 100));
  QMouseEvent drag(QEvent::MouseMove, QPointF(300, 100), s.view.mapToGlobal(QPointF(300, 100)),
                   Qt::NoButton, Qt::LeftButton, Qt::NoModifier);
  QCoreApplication::sendEvent(&s.view, &drag);
  QTest::mouseRelease(&s.view, Qt::LeftButton, Qt::NoModifier, QPoint(300, 100));
  EXPECT_GT(s.view.from(), from);
}

TEST(CourseTable, SaysTheSameAsTheDrawing) {
  CourseTable table;
  EXPECT_GE(table.columnCount(), 4);  // never none, for screen readers
  const auto data = handMade();
  table.setData(data);
  EXPECT_EQ(table.columnCount(), 4 + 5);
  const int row = table.rowNear(day("2026-04-18"));
  ASSERT_EQ(table.dayOf(row), day("2026-04-18"));
  QString all;
  for (int c = 0; c < table.columnCount(); ++c) {
    EXPECT_FALSE(table.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString().isEmpty());
    all += table.data(table.index(row, c), Qt::DisplayRole).toString() + u'\n';
  }
  for (const char* words : {"looked at", "seen 2,000", "far fewer bees", "L – looked: 4 seams"}) {
    EXPECT_TRUE(all.contains(QString::fromUtf8(words))) << words << " in " << all.toStdString();
  }
}

TEST(CourseFiles, EachKindIsWrittenAndReadsBack) {
  QTemporaryDir folder;
  const auto data = handMade();
  const auto path = [&](const char* name) { return folder.filePath(QLatin1String(name)); };
  const QSize size(1120, 640);
  for (const char* name : {"c.svg", "c.png", "c.pdf", "c.csv"}) {
    EXPECT_EQ(saveCourse(path(name), *data, data->first, data->last, size), QString()) << name;
  }
  QFile svg(path("c.svg"));
  ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
  const QByteArray drawn = svg.readAll();
  EXPECT_FALSE(drawn.contains("<image"));  // vector throughout
  EXPECT_TRUE(drawn.contains("Journal"));
  QSvgRenderer renderer(drawn);
  EXPECT_TRUE(renderer.isValid());
  const QImage png(path("c.png"));
  EXPECT_EQ(png.size(), size * 2);
  QFile pdf(path("c.pdf"));
  ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
  EXPECT_TRUE(pdf.readAll().startsWith("%PDF-"));
  QFile csv(path("c.csv"));
  ASSERT_TRUE(csv.open(QIODevice::ReadOnly));
  const QStringList lines = QString::fromUtf8(csv.readAll()).trimmed().split(u'\n');
  const auto columns = lines.first().split(u',').size();
  bool found = false;
  for (const QString& line : lines) {
    EXPECT_EQ(line.split(u',').size(), columns) << line.toStdString();
    found = found || line.startsWith(QStringLiteral("2026-04-18,estimated"));
  }
  EXPECT_TRUE(found);
}

TEST(CourseFiles, SaysWhyItCannotBeWritten) {
  const auto data = handMade();
  const QString none = saveCourse(QStringLiteral("/nowhere/at/all/c.svg"), *data, data->first,
                                  data->last, {400, 300});
  EXPECT_TRUE(none.contains(QStringLiteral("could not be written"))) << none.toStdString();
  const QString odd =
      saveCourse(QStringLiteral("course.doc"), *data, data->first, data->last, {400, 300});
  EXPECT_TRUE(odd.contains(QStringLiteral(".csv"))) << odd.toStdString();
}

TEST(CoursePainter, GreyPaperTellsTriedFromAsItIs) {
  auto data = handMade();
  const auto grey = [&](const CourseData& d) {
    QImage image(900, 480, QImage::Format_RGB32);
    image.fill(Qt::white);
    CourseStyle style;
    style.palette = &print::Palette::paper();
    style.font.setPixelSize(12);
    QPainter painter(&image);
    paintCourse(painter, QRectF(0, 0, 900, 480), d, d.first, d.last, style);
    painter.end();
    return image.convertToFormat(QImage::Format_Grayscale8);
  };
  const QImage without = grey(*data);
  data->tried = QStringLiteral("Fed");
  data->lanes[0].series[0].other = data->lanes[0].series[0].ahead;
  EXPECT_NE(grey(*data), without);
}

const base::ColonyId kColony("TR-01");

TEST(CoursePanel, ShowsAColonyAndWhatIsTriedOut) {
  tests::SeasonBuilder b;
  b.yard("TR").livingHive("TR-01", "TR");
  for (const char* date : {"2026-03-20", "2026-04-04", "2026-04-18"}) {
    b.inspection("TR-01", date, [](apiary::Inspection& i) {
      i.seams = 5;
      i.framesWithBrood = 3;
    });
  }
  tests::Desk d(b.take());
  CoursePanel panel(d.hub);
  panel.resize(900, 560);
  panel.show();
  QSignalSpy shown(&panel, &CoursePanel::shown);
  panel.showColony(kColony, QStringLiteral("TR-01"),
                   {{day("2026-04-18"), u'L', QStringLiteral("looked")}});
  EXPECT_TRUE(panel.working());
  ASSERT_TRUE(shown.wait(60000));
  const auto* data = panel.view().data();
  ASSERT_NE(data, nullptr);
  EXPECT_EQ(data->lanes[0].series[0].seen.size(), 3u);
  EXPECT_FALSE(data->lanes[0].series[0].past.empty());
  EXPECT_TRUE(data->remarks.join(u' ').contains(QStringLiteral("Of the last 2 looks")))
      << data->remarks.join(u' ').toStdString();
  EXPECT_TRUE(data->lanes[0].series[0].other.empty());
  panel.setTrial(Trial::Swarmed);
  ASSERT_TRUE(shown.wait(60000));
  data = panel.view().data();
  ASSERT_FALSE(data->lanes[0].series[0].other.empty());
  const auto soon = data->today.plusDays(21);
  EXPECT_LT(at(data->lanes[0].series[0].other, soon)->median,
            at(data->lanes[0].series[0], soon)->median);
  EXPECT_TRUE(data->remarks.first().contains(QStringLiteral("fewer")))
      << data->remarks.first().toStdString();
  panel.setTrial(Trial::Boosted);
  ASSERT_TRUE(shown.wait(60000));
  EXPECT_TRUE(panel.view().data()->remarks.first().contains(QStringLiteral("No boost is planned")));
}

TEST(CoursePanel, TheTableIsOneStepAway) {
  tests::Desk d(tests::smallSeason());
  CoursePanel panel(d.hub);
  panel.resize(900, 560);
  panel.show();
  panel.showCourse(handMade());
  EXPECT_FALSE(panel.showsTable());
  panel.findChild<QAction*>(QStringLiteral("courseAsTable"))->trigger();
  EXPECT_TRUE(panel.showsTable());
  auto* table = panel.findChild<QTableView*>(QStringLiteral("courseTable"));
  ASSERT_NE(table, nullptr);
  EXPECT_TRUE(table->isVisible());
  EXPECT_EQ(panel.table().dayOf(table->currentIndex().row()), day("2026-05-02"));
}

TEST(CoursePanel, SavesWhereItIsTold) {
  tests::Desk d(tests::smallSeason());
  CoursePanel panel(d.hub);
  panel.showCourse(handMade());
  d.dialogs.file = d.folder.filePath(QStringLiteral("course.csv"));
  panel.findChild<QAction*>(QStringLiteral("courseSave"))->trigger();
  EXPECT_TRUE(QFile::exists(d.dialogs.file));
  EXPECT_TRUE(d.dialogs.failures.isEmpty());
  d.dialogs.file = QStringLiteral("/nowhere/at/all/c.csv");
  panel.findChild<QAction*>(QStringLiteral("courseSave"))->trigger();
  EXPECT_EQ(d.dialogs.failures.size(), 1);
}

TEST(CoursePictures, LightAndDark) {
  tests::Desk d(tests::sampleSeason(), "2026-05-02");
  for (const bool dark : {false, true}) {
    CoursePanel panel(d.hub);
    panel.setPalette(dark ? widgets::darkPalette() : widgets::lightPalette());
    panel.resize(1000, 640);
    panel.show();
    QSignalSpy shown(&panel, &CoursePanel::shown);
    const auto& stays = d.hub.season().table<apiary::ColonyStay>();
    ASSERT_FALSE(stays.empty());
    base::ColonyId colony = stays.begin()->second.colony;
    std::size_t most = 0;
    for (const auto& [key, hive] : d.hub.season().table<apiary::Hive>()) {
      const auto looks = d.hub.season().journal<apiary::Inspection>(hive.hive).size();
      if (looks > most && apiary::hiveOn(d.hub.season(), hive.hive, day("2026-05-02")).status ==
                              apiary::HiveStatus::Live) {
        most = looks;
        colony = base::ColonyId(hive.hive.str());
      }
    }
    panel.showColony(colony, QString::fromStdString(colony.str()), {});
    ASSERT_TRUE(shown.wait(60000));
    panel.setTrial(Trial::Chamber);
    ASSERT_TRUE(shown.wait(60000));
    panel.view().read(day("2026-05-20"));
    const QImage image = tests::picture(
        panel, dark ? QStringLiteral("course_dark") : QStringLiteral("course_light"), {1000, 640});
    EXPECT_FALSE(image.isNull());
    tests::expectNothingCut(panel);
  }
}

}  // namespace
}  // namespace outyard::charts
