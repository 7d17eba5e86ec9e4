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

/// What a look was expected to give, with its own error in place of a careful count's.
LookCheck checkOf(const ColonyEnsemble& ce, const Look& look, int daysSince) {
  LookCheck check{look.date, dayOf(ce, look.date).seen, look.bees->median, daysSince};
  Band& b = check.expected;
  if (b.low <= 0 || b.median <= 0) return check;
  constexpr double kTenPercentPoint = 1.2816;
  const auto wider = [&](double edge) {
    const double sigma = exactLog(edge / b.median) / kTenPercentPoint;
    const double other = look.bees->sigmaLog * look.bees->sigmaLog - kCountError * kCountError;
    const double both = std::sqrt(std::max(sigma * sigma + other, sigma * sigma / 4));
    return b.median * exactExp((sigma < 0 ? -1 : 1) * kTenPercentPoint * both);
  };
  b.low = wider(b.low);
  b.high = wider(b.high);
  return check;
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

ColonyEnsemble broughtTo(const History& history, double latitude, const YardWeather& weather,
                         const Figures& figures, const ForecastAsk& ask, ColonyForecast& out) {
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
  std::optional<Date> lastLook, pastDay;
  if (ask.pastFrom) pastDay = std::max(*ask.pastFrom, begin);
  // Days of the past are written down when nothing dated up to them is left to be taken in.
  const auto writePast = [&](Date before) {
    for (; pastDay && *pastDay < before; pastDay = pastDay->plusDays(std::max(1, ask.stepDays))) {
      runTo(ce, weather, now, *pastDay);
      out.past.push_back(dayOf(ce, *pastDay));
    }
  };
  auto look = history.looks.begin();
  auto action = history.actions.begin();
  while (look != history.looks.end() || action != history.actions.end()) {
    const bool takeLook = look != history.looks.end() &&
                          (action == history.actions.end() || look->date <= action->date);
    const Date date = takeLook ? look->date : action->date;
    if (date >= begin) {
      writePast(std::min(date, ask.from));
      runTo(ce, weather, now, date);
    }
    if (takeLook) {
      if (date >= begin) {
        if (look->bees) {
          if (lastLook && date > *lastLook) {
            out.checks.push_back(checkOf(ce, *look, date - *lastLook));
          }
          lastLook = date;
        }
        for (auto& s : assimilate(ce, *look, random)) out.surprises.push_back(s);
      }
      ++look;
    } else {
      // Boxes set before the start still say how much room there is.
      if (date >= begin || action->kind == Action::Kind::Boxes) act(ce, *action, random);
      ++action;
    }
  }
  writePast(ask.from);
  runTo(ce, weather, now, ask.from);
  return ce;
}

ColonyForecast forecastHistory(const History& history, double latitude, const YardWeather& weather,
                               const Figures& figures, const ForecastAsk& ask) {
  ColonyForecast out;
  out.colony = history.colony;
  ColonyEnsemble ce = broughtTo(history, latitude, weather, figures, ask, out);
  if (ask.leftAlone) {
    std::fill_n(ce.e.param(Param::KeeperFeeds), ask.members, 0.0F);
    std::fill_n(ce.e.param(Param::KeeperTreats), ask.members, 1e9F);
  }
  Date now = ask.from;
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
