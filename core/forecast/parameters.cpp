// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/parameters.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "core/base/text.h"
#include "core/forecast/exact_math.h"

namespace outyard::forecast {

extern const char* const kParametersText;

namespace {

/// The table is our own file: fields with commas are quoted, no line breaks inside.
std::vector<std::string> fields(std::string_view line) {
  std::vector<std::string> out(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      out.emplace_back();
    } else {
      out.back() += c;
    }
  }
  return out;
}

double number(const std::string& text) {
  const auto v = base::parseNumber(text);
  if (!v) throw std::logic_error("parameters.csv: not a number: " + text);
  return *v;
}

Figure::Shape shapeOf(const std::string& text) {
  if (text == "fixed") return Figure::Shape::Fixed;
  if (text == "normal") return Figure::Shape::Normal;
  if (text == "lognormal") return Figure::Shape::LogNormal;
  if (text == "triangular") return Figure::Shape::Triangular;
  throw std::logic_error("parameters.csv: unknown shape: " + text);
}

/// Cumulated standard normal, by the error function's series of Abramowitz and Stegun 26.2.17
/// (error below 7.5e-8).
double cumulatedNormal(double z) {
  const double a = z < 0 ? -z : z;
  const double t = 1 / (1 + 0.2316419 * a);
  const double density = 0.3989422804014327 * exactExp(-a * a / 2);
  const double tail =
      density * t *
      (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z < 0 ? tail : 1 - tail;
}

}  // namespace

const Figures& Figures::shipped() {
  static const Figures table = [] {
    Figures f;
    std::string_view text = kParametersText;
    bool head = true;
    while (!text.empty()) {
      const auto end = text.find('\n');
      const std::string_view line = text.substr(0, end);
      text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
      if (line.empty()) continue;
      if (head) {
        head = false;
        continue;
      }
      const auto cell = fields(line);
      if (cell.size() != 8) throw std::logic_error("parameters.csv: a line with missing fields");
      f.m_figures.push_back({cell[0], number(cell[1]), number(cell[2]), number(cell[3]),
                             shapeOf(cell[4]), number(cell[5]), cell[6], cell[7]});
    }
    return f;
  }();
  return table;
}

Figures Figures::of(const apiary::Season& season) {
  Figures f = shipped();
  for (Figure& figure : f.m_figures) {
    const auto text = season.setting("forecast." + figure.name);
    const auto v = text ? base::parseNumber(*text) : std::nullopt;
    if (v) {
      figure.value = std::clamp(*v, figure.low, figure.high);
      figure.source = "set by the outfit";
    }
  }
  return f;
}

const Figure& Figures::at(std::string_view name) const {
  for (const Figure& f : m_figures) {
    if (f.name == name) return f;
  }
  throw std::out_of_range("no parameter " + std::string(name));
}

Figure& Figures::find(std::string_view name) {
  return const_cast<Figure&>(at(name));
}

Figures Figures::withValue(std::string_view name, double value) const {
  Figures out = *this;
  out.find(name).value = value;
  return out;
}

Figures Figures::withSpread(std::string_view name, double spread) const {
  Figures out = *this;
  out.find(name).spread = spread;
  return out;
}

double drawn(const Figure& f, double z) {
  double v = f.value;
  switch (f.shape) {
    case Figure::Shape::Fixed:
      return v;
    case Figure::Shape::Normal:
      v = f.value + f.spread * z;
      break;
    case Figure::Shape::LogNormal:
      v = f.value * exactExp(f.spread * z);
      break;
    case Figure::Shape::Triangular: {
      const double u = cumulatedNormal(z), width = f.high - f.low;
      const double cut = (f.value - f.low) / width;
      v = u < cut ? f.low + std::sqrt(u * width * (f.value - f.low))
                  : f.high - std::sqrt((1 - u) * width * (f.high - f.value));
      break;
    }
  }
  return std::clamp(v, f.low, f.high);
}

namespace {
/// Standard normal from our own arithmetic (base::Random::normal uses the library's log).
double exactNormal(base::Random& random) {
  for (;;) {
    const double u = 2 * random.uniform() - 1, v = 2 * random.uniform() - 1;
    const double s = u * u + v * v;
    if (s > 0 && s < 1) return u * std::sqrt(-2 * exactLog(s) / s);
  }
}
}  // namespace

double drawn(const Figure& figure, base::Random& random) {
  return drawn(figure, exactNormal(random));
}

}  // namespace outyard::forecast
