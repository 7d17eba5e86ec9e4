// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "core/base/message.h"
#include "core/sheet/marks.h"

namespace outyard::sheet {

/// What the yard map on paper is drawn from.
struct MapInput {
  const apiary::Season* season = nullptr;
  base::YardId yard;
  base::Date day;
  const std::vector<apiary::HiveState>* hives = nullptr;
  const std::vector<strength::Judgement>* judgements = nullptr;
  std::map<base::HiveId, std::string> labels;  ///< under each mark: its line numbers
  double widthMm = 100, heightMm = 90;
  std::function<std::string(const base::Message&)> word;
  const TextMeasurer* text = nullptr;
  const ExpectedLooks* expected = nullptr;  ///< in outline; null without a forecast
};

/// Marks are never drawn smaller than this.
inline constexpr double kMapMarkMm = 8;

struct MapDrawing {
  Shapes shapes;          ///< the upper left corner of the map is the origin
  double mmPerMetre = 0;  ///< 0 when nothing has a place
  struct Spot {
    Point centre;
    std::vector<base::HiveId> hives;  ///< more than one: drawn as a group
  };
  /// A picture of the ground, to scale, by the name of its file under pictures/ beside the season.
  struct Picture {
    std::string file;
    Point corner;  ///< upper left; may lie beyond the map, where it is cut off
    double widthMm = 0, heightMm = 0;
  };
  std::vector<Picture> pictures;
  /// The first shapes are the ground: pictures lie on these and under all the others.
  std::size_t groundShapes = 0;
  std::vector<Spot> spots;
  std::vector<base::HiveId> unplaced;  ///< hives without a place on the drawing
};

/// The yard to scale: its pictures of the ground, stands, gate, truck, water, fence, north, a scale
/// bar, and every hive as its mark with its label. Marks that would cover each other are nudged
/// apart a little (a thin line leads to the true place); what still does not fit is drawn as a
/// group with its labels.
MapDrawing mapDrawing(const MapInput& input);

}  // namespace outyard::sheet
