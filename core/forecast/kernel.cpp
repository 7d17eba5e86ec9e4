// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/kernel.h"

#include <atomic>
#include <stdexcept>

#include "core/forecast/kernel_paths.h"

namespace outyard::forecast {
namespace {

using Path = void (*)(Ensemble&, const Drivers&, int, int, std::span<const int>, Outputs&);

bool has(std::string_view name) {
#if defined(__x86_64__)
  if (name == "avx512") return __builtin_cpu_supports("avx512f") != 0;
  if (name == "avx2") return __builtin_cpu_supports("avx2") != 0;
#endif
  return name == "baseline";
}

Path pathOf(std::string_view name) {
#if defined(__x86_64__)
  if (name == "avx512") return runAvx512;
  if (name == "avx2") return runAvx2;
#endif
  return runBaseline;
}

std::atomic<Path> g_path{nullptr};

Path chosen() {
  Path p = g_path.load();
  if (!p) {
    p = pathOf(availablePaths().front());
    g_path.store(p);
  }
  return p;
}

}  // namespace

Ensemble::Ensemble(int count)
    : members(count),
      params(static_cast<std::size_t>(kParams) * static_cast<std::size_t>(count)),
      values(static_cast<std::size_t>(state::kCount) * static_cast<std::size_t>(count)),
      random(static_cast<std::size_t>(count), 1U) {
  if (count % kBlock != 0) throw std::logic_error("members come in blocks");
}

std::vector<std::string_view> availablePaths() {
  std::vector<std::string_view> out;
  for (std::string_view name : {"avx512", "avx2", "baseline"}) {
    if (has(name)) out.push_back(name);
  }
  return out;
}

std::string_view pathInUse() {
  const Path p = chosen();
  for (std::string_view name : availablePaths()) {
    if (pathOf(name) == p) return name;
  }
  return "baseline";
}

bool usePath(std::string_view name) {
  if (!has(name)) return false;
  g_path.store(pathOf(name));
  return true;
}

void runDays(Ensemble& ensemble, const Drivers& drivers, int from, int to,
             std::span<const int> asked, Outputs& out) {
  out.members = ensemble.members;
  out.values.assign(
      asked.size() * static_cast<std::size_t>(kOuts) * static_cast<std::size_t>(ensemble.members),
      0.0F);
  if (from < 0 || to > drivers.days || from > to) throw std::logic_error("days without weather");
  chosen()(ensemble, drivers, from, to, asked, out);
}

}  // namespace outyard::forecast
