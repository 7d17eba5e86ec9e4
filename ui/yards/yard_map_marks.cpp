// SPDX-License-Identifier: GPL-3.0-or-later
// Several hives of the yard map chosen together.
#include <QPainter>
#include <algorithm>

#include "ui/yards/yard_map.h"

namespace outyard::yards {

void YardMap::setMarked(std::set<base::HiveId> hives) {
  std::erase_if(hives, [this](const base::HiveId& id) { return !m_hives.count(id); });
  if (hives == m_marked) return;
  m_marked = std::move(hives);
  const auto chosen = m_hub.selection().hive;
  if (!m_marked.empty() && (!chosen || !m_marked.count(*chosen))) {
    m_hub.selectHive(*m_marked.begin());  // the side panel shows one of them
  }
  refreshChosen();
  Q_EMIT markedChanged();
}

void YardMap::markAll() {
  std::set<base::HiveId> all;
  for (const auto& [id, item] : m_hives) all.insert(id);
  setMarked(std::move(all));
}

std::vector<base::HiveId> YardMap::chosenHives() const {
  if (m_marked.empty()) {
    const auto chosen = m_hub.selection().hive;
    return chosen && item(*chosen) ? std::vector{*chosen} : std::vector<base::HiveId>{};
  }
  auto hives = order();
  std::erase_if(hives, [this](const base::HiveId& id) { return !m_marked.count(id); });
  return hives;
}

void YardMap::pickWithShift(const base::HiveId& hive) {
  auto marked = m_marked;
  const auto chosen = m_hub.selection().hive;
  if (marked.empty() && chosen && m_hives.count(*chosen)) marked.insert(*chosen);
  if (marked.erase(hive) == 0) marked.insert(hive);
  setMarked(std::move(marked));
}

void YardMap::endBand() {
  const QRect frame = QRect(m_band->from, m_band->to).normalized();
  std::set<base::HiveId> marked = m_band->adds ? m_marked : std::set<base::HiveId>{};
  m_band.reset();
  for (const auto& [id, item] : m_hives) {
    if (frame.contains(markCentre(id))) marked.insert(id);
  }
  setMarked(std::move(marked));
  viewport()->update();
}

void YardMap::dropStaleMarks() {
  // Whoever goes on to another hive, by Tab or in another place, leaves the marked ones.
  const auto chosen = m_hub.selection().hive;
  auto marked = m_marked;
  std::erase_if(marked, [this](const base::HiveId& id) { return !m_hives.count(id); });
  if (m_hub.selection().yard != m_yard || !chosen || !marked.count(*chosen)) marked.clear();
  if (marked == m_marked) return;
  m_marked = std::move(marked);
  Q_EMIT markedChanged();
}

void YardMap::paintBand(QPainter& painter) const {
  if (!m_band) return;
  QColor wash = palette().color(QPalette::Highlight);
  painter.setPen(QPen(wash, 1, Qt::DashLine));
  wash.setAlphaF(0.12F);
  painter.setBrush(wash);
  painter.drawRect(QRectF(QRect(m_band->from, m_band->to).normalized()));
}

}  // namespace outyard::yards
