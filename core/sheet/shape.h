// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <variant>
#include <vector>

/// Drawing as data, in millimetres, y downwards. One painter (ui/print) turns it into pixels for
/// the window, the preview, PDF and printer, so that they cannot differ.
namespace outyard::sheet {

struct Point {
  double x = 0, y = 0;
  bool operator==(const Point&) const = default;
};

/// What a shape means; the painter picks the colour for paper, light and dark. On paper every ink
/// is black or a grey that a copier keeps.
enum class Ink {
  None,
  Text,
  FaintText,
  Line,
  FaintLine,
  Paper,
  Wood,
  WoodEdge,
  Bees,
  BeesExpected,
  Comb,
  Honey,
  Nectar,
  Pollen,
  SealedBrood,
  OpenBrood,
  Eggs,
  DroneBrood,
  Undrawn,
  Mould,
  Ground,
  Green,
  Track,
  Water,
  Stand,
  Accent,
  Warning,
  Alarm,
  Arrow,
  Shade
};
/// Doubles a colour so that it can be told without it.
enum class Hatch { None, Diagonal, Dots, Horizontal, Cross, Dense, Vertical };

struct Stroke {
  Ink ink = Ink::Line;
  double widthMm = 0.2;
  bool dashed = false;
  bool operator==(const Stroke&) const = default;
};

struct LineShape {
  Point from, to;
  Stroke stroke{};
};
struct RectShape {
  Point corner;  ///< upper left
  double widthMm = 0, heightMm = 0;
  double radiusMm = 0;
  Ink fill = Ink::None;
  Hatch hatch = Hatch::None;
  Stroke stroke{};  ///< ink None = no outline
};
struct PolygonShape {
  std::vector<Point> points;
  Ink fill = Ink::None;
  Hatch hatch = Hatch::None;
  Stroke stroke{};
  bool closed = true;
};
struct EllipseShape {
  Point centre;
  double rxMm = 0, ryMm = 0;
  Ink fill = Ink::None;
  Stroke stroke{};
};
enum class Align { Left, Centre, Right };
struct TextShape {
  Point at;           ///< baseline
  std::string text;   ///< already worded, one line
  double sizeMm = 3;  ///< height of the font (its em)
  bool bold = false;
  bool italic = false;
  Align align = Align::Left;
  Ink ink = Ink::Text;
  double maxWidthMm = 0;  ///< 0 = free; else the layout promises that it fits
};
using Shape = std::variant<LineShape, RectShape, PolygonShape, EllipseShape, TextShape>;
using Shapes = std::vector<Shape>;

/// Moves, turns (degrees clockwise) and scales shapes about the origin: scale, then turn, then
/// move. Text turns about its baseline point only by position (it stays upright).
Shapes transformed(const Shapes& shapes, Point move, double turnDeg = 0, double scale = 1);

/// Text width through an interface, so that layout needs no font library.
class TextMeasurer {
 public:
  virtual ~TextMeasurer() = default;
  [[nodiscard]] virtual double widthMm(const std::string& text, double sizeMm, bool bold) const = 0;
};

}  // namespace outyard::sheet
