// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include <QApplication>
#include <QGraphicsScene>
#include <QGraphicsView>
#include <QImage>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QTemporaryDir>

#include "tests/support/season_builder.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/session_model.h"
#include "ui/yards/yard_map.h"

/// The yard map with 300 hives in the yard and 2,000 in the season, 1,200 x 800 pixels, painted
/// offscreen by software. Asked for: a repaint in at most 16 ms, a step of a dragged hive with what
/// it repaints in at most 4 ms. A plain scene of 1,000 items is painted in the same run, so that
/// the numbers of one machine can be held against another's.
///
/// Measured on 2 cores, processor time of one run on a busy machine, the program
/// built without optimisation (Qt as Debian ships it), in milliseconds: reference scene 2.6;
/// repaint zoomed out 1.3, whole yard 5.7 (138 groups), nearer 3.9, 3.0, 1.9; step of a dragged
/// hive 0.5 to 1.6; a zoom step, which lays the marks out anew, 18.
namespace outyard::yards {
namespace {

constexpr int kHere = 300, kAll = 2000;
constexpr QSize kSize(1200, 800);

class Silent : public widgets::Dialogs {
 public:
  bool question(QWidget*, const QString&, const QString&, const QString&) override { return false; }
  void inform(QWidget*, const QString&, const QString&) override {}
  void failure(QWidget*, const QString&, const QString&) override {}
  bool run(QDialog&) override { return false; }
  QString openFile(QWidget*, const QString&, const QString&) override { return {}; }
  QString saveFile(QWidget*, const QString&, const QString&, const QString&) override { return {}; }
  QString chooseFolder(QWidget*, const QString&) override { return {}; }
};

QApplication& application() {
  static int count = 1;
  static char name[] = "outyard_bench";
  static char* arguments[] = {name, nullptr};
  static QApplication app = [] {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    return QApplication(count, arguments);
  }();
  return app;
}

apiary::Season outfit() {
  tests::SeasonBuilder b;
  b.yard("Y0").yard("Y1");
  for (int i = 0; i < kAll; ++i) {
    // Rows of 30 on pallets' distances.
    const bool here = i < kHere;
    const std::string id = (here ? "A" : "B") + std::to_string(i);
    b.livingHive(id, here ? "Y0" : "Y1", 1 + 1.6 * (i % 30), 1 + 2.2 * (i / 30 % 10), 2);
    b.inspection(id, "2026-04-10", [i](apiary::Inspection& look) { look.seams = 3 + i % 8; });
  }
  return b.take();
}

/// One map for all cases: opening the season costs more than what is measured.
struct Desk {
  Desk()
      : clock(tests::day("2026-04-25"), "2026-04-25T07:00:00Z"),
        settings(folder.filePath(QStringLiteral("desk.ini"))),
        hub(dialogs, settings, clock),
        map((open(), hub)) {
    map.resize(kSize);
    map.show();
    map.refresh();
    QCoreApplication::processEvents();
  }
  void open() {
    auto opened =
        session::Session::open(std::make_unique<tests::MemoryStore>(outfit()), ids, clock);
    hub.open(std::move(opened.value()), folder.filePath(QStringLiteral("bench.outyard")));
    hub.selectYard(base::YardId("Y0"));
  }
  static Desk& get() {
    application();
    static Desk* desk = new Desk;  // as long as the program: widgets end after the application
    return *desk;
  }

  QTemporaryDir folder;
  Silent dialogs;
  base::SeededIds ids{7};
  base::FixedClock clock;
  adapt::DeskSettings settings;
  widgets::SeasonHub hub;
  YardMap map;
};

void paintOn(QWidget& widget, QImage& image) {
  QPainter painter(&image);
  widget.render(&painter);
}

void referenceScene(benchmark::State& state) {
  application();
  QGraphicsScene scene;
  for (int i = 0; i < 1000; ++i) {
    scene.addRect(QRectF(40 * (i % 40), 30 * (i / 40), 30, 22), QPen(Qt::black), QBrush(Qt::gray));
  }
  QGraphicsView view(&scene);
  view.setRenderHint(QPainter::Antialiasing);
  view.resize(kSize);
  QImage image(kSize, QImage::Format_ARGB32_Premultiplied);
  for (auto _ : state) paintOn(*view.viewport(), image);
}
BENCHMARK(referenceScene)->Unit(benchmark::kMillisecond);

/// The argument: how much nearer than the whole yard, in hundredths.
void repaint(benchmark::State& state) {
  auto& map = Desk::get().map;
  map.fit();
  map.zoomBy(static_cast<double>(state.range(0)) / 100);
  QImage image(kSize, QImage::Format_ARGB32_Premultiplied);
  for (auto _ : state) paintOn(*map.viewport(), image);
  state.counters["pxPerMetre"] = map.pxPerMetre();
  state.counters["groups"] = map.groupCount();
}
BENCHMARK(repaint)->Arg(30)->Arg(100)->Arg(140)->Arg(200)->Arg(400)->Unit(benchmark::kMillisecond);

void zoomStep(benchmark::State& state) {
  auto& map = Desk::get().map;
  map.fit();
  bool in = true;
  for (auto _ : state) {
    map.zoomBy(in ? 1.25 : 0.8);
    in = !in;
  }
}
BENCHMARK(zoomStep)->Unit(benchmark::kMillisecond);

void dragStep(benchmark::State& state) {
  auto& desk = Desk::get();
  auto& map = desk.map;
  map.fit();
  map.zoomBy(static_cast<double>(state.range(0)) / 100);
  map.setArranging(true);
  auto* viewport = map.viewport();
  QPoint at;
  for (const auto& id : map.order()) {
    at = map.markCentre(id);
    if (map.item(id)->isVisible() && viewport->rect().adjusted(200, 200, -200, -200).contains(at)) {
      break;
    }
  }
  const auto send = [&](QEvent::Type type, QPoint point, Qt::MouseButton button) {
    QMouseEvent event(type, point, viewport->mapToGlobal(point), button, Qt::LeftButton,
                      Qt::NoModifier);
    QCoreApplication::sendEvent(viewport, &event);
  };
  send(QEvent::MouseButtonPress, at, Qt::LeftButton);
  int step = 0;
  for (auto _ : state) {
    ++step;
    send(QEvent::MouseMove, at + QPoint(20 + step % 60, 20 + step % 40), Qt::NoButton);
    QCoreApplication::processEvents();  // what the step repaints
  }
  QKeyEvent escape(QEvent::KeyPress, Qt::Key_Escape, Qt::NoModifier);
  QCoreApplication::sendEvent(&map, &escape);
  send(QEvent::MouseButtonRelease, at, Qt::LeftButton);
  map.setArranging(false);
}
BENCHMARK(dragStep)->Arg(100)->Arg(200)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace outyard::yards
