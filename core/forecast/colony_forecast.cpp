// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/colony_forecast.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <map>
#include <mutex>
#include <thread>

#include "core/forecast/assimilation.h"
#include "core/forecast/colony_run.h"
#include "core/forecast/exact_math.h"
#include "core/forecast/past_run.h"

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

MemberDay membersOn(const ColonyEnsemble& ce, Date date) {
  using namespace state;
  const Ensemble& e = ce.e;
  const auto n = static_cast<std::size_t>(e.members);
  MemberDay out;
  out.date = date;
  for (auto* v : {&out.bees, &out.seen, &out.sealed, &out.brood, &out.honeyKg, &out.mites}) {
    v->resize(n);
  }
  for (std::size_t m = 0; m < n; ++m) {
    const auto sum = [&](int first, int count) {
      double s = 0;
      for (int k = 0; k < count; ++k) s += static_cast<double>(e.value(first + k)[m]);
      return s;
    };
    const double field = static_cast<double>(e.value(kForagers)[m]);
    const double bees = sum(kYoung, kYoungDays) + static_cast<double>(e.value(kOlder)[m]) + field +
                        static_cast<double>(e.value(kWinter)[m]);
    out.bees[m] = static_cast<float>(bees);
    out.seen[m] = static_cast<float>(seenBees(ce, static_cast<int>(m), bees, field) *
                                     exactExp(kCountError * countNoise(e.random[m], date)));
    const double read = static_cast<double>(ce.sealedRead[m]);
    const double sealed = sum(kSealed, kSealedDays) * read;
    out.sealed[m] = static_cast<float>(sealed);
    out.brood[m] =
        static_cast<float>(sealed + (sum(kEgg, kEggDays) + sum(kOpen, kOpenDays)) * read);
    out.honeyKg[m] = e.value(kHoney)[m];
    out.mites[m] =
        static_cast<float>(static_cast<double>(e.value(kMites)[m]) + sum(kMiteCells, kSealedDays));
  }
  return out;
}

ForecastDay bandsOf(const MemberDay& day) {
  const auto band = [](const std::vector<float>& values) {
    std::vector<double> copy(values.begin(), values.end());
    return bandOf(copy);
  };
  return {day.date,        band(day.bees),    band(day.seen), band(day.sealed),
          band(day.brood), band(day.honeyKg), band(day.mites)};
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
