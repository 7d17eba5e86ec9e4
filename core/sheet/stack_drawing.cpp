// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/apiary/comb_state.h"
#include "core/sheet/marks.h"

namespace outyard::sheet {

namespace {

constexpr double kWallMm = 2.2, kCombPitchMm = 11, kFaceGapMm = 0.5;
constexpr double kFloorMm = 3, kRoofMm = 2.5, kTopBarMm = 1.0;
constexpr int kDefaultFrames = 10;

/// Drawn height of a box, about a twelfth of the real one (depths of the frame types: common
/// sizes of the trade).
double boxHeight(const apiary::BoxState& box) {
  const std::string& type = box.frameType;
  const auto has = [&](const char* part) { return type.find(part) != std::string::npos; };
  if (box.role == apiary::BoxRole::Feeder) return 9;
  if (has("dadant_brood")) return 26;
  if (has("shallow") || has("super")) return 13.5;
  if (has("medium")) return 15.5;
  return 22;
}

double gapHeight(apiary::Beneath beneath) {
  return beneath == apiary::Beneath::None ? 0.6 : 3;
}

void append(Shapes& out, const Shapes& more, Point at) {
  const Shapes moved = transformed(more, at);
  out.insert(out.end(), moved.begin(), moved.end());
}

void drawBeneath(Shapes& out, apiary::Beneath beneath, double width, double y) {
  using apiary::Beneath;
  if (beneath == Beneath::None) return;
  if (beneath == Beneath::Excluder) {
    out.emplace_back(LineShape{{1, y}, {width - 1, y}, {Ink::Text, 0.7, true}});
  } else if (beneath == Beneath::Paper) {
    PolygonShape zigzag;
    zigzag.closed = false;
    zigzag.stroke = {Ink::Text, 0.3};
    bool up = true;
    for (double x = 1; x <= width - 1; x += 2, up = !up) {
      zigzag.points.push_back({x, y + (up ? -0.6 : 0.6)});
    }
    out.emplace_back(zigzag);
  } else if (beneath == Beneath::DoubleScreen) {
    out.emplace_back(LineShape{{1, y - 0.5}, {width - 1, y - 0.5}, {Ink::Text, 0.4, true}});
    out.emplace_back(LineShape{{1, y + 0.5}, {width - 1, y + 0.5}, {Ink::Text, 0.4, true}});
  } else {
    out.emplace_back(LineShape{{1, y}, {width - 1, y}, {Ink::WoodEdge, 1.2}});
  }
}

/// Contents without a hatch are told by a letter on their first cell, where one has room: sealed
/// brood and nectar (empty comb is the plain one).
void addLetters(Shapes& cells, double cellHeight) {
  constexpr double kLetterMm = 2.2;
  if (cellHeight < kLetterMm) return;
  bool sealed = false, nectar = false;
  Shapes letters;
  for (const Shape& shape : cells) {
    const auto* cell = std::get_if<RectShape>(&shape);
    if (!cell) continue;
    const bool isSealed = cell->fill == Ink::SealedBrood && !sealed;
    const bool isNectar = cell->fill == Ink::Nectar && !nectar;
    if (!isSealed && !isNectar) continue;
    sealed = sealed || isSealed;
    nectar = nectar || isNectar;
    TextShape letter;
    letter.at = {cell->corner.x + cell->widthMm / 2, cell->corner.y + cell->heightMm / 2 + 0.8};
    letter.text = isSealed ? "S" : "N";
    letter.sizeMm = kLetterMm;
    letter.align = Align::Centre;
    letter.ink = isSealed ? Ink::Paper : Ink::Text;
    letters.emplace_back(letter);
  }
  cells.insert(cells.end(), letters.begin(), letters.end());
}

int framesIn(const apiary::BoxState& box, const apiary::CombBox* combs) {
  if (combs) return static_cast<int>(combs->frames.size());
  return box.frames > 0 ? box.frames : kDefaultFrames;
}

void drawBox(StackDrawing& to, const apiary::BoxState& box, const apiary::CombBox* combs,
             const StackDrawing::BoxArea& area) {
  Shapes& out = to.shapes;
  RectShape body{area.corner, area.widthMm, area.heightMm, 0.8};
  body.fill = Ink::Wood;
  body.stroke = {Ink::WoodEdge, 0.4};
  out.emplace_back(body);
  if (box.role == apiary::BoxRole::Feeder) return;
  const int frames = framesIn(box, combs);
  if (frames == 0) return;
  // All boxes of a stack have the same walls: fewer combs stand wider apart.
  const double pitch = (area.widthMm - 2 * kWallMm) / frames;
  const double faceWidth = (kCombPitchMm - 3 * kFaceGapMm) / 2;
  const double top = area.corner.y + 2.2;
  const double faceHeight = area.heightMm - 3.6;
  const double left = area.corner.x + kWallMm + (pitch - kCombPitchMm) / 2;
  for (int slot = 1; slot <= frames; ++slot) {
    const double x = left + (slot - 1) * pitch;
    RectShape bar{
        {x + kFaceGapMm, top - kTopBarMm - 0.3}, kCombPitchMm - 2 * kFaceGapMm, kTopBarMm, 0.3};
    bar.fill = Ink::WoodEdge;
    bar.stroke.ink = Ink::None;
    out.emplace_back(bar);
    to.frames.push_back({box.position,
                         slot,
                         {x, top - kTopBarMm - 0.3},
                         kCombPitchMm,
                         faceHeight + kTopBarMm + 0.3});
    for (int side = 0; side < 2; ++side) {
      CombFace face;
      if (combs) {
        const auto& seen = combs->frames.at(static_cast<std::size_t>(slot) - 1)
                               .sides.at(static_cast<std::size_t>(side));
        if (seen) face = combFace(seen->holds);
      }
      Shapes cells = combFaceShapes(face, faceWidth, faceHeight, 2, 4);
      addLetters(cells, faceHeight / 4);
      append(out, cells, {x + kFaceGapMm + side * (faceWidth + kFaceGapMm), top});
    }
  }
}

}  // namespace

StackDrawing stackDrawing(const apiary::Season& season, const apiary::HiveState& hive,
                          base::Date day) {
  StackDrawing d;
  const apiary::HiveCombs known = apiary::combsOfHive(season, hive.hive, day);
  const auto combsOf = [&](const apiary::BoxState& box) -> const apiary::CombBox* {
    const auto* combs = known.box(box.position);
    return combs && combs->frameType == box.frameType ? combs : nullptr;
  };
  int frames = 0;
  for (const apiary::BoxState& box : hive.boxes) {
    if (box.role == apiary::BoxRole::Feeder) continue;
    frames = std::max(frames, framesIn(box, combsOf(box)));
  }
  if (frames == 0) frames = kDefaultFrames;
  const double width = frames * kCombPitchMm + 2 * kWallMm;
  RectShape floor{{-1, -kFloorMm}, width + 2, kFloorMm, 0.5};
  floor.fill = Ink::Wood;
  floor.stroke = {Ink::WoodEdge, 0.4};
  d.shapes.emplace_back(floor);
  RectShape entrance{{width * 0.38, -kFloorMm + 0.4}, width * 0.24, 1.1};
  entrance.fill = Ink::Text;
  entrance.stroke.ink = Ink::None;
  d.shapes.emplace_back(entrance);
  double y = -kFloorMm;
  for (const apiary::BoxState& box : hive.boxes) {
    const double gap = gapHeight(box.beneath);
    drawBeneath(d.shapes, box.beneath, width, y - gap / 2);
    const double height = boxHeight(box);
    y -= gap + height;
    const StackDrawing::BoxArea area{box.position, {0, y}, width, height};
    drawBox(d, box, combsOf(box), area);
    d.boxes.push_back(area);
  }
  RectShape roof{{-1.5, y - kRoofMm - 0.4}, width + 3, kRoofMm, 0.6};
  roof.fill = hive.wrapped ? Ink::Shade : Ink::Wood;
  roof.stroke = {Ink::WoodEdge, 0.4};
  d.shapes.emplace_back(roof);
  d.widthMm = width;
  d.heightMm = -(y - kRoofMm - 0.4);
  return d;
}

}  // namespace outyard::sheet
