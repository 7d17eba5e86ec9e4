// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <compare>

namespace outyard::base {

/// A number with one base unit and named ways in and out; unlike quantities do not add.
/// Records hold plain doubles whose name ends in the unit (honeyKg); a Quantity is what crosses
/// into display, where the user's units are chosen.
template <class Tag>
struct Quantity {
  double value = 0;  ///< in the base unit that the alias names
  friend auto operator<=>(const Quantity&, const Quantity&) = default;
  friend Quantity operator+(Quantity a, Quantity b) { return {a.value + b.value}; }
  friend Quantity operator-(Quantity a, Quantity b) { return {a.value - b.value}; }
  friend Quantity operator*(Quantity a, double f) { return {a.value * f}; }
};

using Mass = Quantity<struct MassTag>;                ///< kilograms
using Length = Quantity<struct LengthTag>;            ///< metres
using Volume = Quantity<struct VolumeTag>;            ///< litres
using Temperature = Quantity<struct TemperatureTag>;  ///< degrees Celsius

/// Exact by definition: international pound and inch (1959), US gallon (231 cubic inches).
inline constexpr double kKgPerPound = 0.45359237;
inline constexpr double kMetresPerInch = 0.0254;
inline constexpr double kLitresPerUsGallon = 3.785411784;

inline double inPounds(Mass m) {
  return m.value / kKgPerPound;
}
inline Mass fromPounds(double lb) {
  return {lb * kKgPerPound};
}
inline double inInches(Length l) {
  return l.value / kMetresPerInch;
}
inline double inFeet(Length l) {
  return l.value / (12 * kMetresPerInch);
}
inline double inUsGallons(Volume v) {
  return v.value / kLitresPerUsGallon;
}
inline double inFahrenheit(Temperature t) {
  return t.value * 9.0 / 5.0 + 32.0;
}
inline Temperature fromFahrenheit(double f) {
  return {(f - 32.0) * 5.0 / 9.0};
}

}  // namespace outyard::base
