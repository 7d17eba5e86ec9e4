// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include <QApplication>
#include <QFileInfo>
#include <QTemporaryDir>

#include "tests/core/sheet/sheet_fixture.h"
#include "ui/adapt/words.h"
#include "ui/print/font_measurer.h"
#include "ui/print/pdf_writer.h"

/// 100 yard sheets of 40 hives with two boost cards each, laid out with the real font and words and
/// written as one PDF. Asked for: under 5 s. The judgements are made before, as the window has them
/// already.
///
/// Measured as processor time (the machine was busy): 600 pages, 12 MB, 0.7 s of layout on one
/// thread and 2.9 s of painting on the other, nearly half of it compressing the PDF; together 3.6 s
/// where one thread has to do both. Before pages were painted in batches: 25 MB, 6.6 s.
namespace outyard::print {
namespace {

void sheetsToPdf(benchmark::State& state) {
  static int count = 0;
  static char name[] = "bench";
  static char* names[] = {name, nullptr};
  if (!QCoreApplication::instance()) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    count = 1;
    new QApplication(count, names);  // lives as long as the program
  }
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("sheets.pdf"));
  sheet::fixture::Wish wish;
  wish.hives = 40;
  wish.boosts = 2;
  const auto yard = sheet::fixture::makeYard(wish);
  const auto sheets = static_cast<std::size_t>(state.range(0));
  std::size_t pages = 0;
  base::Progress quiet;
  for (auto _ : state) {
    const FontMeasurer measurer;
    const auto written = writeSheets(
        sheets,
        [&](std::size_t) -> base::Result<sheet::YardSheet> {
          return sheet::layoutJudgedSheet(yard.input(sheet::Paper::A4, measurer, adapt::wordsUtf8),
                                          yard.judgements);
        },
        path, quiet);
    if (!written) {
      state.SkipWithError("not written");
    } else {
      pages = written->pages;
    }
  }
  state.counters["pages"] = static_cast<double>(pages);
  state.counters["bytes"] = static_cast<double>(QFileInfo(path).size());
}
BENCHMARK(sheetsToPdf)->Arg(100)->Unit(benchmark::kSecond)->UseRealTime()->Iterations(3);

}  // namespace
}  // namespace outyard::print
