// SPDX-License-Identifier: GPL-3.0-or-later
#include <benchmark/benchmark.h>

#include <string>

#include "core/forecast/expected.h"
#include "tests/support/season_builder.h"

/// What the forecasts of the window cost: the one copy of the season when it is opened, one yard
/// after an entry, the course of one hive.
namespace outyard::forecast {
namespace {

constexpr int kYards = 50;

/// An outfit of `colonies` in 50 yards with 12 looks each.
apiary::Season outfit(int colonies) {
  tests::SeasonBuilder b;
  for (int y = 0; y < kYards; ++y) b.yard("Y" + std::to_string(y));
  for (int c = 0; c < colonies; ++c) {
    const std::string id = "H" + std::to_string(c);
    b.livingHive(id, "Y" + std::to_string(c % kYards), 1.0 + c / kYards, 2);
    for (int look = 0; look < 12; ++look) {
      const auto day = tests::day("2025-05-01").plusDays(look < 8 ? 14 * look : 30 * look);
      b.inspection(id, day.iso().c_str(), [&](apiary::Inspection& i) {
        i.seams = 3 + (c + look) % 7;
        i.framesWithBrood = 2 + (c + look) % 5;
      });
    }
  }
  return b.take();
}

void copySeason(benchmark::State& state) {
  const auto season = outfit(static_cast<int>(state.range(0)));
  for (auto _ : state) {
    const apiary::Season copy = season;
    benchmark::DoNotOptimize(copy.revision());
  }
}
// Once, when a season is opened; afterwards the worker's season follows the changes.
BENCHMARK(copySeason)->Arg(400)->Arg(2000)->Unit(benchmark::kMillisecond);

// Asked for: one yard after an entry in under 200 ms. Of a yard of 40 the colonies that the entry
// touched are worked out anew; the others are kept.
void recomputeYard(benchmark::State& state) {
  const auto season = outfit(40 * kYards);
  const auto today = tests::day("2026-04-25");
  base::Progress quiet;
  ForecastAsk ask;
  ask.from = today;
  ask.to = today.plusDays(366);
  auto touched = coloniesIn(season, base::YardId("Y7"), today);
  touched.resize(static_cast<std::size_t>(state.range(0)));
  for (auto _ : state) {
    const auto found =
        forecastColonies(season, touched, ask, static_cast<int>(state.range(1)), quiet);
    benchmark::DoNotOptimize(found.size());
  }
}
BENCHMARK(recomputeYard)
    ->Args({1, 1})
    ->Args({5, 1})
    ->Args({40, 1})
    ->Args({40, 2})
    ->Unit(benchmark::kMillisecond);

void courseOfAHive(benchmark::State& state) {
  const auto season = outfit(kYards);
  ForecastAsk ask;
  ask.from = tests::day("2026-04-25");
  ask.to = ask.from.plusDays(365);
  ask.stepDays = 3;
  ask.pastFrom = ask.from.plusDays(-420);
  base::Progress quiet;
  for (auto _ : state) {
    const auto found = forecastColonies(season, {base::ColonyId("H7")}, ask, 1, quiet);
    benchmark::DoNotOptimize(found.size());
  }
}
BENCHMARK(courseOfAHive)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace outyard::forecast
