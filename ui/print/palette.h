// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QColor>
#include <array>

#include "core/sheet/shape.h"

namespace outyard::print {

/// The colour of every ink, and of the lines of its hatch.
class Palette {
 public:
  /// Black and greys that a copier keeps.
  static const Palette& paper();
  static const Palette& light();
  static const Palette& dark();
  /// Light or dark, by the background that the shapes are drawn on.
  static const Palette& forBackground(const QColor& background);

  [[nodiscard]] const QColor& colour(sheet::Ink ink) const {
    return m_colours[static_cast<std::size_t>(ink)];
  }
  /// Stands out from the ink that the hatch lies on.
  [[nodiscard]] QColor hatch(sheet::Ink fill) const;

  static constexpr std::size_t kInks = static_cast<std::size_t>(sheet::Ink::Shade) + 1;

 private:
  using Colours = std::array<QColor, kInks>;
  explicit Palette(const Colours& colours) : m_colours(colours) {}
  Colours m_colours;
};

/// Contrast of two opaque colours by the formula of WCAG 2.1, 1 to 21.
double contrast(const QColor& a, const QColor& b);

}  // namespace outyard::print
