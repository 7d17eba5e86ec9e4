// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/season_calendar.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <numeric>
#include <set>

#include "core/planning/due_rules.h"

namespace outyard::planning {
namespace {

using apiary::EventKind;
using base::Date;
using base::message;

constexpr int kMostWeeks = 105;
/// Work that is less likely than this is no reason to keep hours free (our assumption).
constexpr double kLikely = 0.5;

/// Days of the week on which the outfit works with bees: a setting, else five (our assumption).
double daysAWeek(const apiary::Season& season) {
  const auto text = season.setting("calendar.days_a_week");
  double out = 0;
  if (text && std::from_chars(text->data(), text->data() + text->size(), out).ec == std::errc() &&
      out >= 0.5 && out <= 7) {
    return out;
  }
  return 5;
}

Date dayOfYear(int year, int day) {
  return Date::fromYmd(year, 1, 1)->plusDays(std::clamp(day, 1, 366) - 1);
}

bool isBoost(std::string_view kind) {
  return kind == "stacked" || kind == "united" || kind == "frames_given" || kind == "bees_shaken" ||
         kind == "places_changed" || kind == "frames_moved";
}
bool isBoost(EventKind kind) {
  return kind == EventKind::Stacked || kind == EventKind::United ||
         kind == EventKind::FramesGiven || kind == EventKind::BeesShaken ||
         kind == EventKind::PlacesChanged;
}

class Maker {
 public:
  Maker(const apiary::Season& season, Date today, SeasonCalendar& out)
      : m_season(season), m_today(today), m_out(out) {
    for (const auto& [key, yard] : season.table<apiary::Yard>()) {
      const auto& wanted = out.ask.yards;
      if (wanted.empty() || std::find(wanted.begin(), wanted.end(), yard.yard) != wanted.end()) {
        m_row.emplace(yard.yard, out.yards.size());
        out.yards.push_back(yard.yard);
      }
    }
    for (Date d = mondayOf(out.ask.first); d <= out.ask.last; d = d.plusDays(7)) {
      if (out.weeks.size() == kMostWeeks) break;
      out.weeks.push_back({d, 0, 0, 0});
    }
    out.cells.resize(out.yards.size() * out.weeks.size());
  }

  bool run(int threads, base::Progress& progress) {
    flows();
    records();
    visits();
    if (m_out.weeks.empty() || m_out.yards.empty()) return true;
    const Date end = m_out.weeks.back().monday.plusDays(6);
    if (end >= m_today) {
      DueAsk ask;
      ask.from = m_today;
      ask.to = end;
      ask.yards = m_out.yards;
      ask.seed = m_out.ask.seed;
      ask.members = m_out.ask.members;
      m_out.due = whatFallsDue(m_season, ask, threads, progress);
      if (progress.cancelled()) return false;
      tasks();
      readiness();
      m_out.due.forecasts.clear();
    }
    hours();
    return true;
  }

 private:
  CalendarCell* at(const base::YardId& yard, Date day) {
    const auto row = m_row.find(yard);
    const auto week = m_out.weekOf(day);
    if (row == m_row.end() || !week) return nullptr;
    return &m_out.cells[row->second * m_out.weeks.size() + *week];
  }

  void flows() {
    for (const auto& [key, flow] : m_season.table<apiary::Flow>()) {
      const auto row = m_row.find(flow.yard);
      if (row == m_row.end() || !flow.nectar) continue;
      for (std::size_t w = 0; w < m_out.weeks.size(); ++w) {
        const Date monday = m_out.weeks[w].monday, sunday = monday.plusDays(6);
        for (const int year : {monday.year() - 1, monday.year(), monday.year() + 1}) {
          const Date from = dayOfYear(year, flow.fromDay);
          const Date to = dayOfYear(flow.fromDay > flow.toDay ? year + 1 : year, flow.toDay);
          if (from > sunday || to < monday) continue;
          auto& nectar = m_out.cells[row->second * m_out.weeks.size() + w].nectar;
          nectar = std::max(nectar, *flow.nectar);
        }
      }
    }
  }

