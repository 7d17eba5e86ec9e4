// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

#include "core/base/quantity.h"
#include "ui/adapt/settings.h"

namespace outyard::adapt {

/// Quantities as the user reads and types them; the season always holds SI.
class Units {
 public:
  Units() = default;
  Units(MassUnit mass, TemperatureUnit temperature, LengthUnit length)
      : m_mass(mass), m_temperature(temperature), m_length(length) {}
  static Units from(const DeskSettings& settings);

  /// "12 kg", "26 lb": number and unit, in the user's locale.
  [[nodiscard]] QString text(base::Mass mass, int decimals = 0) const;
  [[nodiscard]] QString text(base::Temperature temperature, int decimals = 0) const;
  [[nodiscard]] QString text(base::Length length, int decimals = 0) const;
  /// Unit alone, for column heads and the suffix of fields.
  [[nodiscard]] QString massUnit() const;
  [[nodiscard]] QString temperatureUnit() const;
  [[nodiscard]] QString lengthUnit() const;
  /// To and from the number that stands in a field.
  [[nodiscard]] double shown(base::Mass mass) const;
  [[nodiscard]] double shown(base::Temperature temperature) const;
  [[nodiscard]] double shown(base::Length length) const;
  [[nodiscard]] base::Mass massFrom(double number) const;
  [[nodiscard]] base::Temperature temperatureFrom(double number) const;
  [[nodiscard]] base::Length lengthFrom(double number) const;

 private:
  MassUnit m_mass = MassUnit::Kilogram;
  TemperatureUnit m_temperature = TemperatureUnit::Celsius;
  LengthUnit m_length = LengthUnit::Metre;
};

}  // namespace outyard::adapt
