// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>

#include "core/forecast/kernel.h"

/// The colony model again, slow and plain: one member, ages in order, no running products, the
/// library's powers. The fast kernel must agree with it.
namespace outyard::forecast::twin {

struct Member {
  std::array<double, kParams> p{};
  std::array<double, kEggDays> egg{};
  std::array<double, kOpenDays> open{};
  std::array<double, kSealedDays> sealed{}, miteCells{};
  std::array<double, kYoungDays> young{};
  double ridden = 0, older = 0, foragers = 0, winter = 0, honey = 0, pollen = 0, mites = 0,
         queenless = 0;
  double swarmHazard = 0, failHazard = 0, errorLay = 0, errorLife = 0;
  std::uint32_t random = 1;

  [[nodiscard]] double param(Param k) const { return p[static_cast<std::size_t>(k)]; }
  [[nodiscard]] double bees() const { return sum(young) + older + foragers + winter; }
  [[nodiscard]] double brood() const { return sum(egg) + sum(open) + sum(sealed); }
  template <std::size_t N>
  [[nodiscard]] static double sum(const std::array<double, N>& a) {
    double s = 0;
    for (const double v : a) s += v;
    return s;
  }
};

inline Member memberOf(const Ensemble& e, int m) {
  Member x;
  for (int k = 0; k < kParams; ++k) {
    x.p[static_cast<std::size_t>(k)] = static_cast<double>(e.param(static_cast<Param>(k))[m]);
  }
  const auto copy = [&](auto& to, int first) {
    for (std::size_t i = 0; i < to.size(); ++i) {
      to[i] = static_cast<double>(e.value(first + static_cast<int>(i))[m]);
    }
  };
  copy(x.egg, state::kEgg);
  copy(x.open, state::kOpen);
  copy(x.sealed, state::kSealed);
  copy(x.young, state::kYoung);
  copy(x.miteCells, state::kMiteCells);
  const auto one = [&](int v) { return static_cast<double>(e.value(v)[m]); };
  x.older = one(state::kOlder);
  x.foragers = one(state::kForagers);
  x.winter = one(state::kWinter);
  x.honey = one(state::kHoney);
  x.pollen = one(state::kPollen);
  x.mites = one(state::kMites);
  x.ridden = one(state::kRidden);
  x.queenless = one(state::kQueenless);
  x.swarmHazard = one(state::kSwarmHazard);
  x.failHazard = one(state::kFailHazard);
  x.errorLay = one(state::kErrorLay);
  x.errorLife = one(state::kErrorLife);
  x.random = e.random[static_cast<std::size_t>(m)];
  return x;
}

inline double noise(std::uint32_t& s) {
  s ^= s << 13;
  s ^= s >> 17;
  s ^= s << 5;
  return (static_cast<double>((s & 0xFFFFU) + (s >> 16)) - 65535.0) / 26754.5;
}

inline double softLeast(double a, double b) {
  if (a <= 0 || b <= 0) return 0;
  return std::pow(std::pow(a, -4) + std::pow(b, -4), -0.25);
}

/// Every age takes the place of the next one; gives the oldest.
template <std::size_t N>
double shift(std::array<double, N>& a, double youngest) {
  const double oldest = a[N - 1];
  for (std::size_t i = N - 1; i > 0; --i) a[i] = a[i - 1];
  a[0] = youngest;
  return oldest;
}
template <std::size_t N>
void scale(std::array<double, N>& a, double f) {
  for (double& v : a) v *= f;
}

inline void day(Member& x, const Drivers& drivers, int d, int scenario) {
  const auto driver = [&](Driver k) { return static_cast<double>(drivers.at(d, k)[scenario]); };
  const double bees = x.bees(), brood = x.brood();
  x.errorLay = 0.96 * x.errorLay + 0.28 * noise(x.random);
  x.errorLife = 0.96 * x.errorLife + 0.28 * noise(x.random);
  const double lifeError = std::clamp(1 + x.param(Param::NoiseLife) * x.errorLife, 0.25, 4.0);
  const double g = std::clamp(
      1 - driver(Driver::Shell) * x.param(Param::CoverShell) / std::cbrt(bees + 1), 0.0, 1.0);
  const double cover = x.param(Param::CoverCells) * bees * g * g * g;
  const double nurses = Member::sum(x.young) + x.older + 0.2 * x.foragers + 0.75 * x.winter;
  const double care = x.param(Param::CareCeiling) * nurses * x.pollen / (x.pollen + 0.04) *
                      x.honey / (x.honey + 0.6);
  const double capacity = 1.25 * softLeast(cover, care);
  const double honeyCells = std::max(0.0, x.honey * 2564 - x.param(Param::SuperCells));
  const double room = std::max(0.0, 0.9 * x.param(Param::NestCells) - honeyCells - brood);
  const double layError = std::clamp(1 + x.param(Param::NoiseLay) * x.errorLay, 0.1, 2.0);
  const double potential = x.param(Param::QueenPotential) * driver(Driver::Lay) * layError;
  const double space = std::min(
      std::min(std::max(0.0, capacity - brood), room) / x.param(Param::FillDays), 0.048 * capacity);
  const double half = x.param(Param::EclosionHalf);
  const bool laying = x.queenless < 0.5 && x.queenless > -0.5;
  double eggs = half > 0 ? potential * bees / (half + bees + 1) : softLeast(potential, space);
  if (!laying) eggs = 0;

  const double uncovered = half > 0 ? 0 : std::max(0.0, brood - 1.25 * cover) / (brood + 1);
  const double hunger =
      half > 0 ? 0 : std::clamp(1 - 0.5 * x.honey / (bees * 5e-6 + 0.01), 0.0, 1.0);
  scale(x.egg, x.param(Param::EggSurvival) * (1 - 0.35 * uncovered) * (1 - 0.5 * hunger));
  scale(x.open, x.param(Param::OpenSurvival) * (1 - 0.30 * uncovered) * (1 - 0.5 * hunger));
  const double ridden = 1 - 0.5 * std::clamp(x.ridden - 0.03, 0.0, 0.1);
  scale(x.sealed, x.param(Param::SealedSurvival) * (1 - 0.20 * uncovered) * ridden);
  const double hatch = shift(x.egg, eggs);
  const double cap = shift(x.open, hatch);
  const double emerge = shift(x.sealed, cap);

  const double u = 0.56 * cap / (bees * 0.111 + 1);
  const double entry = std::min(1.0, u / (1 + u / 2 + u * u / 12)) * x.mites;
  const double freed = shift(x.miteCells, entry);
  x.mites = std::max(0.0, x.mites * (1 - (brood > 50 ? 0.006 : 0.002)) - entry +
                              freed * (1 + 1.01 * x.param(Param::MiteGrowth)) * 0.7 +
                              driver(Driver::Robbing) * x.param(Param::Immigration));
  if (x.mites > x.param(Param::KeeperTreats) * bees) x.mites *= 0.5;
  x.mites = std::min(x.mites, bees);
  x.ridden += (std::min(0.25, x.mites / (bees + 100)) - x.ridden) * 0.03;
  const double load = std::clamp(x.ridden - 0.03, 0.0, 0.1);

  const double hungerDeath = 0.12 * hunger * hunger;
  const double deathHouse =
      std::clamp(x.param(Param::HouseDeath) * lifeError + 1.1 * load + hungerDeath, 0.0, 0.9);
  const double cold = 0.1 * std::max(0.0, 0.2 - g);
  const double deathWinter = std::clamp(
      x.param(Param::WinterDeath) * lifeError + 0.30 * load + hungerDeath + cold, 0.0, 0.9);
  const double deathForager = std::clamp(
      (x.param(Param::ForagerHourDeath) * driver(Driver::Hours) + x.param(Param::ForagerDayDeath)) *
              lifeError +
          0.45 * load + hungerDeath,
      0.0, 0.95);
  const double recruit = std::clamp(
      x.param(Param::RecruitMost) - x.param(Param::RecruitSlope) * x.foragers / (bees + 0.01), 0.0,
      0.6);
  const double recruitYoung = recruit * x.param(Param::RecruitYoung);
  const double youngGone = Member::sum(x.young) * recruitYoung;
  scale(x.young, 1 - deathHouse - recruitYoung);
  const double wintering = emerge * driver(Driver::Winter);
  const double grown = shift(x.young, emerge - wintering);
  const double olderGone = x.older * recruit;
  const double released = x.winter * driver(Driver::Release);
  x.older = std::max(0.0, x.older * (1 - deathHouse) - olderGone) + grown;
  x.foragers = x.foragers * (1 - deathForager) + olderGone + youngGone + released;
  x.winter = std::max(0.0, x.winter * (1 - deathWinter) - released) + wintering;

  const double small = std::min(1.8, std::max(1.0, 1 / std::sqrt(bees / 9000 + 0.01)));
  const double rest = driver(Driver::Rest);
  const double use = (bees * (rest * 4.4e-6 * small + (1 - rest) * 6e-6) +
                      Member::sum(x.open) * 10.9e-6 + brood * 7e-6 * driver(Driver::Heat)) *
                     x.param(Param::Use);
  const double nest = x.param(Param::NestCells);
  const double storeRoom =
      (std::max(0.35 * nest, 0.8 * nest - 1.4 * brood) + x.param(Param::SuperCells)) * 0.00039;
  x.honey = std::max(
      std::min(x.honey + x.foragers * driver(Driver::Nectar) * x.param(Param::Income), storeRoom) -
          use,
      x.param(Param::KeeperFeeds));
  x.pollen = std::max(0.0, std::min(2.0, x.pollen + x.foragers * driver(Driver::Pollen)) -
                               (bees * 0.2e-6 + Member::sum(x.open) * 23.7e-6));

  const bool lost = bees < 100 && brood < 1000 && half <= 0;
  if (lost) x.older = x.foragers = x.winter = x.mites = 0;

  const double crowd = std::clamp(brood / (0.45 * x.param(Param::NestCells) + 1) - 0.6, 0.0, 1.0);
  const auto passes = [&](double& hazard, double add, double draw) {
    const double before = hazard;
    hazard += add;
    return before < draw && hazard >= draw && laying;
  };
  const bool swarms =
      passes(x.swarmHazard, driver(Driver::Swarm) * crowd, x.param(Param::SwarmDraw));
  const bool fails = passes(x.failHazard, 0.0004, x.param(Param::FailDraw));
  if (swarms) {
    scale(x.young, 0.4);
    for (double* v : {&x.older, &x.foragers, &x.winter, &x.mites}) *v *= 0.4;
    x.honey = std::max(0.0, x.honey - bees * 0.6 * 36e-6);
  }
  if (x.queenless > 0) x.queenless = std::max(0.0, x.queenless - 1);
  if (swarms || fails) {
    x.queenless = x.param(Param::RequeenSuccess) > 0.82 ? -1 : (swarms ? 18 : 24);
  }
  if (lost) x.queenless = -1;
}

}  // namespace outyard::forecast::twin
