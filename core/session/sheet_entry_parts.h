// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "core/session/sheet_entry.h"

/// Shared by the files that implement sheet_entry.h; nobody else includes it.
namespace outyard::session {

/// A figure with point or comma; "10+" gives atLeast.
struct TypedFigure {
  double value = 0;
  bool atLeast = false;
};
std::optional<TypedFigure> typedFigure(std::string text);
bool isDash(const std::string& text);
/// The cells without white space around them; answers to circle in small letters, words as
/// written.
EntryLine cleaned(EntryLine line);

}  // namespace outyard::session
