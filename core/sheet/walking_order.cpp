// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/walking_order.h"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace outyard::sheet {

namespace {

using Walk = std::vector<const apiary::HiveState*>;

struct Spot {
  double x = 0, y = 0;
};

double gap(Spot a, Spot b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

Spot spotOf(const apiary::HiveState& hive) {
  return {hive.xM.value_or(0), hive.yM.value_or(0)};
}

/// Where the walk begins: the gate, else the truck's place, else the south-west corner.
Spot startOf(const apiary::Season& season, const base::YardId& yard) {
  const apiary::Feature* truck = nullptr;
  for (const auto& [key, feature] : season.table<apiary::Feature>()) {
    if (feature.yard != yard) continue;
    if (feature.kind == apiary::FeatureKind::Gate) return {feature.xM, feature.yM};
    if (feature.kind == apiary::FeatureKind::Truck && !truck) truck = &feature;
  }
  return truck ? Spot{truck->xM, truck->yM} : Spot{};
}

/// Nearest next hive, then crossings taken out (2-opt) until none is left; the start stays.
void shorten(Walk& walk, Spot start) {
  Spot at = start;
  for (std::size_t i = 0; i < walk.size(); ++i) {
    std::size_t best = i;
    for (std::size_t k = i + 1; k < walk.size(); ++k) {
      if (gap(at, spotOf(*walk[k])) < gap(at, spotOf(*walk[best])) - 1e-9) best = k;
    }
    // rotate, not swap: what is left stays in the order of names
    std::rotate(walk.begin() + static_cast<std::ptrdiff_t>(i),
                walk.begin() + static_cast<std::ptrdiff_t>(best),
                walk.begin() + static_cast<std::ptrdiff_t>(best) + 1);
    at = spotOf(*walk[i]);
  }
  constexpr int kRounds = 30;
  bool better = true;
  for (int round = 0; round < kRounds && better; ++round) {
    better = false;
    for (std::size_t i = 0; i + 1 < walk.size(); ++i) {
      const Spot before = i == 0 ? start : spotOf(*walk[i - 1]);
      for (std::size_t k = i + 1; k < walk.size(); ++k) {
        const double old = gap(before, spotOf(*walk[i])) +
                           (k + 1 < walk.size() ? gap(spotOf(*walk[k]), spotOf(*walk[k + 1])) : 0);
        const double fresh =
            gap(before, spotOf(*walk[k])) +
            (k + 1 < walk.size() ? gap(spotOf(*walk[i]), spotOf(*walk[k + 1])) : 0);
        if (fresh < old - 1e-6) {
          std::reverse(walk.begin() + static_cast<std::ptrdiff_t>(i),
                       walk.begin() + static_cast<std::ptrdiff_t>(k) + 1);
          better = true;
        }
      }
    }
  }
}

Walk inOrder(Walk group, Spot start) {
  std::sort(group.begin(), group.end(),
            [](const auto* a, const auto* b) { return naturalLess(a->hive.str(), b->hive.str()); });
  const auto unplaced = std::stable_partition(group.begin(), group.end(),
                                              [](const auto* h) { return h->xM && h->yM; });
  Walk placed(group.begin(), unplaced);
  shorten(placed, start);
  placed.insert(placed.end(), unplaced, group.end());
  return placed;
}

}  // namespace

bool naturalLess(std::string_view a, std::string_view b) {
  std::size_t i = 0, k = 0;
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  while (i < a.size() && k < b.size()) {
    if (digit(a[i]) && digit(b[k])) {
      const auto number = [&](std::string_view s, std::size_t& at) {
        while (at < s.size() && s[at] == '0') ++at;
        const std::size_t from = at;
        while (at < s.size() && digit(s[at])) ++at;
        return s.substr(from, at - from);
      };
      const std::string_view na = number(a, i), nb = number(b, k);
      if (na.size() != nb.size()) return na.size() < nb.size();
      if (na != nb) return na < nb;
    } else {
      if (a[i] != b[k]) return static_cast<unsigned char>(a[i]) < static_cast<unsigned char>(b[k]);
      ++i;
      ++k;
    }
  }
  if (a.size() - i != b.size() - k) return a.size() - i < b.size() - k;
  return a < b;  // "1" and "01": some fixed order
}

bool isSuspect(const apiary::HiveState& hive, const std::vector<strength::Judgement>& judgements) {
  using apiary::Disease;
  for (const strength::Judgement& j : judgements) {
    if (j.hive == hive.hive && j.verdict == apiary::VerdictCode::Sick) return true;
  }
  return std::any_of(hive.colonies.begin(), hive.colonies.end(), [](const auto& c) {
    const apiary::Inspection* i = c.lastInspection;
    return i && (i->disease == Disease::SuspectAfb || i->disease == Disease::SuspectEfb);
  });
}

std::vector<const apiary::HiveState*> walkingOrder(
    const apiary::Season& season, const base::YardId& yard,
    const std::vector<apiary::HiveState>& hives,
    const std::vector<strength::Judgement>& judgements) {
  Walk dead, sound, suspect;
  for (const apiary::HiveState& hive : hives) {
    if (hive.status == apiary::HiveStatus::Dead) {
      dead.push_back(&hive);
    } else if (isSuspect(hive, judgements)) {
      suspect.push_back(&hive);
    } else {
      sound.push_back(&hive);
    }
  }
  const Spot start = startOf(season, yard);
  Walk walk = inOrder(std::move(dead), start);
  for (Walk* group : {&sound, &suspect}) {
    const Walk ordered = inOrder(std::move(*group), start);
    walk.insert(walk.end(), ordered.begin(), ordered.end());
  }
  return walk;
}

}  // namespace outyard::sheet
