// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPointF>
#include <QSizeF>
#include <vector>

namespace outyard::yards {

/// Where marks of a fixed size on the screen are drawn when their true places are close together.
struct MarkLayout {
  std::vector<QPointF> nudge;            ///< how far each is drawn from its true place
  std::vector<std::vector<int>> groups;  ///< marks that still cover each other; two or more each
};

/// Pushes cells of that size apart, none farther than `most` pixels from its place; what still
/// overlaps is grouped. Slow but plain: pairs of marks, at most a few hundred in a yard.
MarkLayout layoutMarks(const std::vector<QPointF>& placesPx, QSizeF cell, double most);

}  // namespace outyard::yards
