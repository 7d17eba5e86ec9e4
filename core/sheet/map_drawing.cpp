// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/map_drawing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/sheet/map_parts.h"
#include "core/sheet/text_layout.h"
#include "core/sheet/walking_order.h"

namespace outyard::sheet {

namespace {

using apiary::FeatureKind;

constexpr double kLabelMm = 2.6;
constexpr double kEdgeMm = 2.5;
constexpr double kMarkTallMm = kMapMarkMm * kMarkHeightMm / kMarkWidthMm;
/// A mark with its label beneath, around the centre of the mark.
constexpr double kCellWide = kMapMarkMm + 0.4;
constexpr double kAboveMm = 0.3, kBelowMm = kLabelMm + 0.7;
constexpr double kCellTop = kMapMarkMm / 2 + kAboveMm;
constexpr double kCellBottom = kMapMarkMm / 2 + kBelowMm;
constexpr double kCellTall = kCellTop + kCellBottom;
constexpr double kMarkScale = kMapMarkMm / kMarkWidthMm;
constexpr double kNudgeMm = 8;
constexpr double kSymbolMm = 2.6;  ///< half the width of a symbol
/// Least cell of the grid of a crowded map: three lines of a group's numbers, or one mark.
constexpr double kGridWide = 30, kGridTall = 12;
/// Strip at the bottom for the scale bar.
constexpr double kFootMm = 6.5;

struct Group {
  Point truth, centre;
  std::vector<const apiary::HiveState*> hives;
  std::vector<std::string> text;  ///< label lines of a group of several
  double entrance = 180;          ///< on the drawing, to the nearest quarter: seams stay readable
  double width = kCellWide, top = kCellTop, bottom = kCellBottom;
  [[nodiscard]] Area area() const {
    return {centre.x - width / 2, centre.y - top, centre.x + width / 2, centre.y + bottom};
  }
};

class Mapper {
 public:
  explicit Mapper(const MapInput& input) : m_in(input) {}

  MapDrawing draw() {
    findScale();
    drawGround();
    drawFeatureShapes();
    placeHives();
    drawHives();
    drawFeatureTexts();
    drawNorth();
    drawScaleBar();
    return std::move(m_out);
  }

 private:
  [[nodiscard]] Area field() const {
    return {kEdgeMm, kEdgeMm, m_in.widthMm - kEdgeMm, m_in.heightMm - kFootMm};
  }

  void findScale() {
    double x0 = 1e9, y0 = 1e9, x1 = -1e9, y1 = -1e9;
    const auto reach = [&](double x, double y) {
      x0 = std::min(x0, x);
      x1 = std::max(x1, x);
      y0 = std::min(y0, y);
      y1 = std::max(y1, y);
      m_placed = true;
    };
    for (const apiary::HiveState& hive : *m_in.hives) {
      if (hive.xM && hive.yM) reach(*hive.xM, *hive.yM);
    }
    for (const auto& [key, f] : m_in.season->table<apiary::Feature>()) {
      if (f.yard != m_in.yard || f.kind == FeatureKind::Picture) continue;
      reach(f.xM, f.yM);
      if (f.x2M && f.y2M) reach(*f.x2M, *f.y2M);
    }
    if (!m_placed) return;
    // The hives decide the size: ground without any is cut off, but for a margin.
    const Area in = field();
    const double roomX = in.x1 - in.x0 - kCellWide, roomY = in.y1 - in.y0 - kCellTall;
    const double perX = x1 - x0 > 0.5 ? roomX / (x1 - x0) : 1e9;
    const double perY = y1 - y0 > 0.5 ? roomY / (y1 - y0) : 1e9;
    constexpr double kMostMmPerMetre = 15;
    m_scale.perMetre = std::min({perX, perY, kMostMmPerMetre});
    const double middleX = (in.x0 + in.x1) / 2;
    const double middleY = (in.y0 + kCellTop + in.y1 - kCellBottom) / 2;
    m_scale.left = middleX - (x0 + x1) / 2 * m_scale.perMetre;
    m_scale.bottom = middleY + (y0 + y1) / 2 * m_scale.perMetre;
    m_out.mmPerMetre = m_scale.perMetre;
  }

