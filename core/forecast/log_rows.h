// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <vector>

#include "core/forecast/assimilation.h"

namespace outyard::forecast {

/// One reading of one quantity. expected gives the logarithm that each member would have read.
struct Reading {
  double logSeen = 0, sigma = 0;
  std::function<double(int)> expected;
  /// The bees were counted on the same day: this reading, of something else, moves them little
  /// when it lies far off.
  bool beesKnown = false;
};

/// Logarithms of all that looks move: the age groups, the parameters, the reading factors; and the
/// slow model errors as they are. Read once for a look, moved by one reading after another, each
/// written back at once.
class LogRows {
 public:
  explicit LogRows(ColonyEnsemble& ensemble);
  /// The groups were changed by other hands.
  void readGroups();
  /// Takes a reading in; gives how many standard deviations it lay off.
  double update(const Reading& reading, base::Random& random);

 private:
  using Row = std::vector<double>;
  void push(const float* values);
  void write(std::size_t row);
  void writeGroup(std::size_t row);
  void writeLogs(std::size_t row, float* values, double low, double high);

  ColonyEnsemble& m_ce;
  std::size_t m_n;
  std::vector<Row> m_rows, m_totals;
  Row m_expected, m_pull;
};

}  // namespace outyard::forecast
