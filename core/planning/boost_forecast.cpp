// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_forecast.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <mutex>
#include <set>
#include <thread>

#include "core/planning/boost_build.h"
#include "core/planning/boost_words.h"
#include "core/planning/method_table.h"
#include "core/strength/expected_look.h"

namespace outyard::planning {
namespace {

using apiary::Method;
using base::ColonyId;
using base::Date;
using base::message;
using forecast::Action;
using forecast::Joint;
using forecast::MemberDay;

/// The frames of a colony's lowest chamber; Langstroth deeps where nobody wrote them down.
strength::FrameFigures framesOf(const apiary::Season& season, const std::string& type) {
  if (const auto own = strength::figuresFor(season, type)) return *own;
  return *strength::shippedFigures("langstroth_deep");
}

struct Side {
  std::string frameType;
  int chambers = 0;
};
Side sideOf(const apiary::Season& season, const ColonyId& colony, const base::HiveId& hive,
            Date day) {
  Side side;
  for (const auto& box : apiary::hiveOn(season, hive, day).boxesOf(colony)) {
    if (box.role != apiary::BoxRole::Chamber) continue;
    if (side.frameType.empty()) side.frameType = box.frameType;
    ++side.chambers;
  }
  return side;
}

Gain pairedGain(const MemberDay& with, const MemberDay& without) {
  std::vector<double> more;
  for (std::size_t m = 0; m < with.bees.size(); ++m) {
    more.push_back(static_cast<double>(with.bees[m]) - static_cast<double>(without.bees[m]));
  }
  const forecast::Band band = forecast::bandOf(more);
  return {band.median, band.low, band.high};
}

double meanMore(const MemberDay& with, const MemberDay& without) {
  double sum = 0;
  for (std::size_t m = 0; m < with.bees.size(); ++m) {
    sum += static_cast<double>(with.bees[m]) - static_cast<double>(without.bees[m]);
  }
  return sum / static_cast<double>(with.bees.size());
}

double shareBetter(const MemberDay& with, const MemberDay& without) {
  int better = 0;
  for (std::size_t m = 0; m < with.bees.size(); ++m)
    better += with.bees[m] > without.bees[m] ? 1 : 0;
  return static_cast<double>(better) / static_cast<double>(with.bees.size());
}

/// What is worked out for each option before anything of the problem is touched.
struct Worked {
  bool done = false;
  Gain gain;
  BoostChance chance;
  double benefit = 0, donorCost = 0;
};

class Runs {
 public:
  /// `days` ascending, the target day last.
  Runs(const apiary::Season& season, const BoostProblem& problem, const BoostFigures& figures,
       std::vector<Date> days)
      : m_season(season), m_problem(problem), m_f(figures), m_days(std::move(days)) {}

  bool prepare(int threads, base::Progress& progress) {
    std::set<ColonyId> wanted;
    for (const auto& o : m_problem.options) {
      if (isVisit(o)) continue;
      wanted.insert(o.colony);
      m_hives.emplace(o.colony, o.hive);
      if (o.donorColony) {
        wanted.insert(*o.donorColony);
        m_hives.emplace(*o.donorColony, *o.donorHive);
      }
    }
    forecast::ForecastAsk ask;
    ask.from = m_problem.request.date;
    ask.to = m_problem.target;
    ask.members =
        std::max(1, static_cast<int>(m_f.planMembers) / forecast::kBlock) * forecast::kBlock;
    m_starts =
        forecast::Starts::prepare(m_season, {wanted.begin(), wanted.end()}, ask, threads, progress);
    if (progress.cancelled()) return false;
    for (const auto& [colony, hive] : m_hives) {
      const Side side = sideOf(m_season, colony, hive, ask.from);
      m_usable.emplace(colony, usableIn(m_season, side.frameType, m_f));
      m_frames.emplace(colony, framesOf(m_season, side.frameType));
      if (m_starts.has(colony)) {
        m_alone.emplace(colony, m_starts.alone(colony, {}, m_days).days);
      }
    }
    return true;
  }

