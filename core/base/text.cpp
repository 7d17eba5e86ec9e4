// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"

#include <utf8proc.h>

#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

namespace outyard::base {
namespace {

template <class F>
bool eachCodePoint(std::string_view bytes, F&& f) {
  const auto* p = reinterpret_cast<const utf8proc_uint8_t*>(bytes.data());
  auto left = static_cast<utf8proc_ssize_t>(bytes.size());
  while (left > 0) {
    utf8proc_int32_t cp = 0;
    const utf8proc_ssize_t n = utf8proc_iterate(p, left, &cp);
    if (n <= 0) return false;
    f(cp);
    p += n;
    left -= n;
  }
  return true;
}

bool isSpace(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\v' || c == '\f';
}

bool ascii(std::string_view s) {
  for (char c : s) {
    if (static_cast<unsigned char>(c) >= 0x80) return false;
  }
  return true;
}

}  // namespace

bool validUtf8(std::string_view bytes) {
  return eachCodePoint(bytes, [](utf8proc_int32_t) {});
}

std::size_t codePoints(std::string_view utf8) {
  std::size_t n = 0;
  if (!eachCodePoint(utf8, [&](utf8proc_int32_t) { ++n; })) return 0;
  return n;
}

std::optional<std::string> normalised(std::string_view utf8) {
  if (utf8.find('\0') != std::string_view::npos) return std::nullopt;
  while (!utf8.empty() && isSpace(utf8.front())) utf8.remove_prefix(1);
  while (!utf8.empty() && isSpace(utf8.back())) utf8.remove_suffix(1);
  if (ascii(utf8)) return std::string(utf8);
  if (!validUtf8(utf8)) return std::nullopt;
  utf8proc_uint8_t* out = nullptr;
  const utf8proc_ssize_t n =
      utf8proc_map(reinterpret_cast<const utf8proc_uint8_t*>(utf8.data()),
                   static_cast<utf8proc_ssize_t>(utf8.size()), &out,
                   static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE));
  if (n < 0) return std::nullopt;
  std::string result(reinterpret_cast<const char*>(out), static_cast<std::size_t>(n));
  std::free(out);  // NOLINT: utf8proc allocates with malloc
  return result;
}

std::string folded(std::string_view utf8) {
  std::string plain;
  if (ascii(utf8)) {
    plain = utf8;
    for (char& c : plain) {
      if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
  } else {
    if (!validUtf8(utf8)) return {};
    utf8proc_uint8_t* out = nullptr;
    const utf8proc_ssize_t n = utf8proc_map(
        reinterpret_cast<const utf8proc_uint8_t*>(utf8.data()),
        static_cast<utf8proc_ssize_t>(utf8.size()), &out,
        static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPAT | UTF8PROC_DECOMPOSE |
                                       UTF8PROC_CASEFOLD | UTF8PROC_STRIPMARK));
    if (n < 0) return {};
    plain.assign(reinterpret_cast<const char*>(out), static_cast<std::size_t>(n));
    std::free(out);  // NOLINT: utf8proc allocates with malloc
  }
  std::string result;
  result.reserve(plain.size());
  for (const char c : plain) {
    if (!isSpace(c)) {
      result += c;
    } else if (!result.empty() && result.back() != ' ') {
      result += ' ';
    }
  }
  if (!result.empty() && result.back() == ' ') result.pop_back();
  return result;
}

std::string shortest(double value) {
  std::array<char, 400> buffer{};
  if (value == 0) value = 0;  // no minus zero
  const auto r =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed);
  return {buffer.data(), r.ptr};
}

std::optional<double> parseNumber(std::string_view text) {
  if (!text.empty() && text.front() == '+') text.remove_prefix(1);
  if (text.empty() || text.size() > 40) return std::nullopt;
  double v = 0;
  const auto r = std::from_chars(text.data(), text.data() + text.size(), v);
  if (r.ec != std::errc{} || r.ptr != text.data() + text.size() || !std::isfinite(v)) {
    return std::nullopt;
  }
  return v == 0 ? 0.0 : v;
}

std::optional<long long> parseInteger(std::string_view text) {
  if (!text.empty() && text.front() == '+') text.remove_prefix(1);
  long long v = 0;
  const auto r = std::from_chars(text.data(), text.data() + text.size(), v);
  if (text.empty() || r.ec != std::errc{} || r.ptr != text.data() + text.size()) {
    return std::nullopt;
  }
  return v;
}

}  // namespace outyard::base
