// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/stack_follow.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "core/forecast/expected.h"
#include "core/planning/boost_figures.h"
#include "core/planning/boost_forecast.h"
#include "core/planning/boost_weather.h"
#include "core/planning/boost_words.h"
#include "core/planning/due_figures.h"
#include "core/strength/estimate.h"

namespace outyard::planning {
namespace {

using apiary::ColonyStay;
using apiary::Event;
using apiary::EventKind;
using apiary::Inspection;
using apiary::Task;
using base::ColonyId;
using base::Date;
using base::HiveId;
using base::message;
using Kind = StackStepKind;

/// How far past its window a day for separating is looked for.
constexpr int kAfterWindow = 21;
/// How long the bees that flew home are still told of.
constexpr int kDriftDays = 60;

int whole(double figure) {
  return static_cast<int>(std::lround(figure));
}

class Follower {
 public:
  Follower(const apiary::Season& season, const StackFollowAsk& ask)
      : m_season(season),
        m_ask(ask),
        m_due(dueFigures(season, m_said)),
        m_boost(boostFigures(season, m_said)) {}

  std::vector<MadeStack> run(int threads, base::Progress& progress) {
    gather();
    std::set<ColonyId> open;
    Date to = m_ask.today;
    for (const MadeStack& s : m_stacks) {
      if (s.end != MadeStack::End::Standing) continue;
      open.insert(s.upper);
      open.insert(s.lower);
      to = std::max(to, lastDay(s));
    }
    if (!open.empty()) {
      forecast::ForecastAsk ask = forecastAsk(m_ask.today, to);
      const std::vector<ColonyId> colonies(open.begin(), open.end());
      for (auto& f : forecast::forecastColonies(m_season, colonies, ask, threads, progress)) {
        ColonyId id = f.colony;
        m_forecasts.emplace(std::move(id), std::move(f));
      }
    }
    if (progress.cancelled()) return {};
    for (MadeStack& s : m_stacks) {
      steps(s);
      if (progress.cancelled()) return {};
    }
    std::stable_sort(m_stacks.begin(), m_stacks.end(), before);
    return std::move(m_stacks);
  }

 private:
  [[nodiscard]] forecast::ForecastAsk forecastAsk(Date from, Date to) const {
    forecast::ForecastAsk ask;
    ask.from = from;
    ask.to = to;
    ask.stepDays = 2;
    ask.seed = m_ask.seed;
    ask.members = m_ask.members;
    return ask;
  }
  [[nodiscard]] Date lastDay(const MadeStack& s) const {
    return std::max(m_ask.today, s.stackedOn.plusDays(whole(m_due.separateTo)))
        .plusDays(kAfterWindow);
  }

  static bool before(const MadeStack& a, const MadeStack& b) {
    if (a.next.has_value() != b.next.has_value()) return a.next.has_value();
    if (a.next) {
      const auto day = [](const MadeStack& s) {
        const StackStep& step = s.steps[*s.next];
        return step.proposed.value_or(step.earliest);
      };
      if (day(a) != day(b)) return day(a) < day(b);
    } else if (a.stackedOn != b.stackedOn) {
      return b.stackedOn < a.stackedOn;
    }
    return std::tie(a.yard, a.hive, a.upper) < std::tie(b.yard, b.hive, b.upper);
  }

  void gather() {
    for (const auto& [key, e] : m_season.table<Event>()) {
      if (e.kind != EventKind::Stacked || !m_season.counts(e) || !e.otherHive) continue;
      if (e.date > m_ask.today || m_ask.today - e.date > m_ask.sinceDays) continue;
      const auto state = apiary::hiveOn(m_season, *e.otherHive, e.date);
      const bool wanted = m_ask.yards.empty() || std::find(m_ask.yards.begin(), m_ask.yards.end(),
                                                           state.yard) != m_ask.yards.end();
      if (!wanted || !state.stacked()) continue;
      MadeStack s;
      s.yard = state.yard;
      s.hive = *e.otherHive;
      s.oldStand = e.hive;
      s.lower = e.otherColony.value_or(state.colonies.front().colony);
      for (const auto& c : state.colonies) {
        if (c.colony != s.lower && (!e.colony || *e.colony == c.colony)) s.upper = c.colony;
      }
      if (s.upper.blank()) continue;
      s.stackedOn = e.date;
      m_between[s.upper] = e.method;
      howItEnded(s);
      m_stacks.push_back(std::move(s));
    }
  }

