// SPDX-License-Identifier: GPL-3.0-or-later
// The forecast's kernel against the same model in numpy (whole arrays, float32), one core, one run:
// 1,000 colonies of 256 members over 120 days. Each path prints how many times faster than numpy
// it is, once the medians agree within 1 %; a path that the processor lacks is not measured.
// Wanted: 16 times on AVX-512, 8 on AVX2, 4 on the baseline; 150 MB for all ensembles.
// Seen on a 2.6 GHz server core: 16.4 to 17.5, 11.5 and 5.2 times; two threads 1.9 times; 87 MB.
#include <benchmark/benchmark.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <thread>

#include "core/forecast/assimilation.h"

namespace outyard::forecast {
namespace {

constexpr int kColonies = 1000, kDays = 120, kRuns = 5;

/// One ensemble a colony, as the program holds them; side by side they are numpy's whole arrays.
struct Case {
  std::vector<Ensemble> start;
  Drivers drivers;
};

/// An April in 44 degrees north from the shipped figures, colonies as usual for the day.
const Case& made() {
  static const Case all = [] {
    Case c;
    apiary::Season season;
    apiary::Yard yard;
    yard.yard = base::YardId("Y");
    yard.latitude = 44;
    const auto row = apiary::toRow(yard);
    season.apply({apiary::Change{row.table, apiary::rowKey(row), std::nullopt, row}});
    ForecastAsk ask;
    ask.from = base::Date::parse("2026-04-15").value();
    ask.to = ask.from.plusDays(kDays);
    const auto weather = yardWeather(season, yard.yard, ask.from, ask, Figures::shipped());
    c.drivers = weather.drivers;
    for (int colony = 0; colony < kColonies; ++colony) {
      base::Random random(static_cast<std::uint64_t>(colony) + 1);
      const ColonyEnsemble one = startEnsemble(Figures::shipped(), kMembers, 44,
                                               ask.from.dayOfYear(), std::nullopt, nullptr, random);
      c.start.push_back(one.e);
    }
    return c;
  }();
  return all;
}

struct Medians {
  double bees = 0, sealed = 0, honey = 0;
};
Medians mediansOf(const std::vector<Outputs>& outs) {
  const auto of = [&](Out what) {
    std::vector<float> v;
    for (const Outputs& out : outs) {
      v.insert(v.end(), out.at(0, what), out.at(0, what) + out.members);
    }
    const auto middle = v.begin() + static_cast<std::ptrdiff_t>(v.size() / 2);
    std::nth_element(v.begin(), middle, v.end());
    return static_cast<double>(*middle);
  };
  return {of(Out::Bees), of(Out::Sealed), of(Out::Honey)};
}

double g_numpySeconds = 0;
Medians g_numpy;

/// The order of the parameters and of what stands in the state after the rings of brood and young
/// bees, under the names of the script.
constexpr const char* kNames =
    "queen cover shell care fill s_egg s_open s_sealed d_house d_winter d_hour d_day recruit slope "
    "young_share income use nest supers mite_growth immigration swarm_draw fail_draw requeen ";

void numpy(benchmark::State& state) {
  namespace fs = std::filesystem;
  const Case& c = made();
  const fs::path folder = fs::temp_directory_path() / ("outyard-numpy-" + std::to_string(getpid()));
  fs::create_directories(folder);
  const auto dump = [&](const char* name, const void* data, std::size_t bytes) {
    std::ofstream(folder / name, std::ios::binary)
        .write(static_cast<const char*>(data), static_cast<std::streamsize>(bytes));
  };
  const auto whole = [&](std::vector<float> Ensemble::*rows, int count) {
    std::vector<float> out;
    for (int r = 0; r < count; ++r) {
      for (const Ensemble& e : c.start) {
        const auto from = (e.*rows).begin() + static_cast<std::ptrdiff_t>(r) * kMembers;
        out.insert(out.end(), from, from + kMembers);
      }
    }
    return out;
  };
  const auto params = whole(&Ensemble::params, kParams);
  const auto states = whole(&Ensemble::values, state::kCount);
  std::vector<std::uint32_t> random;
  for (const Ensemble& e : c.start) random.insert(random.end(), e.random.begin(), e.random.end());
  dump("params", params.data(), params.size() * 4);
  dump("values", states.data(), states.size() * 4);
  dump("random", random.data(), random.size() * 4);
  dump("drivers", c.drivers.values.data(), static_cast<std::size_t>(kDays) * kDrivers * kBlock * 4);
  std::ofstream names(folder / "names");
  // Keep in step with Param and state in kernel.h; the medians would differ otherwise.
  const std::array<std::pair<Param, const char*>, 5> late{{{Param::KeeperFeeds, "keeper_feeds"},
                                                           {Param::KeeperTreats, "keeper_treats"},
                                                           {Param::NoiseLay, "noise_lay"},
                                                           {Param::NoiseLife, "noise_life"},
                                                           {Param::EclosionHalf, "half"}}};
  std::array<std::string, static_cast<std::size_t>(kParams)> order;
  std::istringstream early(kNames);
  for (std::size_t i = 0; early >> order[i];) ++i;
  for (const auto& [p, name] : late) order[static_cast<std::size_t>(p)] = name;
  for (const auto& name : order) names << name << ' ';
  std::vector<std::pair<int, const char*>> values{
      {state::kOlder, "older"},         {state::kForagers, "foragers"},
      {state::kWinter, "winter"},       {state::kHoney, "honey"},
      {state::kPollen, "pollen"},       {state::kMites, "mites"},
      {state::kMiteCells, "miteCells"}, {state::kRidden, "ridden"},
      {state::kQueenless, "queenless"}, {state::kSwarmHazard, "swarm"},
      {state::kFailHazard, "fail"},     {state::kErrorLay, "errorLay"},
      {state::kErrorLife, "errorLife"}};
  std::sort(values.begin(), values.end());
  names << '\n';
  for (const auto& [at, name] : values) names << name << ' ';
  names << state::kCount << '\n';
  names.close();
  std::string out;
  for (const char* python : {"python3", "/usr/bin/python3"}) {
    if (std::system((std::string(python) + " -c 'import numpy' >/dev/null 2>&1").c_str()) != 0) {
      continue;
    }
    // One core for both: numpy's own threads are held back.
    const std::string command = "OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1 " + std::string(python) +
                                " '" + OUTYARD_SOURCE_DIR "/tests/bench/forecast_numpy.py' '" +
                                folder.string() + "' " + std::to_string(kColonies * kMembers) +
                                ' ' + std::to_string(kDays) + ' ' + std::to_string(kRuns);
    if (FILE* pipe = popen(command.c_str(), "r")) {
      char buffer[512];
      while (fgets(buffer, sizeof buffer, pipe)) out += buffer;
      pclose(pipe);
    }
    break;
  }
  fs::remove_all(folder);
  std::istringstream in(out);
  if (!(in >> g_numpySeconds >> g_numpy.bees >> g_numpy.sealed >> g_numpy.honey)) {
    state.SkipWithError("python3-numpy is not there: no peer");
    for (auto _ : state) {
    }
    return;
  }
  for (auto _ : state) state.SetIterationTime(g_numpySeconds);
  state.counters["median_bees"] = g_numpy.bees;
}
BENCHMARK(numpy)
    ->Name("forecast/numpy_peer")
    ->UseManualTime()
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);

void path(benchmark::State& state, const char* name) {
  if (!usePath(name)) {
    state.SkipWithError("not measured: this processor does not have it");
    for (auto _ : state) {
    }
    return;
  }
  const Case& c = made();
  double best = 1e9;
  std::vector<Outputs> out(kColonies);
  const std::array<int, 1> asked{kDays};
  for (auto _ : state) {
    state.PauseTiming();
    std::vector<Ensemble> all = c.start;
    state.ResumeTiming();
    const auto begun = std::chrono::steady_clock::now();
    for (std::size_t i = 0; i < all.size(); ++i) {
      runDays(all[i], c.drivers, 0, kDays, asked, out[i]);
    }
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begun;
    best = std::min(best, took.count());
  }
  usePath(availablePaths().front());
  const Medians m = mediansOf(out);
  state.counters["best_ms"] = best * 1000;
  double bytes = 0;
  for (const Ensemble& e : c.start) {
    bytes += static_cast<double>((e.params.size() + e.values.size() + e.random.size()) * 4);
  }
  state.counters["megabytes"] = bytes / 1e6;
  if (g_numpySeconds <= 0) return;
  const auto apart = [](double a, double b) { return std::abs(a - b) > 0.01 * std::abs(b); };
  if (apart(m.bees, g_numpy.bees) || apart(m.sealed, g_numpy.sealed) ||
      apart(m.honey, g_numpy.honey)) {
    state.SkipWithError(("the medians differ from numpy's: " + std::to_string(m.bees) + " and " +
                         std::to_string(g_numpy.bees))
                            .c_str());
    return;
  }
  state.counters["times_numpy"] = g_numpySeconds / best;
}
BENCHMARK_CAPTURE(path, avx512, "avx512")->Iterations(kRuns)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(path, avx2, "avx2")->Iterations(kRuns)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(path, baseline, "baseline")->Iterations(kRuns)->Unit(benchmark::kMillisecond);

/// Colonies shared between threads, as the window and the verbs do it.
void threads(benchmark::State& state) {
  const Case& c = made();
  const auto count = static_cast<std::size_t>(state.range(0));
  for (auto _ : state) {
    state.PauseTiming();
    std::vector<Ensemble> all = c.start;
    state.ResumeTiming();
    std::vector<std::thread> pool;
    for (std::size_t t = 0; t < count; ++t) {
      pool.emplace_back([&all, &c, t, count] {
        Outputs out;
        for (std::size_t i = t; i < all.size(); i += count) {
          runDays(all[i], c.drivers, 0, kDays, {}, out);
        }
      });
    }
    for (auto& t : pool) t.join();
  }
}
BENCHMARK(threads)
    ->Name("forecast/threads")
    ->Arg(1)
    ->Arg(2)
    ->UseRealTime()
    ->Iterations(kRuns)
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace outyard::forecast
