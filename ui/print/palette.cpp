// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/palette.h"

#include <algorithm>
#include <cmath>

namespace outyard::print {

namespace {

QColor rgb(QRgb value) {
  return QColor(value);
}

/// Relative luminance, WCAG 2.1.
double luminance(const QColor& colour) {
  const auto linear = [](double c) {
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
         0.0722 * linear(colour.blueF());
}

}  // namespace

double contrast(const QColor& a, const QColor& b) {
  const double la = luminance(a), lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

// In the order of sheet::Ink. Colours are doubled by hatch, shape or letter wherever they mean
// something; bees are teal, wood and comb brown and cream, honey ochre, so that red and green
// never stand against each other.
const Palette& Palette::paper() {
  static const Palette kPaper{Colours{
      QColor(Qt::transparent),  // None
      rgb(0x000000),            // Text
      rgb(0x3c3c3c),            // FaintText
      rgb(0x000000),            // Line
      rgb(0x8a8a8a),            // FaintLine
      rgb(0xffffff),            // Paper
      rgb(0xf0f0f0),            // Wood
      rgb(0x303030),            // WoodEdge
      rgb(0x101010),            // Bees
      rgb(0x404040),            // BeesExpected
      rgb(0xffffff),            // Comb
      rgb(0xe0e0e0),            // Honey
      rgb(0xd2d2d2),            // Nectar
      rgb(0xc4c4c4),            // Pollen
      rgb(0x555555),            // SealedBrood
      rgb(0xffffff),            // OpenBrood
      rgb(0xffffff),            // Eggs
      rgb(0xb4b4b4),            // DroneBrood
      rgb(0xffffff),            // Undrawn
      rgb(0x404040),            // Mould
      rgb(0xffffff),            // Ground
      rgb(0xe6e6e6),            // Green
      rgb(0xd8d8d8),            // Track
      rgb(0xd0d0d0),            // Water
      rgb(0xe4e4e4),            // Stand
      rgb(0x000000),            // Accent
      rgb(0x202020),            // Warning
      rgb(0x000000),            // Alarm
      rgb(0x202020),            // Arrow
      rgb(0xdcdcdc),            // Shade
  }};
  return kPaper;
}

const Palette& Palette::light() {
  static const Palette kLight{Colours{
      QColor(Qt::transparent),  // None
      rgb(0x1d2b28),            // Text
      rgb(0x53625f),            // FaintText
      rgb(0x4c5a57),            // Line
      rgb(0xb9c2be),            // FaintLine
      rgb(0xfdfcf8),            // Paper
      rgb(0xeadfc8),            // Wood
      rgb(0x8b744c),            // WoodEdge
      rgb(0x1f5f66),            // Bees
      rgb(0x2f7d86),            // BeesExpected
      rgb(0xf5eedc),            // Comb
      rgb(0xdba23c),            // Honey
      rgb(0xf6e0a0),            // Nectar
      rgb(0xdd7f33),            // Pollen
      rgb(0x8a5a3c),            // SealedBrood
      rgb(0xf3e3cd),            // OpenBrood
      rgb(0xfbf6e9),            // Eggs
      rgb(0xb98a64),            // DroneBrood
      rgb(0xffffff),            // Undrawn
      rgb(0x4d5a4a),            // Mould
      rgb(0xf1f3ec),            // Ground
      rgb(0xcfdcc8),            // Green
      rgb(0xbab49a),            // Track
      rgb(0xa9cbd8),            // Water
      rgb(0xded5c1),            // Stand
      rgb(0x9a5b00),            // Accent
      rgb(0xa35200),            // Warning
      rgb(0xb3331e),            // Alarm
      rgb(0xb87400),            // Arrow
      rgb(0xdfe4e1),            // Shade
  }};
  return kLight;
}

const Palette& Palette::dark() {
  static const Palette kDark{Colours{
      QColor(Qt::transparent),  // None
      rgb(0xe9eeea),            // Text
      rgb(0xaab6b1),            // FaintText
      rgb(0xa3b0ab),            // Line
      rgb(0x55625e),            // FaintLine
      rgb(0x1f2725),            // Paper
      rgb(0x4b4130),            // Wood
      rgb(0xb39a6a),            // WoodEdge
      rgb(0x6fc3cb),            // Bees
      rgb(0x8fd3da),            // BeesExpected
      rgb(0x574d3a),            // Comb
      rgb(0xc48f2e),            // Honey
      rgb(0x9d8444),            // Nectar
      rgb(0xc9712c),            // Pollen
      rgb(0xa8714e),            // SealedBrood
      rgb(0x6b5a44),            // OpenBrood
      rgb(0x4a4436),            // Eggs
      rgb(0x87664a),            // DroneBrood
      rgb(0x2a3230),            // Undrawn
      rgb(0xa9b8a2),            // Mould
      rgb(0x262e2b),            // Ground
      rgb(0x3c4b3b),            // Green
      rgb(0x5a5643),            // Track
      rgb(0x38586a),            // Water
      rgb(0x4a463b),            // Stand
      rgb(0xf0b45a),            // Accent
      rgb(0xf2a65a),            // Warning
      rgb(0xff9380),            // Alarm
      rgb(0xe8b04a),            // Arrow
      rgb(0x36403d),            // Shade
  }};
  return kDark;
}

const Palette& Palette::forBackground(const QColor& background) {
  constexpr double kMiddle = 0.18;
  return luminance(background) < kMiddle ? dark() : light();
}

QColor Palette::hatch(sheet::Ink fill) const {
  const QColor& under = colour(fill == sheet::Ink::None ? sheet::Ink::Paper : fill);
  const QColor& line = colour(sheet::Ink::Line);
  const QColor& paper = colour(sheet::Ink::Paper);
  return contrast(line, under) >= contrast(paper, under) ? line : paper;
}

}  // namespace outyard::print
