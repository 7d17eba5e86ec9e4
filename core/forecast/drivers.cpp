// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/drivers.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/forecast/day_length.h"
#include "core/forecast/exact_math.h"

namespace outyard::forecast {
namespace {

/// Nectar of a forager on a day of full flight, g: published classes are weak 0.03, medium 0.10,
/// strong 0.30, here a little more because our foragers are fewer than the classes assume.
double nectarGrams(double strength) {
  constexpr std::array kGrams{0.008, 0.10, 0.22, 0.42};
  const double s = std::clamp(strength, 0.0, 3.0);
  const auto i = std::min<std::size_t>(2, static_cast<std::size_t>(s));
  return kGrams[i] + (kGrams[i + 1] - kGrams[i]) * (s - static_cast<double>(i));
}

double logistic(double x) {
  return 1 / (1 + exactExp(-x));
}

/// 0 below 10 C, 1 from 16 C on the day's maximum, less in rain (figures-dynamics (c)).
double flightWeight(const WeatherOfDay& w) {
  const double warm = std::clamp((w.tmaxC - 10) / 6, 0.0, 1.0);
  const double hot = std::clamp((43 - w.tmaxC) / 5, 0.0, 1.0);
  const double dry = w.rainMm < 1 ? 1.0 : (w.rainMm < 6 ? 0.6 : 0.25);
  return warm * hot * dry;
}

/// One standard normal value for each scenario, shuffled: the middles of 32 equally likely strips,
/// so that the scenarios' median and spread do not hang on the seed.
std::array<double, kBlock> strips(base::Random& random) {
  static_assert(kBlock == 32);
  constexpr std::array kUpper{0.0392, 0.1178, 0.1971, 0.2777, 0.3601, 0.4451, 0.5334, 0.6261,
                              0.7245, 0.8305, 0.9468, 1.0775, 1.2299, 1.4178, 1.6759, 2.1539};
  std::array<double, kBlock> out{};
  for (std::size_t k = 0; k < 16; ++k) {
    out[k] = kUpper[k];
    out[k + 16] = -kUpper[k];
  }
  for (std::size_t k = out.size() - 1; k > 0; --k) {
    std::swap(out[k], out[static_cast<std::size_t>(random.uniform() * static_cast<double>(k + 1))]);
  }
  return out;
}

}  // namespace

double springLeadDays(double latitudeDeg) {
  const double lat = latitudeDeg < 0 ? -latitudeDeg : latitudeDeg;
  return (47 - lat) * 2.2;
}
double autumnLagDays(double latitudeDeg) {
  const double lat = latitudeDeg < 0 ? -latitudeDeg : latitudeDeg;
  return (47 - lat) * (lat < 47 ? 2.7 : 1.2);
}

double layingSeason(int day, double springShift, double autumnShift) {
  const double t1 = day - springShift;
  const double t2 = day - autumnShift;
  const double up = 1 - 1 / (1 + 385 * exactExp(-2 * t1 / 30));
  const double down = 1 / (1 + 36 * exactExp(-2 * (t2 - 155) / 30));
  return 1 - std::max(up, down);
}

FlowOfDay flowOn(const apiary::Season& season, const base::YardId& yard, double latitudeDeg,
                 int dayOfYear) {
  FlowOfDay out;
  bool own = false;
  for (const auto& [key, f] : season.table<apiary::Flow>()) {
    if (f.yard != yard) continue;
    own = true;
    const bool within = f.fromDay <= f.toDay ? dayOfYear >= f.fromDay && dayOfYear <= f.toDay
                                             : dayOfYear >= f.fromDay || dayOfYear <= f.toDay;
    if (!within) continue;
    out.nectar = std::max(out.nectar, f.nectar.value_or(0));
    out.pollen = std::max(out.pollen, f.pollen.value_or(0));
  }
  if (own) return out;
  // Default: pollen from the first willows to the ivy, nectar with a May to July peak, a dearth and
  // a weaker late flow (our assumption).
  const int day = northernDay(latitudeDeg, dayOfYear);
  const double spring = day + springLeadDays(latitudeDeg);
  const double autumn = day - autumnLagDays(latitudeDeg);
  out.pollen = spring > 75 && autumn < 285 ? (spring > 105 && autumn < 220 ? 2.0 : 1.2) : 0.0;
  const double north = latitudeDeg < 0 ? -latitudeDeg : latitudeDeg;
  out.pollen = std::max(out.pollen, 0.6 * std::clamp((40 - north) / 8, 0.0, 1.0));
  if (spring > 100 && spring <= 130) out.nectar = 1;
  // The main flow, at least six weeks where the summer is short; a dearth; a late flow.
  const bool main = spring > 130 && (autumn <= 195 || spring <= 175);
  if (main) out.nectar = 1.8;
  if (!main && autumn > 195 && autumn <= 230) out.nectar = 0.5;
  if (!main && autumn > 230 && autumn <= 268) out.nectar = 1;
  return out;
}

Drivers makeDrivers(const apiary::Season& season, const base::YardId& yard,
                    const WeatherPaths& weather, const Figures& figures, std::uint64_t seed) {
  Drivers out;
  out.days = weather.days();
  out.values.resize(static_cast<std::size_t>(out.days) * kDrivers * kBlock);
  const double latitude = weather.latitude();
  std::array<double, kBlock> spring{}, autumn{}, hours{}, winterShare{};
  base::Random random(seed * 7919ULL + 1);
  const auto fill = [&](std::array<double, kBlock>& to, const char* name, double add) {
    const auto z = strips(random);
    for (std::size_t i = 0; i < z.size(); ++i) to[i] = drawn(figures.at(name), z[i]) + add;
  };
  fill(spring, "season_shift", -springLeadDays(latitude));
  fill(autumn, "autumn_shift", autumnLagDays(latitude));
  fill(hours, "flight_hours", 0);
  fill(winterShare, "winter_laying", 0);
  for (int d = 0; d < out.days; ++d) {
    const int dayOfYear = weather.from().plusDays(d).dayOfYear();
    const int day = northernDay(latitude, dayOfYear);
    const FlowOfDay flow = flowOn(season, yard, latitude, dayOfYear);
    const double length = dayLengthHours(latitude, dayOfYear);
    const double nectar = nectarGrams(flow.nectar) * 1e-3;
    // Where winters are mild laying does not end and few bees turn to winter bees (our assumption:
    // from 44 degrees down).
    const double north = latitude < 0 ? -latitude : latitude;
    const double mild = std::clamp((44 - north) / 12, 0.0, 1.0);
    // How much is laid differs the more the longer the winter lasts, from mid-October to
    // mid-January.
    const double apart = 0.5 + 0.7 * (day < 200 ? 1.0 : std::clamp((day - 288) / 90.0, 0.0, 1.0));
    const double usualShare = figures.value("winter_laying");
    for (int s = 0; s < kBlock; ++s) {
      const auto i = static_cast<std::size_t>(s);
      const WeatherOfDay& w = weather.at(d, s);
      double mean = w.meanC();  // the cluster answers to a few days, not to one
      int n = 1;
      for (int back = 1; back <= 2 && d - back >= 0; ++back, ++n) {
        mean += weather.at(d - back, s).meanC();
      }
      mean /= n;
      const double fly = flightWeight(w);
      const auto put = [&](Driver k, double v) { out.at(d, k)[s] = static_cast<float>(v); };
      const double share = usualShare * exactPow(winterShare[i] / usualShare, apart);
      put(Driver::Lay, std::max(layingSeason(day, spring[i], autumn[i]), mild * share));
      put(Driver::Shell, std::clamp(5.2 + (mean < 10 ? 0.35 : 0.65) * (10 - mean), 0.5, 11.0));
      // On cool days more of those who fly are chilled and lost (our assumption: half as many again
      // at 4 degrees).
      const double chill = 1 + 0.5 * std::clamp((12 - mean) / 8, 0.0, 1.0);
      put(Driver::Hours, hours[i] * fly * std::min(1.0, length / 14) * chill);
      put(Driver::Nectar, nectar * fly);
      put(Driver::Pollen, flow.pollen * 45e-6 * fly);
      // Late-reared bees become winter bees once laying has passed its half.
      const double turn = 209 + autumn[i] + 12;
      const double late = logistic((day - turn) / 9);
      const double early = logistic((60 + spring[i] - day) / 9);
      put(Driver::Winter, std::max(late, early) * (1 - 0.94 * mild));
      put(Driver::Release, (day < 170 ? 0.025 : 0.003 + 0.03 * mild) * fly);
      put(Driver::Rest, std::clamp((12 - mean) / 8, 0.0, 1.0));
      put(Driver::Heat, std::clamp(1 + 0.05 * (15 - mean), 0.5, 2.0));
      const double swarmDay = day - spring[i];
      put(Driver::Swarm, swarmDay > 112 && swarmDay < 205 ? 0.03 * fly : 0.0);
      const double robDay = day - autumn[i] * 0.5;
      put(Driver::Robbing, robDay > 210 && robDay < 320 ? fly : 0.0);
    }
  }
  return out;
}

}  // namespace outyard::forecast
