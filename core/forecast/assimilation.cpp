// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/assimilation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "core/forecast/assimilation_parts.h"
#include "core/forecast/exact_math.h"

namespace outyard::forecast {
namespace {

using namespace state;

/// A group of state variables that an update scales together.
struct Group {
  int first, count;
  double small;  ///< added before the logarithm
};
constexpr std::array kGroups{
    Group{kEgg, kEggDays, 20},     Group{kOpen, kOpenDays, 40}, Group{kSealed, kSealedDays, 60},
    Group{kYoung, kYoungDays, 40}, Group{kOlder, 1, 40},        Group{kForagers, 1, 20},
    Group{kWinter, 1, 40},         Group{kHoney, 1, 0.2},       Group{kMites, 1 + kSealedDays, 2}};
/// A parameter that looks may move, and how far at most.
struct Learnt {
  Param param;
  double low, high;
};
constexpr std::array kLearnt{Learnt{Param::QueenPotential, 300, 3000},
                             Learnt{Param::CoverCells, 1, 15},
                             Learnt{Param::CoverShell, 0.2, 3},
                             Learnt{Param::CareCeiling, 0.5, 5},
                             Learnt{Param::FillDays, 2, 20},
                             Learnt{Param::HouseDeath, 0.001, 0.1},
                             Learnt{Param::WinterDeath, 0.001, 0.03},
                             Learnt{Param::ForagerHourDeath, 0.005, 0.3},
                             Learnt{Param::ForagerDayDeath, 0.002, 0.3},
                             Learnt{Param::RecruitMost, 0.03, 0.5},
                             Learnt{Param::RecruitSlope, 0.05, 1.5},
                             Learnt{Param::Income, 0.1, 6},
                             Learnt{Param::Use, 0.3, 3}};

/// Model errors that last for weeks are learnt as they are, not as logarithms.
constexpr std::array kSlowErrors{kErrorLay, kErrorLife};

/// Values that the update moves: groups, parameters and the two reading factors as logarithms, and
/// the slow model errors.
class LogState {
 public:
  explicit LogState(ColonyEnsemble& ce) : m_ce(ce), m_n(ce.e.members) { read(); }

  void read() {
    m_rows.clear();
    for (const Group& g : kGroups) {
      std::vector<double> row(static_cast<std::size_t>(m_n));
      for (int m = 0; m < m_n; ++m) {
        row[static_cast<std::size_t>(m)] = exactLog(total(m_ce.e, g.first, g.count, m) + g.small);
      }
      m_rows.push_back(std::move(row));
    }
    for (const Learnt& l : kLearnt) pushLog(m_ce.e.param(l.param));
    pushLog(m_ce.seenShare.data());
    pushLog(m_ce.sealedRead.data());
    for (const int v : kSlowErrors) {
      const float* x = m_ce.e.value(v);
      m_rows.emplace_back(x, x + m_n);
    }
    for (const auto& r : m_ce.readers) {
      pushLog(r.bees.data());
      pushLog(r.brood.data());
    }
  }
  [[nodiscard]] std::vector<std::vector<double>>& rows() { return m_rows; }

  /// Writes back the rows that an update moved.
  void write(const std::vector<char>& moved) {
    for (std::size_t g = 0; g < kGroups.size(); ++g) {
      if (!moved[g]) continue;
      const Group& group = kGroups[g];
      for (int m = 0; m < m_n; ++m) {
        const double old = total(m_ce.e, group.first, group.count, m);
        const double now =
            std::max(0.0, exactExp(m_rows[g][static_cast<std::size_t>(m)]) - group.small);
        const double factor = old > 1e-6 ? std::clamp(now / old, 0.02, 50.0) : 0.0;
        if (group.first == kMites) {  // the mites of past weeks went with those of today
          float& ridden = m_ce.e.value(kRidden)[m];
          ridden = std::clamp(ridden * static_cast<float>(factor), 0.0F, 0.25F);
        }
        for (int k = 0; k < group.count; ++k) {
          float& v = m_ce.e.value(group.first + k)[m];
          v = old > 1e-6 ? static_cast<float>(static_cast<double>(v) * factor)
                         : static_cast<float>(now / group.count);
        }
      }
    }
    std::size_t row = kGroups.size();
    const auto pop = [&](float* values, double low, double high) {
      if (moved[row]) popLog(values, row, low, high);
      ++row;
    };
    for (const Learnt& l : kLearnt) pop(m_ce.e.param(l.param), l.low, l.high);
    pop(m_ce.seenShare.data(), 0.2, 1.6);
    pop(m_ce.sealedRead.data(), 0.5, 2.5);
    for (const int v : kSlowErrors) {
      for (int m = 0; m < m_n && moved[row]; ++m) {
        m_ce.e.value(v)[m] =
            static_cast<float>(std::clamp(m_rows[row][static_cast<std::size_t>(m)], -4.0, 4.0));
      }
      ++row;
    }
    for (auto& r : m_ce.readers) {
      pop(r.bees.data(), 0.3, 3);
      pop(r.brood.data(), 0.3, 3);
    }
  }

