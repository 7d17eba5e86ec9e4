// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <numbers>

#include "core/apiary/state.h"
#include "core/base/text.h"
#include "core/exchange/calendar.h"

namespace outyard::exchange {
namespace {

std::string quoted(const std::string& text) {
  static constexpr char kHex[] = "0123456789abcdef";
  std::string out = "\"";
  for (const char c : text) {
    const auto u = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (c == '\n') {
      out += "\\n";
    } else if (u < 0x20) {
      out += "\\u00";
      out += kHex[u >> 4];
      out += kHex[u & 15];
    } else {
      out += c;
    }
  }
  return out + '"';
}

/// Seven decimals are about a centimetre.
std::string degrees(double v) {
  return base::shortest(std::round(v * 1e7) / 1e7);
}

class Features {
 public:
  void begin(const std::string& id, std::optional<std::pair<double, double>> lonLat) {
    m_text += m_text.empty() ? "\n" : ",\n";
    m_text += R"({"type":"Feature","id":)" + quoted(id) + R"(,"geometry":)";
    m_text += lonLat ? R"({"type":"Point","coordinates":[)" + degrees(lonLat->first) + ',' +
                           degrees(lonLat->second) + "]}"
                     : std::string("null");
    m_text += R"(,"properties":{)";
    m_first = true;
  }
  void text(const char* name, const std::string& value) {
    if (!value.empty()) raw(name, quoted(value));
  }
  void number(const char* name, std::optional<double> value) {
    if (value) raw(name, base::shortest(*value));
  }
  void end() { m_text += "}}"; }
  [[nodiscard]] std::string finish() const {
    return R"({"type":"FeatureCollection","features":[)" + m_text + "\n]}\n";
  }

 private:
  void raw(const char* name, const std::string& value) {
    if (!m_first) m_text += ',';
    m_first = false;
    m_text += quoted(name) + ':' + value;
  }
  std::string m_text;
  bool m_first = true;
};

std::optional<std::pair<double, double>> hivePoint(const apiary::Yard& yard,
                                                   const apiary::HiveState& hive) {
  if (!yard.latitude || !yard.longitude) return std::nullopt;
  if (!hive.xM || !hive.yM) return std::pair{*yard.longitude, *yard.latitude};
  const double rad = std::numbers::pi / 180;
  const double dx = *hive.xM - yard.widthM.value_or(0) / 2;
  const double dy = *hive.yM - yard.lengthM.value_or(0) / 2;
  // North points at northDeg from the drawing's top, clockwise.
  const double turn = yard.northDeg.value_or(0) * rad;
  const double east = dx * std::cos(turn) - dy * std::sin(turn);
  const double north = dx * std::sin(turn) + dy * std::cos(turn);
  constexpr double kMetresPerDegree =
      6371008.8 * std::numbers::pi / 180;  // mean Earth radius, IUGG
  const double across = kMetresPerDegree * std::cos(*yard.latitude * rad);
  if (across < 1) return std::nullopt;
  return std::pair{*yard.longitude + east / across, *yard.latitude + north / kMetresPerDegree};
}

}  // namespace

std::string geoJsonText(const apiary::Season& season, base::Date day) {
  Features f;
  for (const auto& [key, yard] : season.table<apiary::Yard>()) {
    std::optional<std::pair<double, double>> at;
    if (yard.latitude && yard.longitude) at = std::pair{*yard.longitude, *yard.latitude};
    f.begin("yard:" + yard.yard.str(), at);
    f.text("kind", "yard");
    f.text("yard", yard.yard.str());
    f.text("name", yard.name);
    f.number("elevation_m", yard.elevationM);
    f.text("access", yard.access);
    f.text("notes", yard.notes);
    f.end();
    for (const auto& hive : apiary::yardOn(season, yard.yard, day)) {
      if (!hive.present) continue;
      f.begin("hive:" + hive.hive.str(), hivePoint(yard, hive));
      f.text("kind", "hive");
      f.text("hive", hive.hive.str());
      f.text("yard", yard.yard.str());
      f.text("status", std::string(apiary::code(hive.status)));
      f.text("stand", hive.stand);
      f.number("entrance_deg", hive.entranceDeg);
      f.number("boxes", static_cast<double>(hive.boxes.size()));
      f.end();
    }
  }
  return f.finish();
}

}  // namespace outyard::exchange
