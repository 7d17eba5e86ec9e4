// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/log.h"

#include <mutex>

namespace outyard::base {
namespace {
std::mutex g_mutex;
LogSink g_sink;
}  // namespace

void setLogSink(LogSink sink) {
  const std::lock_guard lock(g_mutex);
  g_sink = std::move(sink);
}

void log(const std::string& line) {
  const std::lock_guard lock(g_mutex);
  if (g_sink) g_sink(line);
}

}  // namespace outyard::base
