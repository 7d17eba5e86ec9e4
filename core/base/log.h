// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <string>

namespace outyard::base {

/// Where log lines go. Ids and codes only, never names of people or places. Without a sink, lines
/// are dropped.
using LogSink = std::function<void(const std::string& line)>;
void setLogSink(LogSink sink);
void log(const std::string& line);

}  // namespace outyard::base
