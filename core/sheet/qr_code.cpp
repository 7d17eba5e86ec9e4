// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/qr_code.h"

#include <qrcodegen/qrcodegen.hpp>

namespace outyard::sheet {

Shapes qrCode(const std::string& text, Point corner, double sizeMm) {
  using qrcodegen::QrCode;
  const QrCode code = QrCode::encodeText(text.c_str(), QrCode::Ecc::MEDIUM);
  constexpr int kQuiet = 4;
  const double module = sizeMm / (code.getSize() + 2 * kQuiet);
  Shapes shapes;
  for (int y = 0; y < code.getSize(); ++y) {
    for (int x = 0; x < code.getSize(); ++x) {
      if (!code.getModule(x, y)) continue;
      const int from = x;
      while (x + 1 < code.getSize() && code.getModule(x + 1, y)) ++x;
      RectShape run;
      run.corner = {corner.x + (kQuiet + from) * module, corner.y + (kQuiet + y) * module};
      run.widthMm = (x - from + 1) * module;
      // a hair of overlap, so that no seam of white shows between rows
      run.heightMm = module * 1.02;
      run.fill = Ink::Text;
      run.stroke.ink = Ink::None;
      shapes.emplace_back(run);
    }
  }
  return shapes;
}

}  // namespace outyard::sheet
