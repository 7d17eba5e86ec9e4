// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/base/date.h"

namespace outyard::base {

/// The time of day and date, handed in: core never asks the system itself.
class Clock {
 public:
  virtual ~Clock() = default;
  /// Civil date where the user is.
  [[nodiscard]] virtual Date today() const = 0;
  /// UTC as YYYY-MM-DDTHH:MM:SSZ.
  [[nodiscard]] virtual std::string nowUtc() const = 0;
};

/// A clock that stands still: tests and repeatable output.
class FixedClock : public Clock {
 public:
  FixedClock(Date today, std::string nowUtc) : m_today(today), m_nowUtc(std::move(nowUtc)) {}
  [[nodiscard]] Date today() const override { return m_today; }
  [[nodiscard]] std::string nowUtc() const override { return m_nowUtc; }

 private:
  Date m_today;
  std::string m_nowUtc;
};

}  // namespace outyard::base
