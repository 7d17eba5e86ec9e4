// SPDX-License-Identifier: GPL-3.0-or-later
// Synthetic twins: colonies whose truth is known, made with other parameters and with model error,
// seen eight times with a reader's error, and forecast from what was seen.
#include <array>
#include <cmath>
#include <map>

#include "core/forecast/assimilation.h"
#include "tests/calibration/checks.h"
#include "tests/core/forecast/plain_twin.h"

namespace outyard::calibration {
namespace {

using namespace forecast;
using base::Date;

constexpr int kVisits = 8, kBetween = 14;
constexpr std::array kLeads{14, 28, 42};

Date day(const char* iso) {
  return Date::parse(iso).value();
}

/// A yard at 45 degrees whose weather of the whole year is known afterwards.
apiary::Season yardWithWeather(std::uint64_t seed) {
  apiary::Season season;
  apiary::ChangeList changes;
  const auto add = [&](const auto& r) {
    const auto row = apiary::toRow(r);
    changes.push_back({row.table, apiary::rowKey(row), std::nullopt, row});
  };
  apiary::Yard yard;
  yard.yard = base::YardId("Y");
  yard.latitude = 45;
  add(yard);
  season.apply(changes);
  const Date from = day("2025-01-01");
  const auto truth =
      WeatherPaths::of(season, {yard.yard, from, from.plusDays(700), from, false, seed});
  changes.clear();
  for (int d = 0; d < 700; ++d) {
    apiary::WeatherDay w;
    w.yard = yard.yard;
    w.date = from.plusDays(d);
    w.tminC = truth.at(d, 3).tminC;
    w.tmaxC = truth.at(d, 3).tmaxC;
    w.rainMm = truth.at(d, 3).rainMm;
    add(w);
  }
  season.apply(changes);
  return season;
}

/// One reader's error, mid-way in what is published: 5 to 15 % for adults, 13 to 19 % for brood
/// (Bartlett et al. 2024, doi 10.1093/jisesa/ieae056).
constexpr double kBeesError = 0.10, kSealedError = 0.16, kOpenError = 0.22;
/// The count that is forecast may be another reader's: up to 15 % of difference comes on top.
constexpr double kOthersError = 0.15;

struct Outcome {
  double error = 0, persistence = 0;  ///< sums of |log ratio|
  int n = 0, within = 0;
};

/// Gives the outcome for each lead. noise multiplies the model error of the truth.
std::map<int, Outcome> runTwins(int twins, double noise) {
  const Figures& figures = Figures::shipped();
  const apiary::Season season = yardWithWeather(77);
  const base::YardId yard("Y");
  const Date first = day("2026-04-10");
  std::map<int, Outcome> out;
  // What is known at each visit, with later weather unknown; and the truth's weather.
  std::vector<YardWeather> known;
  for (int v = 0; v < kVisits; ++v) {
    ForecastAsk ask;
    ask.from = first.plusDays(v * kBetween);
    ask.to = ask.from.plusDays(kLeads.back());
    known.push_back(yardWeather(season, yard, day("2026-01-01"), ask, figures));
  }
  ForecastAsk all;
  all.from = first;
  all.to = first.plusDays(kVisits * kBetween + kLeads.back());
  all.knownWeather = true;
  const YardWeather actual = yardWeather(season, yard, day("2026-01-01"), all, figures);
  for (int t = 0; t < twins; ++t) {
    base::Random random(1000 + static_cast<std::uint64_t>(t));
    // One colony of the truth is one member of an ensemble of its own.
    // Small colonies after a hard winter, 2,000 to 6,000 bees: those that the program is for.
    Look start;
    start.bees = strength::Estimate::fromMedian(1500 + 3000 * random.uniform(), 0.1);
    ColonyEnsemble truth =
        settledEnsemble(figures, kBlock, 45, first.dayOfYear(), apiary::ColonyOrigin::Wintered,
                        &start, actual.drivers, first - actual.from, random);
    const int m = t % kBlock;
    for (const Param p : {Param::NoiseLay, Param::NoiseLife}) {
      truth.e.param(p)[m] *= static_cast<float>(noise);
    }
    truth.e.param(Param::SwarmDraw)[m] = 1e9F;
    truth.e.param(Param::FailDraw)[m] = 1e9F;
    // Its keeper neither lets it starve nor leaves it to the mites.
    truth.e.param(Param::KeeperFeeds)[m] = 3.0F;
    truth.e.param(Param::KeeperTreats)[m] = 0.03F;
    std::map<Date, double> bees, seen;
    History history;
    history.colony = base::ColonyId("twin " + std::to_string(t));
    history.start = first;
    history.origin = apiary::ColonyOrigin::Wintered;
    history.actions.push_back({first, Action::Kind::Boxes, 70000, 40000});
    truth.e.param(Param::NestCells)[m] = 70000;
    truth.e.param(Param::SuperCells)[m] = 40000;
    const auto reader = [&](double value, double sigma) {
      return strength::Estimate::fromMedian(value * std::exp(sigma * random.normal()) + 1, sigma);
    };
    Outputs none;
    for (int d = 0; d <= all.to - first; ++d) {
      const Date date = first.plusDays(d);
      const auto x = twin::memberOf(truth.e, m);
      seen[date] = seenBees(truth, m, x.bees(), x.foragers);
      if (d % kBetween == 0 && d / kBetween < kVisits) {
        Look look;
        look.date = date;
        look.bees = reader(seen[date], kBeesError);
        look.sealed = reader(twin::Member::sum(x.sealed) *
                                 static_cast<double>(truth.sealedRead[static_cast<std::size_t>(m)]),
                             kSealedError);
        look.open = reader((twin::Member::sum(x.open) + twin::Member::sum(x.egg)) *
                               static_cast<double>(truth.sealedRead[static_cast<std::size_t>(m)]),
                           kOpenError);
        history.looks.push_back(look);
      }
      const int at = date - actual.from;
      runDays(truth.e, actual.drivers, at, at + 1, {}, none);
    }
    for (int v = 2; v < kVisits; ++v) {  // the first looks only set the stage
      ForecastAsk ask;
      ask.from = first.plusDays(v * kBetween);
      ask.to = ask.from.plusDays(kLeads.back());
      ask.stepDays = 14;
      History upTo = history;
      upTo.looks.resize(static_cast<std::size_t>(v) + 1);
      const auto f = forecastHistory(upTo, 45, known[static_cast<std::size_t>(v)], figures, ask);
      const double last = upTo.looks.back().bees->median;
      for (std::size_t k = 0; k < kLeads.size(); ++k) {
        const ForecastDay& fd = f.days[k + 1];
        const double real = seen.at(fd.date) + 1;
        Outcome& o = out[kLeads[k]];
        o.error += std::abs(std::log((fd.seen.median + 1) / real));
        o.persistence += std::abs(std::log(last / real));
        const double count = real * std::exp(kOthersError * random.normal());
        o.within += count >= fd.seen.low && count <= fd.seen.high ? 1 : 0;
        ++o.n;
      }
    }
  }
  return out;
}

}  // namespace

std::vector<TwinScore> twinScores(int twins, double noise) {
  std::vector<TwinScore> out;
  for (const auto& [lead, o] : runTwins(twins, noise)) {
    out.push_back({lead, o.n, o.error / o.persistence, 1.0 * o.within / o.n});
  }
  return out;
}

}  // namespace outyard::calibration
