// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "core/exchange/tables.h"

namespace outyard::exchange {

/// Collects what is wrong; keeps some thousands and counts the rest.
class FaultList {
 public:
  void add(std::string file, std::size_t line, std::string column, base::Message what) {
    ++m_count;
    if (m_faults.size() < kKept) {
      m_faults.push_back({std::move(file), line, std::move(column), std::move(what)});
    }
  }
  void add(const std::string& file, const base::Failure& failure) {
    for (const auto& m : failure.messages) add(file, 0, {}, m);
  }
  [[nodiscard]] std::size_t count() const { return m_count; }
  [[nodiscard]] bool empty() const { return m_count == 0; }
  void moveInto(ImportResult& result) {
    std::stable_sort(m_faults.begin(), m_faults.end(), [](const auto& a, const auto& b) {
      return std::tie(a.file, a.line) < std::tie(b.file, b.line);
    });
    if (m_faults.size() > kMostFaults) m_faults.resize(kMostFaults);
    result.faults = std::move(m_faults);
    result.faultCount = m_count;
  }

 private:
  static constexpr std::size_t kKept = 10000;
  std::vector<ImportFault> m_faults;
  std::size_t m_count = 0;
};

/// Progress in stages, and whether to go on.
class Ticker {
 public:
  explicit Ticker(base::Progress& progress) : m_progress(progress) {}
  /// The part of the whole that the next steps fill.
  void stage(double from, double to) {
    m_from = from;
    m_to = to;
    m_progress.report(from);
  }
  /// False when the user has asked to stop. Cheap: reports at every 256th call only.
  bool step(double fraction) {
    if ((++m_calls & 255U) != 0) return !m_stopped;
    m_progress.report(m_from + (m_to - m_from) * std::clamp(fraction, 0.0, 1.0));
    return !stopped();
  }
  bool stopped() {
    m_stopped = m_stopped || m_progress.cancelled();
    return m_stopped;
  }

 private:
  base::Progress& m_progress;
  double m_from = 0, m_to = 1;
  unsigned m_calls = 0;
  bool m_stopped = false;
};

}  // namespace outyard::exchange
