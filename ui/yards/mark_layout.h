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

/// Spreads cells (as many as places: a mark with its label) that cover each other about their
/// middle, none farther than `most` pixels from its place; what would need more is grouped. Slow
/// but plain: pairs of marks, at most a few hundred in a yard.
MarkLayout layoutMarks(const std::vector<QPointF>& placesPx, const std::vector<QSizeF>& cells,
                       double most);

}  // namespace outyard::yards
