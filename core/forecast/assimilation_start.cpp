// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/assimilation.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/assimilation_parts.h"
#include "core/forecast/day_length.h"
#include "core/forecast/exact_math.h"

namespace outyard::forecast {

using namespace state;

namespace {

/// A colony that is established is let live for six weeks before its first look.
constexpr int kSettleDays = 42;

bool establishedColony(std::optional<apiary::ColonyOrigin> origin) {
  return !origin || *origin == apiary::ColonyOrigin::Wintered ||
         *origin == apiary::ColonyOrigin::Bought;
}

}  // namespace

ColonyEnsemble startEnsemble(const Figures& figures, int members, double latitudeDeg, int dayOfYear,
                             std::optional<apiary::ColonyOrigin> origin, const Look* firstLook,
                             base::Random& random) {
  ColonyEnsemble ce(members);
  Ensemble& e = ce.e;
  const int day = northernDay(latitudeDeg, dayOfYear);
  const double lay = layingSeason(day, -springLeadDays(latitudeDeg), autumnLagDays(latitudeDeg));
  // Usual size of a colony through the year, counted as living adults: 9,000 in late winter to
  // 33,000 in high summer (our assumption, wide).
  const double usual = 9000 + 22000 * lay * std::clamp((day - 60) / 100.0, 0.1, 1.0);
  const bool young = origin && *origin != apiary::ColonyOrigin::Wintered &&
                     *origin != apiary::ColonyOrigin::Bought;
  const double size = young ? 8000 : usual;
  const double turn = 221 + autumnLagDays(latitudeDeg);
  const bool winterTime = day > turn + 20 || day < 100 - springLeadDays(latitudeDeg);
  const auto set = [&](Param p, int m, std::string_view name) {
    e.param(p)[m] = static_cast<float>(drawn(figures.at(name), random));
  };
  for (int m = 0; m < members; ++m) {
    set(Param::QueenPotential, m, "queen_potential");
    set(Param::CoverCells, m, "cover_cells");
    set(Param::CoverShell, m, "cover_shell");
    set(Param::CareCeiling, m, "care_ceiling");
    set(Param::FillDays, m, "fill_days");
    set(Param::EggSurvival, m, "egg_survival");
    set(Param::OpenSurvival, m, "open_survival");
    set(Param::SealedSurvival, m, "sealed_survival");
    set(Param::HouseDeath, m, "house_death");
    const double life = drawn(figures.at("life_factor"), random);
    e.param(Param::HouseDeath)[m] *= static_cast<float>(life);
    set(Param::WinterDeath, m, "winter_death");
    set(Param::ForagerHourDeath, m, "forager_death_hour");
    set(Param::ForagerDayDeath, m, "forager_death_day");
    e.param(Param::ForagerHourDeath)[m] *= static_cast<float>(life);
    e.param(Param::ForagerDayDeath)[m] *= static_cast<float>(life);
    set(Param::RecruitMost, m, "recruit_most");
    set(Param::RecruitSlope, m, "recruit_slope");
    set(Param::Income, m, "income");
    set(Param::Use, m, "stores_use");
    set(Param::MiteGrowth, m, "mite_growth");
    set(Param::Immigration, m, "immigration");
    e.param(Param::RecruitYoung)[m] = 0;
    e.param(Param::EclosionHalf)[m] = 0;
    // Most keepers feed before a colony starves, and treat before mites take it.
    const double left = drawn(figures.at("keeper_feeds_kg"), random);
    e.param(Param::KeeperFeeds)[m] =
        static_cast<float>(random.uniform() < figures.value("keeper_feeds_share") ? left : 0.0);
    const double most = drawn(figures.at("keeper_treats_at"), random);
    e.param(Param::KeeperTreats)[m] =
        static_cast<float>(random.uniform() < figures.value("keeper_treats_share") ? most : 1e9);
    e.param(Param::NestCells)[m] = 60000;
    e.param(Param::SuperCells)[m] = 20000;
    e.param(Param::NoiseLay)[m] = static_cast<float>(figures.value("noise_lay"));
    e.param(Param::NoiseLife)[m] = static_cast<float>(figures.value("noise_life"));
    e.param(Param::SwarmDraw)[m] = static_cast<float>(exponentialDraw(random));
    e.param(Param::FailDraw)[m] = static_cast<float>(exponentialDraw(random));
    e.param(Param::RequeenSuccess)[m] = static_cast<float>(random.uniform());
    const auto i = static_cast<std::size_t>(m);
    ce.seenShare[i] = static_cast<float>(drawn(figures.at("seen_share"), random));
    ce.sealedRead[i] = static_cast<float>(drawn(figures.at("sealed_read"), random));

    double bees = size * exactExp(0.6 * normalDraw(random));
    if (firstLook && firstLook->bees) {
      // Start near the first look, yet wide: the update that follows does the rest.
      bees = firstLook->bees->median / static_cast<double>(ce.seenShare[i]) *
             exactExp(0.35 * normalDraw(random));
    }
    double brood = young && (!firstLook || *origin != apiary::ColonyOrigin::Split)
                       ? 0.0
                       : bees * 1.1 * lay * exactExp(0.5 * normalDraw(random));
    brood = std::min(brood, 45000.0);
    for (int k = 0; k < kEggDays; ++k) e.value(kEgg + k)[m] = static_cast<float>(brood * 0.052);
    for (int k = 0; k < kOpenDays; ++k) e.value(kOpen + k)[m] = static_cast<float>(brood * 0.048);
    for (int k = 0; k < kSealedDays; ++k) {
      e.value(kSealed + k)[m] = static_cast<float>(brood * 0.0463);
    }
    const double winter = winterTime ? bees * (0.82 + 0.17 * random.uniform()) : 0;
    const double summer = bees - winter;
    const double field = summer * (young ? 0.05 : 0.12 + 0.25 * random.uniform());
    const double nest = summer - field;
    const double youngShare = young ? 0.85 : 0.3 + 0.3 * random.uniform();
    for (int k = 0; k < kYoungDays; ++k) {
      e.value(kYoung + k)[m] = static_cast<float>(nest * youngShare / kYoungDays);
    }
    e.value(kOlder)[m] = static_cast<float>(nest * (1 - youngShare));
    e.value(kForagers)[m] = static_cast<float>(field);
    e.value(kWinter)[m] = static_cast<float>(winter);
    // A package's queen is freed and begins to lay after some days.
    if (young && origin != apiary::ColonyOrigin::Split && brood < 1) {
      e.value(kQueenless)[m] = static_cast<float>(3 + 6 * random.uniform());
    }
    e.value(kHoney)[m] = static_cast<float>((young ? 4.0 : (winterTime ? 14.0 : 9.0)) *
                                            exactExp((young ? 0.7 : 0.5) * normalDraw(random)));
    e.value(kPollen)[m] = static_cast<float>(0.7 * exactExp(0.5 * normalDraw(random)));
    e.value(kMites)[m] = static_cast<float>(bees * 0.005 * exactExp(1.0 * normalDraw(random)) *
                                            (day > 180 ? 2.0 : 1.0));
    e.value(kRidden)[m] =
        static_cast<float>(static_cast<double>(e.value(kMites)[m]) / (bees + 100));
    e.random[i] = static_cast<std::uint32_t>(random.next() >> 33) | 1U;
  }
  return ce;
}

ColonyEnsemble settledEnsemble(const Figures& figures, int members, double latitudeDeg,
                               int dayOfYear, std::optional<apiary::ColonyOrigin> origin,
                               const Look* firstLook, const Drivers& drivers, int day,
                               base::Random& random) {
  ColonyEnsemble ce =
      startEnsemble(figures, members, latitudeDeg, dayOfYear, origin, firstLook, random);
  const int before = std::min(kSettleDays, day);
  if (!firstLook || !firstLook->bees || !establishedColony(origin) || before < 20) return ce;
  Ensemble& e = ce.e;
  const Ensemble start = e;
  const float never = 1e9F;
  for (int m = 0; m < members; ++m) {
    e.param(Param::SwarmDraw)[m] = never;
    e.param(Param::FailDraw)[m] = never;
  }
  Outputs none;
  runDays(e, drivers, day - before, day, {}, none);
  for (int m = 0; m < members; ++m) {
    for (const Param p : {Param::SwarmDraw, Param::FailDraw}) e.param(p)[m] = start.param(p)[m];
    const auto i = static_cast<std::size_t>(m);
    const double bees = adults(e, m), was = adults(start, m);
    if (bees < 0.2 * was) {  // it died out on the way: as it was set out
      for (int v = 0; v < kCount; ++v) e.value(v)[m] = start.value(v)[m];
      continue;
    }
    const double wanted = firstLook->bees->median / static_cast<double>(ce.seenShare[i]) *
                          exactExp(0.3 * normalDraw(random));
    const double field = static_cast<double>(e.value(kForagers)[m]) / bees;
    const auto f = static_cast<float>(wanted / (1 - 0.4 * field) / bees);
    const float b = f * static_cast<float>(exactExp(0.3 * normalDraw(random)));
    for (int v = kEgg; v < kYoung; ++v) e.value(v)[m] *= b;
    for (int v = kYoung; v <= kWinter; ++v) e.value(v)[m] *= f;
    for (int v : {kQueenless, kSwarmHazard, kFailHazard}) e.value(v)[m] = start.value(v)[m];
    e.value(kHoney)[m] = start.value(kHoney)[m];
    e.value(kPollen)[m] = std::max(e.value(kPollen)[m], start.value(kPollen)[m] * 0.5F);
    e.value(kMites)[m] *= f;
    for (int k = 0; k < kSealedDays; ++k) e.value(kMiteCells + k)[m] *= f;
  }
  return ce;
}

}  // namespace outyard::forecast