  void drawGround() {
    RectShape ground{{0, 0}, m_in.widthMm, m_in.heightMm, 1.2};
    ground.fill = Ink::Ground;
    ground.stroke = {Ink::FaintLine, 0.3};
    m_out.shapes.emplace_back(ground);
    m_out.groundShapes = m_out.shapes.size();
    if (m_placed) {
      m_out.pictures =
          picturesOn(*m_in.season, m_in.yard, m_scale, {0, 0, m_in.widthMm, m_in.heightMm});
    }
    for (const auto& [key, stand] : m_in.season->table<apiary::Stand>()) {
      if (stand.yard != m_in.yard || !m_placed) continue;
      const Point at = m_scale.at(stand.xM, stand.yM);
      const bool pallet = stand.kind && *stand.kind != apiary::StandKind::Stand;
      const double wide = (pallet ? 1.2 : 1.1) * m_scale.perMetre;
      const double deep = (pallet ? 1.2 : 0.6) * m_scale.perMetre;
      RectShape r{{-wide / 2, -deep / 2}, wide, deep, 0.4};
      r.fill = Ink::Stand;
      r.stroke = {Ink::FaintLine, 0.15};
      const Area where{at.x - wide, at.y - wide, at.x + wide, at.y + wide};
      if (!where.within({0, 0, m_in.widthMm, m_in.heightMm})) continue;
      const Shapes moved = transformed({r}, at, stand.angleDeg.value_or(0));
      m_out.shapes.insert(m_out.shapes.end(), moved.begin(), moved.end());
    }
  }

  void keepInside(Group& g) const {
    const Area in = field();
    g.centre.x = std::clamp(g.centre.x, in.x0 + g.width / 2,
                            std::max(in.x0 + g.width / 2, in.x1 - g.width / 2));
    g.centre.y = std::clamp(g.centre.y, in.y0 + g.top, std::max(in.y0 + g.top, in.y1 - g.bottom));
  }

  void placeHives() {
    for (const apiary::HiveState& hive : *m_in.hives) {
      if (!hive.xM || !hive.yM) {
        m_out.unplaced.push_back(hive.hive);
        continue;
      }
      Group g;
      g.truth = g.centre = m_scale.at(*hive.xM, *hive.yM);
      g.hives = {&hive};
      const apiary::Yard* yard = m_in.season->yard(m_in.yard);
      g.entrance =
          quarter(hive.entranceDeg.value_or(180) + (yard ? yard->northDeg.value_or(0) : 0));
      const bool onItsSide = g.entrance == 90 || g.entrance == 270;
      const double half = (onItsSide ? kMapMarkMm : kMarkTallMm) / 2;
      g.top = half + kAboveMm;
      g.bottom = half + kBelowMm;
      keepInside(g);
      m_groups.push_back(std::move(g));
    }
    std::sort(m_groups.begin(), m_groups.end(), [](const Group& a, const Group& b) {
      return naturalLess(a.hives.front()->hive.str(), b.hives.front()->hive.str());
    });
    const std::vector<Group> singles = m_groups;
    nudge();
    while (mergeOne()) {
    }
    constexpr std::size_t kLargeGroup = 6;
    const bool crowded = std::any_of(m_groups.begin(), m_groups.end(),
                                     [](const Group& g) { return g.hives.size() > kLargeGroup; });
    if (crowded) gatherInCells(singles);
  }