  [[nodiscard]] Worked work(const BoostOption& o) const {
    if (isVisit(o) || !m_starts.has(o.colony)) return {};
    if (o.donorColony && !m_starts.has(*o.donorColony)) return {};
    return o.donorColony ? joint(o) : alone(o);
  }

  /// nullopt when one of the colonies cannot be forecast.
  [[nodiscard]] std::optional<PairCourse> course(const BoostOption& o) const {
    if (!m_starts.has(o.colony) || (o.donorColony && !m_starts.has(*o.donorColony))) {
      return std::nullopt;
    }
    const auto bees = [](const std::vector<MemberDay>& days) {
      std::vector<forecast::Band> bands;
      for (const MemberDay& d : days) bands.push_back(forecast::bandsOf(d).bees);
      return bands;
    };
    PairCourse out;
    out.days = m_days;
    out.receiverWithout = bees(m_alone.at(o.colony));
    if (o.method == Method::Leave) {
      out.receiverWith = out.receiverWithout;
    } else if (!o.donorColony) {
      out.receiverWith = bees(own(o).days);
    } else {
      const auto pair = both(o);
      out.receiverWith = bees(pair.receiver.days);
      out.donorWithout = bees(m_alone.at(*o.donorColony));
      out.donorWith = bees(pair.donor.days);
    }
    return out;
  }

  /// nullopt when one of the colonies cannot be forecast.
  [[nodiscard]] std::optional<PairPromise> promise(const BoostOption& o) const {
    const Worked worked = work(o);
    if (!worked.done) return std::nullopt;
    PairPromise out;
    out.chance = worked.chance;
    out.gain = worked.gain;
    out.receiverWithout = forecast::bandsOf(m_alone.at(o.colony).back());
    if (o.method == Method::Leave) {
      out.receiverWith = out.receiverWithout;
    } else if (!o.donorColony) {
      out.receiverWith = forecast::bandsOf(own(o).days.back());
    } else {
      const auto pair = both(o);
      out.receiverWith = forecast::bandsOf(pair.receiver.days.back());
      out.donorWithout = forecast::bandsOf(m_alone.at(*o.donorColony).back());
      out.donorWith = forecast::bandsOf(pair.donor.days.back());
    }
    return out;
  }

 private:
  [[nodiscard]] Worked alone(const BoostOption& o) const {
    const MemberDay& without = m_alone.at(o.colony).back();
    Worked w;
    w.done = true;
    const double now = chanceLeft(o.colony, without);
    w.chance.receiverWithout = w.chance.receiverWith = now;
    if (o.method == Method::Leave) return w;
    const auto course = own(o);
    const MemberDay& with = course.days.back();
    w.chance.receiverWith = chanceOf(with, m_usable.at(o.colony));
    w.chance.better = shareBetter(with, without);
    w.gain = pairedGain(with, without);
    w.benefit = w.chance.receiverWith - now + m_f.beesWeight * meanMore(with, without) / 1000;
    return w;
  }

  [[nodiscard]] forecast::Course own(const BoostOption& o) const {
    Action action{m_problem.request.date, Action::Kind::Feed, 0, 0};
    if (o.method == Method::Room) {
      action.kind = Action::Kind::RoomIn;
      action.amount = o.framesMoved * 2 * m_frames.at(o.colony).cellsPerSide();
    } else {
      action.amount = std::max(1.0, m_f.feedBelowKg - storesOf(o.colony));
    }
    return m_starts.alone(o.colony, {&action, 1}, m_days);
  }

