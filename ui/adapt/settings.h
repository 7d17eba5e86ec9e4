// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QByteArray>
#include <QSettings>
#include <QString>
#include <QStringList>
#include <QVariant>
#include <functional>
#include <memory>
#include <type_traits>
#include <vector>

namespace outyard::adapt {

enum class Theme { System, Light, Dark };
enum class MassUnit { Kilogram, Pound };
enum class TemperatureUnit { Celsius, Fahrenheit };
enum class LengthUnit { Metre, Foot };

/// Name, type and shipped value of one desk setting. All of them stand in namespace desk below;
/// nothing else in the program spells a setting's name.
template <class T>
struct DeskKey {
  const char* name;
  T shipped;
};

namespace desk {
inline const DeskKey<QByteArray> kWindowGeometry{"window/geometry", {}};
inline const DeskKey<QByteArray> kWindowState{"window/state", {}};
inline const DeskKey<QString> kWindowPlace{"window/place", {}};
inline const DeskKey<Theme> kTheme{"window/theme", Theme::System};
inline const DeskKey<QByteArray> kYardsSplitter{"yards/splitter", {}};
inline const DeskKey<bool> kYardsAsTable{"yards/as_table", false};
/// What the table of hives is narrowed down to.
inline const DeskKey<QString> kYardsFilter{"yards/filter", {}};
/// How much of a picture of the ground shows through under the yard map.
inline const DeskKey<int> kGroundPicturePercent{"yards/picture_percent", 60};
inline const DeskKey<QString> kLastSeason{"season/last", {}};
inline const DeskKey<QStringList> kRecentSeasons{"season/recent", {}};
inline const DeskKey<bool> kGuideDismissed{"guide/dismissed", false};
inline const DeskKey<MassUnit> kMassUnit{"units/mass", MassUnit::Kilogram};
inline const DeskKey<TemperatureUnit> kTemperatureUnit{"units/temperature",
                                                       TemperatureUnit::Celsius};
inline const DeskKey<LengthUnit> kLengthUnit{"units/length", LengthUnit::Metre};
inline const DeskKey<bool> kLetterPaper{"print/letter", false};
inline constexpr int kMostRecent = 8;
}  // namespace desk

/// The desk's own settings (window, units, theme) in an INI file; settings of the outfit live in
/// the season. A value that cannot be read is taken as shipped.
class DeskSettings {
 public:
  explicit DeskSettings(const QString& iniFile);
  /// The file in the platform's place for settings (QStandardPaths).
  static QString usualFile();

  template <class T>
  [[nodiscard]] T get(const DeskKey<T>& key) const {
    const QVariant value = m_settings->value(QLatin1String(key.name));
    if constexpr (std::is_enum_v<T>) {
      bool ok = false;
      const int number = value.toInt(&ok);
      const bool known = ok && number >= 0 && number < count(key.shipped);
      return known ? static_cast<T>(number) : key.shipped;
    } else {
      return value.isValid() && value.canConvert<T>() ? value.value<T>() : key.shipped;
    }
  }
  template <class T>
  void set(const DeskKey<T>& key, const T& value) {
    if constexpr (std::is_enum_v<T>) {
      m_settings->setValue(QLatin1String(key.name), static_cast<int>(value));
    } else {
      m_settings->setValue(QLatin1String(key.name), QVariant::fromValue(value));
    }
    for (const auto& listener : m_listeners) listener();
  }
  /// Puts a season at the head of the recent ones and makes it the last one.
  void noteSeason(const QString& file);
  /// Called after every change of a setting, for as long as the settings live.
  void onChange(std::function<void()> listener) { m_listeners.push_back(std::move(listener)); }

 private:
  static constexpr int count(Theme) { return 3; }
  static constexpr int count(MassUnit) { return 2; }
  static constexpr int count(TemperatureUnit) { return 2; }
  static constexpr int count(LengthUnit) { return 2; }

  std::unique_ptr<QSettings> m_settings;
  std::vector<std::function<void()>> m_listeners;
};

}  // namespace outyard::adapt
