// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

namespace outyard::base {

/// Something to be said to a person, without the words. Core rooms make no sentences: they name a
/// key ("exchange.unknown_hive") and arguments; ui/adapt holds the one catalogue that turns both
/// into a sentence in the user's language. A test lists keys that have no text there.
/// An argument that is itself a Message is worded first (for instance the code of a judgement).
struct Message {
  using Arg = std::variant<std::string, std::int64_t, double, Message>;
  std::string key;
  std::vector<Arg> args;

  friend bool operator==(const Message&, const Message&);
};

/// Makes a Message: message("plan.too_far", hive.str(), 3.5). The key must be a literal, since the
/// catalogue test reads the sources for it.
template <class... Args>
Message message(std::string key, Args&&... args);

namespace detail {
inline Message::Arg toArg(std::string s) {
  return s;
}
inline Message::Arg toArg(const char* s) {
  return std::string(s);
}
inline Message::Arg toArg(std::string_view s) {
  return std::string(s);
}
inline Message::Arg toArg(double v) {
  return v;
}
inline Message::Arg toArg(Message m) {
  return m;
}
template <class T>
requires std::is_integral_v<T> Message::Arg toArg(T v) {
  return static_cast<std::int64_t>(v);
}
}  // namespace detail

inline bool operator==(const Message& a, const Message& b) {
  return a.key == b.key && a.args == b.args;
}

template <class... Args>
Message message(std::string key, Args&&... args) {
  Message m;
  m.key = std::move(key);
  (m.args.push_back(detail::toArg(std::forward<Args>(args))), ...);
  return m;
}

}  // namespace outyard::base
