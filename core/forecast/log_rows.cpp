// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/log_rows.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/forecast/assimilation_parts.h"
#include "core/forecast/exact_math_wide.h"

namespace outyard::forecast {
namespace {

using namespace state;

/// A group of state variables that an update scales together.
struct Group {
  int first, count;
  double small;  ///< added before the logarithm
  bool adults = false;
};
constexpr std::array kGroups{Group{kEgg, kEggDays, 20},        Group{kOpen, kOpenDays, 40},
                             Group{kSealed, kSealedDays, 60},  Group{kYoung, kYoungDays, 40, true},
                             Group{kOlder, 1, 40, true},       Group{kForagers, 1, 20, true},
                             Group{kWinter, 1, 40, true},      Group{kHoney, 1, 0.2},
                             Group{kMites, 1 + kSealedDays, 2}};
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

// Sums are taken in four strands, always the same ones.
struct Moments {
  double mean = 0, variance = 0;
};
double total(Pair a, Pair b) {
  const Pair s = a + b;
  return s[0] + s[1];
}
double meanOf(const std::vector<double>& x) {
  Pair a{}, b{};
  for (std::size_t m = 0; m < x.size(); m += 4) {
    a += loadPair(&x[m]);
    b += loadPair(&x[m + 2]);
  }
  return total(a, b) / static_cast<double>(x.size());
}
/// Sum of the products of what x and y differ from their means.
double productSum(const std::vector<double>& x, double xMean, const std::vector<double>& y,
                  double yMean) {
  Pair a{}, b{};
  for (std::size_t m = 0; m < x.size(); m += 4) {
    a += (loadPair(&x[m]) - xMean) * (loadPair(&y[m]) - yMean);
    b += (loadPair(&x[m + 2]) - xMean) * (loadPair(&y[m + 2]) - yMean);
  }
  return total(a, b);
}
Moments momentsOf(const std::vector<double>& x) {
  const double mean = meanOf(x);
  return {mean, productSum(x, mean, x, mean) / static_cast<double>(x.size() - 1)};
}

void logsOf(std::vector<double>& x, double small) {
  for (std::size_t m = 0; m < x.size(); m += 2) storePair(&x[m], exactLog(loadPair(&x[m]) + small));
}

}  // namespace

LogRows::LogRows(ColonyEnsemble& ce)
    : m_ce(ce), m_n(static_cast<std::size_t>(ce.e.members)), m_expected(m_n), m_pull(m_n) {
  m_rows.resize(kGroups.size());
  m_totals.resize(kGroups.size());
  readGroups();
  for (const Learnt& l : kLearnt) push(ce.e.param(l.param));
  push(ce.seenShare.data());
  push(ce.sealedRead.data());
  for (const int v : kSlowErrors) {
    const float* x = ce.e.value(v);
    m_rows.emplace_back(x, x + m_n);
  }
  for (const auto& r : ce.readers) {
    push(r.bees.data());
    push(r.brood.data());
  }
}

void LogRows::readGroups() {
  for (std::size_t g = 0; g < kGroups.size(); ++g) {
    Row& sum = m_totals[g];
    sum.assign(m_n, 0.0);
    for (int k = 0; k < kGroups[g].count; ++k) {
      const float* x = m_ce.e.value(kGroups[g].first + k);
      for (std::size_t m = 0; m < m_n; ++m) sum[m] += static_cast<double>(x[m]);
    }
    m_rows[g] = sum;
    logsOf(m_rows[g], kGroups[g].small);
  }
}

void LogRows::push(const float* values) {
  m_rows.emplace_back(values, values + m_n);
  logsOf(m_rows.back(), 1e-9);
}

void LogRows::writeGroup(std::size_t g) {
  const Group& group = kGroups[g];
  Row &row = m_rows[g], &sum = m_totals[g];
  std::vector<float> factor(m_n);
  for (std::size_t m = 0; m < m_n; m += 2) {
    const Pair wanted = exactExp(loadPair(&row[m])) - group.small;
    for (std::size_t i = 0; i < 2; ++i) {
      const double old = sum[m + i], now = std::max(0.0, wanted[static_cast<int>(i)]);
      if (old > 1e-6) {
        const double ratio = now / old, f = std::clamp(ratio, 0.02, 50.0);
        factor[m + i] = static_cast<float>(f);
        sum[m + i] = old * f;
        // Held back: the row says what stands there.
        if (f != ratio) row[m + i] = exactLog(sum[m + i] + group.small);
      } else {
        // Nothing there to be scaled: spread evenly over the ages.
        factor[m + i] = 0.0F;
        for (int k = 0; k < group.count; ++k) {
          m_ce.e.value(group.first + k)[m + i] = static_cast<float>(now / group.count);
        }
        sum[m + i] = now;
      }
    }
  }
  for (int k = 0; k < group.count; ++k) {
    float* x = m_ce.e.value(group.first + k);
    for (std::size_t m = 0; m < m_n; ++m) x[m] = factor[m] > 0.0F ? x[m] * factor[m] : x[m];
  }
  if (group.first != kMites) return;
  // The mites of past weeks went with those of today.
  float* ridden = m_ce.e.value(kRidden);
  for (std::size_t m = 0; m < m_n; ++m) ridden[m] = std::clamp(ridden[m] * factor[m], 0.0F, 0.25F);
}

void LogRows::writeLogs(std::size_t r, float* values, double low, double high) {
  Row& row = m_rows[r];
  for (std::size_t m = 0; m < m_n; m += 2) {
    const Pair v = exactExp(loadPair(&row[m]));
    for (std::size_t i = 0; i < 2; ++i) {
      const double x = v[static_cast<int>(i)], kept = std::clamp(x, low, high);
      values[m + i] = static_cast<float>(kept);
      if (kept != x) row[m + i] = exactLog(kept);
    }
  }
}

void LogRows::write(std::size_t r) {
  if (r < kGroups.size()) return writeGroup(r);
  std::size_t k = r - kGroups.size();
  if (k < kLearnt.size()) {
    return writeLogs(r, m_ce.e.param(kLearnt[k].param), kLearnt[k].low, kLearnt[k].high);
  }
  k -= kLearnt.size();
  if (k == 0) return writeLogs(r, m_ce.seenShare.data(), 0.2, 1.6);
  if (k == 1) return writeLogs(r, m_ce.sealedRead.data(), 0.5, 2.5);
  k -= 2;
  if (k < kSlowErrors.size()) {
    float* x = m_ce.e.value(kSlowErrors[k]);
    for (std::size_t m = 0; m < m_n; ++m) {
      m_rows[r][m] = std::clamp(m_rows[r][m], -4.0, 4.0);
      x[m] = static_cast<float>(m_rows[r][m]);
    }
    return;
  }
  k -= kSlowErrors.size();
  auto& reader = m_ce.readers[k / 2];
  writeLogs(r, k % 2 == 0 ? reader.bees.data() : reader.brood.data(), 0.3, 3);
}

double LogRows::update(const Reading& reading, base::Random& random) {
  Row& h = m_expected;
  for (std::size_t m = 0; m < m_n; ++m) h[m] = reading.expected(static_cast<int>(m));
  const Moments hm = momentsOf(h);
  // Inflation of the ensemble's spread keeps it from growing too sure.
  const double r = reading.sigma * reading.sigma;
  const double spread = hm.variance * 1.08 + 1e-8;
  const double off = (reading.logSeen - hm.mean) / std::sqrt(spread + r);
  const double far = off < 0 ? -off : off;
  // A reading far outside is taken with more error rather than tearing the ensemble.
  const double stretch = std::max(1.0, far / 2.5);
  const double used = (spread + r) * stretch * stretch - spread;
  // What was counted itself is believed before what brood far off would make of it.
  const double little = reading.beesKnown && far > 1.5 ? 2.25 / (far * far) : 1.0;
  for (std::size_t m = 0; m < m_n; ++m) {
    m_pull[m] = reading.logSeen + std::sqrt(used) * normalDraw(random) - h[m];
  }
  const double cut = 2.0 / std::sqrt(static_cast<double>(m_n));
  for (std::size_t k = 0; k < m_rows.size(); ++k) {
    Row& row = m_rows[k];
    const Moments xm = momentsOf(row);
    const double covariance = productSum(row, xm.mean, h, hm.mean) / static_cast<double>(m_n - 1);
    const double correlation = covariance / std::sqrt(xm.variance * hm.variance + 1e-300);
    if ((correlation < 0 ? -correlation : correlation) < cut) continue;
    const bool adults = k < kGroups.size() && kGroups[k].adults;
    const double gain = covariance / (spread + used) * (adults ? little : 1.0);
    for (std::size_t m = 0; m < m_n; m += 2) {
      storePair(&row[m], loadPair(&row[m]) + gain * loadPair(&m_pull[m]));
    }
    write(k);
  }
  return off;
}

}  // namespace outyard::forecast
