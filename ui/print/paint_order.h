// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <span>
#include <vector>

namespace outyard::print {

/// Gathers what looks alike on a page into batches that can be drawn at one go, and changes nothing
/// of what covers what: whatever touches an earlier thing is put into a later batch, unless both
/// may lie in the same batch. Knows boxes only.
class PaintOrder {
 public:
  struct Box {
    double left = 0, top = 0, right = 0, bottom = 0;
  };
  enum class Touching { Apart, Together };

  PaintOrder(double width, double height);

  /// The batch for a thing that covers the boxes: the first one with the same look that does not
  /// come before `notBefore` nor before anything it touches. Things that touch share a batch only
  /// where `touching` allows it; a batch draws its things in the order they came.
  std::size_t place(std::size_t look, std::span<const Box> boxes, Touching touching,
                    std::size_t notBefore = 0);
  [[nodiscard]] std::size_t batches() const { return m_looks.size(); }

 private:
  struct Entry {
    Box box;
    std::size_t batch;
  };
  struct Cells {
    std::size_t left, top, right, bottom;
  };
  [[nodiscard]] Cells cellsOf(const Box& box) const;

  double m_cell;
  std::size_t m_columns, m_rows;
  std::vector<std::vector<Entry>> m_cells;
  std::vector<std::size_t> m_looks;  ///< of each batch
};

}  // namespace outyard::print
