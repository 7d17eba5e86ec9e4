// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/colony_forecast.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <cstring>
#include <map>
#include <mutex>
#include <thread>

#include "core/forecast/assimilation.h"
#include "core/forecast/colony_run.h"
#include "core/forecast/exact_math_wide.h"
#include "core/forecast/past_run.h"
#include "core/forecast/rank_columns.h"

namespace outyard::forecast {
namespace {

using base::Date;

}  // namespace

std::uint64_t streamOf(std::string_view name, std::uint64_t seed) {
  std::uint64_t h = 1469598103934665603ULL ^ (seed * 0x9e3779b97f4a7c15ULL);
  for (const char c : name) {
    h ^= static_cast<unsigned char>(c);
    h *= 1099511628211ULL;
  }
  return h;
}

Band bandOf(std::vector<double>& values) {
  const auto at = [&](double p) {
    const auto k = static_cast<std::ptrdiff_t>(p * static_cast<double>(values.size() - 1) + 0.5);
    std::nth_element(values.begin(), values.begin() + k, values.end());
    return values[static_cast<std::size_t>(k)];
  };
  return {at(0.5), at(0.1), at(0.9)};
}

namespace {

/// Near-normal, standard deviation 1, from a member's stream without moving it.
double countNoise(std::uint32_t stream, Date date) {
  std::uint32_t x = stream ^ (static_cast<std::uint32_t>(date.days()) * 2654435761U);
  x ^= x >> 16;
  x *= 0x85ebca6bU;
  x ^= x >> 13;
  x *= 0xc2b2ae35U;
  x ^= x >> 16;
  const std::uint32_t sum = (x & 0xFFU) + ((x >> 8) & 0xFFU) + ((x >> 16) & 0xFFU) + (x >> 24);
  return (static_cast<double>(sum) - 510.0) / 147.8;
}

}  // namespace

namespace {

using Four = float __attribute__((vector_size(16)));
Four loadFour(const float* p) {
  Four v;
  std::memcpy(&v, p, sizeof v);
  return v;
}
void storeFour(float* p, Four v) {
  std::memcpy(p, &v, sizeof v);
}

}  // namespace

MemberDay membersOn(const ColonyEnsemble& ce, Date date) {
  using namespace state;
  const Ensemble& e = ce.e;
  const auto n = static_cast<std::size_t>(e.members);
  MemberDay out;
  out.date = date;
  for (auto* v : {&out.bees, &out.seen, &out.sealed, &out.brood, &out.honeyKg, &out.mites,
                  &out.mitesPer100}) {
    v->resize(n);
  }
  const auto add = [&](std::vector<float>& to, int first, int count) {
    for (int k = 0; k < count; ++k) {
      const float* x = e.value(first + k);
      for (std::size_t m = 0; m < n; m += 4) storeFour(&to[m], loadFour(&to[m]) + loadFour(x + m));
    }
  };
  add(out.bees, kYoung, kYoungDays + 3);  // older, foragers and winter bees follow
  static_assert(kOlder == kYoung + kYoungDays && kForagers == kOlder + 1 && kWinter == kOlder + 2);
  add(out.sealed, kSealed, kSealedDays);
  add(out.brood, kEgg, kEggDays + kOpenDays + kSealedDays);
  add(out.mites, kMites, 1);
  for (std::size_t m = 0; m < n; ++m) {
    out.mitesPer100[m] = 100.0F * out.mites[m] / (out.bees[m] + 1.0F);
  }
  add(out.mites, kMiteCells, kSealedDays);
  add(out.honeyKg, kHoney, 1);
  for (std::size_t m = 0; m < n; m += 2) {
    const Pair noise{countNoise(e.random[m], date), countNoise(e.random[m + 1], date)};
    const Pair factor = exactExp(kCountError * noise);
    for (std::size_t i = m; i < m + 2; ++i) {
      out.seen[i] =
          static_cast<float>(seenBees(ce, static_cast<int>(i), static_cast<double>(out.bees[i]),
                                      static_cast<double>(e.value(kForagers)[i])) *
                             factor[static_cast<int>(i - m)]);
      out.sealed[i] *= ce.sealedRead[i];
      out.brood[i] *= ce.sealedRead[i];
    }
  }
  return out;
}

ForecastDay bandsOf(const MemberDay& day) {
  const std::size_t n = day.bees.size();
  const auto at = [n](double p) {
    return static_cast<std::size_t>(p * static_cast<double>(n - 1) + 0.5);
  };
  const std::array columns{day.bees.data(),       day.seen.data(),    day.sealed.data(),
                           day.brood.data(),      day.honeyKg.data(), day.mites.data(),
                           day.mitesPer100.data()};
  const auto found = ranked(columns, n, {at(0.5), at(0.1), at(0.9)});
  const auto band = [&](std::size_t c) {
    return Band{static_cast<double>(found[c][0]), static_cast<double>(found[c][1]),
                static_cast<double>(found[c][2])};
  };
  return {day.date, band(0), band(1), band(2), band(3), band(4), band(5), band(6)};
}

namespace {

ForecastDay dayOf(const ColonyEnsemble& ce, Date date) {
  return bandsOf(membersOn(ce, date));
}

}  // namespace

Date weatherStart(Date from) {
  return Date::fromYmd(from.year() - 1, 1, 1).value();
}

void runTo(ColonyEnsemble& ce, const YardWeather& weather, Date& now, Date to) {
  if (to <= now) return;
  Outputs none;
  runDays(ce.e, weather.drivers, now - weather.from, to - weather.from, {}, none);
  now = to;
}

YardWeather yardWeather(const apiary::Season& season, const base::YardId& yard, base::Date start,
                        const ForecastAsk& ask, const Figures& figures) {
  const WeatherAsk w{yard, start, ask.to.plusDays(1), ask.from, ask.knownWeather, ask.seed};
  const WeatherPaths paths = WeatherPaths::of(season, w);
  return {start, makeDrivers(season, yard, paths, figures, ask.seed)};
}

std::optional<ColonyForecast> forecastColony(const apiary::Season& season,
                                             const base::ColonyId& colony, const ForecastAsk& ask) {
  base::Progress progress;
  auto all = forecastColonies(season, {colony}, ask, 1, progress);
  if (all.empty()) return std::nullopt;
  return std::move(all.front());
}

namespace {

/// The courses of a job's colonies from ask.from on.
std::vector<ColonyForecast> forecastJob(const LinkedJob& job,
                                        const std::map<base::YardId, YardWeather>& weather,
                                        const Figures& figures, const ForecastAsk& ask) {
  std::vector<ColonyForecast> out;
  LinkedRuns linked(job, weather, figures, ask, out);
  linked.group->to(ask.from);
  if (ask.leftAlone) {
    for (PastRun& run : linked.runs) {
      Ensemble& e = run.ensemble().e;
      std::fill_n(e.param(Param::KeeperFeeds), ask.members, 0.0F);
      std::fill_n(e.param(Param::KeeperTreats), ask.members, 1e9F);
    }
  }
  for (Date d = ask.from; d <= ask.to;
       d = d == ask.to ? ask.to.plusDays(1) : std::min(ask.to, d.plusDays(ask.stepDays))) {
    linked.group->to(d);
    for (std::size_t k = 0; k < out.size(); ++k) {
      if (job.slots[k]) out[k].days.push_back(dayOf(linked.runs[k].ensemble(), d));
    }
  }
  return out;
}

}  // namespace

ColonyForecast forecastHistory(const History& history, double latitude, const YardWeather& weather,
                               const Figures& figures, const ForecastAsk& ask) {
  LinkedJob job{{history}, {latitude}, {std::size_t{0}}};
  std::map<base::YardId, YardWeather> all;
  all.emplace(history.yard, weather);
  return std::move(forecastJob(job, all, figures, ask).front());
}

std::vector<ColonyForecast> forecastColonies(const apiary::Season& season,
                                             const std::vector<base::ColonyId>& colonies,
                                             const ForecastAsk& ask, int threads,
                                             base::Progress& progress) {
  const Figures figures = Figures::of(season);
  const LinkedJobs linked = linkedJobs(season, colonies, ask, figures);
  std::vector<ColonyForecast> results(linked.colonies.size());
  std::atomic<std::size_t> next{0}, done{0};
  std::mutex reporting;
  const auto work = [&] {
    for (std::size_t i = next++; i < linked.jobs.size() && !progress.cancelled(); i = next++) {
      const LinkedJob& job = linked.jobs[i];
      auto found = forecastJob(job, linked.weather, figures, ask);
      for (std::size_t k = 0; k < found.size(); ++k) {
        if (!job.slots[k]) continue;
        found[k].hive = linked.hives[*job.slots[k]];
        results[*job.slots[k]] = std::move(found[k]);
      }
      const std::size_t n = ++done;
      const std::lock_guard lock(reporting);
      progress.report(static_cast<double>(n) / static_cast<double>(linked.jobs.size()));
    }
  };
  std::vector<std::thread> pool;
  for (int t = 1; t < threads; ++t) pool.emplace_back(work);
  work();
  for (auto& t : pool) t.join();
  if (progress.cancelled()) return {};
  return results;
}

}  // namespace outyard::forecast
