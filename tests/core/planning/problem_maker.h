// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>

#include "core/base/random.h"
#include "core/planning/boost.h"
#include "core/planning/boost_build.h"

/// Made-up boost problems: small enough to try all combinations, with every kind of limit.
namespace outyard::planning::testing {

/// The full count when OUTYARD_LONG is set, a seeded tenth otherwise.
inline int howMany(int full) {
  return std::getenv("OUTYARD_LONG") ? full : full / 10;
}

struct Shape {
  int colonies = 4, donors = 3, perColony = 4;
  bool visits = true;
};

inline BoostProblem randomProblem(std::uint64_t seed, Shape shape) {
  base::Random random(seed);
  const auto pick = [&](int n) {
    return static_cast<int>(random.below(static_cast<std::uint64_t>(n)));
  };
  BoostProblem p;
  p.request.date = *base::Date::parse("2026-04-25");
  p.request.yards = {base::YardId("Y1"), base::YardId("Y2")};
  p.target = p.request.date.plusDays(45);
  const bool coarse = pick(4) == 0;  // many equal values: ties
  const auto value = [&] {
    const double v = random.uniform() * 5 - 0.5;
    return coarse ? std::round(v) : v;
  };
  for (int d = 0; d < shape.donors; ++d) {
    if (pick(5) == 0) continue;  // no entry: unlimited
    p.donors["D" + std::to_string(d)] = {static_cast<double>(1000 + pick(8000)),
                                         static_cast<double>(pick(4)), pick(3) == 0 ? 0 : 1};
  }
  const int colonies = 1 + pick(shape.colonies);
  for (int c = 0; c < colonies; ++c) {
    BoostOption leave;
    leave.colony = base::ColonyId("W" + std::to_string(c));
    leave.hive = base::HiveId("W" + std::to_string(c));
    leave.id = "leave:" + leave.colony.str() + "::0";
    p.options.push_back(leave);
    const int n = pick(shape.perColony + 1);
    for (int k = 0; k < n; ++k) {
      BoostOption o = leave;
      const std::string donor = "D" + std::to_string(pick(shape.donors));
      o.donorColony = base::ColonyId(donor);
      o.donorHive = base::HiveId(donor);
      const int kind = pick(3);
      o.method = kind == 0   ? apiary::Method::Stack
                 : kind == 1 ? apiary::Method::SealedFrames
                             : apiary::Method::NurseBees;
      o.id = std::string(apiary::code(o.method)) + ":" + o.colony.str() + ":" + donor + ":" +
             std::to_string(k);
      o.takes.bees = pick(5000);
      if (kind == 0) o.takes.stack = 1;
      if (kind == 1) o.takes.broodFrames = 1 + pick(2);
      if (kind == 0) o.gear["excluder"] = 1;
      if (pick(2) == 0) o.gear["drawn_comb:zander"] = 1 + pick(2);
      o.hours = 0.05 * (1 + pick(12));
      o.gain = {1000, 700, 1400};
      setNet(o, value(), random.uniform() * 0.5, random.uniform() * 0.1);
      p.options.push_back(o);
    }
  }
  if (pick(2) == 0) p.gear["excluder"] = pick(3);
  if (pick(2) == 0) p.gear["drawn_comb:zander"] = pick(4);
  if (pick(3) == 0) p.hours = 0.05 * (5 + pick(20));
  const auto why = base::message("planning.rule.one", "test");
  for (int r = pick(3); r > 0; --r) {
    BoostRule rule{why, {}, {}, static_cast<double>(1 + pick(2))};
    for (const auto& o : p.options) {
      if (o.method == apiary::Method::Leave || pick(2) != 0) continue;
      rule.ids.push_back(o.id);
      rule.coefs.push_back(0.5 * (1 + pick(4)));
    }
    if (!rule.ids.empty()) p.rules.push_back(rule);
  }
  if (shape.visits && pick(2) == 0) {
    BoostOption visit;
    visit.id = "visit:Y1";
    setNet(visit, 0, 0, 0.5 + random.uniform());
    for (const auto& o : p.options) {
      if (o.method == apiary::Method::Leave || pick(2) != 0) continue;
      p.rules.push_back({why, {o.id, visit.id}, {1, -1}, 0});
    }
    p.options.push_back(visit);
  }
  return p;
}

/// A yard in April as numbers: weak colonies that each could get help from every donor.
inline BoostProblem yardProblem(std::uint64_t seed, int weak, int donors) {
  base::Random random(seed);
  BoostProblem p;
  p.request.date = *base::Date::parse("2026-04-25");
  p.request.yards = {base::YardId("Y1")};
  p.target = p.request.date.plusDays(45);
  std::vector<double> spare;
  for (int d = 0; d < donors; ++d) {
    spare.push_back(2000 + std::floor(random.uniform() * 9000));
    p.donors["D" + std::to_string(d)] = {spare.back(), static_cast<double>(random.below(4)),
                                         random.below(4) == 0 ? 0 : 1};
  }
  const auto why = base::message("planning.rule.one", "test");
  BoostRule perStop{why, {}, {}, 4};
  std::map<std::string, std::vector<std::string>> joint;
  for (int w = 0; w < weak; ++w) {
    BoostOption leave;
    leave.colony = base::ColonyId("W" + std::to_string(w));
    leave.hive = base::HiveId("W" + std::to_string(w));
    leave.id = "leave:" + leave.colony.str() + "::0";
    p.options.push_back(leave);
    const double have = 1500 + random.uniform() * 4500;
    for (int d = 0; d < donors; ++d) {
      for (int k = 0; k < 5; ++k) {
        BoostOption o = leave;
        const std::string donor = "D" + std::to_string(d);
        o.donorColony = base::ColonyId(donor);
        o.donorHive = base::HiveId(donor);
        const bool stack = k == 0, comb = k == 1 || k == 2;
        o.method = stack  ? apiary::Method::Stack
                   : comb ? apiary::Method::SealedFrames
                          : apiary::Method::NurseBees;
        o.id = std::string(apiary::code(o.method)) + ":" + leave.colony.str() + ":" + donor + ":" +
               std::to_string(k);
        const double own = spare[static_cast<std::size_t>(d)] + 6000;
        o.takes.bees = std::floor(stack ? 0.35 * (own - have) : comb ? 800 * k : 600 * (k - 1));
        o.takes.broodFrames = comb ? k : 0;
        o.takes.stack = stack ? 1 : 0;
        if (stack) o.gear["excluder"] = 1;
        o.hours = stack ? 0.5 : 0.35;
        const double gain = o.takes.bees + (comb ? 2300 * k : 0);
        setNet(o, gain / 1000 * (0.85 + 0.1 * random.uniform()), 0.25 * gain / 1000, 0.05);
        if (stack) {
          perStop.ids.push_back(o.id);
          joint[donor].push_back(o.id);
        }
        p.options.push_back(std::move(o));
      }
    }
  }
  p.rules.push_back(std::move(perStop));
  for (auto& [donor, ids] : joint) p.rules.push_back({why, ids, {}, 1});
  p.gear["excluder"] = 5;
  p.hours = 6;
  return p;
}

/// Many such yards on one day with one truck: excluders and hours are shared, each yard costs a
/// drive if anything is done there.
inline BoostProblem outfitProblem(std::uint64_t seed, int yards, int weak, int donors) {
  BoostProblem all;
  const auto why = base::message("planning.rule.one", "test");
  for (int y = 0; y < yards; ++y) {
    BoostProblem one = yardProblem(seed * 1000 + static_cast<std::uint64_t>(y), weak, donors);
    const std::string name = "Y" + std::to_string(y), mark = name + "-";
    all.request.date = one.request.date;
    all.target = one.target;
    all.request.yards.emplace_back(name);
    BoostOption visit;
    visit.id = "visit:" + name;
    setNet(visit, 0, 0, 2.5);
    const auto renamed = [&](const std::string& id) {
      // method:colony:donor:k
      std::string out;
      int part = 0;
      for (std::size_t from = 0; from <= id.size(); ++part) {
        const std::size_t to = std::min(id.find(':', from), id.size());
        const std::string word = id.substr(from, to - from);
        out += (part > 0 ? ":" : "") + ((part == 1 || part == 2) && !word.empty() ? mark : "");
        out += word;
        from = to + 1;
      }
      return out;
    };
    for (auto& o : one.options) {
      o.id = renamed(o.id);
      o.colony = base::ColonyId(mark + o.colony.str());
      o.hive = base::HiveId(mark + o.hive.str());
      if (o.donorColony) {
        o.donorColony = base::ColonyId(mark + o.donorColony->str());
        o.donorHive = base::HiveId(mark + o.donorHive->str());
        all.rules.push_back({why, {o.id, visit.id}, {1, -1}, 0});
      }
      all.options.push_back(std::move(o));
    }
    for (auto& rule : one.rules) {
      for (auto& id : rule.ids) id = renamed(id);
      all.rules.push_back(std::move(rule));
    }
    for (const auto& [donor, cap] : one.donors) all.donors[mark + donor] = cap;
    all.options.push_back(std::move(visit));
  }
  all.gear["excluder"] = 2 * yards;
  all.hours = 2.5 * yards;
  return all;
}

}  // namespace outyard::planning::testing
