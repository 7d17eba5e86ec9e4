// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/plan_review.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "core/planning/boost_figures.h"
#include "core/planning/boost_forecast.h"
#include "core/planning/printed_plan.h"
#include "core/strength/estimate.h"

namespace outyard::planning {
namespace {

using apiary::Event;
using apiary::EventKind;
using apiary::Inspection;
using apiary::Method;
using apiary::Plan;
using apiary::PlanRow;
using apiary::TableId;
using base::ColonyId;
using base::Date;
using base::HiveId;
using base::message;
using strength::Spread;

/// Looks taken for the target day: from so many days before it to so many after. Our assumption.
constexpr int kBefore = 10, kAfter = 21;
/// Looks sooner after the boost say little of it.
constexpr int kSettled = 7;
/// A plan is made within so many days or not at all: looks carry it for ten, weather delays it.
constexpr int kMadeWithin = 21;
constexpr double kTenth = 1.2815515655446004;  // tenth quantile of the normal curve

template <class T>
Date dateOf(const T& r) {
  if constexpr (requires { r.fromDate; }) {
    return r.fromDate;
  } else {
    return r.date;
  }
}

template <class T>
void leaveOut(const apiary::Season& season, const std::string& atUtc, Date day,
              apiary::ChangeList& out, std::set<std::string>* gone = nullptr) {
  constexpr bool kLook = std::is_same_v<T, Inspection> || std::is_same_v<T, apiary::Wash>;
  for (const auto& [key, row] : season.table<T>()) {
    const bool timed = !row.enteredAt.empty() && !atUtc.empty();
    const bool known =
        timed ? row.enteredAt <= atUtc : dateOf(row) < day || (kLook && dateOf(row) == day);
    if (known) continue;
    out.push_back({apiary::TableOf<T>::kId, key, apiary::toRow(row), std::nullopt});
    if (gone) gone->insert(row.record.str());
  }
}

/// A stay without its time of entry that ended later was going on.
void reopen(const apiary::Season& season, const std::string& atUtc, Date day,
            apiary::ChangeList& out) {
  for (const auto& [key, row] : season.table<apiary::ColonyStay>()) {
    const bool timed = !row.enteredAt.empty() && !atUtc.empty();
    if (timed || row.fromDate >= day || !row.toDate || *row.toDate < day) continue;
    apiary::ColonyStay open = row;
    open.toDate.reset();
    out.push_back({TableId::Colonies, key, apiary::toRow(row), apiary::toRow(open)});
  }
}

template <class T>
void leaveOutOf(const apiary::Season& season, const std::set<std::string>& inspections,
                apiary::ChangeList& out) {
  for (const auto& [key, row] : season.table<T>()) {
    if (!inspections.contains(row.inspection.str())) continue;
    out.push_back({apiary::TableOf<T>::kId, key, apiary::toRow(row), std::nullopt});
  }
}

bool isThatBoost(const Event& e, const PlanRow& row) {
  const auto pair = [&](const HiveId& first, const std::optional<HiveId>& second) {
    return e.hive == first && e.otherHive == second;
  };
  switch (row.method.value_or(Method::Leave)) {
    case Method::Stack:
      return e.kind == EventKind::Stacked && pair(row.hive, row.donorHive);
    case Method::SealedFrames:
      return e.kind == EventKind::FramesMoved && pair(row.hive, row.donorHive) &&
             e.what != apiary::Goods::NurseBees;
    case Method::NurseBees:
      return (e.kind == EventKind::BeesShaken ||
              (e.kind == EventKind::FramesMoved && e.what == apiary::Goods::NurseBees)) &&
             pair(row.hive, row.donorHive);
    case Method::ChangePlaces:
      return e.kind == EventKind::PlacesChanged &&
             (pair(row.hive, row.donorHive) || (row.donorHive && pair(*row.donorHive, row.hive)));
    case Method::Unite:
      return e.kind == EventKind::United && row.donorHive && pair(*row.donorHive, row.hive);
    case Method::Room:
      return (e.kind == EventKind::FramesGiven || e.kind == EventKind::BoxAdded) &&
             e.hive == row.hive;
    case Method::Feed:
      return e.kind == EventKind::Fed && e.hive == row.hive;
    case Method::Leave:
      break;
  }
  return false;
}

std::optional<Date> madeOn(const apiary::Season& season, const Plan& plan, const PlanRow& row,
                           Date today) {
  if (row.method.value_or(Method::Leave) == Method::Leave) return plan.date;
  std::optional<Date> found;
  std::set<HiveId> hives{row.hive};
  if (row.donorHive) hives.insert(*row.donorHive);
  for (const HiveId& hive : hives) {
    for (const Event* e : season.eventsTouching(hive)) {
      const int after = e->date - plan.date;
      if (after < -1 || after > kMadeWithin || e->date > today || !isThatBoost(*e, row)) continue;
      if (!found || e->date < *found) found = e->date;
    }
  }
  return found;
}

Spread spreadOf(const forecast::Band& b) {
  return {b.median, b.low, b.high};
}

Promised promisedOf(const forecast::ForecastDay& day, const strength::FrameFigures& frames) {
  const auto look = strength::expectedLook(spreadOf(day.seen), spreadOf(day.brood), frames, 0);
  return {spreadOf(day.seen), look.seams, look.combs};
}

strength::FrameFigures framesFor(const apiary::Season& season, const ColonyId& colony,
                                 const HiveId& hive, Date day) {
  return strength::framesMeant(season, apiary::hiveOn(season, hive, day), colony).figures;
}

/// The look nearest to the target day at which the bees were judged.
std::optional<SeenThen> lookNear(const apiary::Season& season, const ColonyId& colony, Date since,
                                 Date target, Date today) {
  std::optional<SeenThen> best;
  for (const Inspection* i :
       strength::inspectionsOf(season, colony, std::min(today, target.plusDays(kAfter)))) {
    if (i->date < since) continue;
    const auto s = strength::estimateInspection(season, *i);
    if (!s.bees) continue;
    SeenThen seen;
    seen.date = i->date;
    seen.bees = {s.bees->median, s.bees->low, s.bees->high};
    seen.combs = s.framesWithBrood;
    seen.seams = i->seams  ? *i->seams
                 : s.seams ? *s.seams
                           : strength::seamsFromBees(s.bees->median,
                                                     framesFor(season, colony, i->hive, i->date));
    best = seen;
    if (i->date >= target) break;  // the first after it
  }
  return best;
}

/// The look lies in the band, with the error of the look added to that of the promise.
bool liesWithin(const Spread& promised, const Spread& seen) {
  const auto log = [](double v) { return std::log(std::max(v, 1.0)); };
  const double at = log(seen.median), middle = log(promised.median);
  const double own = (log(seen.high) - log(seen.low)) / (2 * kTenth);
  const double side =
      (at < middle ? middle - log(promised.low) : log(promised.high) - middle) / kTenth;
  return std::abs(at - middle) <= kTenth * std::sqrt(own * own + side * side);
}

double away(const Spread& promised, const Spread& seen) {
  return std::abs(std::log(std::max(seen.median, 1.0)) - std::log(std::max(promised.median, 1.0)));
}

class Reviewer {
 public:
  Reviewer(const apiary::Season& season, Date today, base::Progress& progress)
      : m_season(season),
        m_today(today),
        m_progress(progress),
        m_figures(boostFigures(season, m_said)) {}

