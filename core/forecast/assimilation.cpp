// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/assimilation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "core/forecast/day_length.h"
#include "core/forecast/exact_math.h"

namespace outyard::forecast {
namespace {

using namespace state;

double normalDraw(base::Random& random) {
  for (;;) {
    const double u = 2 * random.uniform() - 1, v = 2 * random.uniform() - 1;
    const double s = u * u + v * v;
    if (s > 0 && s < 1) return u * std::sqrt(-2 * exactLog(s) / s);
  }
}
double exponentialDraw(base::Random& random) {
  return -exactLog(1 - random.uniform());
}

double total(const Ensemble& e, int first, int n, int m) {
  double sum = 0;
  for (int i = 0; i < n; ++i) sum += static_cast<double>(e.value(first + i)[m]);
  return sum;
}
double adults(const Ensemble& e, int m) {
  return total(e, kYoung, kYoungDays, m) + static_cast<double>(e.value(kOlder)[m]) +
         static_cast<double>(e.value(kForagers)[m]) + static_cast<double>(e.value(kWinter)[m]);
}

/// A group of state variables that an update scales together.
struct Group {
  int first, count;
  double small;  ///< added before the logarithm
};
constexpr std::array kGroups{
    Group{kEgg, kEggDays, 20},     Group{kOpen, kOpenDays, 40}, Group{kSealed, kSealedDays, 60},
    Group{kYoung, kYoungDays, 40}, Group{kOlder, 1, 40},        Group{kForagers, 1, 20},
    Group{kWinter, 1, 40},         Group{kHoney, 1, 0.2},       Group{kMites, 1, 2}};
constexpr std::array kLearnt{Param::QueenPotential, Param::CoverCells,       Param::CoverShell,
                             Param::CareCeiling,    Param::FillDays,         Param::HouseDeath,
                             Param::WinterDeath,    Param::ForagerHourDeath, Param::ForagerDayDeath,
                             Param::RecruitMost,    Param::Income,           Param::Use};

/// Values that the update moves, all as logarithms: groups, parameters, the two reading factors.
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
    for (const Param p : kLearnt) pushLog(m_ce.e.param(p));
    pushLog(m_ce.seenShare.data());
    pushLog(m_ce.sealedRead.data());
  }
  [[nodiscard]] std::vector<std::vector<double>>& rows() { return m_rows; }

  void write(const std::vector<std::vector<double>>& before) {
    for (std::size_t g = 0; g < kGroups.size(); ++g) {
      const Group& group = kGroups[g];
      for (int m = 0; m < m_n; ++m) {
        const auto i = static_cast<std::size_t>(m);
        const double old = exactExp(before[g][i]) - group.small;
        const double now = std::max(0.0, exactExp(m_rows[g][i]) - group.small);
        const double factor = old > 1e-6 ? std::clamp(now / old, 0.02, 50.0) : 0.0;
        for (int k = 0; k < group.count; ++k) {
          float& v = m_ce.e.value(group.first + k)[m];
          v = old > 1e-6 ? static_cast<float>(static_cast<double>(v) * factor)
                         : static_cast<float>(now / group.count);
        }
      }
    }
    std::size_t row = kGroups.size();
    for (const Param p : kLearnt) popLog(m_ce.e.param(p), row++);
    popLog(m_ce.seenShare.data(), row++);
    popLog(m_ce.sealedRead.data(), row++);
  }