  void howItEnded(MadeStack& s) const {
    for (const ColonyStay* stay : m_season.stays(s.upper)) {
      if (stay->hive != s.hive || stay->fromDate < s.stackedOn) continue;
      if (stay->toDate && *stay->toDate <= m_ask.today) s.endedOn = stay->toDate;
      break;
    }
    if (!s.endedOn) return;
    s.end = MadeStack::End::Gone;
    for (const Event* e : m_season.eventsTouching(s.hive)) {
      if (e->date != *s.endedOn) continue;
      if (e->kind == EventKind::Unstacked && e->colony == s.upper) {
        s.end = MadeStack::End::TakenOff;
        s.newHive = e->hive;
      } else if (e->kind == EventKind::United && e->otherColony == s.upper) {
        s.end = MadeStack::End::Joined;
      }
    }
  }

  void steps(MadeStack& s) {
    const YardWeather weather(m_season, s.yard);
    StackStep set;
    set.kind = Kind::Set;
    set.state = StepState::Done;
    set.doneOn = set.earliest = set.latest = s.stackedOn;
    set.why = message("planning.follow.set", s.oldStand.str(), s.hive.str(), s.stackedOn.iso());
    s.steps.push_back(std::move(set));
    if (m_between[s.upper].empty() || m_between[s.upper] == "excluder") {
      s.steps.push_back(paper(s, weather));
    }
    s.steps.push_back(upperQueen(s, weather));
    s.steps.push_back(separate(s, weather));
    if (s.end == MadeStack::End::TakenOff) s.steps.push_back(ownStand(s, weather));
    for (std::size_t i = 0; i < s.steps.size(); ++i) {
      StackStep& step = s.steps[i];
      if (!step.doneOn && step.state != StepState::Passed) {
        step.state = m_ask.today < step.earliest ? StepState::Waiting
                     : m_ask.today > step.latest ? StepState::Overdue
                                                 : StepState::Due;
        step.task = taskFor(s, step);
        if (!s.next) s.next = i;
      }
    }
  }

  static StackStep begun(Kind kind, Date earliest, Date latest) {
    StackStep step;
    step.kind = kind;
    step.earliest = earliest;
    step.latest = latest;
    return step;
  }

  /// The first day of the window from today on that is warm and dry enough.
  void propose(StackStep& step, const YardWeather& weather, double minC) const {
    const Date first = std::max(step.earliest, m_ask.today);
    step.proposed = first;
    for (Date d = first; d <= std::max(step.latest, first.plusDays(3)); d = d.plusDays(1)) {
      if (!warm(weather, d, minC)) continue;
      step.proposed = d;
      return;
    }
    if (weather.on(first)) {
      step.cautions.push_back(message("planning.due.caution_no_day", minC));
    }
  }
  [[nodiscard]] bool warm(const YardWeather& weather, Date day, double minC) const {
    const auto w = weather.on(day);
    return w && w->tmaxC >= minC && w->rainMm.value_or(0) <= m_due.dryMm;
  }

  /// Looks at the upper colony from a day on while it stood there; the first.
  [[nodiscard]] const Inspection* look(const ColonyId& colony, Date from,
                                       std::optional<Date> before) const {
    for (const Inspection* i : strength::inspectionsOf(m_season, colony, m_ask.today)) {
      if (i->date >= from && (!before || i->date <= *before)) return i;
    }
    return nullptr;
  }

