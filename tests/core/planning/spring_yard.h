// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/planning/boost.h"
#include "tests/support/season_builder.h"

/// An invented yard on 25 April for the tests of the boost plan.
namespace outyard::planning::testing {

inline constexpr const char* kSpringDay = "2026-04-25";
inline constexpr const char* kSeenDay = "2026-04-22";

class SpringYard : public tests::SeasonBuilder {
 public:
  explicit SpringYard(const std::string& yardName = "TR") { addYard(yardName); }

  SpringYard& addYard(const std::string& name) {
    yard(name);
    apiary::Flow pollen;
    pollen.yard = base::YardId(name);
    pollen.fromDay = 85;
    pollen.toDay = 273;
    pollen.pollen = 2;
    put(pollen);
    m_yard = name;
    return *this;
  }
  /// Good laying queen, compact brood, few bees.
  SpringYard& small(const std::string& hive, double seams = 2.5, const char* seen = kSeenDay) {
    livingHive(hive, m_yard, 1, 1, 1);
    inspection(hive, seen, [&](apiary::Inspection& i) {
      i.seams = seams;
      i.eggsSeen = true;
      i.pattern = 5;
      i.framesWithBrood = 2;
      i.sealedBroodFrames = 0.4 * seams / 2.5;
      i.openBroodFrames = 0.3 * seams / 2.5;
      i.honeyKg = 9;
    });
    return *this;
  }
  SpringYard& strong(const std::string& hive, double seams = 9, const char* seen = kSeenDay) {
    livingHive(hive, m_yard, 3, 1, 2);
    inspection(hive, seen, [&](apiary::Inspection& i) {
      i.seams = seams;
      i.eggsSeen = true;
      i.pattern = 5;
      i.framesWithBrood = 7;
      i.sealedBroodFrames = 2.2;
      i.openBroodFrames = 1.2;
      i.queenCells = 0;
      i.honeyKg = 14;
    });
    return *this;
  }
  SpringYard& queenless(const std::string& hive, double seams = 4) {
    livingHive(hive, m_yard, 5, 1, 1);
    inspection(hive, kSeenDay, [&](apiary::Inspection& i) {
      i.seams = seams;
      i.eggsSeen = false;
      i.queenSeen = false;
      i.framesWithBrood = 0;
      i.sealedBroodFrames = 0;
      i.openBroodFrames = 0;
      i.honeyKg = 9;
    });
    return *this;
  }
  SpringYard& weather(const char* date, double tmin, double tmax,
                      apiary::WeatherKind kind = apiary::WeatherKind::Forecast) {
    apiary::WeatherDay w;
    w.yard = base::YardId(m_yard);
    w.date = tests::day(date);
    w.tminC = tmin;
    w.tmaxC = tmax;
    w.kind = kind;
    put(w);
    return *this;
  }
  /// Warm days from the given one on.
  SpringYard& warm(const char* from, int days = 14) {
    for (int n = 0; n < days; ++n) {
      weather(tests::day(from).plusDays(n).iso().c_str(), 6, 17);
    }
    return *this;
  }
  SpringYard& gear(const std::string& item, const std::string& place, const char* date,
                   double count) {
    apiary::GearCount g;
    g.item = item;
    g.place = place;
    g.date = tests::day(date);
    g.count = count;
    put(g);
    return *this;
  }
  SpringYard& event(apiary::EventKind kind, const std::string& hive, const char* date) {
    apiary::Event e;
    static_cast<apiary::RecordHead&>(e) = head();
    e.kind = kind;
    e.hive = base::HiveId(hive);
    e.date = tests::day(date);
    put(e);
    return *this;
  }
  SpringYard& set(const std::string& name, const std::string& value) {
    put(apiary::Setting{name, value, "test"});
    return *this;
  }

 private:
  std::string m_yard;
};

inline BoostRequest springRequest(std::vector<std::string> yards = {"TR"}) {
  BoostRequest r;
  for (auto& y : yards) r.yards.emplace_back(y);
  r.date = tests::day(kSpringDay);
  return r;
}

inline BoostPlan planOf(const apiary::Season& season, const BoostRequest& request) {
  auto problem = makeBoostProblem(season, request);
  base::Progress quiet;
  auto plan = solveBoost(problem.value(), quiet);
  return plan.value();
}

inline bool hasKey(const std::vector<base::Message>& list, const std::string& key) {
  for (const auto& m : list) {
    if (m.key == key) return true;
  }
  return false;
}
/// Like hasKey, also inside the arguments.
inline const base::Message* findKey(const std::vector<base::Message>& list,
                                    const std::string& key) {
  for (const auto& m : list) {
    if (m.key == key) return &m;
    for (const auto& a : m.args) {
      const auto* inner = std::get_if<base::Message>(&a);
      if (inner && inner->key == key) return inner;
    }
  }
  return nullptr;
}

}  // namespace outyard::planning::testing
