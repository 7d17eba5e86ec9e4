// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/sheet/shape.h"

namespace outyard::sheet {

/// The text as a QR code (ISO/IEC 18004, error correction M: a smudge of about 15 % can be read
/// through), black squares in runs, with the quiet zone of four modules inside sizeMm. Throws
/// std::length_error for text that no QR code can hold.
Shapes qrCode(const std::string& text, Point corner, double sizeMm);

}  // namespace outyard::sheet