  /// Where nudging ends in heaps: one group for each cell of a grid, which stays near its place.
  void gatherInCells(const std::vector<Group>& singles) {
    const Area in = field();
    const int across = std::max(1, static_cast<int>((in.x1 - in.x0) / kGridWide));
    const int down = std::max(1, static_cast<int>((in.y1 - in.y0) / kGridTall));
    const double wide = (in.x1 - in.x0) / across, tall = (in.y1 - in.y0) / down;
    std::map<std::pair<int, int>, Group> cells;
    for (const Group& g : singles) {
      const int column = std::clamp(static_cast<int>((g.truth.x - in.x0) / wide), 0, across - 1);
      const int row = std::clamp(static_cast<int>((g.truth.y - in.y0) / tall), 0, down - 1);
      Group& cell = cells[{row, column}];
      if (cell.hives.empty()) {
        cell = g;
      } else {
        merge(cell, g);
      }
      cell.width = std::min(cell.width, wide - 0.6);
      // within its cell, so that no two meet
      const double left = in.x0 + column * wide, top = in.y0 + row * tall;
      cell.centre.x =
          std::clamp(cell.truth.x, left + cell.width / 2 + 0.2, left + wide - cell.width / 2 - 0.2);
      cell.centre.y = std::clamp(cell.truth.y, top + cell.top, top + tall - cell.bottom);
    }
    m_groups.clear();
    for (auto& [place, cell] : cells) m_groups.push_back(std::move(cell));
  }

  /// Pushes marks apart along the shorter way, never far from their true place.
  void nudge() {
    constexpr int kRounds = 300;
    for (int round = 0; round < kRounds; ++round) {
      bool moved = false;
      for (std::size_t i = 0; i < m_groups.size(); ++i) {
        for (std::size_t k = i + 1; k < m_groups.size(); ++k) {
          moved = pushApart(m_groups[i], m_groups[k]) || moved;
        }
        for (const Point& p : m_symbols) moved = pushOff(m_groups[i], p) || moved;
      }
      if (!moved) return;
    }
  }

  bool pushApart(Group& a, Group& b) const {
    const double dx = b.centre.x - a.centre.x, dy = b.centre.y - a.centre.y;
    const double overX = (a.width + b.width) / 2 - std::abs(dx);
    const double overY = dy >= 0 ? a.bottom + b.top - dy : b.bottom + a.top + dy;
    constexpr double kEnough = 0.02;
    if (overX <= kEnough || overY <= kEnough) return false;
    const bool sideways = overX <= overY;
    const double push = (sideways ? overX : overY) / 2 + 0.01;
    const double sign = (sideways ? dx : dy) >= 0 ? 1 : -1;
    shift(a, -sign * push, sideways);
    shift(b, sign * push, sideways);
    return true;
  }

  void shift(Group& g, double by, bool sideways) const {
    Point& c = g.centre;
    (sideways ? c.x : c.y) += by;
    const double away = std::hypot(c.x - g.truth.x, c.y - g.truth.y);
    if (away > kNudgeMm) {
      c.x = g.truth.x + (c.x - g.truth.x) * kNudgeMm / away;
      c.y = g.truth.y + (c.y - g.truth.y) * kNudgeMm / away;
    }
    keepInside(g);
  }

  /// Away from the symbol of a gate, a truck or water, which stays where it is.
  bool pushOff(Group& g, Point symbol) const {
    const double dx = g.centre.x - symbol.x, dy = g.centre.y - symbol.y;
    const double overX = g.width / 2 + kSymbolMm - std::abs(dx);
    const double overY = dy >= 0 ? g.top + kSymbolMm / 2 - dy : g.bottom + kSymbolMm / 2 + dy;
    constexpr double kEnough = 0.02;
    if (overX <= kEnough || overY <= kEnough) return false;
    const bool sideways = overX <= overY;
    const double sign = (sideways ? dx : dy) >= 0 ? 1 : -1;
    shift(g, sign * ((sideways ? overX : overY) + 0.01), sideways);
    return true;
  }

