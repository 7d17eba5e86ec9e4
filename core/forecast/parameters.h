// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"
#include "core/base/random.h"

namespace outyard::forecast {

/// One line of resources/parameters.csv: a figure with its spread between colonies and its source.
struct Figure {
  enum class Shape { Fixed, Normal, LogNormal, Triangular };
  std::string name;
  double value = 0;          ///< mean, median (log-normal) or mode (triangular)
  double low = 0, high = 0;  ///< draws are kept inside
  Shape shape = Shape::Fixed;
  double spread = 0;  ///< standard deviation (normal) or of the logarithm (log-normal)
  std::string unit, source;
};

/// The shipped table, with the outfit's own values (settings named "forecast.<name>") put in.
class Figures {
 public:
  static const Figures& shipped();
  static Figures of(const apiary::Season& season);
  /// Throws std::out_of_range for a name that the table does not have.
  [[nodiscard]] const Figure& at(std::string_view name) const;
  [[nodiscard]] double value(std::string_view name) const { return at(name).value; }
  [[nodiscard]] const std::vector<Figure>& all() const { return m_figures; }
  /// The same table with another value of one figure, or another spread of it between colonies.
  [[nodiscard]] Figures withValue(std::string_view name, double value) const;
  [[nodiscard]] Figures withSpread(std::string_view name, double spread) const;

 private:
  Figure& find(std::string_view name);
  std::vector<Figure> m_figures;
};

/// A draw from a figure's distribution, from standard normal z or uniform u.
double drawn(const Figure& figure, double z);
/// The same from a random stream.
double drawn(const Figure& figure, base::Random& random);

}  // namespace outyard::forecast
