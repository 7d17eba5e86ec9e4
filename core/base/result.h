// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include "core/base/message.h"

namespace outyard::base {

/// An expected failure: one or more messages, each naming the place and the cure.
struct Failure {
  std::vector<Message> messages;
};

inline Failure fail(Message m) {
  return Failure{{std::move(m)}};
}

/// A value or a Failure. Bugs throw instead; this is for what a user or a disk can get wrong.
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : m_state(std::move(value)) {}            // NOLINT: implicit on purpose
  Result(Failure failure) : m_state(std::move(failure)) {}  // NOLINT
  [[nodiscard]] bool ok() const { return m_state.index() == 0; }
  explicit operator bool() const { return ok(); }
  /// Throws std::bad_variant_access on a Failure: check ok() first.
  [[nodiscard]] T& value() { return std::get<0>(m_state); }
  [[nodiscard]] const T& value() const { return std::get<0>(m_state); }
  T& operator*() { return value(); }
  const T& operator*() const { return value(); }
  T* operator->() { return &value(); }
  const T* operator->() const { return &value(); }
  [[nodiscard]] const Failure& failure() const { return std::get<1>(m_state); }

 private:
  std::variant<T, Failure> m_state;
};

template <>
class [[nodiscard]] Result<void> {
 public:
  Result() = default;
  Result(Failure failure) : m_failure(std::move(failure)) {}  // NOLINT
  [[nodiscard]] bool ok() const { return !m_failure; }
  explicit operator bool() const { return ok(); }
  [[nodiscard]] const Failure& failure() const { return m_failure.value(); }

 private:
  std::optional<Failure> m_failure;
};

}  // namespace outyard::base
