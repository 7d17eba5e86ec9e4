// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"
#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Setting;
using base::message;

CommandPtr calibrateReader(std::string reader, std::vector<Setting> rows) {
  return verb(
      message("session.title.reader", reader), std::nullopt,
      [=](Checker& c) {
        c.name(reader);
        for (const Setting& row : rows) {
          c.name(row.name);
          if (!row.value.empty()) c.row(row);
        }
      },
      [=](ChangeBuilder& b) {
        for (const Setting& row : rows) {
          if (!row.value.empty()) {
            b.put(row);
          } else if (b.find<Setting>(row.name)) {
            b.remove<Setting>(row.name);
          }
        }
      });
}

}  // namespace outyard::session