  StackStep paper(const MadeStack& s, const YardWeather& weather) const {
    StackStep step = begun(Kind::Paper, s.stackedOn.plusDays(whole(m_due.paperFrom)),
                           s.stackedOn.plusDays(whole(m_due.paperTo)));
    for (const Event* e : m_season.eventsTouching(s.hive)) {
      const bool after = e->date > s.stackedOn && e->date <= s.endedOn.value_or(m_ask.today);
      if (e->kind == EventKind::PaperOpen && after && !step.doneOn) {
        step.doneOn = e->date;
        step.why = message("planning.follow.paper_open", e->date.iso());
      }
    }
    // A look into the upper box shows the paper as well.
    if (const Inspection* i = look(s.upper, s.stackedOn.plusDays(1), s.endedOn);
        i && !step.doneOn) {
      step.doneOn = i->date;
      step.why = message("planning.follow.paper_with_look", i->date.iso());
    }
    if (step.doneOn) {
      step.state = StepState::Done;
      return step;
    }
    if (s.endedOn || m_ask.today >= s.stackedOn.plusDays(whole(m_due.stackLookFrom))) {
      step.state = StepState::Passed;
      step.why = message("planning.follow.paper_passed");
      return step;
    }
    propose(step, weather, m_due.lidMinC);
    step.why = message("planning.due.paper", s.stackedOn.iso());
    step.cautions.push_back(message("planning.caution.stings"));
    return step;
  }

  StackStep upperQueen(MadeStack& s, const YardWeather& weather) const {
    const Date from = s.stackedOn.plusDays(whole(m_due.stackLookFrom));
    StackStep step = begun(Kind::UpperQueen, from, s.stackedOn.plusDays(whole(m_due.stackLookTo)));
    const Inspection* last = nullptr;
    for (const Inspection* i : strength::inspectionsOf(m_season, s.upper, m_ask.today)) {
      if (i->date < from.plusDays(-1) || (s.endedOn && i->date > *s.endedOn)) continue;
      if (!last) step.doneOn = i->date;
      last = i;
    }
    if (last) {
      step.state = StepState::Done;
      const bool queen = last->eggsSeen.value_or(false) || last->queenSeen.value_or(false);
      s.noEggs = !queen && last->eggsSeen.has_value() && s.end == MadeStack::End::Standing;
      step.why = queen            ? message("planning.follow.eggs", last->date.iso())
                 : last->eggsSeen ? message("planning.follow.no_eggs", last->date.iso())
                                  : message("planning.follow.eggs_unsaid", last->date.iso());
      if (s.noEggs) step.cautions.push_back(message("planning.follow.plan_b", s.hive.str()));
      return step;
    }
    if (s.endedOn) {
      step.state = StepState::Passed;
      step.why = message("planning.follow.look_passed");
      return step;
    }
    propose(step, weather, m_due.combMinC);
    step.why = message("planning.due.stack_look", s.stackedOn.iso());
    step.cautions.push_back(message("planning.caution.lift"));
    step.cautions.push_back(message("planning.caution.stings"));
    return step;
  }

  /// Frames of the colony's lowest chamber, by which usable is meant.
  [[nodiscard]] std::string frameType(const MadeStack& s, const ColonyId& colony) const {
    for (const auto& box : apiary::hiveOn(m_season, s.hive, m_ask.today).boxesOf(colony)) {
      if (box.role == apiary::BoxRole::Chamber) return box.frameType;
    }
    return "langstroth_deep";
  }