  PlanReview run() {
    std::map<std::string, std::vector<const PlanRow*>> rows;
    for (const auto& [key, row] : m_season.table<PlanRow>()) {
      rows[row.plan.str()].push_back(&row);
    }
    int done = 0;
    for (const auto& [key, list] : rows) {
      const Plan* plan = m_season.find<Plan>(key);
      const bool accepted = plan && !printedOnly(m_season, *plan);
      if (accepted && plan->date <= m_today) plans(*plan, list);
      if (m_progress.cancelled()) return {};
      m_progress.report(static_cast<double>(++done) / static_cast<double>(rows.size()));
    }
    std::stable_sort(m_out.rows.begin(), m_out.rows.end(), [](const auto& a, const auto& b) {
      return std::tie(b.plannedOn, a.yard, a.hive, a.option) <
             std::tie(a.plannedOn, b.yard, b.hive, b.option);
    });
    return std::move(m_out);
  }

 private:
  void plans(const Plan& plan, const std::vector<const PlanRow*>& rows) {
    const Date target = plan.target.value_or(plan.date.plusDays(45));
    const apiary::Season known = seasonKnown(m_season, plan.acceptedAt, plan.date);
    std::set<base::YardId> yards{plan.yard};
    for (const PlanRow* row : rows) {
      yards.insert(apiary::hiveOn(known, row->hive, plan.date).yard);
      if (row->donorHive) yards.insert(apiary::hiveOn(known, *row->donorHive, plan.date).yard);
    }
    std::erase_if(yards, [&](const auto& y) { return !m_season.yard(y); });
    BoostRequest request;
    request.yards.assign(yards.begin(), yards.end());
    request.date = plan.date;
    request.target = target;
    const auto problem = makeBoostProblem(known, request);
    for (const PlanRow* row : rows) {
      if (m_progress.cancelled()) return;
      one(plan, *row, target, known, problem ? &*problem : nullptr);
    }
  }