  bool mergeOne() {
    for (std::size_t i = 0; i < m_groups.size(); ++i) {
      for (std::size_t k = i + 1; k < m_groups.size(); ++k) {
        Area a = m_groups[i].area();
        // what nudging leaves within its tolerance is no overlap
        a = {a.x0 + 0.03, a.y0 + 0.03, a.x1 - 0.03, a.y1 - 0.03};
        if (!a.meets(m_groups[k].area())) continue;
        merge(m_groups[i], m_groups[k]);
        m_groups.erase(m_groups.begin() + static_cast<std::ptrdiff_t>(k));
        return true;
      }
    }
    return false;
  }

  void merge(Group& into, const Group& from) const {
    const double a = static_cast<double>(into.hives.size()),
                 b = static_cast<double>(from.hives.size());
    into.truth = {(into.truth.x * a + from.truth.x * b) / (a + b),
                  (into.truth.y * a + from.truth.y * b) / (a + b)};
    into.centre = into.truth;
    into.hives.insert(into.hives.end(), from.hives.begin(), from.hives.end());
    into.text = groupText(into.hives);
    double widest = 0;
    for (const std::string& line : into.text) {
      widest = std::max(widest, m_in.text->widthMm(line, kLabelMm, true));
    }
    into.width = std::max(kCellWide, widest + 3);
    into.top = into.bottom = static_cast<double>(into.text.size()) * (kLabelMm + 0.6) / 2 + 1.2;
    keepInside(into);
  }

  /// "3-6, 9" of the line numbers, broken into short lines.
  [[nodiscard]] std::vector<std::string> groupText(
      const std::vector<const apiary::HiveState*>& hives) const {
    std::vector<std::string> labels;
    for (const apiary::HiveState* h : hives) {
      const auto it = m_in.labels.find(h->hive);
      labels.push_back(it == m_in.labels.end() ? h->hive.str() : it->second);
    }
    std::sort(labels.begin(), labels.end(), naturalLess);
    std::string text;
    for (std::size_t i = 0; i < labels.size();) {
      std::size_t end = i;
      const auto number = [](const std::string& s) {
        return !s.empty() && s.size() < 6 &&
                       std::all_of(s.begin(), s.end(), [](char c) { return c >= '0' && c <= '9'; })
                   ? std::stoi(s)
                   : -10;
      };
      while (end + 1 < labels.size() && number(labels[end]) > 0 &&
             number(labels[end + 1]) == number(labels[end]) + 1) {
        ++end;
      }
      if (!text.empty()) text += ", ";
      text += labels[i];
      if (end > i) text += "\u2013" + labels[end];
      i = end + 1;
    }
    constexpr double kGroupTextMm = 26;
    constexpr int kGroupLines = 3;
    return wrapText(*m_in.text, text, {kLabelMm, true}, kGroupTextMm, kGroupLines).lines;
  }

  void drawHives() {
    for (const Group& g : m_groups) {
      MapDrawing::Spot spot{g.centre, {}};
      for (const apiary::HiveState* h : g.hives) spot.hives.push_back(h->hive);
      m_out.spots.push_back(spot);
      m_taken.push_back(g.area());
      if (g.hives.size() > 1) {
        drawGroup(g);
        continue;
      }
      if (std::hypot(g.centre.x - g.truth.x, g.centre.y - g.truth.y) > 1.5) {
        m_out.shapes.emplace_back(LineShape{g.truth, g.centre, {Ink::Line, 0.15}});
        m_out.shapes.emplace_back(EllipseShape{g.truth, 0.4, 0.4, Ink::Line, {Ink::None}});
      }
      const apiary::HiveState& hive = *g.hives.front();
      MarkInput mark = markInput(*m_in.season, hive, *m_in.judgements, m_in.day);
      if (m_in.expected) addExpected(mark, hive, *m_in.expected);
      mark.entranceDeg = g.entrance;
      const Shapes drawn = transformed(hiveMark(mark), g.centre, 0, kMarkScale);
      m_out.shapes.insert(m_out.shapes.end(), drawn.begin(), drawn.end());
      const auto label = m_in.labels.find(hive.hive);
      if (label != m_in.labels.end()) {
        // Two colonies have two numbers: smaller, before they would be cut.
        constexpr double kLeastMm = 1.9;
        double size = kLabelMm;
        while (size > kLeastMm && m_in.text->widthMm(label->second, size, true) > kCellWide - 0.2) {
          size -= 0.1;
        }
        const Wrapped one = wrapText(*m_in.text, label->second, {size, true}, kCellWide - 0.2, 1);
        if (!one.lines.empty()) {
          text({g.centre.x, g.centre.y + g.bottom - 0.75}, one.lines.front(), size, true,
               Align::Centre);
        }
      }
    }
  }

