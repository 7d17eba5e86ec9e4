// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/assimilation.h"

#include <algorithm>
#include <cmath>

#include "core/forecast/assimilation_parts.h"

namespace outyard::forecast {

using namespace state;

namespace {
/// Days from a queen's emergence to her first eggs: 10.6 on the mean, 4 to 22 (J. Apic. Res. 26:73
/// and 47:1, as read in a summary).
double maidenDays(base::Random& random) {
  return std::clamp(10.0 * exactExp(0.35 * normalDraw(random)), 4.0, 22.0);
}
}  // namespace

void act(ColonyEnsemble& ce, const Action& a, base::Random& random) {
  Ensemble& e = ce.e;
  for (int m = 0; m < e.members; ++m) {
    const auto scaleAdults = [&](double f) {
      for (int k = 0; k < kYoungDays; ++k) e.value(kYoung + k)[m] *= static_cast<float>(f);
      for (int v : {kOlder, kForagers, kWinter, kMites}) e.value(v)[m] *= static_cast<float>(f);
    };
    const auto addBrood = [&](int first, int n, double cells) {
      const double now = total(e, first, n, m);
      for (int k = 0; k < n; ++k) {
        float& v = e.value(first + k)[m];
        v = cells < 0
                ? static_cast<float>(static_cast<double>(v) * std::max(0.0, 1 + cells / (now + 1)))
                : v + static_cast<float>(cells / n);
      }
    };
    const double vary = exactExp(0.15 * normalDraw(random));
    float& honey = e.value(kHoney)[m];
    switch (a.kind) {
      case Action::Kind::Boxes:
        e.param(Param::NestCells)[m] = static_cast<float>(a.amount);
        e.param(Param::SuperCells)[m] = static_cast<float>(a.amount2);
        break;
      case Action::Kind::Feed:
        honey += static_cast<float>(a.amount * vary);
        break;
      case Action::Kind::Pollen:
        e.value(kPollen)[m] += static_cast<float>(a.amount);
        break;
      case Action::Kind::Harvest:
        honey = std::max(1.0F, honey - static_cast<float>(a.amount));
        break;
      case Action::Kind::BroodIn:
        addBrood(kSealed, kSealedDays, a.amount * vary);
        break;
      case Action::Kind::OpenIn:
        addBrood(kOpen, kOpenDays, a.amount * vary);
        break;
      case Action::Kind::BeesIn: {
        const double now = adults(e, m);
        if (a.amount < 0) {
          scaleAdults(std::max(0.05, 1 + a.amount * vary / (now + 1)));
        } else {
          for (int k = 0; k < kYoungDays; ++k) {
            e.value(kYoung + k)[m] += static_cast<float>(a.amount * vary / kYoungDays);
          }
        }
        break;
      }
      case Action::Kind::QueenGone:
        e.value(kQueenless)[m] =
            random.uniform() < 0.78 ? static_cast<float>(12 + maidenDays(random)) : -1.0F;
        break;
      case Action::Kind::QueenIn:
        e.value(kQueenless)[m] =
            random.uniform() < 0.78 ? static_cast<float>(3 + 6 * random.uniform()) : -1.0F;
        break;
      case Action::Kind::CellIn:
        e.value(kQueenless)[m] =
            random.uniform() < 0.8
                ? static_cast<float>(1 + 3 * random.uniform() + maidenDays(random))
                : -1.0F;
        break;
      case Action::Kind::Swarmed:
        scaleAdults(0.25 + 0.25 * random.uniform());
        e.value(kQueenless)[m] =
            random.uniform() < 0.8 ? static_cast<float>(7 + maidenDays(random)) : -1.0F;
        break;
      case Action::Kind::Treated:
        e.value(kMites)[m] *= static_cast<float>(0.03 + 0.22 * random.uniform());
        // Vapours (thymol, formic acid) set laying back and empty cells; amount is the chance that
        // this was one (size: our assumption).
        if (random.uniform() < a.amount) {
          const double left = 0.8 * random.uniform();
          for (int v = kEgg; v < kSealed; ++v) e.value(v)[m] *= static_cast<float>(left);
          e.value(kErrorLay)[m] -= static_cast<float>(0.6 * random.uniform());
        }
        break;
      case Action::Kind::KeepShare:
        scaleAdults(a.amount);
        for (int v = kEgg; v < kYoung; ++v) e.value(v)[m] *= static_cast<float>(a.amount);
        break;
      case Action::Kind::Robbed:
        honey *= static_cast<float>(0.1 + 0.5 * random.uniform());
        scaleAdults(0.6 + 0.35 * random.uniform());
        break;
      case Action::Kind::Warmth:
        e.param(Param::CoverShell)[m] *= static_cast<float>(a.amount);
        break;
      case Action::Kind::RoomIn:
        e.param(Param::NestCells)[m] += static_cast<float>(a.amount);
        break;
      case Action::Kind::LosesFieldBees:
        e.value(kForagers)[m] *= static_cast<float>(1 - a.amount);
        break;
    }
  }
}

}  // namespace outyard::forecast