  void records() {
    std::map<base::YardId, Date> lastWait;
    for (const auto& [key, hive] : m_season.table<apiary::Hive>()) {
      const auto yardOf = [&](Date day) { return apiary::hiveOn(m_season, hive.hive, day).yard; };
      std::optional<Date> treated;
      for (const auto* event : m_season.journal<apiary::Event>(hive.hive)) {
        if (event->date > m_today) continue;
        if (event->kind == EventKind::Treated) {
          treated = event->date;
          if (event->withdrawalDays) {
            const base::YardId yard = yardOf(event->date);
            const Date end = event->date.plusDays(*event->withdrawalDays);
            span(yard, event->date, end, &CalendarCell::waiting);
            auto [it, fresh] = lastWait.emplace(yard, end);
            it->second = std::max(it->second, end);
          }
        }
        if (event->kind == EventKind::TreatmentOff && treated) {
          span(yardOf(event->date), *treated, event->date, &CalendarCell::underTreatment);
          treated.reset();
        }
        if (m_out.weekOf(event->date)) done(*event, yardOf(event->date));
      }
      // Longer than that it was surely taken off, or nothing of it stays behind.
      if (treated && m_today - *treated <= 56) {
        span(yardOf(m_today), *treated, m_today, &CalendarCell::underTreatment);
      }
      for (const auto* look : m_season.journal<apiary::Inspection>(hive.hive)) {
        if (look->date > m_today || !m_out.weekOf(look->date)) continue;
        if (auto* cell = at(yardOf(look->date), look->date)) ++cell->looksDone;
      }
      for (const auto* wash : m_season.journal<apiary::Wash>(hive.hive)) {
        if (wash->date > m_today || !m_out.weekOf(wash->date)) continue;
        if (auto* cell = at(yardOf(wash->date), wash->date)) ++cell->washesDone;
      }
    }
    for (const auto& [yard, end] : lastWait) {
      if (auto* cell = at(yard, end)) cell->waitingEnds = true;
    }
  }

  void span(const base::YardId& yard, Date from, Date to, bool CalendarCell::*flag) {
    const auto row = m_row.find(yard);
    if (row == m_row.end()) return;
    for (std::size_t w = 0; w < m_out.weeks.size(); ++w) {
      const Date monday = m_out.weeks[w].monday;
      if (from > monday.plusDays(6) || to < monday) continue;
      m_out.cells[row->second * m_out.weeks.size() + w].*flag = true;
    }
  }

  void done(const apiary::Event& event, const base::YardId& yard) {
    auto* cell = at(yard, event.date);
    if (!cell) return;
    if (isBoost(event.kind)) ++cell->boostsDone;
    if (event.kind == EventKind::Split) ++cell->splitsDone;
    if (event.kind == EventKind::Treated) ++cell->treatmentsDone;
    if (event.kind == EventKind::Fed) ++cell->feedsDone;
    if (event.kind == EventKind::Harvested) {
      ++cell->harvests;
      if (event.amount && event.unit == apiary::Unit::Kg) cell->harvestKg += *event.amount;
    }
  }

  void visits() {
    for (const auto& [key, visit] : m_season.table<apiary::Visit>()) {
      if (visit.date < m_today) continue;
      if (auto* cell = at(visit.yard, visit.date)) ++cell->visitsPlanned;
    }
  }

  void tasks() {
    for (std::size_t i = 0; i < m_out.due.tasks.size(); ++i) {
      const DueTask& t = m_out.due.tasks[i];
      auto* cell = at(t.yard, t.date);
      if (!cell) continue;
      cell->tasks.push_back(i);
      if (t.rule == "planned" && isBoost(t.kind)) {
        ++cell->boostsPlanned;
      } else if (t.rule == "treat" || t.kind == "treated") {
        ++cell->treatmentsPlanned;
      } else if (t.kind == "harvested") {
        ++cell->harvestsDue;
      } else if (t.rule == "wash") {
        ++cell->washesDue;
      } else if (t.kind == "fed") {
        ++cell->feedsDue;
      } else if (t.kind == "open" || t.kind == "look") {
        ++cell->looksDue;
      } else {
        ++cell->otherDue;
      }
    }
  }

  /// Chances of every colony at the end of each week, by the rule that lists splits.
  void readiness() {
    std::vector<base::Message> notes;
    const DueFigures figures = dueFigures(m_season, notes);
    std::map<base::ColonyId, const forecast::ColonyForecast*> byColony;
    for (const auto& f : m_out.due.forecasts) byColony.emplace(f.colony, &f);
    for (const auto& [yard, row] : m_row) {
      const YardFacts yardOnes = yardFacts(m_season, yard, m_out.due.ask);
      for (const auto& hive : apiary::yardOn(m_season, yard, m_today)) {
        if (!hive.present) continue;
        for (const auto& colony : hive.colonies) {
          const auto it = byColony.find(colony.colony);
          if (it == byColony.end()) continue;
          ColonyFacts facts = colonyFacts(m_season, yardOnes, hive, colony, figures);
          facts.days = it->second->days;
          for (std::size_t w = 0; w < m_out.weeks.size(); ++w) {
            const Date sunday = m_out.weeks[w].monday.plusDays(6);
            if (sunday < m_today) continue;
            auto& ready = m_out.cells[row * m_out.weeks.size() + w].splitReady;
            ready = ready.value_or(0) + splitChance(facts, figures, sunday);
          }
        }
      }
    }
  }

