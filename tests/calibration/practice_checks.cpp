// SPDX-License-Identifier: GPL-3.0-or-later
// Facts of the trade: common practice, no source.
#include <algorithm>
#include <cmath>
#include <tuple>

#include "tests/calibration/checks.h"
#include "tests/calibration/colony_run.h"

namespace outyard::calibration {
namespace {

using apiary::ColonyOrigin;
using base::Date;
using forecast::Action;

constexpr const char* kPractice = "common practice, no source";

Start smallInApril() {
  Start s;
  s.latitude = 44;
  s.date = "2026-04-25";
  s.bees = 2000;
  s.sealed = 720;
  s.open = 380;
  s.eggs = 200;
  s.eggsSeen = true;
  s.honeyKg = 6;
  s.origin = ColonyOrigin::Wintered;
  return s;
}
Start strongInApril() {
  Start s = smallInApril();
  s.bees = 16000;
  s.sealed = 7200;
  s.open = 3700;
  s.eggs = 1800;
  s.honeyKg = 10;
  s.nestCells = 138000;
  return s;
}
/// A stack moves 3,000 to 6,000 bees up in a week: 1,400 a day on the four days after the paper is
/// open.
std::vector<Deed> stacked() {
  std::vector<Deed> deeds{{2, Action::Kind::Warmth, 0.6, 0}};
  for (int d = 2; d < 6; ++d) deeds.push_back({d, Action::Kind::BeesIn, 1400, 0});
  return deeds;
}

}  // namespace

std::vector<Check> practiceChecks() {
  std::vector<Check> out;
  const std::string smallStart = "2,000 bees, 720 sealed, 380 open, 200 eggs on 25 April";
  const Run small = run(smallInApril(), 130);
  double eggs = 0;
  for (std::size_t d = 1; d <= 7; ++d) eggs += small.eggs[d].median / 7;
  out.push_back({"Eggs a day in the first week", "44 N", "normals", smallStart, kPractice, "eggs",
                 60, 160, eggs, 0, true});
  double day = 0;
  for (int d = 1; d < 130 && day == 0; ++d) {
    if (small.bees[static_cast<std::size_t>(d)].median >= 12000) day = d;
  }
  out.push_back({"Days after 25 April on which it has 12,000 bees (25 June to 20 August)", "44 N",
                 "normals", smallStart, kPractice, "", 61, 117, day, 0, true});
  const Run up = run(smallInApril(), 60, stacked());
  out.push_back({"Set over a strong colony: brood on day 11", "44 N", "normals",
                 smallStart + ", 5,600 bees come up on days 2 to 5", kPractice, "cells", 6000,
                 11000, up.brood[11].median, 0, true});
  out.push_back({"Set over a strong colony: brood on day 14", "44 N", "normals",
                 smallStart + ", 5,600 bees come up on days 2 to 5", kPractice, "cells", 8000,
                 14000, up.brood[14].median, 0, true});
  const Run strong = run(strongInApril(), 150);
  double peak = 0;
  for (const auto& b : strong.bees) peak = std::max(peak, b.median);
  out.push_back({"A strong colony's most adults by 22 September", "44 N", "normals",
                 "16,000 bees, 12,700 brood on 25 April", kPractice, "bees", 25000, 60000, peak, 0,
                 true});
  Start gives = strongInApril();
  const Run gave = run(gives, 60, [] {
    auto deeds = stacked();
    deeds.erase(deeds.begin());  // its own warmth stays
    for (Deed& d : deeds) d.amount = -d.amount;
    return deeds;
  }());
  out.push_back({"A donor of 5,600 bees is behind its twin on day 56 by", "44 N", "normals",
                 "16,000 bees, 12,700 brood on 25 April", kPractice, "%", 0, 25,
                 100 * (1 - gave.bees[56].median / strong.bees[56].median), 0, true});
  // Mites double in 30 to 45 days with brood: of the median over 60 days.
  const double growth = std::log(strong.mites[70].median / strong.mites[10].median) / 60;
  out.push_back({"Days in which mites double, May and June", "44 N", "normals",
                 "16,000 bees, 12,700 brood on 25 April", kPractice, "days", 30, 50,
                 std::log(2.0) / growth, 0, true});
  Start nuc;
  nuc.latitude = -36;
  nuc.date = "2025-11-01";
  nuc.bees = 5000;
  nuc.sealed = 3000;
  nuc.open = 1600;
  nuc.eggs = 800;
  nuc.eggsSeen = true;
  nuc.honeyKg = 5;
  nuc.origin = ColonyOrigin::Split;
  const Run south = run(nuc, 90);
  out.push_back({"A nucleus of 5,000 bees in the southern spring after 63 days", "36 S", "normals",
                 "5,000 bees, 5,400 brood on 1 November", kPractice, "bees", 11000, 26000,
                 south.bees[63].median, 0, true});
  // The edges of where bees are kept.
  for (const auto& [latitude, place, date] : {std::tuple{60.0, "60 N", "2026-05-10"},
                                              {31.0, "31 N", "2026-03-01"},
                                              {-31.0, "31 S", "2025-09-01"},
                                              {-46.0, "46 S", "2025-10-25"}}) {
    Start s;
    s.latitude = latitude;
    s.date = date;
    s.bees = 10000;
    s.sealed = 4500;
    s.open = 2300;
    s.eggs = 1100;
    s.honeyKg = 8;
    s.origin = ColonyOrigin::Wintered;
    s.nestCells = 138000;
    const Run r = run(s, 150);
    double most = 0;
    for (const auto& b : r.bees) most = std::max(most, b.median);
    out.push_back({"A sound spring colony's most adults in 150 days", place, "normals",
                   std::string("10,000 bees, 7,900 brood on ") + date, kPractice, "bees", 20000,
                   50000, most, 0, true});
  }
  return out;
}

std::vector<Course> practiceCourses() {
  std::vector<Course> out;
  const auto add = [&](const char* file, const char* title, const Start& s, int days,
                       const std::vector<Deed>& deeds) {
    out.push_back(
        {file, title, "living adults", Date::parse(s.date).value(), run(s, days, deeds).bees});
  };
  add("calibration_small", "Small colony, 44 N, 25 April", smallInApril(), 130, {});
  add("calibration_stacked", "The same with 5,600 bees from below", smallInApril(), 130, stacked());
  add("calibration_strong", "Strong colony, 44 N, 25 April", strongInApril(), 330, {});
  Start package;
  package.bees = 9000;
  package.sealed = package.open = 0;
  package.honeyKg = 4;
  package.origin = ColonyOrigin::Package;
  add("calibration_package", "Package of 9,000 bees, 45 N, 1 May", package, 120, {});
  return out;
}

}  // namespace outyard::calibration