  /// The nearest of north, east, south and west.
  static double quarter(double degrees) {
    double d = std::fmod(degrees, 360.0);
    if (d < 0) d += 360;
    return std::fmod(std::round(d / 90) * 90, 360.0);
  }

  void drawGroup(const Group& g) {
    const Area a = g.area();
    RectShape r{{a.x0 + 0.4, a.y0 + 0.4}, a.x1 - a.x0 - 0.8, a.y1 - a.y0 - 0.8, 0.8};
    r.fill = Ink::Paper;
    r.stroke = {Ink::WoodEdge, 0.35};
    m_out.shapes.emplace_back(r);
    double y = g.centre.y - g.top + 1.2 + kLabelMm * kAscent + 0.3;
    for (const std::string& line : g.text) {
      text({g.centre.x, y}, line, kLabelMm, true, Align::Centre);
      y += kLabelMm + 0.6;
    }
  }

  void drawFeatureShapes() {
    for (const auto& [key, f] : m_in.season->table<apiary::Feature>()) {
      if (f.yard != m_in.yard || !m_placed || f.kind == FeatureKind::Picture) continue;
      const Point p = m_scale.at(f.xM, f.yM);
      if (f.kind != FeatureKind::Fence) {
        m_symbols.push_back(p);
        m_taken.push_back(
            {p.x - kSymbolMm, p.y - kSymbolMm / 2, p.x + kSymbolMm, p.y + kSymbolMm / 2});
      }
      if (f.x2M && f.y2M) {
        m_out.shapes.emplace_back(
            LineShape{p,
                      m_scale.at(*f.x2M, *f.y2M),
                      {f.kind == FeatureKind::Water ? Ink::Water : Ink::Line,
                       f.kind == FeatureKind::Fence ? 0.3 : 0.9, f.kind == FeatureKind::Fence}});
        if (f.kind == FeatureKind::Fence) continue;
      }
      if (f.kind == FeatureKind::Water) {
        m_out.shapes.emplace_back(EllipseShape{p, 2.2, 1.4, Ink::Water, {Ink::Line, 0.2}});
      } else if (f.kind == FeatureKind::Truck) {
        m_out.shapes.emplace_back(
            RectShape{{p.x - 2.4, p.y - 1.2}, 3.2, 2.4, 0.2, Ink::Track, Hatch::None, {Ink::Line}});
        m_out.shapes.emplace_back(
            RectShape{{p.x + 0.8, p.y - 0.7}, 1.6, 1.9, 0.3, Ink::Track, Hatch::None, {Ink::Line}});
      } else if (f.kind == FeatureKind::Gate) {
        m_out.shapes.emplace_back(
            LineShape{{p.x - 2, p.y - 1.3}, {p.x - 2, p.y + 1.3}, {Ink::Text, 0.6}});
        m_out.shapes.emplace_back(
            LineShape{{p.x + 2, p.y - 1.3}, {p.x + 2, p.y + 1.3}, {Ink::Text, 0.6}});
        m_out.shapes.emplace_back(
            LineShape{{p.x - 2, p.y + 0.8}, {p.x + 1.6, p.y - 1}, {Ink::Text, 0.25}});
      }
    }
  }

