// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paint_order.h"

#include <algorithm>
#include <cmath>

namespace outyard::print {

namespace {

constexpr double kCells = 60;  ///< along the longer side

bool touch(const PaintOrder::Box& a, const PaintOrder::Box& b) {
  return a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
}

std::size_t cell(double at, double size, std::size_t count) {
  const double index = std::floor(at / size);
  if (!(index > 0)) return 0;
  return std::min(count - 1, static_cast<std::size_t>(std::min(index, 2 * kCells)));
}

}  // namespace

PaintOrder::PaintOrder(double width, double height)
    : m_cell(std::max({width, height, 1e-9}) / kCells),
      m_columns(static_cast<std::size_t>(std::max(1.0, std::ceil(width / m_cell)))),
      m_rows(static_cast<std::size_t>(std::max(1.0, std::ceil(height / m_cell)))),
      m_cells(m_columns * m_rows) {}

PaintOrder::Cells PaintOrder::cellsOf(const Box& box) const {
  return {cell(box.left, m_cell, m_columns), cell(box.top, m_cell, m_rows),
          cell(box.right, m_cell, m_columns), cell(box.bottom, m_cell, m_rows)};
}

std::size_t PaintOrder::place(std::size_t look, std::span<const Box> boxes, Touching touching,
                              std::size_t notBefore) {
  std::size_t lowest = notBefore;
  bool touches = false;  // something in the batch `lowest`
  const auto meet = [&](const Entry& entry, const Box& box) {
    if (entry.batch < lowest || !touch(entry.box, box)) return;
    lowest = entry.batch;
    touches = true;
  };
  for (const Box& box : boxes) {
    const Cells c = cellsOf(box);
    for (std::size_t y = c.top; y <= c.bottom; ++y) {
      for (std::size_t x = c.left; x <= c.right; ++x) {
        for (const Entry& entry : m_cells[y * m_columns + x]) meet(entry, box);
      }
    }
  }
  std::size_t batch = lowest;
  while (batch < m_looks.size() &&
         (m_looks[batch] != look || (batch == lowest && touches && touching == Touching::Apart))) {
    ++batch;
  }
  if (batch >= m_looks.size()) {
    batch = m_looks.size();
    m_looks.push_back(look);
  }
  for (const Box& box : boxes) {
    const Cells c = cellsOf(box);
    for (std::size_t y = c.top; y <= c.bottom; ++y) {
      for (std::size_t x = c.left; x <= c.right; ++x) {
        m_cells[y * m_columns + x].push_back({box, batch});
      }
    }
  }
  return batch;
}

}  // namespace outyard::print