  void one(const Plan& plan, const PlanRow& row, Date target, const apiary::Season& known,
           const BoostProblem* problem) {
    ReviewedRow out;
    out.plan = plan.plan;
    out.plannedOn = plan.date;
    out.target = target;
    out.option = row.option;
    out.method = row.method.value_or(Method::Leave);
    const bool unite = out.method == Method::Unite && row.donorColony && row.donorHive;
    out.colony = unite ? *row.donorColony : row.colony;
    out.hive = unite ? *row.donorHive : row.hive;
    if (unite) {
      out.otherHive = row.hive;
    } else {
      out.otherHive = row.donorHive;
      out.donor = row.donorColony;
    }
    out.yard = apiary::hiveOn(known, out.hive, plan.date).yard;
    out.madeOn = madeOn(m_season, plan, row, m_today);
    out.diedOn = diedOn(out.colony, plan.date, target.plusDays(kAfter));
    const Date settled = out.madeOn.value_or(plan.date).plusDays(kSettled);
    out.seen = lookNear(m_season, out.colony, settled, target, m_today);
    // The look before it died is no answer to what was promised for a day after that.
    if (out.diedOn && out.diedOn <= target) out.seen.reset();
    out.day = out.seen ? out.seen->date : target;
    if (problem) promise(row, known, *problem, out);
    out.fate = fateOf(out, target);
    meanwhile(plan, row, out);
    count(out);
    m_out.rows.push_back(std::move(out));
  }

  void promise(const PlanRow& row, const apiary::Season& known, const BoostProblem& problem,
               ReviewedRow& out) {
    const auto option = optionThen(problem, row);
    if (!option || out.day <= problem.request.date) return;
    BoostProblem then;
    then.request = problem.request;
    then.target = out.day;
    then.judgements = problem.judgements;
    const auto p = pairPromise(known, then, *option, m_figures, m_progress);
    if (!p) return;
    const bool unite = out.method == Method::Unite && p->donorWith;
    const Date then0 = problem.request.date;
    const auto frames = framesFor(known, out.colony, out.hive, then0);
    out.chance = p->chance;
    out.with = promisedOf(unite ? *p->donorWith : p->receiverWith, frames);
    out.without = promisedOf(unite ? *p->donorWithout : p->receiverWithout, frames);
    if (out.seen) {
      out.within = liesWithin(out.with->bees, out.seen->bees);
      out.nearerWith =
          away(out.with->bees, out.seen->bees) < away(out.without->bees, out.seen->bees);
    }
    if (!out.donor || !p->donorWith || !row.donorHive) return;
    out.donorSeen = lookNear(m_season, *out.donor, out.madeOn.value_or(then0).plusDays(kSettled),
                             out.target, m_today);
    if (!out.donorSeen) return;
    std::optional<PairPromise> donors = p;
    if (out.donorSeen->date != out.day) {
      then.target = out.donorSeen->date;
      donors = pairPromise(known, then, *option, m_figures, m_progress);
    }
    if (!donors) return;
    out.donorWith =
        promisedOf(*donors->donorWith, framesFor(known, *out.donor, *row.donorHive, then0));
    out.donorWithin = liesWithin(out.donorWith->bees, out.donorSeen->bees);
  }

  /// The option as it was then; from the stored row where the rules have changed since.
  static std::optional<BoostOption> optionThen(const BoostProblem& problem, const PlanRow& row) {
    for (const BoostOption& o : problem.options) {
      if (o.id == row.option) return o;
    }
    // How many sealed cells stood on given combs is not in the row.
    if (row.method == Method::SealedFrames) return std::nullopt;
    BoostOption o = optionOf(row);
    const bool needsDonor =
        o.method != Method::Leave && o.method != Method::Room && o.method != Method::Feed;
    if (needsDonor && (!o.donorColony || !o.donorHive)) return std::nullopt;
    return o;
  }

  [[nodiscard]] std::optional<Date> diedOn(const ColonyId& colony, Date from, Date to) const {
    for (const auto* stay : m_season.stays(colony)) {
      for (const Event* e : m_season.journal<Event>(stay->hive)) {
        if (e->kind != EventKind::Died || e->date < from || e->date > std::min(to, m_today))
          continue;
        if (e->colony ? *e->colony == colony : stay->toDate == e->date) return e->date;
      }
    }
    return std::nullopt;
  }

  [[nodiscard]] PlanFate fateOf(const ReviewedRow& r, Date target) const {
    if (!r.madeOn) {
      return m_today > r.plannedOn.plusDays(kMadeWithin) ? PlanFate::NotMade : PlanFate::Waiting;
    }
    if (r.diedOn && r.diedOn <= target) return PlanFate::Died;
    const bool near = r.seen && r.seen->date >= target.plusDays(-kBefore);
    if (near) return r.with ? PlanFate::Seen : PlanFate::Unknown;
    return m_today > target.plusDays(kAfter) ? PlanFate::NotLooked : PlanFate::Waiting;
  }

