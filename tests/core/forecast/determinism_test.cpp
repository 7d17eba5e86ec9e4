// SPDX-License-Identifier: GPL-3.0-or-later
// Same season, same seed, same bits: on one and on two threads and on every vector path.
#include <gtest/gtest.h>

#include <cstring>

#include "core/forecast/colony_forecast.h"
#include "tests/support/season_builder.h"

namespace outyard::forecast {
namespace {

using tests::day;

apiary::Season yards() {
  tests::SeasonBuilder b(3);
  b.yard("N").yard("S");
  for (int i = 0; i < 9; ++i) {
    const std::string hive = (i < 5 ? "N-" : "S-") + std::to_string(i);
    b.livingHive(hive, i < 5 ? "N" : "S", 1 + i, 1, 1 + i % 2);
    for (const char* date : {"2026-04-12", "2026-05-03", "2026-05-24"}) {
      b.inspection(hive, date, [&](apiary::Inspection& look) {
        look.beeFrames = 2 + i;
        look.broodFrames = 1 + i / 2.0;
        look.eggsSeen = true;
      });
    }
  }
  return b.take();
}

/// Every number of every forecast, as it lies in memory.
std::vector<double> numbers(const std::vector<ColonyForecast>& all) {
  std::vector<double> out;
  for (const auto& f : all) {
    for (const auto& d : f.days) {
      for (const Band& b : {d.bees, d.seen, d.sealed, d.brood, d.honeyKg, d.mites}) {
        out.insert(out.end(), {b.median, b.low, b.high});
      }
    }
    for (const auto& s : f.surprises) out.insert(out.end(), {s.expected, s.seen});
  }
  return out;
}
bool sameBits(const std::vector<double>& a, const std::vector<double>& b) {
  return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0;
}

TEST(Determinism, ThreadsAndVectorPathsGiveTheSameBits) {
  const apiary::Season season = yards();
  std::vector<base::ColonyId> colonies;
  for (int i = 0; i < 9; ++i) {
    colonies.emplace_back((i < 5 ? "N-" : "S-") + std::to_string(i));
  }
  ForecastAsk ask;
  ask.from = day("2026-05-30");
  ask.to = day("2026-09-30");
  base::Progress progress;
  ASSERT_TRUE(usePath("baseline"));
  const auto first = numbers(forecastColonies(season, colonies, ask, 1, progress));
  ASSERT_GT(first.size(), 9U * 18U * 10U);
  for (const auto path : availablePaths()) {
    ASSERT_TRUE(usePath(path));
    for (const int threads : {1, 2}) {
      const auto now = numbers(forecastColonies(season, colonies, ask, threads, progress));
      EXPECT_TRUE(sameBits(first, now)) << path << ", threads " << threads;
    }
  }
  usePath(availablePaths().front());
  // One colony alone is what it is among the others; another seed is another forecast.
  const auto alone = forecastColony(season, colonies[4], ask);
  ASSERT_TRUE(alone);
  const auto all = forecastColonies(season, colonies, ask, 2, progress);
  EXPECT_TRUE(sameBits(numbers({*alone}), numbers({all[4]})));
  ForecastAsk other = ask;
  other.seed = 2;
  EXPECT_FALSE(sameBits(first, numbers(forecastColonies(season, colonies, other, 1, progress))));
}

}  // namespace
}  // namespace outyard::forecast
