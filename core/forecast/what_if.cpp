// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/what_if.h"

#include <algorithm>
#include <atomic>
#include <mutex>
#include <stdexcept>
#include <thread>

#include "core/forecast/pair_moves.h"
#include "core/forecast/past_run.h"

namespace outyard::forecast {

using base::Date;

struct Starts::Held {
  struct One {
    base::YardId yard;
    ColonyEnsemble ce;
  };
  ForecastAsk ask;
  std::map<base::ColonyId, One> colonies;
  std::map<base::YardId, YardWeather> weather;

  [[nodiscard]] const One& one(const base::ColonyId& colony) const { return colonies.at(colony); }
  void within(Date day) const {
    if (day < ask.from || day > ask.to) {
      throw std::out_of_range("a what-if run reaches outside the days that were prepared");
    }
  }
};

namespace {

/// A colony on its way, with what is still to be done to it.
struct Running {
  ColonyEnsemble ce;
  Date now;
  const YardWeather* weather;
  std::span<const Action> actions;
  base::Random random;
  Course course;

  /// Lives up to the day, doing what falls on the way; what is dated on the day itself is done.
  void to(Date day) {
    while (!actions.empty() && actions.front().date <= day) {
      runTo(ce, *weather, now, actions.front().date);
      act(ce, actions.front(), random);
      actions = actions.subspan(1);
    }
    runTo(ce, *weather, now, day);
  }
  void write() { course.days.push_back(membersOn(ce, now)); }
};

constexpr double kShakenStay = 0.5;  ///< of shaken bees; the others fly home (common practice)

}  // namespace

std::vector<ForecastDay> Course::bands() const {
  std::vector<ForecastDay> out;
  for (const MemberDay& d : days) out.push_back(bandsOf(d));
  return out;
}

Starts Starts::prepare(const apiary::Season& season, const std::vector<base::ColonyId>& colonies,
                       const ForecastAsk& ask, int threads, base::Progress& progress) {
  auto held = std::make_shared<Held>();
  held->ask = ask;
  const Figures figures = Figures::of(season);
  LinkedJobs linked = linkedJobs(season, colonies, ask, figures);
  held->weather = std::move(linked.weather);
  std::vector<Held::One*> ones;
  for (const auto& colony : linked.colonies) ones.push_back(&held->colonies[colony]);
  std::atomic<std::size_t> next{0}, done{0};
  std::mutex reporting;
  const auto work = [&] {
    for (std::size_t i = next++; i < linked.jobs.size() && !progress.cancelled(); i = next++) {
      const LinkedJob& job = linked.jobs[i];
      std::vector<ColonyForecast> said;
      LinkedRuns runs(job, held->weather, figures, ask, said);
      runs.group->to(ask.from);
      for (std::size_t k = 0; k < job.slots.size(); ++k) {
        if (!job.slots[k]) continue;
        ones[*job.slots[k]]->yard = job.histories[k].yard;
        ones[*job.slots[k]]->ce = std::move(runs.runs[k].ensemble());
      }
      const std::size_t n = ++done;
      const std::lock_guard lock(reporting);
      progress.report(static_cast<double>(n) / static_cast<double>(linked.jobs.size()));
    }
  };
  std::vector<std::thread> pool;
  for (int t = 1; t < threads; ++t) pool.emplace_back(work);
  work();
  for (auto& t : pool) t.join();
  Starts starts;
  if (!progress.cancelled()) starts.m_held = std::move(held);
  return starts;
}

bool Starts::has(const base::ColonyId& colony) const {
  return m_held && m_held->colonies.contains(colony);
}

Date Starts::from() const {
  return m_held->ask.from;
}

Date Starts::to() const {
  return m_held->ask.to;
}

bool Starts::empty() const {
  return !m_held || m_held->colonies.empty();
}

namespace {

Running begin(const base::ColonyId& colony, const ColonyEnsemble& ce, const ForecastAsk& ask,
              const YardWeather& weather, std::span<const Action> actions) {
  return {ce,
          ask.from,
          &weather,
          actions,
          base::Random(streamOf("what-if:" + colony.str(), ask.seed)),
          {colony, {}}};
}

}  // namespace

Course Starts::alone(const base::ColonyId& colony, std::span<const Action> actions,
                     std::span<const Date> days) const {
  if (!has(colony)) throw std::out_of_range("a what-if run of a colony that was not prepared");
  const Held::One& one = m_held->one(colony);
  for (const Action& a : actions) m_held->within(a.date);
  Running run = begin(colony, one.ce, m_held->ask, m_held->weather.at(one.yard), actions);
  for (const Date d : days) {
    m_held->within(d);
    run.to(d);
    run.write();
  }
  return std::move(run.course);
}

JointCourse Starts::together(const base::ColonyId& receiver, const base::ColonyId& donor,
                             const Joint& joint, std::span<const Date> days,
                             std::span<const Action> receiverActions,
                             std::span<const Action> donorActions) const {
  if (!has(receiver) || !has(donor)) {
    throw std::out_of_range("a what-if run of a colony that was not prepared");
  }
  m_held->within(joint.date);
  for (const auto& list : {receiverActions, donorActions}) {
    for (const Action& a : list) m_held->within(a.date);
  }
  const Held::One &r = m_held->one(receiver), &d = m_held->one(donor);
  const ForecastAsk& ask = m_held->ask;
  Running up = begin(receiver, r.ce, ask, m_held->weather.at(r.yard), receiverActions);
  Running down = begin(donor, d.ce, ask, m_held->weather.at(d.yard), donorActions);
  const std::uint64_t stream = streamOf("joint:" + receiver.str() + ":" + donor.str(), ask.seed);
  const StackDraws draws(joint.kind == Joint::Kind::Stack ? ask.members : 0, stream);
  bool begun = false, stacked = false;
  const auto both = [&](Date day) {
    up.to(day);
    down.to(day);
  };
  const auto start = [&] {
    both(joint.date);
    begun = true;
    switch (joint.kind) {
      case Joint::Kind::Stack:
        up.weather = down.weather;
        setOver(up.ce, down.ce, draws);
        stacked = true;
        break;
      case Joint::Kind::SealedFrames:
        moveSealed(down.ce, up.ce, joint.cells, stream);
        if (joint.bees > 0) moveNurses(down.ce, up.ce, joint.bees, stream + 1);
        break;
      case Joint::Kind::NurseBees:
        moveNurses(down.ce, up.ce, joint.bees * kShakenStay, stream);
        break;
      case Joint::Kind::ChangePlaces:
        changeFieldBees(up.ce, down.ce);
        break;
      case Joint::Kind::Unite:
        joinAll(up.ce, down.ce, kUniteLost, stream);
        break;
    }
  };
  const auto advance = [&](Date day) {
    if (!begun) {
      if (day < joint.date) return both(day);
      start();
    }
    while (stacked) {
      if (joint.until && up.now >= *joint.until) {
        takenOff(up.ce, down.ce, draws);
        stacked = false;
        break;
      }
      if (up.now >= day) break;
      both(up.now.plusDays(1));
      shareStackDay(up.ce, down.ce, draws, up.now - joint.date);
    }
    both(day);
  };
  for (const Date day : days) {
    m_held->within(day);
    advance(day);
    up.write();
    down.write();
  }
  return {std::move(up.course), std::move(down.course)};
}

}  // namespace outyard::forecast
