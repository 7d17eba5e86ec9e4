// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/frame_table.h"

namespace outyard::strength {
namespace {

struct Ranged {
  double value, low, high;
  std::string_view source;
};
/// One line of the shipped table.
struct Shipped {
  std::string_view type;
  Ranged combCm2, honeySideKg, boxKg;
  int frames;
  Ranged cells, bees;
};

// Cells: 5.4 mm cells give 3.96 a cm2; 400 a dm2 is the rule of the Liebefeld method.
constexpr Ranged kCells{4.0, 3.5, 4.8,
                        "400 a dm2, Liebefeld method (Imdorf & Gerig, course text); 5.4 mm cells "
                        "give 3.96 by geometry"};
constexpr Ranged kBees{1.30, 1.1, 1.5,
                       "125 to 130 a dm2, Liebefeld method (Imdorf & Gerig, course text); 1,215 a "
                       "side of 880 cm2, Burgett & Burikam 1985 (from memory)"};
constexpr std::string_view kBoxMemory = "from memory; makers differ, weigh one of your own";

constexpr std::string_view kBoxZander =
    "boxes of 2.4 to 7.2 kg and ten drawn combs of 340 to 490 g, Deutsches Bienen-Journal "
    "(Liebefelder Schätzmethode für ausreichend Winterfutter); weigh one of your own";

constexpr std::string_view kBoxNational =
    "a wooden hive without stores weighs 17 kg with one brood box, 22 kg with a super on it (Conwy "
    "association, 2014), less floor, roof, bees and pollen; weigh one of your own";

constexpr Shipped kTable[] = {
    {"langstroth_deep",
     {880, 850, 900,
      "880 cm2 in papers on colony strength (from memory); 135 square inches give "
      "871"},
     {1.45, 1.35, 1.6, "2.7 to 3.2 kg a frame, association leaflets"},
     {10, 7, 11, kBoxMemory},
     10,
     kCells,
     kBees},
    {"langstroth_medium",
     {562, 540, 580, "17 x 5 1/8 inch inside the wood, computed"},
     {0.95, 0.9, 1.1, "1.8 kg extractable a frame, handbook of frame data"},
     {6.5, 4.5, 7.5, kBoxMemory},
     10,
     kCells,
     kBees},
    {"langstroth_shallow",
     {466, 450, 485, "17 x 4 1/4 inch inside the wood, computed"},
     {0.75, 0.7, 0.9, "1.4 kg extractable a frame, handbook of frame data"},
     {5.5, 4.5, 6.5, kBoxMemory},
     10,
     kCells,
     kBees},
    {"dadant_brood",
     {1134, 1100, 1170, "420 x 270 mm inside a 435 x 300 mm frame, computed"},
     {1.85, 1.75, 2.0, "3.5 to 4 kg a frame (from memory)"},
     {10, 8, 12, kBoxMemory},
     10,
     kCells,
     kBees},
    {"dadant_super",
     {567, 550, 585, "420 x 135 mm inside the wood, computed"},
     {0.92, 0.85, 1.0, "1.7 to 2 kg a frame (from memory)"},
     {5, 4, 6, kBoxMemory},
     10,
     kCells,
     kBees},
    {"national_brood",
     {650, 631, 665, "356 x 216 mm frame (association page), inside computed"},
     {1.0, 0.95, 1.15, "2 kg to 5 lb a frame, BBKA blog and BBKA News 216 (2013)"},
     {8.5, 5.5, 9.5, kBoxNational},
     11,
     kCells,
     kBees},
    {"national_super",
     {408, 395, 420, "356 x 140 mm frame (association page), inside computed"},
     {0.5, 0.45, 0.6, "1 kg a frame, BBKA blog"},
     {5, 3.5, 5.5, kBoxNational},
     11,
     kCells,
     kBees},
    {"zander",
     {800, 780, 820, "8 dm2: 8 x 1 dm2 of the counting frame (bees-online.at, 2020)"},
     {1.0, 1.0, 1.35, "125 g an eighth (bees-online.at, 2020)"},
     {7.5, 5.5, 12, kBoxZander},
     10,
     kCells,
     kBees},
    {"german_normal",
     {711, 690, 730, "350 x 203 mm inside a 370 x 223 mm frame, computed"},
     {1.0, 0.89, 1.2, "125 to 165 g a dm2, computed"},
     {5, 4.5, 6.5, kBoxMemory},
     11,
     kCells,
     kBees},
    {"liebefeld",
     {800, 800, 800, "8 dm2: a Zander side (bees-online.at, 2020)"},
     {1.0, 1.0, 1.0, "125 g a dm2 (bees-online.at, 2020)"},
     {7.5, 5.5, 12, kBoxZander},
     10,
     {4.0, 4.0, 4.0, "400 an eighth (bees-online.at, 2020)"},
     {1.25, 1.25, 1.25, "125 an eighth (bees-online.at, 2020)"}},
};

FrameFigures figuresOf(const Shipped& s) {
  FrameFigures f;
  f.frameType = std::string(s.type);
  f.combCm2 = s.combCm2.value;
  f.cellsPerCm2 = s.cells.value;
  f.beesPerCm2 = s.bees.value;
  f.honeySideKg = s.honeySideKg.value;
  f.framesPerBox = s.frames;
  f.boxKg = s.boxKg.value;
  f.source = std::string(s.combCm2.source);
  return f;
}

FigureNote noteOf(std::string_view column, const Ranged& r, std::string_view unit) {
  return {column, r.value, r.low, r.high, unit, r.source};
}

}  // namespace

const std::vector<FrameFigures>& allShippedFigures() {
  static const std::vector<FrameFigures> kAll = [] {
    std::vector<FrameFigures> all;
    for (const Shipped& s : kTable) all.push_back(figuresOf(s));
    return all;
  }();
  return kAll;
}

const FrameFigures* shippedFigures(std::string_view frameType) {
  for (const FrameFigures& f : allShippedFigures()) {
    if (f.frameType == frameType) return &f;
  }
  return nullptr;
}

std::vector<FigureNote> figureNotes(std::string_view frameType) {
  for (const Shipped& s : kTable) {
    if (s.type != frameType) continue;
    return {noteOf("comb_cm2", s.combCm2, "cm2"), noteOf("cells_per_cm2", s.cells, "per cm2"),
            noteOf("bees_per_cm2", s.bees, "per cm2"), noteOf("honey_side_kg", s.honeySideKg, "kg"),
            noteOf("box_kg", s.boxKg, "kg")};
  }
  return {};
}

std::optional<FrameFigures> figuresFor(const apiary::Season& season, std::string_view frameType) {
  const FrameFigures* shipped = shippedFigures(frameType);
  const auto* own = season.find<apiary::FrameType>(std::string(frameType));
  if (!own) return shipped ? std::optional(*shipped) : std::nullopt;
  FrameFigures f;
  if (shipped) {
    f = *shipped;
  } else {
    if (!own->combCm2) return std::nullopt;
    f.frameType = std::string(frameType);
    // 145 g a dm2 lies between the Liebefeld rule (125) and the geometry of a capped comb (165);
    // half a kilogram of wood and wax for each frame with its share of the box (our assumption).
    f.honeySideKg = *own->combCm2 / 100 * 0.145;
    f.boxKg = own->framesPerBox.value_or(f.framesPerBox) * 0.6;
  }
  f.combCm2 = own->combCm2.value_or(f.combCm2);
  f.cellsPerCm2 = own->cellsPerCm2.value_or(f.cellsPerCm2);
  f.beesPerCm2 = own->beesPerCm2.value_or(f.beesPerCm2);
  f.honeySideKg = own->honeySideKg.value_or(f.honeySideKg);
  f.framesPerBox = own->framesPerBox.value_or(f.framesPerBox);
  f.boxKg = own->boxKg.value_or(f.boxKg);
  if (!own->source.empty()) f.source = own->source;
  return f;
}

}  // namespace outyard::strength
