// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/assimilation.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "core/forecast/assimilation_parts.h"
#include "core/forecast/exact_math.h"
#include "core/forecast/log_rows.h"

namespace outyard::forecast {
namespace {

using namespace state;

double logOf(double value, double small) {
  return exactLog(value + small);
}

/// Sigma of an estimate, wider where the count is so small that single cells matter.
double sigmaOf(const strength::Estimate& e, double small) {
  const double relative = small / (e.median + small);
  const double s = e.sigmaLog > 0.02 ? e.sigmaLog : 0.15;
  return std::sqrt(s * s * (1 - relative) * (1 - relative) + 0.25 * relative * relative);
}

}  // namespace

double seenBees(const ColonyEnsemble& ce, int member, double bees, double foragers) {
  return (bees - 0.4 * foragers) *
         static_cast<double>(ce.seenShare[static_cast<std::size_t>(member)]);
}

namespace {

/// The named reader of this colony; one not met before gets a draw for each member. The same reader
/// differs from others by up to 15 % (Bartlett et al. 2024).
constexpr double kReaderSpread = 0.1;

const ColonyEnsemble::Reader* readerOf(ColonyEnsemble& ce, const std::string& name,
                                       base::Random& random) {
  if (name.empty()) return nullptr;
  for (const auto& r : ce.readers) {
    if (r.name == name) return &r;
  }
  ColonyEnsemble::Reader r{name, {}, {}};
  for (int m = 0; m < ce.e.members; ++m) {
    r.bees.push_back(static_cast<float>(exactExp(kReaderSpread * normalDraw(random))));
    r.brood.push_back(static_cast<float>(exactExp(kReaderSpread * normalDraw(random))));
  }
  ce.readers.push_back(std::move(r));
  return &ce.readers.back();
}

}  // namespace

std::vector<Surprise> assimilate(ColonyEnsemble& ce, const Look& look, base::Random& random) {
  const ColonyEnsemble::Reader* reader = readerOf(ce, look.reader, random);
  std::vector<Surprise> out;
  Ensemble& e = ce.e;
  LogRows rows(ce);
  const auto report = [&](double off, bool bees, double expectedLog, double seen) {
    if (off > 1.96 || off < -1.96) {
      out.push_back({look.date, bees, off < 0, exactExp(expectedLog), seen, false});
    }
  };
  const auto meanOf = [&](const std::function<double(int)>& f) {
    double sum = 0;
    for (int m = 0; m < e.members; ++m) sum += f(m);
    return sum / e.members;
  };
  const auto take = [&](const std::optional<strength::Estimate>& seen, double small, bool bees,
                        const std::function<double(int)>& expected) {
    if (!seen) return;
    if (!bees && seen->median < 1) return;  // none seen: a definite zero, above
    const double centre = meanOf(expected);
    const double off = rows.update({logOf(seen->median, small), sigmaOf(*seen, small), expected,
                                    !bees && look.bees.has_value()},
                                   random);
    report(off, bees, centre, seen->median);
  };
  // Laying or not, first: whether eggs were seen decides which members can be right.
  if (look.eggsSeen && *look.eggsSeen) {
    for (int m = 0; m < e.members; ++m) e.value(kQueenless)[m] = 0;
  }
  take(look.bees, 30, true, [&](int m) {
    const double own = reader ? static_cast<double>(reader->bees[static_cast<std::size_t>(m)]) : 1;
    return logOf(own * seenBees(ce, m, adults(e, m), static_cast<double>(e.value(kForagers)[m])),
                 30);
  });
  // No brood at all where there should be some, and nothing said of eggs: the queen may be gone, a
  // new one may be on her way, or one begins to lay (shares: our assumption).
  const auto zero = [](const std::optional<strength::Estimate>& seen) {
    return seen && seen->median < 1;
  };
  if (!look.eggsSeen && (zero(look.brood) || (zero(look.sealed) && zero(look.open)))) {
    for (int m = 0; m < e.members; ++m) {
      float& queenless = e.value(kQueenless)[m];
      if (queenless != 0.0F || total(e, kEgg, kYoung - kEgg, m) < 100) continue;
      const double u = random.uniform(), days = random.uniform();
      if (u < 0.35) queenless = -1;
      if (u >= 0.35 && u < 0.8) queenless = static_cast<float>(1 + 20 * days);
    }
  }
  // None seen where it was looked for: a definite zero, not a small number with an error.
  bool cleared = false;
  const auto none = [&](const std::optional<strength::Estimate>& seen, int first, int n) {
    if (!seen || seen->median >= 1) return;
    cleared = true;
    for (int m = 0; m < e.members; ++m) {
      for (int k = 0; k < n; ++k) e.value(first + k)[m] *= 0.01F;
    }
  };
  none(look.sealed, kSealed, kSealedDays);
  none(look.open, kEgg, kEggDays + kOpenDays);
  none(look.eggs, kEgg, kEggDays);
  if (!look.sealed && !look.open) none(look.brood, kEgg, kEggDays + kOpenDays + kSealedDays);
  if (cleared) rows.readGroups();
  const auto read = [&](int m) {
    const auto i = static_cast<std::size_t>(m);
    return static_cast<double>(ce.sealedRead[i]) *
           (reader ? static_cast<double>(reader->brood[i]) : 1);
  };
  take(look.sealed, 60, false,
       [&](int m) { return logOf(total(e, kSealed, kSealedDays, m) * read(m), 60); });
  take(look.open, 60, false, [&](int m) {
    return logOf((total(e, kOpen, kOpenDays, m) + total(e, kEgg, kEggDays, m)) * read(m), 60);
  });
  take(look.eggs, 40, false,
       [&](int m) { return logOf(total(e, kEgg, kEggDays, m) * read(m), 40); });
  if (!look.sealed && !look.open) {
    take(look.brood, 100, false, [&](int m) {
      return logOf((total(e, kSealed, kSealedDays, m) + total(e, kOpen, kOpenDays, m) +
                    total(e, kEgg, kEggDays, m)) *
                       read(m),
                   100);
    });
  }
  const std::size_t before = out.size();
  take(look.honeyKg, 0.3, false,
       [&](int m) { return logOf(static_cast<double>(e.value(kHoney)[m]), 0.3); });
  for (std::size_t i = before; i < out.size(); ++i) out[i].stores = true;
  if (look.mitesPer100) {
    // A wash of n bees with k mites: the count's own error, and mites are clumped (from memory).
    const double k = *look.mitesPer100 / 100 * look.washBees;
    const double sigma = std::sqrt(1 / (k + 1) + 0.09);
    rows.update({logOf(*look.mitesPer100, 0.1), sigma,
                 [&](int m) {
                   return logOf(100 * static_cast<double>(e.value(kMites)[m]) / (adults(e, m) + 1),
                                0.1);
                 },
                 look.bees.has_value()},
                random);
  }
  if (look.eggsSeen && !*look.eggsSeen) {
    // No eggs where eggs were looked for: most likely nobody lays; some readers miss them.
    for (int m = 0; m < e.members; ++m) {
      const double u = random.uniform();
      if (u < 0.5) e.value(kQueenless)[m] = static_cast<float>(1 + 23 * random.uniform());
      if (u < 0.25) e.value(kQueenless)[m] = -1;
      if (u < 0.7) {
        for (int k = 0; k < kEggDays; ++k) e.value(kEgg + k)[m] = 0;
      }
    }
  }
  return out;
}

}  // namespace outyard::forecast