  [[nodiscard]] forecast::JointCourse both(const BoostOption& o) const {
    Joint joint;
    joint.date = m_problem.request.date;
    std::vector<Action> donorActions;
    switch (o.method) {
      case Method::Stack:
        joint.kind = Joint::Kind::Stack;
        joint.until = joint.date.plusDays(static_cast<int>(m_f.stackDays));
        // The donor gets laying room beneath where it had none.
        if (o.gear.size() > 2) {
          donorActions.push_back(
              {joint.date, Action::Kind::RoomIn, chamberCells(*o.donorColony), 0});
        }
        break;
      case Method::SealedFrames:
        joint.kind = Joint::Kind::SealedFrames;
        joint.combs = o.framesMoved;
        joint.cells = o.sealedCells;
        joint.bees = o.beesMoved;
        break;
      case Method::NurseBees:
        joint.kind = Joint::Kind::NurseBees;
        joint.bees = m_f.shakenStay > 0 ? o.beesMoved / m_f.shakenStay : 0;
        break;
      case Method::ChangePlaces:
        joint.kind = Joint::Kind::ChangePlaces;
        break;
      default:
        joint.kind = Joint::Kind::Unite;
        break;
    }
    return m_starts.together(o.colony, *o.donorColony, joint, m_days, {}, donorActions);
  }

  [[nodiscard]] Worked joint(const BoostOption& o) const {
    const auto both = this->both(o);
    const MemberDay &up = both.receiver.days.back(), &down = both.donor.days.back();
    const MemberDay &left = m_alone.at(o.colony).back(), &own = m_alone.at(*o.donorColony).back();
    const Usable &mine = m_usable.at(o.colony), &theirs = m_usable.at(*o.donorColony);
    Worked w;
    w.done = true;
    w.chance = {chanceLeft(o.colony, left), chanceOf(up, mine),    chanceOf(own, theirs),
                chanceOf(down, theirs),     shareBetter(up, left), pairedGain(down, own).median};
    const double donorMore = m_f.donorWeight * (w.chance.donorWith - w.chance.donorWithout) +
                             m_f.beesWeight * meanMore(down, own) / 1000;
    if (o.method == Method::Unite) {
      // The queenless colony is given up: what it brings is what the other one gains.
      w.gain = pairedGain(down, own);
      w.chance.better = shareBetter(down, own);
      w.benefit = donorMore - (w.chance.receiverWithout);
      return w;
    }
    w.gain = pairedGain(up, left);
    w.benefit = w.chance.receiverWith - w.chance.receiverWithout +
                m_f.beesWeight * meanMore(up, left) / 1000;
    w.donorCost = std::max(0.0, -donorMore);
    return w;
  }

  /// Chance of a colony left as it is. The forecast of one without eggs allows for eggs that were
  /// missed; who judged it queenless saw more than that.
  [[nodiscard]] double chanceLeft(const ColonyId& colony, const MemberDay& day) const {
    const double chance = chanceOf(day, m_usable.at(colony));
    const bool queenless =
        std::any_of(m_problem.judgements.begin(), m_problem.judgements.end(), [&](const auto& j) {
          return j.colony == colony && (j.verdict == apiary::VerdictCode::Queenless ||
                                        j.verdict == apiary::VerdictCode::LayingWorkers ||
                                        j.verdict == apiary::VerdictCode::DroneLayer);
        });
    return queenless ? m_f.queenlessDoubt * chance : chance;
  }

  [[nodiscard]] double storesOf(const ColonyId& colony) const {
    for (const auto& j : m_problem.judgements) {
      if (j.colony == colony && j.strength && j.strength->honeyKg) {
        return j.strength->honeyKg->median;
      }
    }
    return 0;
  }
  [[nodiscard]] double chamberCells(const ColonyId& colony) const {
    const auto& frames = m_frames.at(colony);
    return 2.0 * frames.framesPerBox * frames.cellsPerSide();
  }