  void meanwhile(const Plan& plan, const PlanRow& row, ReviewedRow& out) const {
    const Date until = out.seen ? out.seen->date : std::min(out.target, m_today);
    std::set<HiveId> hives;
    for (const auto* stay : m_season.stays(out.colony)) {
      if (!stay->toDate || *stay->toDate > plan.date) hives.insert(stay->hive);
    }
    for (const HiveId& hive : hives) {
      for (const Event* e : m_season.eventsTouching(hive)) {
        if (e->date < plan.date || e->date > until || isThatBoost(*e, row)) continue;
        switch (e->kind) {
          case EventKind::Swarmed:
          case EventKind::Split:
          case EventKind::QueenLost:
          case EventKind::QueenRemoved:
          case EventKind::Stacked:
          case EventKind::United:
          case EventKind::FramesMoved:
          case EventKind::BeesShaken:
          case EventKind::PlacesChanged:
          case EventKind::Robbed:
          case EventKind::Poisoned:
            if (std::find(out.meanwhile.begin(), out.meanwhile.end(), e->kind) ==
                out.meanwhile.end()) {
              out.meanwhile.push_back(e->kind);
            }
            break;
          default:
            break;
        }
      }
    }
  }

  void count(const ReviewedRow& r) {
    if (r.fate != PlanFate::Seen && r.fate != PlanFate::Died) return;
    ++m_out.promises;
    if (r.fate == PlanFate::Died) return;
    m_out.within += r.within ? 1 : 0;
    m_out.nearerWith += r.nearerWith ? 1 : 0;
    if (r.donorWith && r.donorSeen && r.donorSeen->date >= r.target.plusDays(-kBefore)) {
      ++m_out.donors;
      m_out.donorsWithin += r.donorWithin ? 1 : 0;
    }
  }

  const apiary::Season& m_season;
  const Date m_today;
  base::Progress& m_progress;
  std::vector<base::Message> m_said;
  BoostFigures m_figures;
  PlanReview m_out;
};

double half(double seams) {
  return std::round(seams * 2) / 2;
}

}  // namespace

apiary::Season seasonKnown(const apiary::Season& season, const std::string& atUtc, Date day) {
  apiary::ChangeList out;
  std::set<std::string> looks;
  leaveOut<Inspection>(season, atUtc, day, out, &looks);
  leaveOut<apiary::ColonyStay>(season, atUtc, day, out);
  reopen(season, atUtc, day, out);
  leaveOut<apiary::Box>(season, atUtc, day, out);
  leaveOut<apiary::Wash>(season, atUtc, day, out);
  leaveOut<Event>(season, atUtc, day, out);
  leaveOut<apiary::Place>(season, atUtc, day, out);
  leaveOut<apiary::FrameMove>(season, atUtc, day, out);
  leaveOutOf<apiary::CombSide>(season, looks, out);
  leaveOutOf<apiary::SeamCount>(season, looks, out);
  apiary::Season known = season;
  known.apply(out);
  return known;
}

PlanReview reviewPlans(const apiary::Season& season, Date today, base::Progress& progress) {
  return Reviewer(season, today, progress).run();
}

base::Message reviewText(const ReviewedRow& r) {
  const auto range = [&](const Promised& p) {
    const auto w = p.seams.whole();
    return w.low == w.high ? message("planning.review.seams_one", w.low)
                           : message("planning.review.seams", w.low, w.high);
  };
  switch (r.fate) {
    case PlanFate::Died:
      return r.with ? message("planning.review.died", range(*r.with), r.day.iso(), r.diedOn->iso())
                    : message("planning.review.died_plain", r.diedOn->iso());
    case PlanFate::NotMade:
      return message("planning.review.not_made", r.plannedOn.iso());
    case PlanFate::NotLooked:
      return r.with ? message("planning.review.not_looked", range(*r.with), r.day.iso())
                    : message("planning.review.not_looked_plain", r.day.iso());
    case PlanFate::Unknown:
      return message("planning.review.unknown", r.seen->date.iso(), half(r.seen->seams));
    case PlanFate::Seen:
      return message("planning.review.seen", range(*r.with), r.seen->date.iso(),
                     half(r.seen->seams));
    case PlanFate::Waiting:
      break;
  }
  if (r.seen && r.with) {
    return message("planning.review.so_far", range(*r.with), r.seen->date.iso(),
                   half(r.seen->seams), r.target.iso());
  }
  return r.with ? message("planning.review.waiting", range(*r.with), r.target.iso())
                : message("planning.review.waiting_plain", r.target.iso());
}

base::Message reviewSum(const PlanReview& review) {
  return review.promises == 0
             ? message("planning.review.sum_none")
             : message("planning.review.sum", review.promises, review.within, review.nearerWith);
}

}  // namespace outyard::planning
