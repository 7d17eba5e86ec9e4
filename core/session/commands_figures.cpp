// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/session/commands.h"
#include "core/session/verb.h"
#include "core/strength/frame_table.h"

namespace outyard::session {

using apiary::FrameType;
using base::message;

namespace {

/// True when nothing of the row says more than that the type exists.
bool saysNothing(const FrameType& type) {
  return !type.combCm2 && !type.cellsPerCm2 && !type.beesPerCm2 && !type.honeySideKg &&
         !type.framesPerBox && !type.boxKg;
}

}  // namespace

CommandPtr setFrameType(FrameType type) {
  return verb(
      message("session.title.frame_type", type.frameType), std::nullopt,
      [=](Checker& c) {
        c.name(type.frameType);
        c.row(type);
      },
      [=](ChangeBuilder& b) {
        // A row that only repeats what is shipped is taken away again, unless boxes stand on it.
        bool inUse = false;
        for (const auto& [key, box] : b.before().table<apiary::Box>()) {
          inUse = inUse || box.frameType == type.frameType;
        }
        const bool shipped = strength::shippedFigures(type.frameType) != nullptr;
        if (saysNothing(type) && (shipped || !inUse)) {
          if (b.find<FrameType>(type.frameType)) b.remove<FrameType>(type.frameType);
          return;
        }
        b.put(type);
      });
}

}  // namespace outyard::session
