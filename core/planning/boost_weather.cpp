// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_weather.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/planning/boost_words.h"

namespace outyard::planning {
namespace {

using apiary::Method;
using apiary::WeatherKind;
using base::Date;
using base::Message;
using base::message;

constexpr double kNearKm = 30;
constexpr int kSearchDays = 21;

/// The one thing that stands against the work on that day, or nullopt.
std::optional<Message> against(const YardWeather& weather, const WeatherNeed& need, Date day,
                               const BoostFigures& f) {
  const auto today = weather.on(day);
  if (!today) return std::nullopt;
  if (today->tmaxC < need.minC) {
    return message("planning.weather.too_cold", day.iso(), today->tmaxC, need.minC);
  }
  if (need.dry && today->rainMm && *today->rainMm > f.dryMm) {
    return message("planning.weather.wet", day.iso(), *today->rainMm);
  }
  if (need.calm && today->windMs && *today->windMs >= f.broodWindMs) {
    return message("planning.weather.windy", day.iso(), *today->windMs, f.broodWindMs);
  }
  if (!need.noColdAfter) return std::nullopt;
  int cold = 0;
  // The night that belongs to a day is the one before its morning: the coming one is tomorrow's.
  for (int n = 1; n <= static_cast<int>(f.aheadDays); ++n) {
    const Date d = day.plusDays(n);
    const auto w = weather.on(d);
    if (!w) {
      cold = 0;
      continue;
    }
    if (w->tminC < f.nightMinC) {
      return message("planning.weather.cold_night", d.iso(), w->tminC, f.nightMinC);
    }
    cold = w->tmaxC < f.coldDayC ? cold + 1 : 0;
    if (cold > 0 && cold >= static_cast<int>(f.coldDays)) {
      return message("planning.weather.cold_spell", d.plusDays(1 - cold).iso(), cold, f.coldDayC);
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<double> distanceKm(const apiary::Yard& a, const apiary::Yard& b) {
  if (!a.latitude || !a.longitude || !b.latitude || !b.longitude) return std::nullopt;
  // Haversine on a sphere of 6,371 km.
  const double rad = std::numbers::pi / 180;
  const double dLat = (*b.latitude - *a.latitude) * rad;
  const double dLon = (*b.longitude - *a.longitude) * rad;
  const double h = std::pow(std::sin(dLat / 2), 2) + std::cos(*a.latitude * rad) *
                                                         std::cos(*b.latitude * rad) *
                                                         std::pow(std::sin(dLon / 2), 2);
  return 2 * 6371.0 * std::asin(std::min(1.0, std::sqrt(h)));
}

YardWeather::YardWeather(const apiary::Season& season, const base::YardId& yard) {
  if (read(season, yard)) return;
  const apiary::Yard* here = season.yard(yard);
  if (!here) return;
  std::vector<std::pair<double, base::YardId>> near;
  for (const auto& [key, other] : season.table<apiary::Yard>()) {
    if (other.yard == yard) continue;
    const auto km = distanceKm(*here, other);
    if (km && *km <= kNearKm) near.emplace_back(*km, other.yard);
  }
  std::sort(near.begin(), near.end());
  for (const auto& [km, other] : near) {
    if (read(season, other)) return;
  }
}

bool YardWeather::read(const apiary::Season& season, const base::YardId& yard) {
  for (const auto& [key, w] : season.table<apiary::WeatherDay>()) {
    if (w.yard != yard) continue;
    DayWeather day{w.tminC, w.tmaxC, w.rainMm, w.windMs, w.kind};
    if (w.kind == WeatherKind::Normal) {
      day.rainMm.reset();
      m_normals[{w.date.month(), w.date.day()}] = day;
      continue;
    }
    auto [it, fresh] = m_days.try_emplace(w.date, Row{day, w.issued});
    if (fresh) continue;
    const bool later = it->second.weather.kind == w.kind && it->second.issued < w.issued;
    if (w.kind < it->second.weather.kind || later) it->second = {day, w.issued};
  }
  return !m_days.empty() || !m_normals.empty();
}

std::optional<DayWeather> YardWeather::on(Date day) const {
  if (const auto it = m_days.find(day); it != m_days.end()) return it->second.weather;
  if (const auto it = m_normals.find({day.month(), day.day()}); it != m_normals.end()) {
    return it->second;
  }
  return std::nullopt;
}

WeatherNeed weatherNeed(Method method, const BoostFigures& f) {
  switch (method) {
    case Method::Leave:
      return {-100, false, false, false};
    case Method::Room:
      return {f.combMinC, true, false, false};
    case Method::Feed:
      return {f.lidMinC, false, false, false};
    case Method::SealedFrames:
      return {f.broodMinC, true, true, true};
    case Method::NurseBees:
      return {f.broodMinC, true, true, false};
    case Method::Stack:
      return {f.stackMinC, true, false, true};
    case Method::ChangePlaces:
      return {f.combMinC, true, false, false};
    case Method::Unite:
      return {f.uniteMinC, true, false, false};
  }
  return {};
}

std::optional<Message> weatherBar(const YardWeather& weather, Method method, Date day,
                                  const BoostFigures& figures) {
  const WeatherNeed need = weatherNeed(method, figures);
  auto why = against(weather, need, day, figures);
  if (!why) return std::nullopt;
  for (int n = 1; n <= kSearchDays; ++n) {
    const Date d = day.plusDays(n);
    if (weather.on(d) && !against(weather, need, d, figures)) {
      return message("planning.weather.wait", methodWord(method), *why, d.iso());
    }
  }
  return message("planning.weather.no_day", methodWord(method), *why, kSearchDays);
}

}  // namespace outyard::planning
