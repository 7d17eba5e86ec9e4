// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>

#include "core/apiary/codes.h"
#include "core/base/message.h"

namespace outyard::strength {

/// The name of a code as an argument of a message: codeWord("verdict", VerdictCode::Strong) is
/// worded from "code.verdict.strong" in the code catalogue.
template <apiary::Coded E>
base::Message codeWord(std::string_view set, E value) {
  base::Message m;
  m.key = "code.";
  m.key += set;
  m.key += '.';
  m.key += apiary::code(value);
  return m;
}

}  // namespace outyard::strength