  void hours() {
    std::vector<base::Message> notes;
    const RoundFigures figures = roundFigures(m_season, notes);
    m_out.people = figures.people;
    m_out.dayHours = figures.dayHours;
    m_out.daysAWeek = daysAWeek(m_season);
    for (std::size_t w = 0; w < m_out.weeks.size(); ++w) {
      CalendarWeek& week = m_out.weeks[w];
      if (week.monday.plusDays(6) < m_today) continue;
      week.handHours = m_out.daysAWeek * figures.dayHours;
      std::vector<base::YardId> toDrive;
      for (std::size_t y = 0; y < m_out.yards.size(); ++y) {
        CalendarCell& cell = m_out.cells[y * m_out.weeks.size() + w];
        std::vector<std::size_t> likely;
        for (const std::size_t i : cell.tasks) {
          const DueTask& t = m_out.due.tasks[i];
          if (t.minutes > 0 && (t.task || t.chance >= kLikely)) likely.push_back(i);
        }
        if (likely.empty() && cell.visitsPlanned == 0) continue;
        cell.workHours = planning::workHours(m_out.due, likely, figures);
        week.workHours += cell.workHours;
        toDrive.push_back(m_out.yards[y]);
      }
      week.driveHours = drive(toDrive, figures) / std::max(1.0, figures.speedKmh);
    }
  }

  /// The shortest way through all yards of the week, cut into days; each day begins and ends at
  /// home where that is known.
  double drive(const std::vector<base::YardId>& yards, const RoundFigures& figures) {
    if (yards.empty()) return 0;
    std::vector<std::vector<double>> km(yards.size(), std::vector<double>(yards.size(), 0));
    for (std::size_t i = 0; i < yards.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        km[i][j] = km[j][i] = driveKm(m_season, yards[i], yards[j], figures);
      }
    }
    const Tour tour = shortestTour(km, false);
    // The rounds' own day gives the drive from and to home.
    const auto most = static_cast<std::size_t>(std::max(1.0, figures.most));
    double sum = 0;
    for (std::size_t i = 0; i < tour.order.size(); i += most) {
      std::vector<RoundStop> stops;
      for (std::size_t k = i; k < std::min(tour.order.size(), i + most); ++k) {
        RoundStop stop;
        stop.yard = yards[tour.order[k]];
        stops.push_back(std::move(stop));
      }
      sum += arrangedDay(m_season, m_nothing, m_today, std::move(stops), figures).driveKm;
    }
    return sum;
  }

  const apiary::Season& m_season;
  Date m_today;
  SeasonCalendar& m_out;
  DueList m_nothing;
  std::map<base::YardId, std::size_t> m_row;
};

}  // namespace

Date mondayOf(Date day) {
  return day.plusDays(-day.weekday());
}

std::optional<std::size_t> SeasonCalendar::weekOf(Date day) const {
  if (weeks.empty() || day < weeks.front().monday) return std::nullopt;
  const auto week = static_cast<std::size_t>((day - weeks.front().monday) / 7);
  return week < weeks.size() ? std::optional(week) : std::nullopt;
}

bool SeasonCalendar::expectedOnly(std::size_t week) const {
  return weeks.at(week).monday > mondayOf(today).plusDays(7 * sureWeeks);
}

SeasonCalendar seasonCalendar(const apiary::Season& season, Date today, const CalendarAsk& ask,
                              int threads, base::Progress& progress) {
  SeasonCalendar out;
  out.ask = ask;
  out.today = today;
  Maker maker(season, today, out);
  if (!maker.run(threads, progress)) {
    out.weeks.clear();
    out.cells.clear();
  }
  return out;
}

namespace {

void put(apiary::ChangeList& changes, apiary::TableId table, std::string key,
         std::optional<apiary::Row> before, std::optional<apiary::Row> after) {
  changes.push_back({table, std::move(key), std::move(before), std::move(after)});
}

}  // namespace

