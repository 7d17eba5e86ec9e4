// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QRectF>

#include "core/sheet/shape.h"

namespace outyard::widgets {

/// The box that holds all shapes, in millimetres; text counts with its baseline point only.
QRectF boundsOf(const sheet::Shapes& shapes);

}  // namespace outyard::widgets
