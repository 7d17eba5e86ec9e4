// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/sheet/map_parts.h"

namespace outyard::sheet {

std::vector<MapDrawing::Picture> picturesOn(const apiary::Season& season, const base::YardId& yard,
                                            const Scale& scale, const Area& map) {
  std::vector<MapDrawing::Picture> out;
  for (const auto& [key, f] : season.table<apiary::Feature>()) {
    const bool picture =
        f.kind == apiary::FeatureKind::Picture && f.x2M && f.y2M && !f.file.empty();
    if (f.yard != yard || !picture) continue;
    const Point a = scale.at(f.xM, f.yM), b = scale.at(*f.x2M, *f.y2M);
    MapDrawing::Picture p;
    p.file = f.file;
    p.corner = {std::min(a.x, b.x), std::min(a.y, b.y)};
    p.widthMm = std::abs(a.x - b.x);
    p.heightMm = std::abs(a.y - b.y);
    const Area covers{p.corner.x, p.corner.y, p.corner.x + p.widthMm, p.corner.y + p.heightMm};
    if (covers.meets(map)) out.push_back(std::move(p));
  }
  return out;
}

}  // namespace outyard::sheet
