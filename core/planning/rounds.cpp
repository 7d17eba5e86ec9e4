// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/rounds.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <set>

#include "core/planning/boost_weather.h"

namespace outyard::planning {
namespace {

using base::Date;
using base::message;

std::optional<apiary::Yard> home(const RoundFigures& figures) {
  if (figures.homeLatitude == 0 && figures.homeLongitude == 0) return std::nullopt;
  apiary::Yard out;
  out.latitude = figures.homeLatitude;
  out.longitude = figures.homeLongitude;
  return out;
}

double fromHome(const apiary::Season& season, const apiary::Yard& at, const base::YardId& yard,
                const RoundFigures& figures) {
  const apiary::Yard* y = season.yard(yard);
  const auto km = y ? distanceKm(at, *y) : std::nullopt;
  return km ? *km * figures.roadFactor : figures.unknownKm;
}

/// The shortest drive through the yards of a day: order and km of each leg, then the way home.
struct Drive {
  std::vector<std::size_t> order;
  std::vector<double> legs;  ///< to each stop in order
  double km = 0;
};
Drive driveThrough(const apiary::Season& season, const std::vector<base::YardId>& yards,
                   const RoundFigures& figures) {
  Drive out;
  if (yards.empty()) return out;
  const auto start = home(figures);
  const std::size_t shift = start ? 1 : 0;
  std::vector<std::vector<double>> km(yards.size() + shift,
                                      std::vector<double>(yards.size() + shift, 0.0));
  for (std::size_t i = 0; i < yards.size(); ++i) {
    if (start) {
      km[0][i + 1] = km[i + 1][0] = fromHome(season, *start, yards[i], figures);
    }
    for (std::size_t j = 0; j < yards.size(); ++j) {
      km[i + shift][j + shift] = driveKm(season, yards[i], yards[j], figures);
    }
  }
  const Tour tour = shortestTour(km, start.has_value());
  std::optional<std::size_t> at;
  for (const std::size_t place : tour.order) {
    if (start && place == 0) {
      at = 0;
      continue;
    }
    out.legs.push_back(at ? km[*at][place] : 0);
    out.order.push_back(place - shift);
    at = place;
  }
  out.km = tour.km;
  return out;
}

/// The search: visits are put in one after the other, each the one that gains most, then moved
/// between days as long as that gains. Every choice is by value, ties by date and yard: the same
/// list gives the same plan.
class Planner {
 public:
  Planner(const apiary::Season& season, const DueList& due, const RoundFigures& figures)
      : m_season(season), m_due(due), m_figures(figures) {
    for (const YardDays& y : due.yards) {
      for (const YardDay& d : y.days) m_days[{y.yard, d.date}] = &d;
    }
    for (std::size_t i = 0; i < due.tasks.size(); ++i) {
      const DueTask& t = due.tasks[i];
      if (t.kind == "note") continue;  // nothing that a drive would do
      m_byYard[t.yard].push_back(i);
    }
    for (Date d = due.ask.from; d <= due.ask.to; d = d.plusDays(1)) m_dates.push_back(d);
  }

  RoundsPlan run(const std::vector<apiary::Visit>& kept) {
    for (const auto& v : kept) {
      if (v.date < m_due.ask.from || v.date > m_due.ask.to) continue;
      if (!stands(v.yard, v.date)) m_visits.push_back({v.yard, v.date, true});
    }
    while (addBest()) {
    }
    for (int round = 0; round < 20 && moveOne(); ++round) {
    }
    while (addBest()) {
    }
    return plan();
  }

 private:
  struct Made {
    base::YardId yard;
    Date date;
    bool kept = false;
  };

  [[nodiscard]] bool stands(const base::YardId& yard, Date date) const {
    return std::any_of(m_visits.begin(), m_visits.end(),
                       [&](const Made& v) { return v.yard == yard && v.date == date; });
  }