  StackStep separate(const MadeStack& s, const YardWeather& weather) const {
    const Date from = s.stackedOn.plusDays(whole(m_due.separateFrom));
    StackStep step = begun(Kind::Separate, from, s.stackedOn.plusDays(whole(m_due.separateTo)));
    if (s.endedOn) {
      step.doneOn = s.endedOn;
      step.state = StepState::Done;
      step.why = s.end == MadeStack::End::TakenOff
                     ? message("planning.follow.taken_off", s.newHive->str(), s.endedOn->iso())
                 : s.end == MadeStack::End::Joined
                     ? message("planning.follow.joined", s.hive.str(), s.endedOn->iso())
                     : message("planning.follow.gone", s.upper.str(), s.endedOn->iso());
      return step;
    }
    step.cautions = {message("planning.caution.lift"), message("planning.stack.caution_field"),
                     message("planning.caution.stings"), message("planning.caution.foul_brood")};
    if (s.noEggs) {
      // The excluder comes off now: she is not coming back.
      step.earliest = m_ask.today;
      step.latest = std::max(step.latest, m_ask.today);
      propose(step, weather, m_due.combMinC);
      step.why = message("planning.follow.plan_b", s.hive.str());
      return step;
    }
    const auto up = m_forecasts.find(s.upper), down = m_forecasts.find(s.lower);
    if (up == m_forecasts.end() || down == m_forecasts.end()) {
      propose(step, weather, m_due.combMinC);
      step.why = message("planning.due.separate", s.stackedOn.iso());
      return step;
    }
    BoostFigures ownFeet = m_boost;
    ownFeet.usableSeams = m_boost.takeOffSeams;
    ownFeet.usableBroodCombs = m_boost.takeOffBroodCombs;
    const Usable above = usableIn(m_season, frameType(s, s.upper), ownFeet);
    const Usable below = usableIn(m_season, frameType(s, s.lower), ownFeet);
    std::optional<Date> strong, fit;
    bool upperLate = false;
    const Date last = lastDay(s);
    for (Date d = std::max(from, m_ask.today); d <= last && !fit; d = d.plusDays(1)) {
      const auto a = forecast::dayBetween(up->second.days, d);
      const auto b = forecast::dayBetween(down->second.days, d);
      if (!a || !b) continue;
      const bool upperStrong =
          a->seen.median >= above.seenBees && a->brood.median >= above.broodCells;
      const bool lowerStrong = b->seen.median >= below.seenBees;
      if (!upperStrong || !lowerStrong) {
        upperLate = !upperStrong;
        continue;
      }
      if (!strong) strong = d;
      if (warm(weather, d, m_due.combMinC)) fit = d;
    }
    const auto seams = static_cast<std::int64_t>(whole(m_boost.takeOffSeams));
    if (fit) {
      step.proposed = fit;
      step.why = message("planning.follow.separate_on", fit->iso(), seams);
      step.latest = std::max(step.latest, *fit);
    } else if (strong) {
      step.proposed = strong;
      step.latest = std::max(step.latest, *strong);
      step.why = message("planning.follow.separate_strong", strong->iso(), seams);
      step.cautions.push_back(message("planning.due.caution_no_day", m_due.combMinC));
    } else {
      step.latest = std::max(step.latest, last);
      step.why = message("planning.follow.separate_wait", upperLate ? s.upper.str() : s.lower.str(),
                         last.iso(), seams);
    }
    return step;
  }

  StackStep ownStand(MadeStack& s, const YardWeather& weather) const {
    const Date from = s.endedOn->plusDays(whole(m_due.ownStandFrom));
    StackStep step = begun(Kind::OwnStand, from, s.endedOn->plusDays(whole(m_due.ownStandTo)));
    if (m_ask.today - *s.endedOn <= kDriftDays) drift(s);
    const base::Message home =
        s.beesBefore ? message("planning.follow.drift", s.hive.str(),
                               twoFigures(std::max(0.0, *s.beesBefore - *s.beesAfter)),
                               twoFigures(*s.beesBefore))
                     : message("planning.stack.caution_field");
    if (const Inspection* i = look(s.upper, from, std::nullopt)) {
      step.doneOn = i->date;
      step.state = StepState::Done;
      step.why = home;
      return step;
    }
    if (m_ask.today - *s.endedOn > 30) {
      step.state = StepState::Passed;
      step.why = home;
      return step;
    }
    propose(step, weather, m_due.combMinC);
    step.why = home;
    return step;
  }