 private:
  void pushLog(const float* values) {
    std::vector<double> row(static_cast<std::size_t>(m_n));
    for (int m = 0; m < m_n; ++m) {
      row[static_cast<std::size_t>(m)] = exactLog(static_cast<double>(values[m]) + 1e-9);
    }
    m_rows.push_back(std::move(row));
  }
  void popLog(float* values, std::size_t row, double low, double high) {
    for (int m = 0; m < m_n; ++m) {
      const double v = exactExp(m_rows[row][static_cast<std::size_t>(m)]);
      values[m] = static_cast<float>(std::clamp(v, low, high));
    }
  }
  ColonyEnsemble& m_ce;
  int m_n;
  std::vector<std::vector<double>> m_rows;
};

struct Moments {
  double mean = 0, variance = 0;
};
Moments momentsOf(const std::vector<double>& x) {
  Moments out;
  for (const double v : x) out.mean += v;
  out.mean /= static_cast<double>(x.size());
  for (const double v : x) out.variance += (v - out.mean) * (v - out.mean);
  out.variance /= static_cast<double>(x.size() - 1);
  return out;
}

/// One reading of one quantity. expected gives the logarithm that each member would have read.
struct Reading {
  double logSeen = 0, sigma = 0;
  std::function<double(int)> expected;
};

/// Returns how many standard deviations the reading lay off.
double update(ColonyEnsemble& ce, const Reading& reading, base::Random& random) {
  const int n = ce.e.members;
  std::vector<double> h(static_cast<std::size_t>(n));
  for (int m = 0; m < n; ++m) h[static_cast<std::size_t>(m)] = reading.expected(m);
  const Moments hm = momentsOf(h);
  // Inflation of the ensemble's spread keeps it from growing too sure.
  const double r = reading.sigma * reading.sigma;
  const double spread = hm.variance * 1.08 + 1e-8;
  const double off = (reading.logSeen - hm.mean) / std::sqrt(spread + r);
  // A reading far outside is taken with more error rather than tearing the ensemble.
  const double stretch = std::max(1.0, (off < 0 ? -off : off) / 2.5);
  const double used = (spread + r) * stretch * stretch - spread;
  LogState log(ce);
  std::vector<char> moved(log.rows().size(), 0);
  std::vector<double> push(static_cast<std::size_t>(n));
  for (auto& p : push) p = std::sqrt(used) * normalDraw(random);
  const double cut = 2.0 / std::sqrt(static_cast<double>(n));
  for (std::size_t k = 0; k < log.rows().size(); ++k) {
    auto& row = log.rows()[k];
    const Moments xm = momentsOf(row);
    double covariance = 0;
    for (int m = 0; m < n; ++m) {
      const auto i = static_cast<std::size_t>(m);
      covariance += (row[i] - xm.mean) * (h[i] - hm.mean);
    }
    covariance /= n - 1;
    const double correlation = covariance / std::sqrt(xm.variance * hm.variance + 1e-300);
    if ((correlation < 0 ? -correlation : correlation) < cut) continue;
    moved[k] = 1;
    const double gain = covariance / (spread + used);
    for (int m = 0; m < n; ++m) {
      const auto i = static_cast<std::size_t>(m);
      row[i] += gain * (reading.logSeen + push[i] - h[i]);
    }
  }
  log.write(moved);
  return off;
}

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
  const auto report = [&](double off, bool bees, double expectedLog, double seen) {
    if (off > 1.96 || off < -1.96) {
      out.push_back({look.date, bees, off < 0, exactExp(expectedLog), seen});
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
    const double off =
        update(ce, {logOf(seen->median, small), sigmaOf(*seen, small), expected}, random);
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
  const auto none = [&](const std::optional<strength::Estimate>& seen, int first, int n) {
    if (!seen || seen->median >= 1) return;
    for (int m = 0; m < e.members; ++m) {
      for (int k = 0; k < n; ++k) e.value(first + k)[m] *= 0.01F;
    }
  };
  none(look.sealed, kSealed, kSealedDays);
  none(look.open, kEgg, kEggDays + kOpenDays);
  none(look.eggs, kEgg, kEggDays);
  if (!look.sealed && !look.open) none(look.brood, kEgg, kEggDays + kOpenDays + kSealedDays);
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
  take(look.honeyKg, 0.3, false,
       [&](int m) { return logOf(static_cast<double>(e.value(kHoney)[m]), 0.3); });
  if (look.mitesPer100) {
    // A wash of n bees with k mites: the count's own error, and mites are clumped (from memory).
    const double k = *look.mitesPer100 / 100 * look.washBees;
    const double sigma = std::sqrt(1 / (k + 1) + 0.09);
    update(ce,
           {logOf(*look.mitesPer100, 0.1), sigma,
            [&](int m) {
              return logOf(100 * static_cast<double>(e.value(kMites)[m]) / (adults(e, m) + 1), 0.1);
            }},
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