  const apiary::Season& m_season;
  const BoostProblem& m_problem;
  const BoostFigures& m_f;
  const std::vector<Date> m_days;
  forecast::Starts m_starts;
  std::map<ColonyId, base::HiveId> m_hives;
  std::map<ColonyId, Usable> m_usable;
  std::map<ColonyId, strength::FrameFigures> m_frames;
  std::map<ColonyId, std::vector<MemberDay>> m_alone;
};

/// Progress of one part of the whole.
class Part : public base::Progress {
 public:
  Part(base::Progress& whole, double from, double to) : m_whole(whole), m_from(from), m_to(to) {}
  void report(double fraction) override { m_whole.report(m_from + (m_to - m_from) * fraction); }
  [[nodiscard]] bool cancelled() const override { return m_whole.cancelled(); }

 private:
  base::Progress& m_whole;
  double m_from, m_to;
};

double percent(double share) {
  return std::round(100 * share);
}

/// The problem with that option alone.
BoostProblem onlyOption(const BoostProblem& problem, const BoostOption& option) {
  BoostProblem one;
  one.request = problem.request;
  one.target = problem.target;
  one.judgements = problem.judgements;
  one.options = {option};
  return one;
}

void reword(BoostOption& o, const Worked& w, Date target) {
  std::erase_if(o.why, [](const base::Message& m) { return m.key == "planning.why.cost"; });
  if (o.method == Method::Leave) return;
  if (o.method == Method::Unite) {
    o.why.push_back(message("planning.why.donor_gain", o.donorHive->str(), target.iso(),
                            percent(w.chance.donorWithout), percent(w.chance.donorWith),
                            twoFigures(w.gain.median)));
    return;
  }
  o.why.push_back(message("planning.why.chance", o.hive.str(), target.iso(),
                          percent(w.chance.receiverWithout), percent(w.chance.receiverWith),
                          twoFigures(w.gain.median)));
  if (o.donorHive) {
    o.why.push_back(message("planning.why.donor_chance", o.donorHive->str(),
                            percent(w.chance.donorWithout), percent(w.chance.donorWith),
                            twoFigures(std::max(0.0, -w.chance.donorBees))));
  }
}

}  // namespace

Usable usableIn(const apiary::Season& season, const std::string& frameType, const BoostFigures& f) {
  const strength::FrameFigures frames = framesOf(season, frameType);
  Usable usable;
  usable.broodCells = strength::cellsOfCombs(f.usableBroodCombs, frames);
  // Seams rise with bees: halve the interval until it is a bee wide.
  double low = 0, high = 100000;
  while (high - low > 1) {
    const double middle = (low + high) / 2;
    const strength::Spread same{middle, middle, middle};
    const double seams = strength::expectedLook(same, {}, frames, 0).seams.median;
    (seams < f.usableSeams ? low : high) = middle;
  }
  usable.seenBees = f.usableSeams > 0 ? high : 0;
  return usable;
}

double chanceOf(const MemberDay& day, const Usable& usable) {
  int n = 0;
  for (std::size_t m = 0; m < day.seen.size(); ++m) {
    n += static_cast<double>(day.seen[m]) >= usable.seenBees &&
                 static_cast<double>(day.brood[m]) >= usable.broodCells && day.bees[m] > 100 &&
                 day.brood[m] > 0
             ? 1
             : 0;
  }
  return static_cast<double>(n) / static_cast<double>(day.seen.size());
}

bool benefitsFromForecast(const apiary::Season& season, BoostProblem& problem,
                          const BoostFigures& figures, int threads, base::Progress& progress) {
  Runs runs(season, problem, figures, {problem.target});
  Part first(progress, 0, 0.4);
  if (!runs.prepare(threads, first)) return false;
  Part rest(progress, 0.4, 1);
  std::vector<Worked> worked(problem.options.size());
  std::atomic<std::size_t> next{0}, done{0};
  std::mutex reporting;
  const auto some = [&] {
    for (std::size_t i = next++; i < worked.size() && !rest.cancelled(); i = next++) {
      worked[i] = runs.work(problem.options[i]);
      const std::size_t n = ++done;
      const std::lock_guard lock(reporting);
      rest.report(static_cast<double>(n) / static_cast<double>(worked.size()));
    }
  };
  std::vector<std::thread> pool;
  for (int t = 1; t < threads; ++t) pool.emplace_back(some);
  some();
  for (auto& t : pool) t.join();
  if (progress.cancelled()) return false;

  std::set<std::string> unknown;
  for (std::size_t i = 0; i < worked.size(); ++i) {
    BoostOption& o = problem.options[i];
    if (isVisit(o)) {
      setNet(o, 0, 0, figures.driveWeight);
      continue;
    }
    const Worked& w = worked[i];
    if (w.done) o.chance = w.chance;
    if (o.method == Method::Leave) continue;
    const MethodFigures& m = methodFigures(o.method);
    int pieces = 0;
    for (const auto& [item, n] : o.gear) pieces += n;
    double other = (m.minutes + m.returnMinutes) / 60.0 * m.people * figures.hourWeight +
                   pieces * figures.gearWeight;
    if (o.donorColony &&
        problem.yardOf.at(o.donorColony->str()) != problem.yardOf.at(o.colony.str())) {
      other += figures.driveWeight;
    }
    if (!w.done) {
      unknown.insert(o.hive.str());
      setNet(o, figures.beesWeight * o.gain.median / 1000, figures.beesWeight * o.donorCost, other);
      continue;
    }
    o.gain = w.gain;
    setNet(o, w.benefit, w.donorCost, other);
    reword(o, w, problem.target);
  }
  for (const auto& hive : unknown)
    problem.notes.push_back(message("planning.note.from_looks", hive));
  problem.basis = "forecast";
  problem.usableSeams = figures.usableSeams;
  problem.usableBroodCombs = figures.usableBroodCombs;
  return true;
}

std::optional<PairCourse> pairCourse(const apiary::Season& season, const BoostProblem& problem,
                                     const BoostOption& option, const BoostFigures& figures,
                                     base::Progress& progress) {
  const BoostProblem one = onlyOption(problem, option);
  std::vector<Date> days;
  for (Date d = one.request.date; d < one.target; d = d.plusDays(7)) days.push_back(d);
  days.push_back(one.target);
  Runs runs(season, one, figures, std::move(days));
  if (!runs.prepare(1, progress)) return std::nullopt;
  return runs.course(option);
}

std::optional<PairPromise> pairPromise(const apiary::Season& season, const BoostProblem& problem,
                                       const BoostOption& option, const BoostFigures& figures,
                                       base::Progress& progress) {
  const BoostProblem one = onlyOption(problem, option);
  Runs runs(season, one, figures, {one.target});
  if (!runs.prepare(1, progress)) return std::nullopt;
  return runs.promise(option);
}

base::Result<BoostProblem> makeForecastProblem(const apiary::Season& season,
                                               const BoostRequest& request, int threads,
                                               base::Progress& progress) {
  auto problem = makeBoostProblem(season, request);
  if (!problem) return problem;
  std::vector<base::Message> said;  // the notes are in the problem already
  const BoostFigures figures = boostFigures(season, said);
  if (!benefitsFromForecast(season, *problem, figures, threads, progress)) {
    return base::fail(message("planning.cancelled"));
  }
  return problem;
}

BoostProblem repinned(BoostProblem problem, std::vector<std::string> pins,
                      std::vector<std::string> forbids) {
  const auto gone = [&](const std::string& id) {
    return std::none_of(problem.options.begin(), problem.options.end(),
                        [&](const BoostOption& o) { return o.id == id; });
  };
  std::erase_if(pins, gone);
  std::erase_if(forbids, gone);
  problem.request.pins = std::move(pins);
  problem.request.forbids = std::move(forbids);
  return problem;
}

}  // namespace outyard::planning