base::Result<apiary::ChangeList> shiftedTasks(const apiary::Season& season,
                                              const base::YardId& yard, Date from, int days) {
  apiary::ChangeList changes;
  std::optional<Date> soonest;
  const auto moved = [&](std::optional<Date>& date) {
    if (date) date = date->plusDays(days);
  };
  std::set<base::VisitId> worked;
  for (const auto& [key, task] : season.table<apiary::Task>()) {
    if (task.visit && task.state == apiary::TaskState::Done) worked.insert(*task.visit);
  }
  std::set<base::VisitId> shifted;
  std::vector<Date> visitDays;
  for (const auto& [key, visit] : season.table<apiary::Visit>()) {
    if (visit.yard != yard || visit.date < from || worked.contains(visit.visit)) continue;
    apiary::Visit after = visit;
    after.date = visit.date.plusDays(days);
    soonest = soonest ? std::min(*soonest, after.date) : after.date;
    shifted.insert(visit.visit);
    visitDays.push_back(after.date);
    put(changes, apiary::TableId::Visits, key, apiary::toRow(visit), apiary::toRow(after));
  }
  for (const auto& [key, task] : season.table<apiary::Task>()) {
    if (task.state != apiary::TaskState::Planned) continue;
    std::optional<base::YardId> at = task.yard;
    if (task.hive) at = apiary::hiveOn(season, *task.hive, from).yard;
    // A task of a visit that stays keeps the visit's day.
    if (at != yard || (task.visit && !shifted.contains(*task.visit))) continue;
    apiary::Task after = task;
    moved(after.earliest);
    moved(after.latest);
    moved(after.dueOn);
    moved(after.plannedOn);
    if (after == task) continue;
    const auto day = after.plannedOn ? after.plannedOn : after.latest ? after.latest : after.dueOn;
    if (day) soonest = soonest ? std::min(*soonest, *day) : *day;
    put(changes, apiary::TableId::Tasks, key, apiary::toRow(task), apiary::toRow(after));
  }
  if (changes.empty()) {
    return base::fail(message("planning.calendar.nothing_to_shift", yard.str()));
  }
  if (days < 0 && soonest && *soonest < from) {
    return base::fail(message("planning.calendar.before_today", yard.str(), from.iso(),
                              static_cast<std::int64_t>(-days)));
  }
  for (const auto& [key, visit] : season.table<apiary::Visit>()) {
    if (visit.yard != yard || shifted.contains(visit.visit)) continue;
    for (const Date there : visitDays) {
      if (there == visit.date) {
        return base::fail(message("planning.calendar.visit_there", yard.str(), visit.date.iso()));
      }
    }
  }
  return changes;
}

base::Result<apiary::ChangeList> shiftedFlow(const apiary::Season& season, const apiary::Flow& flow,
                                             int days) {
  const std::string key = apiary::rowKey(apiary::toRow(flow));
  const auto* stands = season.find<apiary::Flow>(key);
  if (!stands) {
    return base::fail(
        message("planning.calendar.no_flow", flow.yard.str(), flow.fromDay, flow.toDay));
  }
  const auto turned = [](int day) { return ((day - 1) % 365 + 365) % 365 + 1; };
  apiary::Flow after = *stands;
  after.fromDay = turned(stands->fromDay + days);
  after.toDay = turned(stands->toDay + days);
  const std::string to = apiary::rowKey(apiary::toRow(after));
  if (to != key && season.find<apiary::Flow>(to)) {
    return base::fail(
        message("planning.calendar.flow_there", flow.yard.str(), after.fromDay, after.toDay));
  }
  apiary::ChangeList changes;
  if (to == key) return changes;
  put(changes, apiary::TableId::Flows, key, apiary::toRow(*stands), std::nullopt);
  put(changes, apiary::TableId::Flows, to, std::nullopt, apiary::toRow(after));
  return changes;
}

CalendarChange compared(const SeasonCalendar& before, const SeasonCalendar& after,
                        const base::YardId& yard) {
  CalendarChange out;
  const auto read = [&](const SeasonCalendar& c, double& most, int& over,
                        std::optional<Date>& first, double& ready) {
    for (const auto& week : c.weeks) {
      most = std::max(most, week.handHours > 0 ? week.hours() : 0);
      over += week.overFull() ? 1 : 0;
    }
    const auto row = std::find(c.yards.begin(), c.yards.end(), yard);
    if (row == c.yards.end()) return;
    for (std::size_t w = 0; w < c.weeks.size(); ++w) {
      const double now =
          c.cell(static_cast<std::size_t>(row - c.yards.begin()), w).splitReady.value_or(0);
      if (now >= 1 && !first) first = c.weeks[w].monday;
      ready = std::max(ready, now);
    }
  };
  read(before, out.hoursMostBefore, out.overFullBefore, out.readyBefore, out.readyMostBefore);
  read(after, out.hoursMostAfter, out.overFullAfter, out.readyAfter, out.readyMostAfter);
  return out;
}

}  // namespace outyard::planning
