// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/sheet/map_drawing.h"
#include "core/sheet/shape.h"

namespace outyard::sheet {

/// A rectangle of the map in mm, y downwards.
struct Area {
  double x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  [[nodiscard]] bool meets(const Area& o) const {
    return x0 < o.x1 - 1e-9 && o.x0 < x1 - 1e-9 && y0 < o.y1 - 1e-9 && o.y0 < y1 - 1e-9;
  }
  [[nodiscard]] bool within(const Area& o) const {
    return x0 >= o.x0 && y0 >= o.y0 && x1 <= o.x1 && y1 <= o.y1;
  }
};

/// Metres of the drawing to millimetres of the map.
struct Scale {
  double perMetre = 1, left = 0, bottom = 0;  ///< where 0, 0 of the ground lies
  [[nodiscard]] Point at(double x, double y) const {
    return {left + x * perMetre, bottom - y * perMetre};
  }
};

/// The pictures of the yard's ground that show on the map.
std::vector<MapDrawing::Picture> picturesOn(const apiary::Season& season, const base::YardId& yard,
                                            const Scale& scale, const Area& map);

}  // namespace outyard::sheet
