// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include <map>
#include <stdexcept>
#include <string>

#include "core/exchange/tables.h"

namespace outyard::exchange {
namespace {

using Files = std::map<std::string, std::string>;

/// An outfit of 1,000 hives in 20 yards with `rows` inspections spread over them.
Files outfit(int rows) {
  constexpr int kHives = 1000;
  constexpr int kYards = 20;
  std::string yards = "yard\n", hives = "hive,yard,x_m,y_m\n";
  std::string looks =
      "hive,date,time,air_c,seams,bee_frames,sealed_brood_frames,open_brood_frames,eggs_seen,"
      "queen_seen,pattern,honey_kg,temper,reader,notes\n";
  for (int y = 0; y < kYards; ++y) yards += "Y" + std::to_string(y) + "\n";
  for (int h = 0; h < kHives; ++h) {
    hives += "H" + std::to_string(h) + ",Y" + std::to_string(h % kYards) + "," +
             std::to_string(h / kYards) + ",2\n";
  }
  const auto first = base::Date::fromYmd(2025, 3, 1).value();
  for (int i = 0; i < rows; ++i) {
    looks += "H" + std::to_string(i % kHives) + "," + first.plusDays(i / kHives * 7).iso() +
             ",10:15,14.5," + std::to_string(i % 10) +
             ".25,4.5,2.25,1.5,1,0,4,12.5,2,KR,"
             "\"drawn comb at the wall, brood even\"\n";
  }
  return {{"yards.csv", yards}, {"hives.csv", hives}, {"inspections.csv", looks}};
}

void importInspections(benchmark::State& state) {
  const MemorySource source(outfit(static_cast<int>(state.range(0))));
  const auto today = base::Date::fromYmd(2026, 4, 25).value();
  base::Progress quiet;
  for (auto _ : state) {
    const auto result = planImport({}, source, today, quiet);
    if (!result.ok()) throw std::logic_error("the tables of the benchmark are at fault");
    benchmark::DoNotOptimize(result.changes.size());
  }
  state.SetItemsProcessed(state.iterations() * state.range(0));
}
// Asked for: 50,000 inspections in under 5 seconds.
BENCHMARK(importInspections)->Arg(5000)->Arg(50000)->Unit(benchmark::kMillisecond);

void exportInspections(benchmark::State& state) {
  const MemorySource source(outfit(static_cast<int>(state.range(0))));
  base::Progress quiet;
  apiary::Season season;
  season.apply(planImport({}, source, base::Date::fromYmd(2026, 4, 25).value(), quiet).changes);
  for (auto _ : state) {
    MemorySink sink;
    if (!exportTables(season, sink, quiet)) throw std::logic_error("memory refused a table");
    benchmark::DoNotOptimize(sink.files().size());
  }
  state.SetItemsProcessed(state.iterations() * state.range(0));
}
BENCHMARK(exportInspections)->Arg(50000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace outyard::exchange

BENCHMARK_MAIN();
