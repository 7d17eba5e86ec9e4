// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/assimilation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

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
  const double springShift = figures.value("season_shift") - springLeadDays(latitudeDeg);
  const double autumnShift = figures.value("autumn_shift") + autumnLagDays(latitudeDeg);
  const double lay = layingSeason(day, springShift, autumnShift);
  // Usual size of a colony through the year, counted as living adults: 13,000 in midwinter (7,000
  // to 8,000 on the combs as readers count) to 33,000 in high summer (our assumption, wide).
  const double usual = 13000 + 20000 * lay * std::clamp((day - 60) / 100.0, 0.1, 1.0);
  const bool young = !establishedColony(origin);
  const double size = young ? 8000 : usual;
  const bool winterTime = day > 241 + autumnShift || day < 100 + springShift;
  // Looked up once: names are many and members more.
  using Drawn = std::pair<Param, const Figure*>;
  const auto figure = [&](Param p, const char* name) { return Drawn{p, &figures.at(name)}; };
  const std::array own{figure(Param::QueenPotential, "queen_potential"),
                       figure(Param::CoverCells, "cover_cells"),
                       figure(Param::CoverShell, "cover_shell"),
                       figure(Param::CareCeiling, "care_ceiling"),
                       figure(Param::FillDays, "fill_days"),
                       figure(Param::EggSurvival, "egg_survival"),
                       figure(Param::OpenSurvival, "open_survival"),
                       figure(Param::SealedSurvival, "sealed_survival"),
                       figure(Param::WinterDeath, "winter_death"),
                       figure(Param::RecruitMost, "recruit_most"),
                       figure(Param::RecruitSlope, "recruit_slope"),
                       figure(Param::Income, "income"),
                       figure(Param::Use, "stores_use"),
                       figure(Param::MiteGrowth, "mite_growth"),
                       figure(Param::Immigration, "immigration")};
  // One factor of the colony lies on all summer deaths of adults.
  const std::array deaths{figure(Param::HouseDeath, "house_death"),
                          figure(Param::ForagerHourDeath, "forager_death_hour"),
                          figure(Param::ForagerDayDeath, "forager_death_day")};
  const Figure &life = figures.at("life_factor"), &feedsAt = figures.at("keeper_feeds_kg"),
               &treatsAt = figures.at("keeper_treats_at"), &seenShare = figures.at("seen_share"),
               &sealedRead = figures.at("sealed_read");
  const double feeds = figures.value("keeper_feeds_share"),
               treats = figures.value("keeper_treats_share");
  const auto noiseLay = static_cast<float>(figures.value("noise_lay")),
             noiseLife = static_cast<float>(figures.value("noise_life"));
  for (int m = 0; m < members; ++m) {
    const auto put = [&](Param p, double v) { e.param(p)[m] = static_cast<float>(v); };
    for (const auto& [p, f] : own) put(p, drawn(*f, random));
    const double lives = drawn(life, random);
    for (const auto& [p, f] : deaths) put(p, lives * drawn(*f, random));
    put(Param::RecruitYoung, 0);
    put(Param::EclosionHalf, 0);
    // Most keepers feed before a colony starves, and treat before mites take it.
    const double left = drawn(feedsAt, random), most = drawn(treatsAt, random);
    put(Param::KeeperFeeds, random.uniform() < feeds ? left : 0.0);
    put(Param::KeeperTreats, random.uniform() < treats ? most : 1e9);
    put(Param::NestCells, 60000);
    put(Param::SuperCells, 20000);
    e.param(Param::NoiseLay)[m] = noiseLay;
    e.param(Param::NoiseLife)[m] = noiseLife;
    put(Param::SwarmDraw, exponentialDraw(random));
    put(Param::FailDraw, exponentialDraw(random));
    put(Param::RequeenSuccess, random.uniform());
    const auto i = static_cast<std::size_t>(m);
    ce.seenShare[i] = static_cast<float>(drawn(seenShare, random));
    ce.sealedRead[i] = static_cast<float>(drawn(sealedRead, random));

    double bees = size * exactExp(0.65 * normalDraw(random));
    if (firstLook && firstLook->bees) {
      // Start near the first look, yet wide: the update that follows does the rest.
      bees = firstLook->bees->median / static_cast<double>(ce.seenShare[i]) *
             exactExp(0.35 * normalDraw(random));
    }
    // Packages and swarms come without brood, splits with it.
    double brood = young && *origin != apiary::ColonyOrigin::Split
                       ? 0.0
                       : bees * 1.1 * lay * exactExp(0.5 * normalDraw(random));
    // No more than a queen's eggs of three weeks less what is lost of them.
    brood = std::min(brood, 19 * static_cast<double>(e.param(Param::QueenPotential)[m]));
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
