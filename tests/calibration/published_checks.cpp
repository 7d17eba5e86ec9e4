// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "tests/calibration/checks.h"
#include "tests/calibration/colony_run.h"
#include "tests/calibration/khoury.h"

namespace outyard::calibration {
namespace {

using apiary::ColonyOrigin;
using forecast::Action;
using forecast::Figures;

/// Means of Aberdeen and of Baton Rouge from memory of their climate tables, 1981 to 2010.
const Climate kAberdeen{{4.2, 4.3, 5.8, 7.6, 10.1, 12.7, 14.9, 14.7, 12.6, 9.6, 6.4, 4.5}, 3.6};
const Climate kBatonRouge{{11, 13, 16.5, 20, 24, 27, 28, 28, 25.5, 20.5, 16, 12}, 6};
const Climate kSouthSweden{{2, 2, 3.5, 7, 11.5, 15, 17, 17, 13.5, 9.5, 6, 4}, 2.5};

void addKhoury(std::vector<Check>& out) {
  const auto add = [&](const char* what, double theirs, double ours) {
    out.push_back({what, "none", "none", "16,000 house bees, 8,000 foragers, 4,000 days",
                   "Khoury, Myerscough and Barron 2011, PLoS ONE 6:e18491, closed form", "bees",
                   theirs * 0.99, theirs * 1.01, ours, 0, true});
  };
  const KhouryState k = khoury(0.24, 4000);
  add("Limit case, forager death 0.24 a day: house bees", 6470, k.house);
  add("Limit case, forager death 0.24 a day: foragers", 1988, k.foragers);
  // The critical rate by halving: where the colony just dies out.
  double low = 0.34, high = 0.37;
  for (int i = 0; i < 8; ++i) {
    const double mid = (low + high) / 2;
    (khoury(mid, 20000).house > 50 ? low : high) = mid;
  }
  out.push_back({"Limit case, critical forager death", "none", "none",
                 "16,000 house bees, 8,000 foragers, 20,000 days",
                 "Khoury, Myerscough and Barron 2011, PLoS ONE 6:e18491, closed form", "a day",
                 0.3552 * 0.99, 0.3552 * 1.01, low, 4, true});
}

void addBrood(std::vector<Check>& out) {
  const auto& f = Figures::shipped();
  double share = 1;
  for (int i = 0; i < forecast::kEggDays; ++i) share *= f.value("egg_survival");
  for (int i = 0; i < forecast::kOpenDays; ++i) share *= f.value("open_survival");
  for (int i = 0; i < forecast::kSealedDays; ++i) share *= f.value("sealed_survival");
  out.push_back({"Adults from 100 eggs of a covered nest", "any", "any", "100 eggs",
                 "Fukuda and Sakagami 1968, Res. Popul. Ecol. 10:31 (85.1)", "", 83, 87,
                 100 * share, 1, true});
}

void addMcLellan(std::vector<Check>& out) {
  const char* source = "McLellan 1978, J. Appl. Ecol. 15 (abstract), 20 % either way";
  Start may;
  may.latitude = 57;
  may.climate = kAberdeen;
  may.date = "2026-05-01";
  may.bees = 16000;
  may.sealed = 5000;
  may.open = 2400;
  may.eggs = 1300;
  may.honeyKg = 12;
  may.origin = ColonyOrigin::Wintered;
  may.nestCells = 138000;
  const Run m = run(may, 60);
  const std::string startMay = "16,000 bees, 8,700 brood on 1 May";
  out.push_back({"Adults on 25 May", "57 N", "Aberdeen normals", startMay, source, "bees", 14400,
                 21600, m.bees[24].median, 0, true});
  out.push_back({"Brood on 25 May", "57 N", "Aberdeen normals", startMay, source, "cells", 12000,
                 18000, m.brood[24].median, 0, true});
  Start june = may;
  june.date = "2026-05-25";
  june.bees = 33000;
  june.sealed = 11500;
  june.open = 6000;
  june.eggs = 3200;
  const Run j = run(june, 40);
  const std::string startJune = "33,000 bees, 20,700 brood on 25 May";
  out.push_back({"Adults on 15 June", "57 N", "Aberdeen normals", startJune, source, "bees", 29600,
                 44400, j.bees[21].median, 0, true});
  out.push_back({"Brood on 15 June", "57 N", "Aberdeen normals", startJune, source, "cells", 19200,
                 28800, j.brood[21].median, 0, true});
}

void addWinter(std::vector<Check>& out) {
  const auto use = [](double bees, const Climate& climate, double latitude) {
    Start s;
    s.latitude = latitude;
    s.climate = climate;
    s.date = "2026-11-25";
    s.bees = bees;
    s.sealed = s.open = 0;
    s.honeyKg = 20;
    s.origin = ColonyOrigin::Wintered;
    s.superCells = 0;
    // A broodless cluster: its queen is caged, as in the trial.
    const Run r = run(s, 27, {{0, Action::Kind::QueenGone, 0, 0}});
    return 1000 * (r.honeyKg[0].median - r.honeyKg[24].median) / 24;
  };
  const char* harbo = "Harbo 1983, Environ. Entomol. 12:1559 (abstract), 35 % either way";
  out.push_back({"Stores used a day by 8,900 bees without brood", "30 N", "Baton Rouge normals",
                 "25 November, 24 days", harbo, "g", 26, 54, use(8900, kBatonRouge, 30.4), 0,
                 false});
  out.push_back({"Stores used a day by 8,900 bees without brood", "57 N", "South Swedish normals",
                 "25 November, 24 days", harbo, "g", 26, 54, use(8900, kSouthSweden, 57), 0, true});
  out.push_back({"Stores used a day by 4,400 bees without brood", "57 N", "South Swedish normals",
                 "25 November, 24 days", harbo, "g", 19, 39, use(4400, kSouthSweden, 57), 0, true});
  out.push_back({"Stores used a day by a wintering colony", "57 N", "South Swedish normals",
                 "10,000 bees, 25 November, 24 days",
                 "Norrstrom et al. 2021, PLoS ONE 16:e0258398: 39 +- 13 at 3.5 C", "g", 26, 52,
                 use(10000, kSouthSweden, 57), 0, true});
  Start s;
  s.latitude = 47;
  s.date = "2025-10-15";
  s.bees = 14000;
  s.sealed = 900;
  s.open = 300;
  s.eggs = 100;
  s.honeyKg = 18;
  s.origin = ColonyOrigin::Wintered;
  const Run r = run(s, 200);
  out.push_back({"Share of the bees of 15 October alive on 14 March", "47 N", "normals",
                 "14,000 bees, 1,300 brood",
                 "daily deaths of 0.004 (Martin 2001) to 0.0053 (Sumpter and Martin 2004) and half "
                 "as much again, 150 days",
                 "", 0.32, 0.66, r.bees[150].median / r.bees[0].median, 2, true});
}

void addYear(std::vector<Check>& out) {
  Start s;
  s.latitude = 47;
  s.date = "2026-03-15";
  s.bees = 10000;
  s.sealed = 2500;
  s.open = 1200;
  s.eggs = 700;
  s.honeyKg = 12;
  s.origin = ColonyOrigin::Wintered;
  s.nestCells = 138000;
  s.superCells = 130000;
  const Run r = run(s, 365);
  double eggs = 0, peak = 0;
  for (std::size_t d = 0; d < 365; ++d) eggs += r.eggs[d].median;
  for (const auto& b : r.bees) peak = std::max(peak, b.median);
  const std::string start = "10,000 bees, 4,400 brood on 15 March, two chambers and supers";
  out.push_back({"Eggs of a year", "47 N", "normals", start,
                 "sums of the published curves: 192,000 to 215,000 (Schmickl and Crailsheim 2007); "
                 "Nolan 1925 (from memory)",
                 "eggs", 120000, 250000, eggs, 0, true});
  out.push_back({"Most adults of the year", "47 N", "normals", start, "common practice, no source",
                 "bees", 25000, 60000, peak, 0, true});
}

void addPackage(std::vector<Check>& out) {
  Start s;
  s.latitude = 45;
  s.date = "2026-05-01";
  s.bees = 9000;
  s.sealed = s.open = 0;
  s.honeyKg = 4;
  s.origin = ColonyOrigin::Package;
  const Run r = run(s, 120);
  const std::string start = "package of 9,000 bees with a laying queen, 1 May";
  const char* source = "common practice and the published stage times, no count found";
  out.push_back({"Package: bees lost by day 21", "45 N", "normals", start, source, "%", 35, 55,
                 100 * (1 - r.bees[21].median / r.bees[0].median), 0, true});
  double back = 0;
  for (int d = 25; d < 120 && back == 0; ++d) {
    if (r.bees[static_cast<std::size_t>(d)].median >= r.bees[0].median) back = d;
  }
  out.push_back({"Package: day on which it is back at its start", "45 N", "normals", start, source,
                 "", 40, 60, back, 0, true});
}

void addWalkAway(std::vector<Check>& out) {
  Start s;
  s.latitude = 45;
  s.date = "2026-05-10";
  s.bees = 10000;
  s.sealed = 6000;
  s.open = 3000;
  s.eggs = 1500;
  s.honeyKg = 8;
  s.origin = ColonyOrigin::Wintered;
  const Run r = run(s, 70, {{0, Action::Kind::QueenGone, 0, 0}});
  double first = 0, brood = 0;
  for (int d = 5; d < 70; ++d) {
    const auto i = static_cast<std::size_t>(d);
    if (first == 0 && r.eggs[i].median > 30) first = d;
  }
  for (std::size_t d = 21; d < 24; ++d) brood = std::max(brood, r.sealed[d].median);
  const std::string start = "10,000 bees, 10,500 brood, queen taken on 10 May";
  const char* source =
      "queen emerges 11-13 days after (from memory), first eggs 10.6 days on (J. Apic. Res. 26:73)";
  out.push_back({"Walk-away split: day of the first eggs", "45 N", "normals", start, source, "", 20,
                 27, first, 0, true});
  out.push_back({"Walk-away split: sealed cells on days 21 to 23", "45 N", "normals", start,
                 "stage times: the old queen's brood has emerged", "cells", 0, 150, brood, 0,
                 true});
}

}  // namespace

std::vector<Check> publishedChecks() {
  std::vector<Check> out;
  addKhoury(out);
  addBrood(out);
  addMcLellan(out);
  addWinter(out);
  addYear(out);
  addPackage(out);
  addWalkAway(out);
  return out;
}

}  // namespace outyard::calibration
