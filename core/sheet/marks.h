// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/apiary/state.h"
#include "core/sheet/shape.h"
#include "core/strength/expected_look.h"
#include "core/strength/verdict.h"

/// The drawings that map, lists, hive view and paper share.
namespace outyard::sheet {

/// Everything that the mark of a hive shows: its own view from above.
struct MarkInput {
  int frames = 10;                      ///< combs in the box
  std::optional<double> seams;          ///< as last seen: filled
  std::optional<double> expectedSeams;  ///< expected on the day: outline
  double expectedWidth = 0;             ///< of its band, as a share: the wider, the fainter
  double clusterAt = 0.5;               ///< where the cluster sits, 0 left to 1 right
  bool seenThisYear = true;             ///< false = dashed edge: not opened since autumn
  bool dead = false, empty = false;
  bool stacked = false;              ///< two tiers with a bar between
  std::optional<double> upperSeams;  ///< of the upper colony
  std::optional<double> upperExpected;
  double upperExpectedWidth = 0;
  double entranceDeg = 0;  ///< the notch, clockwise from north
  bool wrapped = false;
};
/// About 12 x 9 mm around the origin, entrance at the bottom before turning (an entrance of 180
/// degrees leaves the drawing as it is, since a map's south is down).
Shapes hiveMark(const MarkInput& input);
inline constexpr double kMarkWidthMm = 12, kMarkHeightMm = 9;
MarkInput markInput(const apiary::Season& season, const apiary::HiveState& hive,
                    const std::vector<strength::Judgement>& judgements, base::Date day);
/// What looks at colonies are expected to find on the day that is drawn or printed.
using ExpectedLooks = std::map<base::ColonyId, strength::ExpectedLook>;
/// Puts what is expected of the hive's colonies into its mark, in outline.
void addExpected(MarkInput& mark, const apiary::HiveState& hive, const ExpectedLooks& expected);

/// The letters that stand beside a hive's number, each spelled out in the legend: B boost (small
/// but sound), Q queen suspect or missing, S sick: nothing in or out, 2 two colonies, N not enough
/// seen, W write off (too small), R room (strong).
std::string markLetters(const apiary::HiveState& hive,
                        const std::vector<strength::Judgement>& judgements);

/// One face of a comb in eighths (4 columns x 2 rows ... drawn 2 wide x 4 high in the narrow stack
/// view), food above and brood below, each content with ink and hatch.
struct CombFace {
  /// Eighths of each content; they sum to at most 8, the rest is unknown (blank).
  double eggs = 0, open = 0, sealed = 0, drone = 0, pollen = 0, nectar = 0, honey = 0, empty = 0,
         undrawn = 0;
  bool mould = false;
  bool known = false;
};
CombFace combFace(const apiary::CombSide& side);
Shapes combFaceShapes(const CombFace& face, double widthMm, double heightMm, int columns, int rows);

/// The hive from the side: boxes bottom up with their combs' faces as last seen. Width follows the
/// frames; the origin is the lower left corner of the floor.
struct StackDrawing {
  Shapes shapes;
  double widthMm = 0, heightMm = 0;
  struct BoxArea {
    int position = 1;
    Point corner;
    double widthMm = 0, heightMm = 0;
  };
  std::vector<BoxArea> boxes;  ///< where each box was drawn (for clicks and drags)
  struct FrameArea {
    int box = 1;
    int slot = 1;
    Point corner;
    double widthMm = 0, heightMm = 0;
  };
  std::vector<FrameArea> frames;  ///< where each comb was drawn, box by box, from the left
};
StackDrawing stackDrawing(const apiary::Season& season, const apiary::HiveState& hive,
                          base::Date day);

}  // namespace outyard::sheet
