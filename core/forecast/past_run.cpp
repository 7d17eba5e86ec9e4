// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/past_run.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/forecast/exact_math.h"

namespace outyard::forecast {

using base::Date;

namespace {

/// What a look was expected to give, with its own error in place of a careful count's.
LookCheck checkOf(const ColonyEnsemble& ce, const Look& look, int daysSince) {
  LookCheck check{look.date, bandsOf(membersOn(ce, look.date)).seen, look.bees->median, daysSince};
  Band& b = check.expected;
  if (b.low <= 0 || b.median <= 0) return check;
  constexpr double kTenPercentPoint = 1.2816;
  const auto wider = [&](double edge) {
    const double sigma = exactLog(edge / b.median) / kTenPercentPoint;
    const double other = look.bees->sigmaLog * look.bees->sigmaLog - kCountError * kCountError;
    const double both = std::sqrt(std::max(sigma * sigma + other, sigma * sigma / 4));
    return b.median * exactExp((sigma < 0 ? -1 : 1) * kTenPercentPoint * both);
  };
  b.low = wider(b.low);
  b.high = wider(b.high);
  return check;
}

/// The first look at the bees from a day on.
const Look* firstLook(const History& history, Date start) {
  for (const Look& l : history.looks) {
    if (l.bees && l.date >= start) return &l;
  }
  return nullptr;
}

/// Without anything seen in the first weeks the ensemble starts with what is usual.
Date beginOf(const History& history, const YardWeather& weather) {
  const Date start = std::max(history.start, weather.from);
  const Look* first = firstLook(history, start);
  return first && first->date - start > 60 ? first->date.plusDays(-45) : start;
}

ColonyEnsemble startOf(const History& history, double latitude, const YardWeather& weather,
                       const Figures& figures, const ForecastAsk& ask, Date begin,
                       base::Random& random) {
  const Look* first = firstLook(history, std::max(history.start, weather.from));
  const bool near = first && first->date - begin <= 3;
  return settledEnsemble(figures, ask.members, latitude, begin.dayOfYear(),
                         begin == history.start ? history.origin : std::nullopt,
                         near ? first : nullptr, weather.drivers, begin - weather.from, random);
}

}  // namespace

PastRun::PastRun(const History& history, double latitude, const YardWeather& weather,
                 const Figures& figures, const ForecastAsk& ask, ColonyForecast& said)
    : m_history(history),
      m_weather(weather),
      m_ask(ask),
      m_said(said),
      m_random(streamOf(history.colony.str(), ask.seed)),
      m_begin(beginOf(history, weather)),
      m_now(m_begin),
      m_ce(startOf(history, latitude, weather, figures, ask, m_begin, m_random)) {
  if (ask.pastFrom) m_pastDay = std::max(*ask.pastFrom, m_begin);
}

/// Days of the past are written down when nothing dated up to them is left to be taken in.
void PastRun::writePast(Date before) {
  for (; m_pastDay && *m_pastDay < before;
       m_pastDay = m_pastDay->plusDays(std::max(1, m_ask.stepDays))) {
    runTo(m_ce, m_weather, m_now, *m_pastDay);
    m_said.past.push_back(bandsOf(membersOn(m_ce, *m_pastDay)));
  }
}

void PastRun::takeIn(const Look& look) {
  if (look.bees) {
    if (m_lastLook && look.date > *m_lastLook) {
      m_said.checks.push_back(checkOf(m_ce, look, look.date - *m_lastLook));
    }
    m_lastLook = look.date;
  }
  for (auto& s : assimilate(m_ce, look, m_random)) m_said.surprises.push_back(s);
}

void PastRun::to(Date day) {
  const auto& looks = m_history.looks;
  const auto& actions = m_history.actions;
  for (;;) {
    const bool look = m_nextLook < looks.size(), action = m_nextAction < actions.size();
    if (!look && !action) break;
    const bool takeLook = look && (!action || looks[m_nextLook].date <= actions[m_nextAction].date);
    const Date date = takeLook ? looks[m_nextLook].date : actions[m_nextAction].date;
    if (date > day) break;
    if (date >= m_begin) {
      writePast(std::min(date, m_ask.from));
      runTo(m_ce, m_weather, m_now, date);
    }
    if (takeLook) {
      if (date >= m_begin) takeIn(looks[m_nextLook]);
      ++m_nextLook;
    } else {
      // Boxes set before the start still say how much room there is.
      const Action& a = actions[m_nextAction];
      if (date >= m_begin || a.kind == Action::Kind::Boxes) act(m_ce, a, m_random);
      ++m_nextAction;
    }
  }
  if (day < m_begin) return;
  writePast(std::min(day.plusDays(1), m_ask.from));
  runTo(m_ce, m_weather, m_now, day);
}

PastGroup::PastGroup(std::span<PastRun* const> runs, std::span<const History> histories,
                     const ForecastAsk& ask)
    : m_runs(runs.begin(), runs.end()) {
  for (std::size_t k = 0; k < histories.size(); ++k) {
    for (const auto& s : histories[k].stacks) {
      if (!s.upper) continue;
      for (PastRun* other : m_runs) {
        if (other->colony() != s.other) continue;
        const Date from = std::max({s.from, m_runs[k]->begin(), other->begin()});
        if ((s.until && *s.until <= from) || from > ask.from) continue;
        m_waiting.push_back({m_runs[k], other, from, s.until, s.takenOff,
                             StackDraws(ask.members, streamOf("joint:" + m_runs[k]->colony().str() +
                                                                  ":" + other->colony().str(),
                                                              ask.seed))});
      }
    }
  }
  for (std::size_t k = 0; k < histories.size(); ++k) {
    for (const Meeting& m : histories[k].meetings) {
      if (!m.leads) continue;
      for (PastRun* other : m_runs) {
        if (other->colony() != m.other || other == m_runs[k]) continue;
        if (m.date < std::max(m_runs[k]->begin(), other->begin()) || m.date > ask.from) continue;
        m_meetings.push_back({m_runs[k], other, m,
                              streamOf("joint:" + m_runs[k]->colony().str() + ":" +
                                           other->colony().str() + ":" + m.date.iso(),
                                       ask.seed)});
      }
    }
  }
  std::stable_sort(m_waiting.begin(), m_waiting.end(),
                   [](const Stack& a, const Stack& b) { return a.from < b.from; });
  std::stable_sort(m_meetings.begin(), m_meetings.end(),
                   [](const Met& a, const Met& b) { return a.what.date < b.what.date; });
  if (const auto first = next()) m_day = *first;
}

std::optional<Date> PastGroup::next() const {
  std::optional<Date> day;
  if (!m_waiting.empty()) day = m_waiting.front().from;
  if (!m_meetings.empty() && (!day || m_meetings.front().what.date < *day)) {
    day = m_meetings.front().what.date;
  }
  return day;
}

void PastGroup::meet(const Met& met) {
  met.one->to(m_day);
  met.other->to(m_day);
  if (met.what.united) {
    joinAll(met.other->ensemble(), met.one->ensemble(), kUniteLost, met.stream);
  } else {
    changeFieldBees(met.one->ensemble(), met.other->ensemble());
  }
}

/// What ends or begins on the day.
void PastGroup::endAndBegin() {
  const auto both = [&](const Stack& s) {
    s.upper->to(m_day);
    s.lower->to(m_day);
  };
  std::erase_if(m_standing, [&](const Stack& s) {
    if (!s.until || *s.until > m_day) return false;
    both(s);
    if (s.takenOff) takenOff(s.upper->ensemble(), s.lower->ensemble(), s.draws);
    return true;
  });
  for (; !m_meetings.empty() && m_meetings.front().what.date <= m_day; m_meetings.pop_front()) {
    meet(m_meetings.front());
  }
  for (; !m_waiting.empty() && m_waiting.front().from <= m_day; m_waiting.pop_front()) {
    m_standing.push_back(std::move(m_waiting.front()));
    both(m_standing.back());
    const Stack& s = m_standing.back();
    setOver(s.upper->ensemble(), s.lower->ensemble(), s.draws);
  }
}

void PastGroup::to(Date day) {
  while (!m_standing.empty() || next()) {
    if (m_standing.empty()) m_day = std::max(m_day, *next());
    if (m_day > day) break;
    endAndBegin();
    if (m_standing.empty()) continue;
    if (m_day == day) break;
    m_day = m_day.plusDays(1);
    for (const Stack& s : m_standing) {
      s.upper->to(m_day);
      s.lower->to(m_day);
    }
    for (const Stack& s : m_standing) {
      shareStackDay(s.upper->ensemble(), s.lower->ensemble(), s.draws, m_day - s.from);
    }
  }
  for (PastRun* run : m_runs) run->to(day);
}

std::vector<History> linkedHistories(const apiary::Season& season, const base::ColonyId& colony,
                                     Date asOf) {
  std::map<base::ColonyId, History> found;
  std::vector<base::ColonyId> open{colony};
  while (!open.empty()) {
    const base::ColonyId next = open.back();
    open.pop_back();
    if (found.contains(next)) continue;
    auto history = historyOf(season, next, asOf);
    if (!history) continue;
    // Where it lives, or lived last.
    for (const auto* stay : season.stays(next)) {
      if (stay->fromDate > asOf) continue;
      const Date day = stay->toDate && *stay->toDate <= asOf ? stay->toDate->plusDays(-1) : asOf;
      history->yard = apiary::hiveOn(season, stay->hive, day).yard;
    }
    const Date since = weatherStart(asOf);
    std::erase_if(history->stacks, [&](const auto& s) { return s.until && *s.until <= since; });
    std::erase_if(history->meetings, [&](const auto& m) { return m.date <= since; });
    for (const auto& s : history->stacks) open.push_back(s.other);
    for (const auto& m : history->meetings) open.push_back(m.other);
    found.emplace(next, std::move(*history));
  }
  std::vector<History> out;
  for (auto& [id, history] : found) out.push_back(std::move(history));
  return out;
}

LinkedJobs linkedJobs(const apiary::Season& season, const std::vector<base::ColonyId>& colonies,
                      const ForecastAsk& ask, const Figures& figures) {
  LinkedJobs out;
  std::map<base::ColonyId, std::size_t> jobOf;  // of each colony that is in a job
  std::set<base::ColonyId> asked;
  for (const auto& colony : colonies) {
    const auto hive = apiary::hiveOfColony(season, colony, ask.from);
    if (!hive || !asked.insert(colony).second) continue;
    if (!jobOf.contains(colony)) {
      LinkedJob job;
      job.histories = linkedHistories(season, colony, ask.from);
      if (job.histories.empty()) continue;
      for (const History& h : job.histories) {
        const apiary::Yard* yard = season.yard(h.yard);
        job.latitudes.push_back(yard ? yard->latitude.value_or(45) : 45);
        job.slots.emplace_back();
        jobOf[h.colony] = out.jobs.size();
        if (!out.weather.contains(h.yard)) {
          out.weather.emplace(h.yard,
                              yardWeather(season, h.yard, weatherStart(ask.from), ask, figures));
        }
      }
      out.jobs.push_back(std::move(job));
    }
    LinkedJob& job = out.jobs[jobOf.at(colony)];
    for (std::size_t k = 0; k < job.histories.size(); ++k) {
      if (job.histories[k].colony != colony || job.histories[k].end) continue;
      job.slots[k] = out.colonies.size();
      out.colonies.push_back(colony);
      out.hives.push_back(*hive);
    }
  }
  std::erase_if(out.jobs, [](const LinkedJob& job) {
    return std::none_of(job.slots.begin(), job.slots.end(),
                        [](const auto& slot) { return slot.has_value(); });
  });
  return out;
}

LinkedRuns::LinkedRuns(const LinkedJob& job, const std::map<base::YardId, YardWeather>& weather,
                       const Figures& figures, const ForecastAsk& ask,
                       std::vector<ColonyForecast>& said) {
  said.resize(job.histories.size());
  std::vector<PastRun*> pointers;
  for (std::size_t k = 0; k < job.histories.size(); ++k) {
    const History& h = job.histories[k];
    said[k].colony = h.colony;
    runs.emplace_back(h, job.latitudes[k], weather.at(h.yard), figures, ask, said[k]);
    pointers.push_back(&runs.back());
  }
  group = std::make_unique<PastGroup>(pointers, job.histories, ask);
}

}  // namespace outyard::forecast
