// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/forecast/kernel.h"

/// Khoury, Myerscough and Barron 2011 (PLoS ONE 6:e18491) as a preset of the forecast's kernel:
/// age-free recruitment, no deaths of house bees, unlimited cover and stores.
namespace outyard::calibration {

struct KhouryState {
  double house = 0, foragers = 0;
};

inline KhouryState khoury(double foragerDeath, int days) {
  using namespace forecast;
  Drivers drivers;
  drivers.days = days;
  drivers.values.assign(static_cast<std::size_t>(days) * kDrivers * kBlock, 0.0F);
  for (int d = 0; d < days; ++d) {
    for (int s = 0; s < kBlock; ++s) drivers.at(d, Driver::Lay)[s] = 1;
  }
  Ensemble e(kBlock);
  for (int m = 0; m < kBlock; ++m) {
    const auto set = [&](Param p, double v) { e.param(p)[m] = static_cast<float>(v); };
    set(Param::QueenPotential, 2000);
    set(Param::EclosionHalf, 27000);
    for (Param p : {Param::EggSurvival, Param::OpenSurvival, Param::SealedSurvival}) set(p, 1);
    set(Param::ForagerDayDeath, foragerDeath);
    set(Param::RecruitMost, 0.25);
    set(Param::RecruitSlope, 0.75);
    set(Param::RecruitYoung, 1);
    set(Param::FillDays, 6);
    set(Param::SwarmDraw, 1e9);
    set(Param::FailDraw, 1e9);
    e.value(state::kOlder)[m] = 16000;
    e.value(state::kForagers)[m] = 8000;
    e.value(state::kHoney)[m] = 1;
    for (int k = 0; k < kEggDays + kOpenDays + kSealedDays; ++k) e.value(k)[m] = 900;
  }
  Outputs out;
  runDays(e, drivers, 0, days, {}, out);
  KhouryState k;
  for (int a = 0; a < kYoungDays; ++a)
    k.house += static_cast<double>(e.value(state::kYoung + a)[0]);
  k.house += static_cast<double>(e.value(state::kOlder)[0]);
  k.foragers = static_cast<double>(e.value(state::kForagers)[0]);
  return k;
}

}  // namespace outyard::calibration
