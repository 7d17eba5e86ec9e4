// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace outyard::base {

/// A civil date (proleptic Gregorian), without time zone: the day of a visit.
class Date {
 public:
  Date() = default;
  /// Days since 1970-01-01.
  static Date fromDays(std::int32_t days) {
    Date d;
    d.m_days = days;
    return d;
  }
  /// nullopt when there is no such day (2026-02-30), or the year is outside 1900 to 2199.
  static std::optional<Date> fromYmd(int year, int month, int day);
  /// Reads exactly YYYY-MM-DD; nullopt for anything else.
  static std::optional<Date> parse(std::string_view iso);

  [[nodiscard]] std::int32_t days() const { return m_days; }
  [[nodiscard]] int year() const;
  [[nodiscard]] int month() const;
  [[nodiscard]] int day() const;
  /// 1 for 1 January.
  [[nodiscard]] int dayOfYear() const;
  /// 0 Monday to 6 Sunday.
  [[nodiscard]] int weekday() const;
  [[nodiscard]] std::string iso() const;
  [[nodiscard]] Date plusDays(int n) const { return fromDays(m_days + n); }

  friend auto operator<=>(const Date&, const Date&) = default;
  /// Whole days from b to a.
  friend int operator-(Date a, Date b) { return a.m_days - b.m_days; }

 private:
  std::int32_t m_days = 0;
};

/// A civil time of day in whole minutes.
class TimeOfDay {
 public:
  TimeOfDay() = default;
  /// nullopt outside 00:00 to 23:59.
  static std::optional<TimeOfDay> fromHm(int hour, int minute);
  /// Reads exactly HH:MM.
  static std::optional<TimeOfDay> parse(std::string_view text);
  [[nodiscard]] int minutes() const { return m_minutes; }
  [[nodiscard]] int hour() const { return m_minutes / 60; }
  [[nodiscard]] int minute() const { return m_minutes % 60; }
  [[nodiscard]] std::string text() const;
  friend auto operator<=>(const TimeOfDay&, const TimeOfDay&) = default;

 private:
  int m_minutes = 0;
};

}  // namespace outyard::base
