// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"

namespace outyard::strength {

/// Figures of one frame type; every one can be replaced per outfit by a FrameType row.
struct FrameFigures {
  std::string frameType;
  double combCm2 = 0;        ///< comb area of one side, cm2
  double cellsPerCm2 = 4.0;  ///< worker cells of one side
  double beesPerCm2 = 1.30;  ///< on a fully covered side (range 1.1 to 1.5)
  double honeySideKg = 0;    ///< stores of one full capped side
  int framesPerBox = 10;
  double boxKg = 0;    ///< box with empty drawn combs
  std::string source;  ///< where the comb area is from
  [[nodiscard]] double cellsPerSide() const { return combCm2 * cellsPerCm2; }
  [[nodiscard]] double beesPerSide() const { return combCm2 * beesPerCm2; }
};

/// Shipped figures; nullptr for an unknown type. Also knows "liebefeld": a Zander side of 8 dm2
/// with 1.25 bees and 4.00 cells a cm2 and 125 g a dm2.
const FrameFigures* shippedFigures(std::string_view frameType);
const std::vector<FrameFigures>& allShippedFigures();
/// One figure of a type with the range that sources give and where it is from.
struct FigureNote {
  std::string_view column;  ///< column of the frame type's row: "comb_cm2", ...
  double value = 0, low = 0, high = 0;
  std::string_view unit, source;
};
/// Notes on the shipped figures of a type, one for each column; empty for an unknown type.
std::vector<FigureNote> figureNotes(std::string_view frameType);

/// The season's own row over the shipped figures; nullopt for a type that neither knows,
/// and for an own type whose row gives no comb area.
std::optional<FrameFigures> figuresFor(const apiary::Season& season, std::string_view frameType);

}  // namespace outyard::strength
