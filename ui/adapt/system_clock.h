// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDate>

#include "core/base/clock.h"

namespace outyard::adapt {

/// The machine's clock: the civil date where the user is, and UTC for the time of entry.
class SystemClock : public base::Clock {
 public:
  [[nodiscard]] base::Date today() const override;
  [[nodiscard]] std::string nowUtc() const override;
};

/// Civil dates both ways; never through a time zone.
QDate toQDate(base::Date date);
base::Date fromQDate(const QDate& date);

}  // namespace outyard::adapt