  void drawFeatureTexts() {
    for (const auto& [key, f] : m_in.season->table<apiary::Feature>()) {
      if (f.yard != m_in.yard || !m_placed) continue;
      if (f.kind == FeatureKind::Picture || f.kind == FeatureKind::Fence) continue;
      std::string name = m_in.word(featureWord(f.kind));
      const Point p = m_scale.at(f.xM, f.yM);
      const double w = m_in.text->widthMm(name, kLabelMm, false);
      // beside, before, above, beneath the symbol: the first place that is free
      const Point places[] = {{p.x + 3.2, p.y + 1},
                              {p.x - 3.2 - w, p.y + 1},
                              {p.x - w / 2, p.y - 2.2},
                              {p.x - w / 2, p.y + 4.4}};
      for (const Point& at : places) {
        const Area a{at.x, at.y - kLabelMm, at.x + w, at.y + 0.7};
        const bool free =
            a.within({1, 1, m_in.widthMm - 1, m_in.heightMm - kFootMm + 2}) &&
            std::none_of(m_taken.begin(), m_taken.end(), [&](const Area& t) { return t.meets(a); });
        if (!free) continue;
        text(at, name, kLabelMm, false, Align::Left);
        m_taken.push_back(a);
        break;
      }
    }
  }

  static base::Message featureWord(FeatureKind kind) {
    switch (kind) {
      case FeatureKind::Gate:
        return base::message("sheet.map.gate");
      case FeatureKind::Truck:
        return base::message("sheet.map.truck");
      case FeatureKind::Water:
        return base::message("sheet.map.water");
      case FeatureKind::Fence:
      case FeatureKind::Picture:
        break;
    }
    return base::message("sheet.map.fence");
  }

  /// In the strip under the field, at its right end.
  void drawNorth() {
    const apiary::Yard* yard = m_in.season->yard(m_in.yard);
    const double turn = yard ? yard->northDeg.value_or(0) : 0;
    PolygonShape arrow;
    arrow.points = {{0, -2.4}, {1.3, 2.2}, {0, 1.3}, {-1.3, 2.2}};
    arrow.fill = Ink::Text;
    arrow.stroke.ink = Ink::None;
    const Point at{m_in.widthMm - 4, m_in.heightMm - 3.4};
    const Shapes turned = transformed({arrow}, at, turn);
    m_out.shapes.insert(m_out.shapes.end(), turned.begin(), turned.end());
    text({at.x - 2.6, m_in.heightMm - 2.4}, m_in.word(base::message("sheet.map.north")), kLabelMm,
         true, Align::Right);
  }

  void drawScaleBar() {
    const double y = m_in.heightMm - 2.2;
    if (!m_placed) return;
    double metres = 1;
    for (const double nice : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0}) {
      metres = nice;
      if (nice * m_scale.perMetre >= 14) break;
    }
    const double wide = metres * m_scale.perMetre;
    if (wide > m_in.widthMm / 2) return;
    m_out.shapes.emplace_back(LineShape{{3, y}, {3 + wide, y}, {Ink::Line, 0.3}});
    for (const double x : {3.0, 3 + wide}) {
      m_out.shapes.emplace_back(LineShape{{x, y - 0.9}, {x, y + 0.9}, {Ink::Line, 0.3}});
    }
    text({3 + wide + 1.5, y + 0.9}, m_in.word(base::message("sheet.map.metres", metres)), kLabelMm,
         false, Align::Left);
  }

  void text(Point at, const std::string& words, double size, bool bold, Align align) {
    TextShape t;
    t.at = at;
    t.text = words;
    t.sizeMm = size;
    t.bold = bold;
    t.align = align;
    m_out.shapes.emplace_back(t);
  }

  const MapInput& m_in;
  MapDrawing m_out;
  Scale m_scale;
  bool m_placed = false;
  std::vector<Group> m_groups;
  std::vector<Area> m_taken;     ///< where no further text may stand
  std::vector<Point> m_symbols;  ///< of gate, truck and water
};

}  // namespace

MapDrawing mapDrawing(const MapInput& input) {
  return Mapper(input).draw();
}

}  // namespace outyard::sheet
