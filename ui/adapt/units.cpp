// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adapt/units.h"

#include <QCoreApplication>
#include <QLocale>

namespace outyard::adapt {
namespace {

constexpr double kMetresPerFoot = 12 * base::kMetresPerInch;

QString withUnit(double number, int decimals, const QString& unit) {
  return QStringLiteral("%1\u00A0%2").arg(QLocale().toString(number, 'f', decimals), unit);
}

}  // namespace

Units Units::from(const DeskSettings& settings) {
  return {settings.get(desk::kMassUnit), settings.get(desk::kTemperatureUnit),
          settings.get(desk::kLengthUnit)};
}

double Units::shown(base::Mass mass) const {
  return m_mass == MassUnit::Pound ? base::inPounds(mass) : mass.value;
}
double Units::shown(base::Temperature temperature) const {
  return m_temperature == TemperatureUnit::Fahrenheit ? base::inFahrenheit(temperature)
                                                      : temperature.value;
}
double Units::shown(base::Length length) const {
  return m_length == LengthUnit::Foot ? base::inFeet(length) : length.value;
}

base::Mass Units::massFrom(double number) const {
  return m_mass == MassUnit::Pound ? base::fromPounds(number) : base::Mass{number};
}
base::Temperature Units::temperatureFrom(double number) const {
  return m_temperature == TemperatureUnit::Fahrenheit ? base::fromFahrenheit(number)
                                                      : base::Temperature{number};
}
base::Length Units::lengthFrom(double number) const {
  return m_length == LengthUnit::Foot ? base::Length{number * kMetresPerFoot}
                                      : base::Length{number};
}

QString Units::massUnit() const {
  return m_mass == MassUnit::Pound ? QCoreApplication::translate("Units", "lb")
                                   : QCoreApplication::translate("Units", "kg");
}
QString Units::temperatureUnit() const {
  return m_temperature == TemperatureUnit::Fahrenheit ? QCoreApplication::translate("Units", "°F")
                                                      : QCoreApplication::translate("Units", "°C");
}
QString Units::lengthUnit() const {
  return m_length == LengthUnit::Foot ? QCoreApplication::translate("Units", "ft")
                                      : QCoreApplication::translate("Units", "m");
}

QString Units::text(base::Mass mass, int decimals) const {
  return withUnit(shown(mass), decimals, massUnit());
}
QString Units::text(base::Temperature temperature, int decimals) const {
  return withUnit(shown(temperature), decimals, temperatureUnit());
}
QString Units::text(base::Length length, int decimals) const {
  return withUnit(shown(length), decimals, lengthUnit());
}

}  // namespace outyard::adapt
