// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/mark_layout.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace outyard::yards {
namespace {

/// Overlap that the eye forgives.
constexpr double kTolerancePx = 1;

/// Marks that overlap, directly or through others, are spread about their middle by one factor:
/// a pallet stays a pallet and a row a row.
class Spreader {
 public:
  Spreader(const std::vector<QPointF>& places, const std::vector<QSizeF>& cells, double most)
      : m_places(places), m_cells(cells), m_most(most), m_root(places.size()) {
    std::iota(m_root.begin(), m_root.end(), std::size_t{0});
    m_layout.nudge.assign(places.size(), QPointF());
  }

  MarkLayout run() {
    // Every round joins at least two clusters, so it ends.
    while (joinOverlapping()) {
      std::fill(m_layout.nudge.begin(), m_layout.nudge.end(), QPointF());
      for (const auto& [root, members] : clusters()) spread(members);
    }
    for (const auto& [root, members] : clusters()) {
      if (!fits(members)) group(members);
    }
    return std::move(m_layout);
  }

 private:
  using Members = std::vector<std::size_t>;

  std::size_t find(std::size_t i) {
    while (m_root[i] != i) i = m_root[i] = m_root[m_root[i]];
    return i;
  }
  std::map<std::size_t, Members> clusters() {
    std::map<std::size_t, Members> all;
    for (std::size_t i = 0; i < m_places.size(); ++i) all[find(i)].push_back(i);
    return all;
  }
  [[nodiscard]] bool overlap(std::size_t i, std::size_t k) const {
    const QPointF d = m_places[k] + m_layout.nudge[k] - m_places[i] - m_layout.nudge[i];
    const QSizeF room = (m_cells[i] + m_cells[k]) / 2;
    return room.width() - std::abs(d.x()) > kTolerancePx &&
           room.height() - std::abs(d.y()) > kTolerancePx;
  }
  bool joinOverlapping() {
    bool joined = false;
    for (std::size_t i = 0; i < m_places.size(); ++i) {
      for (std::size_t k = i + 1; k < m_places.size(); ++k) {
        if (find(i) == find(k) || !overlap(i, k)) continue;
        m_root[find(k)] = find(i);
        joined = true;
      }
    }
    return joined;
  }
  [[nodiscard]] QPointF middle(const Members& members) const {
    QPointF sum;
    for (const auto i : members) sum += m_places[i];
    return sum / static_cast<double>(members.size());
  }
  /// The least factor that frees every pair; infinite for two at one place.
  [[nodiscard]] double factor(const Members& members) const {
    double needed = 1;
    for (const auto i : members) {
      for (const auto k : members) {
        if (k <= i) continue;
        const QPointF d = m_places[k] - m_places[i];
        const QSizeF room = (m_cells[i] + m_cells[k]) / 2;
        const auto share = [](double size, double way) {
          return way < 1e-6 ? std::numeric_limits<double>::infinity() : size / way;
        };
        needed = std::max(needed, std::min(share(room.width(), std::abs(d.x())),
                                           share(room.height(), std::abs(d.y()))));
      }
    }
    return needed;
  }
  [[nodiscard]] bool fits(const Members& members) const {
    const double by = factor(members) - 1;
    const QPointF centre = middle(members);
    return std::all_of(members.begin(), members.end(), [&](std::size_t i) {
      const QPointF way = m_places[i] - centre;
      const double length = std::hypot(way.x(), way.y());
      return length == 0 ? std::isfinite(by) : length * by <= m_most;
    });
  }
  void spread(const Members& members) {
    if (members.size() < 2 || !fits(members)) return;
    const double by = factor(members) - 1;
    const QPointF centre = middle(members);
    for (const auto i : members) m_layout.nudge[i] = (m_places[i] - centre) * by;
  }
  /// Too crowded to spread: each mark joins the first before it that it covers.
  void group(const Members& members) {
    std::vector<std::vector<int>> groups;
    for (const auto i : members) {
      const auto home = std::find_if(groups.begin(), groups.end(), [&](const auto& each) {
        return overlap(static_cast<std::size_t>(each.front()), i);
      });
      if (home == groups.end()) {
        groups.push_back({static_cast<int>(i)});
      } else {
        home->push_back(static_cast<int>(i));
      }
    }
    for (auto& each : groups) {
      if (each.size() > 1) m_layout.groups.push_back(std::move(each));
    }
  }

  const std::vector<QPointF>& m_places;
  const std::vector<QSizeF>& m_cells;
  double m_most;
  std::vector<std::size_t> m_root;
  MarkLayout m_layout;
};

}  // namespace

MarkLayout layoutMarks(const std::vector<QPointF>& placesPx, const std::vector<QSizeF>& cells,
                       double most) {
  return Spreader(placesPx, cells, most).run();
}

}  // namespace outyard::yards
