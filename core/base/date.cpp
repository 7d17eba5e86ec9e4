// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/date.h"

#include <array>
#include <chrono>

namespace outyard::base {
namespace {

std::chrono::year_month_day ymdOf(std::int32_t days) {
  return std::chrono::year_month_day{std::chrono::sys_days{std::chrono::days{days}}};
}

std::optional<int> digits(std::string_view s) {
  int v = 0;
  for (char c : s) {
    if (c < '0' || c > '9') return std::nullopt;
    v = v * 10 + (c - '0');
  }
  return v;
}

void put(std::string& out, unsigned v, int width) {
  std::string s = std::to_string(v);
  out.append(
      static_cast<std::size_t>(width) > s.size() ? static_cast<std::size_t>(width) - s.size() : 0,
      '0');
  out += s;
}

}  // namespace

std::optional<Date> Date::fromYmd(int year, int month, int day) {
  if (year < 1900 || year > 2199 || month < 1 || day < 1) return std::nullopt;
  const std::chrono::year_month_day ymd{std::chrono::year{year},
                                        std::chrono::month{static_cast<unsigned>(month)},
                                        std::chrono::day{static_cast<unsigned>(day)}};
  if (!ymd.ok()) return std::nullopt;
  return fromDays(static_cast<std::int32_t>(std::chrono::sys_days{ymd}.time_since_epoch().count()));
}

std::optional<Date> Date::parse(std::string_view iso) {
  if (iso.size() != 10 || iso[4] != '-' || iso[7] != '-') return std::nullopt;
  const auto y = digits(iso.substr(0, 4));
  const auto m = digits(iso.substr(5, 2));
  const auto d = digits(iso.substr(8, 2));
  if (!y || !m || !d) return std::nullopt;
  return fromYmd(*y, *m, *d);
}

int Date::year() const {
  return static_cast<int>(ymdOf(m_days).year());
}
int Date::month() const {
  return static_cast<int>(static_cast<unsigned>(ymdOf(m_days).month()));
}
int Date::day() const {
  return static_cast<int>(static_cast<unsigned>(ymdOf(m_days).day()));
}

int Date::dayOfYear() const {
  return m_days - fromYmd(year(), 1, 1).value_or(Date{}).days() + 1;
}

int Date::weekday() const {
  const int w = (m_days + 3) % 7;  // 1970-01-01 was a Thursday
  return w < 0 ? w + 7 : w;
}

std::string Date::iso() const {
  const auto ymd = ymdOf(m_days);
  std::string out;
  put(out, static_cast<unsigned>(static_cast<int>(ymd.year())), 4);
  out += '-';
  put(out, static_cast<unsigned>(ymd.month()), 2);
  out += '-';
  put(out, static_cast<unsigned>(ymd.day()), 2);
  return out;
}

std::optional<TimeOfDay> TimeOfDay::fromHm(int hour, int minute) {
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59) return std::nullopt;
  TimeOfDay t;
  t.m_minutes = hour * 60 + minute;
  return t;
}

std::optional<TimeOfDay> TimeOfDay::parse(std::string_view text) {
  if (text.size() != 5 || text[2] != ':') return std::nullopt;
  const auto h = digits(text.substr(0, 2));
  const auto m = digits(text.substr(3, 2));
  if (!h || !m) return std::nullopt;
  return fromHm(*h, *m);
}

std::string TimeOfDay::text() const {
  std::string out;
  put(out, static_cast<unsigned>(hour()), 2);
  out += ':';
  put(out, static_cast<unsigned>(minute()), 2);
  return out;
}

}  // namespace outyard::base