  /// The colony as it was before and after it was taken off, each from what was known on its day.
  void drift(MadeStack& s) const {
    const Date before = s.endedOn->plusDays(-1), after = s.endedOn->plusDays(1);
    const auto was = forecast::forecastColony(m_season, s.upper, forecastAsk(before, before));
    const auto is = forecast::forecastColony(m_season, s.upper, forecastAsk(*s.endedOn, after));
    if (!was || !is || was->days.empty() || is->days.empty()) return;
    s.beesBefore = was->days.front().bees.median;
    s.beesAfter = is->days.back().bees.median;
  }

  [[nodiscard]] std::optional<base::TaskId> taskFor(const MadeStack& s,
                                                    const StackStep& step) const {
    const auto fits = [&](const Task& t) {
      if (t.state != apiary::TaskState::Planned || !t.hive) return false;
      if (t.colony && *t.colony != s.upper) return false;
      const bool here = *t.hive == s.hive || (s.newHive && *t.hive == *s.newHive);
      if (!here) return false;
      const Date day = t.dueOn.value_or(t.earliest.value_or(t.plannedOn.value_or(s.stackedOn)));
      switch (step.kind) {
        case Kind::Paper:
          return t.kind == "paper_open";
        case Kind::UpperQueen:
          return (t.kind == "look" || t.kind == "open") && t.colony &&
                 day >= s.stackedOn.plusDays(1) && day <= step.latest.plusDays(7);
        case Kind::Separate:
          return t.kind == "unstacked";
        case Kind::OwnStand:
          return (t.kind == "look" || t.kind == "open") && day >= *s.endedOn &&
                 day <= step.latest.plusDays(7);
        case Kind::Set:
          break;
      }
      return false;
    };
    for (const auto& [key, t] : m_season.table<Task>()) {
      if (fits(t)) return t.task;
    }
    return std::nullopt;
  }

  const apiary::Season& m_season;
  const StackFollowAsk& m_ask;
  std::vector<base::Message> m_said;
  DueFigures m_due;
  BoostFigures m_boost;
  std::vector<MadeStack> m_stacks;
  std::map<ColonyId, std::string> m_between;
  std::map<ColonyId, forecast::ColonyForecast> m_forecasts;
};

}  // namespace

std::vector<MadeStack> stacksMade(const apiary::Season& season, const StackFollowAsk& ask,
                                  int threads, base::Progress& progress) {
  return Follower(season, ask).run(threads, progress);
}

base::Message stepName(Kind kind) {
  switch (kind) {
    case Kind::Set:
      return message("planning.follow.step.set");
    case Kind::Paper:
      return message("planning.follow.step.paper");
    case Kind::UpperQueen:
      return message("planning.follow.step.upper_queen");
    case Kind::Separate:
      return message("planning.follow.step.separate");
    case Kind::OwnStand:
      break;
  }
  return message("planning.follow.step.own_stand");
}

std::vector<base::Message> stepAdvice(Kind kind) {
  switch (kind) {
    case Kind::Set:
      return {};
    case Kind::Paper:
      return {message("planning.follow.advice.paper"), message("planning.follow.advice.entrance")};
    case Kind::UpperQueen:
      return {message("planning.follow.advice.eggs"), message("planning.follow.advice.cells"),
              message("planning.follow.advice.plan_b")};
    case Kind::Separate:
      return {message("planning.follow.advice.eggs_first"), message("planning.follow.advice.stand"),
              message("planning.follow.advice.excluder"), message("planning.follow.advice.food")};
    case Kind::OwnStand:
      break;
  }
  return {message("planning.follow.advice.own_stand")};
}

}  // namespace outyard::planning