 private:
  void pushLog(const float* values) {
    std::vector<double> row(static_cast<std::size_t>(m_n));
    for (int m = 0; m < m_n; ++m) {
      row[static_cast<std::size_t>(m)] = exactLog(static_cast<double>(values[m]) + 1e-9);
    }
    m_rows.push_back(std::move(row));
  }
  void popLog(float* values, std::size_t row) {
    for (int m = 0; m < m_n; ++m) {
      values[m] = static_cast<float>(exactExp(m_rows[row][static_cast<std::size_t>(m)]));
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
  const auto before = log.rows();
  std::vector<double> push(static_cast<std::size_t>(n));
  for (auto& p : push) p = std::sqrt(used) * normalDraw(random);
  const double cut = 2.0 / std::sqrt(static_cast<double>(n));
  for (auto& row : log.rows()) {
    const Moments xm = momentsOf(row);
    double covariance = 0;
    for (int m = 0; m < n; ++m) {
      const auto i = static_cast<std::size_t>(m);
      covariance += (row[i] - xm.mean) * (h[i] - hm.mean);
    }
    covariance /= n - 1;
    const double correlation = covariance / std::sqrt(xm.variance * hm.variance + 1e-300);
    if ((correlation < 0 ? -correlation : correlation) < cut) continue;
    const double gain = covariance / (spread + used);
    for (int m = 0; m < n; ++m) {
      const auto i = static_cast<std::size_t>(m);
      row[i] += gain * (reading.logSeen + push[i] - h[i]);
    }
  }
  log.write(before);
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
    // Three keepers in four feed before a colony starves (our assumption).
    e.param(Param::KeeperFeeds)[m] = random.uniform() < 0.75 ? 1.0F : 0.0F;
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
    double brood =
        young && !firstLook ? 0.0 : bees * 1.1 * lay * exactExp(0.5 * normalDraw(random));
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
    const double youngShare = young ? 0.65 : 0.3 + 0.3 * random.uniform();
    for (int k = 0; k < kYoungDays; ++k) {
      e.value(kYoung + k)[m] = static_cast<float>(nest * youngShare / kYoungDays);
    }
    e.value(kOlder)[m] = static_cast<float>(nest * (1 - youngShare));
    e.value(kForagers)[m] = static_cast<float>(field);
    e.value(kWinter)[m] = static_cast<float>(winter);
    e.value(kHoney)[m] = static_cast<float>((young ? 4.0 : (winterTime ? 14.0 : 9.0)) *
                                            exactExp(0.5 * normalDraw(random)));
    e.value(kPollen)[m] = static_cast<float>(0.7 * exactExp(0.5 * normalDraw(random)));
    e.value(kMites)[m] = static_cast<float>(bees * 0.008 * exactExp(1.0 * normalDraw(random)) *
                                            (day > 180 ? 2.0 : 1.0));
    e.random[i] = static_cast<std::uint32_t>(random.next() >> 33) | 1U;
  }
  return ce;
}

std::vector<Surprise> assimilate(ColonyEnsemble& ce, const Look& look, base::Random& random) {
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
    return logOf(seenBees(ce, m, adults(e, m), static_cast<double>(e.value(kForagers)[m])), 30);
  });
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
    return static_cast<double>(ce.sealedRead[static_cast<std::size_t>(m)]);
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
        e.value(kQueenless)[m] = random.uniform() < 0.78 ? 24 : -1;
        break;
      case Action::Kind::QueenIn:
        e.value(kQueenless)[m] =
            random.uniform() < 0.78 ? static_cast<float>(3 + 6 * random.uniform()) : -1.0F;
        break;
      case Action::Kind::CellIn:
        e.value(kQueenless)[m] =
            random.uniform() < 0.8 ? static_cast<float>(9 + 7 * random.uniform()) : -1.0F;
        break;
      case Action::Kind::Swarmed:
        scaleAdults(0.25 + 0.25 * random.uniform());
        e.value(kQueenless)[m] = random.uniform() < 0.8 ? 18 : -1;
        break;
      case Action::Kind::Treated:
        e.value(kMites)[m] *= static_cast<float>(0.03 + 0.22 * random.uniform());
        break;
      case Action::Kind::KeepShare:
        scaleAdults(a.amount);
        for (int v = kEgg; v < kYoung; ++v) e.value(v)[m] *= static_cast<float>(a.amount);
        break;
      case Action::Kind::Robbed:
        honey *= static_cast<float>(0.1 + 0.5 * random.uniform());
        scaleAdults(0.6 + 0.35 * random.uniform());
        break;
      case Action::Kind::LosesFieldBees:
        e.value(kForagers)[m] *= static_cast<float>(1 - a.amount);
        break;
    }
  }
}

}  // namespace outyard::forecast
