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

  /// What a yard's visits give: each task is done at the visit that serves it best.
  struct Served {
    double worth = 0;
    std::map<Date, std::vector<std::size_t>> tasks;
    std::map<Date, double> hours;
  };
  /// Kept for every set of days that was asked for: the search asks for the same ones many times.
  [[nodiscard]] const Served& served(const base::YardId& yard, std::vector<Date> dates) const {
    std::sort(dates.begin(), dates.end());
    const auto [it, fresh] = m_served.try_emplace({yard, dates});
    if (!fresh) return it->second;
    Served& out = it->second;
    for (const Date d : dates) out.tasks[d];
    if (const auto tasks = m_byYard.find(yard); tasks != m_byYard.end()) {
      for (const std::size_t i : tasks->second) {
        double most = 0;
        std::optional<Date> best;
        for (const Date d : dates) {
          const double w = worth(m_due.tasks[i], d);
          if (w > most + 1e-12) {
            most = w;
            best = d;
          }
        }
        if (!best) continue;
        out.worth += most;
        out.tasks[*best].push_back(i);
      }
    }
    for (const auto& [date, list] : out.tasks) out.hours[date] = workHours(m_due, list, m_figures);
    return out;
  }
  [[nodiscard]] static std::map<base::YardId, std::vector<Date>> byYard(
      const std::vector<Made>& visits) {
    std::map<base::YardId, std::vector<Date>> out;
    for (const Made& v : visits) out[v.yard].push_back(v.date);
    return out;
  }

  /// Worth of the work less that of drives and visits; nullopt when a day is over its hours or its
  /// yards. One yard alone may take longer than a day: it cannot be made smaller.
  [[nodiscard]] std::optional<double> value(const std::vector<Made>& visits) const {
    double out = -m_figures.least * static_cast<double>(visits.size());
    const auto yards = byYard(visits);
    std::map<base::YardId, const Served*> serves;
    for (const auto& [yard, dates] : yards) {
      const Served& s = served(yard, dates);
      serves.emplace(yard, &s);
      out += s.worth;
    }
    struct Day {
      std::vector<base::YardId> yards;
      double hours = 0;
      bool free = false;
    };
    std::map<Date, Day> days;
    for (const Made& v : visits) {
      Day& day = days[v.date];
      day.yards.push_back(v.yard);
      day.hours += serves.at(v.yard)->hours.at(v.date);
      day.free = day.free || !v.kept;
    }
    for (auto& [date, day] : days) {
      std::sort(day.yards.begin(), day.yards.end());
      const auto [it, fresh] = m_drives.try_emplace(day.yards, 0.0);
      if (fresh) it->second = driveThrough(m_season, day.yards, m_figures).km;
      out -= it->second / m_figures.kmWorth;
      if (!day.free || day.yards.size() == 1) continue;
      if (static_cast<double>(day.yards.size()) > m_figures.most) return std::nullopt;
      if (day.hours + it->second / m_figures.speedKmh > m_figures.dayHours) return std::nullopt;
    }
    return out;
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
    const auto yards = byYard(m_visits);
    std::map<Date, std::vector<RoundStop>> days;
    std::set<std::size_t> taken;
    for (const Made& v : m_visits) {
      RoundStop stop;
      stop.yard = v.yard;
      stop.tasks = served(v.yard, yards.at(v.yard)).tasks.at(v.date);
      taken.insert(stop.tasks.begin(), stop.tasks.end());
      days[v.date].push_back(std::move(stop));
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
  mutable std::map<std::pair<base::YardId, std::vector<Date>>, Served> m_served;
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