  /// What doing the task on that day is worth: its chance, less when the day is cold or wet, a
  /// little less away from its own day. Nothing outside of its window.
  [[nodiscard]] double worth(const DueTask& t, Date date) const {
    const bool late = t.overdue(m_due.ask.from);
    if (!late && (date < t.earliest || date > t.latest)) return 0;
    double out = t.chance;
    const int away = std::abs(date - (late ? m_due.ask.from : t.date));
    out *= 1 - std::min(0.5, (late ? 0.05 : 0.02) * away);
    const auto it = m_days.find({t.yard, date});
    if (it != m_days.end() && it->second->tmaxC) {
      // Where combs come out the day must be warm for them, else for a look under the lid.
      const bool combs = t.minutes >= 10;
      if (!(combs ? it->second->combWarm : it->second->lidWarm)) out *= m_figures.coldShare;
    }
    return out;
  }

  /// For each task the visit that serves it best.
  [[nodiscard]] std::map<std::size_t, std::pair<double, std::size_t>> served(
      const std::vector<Made>& visits) const {
    std::map<std::size_t, std::pair<double, std::size_t>> out;
    for (std::size_t v = 0; v < visits.size(); ++v) {
      const auto it = m_byYard.find(visits[v].yard);
      if (it == m_byYard.end()) continue;
      for (const std::size_t i : it->second) {
        const double w = worth(m_due.tasks[i], visits[v].date);
        if (w <= 0) continue;
        auto& best = out[i];
        if (w > best.first + 1e-12) best = {w, v};
      }
    }
    return out;
  }

  [[nodiscard]] std::vector<std::vector<std::size_t>> tasksOf(
      const std::vector<Made>& visits) const {
    std::vector<std::vector<std::size_t>> out(visits.size());
    for (const auto& [task, best] : served(visits)) out[best.second].push_back(task);
    return out;
  }

  /// Hours and km of every day; nullopt when a day is over its hours or its yards. One yard alone
  /// may take longer than a day: it cannot be made smaller.
  [[nodiscard]] std::optional<double> km(const std::vector<Made>& visits) const {
    const auto tasks = tasksOf(visits);
    std::map<Date, std::vector<std::size_t>> days;
    for (std::size_t v = 0; v < visits.size(); ++v) days[visits[v].date].push_back(v);
    double sum = 0;
    for (const auto& [date, list] : days) {
      std::vector<base::YardId> yards;
      double hours = 0;
      bool free = false;
      for (const std::size_t v : list) {
        yards.push_back(visits[v].yard);
        hours += workHours(m_due, tasks[v], m_figures);
        free = free || !visits[v].kept;
      }
      std::sort(yards.begin(), yards.end());
      auto it = m_drives.find(yards);
      if (it == m_drives.end()) {
        it = m_drives.emplace(yards, driveThrough(m_season, yards, m_figures).km).first;
      }
      sum += it->second;
      if (!free || list.size() == 1) continue;
      if (static_cast<double>(list.size()) > m_figures.most) return std::nullopt;
      if (hours + it->second / m_figures.speedKmh > m_figures.dayHours) return std::nullopt;
    }
    return sum;
  }

  [[nodiscard]] std::optional<double> value(const std::vector<Made>& visits) const {
    const auto drive = km(visits);
    if (!drive) return std::nullopt;
    double out = -*drive / m_figures.kmWorth;
    for (const auto& [task, best] : served(visits)) out += best.first;
    return out - m_figures.least * static_cast<double>(visits.size());
  }

  bool addBest() {
    const double now = value(m_visits).value_or(-1e9);
    double most = 1e-9;
    std::optional<Made> best;
    for (const auto& [yard, tasks] : m_byYard) {
      for (const Date date : m_dates) {
        if (stands(yard, date)) continue;
        auto with = m_visits;
        with.push_back({yard, date, false});
        const auto v = value(with);
        if (v && *v - now > most + 1e-9) {
          most = *v - now;
          best = with.back();
        }
      }
    }
    if (!best) return false;
    m_visits.push_back(*best);
    return true;
  }

  bool moveOne() {
    const double now = value(m_visits).value_or(-1e9);
    bool moved = false;
    double have = now;
    for (std::size_t v = 0; v < m_visits.size(); ++v) {
      if (m_visits[v].kept) continue;
      const Date was = m_visits[v].date;
      Date best = was;
      for (const Date date : m_dates) {
        if (date == was || stands(m_visits[v].yard, date)) continue;
        auto with = m_visits;
        with[v].date = date;
        const auto is = value(with);
        if (is && *is > have + 1e-9) {
          have = *is;
          best = date;
        }
      }
      moved = moved || best != was;
      m_visits[v].date = best;
    }
    return moved;
  }

