// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/mark_layout.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <numeric>

namespace outyard::yards {
namespace {

/// Overlap that the eye forgives.
constexpr double kTolerancePx = 3;

QPointF bounded(QPointF vector, double most) {
  const double length = std::hypot(vector.x(), vector.y());
  return length > most ? vector * (most / length) : vector;
}

}  // namespace

MarkLayout layoutMarks(const std::vector<QPointF>& placesPx, QSizeF cell, double most) {
  const auto count = placesPx.size();
  MarkLayout layout;
  layout.nudge.assign(count, QPointF());
  const auto at = [&](std::size_t i) { return placesPx[i] + layout.nudge[i]; };
  const auto overlap = [&](std::size_t i, std::size_t k) {
    const QPointF d = at(k) - at(i);
    return QPointF(cell.width() - std::abs(d.x()), cell.height() - std::abs(d.y()));
  };
  constexpr int kRounds = 60;
  for (int round = 0; round < kRounds; ++round) {
    bool pushed = false;
    for (std::size_t i = 0; i < count; ++i) {
      for (std::size_t k = i + 1; k < count; ++k) {
        const QPointF over = overlap(i, k);
        if (over.x() <= 0.5 || over.y() <= 0.5) continue;
        const bool sideways = over.x() <= over.y();
        const double sign =
            sideways ? (at(k).x() >= at(i).x() ? 1 : -1) : (at(k).y() >= at(i).y() ? 1 : -1);
        const QPointF push =
            sideways ? QPointF(sign * over.x() / 2, 0) : QPointF(0, sign * over.y() / 2);
        layout.nudge[i] = bounded(layout.nudge[i] - push, most);
        layout.nudge[k] = bounded(layout.nudge[k] + push, most);
        pushed = true;
      }
    }
    if (!pushed) break;
  }
  std::vector<std::size_t> root(count);
  std::iota(root.begin(), root.end(), std::size_t{0});
  const std::function<std::size_t(std::size_t)> find = [&](std::size_t i) {
    return root[i] == i ? i : root[i] = find(root[i]);
  };
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t k = i + 1; k < count; ++k) {
      const QPointF over = overlap(i, k);
      if (over.x() > kTolerancePx && over.y() > kTolerancePx) root[find(k)] = find(i);
    }
  }
  std::map<std::size_t, std::vector<int>> byRoot;
  for (std::size_t i = 0; i < count; ++i) byRoot[find(i)].push_back(static_cast<int>(i));
  for (auto& [first, members] : byRoot) {
    if (members.size() > 1) layout.groups.push_back(std::move(members));
  }
  return layout;
}

}  // namespace outyard::yards
