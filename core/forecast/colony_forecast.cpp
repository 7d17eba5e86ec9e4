// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/colony_forecast.h"

#include <algorithm>
#include <atomic>
#include <map>
#include <mutex>
#include <thread>

#include "core/forecast/assimilation.h"
#include "core/forecast/exact_math.h"

namespace outyard::forecast {
namespace {

using base::Date;

/// A stream for each colony, from its name: FNV-1a, so that the result does not depend on what
/// else is computed.
std::uint64_t streamOf(const std::string& name, std::uint64_t seed) {
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

/// A careful count's own error, standard deviation of the logarithm (single readers 5 to 15 % and
/// their differences: Bartlett et al. 2024), so that the band of `seen` holds counts, not truths.
constexpr double kCountError = 0.17;

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

/// The figures of one day from the ensemble at rest.
ForecastDay dayOf(const ColonyEnsemble& ce, Date date) {
  using namespace state;
  const Ensemble& e = ce.e;
  const auto n = static_cast<std::size_t>(e.members);
  std::vector<double> bees(n), seen(n), sealed(n), brood(n), honey(n), mites(n);
  for (std::size_t m = 0; m < n; ++m) {
    const auto sum = [&](int first, int count) {
      double s = 0;
      for (int k = 0; k < count; ++k) s += static_cast<double>(e.value(first + k)[m]);
      return s;
    };
    const double field = static_cast<double>(e.value(kForagers)[m]);
    bees[m] = sum(kYoung, kYoungDays) + static_cast<double>(e.value(kOlder)[m]) + field +
              static_cast<double>(e.value(kWinter)[m]);
    seen[m] = seenBees(ce, static_cast<int>(m), bees[m], field) *
              exactExp(kCountError * countNoise(e.random[m], date));
    const double read = static_cast<double>(ce.sealedRead[m]);
    sealed[m] = sum(kSealed, kSealedDays) * read;
    brood[m] = sealed[m] + (sum(kEgg, kEggDays) + sum(kOpen, kOpenDays)) * read;
    honey[m] = static_cast<double>(e.value(kHoney)[m]);
    mites[m] = static_cast<double>(e.value(kMites)[m]) + sum(kMiteCells, kSealedDays);
  }
  return {date,          bandOf(bees),  bandOf(seen), bandOf(sealed),
          bandOf(brood), bandOf(honey), bandOf(mites)};
}

/// Weather begins on one fixed day for all colonies of a yard, so that each sees the same draws.
Date weatherStart(Date from) {
  return Date::fromYmd(from.year() - 1, 1, 1).value();
}

void runTo(ColonyEnsemble& ce, const YardWeather& weather, Date& now, Date to) {
  if (to <= now) return;
  Outputs none;
  runDays(ce.e, weather.drivers, now - weather.from, to - weather.from, {}, none);
  now = to;
}

}  // namespace

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

ColonyForecast forecastHistory(const History& history, double latitude, const YardWeather& weather,
                               const Figures& figures, const ForecastAsk& ask) {
  ColonyForecast out;
  out.colony = history.colony;
  base::Random random(streamOf(history.colony.str(), ask.seed));
  const Date start = std::max(history.start, weather.from);
  const Look* first = nullptr;
  for (const Look& l : history.looks) {
    if (l.bees && l.date >= start) {
      first = &l;
      break;
    }
  }
  // Without anything seen in the first weeks the ensemble starts with what is usual.
  const Date begin = first && first->date - start > 60 ? first->date.plusDays(-45) : start;
  const bool near = first && first->date - begin <= 3;
  ColonyEnsemble ce =
      settledEnsemble(figures, ask.members, latitude, begin.dayOfYear(),
                      begin == history.start ? history.origin : std::nullopt,
                      near ? first : nullptr, weather.drivers, begin - weather.from, random);
  Date now = begin;
  auto look = history.looks.begin();
  auto action = history.actions.begin();
  while (look != history.looks.end() || action != history.actions.end()) {
    const bool takeLook = look != history.looks.end() &&
                          (action == history.actions.end() || look->date <= action->date);
    const Date date = takeLook ? look->date : action->date;
    if (date >= begin) runTo(ce, weather, now, date);
    if (takeLook) {
      if (date >= begin) {
        for (auto& s : assimilate(ce, *look, random)) out.surprises.push_back(s);
      }
      ++look;
    } else {
      // Boxes set before the start still say how much room there is.
      if (date >= begin || action->kind == Action::Kind::Boxes) act(ce, *action, random);
      ++action;
    }
  }
  for (Date d = ask.from; d <= ask.to;
       d = d == ask.to ? ask.to.plusDays(1) : std::min(ask.to, d.plusDays(ask.stepDays))) {
    runTo(ce, weather, now, d);
    out.days.push_back(dayOf(ce, d));
  }
  return out;
}

std::vector<ColonyForecast> forecastColonies(const apiary::Season& season,
                                             const std::vector<base::ColonyId>& colonies,
                                             const ForecastAsk& ask, int threads,
                                             base::Progress& progress) {
  const Figures figures = Figures::of(season);
  struct Job {
    History history;
    base::HiveId hive;
    double latitude = 45;
  };
  std::vector<Job> jobs;
  std::map<base::YardId, YardWeather> weather;
  for (const auto& colony : colonies) {
    const auto hive = apiary::hiveOfColony(season, colony, ask.from);
    auto history = historyOf(season, colony, ask.from);
    if (!hive || !history || history->end) continue;
    history->yard = apiary::hiveOn(season, *hive, ask.from).yard;
    const apiary::Yard* yard = season.yard(history->yard);
    const double latitude = yard ? yard->latitude.value_or(45) : 45;
    if (!weather.contains(history->yard)) {
      weather.emplace(history->yard,
                      yardWeather(season, history->yard, weatherStart(ask.from), ask, figures));
    }
    jobs.push_back({std::move(*history), *hive, latitude});
  }
  std::vector<ColonyForecast> results(jobs.size());
  std::atomic<std::size_t> next{0}, done{0};
  std::mutex reporting;
  const auto work = [&] {
    for (std::size_t i = next++; i < jobs.size() && !progress.cancelled(); i = next++) {
      const Job& job = jobs[i];
      results[i] =
          forecastHistory(job.history, job.latitude, weather.at(job.history.yard), figures, ask);
      results[i].hive = job.hive;
      const std::size_t n = ++done;
      const std::lock_guard lock(reporting);
      progress.report(static_cast<double>(n) / static_cast<double>(jobs.size()));
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