  RoundsPlan plan() {
    RoundsPlan out;
    auto tasks = tasksOf(m_visits);
    std::map<Date, std::vector<RoundStop>> days;
    std::set<std::size_t> taken;
    for (std::size_t v = 0; v < m_visits.size(); ++v) {
      RoundStop stop;
      stop.yard = m_visits[v].yard;
      stop.tasks = tasks[v];
      taken.insert(tasks[v].begin(), tasks[v].end());
      days[m_visits[v].date].push_back(std::move(stop));
    }
    for (auto& [date, stops] : days) {
      out.days.push_back(arrangedDay(m_season, m_due, date, std::move(stops), m_figures));
      const RoundDay& day = out.days.back();
      if (day.hours > m_figures.dayHours) {
        out.notes.push_back(message("planning.round.long_day", date.iso(),
                                    std::round(day.hours * 10) / 10, m_figures.dayHours));
      }
    }
    for (std::size_t i = 0; i < m_due.tasks.size(); ++i) {
      if (m_due.tasks[i].kind != "note" && !taken.contains(i)) out.left.push_back(i);
    }
    if (!out.left.empty()) out.notes.push_back(message("planning.round.left", out.left.size()));
    if (!home(m_figures)) out.notes.push_back(message("planning.round.no_home"));
    return out;
  }

  const apiary::Season& m_season;
  const DueList& m_due;
  const RoundFigures& m_figures;
  std::map<std::pair<base::YardId, Date>, const YardDay*> m_days;
  std::map<base::YardId, std::vector<std::size_t>> m_byYard;
  std::vector<Date> m_dates;
  std::vector<Made> m_visits;
  mutable std::map<std::vector<base::YardId>, double> m_drives;
};

}  // namespace

RoundDay arrangedDay(const apiary::Season& season, const DueList& due, Date date,
                     std::vector<RoundStop> stops, const RoundFigures& figures) {
  RoundDay day;
  day.date = date;
  std::vector<base::YardId> yards;
  for (const auto& s : stops) yards.push_back(s.yard);
  const Drive drive = driveThrough(season, yards, figures);
  std::vector<std::size_t> all;
  for (std::size_t k = 0; k < drive.order.size(); ++k) {
    RoundStop stop = std::move(stops[drive.order[k]]);
    stop.driveKm = drive.legs[k];
    stop.driveHours = stop.driveKm / std::max(1.0, figures.speedKmh);
    stop.workHours = workHours(due, stop.tasks, figures);
    // The three that press most say why.
    std::vector<std::size_t> press = stop.tasks;
    std::stable_sort(press.begin(), press.end(), [&](std::size_t a, std::size_t b) {
      const DueTask &x = due.tasks[a], &y = due.tasks[b];
      return std::tuple(x.latest, -x.chance) < std::tuple(y.latest, -y.chance);
    });
    stop.why.clear();
    for (std::size_t i = 0; i < std::min<std::size_t>(3, press.size()); ++i) {
      const DueTask& t = due.tasks[press[i]];
      stop.why.push_back(message("planning.round.why", t.hive ? t.hive->str() : t.yard.str(),
                                 dueName(t), t.latest.iso()));
    }
    day.hours += stop.workHours;
    all.insert(all.end(), stop.tasks.begin(), stop.tasks.end());
    day.stops.push_back(std::move(stop));
  }
  day.driveKm = drive.km;
  day.hours += drive.km / std::max(1.0, figures.speedKmh);
  day.load = loadOf(season, due, all, date, figures);
  return day;
}

RoundsPlan proposeRounds(const apiary::Season& season, const DueList& due,
                         const RoundFigures& figures, const std::vector<apiary::Visit>& kept) {
  if (due.ask.to < due.ask.from) return {};
  return Planner(season, due, figures).run(kept);
}

}  // namespace outyard::planning
